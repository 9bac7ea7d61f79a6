// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/words.h"
#include "compose/placement.h"

#include "base/fault.h"
#include "compose/face_art.h"
#include "compose/measure_rows.h"

namespace qw::compose {

namespace {

std::optional<Size> own_size(const Face& face) {
    const auto* facts = facts_of(face);
    if (!facts) return shape_of(face);
    if (!facts->density || facts->density->x <= 0 || facts->density->y <= 0) return std::nullopt;
    const Size stored{Length::inches(facts->width / facts->density->x), Length::inches(facts->height / facts->density->y)};
    return facts->turn >= 5 ? stored.turned() : stored;
}

Placement blank(const PrintFit& fit) {
    Placement p;
    p.sheet = fit.sheet;
    p.print_scale = p.scale = fit.scale;
    p.picture = fit.picture;
    p.visible = p.artwork = Rect::centred({}, fit.picture);
    return p;
}

Placement placed(std::size_t index, const Face& face, kit::Place place, Size drawn, const PrintFit& fit) {
    Placement p = blank(fit);
    p.face = index;
    const Size borderless = size_on(place, drawn, fit.sheet);
    p.artwork = Rect::centred(borderless * fit.scale, Rect::of(fit.sheet));
    p.visible = p.artwork.shared_with(p.picture);
    p.lost = beyond(p.artwork, p.picture);
    p.white = beyond(p.picture, p.artwork);
    p.scale = p.artwork.width() / drawn.width;
    if (const auto* facts = facts_of(face)) {
        p.ppi_x = facts->upright_width() / p.artwork.width().in_inches();
        p.ppi_y = facts->upright_height() / p.artwork.height().in_inches();
    }
    p.place = matrix_onto(face, p.artwork);
    return p;
}

/// Goes through a set's faces and puts each on its page.
class Composer {
public:
    Composer(const kit::Manifest& manifest, const kit::Set& set, const Edition& edition, const std::vector<Face>& faces)
        : manifest_(manifest), set_(set), edition_(edition), faces_(faces) {
        if (edition_.print == Print::borderless) edition_.margins = {};
    }

    ArtworkDocument run(const Date& date) {
        out_.document.title = manifest_.title + ": " + spaced_name(set_.name);
        out_.document.subject = manifest_.title + " " + manifest_.version + ", " + edition_.paper.title + ", " + name_of(edition_.print);
        out_.document.date = date;
        out_.document.duplex = duplex();
        for (std::size_t i = 0; i < faces_.size(); ++i) page(i);
        last_back();
        if (!faults_.empty()) throw Fault(FaultKind::not_understood, faults_);
        return std::move(out_);
    }

private:
    bool both_sides() const { return set_.sides == kit::Sides::duplex; }
    bool first_is_landscape() const { return !faces_.empty() && shape_of(faces_.front()).landscape(); }

    Duplex duplex() const {
        if (!both_sides()) return Duplex::simplex;
        return first_is_landscape() ? Duplex::flip_short_edge : Duplex::flip_long_edge;
    }

    void page(std::size_t index) {
        const Face& face = faces_[index];
        const bool landscape = both_sides() ? first_is_landscape() : shape_of(face).landscape();
        const PrintFit fit = fit_of(edition_, landscape);
        if (is_damaged(face)) return add(blank(fit), index);
        std::optional<Size> drawn = drawn_size(set_.drawn_at, face);
        if (!drawn && set_.place != kit::Place::as_drawn) drawn = shape_of(face);
        if (!drawn) return unknown_size(index);
        Placement p = placed(index, face, set_.place, *drawn, fit);
        add(p, index);
        draw(face, p);
    }

    void add(Placement placement, std::optional<std::size_t> index) {
        placement.face = index;
        Page page;
        page.size = placement.sheet;
        page.trim = page.bleed = placement.picture;
        out_.document.pages.push_back(page);
        out_.pages.push_back(placement);
    }

    void draw(const Face& face, const Placement& p) {
        Page& page = out_.document.pages.back();
        if (const auto* pdf = std::get_if<PdfArtwork>(&face.art)) {
            // What lies outside the crop box is no part of the artwork, so the clip is what is seen, not the picture.
            page.items.push_back(PdfFace{pdf->file, pdf->page, p.place, p.visible});
            return;
        }
        page.items.push_back(Picture{index_of_artwork(out_.document, std::get<PlacedArtwork>(face.art)), p.place, p.picture});
    }

    void last_back() {
        if (!both_sides() || faces_.size() % 2 == 0) return;
        if (set_.last_back) return add(blank(fit_of(edition_, first_is_landscape())), std::nullopt);
        faults_.push_back({"odd-faces", set_.mark, "set '" + set_.name + "' is duplex and has " + std::to_string(faces_.size()) + " faces",
                           "an even number, or 'last-back'", "add the last back, or write 'last-back: blank', or the path of a picture after it"});
    }

    void unknown_size(std::size_t index) {
        faults_.push_back({"unknown-size", set_.mark, faces_[index].shown + " does not say how large it is",
                           "'drawn-at: WIDTH x HEIGHT' in set '" + set_.name + "', or a density in the file",
                           "write 'drawn-at', or place the set as 'cover' or 'contain'"});
    }

    const kit::Manifest& manifest_;
    const kit::Set& set_;
    Edition edition_;
    const std::vector<Face>& faces_;
    ArtworkDocument out_;
    std::vector<FaultNote> faults_;
};

}  // namespace

std::optional<Size> drawn_size(const std::optional<Size>& drawn_at, const Face& face) {
    if (is_damaged(face)) return std::nullopt;
    if (!drawn_at) return own_size(face);
    return shape_of(face).landscape() ? drawn_at->as_landscape() : drawn_at->as_portrait();
}

Matrix turned_upright(int turn) {
    // Stored row 0 is the upper edge (v = 1), column 0 the left one (u = 0); the tag tells which edges of the upright
    // picture they are.
    switch (turn) {
        case 2: return {-1, 0, 0, 1, 1, 0};
        case 3: return {-1, 0, 0, -1, 1, 1};
        case 4: return {1, 0, 0, -1, 0, 1};
        case 5: return {0, -1, -1, 0, 1, 1};
        case 6: return {0, -1, 1, 0, 0, 1};
        case 7: return {0, 1, 1, 0, 0, 0};
        case 8: return {0, 1, -1, 0, 1, 0};
        default: return {};
    }
}

ArtworkDocument artwork_document(const kit::Manifest& manifest, const kit::Set& set, const Edition& edition,
                                 const std::vector<Face>& faces, const Date& date) {
    return Composer(manifest, set, edition, faces).run(date);
}

}  // namespace qw::compose
