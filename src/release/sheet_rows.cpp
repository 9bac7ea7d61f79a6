// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/sheet_rows.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace qw::release {

namespace {

std::string percent(double share, int digits) {
    char text[48];
    std::snprintf(text, sizeof text, "%.*f %%", digits, share * 100);
    return text;
}

void tell_placement(report::SheetRow& row, const PlannedFile& file, const compose::Placement& placement) {
    if (!file.looked || !placement.face || placement.artwork.empty()) return;
    row.artwork = file.looked->file_of(file.looked->faces[*placement.face]).file.shown;
    row.drawn = placement.artwork;
    row.safe = placement.picture.inset(file.looked->set->safe_area * placement.scale);
}

/// The box around all ink of a rendered page.
std::optional<Rect> inked_box(const checks::RenderedPage& seen) {
    const PixelBox& box = seen.ink.box;
    if (box.empty() || seen.width == 0 || seen.height == 0) return std::nullopt;
    const Length x = seen.size.width / seen.width, y = seen.size.height / seen.height;
    return Rect{x * box.left, seen.size.height - y * box.bottom, x * box.right, seen.size.height - y * box.top};
}

}  // namespace

ShownArtwork artwork_on(const PlannedFile& file, std::size_t page) {
    if (!file.looked || !file.placements[page].face) return {};
    const Face& face = file.looked->faces[*file.placements[page].face];
    const LookedFile& looked = file.looked->file_of(face);
    if (!looked.is_pdf) return {&looked.picture.ink, looked.picture.upright_width(), looked.picture.upright_height()};
    const std::size_t index = static_cast<std::size_t>(face.page) - 1;
    const proof::PageFacts& seen = looked.pdf.pages[index];
    const Size shown = proof::shown_size(seen);
    const auto pixels = [](Length length) { return static_cast<std::uint32_t>(std::lround(length.in_inches() * pdf_look_dpi)); };
    return {&looked.pdf_ink[index], std::max(1u, pixels(shown.width)), std::max(1u, pixels(shown.height))};
}

report::SheetRow row_of(const PlannedFile& file, std::size_t page) {
    report::SheetRow row;
    row.file = file.path;
    row.page = static_cast<int>(page) + 1;
    row.set = file.set;
    row.paper = file.paper.title;
    row.print = file.print ? name_of(*file.print) : "";
    const Size size = file.document.pages[page].size;
    row.size = show(size.width, size.height, UnitSystem::metric);
    row.proven = "picture bytes and place";
    row.sheet = size;
    row.trim = file.document.pages[page].trim;
    row.printable = printable_of(file, page);
    if (file.placements.empty()) return row;
    tell_placement(row, file, file.placements[page]);
    char text[48];
    if (file.placements[page].ppi_x > 0) {
        std::snprintf(text, sizeof text, "%.0f", std::min(file.placements[page].ppi_x, file.placements[page].ppi_y));
        row.ppi = text;
    }
    if (const ShownArtwork shown = artwork_on(file, page); shown.ink) {
        row.ink = percent(shown.ink->coverage, 0);
    }
    return row;
}

report::SheetRow row_of(const checks::SeenPdf& told, const proof::FileFacts& facts, std::size_t page) {
    report::SheetRow row;
    row.file = told.path;
    row.page = static_cast<int>(page) + 1;
    row.set = std::filesystem::path(told.path).stem().string();
    row.paper = told.paper ? told.paper->title : "";
    row.print = told.print ? name_of(*told.print) : "";
    const Size size = proof::shown_size(facts.pages[page]);
    row.sheet = size;
    row.size = show(size.width, size.height, UnitSystem::metric);
    return row;
}

void tell_rendering(report::SheetRow& row, const PageLook& look) {
    row.proven = "rendering";
    row.picture = look.picture;
    row.inked = inked_box(look.seen);
    if (row.ink.empty()) row.ink = percent(look.seen.ink.coverage, 0);
}

void tell_rendering(report::SheetRow& row, const PlannedFile& file, const PageLook& look) {
    tell_rendering(row, look);
    if (file.left_white > 0.0005) row.ink += ", " + percent(file.left_white, 1) + " left white";
}

}  // namespace qw::release
