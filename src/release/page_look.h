// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/palette.h"
#include "checks/finished_rules.h"
#include "engine/kept.h"
#include "proof/misprint.h"
#include "proof/render.h"

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace qw::release {

/// Pixels on the longer side of a page's picture in the report.
inline constexpr std::uint32_t thumbnail_pixels = 320;
inline constexpr double proof_dpi = 72;

/// A borderless page whose misprint is to be simulated.
struct MisprintAsked {
    Size sheet;
    Length safe_area;                        ///< as printed
    proof::Misprint misprint;
};

struct MisprintLook {
    proof::Misprinted misprinted;
    std::vector<std::byte> picture;          ///< small JPEG of the sheet as the misprint leaves it; empty: it loses nothing of its safe area
};

/// What one rendering of a page told.
struct PageLook {
    checks::RenderedPage seen;
    std::vector<std::byte> picture;          ///< small JPEG
    std::vector<artwork::Swatch> palette;    ///< its main colours, white left out
    std::optional<MisprintLook> misprint;    ///< when it was asked for
};

/// The pages of one finished PDF, rendered, or known from an earlier run or another file: a page's look is kept by the digest
/// of what it puts on paper (proof/page_digest.h), the renderer's version and what was asked. The file is opened for
/// rendering only when a page is not known.
class PageLooks {
public:
    PageLooks(Disk& disk, const Path& file, std::string sha256, engine::Kept& kept);
    /// `page` counts from 1. Throws Fault as Renderer::page does.
    PageLook page(int page, const std::optional<MisprintAsked>& asked);
    /// Pages as the renderer sees them; opens the file.
    int pages();
    /// Not empty: the renderer cannot open the file. Opens it.
    std::string damage();

private:
    proof::Renderer& renderer();
    std::string digest_of_page(int page);
    Disk& disk_;
    Path file_;
    std::string sha256_;
    std::optional<std::vector<std::string>> digests_;  ///< of the pages, once one was asked for
    engine::Kept& kept_;
    std::unique_ptr<proof::Renderer> renderer_;
};

}  // namespace qw::release
