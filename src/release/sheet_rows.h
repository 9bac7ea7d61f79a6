// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "proof/render.h"
#include "release/plan.h"
#include "report/audit_report.h"

namespace qw::release {

/// Pixels on the longer side of a page's picture in the report.
inline constexpr std::uint32_t thumbnail_pixels = 320;

/// The artwork that a page shows, with the pixels that its ink map counts. No ink: the page shows none.
struct ShownArtwork {
    const Ink* ink = nullptr;
    std::uint32_t width = 0, height = 0;
};
ShownArtwork artwork_on(const PlannedFile& file, std::size_t page);

/// What the report says of a planned page before it is rendered; `page` counts from 0.
report::SheetRow row_of(const PlannedFile& file, std::size_t page);
/// What its rendering adds.
void tell_rendering(report::SheetRow& row, const PlannedFile& file, const proof::Pixels& pixels, const Ink& ink);

}  // namespace qw::release
