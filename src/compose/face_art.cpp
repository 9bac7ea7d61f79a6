// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/face_art.h"

#include <algorithm>

namespace qw::compose {

namespace {

Matrix onto(const Rect& target) {
    return {target.width().in_points(), 0, 0, target.height().in_points(), target.left.in_points(), target.bottom.in_points()};
}

/// The page as it is shown, clockwise by `rotate`, as a unit square.
Matrix shown_unit_square(const PdfArtwork& pdf) {
    const double l = pdf.crop.left.in_points(), b = pdf.crop.bottom.in_points();
    const double w = pdf.crop.width().in_points(), h = pdf.crop.height().in_points();
    const Matrix upright{1 / w, 0, 0, 1 / h, -l / w, -b / h};
    switch (((pdf.rotate % 360) + 360) % 360) {
        case 90: return Matrix{0, -1, 1, 0, 0, 1}.after(upright);
        case 180: return Matrix{-1, 0, 0, -1, 1, 1}.after(upright);
        case 270: return Matrix{0, 1, -1, 0, 1, 0}.after(upright);
        default: return upright;
    }
}

}  // namespace

const artwork::Facts* facts_of(const Face& face) {
    const auto* picture = std::get_if<PlacedArtwork>(&face.art);
    return picture ? &picture->facts : nullptr;
}

bool is_damaged(const Face& face) {
    const auto* facts = facts_of(face);
    return facts ? !facts->damage.empty() || facts->width == 0 || facts->height == 0 : std::get<PdfArtwork>(face.art).crop.empty();
}

Size shape_of(const Face& face) {
    if (const auto* facts = facts_of(face))
        return {Length::points(facts->upright_width()), Length::points(facts->upright_height())};
    const auto& pdf = std::get<PdfArtwork>(face.art);
    const Size size = pdf.crop.size() * pdf.user_unit;
    return pdf.rotate % 180 == 0 ? size : size.turned();
}

Size size_on(kit::Place place, Size drawn, Size area) {
    if (place == kit::Place::as_drawn) return drawn;
    const double x = area.width / drawn.width, y = area.height / drawn.height;
    return drawn * (place == kit::Place::cover ? std::max(x, y) : std::min(x, y));
}

Matrix matrix_onto(const Face& face, const Rect& target) {
    if (const auto* pdf = std::get_if<PdfArtwork>(&face.art)) return onto(target).after(shown_unit_square(*pdf));
    // Recoded pictures are stored upright (artwork/picture.h).
    const auto* facts = facts_of(face);
    return onto(target).after(turned_upright(facts->passage == artwork::Passage::through ? facts->turn : 1));
}

Sides beyond(const Rect& outer, const Rect& inner) {
    return {max({}, inner.left - outer.left), max({}, inner.bottom - outer.bottom), max({}, outer.right - inner.right),
            max({}, outer.top - inner.top)};
}

std::size_t index_of_artwork(Document& document, const PlacedArtwork& artwork) {
    auto& all = document.artwork;
    const auto same = std::find_if(all.begin(), all.end(), [&](const PlacedArtwork& a) { return a.file == artwork.file; });
    if (same != all.end()) return static_cast<std::size_t>(same - all.begin());
    all.push_back(artwork);
    return all.size() - 1;
}

}  // namespace qw::compose
