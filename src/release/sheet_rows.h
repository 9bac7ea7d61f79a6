// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/pdf_rules.h"
#include "release/page_look.h"
#include "release/plan.h"
#include "report/audit_report.h"

namespace qw::release {

/// The artwork that a page shows, with the pixels that its ink map counts. No ink: the page shows none.
struct ShownArtwork {
    const Ink* ink = nullptr;
    std::uint32_t width = 0, height = 0;
};
ShownArtwork artwork_on(const PlannedFile& file, std::size_t page);
/// How the designer knows the one piece of artwork that the page shows; there is one.
std::string artwork_name(const PlannedFile& file, std::size_t page);

/// What the report says of a planned page before it is rendered; `page` counts from 0.
report::SheetRow row_of(const PlannedFile& file, std::size_t page);
/// The same of a page whose plan is not known.
report::SheetRow row_of(const checks::SeenPdf& told, const proof::FileFacts& facts, std::size_t page);
/// What its rendering adds.
void tell_rendering(report::SheetRow& row, const PlannedFile& file, const PageLook& look);
void tell_rendering(report::SheetRow& row, const PageLook& look);
/// A page that was not rendered is shown by its artwork in greys, as measuring it has kept them: nothing is decoded again.
void show_artwork(report::SheetRow& row, const PlannedFile& file, std::size_t page);

}  // namespace qw::release
