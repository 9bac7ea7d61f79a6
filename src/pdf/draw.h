// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"
#include "compose/document.h"
#include "type/fonts.h"

#include <string>

namespace qw::pdf {

struct Drawn {
    std::uint64_t bytes = 0;
    std::string sha256;
};

/// Draws a document as PDF 1.7 at `path` (a new file), streaming: memory depends on the largest picture only.
/// Every page gets MediaBox, TrimBox and BleedBox; the catalog gets ViewerPreferences with PrintScaling /None, Duplex
/// and PickTrayByPDFSize true (ISO 32000-1 table 150), an sRGB output intent and the title; fonts are embedded and
/// subset. The trailer's ID is a digest of the file, so that the same document gives the same bytes.
/// Throws Fault: not_carried_out when the disk fails (the unfinished file is removed), not_understood when a PDF that
/// a page shows cannot be used, naming it.
Drawn draw(Disk& disk, const Path& path, const compose::Document& document, const type::Fonts& fonts);

}  // namespace qw::pdf
