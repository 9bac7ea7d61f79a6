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
    const Size shown = proof::shown_size(seen);
    const auto pixels = [](Length length) { return static_cast<std::uint32_t>(std::lround(length.in_inches() * pdf_look_dpi)); };
    return {&looked.pdf_ink[index], std::max(1u, pixels(shown.width)), std::max(1u, pixels(shown.height))};
}

std::string artwork_name(const PlannedFile& file, std::size_t page) {
    const Face& face = file.looked->faces[*file.placements[page].face];
    const LookedFile& looked = file.looked->file_of(face);
    return looked.file.shown + (looked.pdf.pages.size() > 1 ? ", page " + std::to_string(face.page) : "");
}

namespace {

/// What the file of artwork is called in the kit; `page` counts from 1, 0 for a picture.
void add_shown(const LookedSet& set, const Path& path, int page, std::vector<report::ShownFile>& shown) {
    const auto found = std::find_if(set.files.begin(), set.files.end(), [&](const LookedFile& file) { return file.file.path == path; });
    if (found == set.files.end()) return;
    const report::ShownFile one{found->file.shown, page};
    if (std::find(shown.begin(), shown.end(), one) == shown.end()) shown.push_back(one);
}

std::vector<report::ShownFile> artwork_files(const PlannedFile& file, std::size_t page) {
    std::vector<report::ShownFile> shown;
    if (!file.shows) return shown;
    for (const compose::Item& item : file.document.pages[page].items) {
        if (const auto* picture = std::get_if<compose::Picture>(&item)) add_shown(*file.shows, file.document.artwork[picture->artwork].file, 0, shown);
        if (const auto* face = std::get_if<compose::PdfFace>(&item)) add_shown(*file.shows, face->file, face->page, shown);
    }
    return shown;
}

report::SheetGeometry geometry_of(const PlannedFile& file, std::size_t page) {
    report::SheetGeometry at;
    at.sheet = file.document.pages[page].size;
    at.trim = file.document.pages[page].trim;
    at.printable = printable_of(file, page);
    if (file.placements.empty()) return at;
    const compose::Placement& placement = file.placements[page];
    if (!placement.face || placement.artwork.empty()) return at;
    at.artwork = placement.artwork;
    at.visible = placement.visible;
    if (file.looked) at.safe = placement.picture.inset(file.looked->set->safe_area * placement.scale);
    return at;
}

std::string whole_percent(double share) {
    char text[48];
    std::snprintf(text, sizeof text, "%.0f %%", share * 100);
    return text;
}

/// Pixels count from the page's upper left corner, lengths from the lower left one.
std::optional<Rect> on_page(const PixelBox& box, Size page, std::uint32_t width, std::uint32_t height) {
    if (box.empty() || width == 0 || height == 0) return std::nullopt;
    const auto x = [&](std::uint32_t pixel) { return page.width * (static_cast<double>(pixel) / width); };
    const auto y = [&](std::uint32_t pixel) { return page.height * (1 - static_cast<double>(pixel) / height); };
    return Rect{x(box.left), y(box.bottom), x(box.right), y(box.top)};
}

}  // namespace

report::SheetRow row_of(const PlannedFile& file, std::size_t page) {
    report::SheetRow row;
    row.file = file.path;
    row.page = static_cast<int>(page) + 1;
    row.set = file.set;
    row.paper = file.paper.title;
    row.print = file.print ? name_of(*file.print) : "";
    if (file.shows) row.stock = *file.shows->set->stock;
    row.artwork = artwork_files(file, page);
    row.geometry = geometry_of(file, page);
    const Size size = file.document.pages[page].size;
    row.size = show(size.width, size.height, UnitSystem::metric);
    row.proven = "picture bytes and place";
    if (file.placements.empty()) return row;
    if (file.placements[page].ppi_x > 0) {
        char text[48];
        std::snprintf(text, sizeof text, "%.0f", std::min(file.placements[page].ppi_x, file.placements[page].ppi_y));
        row.ppi = text;
    }
    if (const ShownArtwork shown = artwork_on(file, page); shown.ink) row.ink = whole_percent(shown.ink->coverage);
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
    row.geometry.sheet = size;
    row.size = show(size.width, size.height, UnitSystem::metric);
    return row;
}

void tell_rendering(report::SheetRow& row, const PageLook& look) {
    row.proven = "rendering";
    row.picture = look.picture;
    row.geometry.ink = on_page(look.seen.ink.box, look.seen.size, look.seen.width, look.seen.height);
    if (row.ink.empty()) row.ink = whole_percent(look.seen.ink.coverage);
}

void tell_rendering(report::SheetRow& row, const PlannedFile& file, const PageLook& look) {
    tell_rendering(row, look);
    if (file.left_white <= 0.0005) return;
    char text[48];
    std::snprintf(text, sizeof text, ", %.1f %% left white", file.left_white * 100);
    row.ink += text;
}

void show_artwork(report::SheetRow& row, const PlannedFile& file, std::size_t page) {
    if (!row.picture.empty() || file.placements.empty()) return;
    const ShownArtwork shown = artwork_on(file, page);
    if (!shown.ink || shown.ink->map.mean.empty()) return;
    const InkMap& map = shown.ink->map;
    std::vector<std::uint8_t> rgb;
    rgb.reserve(map.mean.size() * 3);
    for (const std::uint8_t darkness : map.mean) rgb.insert(rgb.end(), 3, static_cast<std::uint8_t>(255 - darkness));
    row.picture = artwork::thumbnail(rgb, map.columns, map.rows, thumbnail_pixels);
    row.picture_is_artwork = true;
}

}  // namespace qw::release
