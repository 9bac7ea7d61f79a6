// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/ink_map.h"
#include "checks/rules.h"
#include "compose/document.h"
#include "compose/placement.h"
#include "proof/file_facts.h"

#include <string>

namespace qw::checks {

/// What a finished PDF is, held against the plan it was drawn from: page count and size, boxes, title, flip edge; pictures
/// that went through byte for byte, at the planned place, in the planned clip. What needs no plan is asked by check_pdf
/// (pdf_rules.h). `path` is the file's path inside the bundle.
void check_finished(const Rules& rules, const compose::Document& plan, const proof::FileFacts& seen, const std::string& path, Findings& findings);

/// Rendered ink on a page.
struct RenderedPage {
    int page = 0;           ///< counted from 1
    Size size;              ///< as shown
    std::uint32_t width = 0, height = 0;  ///< pixels
    Ink ink;
    std::string text = {};  ///< in reading order, UTF-8
    std::string complaint = {};  ///< what the renderer complained of, the first thing; empty: of nothing
};

/// Ink stays inside `printable` (bordered pages and generated sheets).
void check_ink_inside(const Rules& rules, const RenderedPage& seen, const Rect& printable, const std::string& path, Findings& findings);

/// A page that shows one piece of artwork, as rendered, against the artwork's own pixels: where these have ink at the
/// paper's edge the page has, and the page is as dark on the whole as they are.
void check_rendered_artwork(const Rules& rules, const RenderedPage& seen, const compose::Placement& placement, const Ink& artwork,
                            std::uint32_t artwork_width, std::uint32_t artwork_height, bool borderless, const std::string& path, Findings& findings);

}  // namespace qw::checks
