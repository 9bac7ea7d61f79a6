// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/sheet_rows.h"

#include "artwork/thumbnail.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace qw::release {

ShownArtwork artwork_on(const PlannedFile& file, std::size_t page) {
    if (!file.looked || !file.placements[page].face) return {};
    const Face& face = file.looked->faces[*file.placements[page].face];
    const LookedFile& looked = file.looked->file_of(face);
    if (!looked.is_pdf) return {&looked.picture.ink, looked.picture.upright_width(), looked.picture.upright_height()};
    const std::size_t index = static_cast<std::size_t>(face.page) - 1;
    const proof::PageFacts& seen = looked.pdf.pages[index];
    const Size size = seen.crop.size() * seen.user_unit;
    const Size shown = seen.rotate % 180 == 0 ? size : size.turned();
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
    if (file.placements.empty()) return row;
    char text[48];
    if (file.placements[page].ppi_x > 0) {
        std::snprintf(text, sizeof text, "%.0f", std::min(file.placements[page].ppi_x, file.placements[page].ppi_y));
        row.ppi = text;
    }
    if (const ShownArtwork shown = artwork_on(file, page); shown.ink) {
        std::snprintf(text, sizeof text, "%.0f %%", shown.ink->coverage * 100);
        row.ink = text;
    }
    return row;
}

void tell_rendering(report::SheetRow& row, const PlannedFile& file, const proof::Pixels& pixels, const Ink& ink) {
    row.proven = "rendering";
    row.picture = artwork::thumbnail(pixels.rgb, pixels.width, pixels.height, thumbnail_pixels);
    if (row.ink.empty()) {
        char text[48];
        std::snprintf(text, sizeof text, "%.0f %%", ink.coverage * 100);
        row.ink = text;
    }
    if (file.left_white > 0.0005) {
        char text[48];
        std::snprintf(text, sizeof text, ", %.1f %% left white", file.left_white * 100);
        row.ink += text;
    }
}

}  // namespace qw::release
