// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/words.h"
#include "compose/part_sheets.h"

#include "base/fault.h"
#include "compose/face_art.h"
#include "compose/measure_rows.h"
#include "compose/part_legend.h"
#include "compose/part_lines.h"
#include "parts/printing.h"

#include <algorithm>
#include <array>

namespace qw::compose {

namespace {

/// From parts to words that stand beside them.
const Length clear_of_parts = Length::mm(1.5);

constexpr Matrix mirrored_at_zero{-1, 0, 0, 1, 0, 0};
Matrix mirrored_on(Size sheet) { return {-1, 0, 0, 1, sheet.width.in_points(), 0}; }

/// Counter-clockwise about the origin; exact, so that right angles stay right.
Matrix quarter_turned(int turns) {
    constexpr std::array<Matrix, 4> all{Matrix{}, Matrix{0, 1, -1, 0, 0, 0}, Matrix{-1, 0, 0, -1, 0, 0}, Matrix{0, -1, 1, 0, 0, 0}};
    return all[static_cast<std::size_t>(((turns % 4) + 4) % 4)];
}

/// How a set lies on the paper when it is held in one of two ways.
struct Packed {
    Size sheet;
    Rect area;                         ///< what may be drawn on
    parts::SheetFill fill;

    std::size_t turned() const {
        return static_cast<std::size_t>(std::count_if(fill.spots.begin(), fill.spots.end(), [](const parts::Spot& s) { return s.quarter_turns != 0; }));
    }
    /// More parts, then fewer that lie on their side, then as the pages of a journal are held.
    bool better_than(const Packed& other) const {
        if (fill.spots.size() != other.fill.spots.size()) return fill.spots.size() > other.fill.spots.size();
        return turned() < other.turned();
    }
};

class PartComposer {
public:
    PartComposer(const kit::Manifest& manifest, const kit::Set& set, const Edition& edition, const parts::Net& net, const parts::Folded& folded,
                 const PartArtwork& artwork, const kit::PartRules& rules, const type::Fonts& fonts, const texts::Passages& words)
        : manifest_(manifest), set_(set), edition_(edition), net_(net), folded_(folded), artwork_(artwork), rules_(rules), fonts_(fonts), words_(words) {
        if (edition_.print == Print::borderless) edition_.margins = {};
    }

    PartDocument run(const Date& date) {
        describe(date);
        if (artwork_.parts == 0) return std::move(out_);
        front_ = areas_of(parts::Side::front);
        back_ = areas_of(parts::Side::back);
        shape_ = parts::footprint(net_, front_, back_);
        pack();
        if (out_.lack) return std::move(out_);
        lines_ = lines_of(net_, folded_);
        for (std::size_t sheet = 0; sheet < out_.sheets; ++sheet) {
            front(sheet);
            if (!back_.empty()) back(sheet);
        }
        if (!faults_.empty()) throw Fault(FaultKind::not_understood, faults_);
        tell_saved();
        return std::move(out_);
    }

private:
    void describe(const Date& date) {
        Document& document = out_.document;
        document.title = manifest_.title + ": " + spaced_name(set_.name);
        document.subject = manifest_.title + " " + manifest_.version + ", " + edition_.paper.title + ", " + name_of(edition_.print);
        document.date = date;
    }

    /// The faces of a side that at least one part has artwork for. Bleed that was drawn shrinks with the print; what hides
    /// a sheet that is turned over crookedly does not.
    std::vector<parts::FaceArea> areas_of(parts::Side side) const {
        const double scale = net_.conditions.scale;
        parts::Bleeds bleeds{set_.bleed * scale, rules_.over_fold * scale};
        if (side == parts::Side::back) bleeds.outward = max(bleeds.outward, rules_.back_shift);
        std::vector<parts::FaceArea> areas = parts::printed(net_, folded_, side, bleeds);
        std::erase_if(areas, [&](const parts::FaceArea& area) { return !has_artwork(net_.faces[area.face].name); });
        return areas;
    }
    const std::vector<std::optional<std::size_t>>* artwork_of(const std::string& face) const {
        const auto found = artwork_.of_parts.find(face);
        return found == artwork_.of_parts.end() ? nullptr : &found->second;
    }
    bool has_artwork(const std::string& face) const {
        const auto* all = artwork_of(face);
        return all && std::any_of(all->begin(), all->end(), [](const auto& one) { return one.has_value(); });
    }

    /// Half the cut line lies outside of what it cuts.
    Rect area_of(Size sheet) const {
        if (edition_.print == Print::borderless) return Rect::of(sheet).inset(rules_.edge_room);
        return fit_of(edition_, sheet.landscape()).printable;
    }
    Rect packing_area(const Rect& area) const { return area.inset(rules_.cut.weight / 2); }

    void pack() {
        for (const Size sheet : {edition_.paper.size.as_landscape(), edition_.paper.size.as_portrait()}) {
            Packed packed{sheet, area_of(sheet), {}};
            packed.fill = parts::fill_sheet(shape_, packing_area(packed.area).size(), rules_.scissors_room, artwork_.parts);
            if (packed_.fill.spots.empty() || packed.better_than(packed_)) packed_ = std::move(packed);
        }
        if (packed_.fill.spots.empty()) {
            out_.lack = parts::lack_of(shape_, packing_area(packed_.area).size());
            return;
        }
        centre();
        out_.a_sheet = packed_.fill.spots.size();
        out_.sheets = (artwork_.parts + out_.a_sheet - 1) / out_.a_sheet;
        out_.exact = packed_.fill.exact || out_.sheets == 1;
        if (!back_.empty()) out_.document.duplex = packed_.sheet.landscape() ? Duplex::flip_short_edge : Duplex::flip_long_edge;
    }

    /// The edges of a sheet are where printers are least exact.
    void centre() {
        std::vector<parts::Region> copies;
        for (const parts::Spot& spot : packed_.fill.spots) {
            Matrix place = quarter_turned(spot.quarter_turns);
            place.e = spot.by.x.in_points();
            place.f = spot.by.y.in_points();
            copies.push_back(parts::mapped(shape_, place));
        }
        const Rect block = parts::bounds(parts::united(copies)), wanted = Rect::centred(block.size(), Rect::of(packing_area(packed_.area).size()));
        for (parts::Spot& spot : packed_.fill.spots) spot.by = {spot.by.x + wanted.left - block.left, spot.by.y + wanted.bottom - block.bottom};
    }

    /// From the flat net to the front of the sheet.
    Matrix place_of(std::size_t part) const {
        const parts::Spot& spot = packed_.fill.spots[part % out_.a_sheet];
        const Rect area = packing_area(packed_.area);
        Matrix place = quarter_turned(spot.quarter_turns);
        place.e = (area.left + spot.by.x).in_points();
        place.f = (area.bottom + spot.by.y).in_points();
        return place;
    }
    std::vector<std::size_t> parts_on(std::size_t sheet) const {
        std::vector<std::size_t> all;
        for (std::size_t i = sheet * out_.a_sheet; i < std::min(artwork_.parts, (sheet + 1) * out_.a_sheet); ++i) all.push_back(i);
        return all;
    }

    void front(std::size_t sheet) {
        Canvas canvas(packed_.sheet, fonts_);
        for (const std::size_t part : parts_on(sheet)) pictures(canvas, part, front_, place_of(part), {});
        for (const std::size_t part : parts_on(sheet)) draw_part_lines(canvas, lines_, place_of(part), rules_, words_.line("glue"));
        legend(canvas, sheet);
        add(std::move(canvas));
    }

    /// The sheet turns over sideways: the part's front side, mirrored, is what lies there.
    void back(std::size_t sheet) {
        Canvas canvas(packed_.sheet, fonts_);
        for (const std::size_t part : parts_on(sheet))
            pictures(canvas, part, back_, mirrored_on(packed_.sheet).after(place_of(part)).after(mirrored_at_zero), mirrored_at_zero);
        add(std::move(canvas));
    }

    void add(Canvas canvas) {
        Page page = std::move(canvas).finish();
        page.trim = page.bleed = packed_.area;
        out_.document.pages.push_back(std::move(page));
    }

    /// `to_side` leads from the flat net to its side as people look at it, `place` from there to the page.
    void pictures(Canvas& canvas, std::size_t part, const std::vector<parts::FaceArea>& areas, const Matrix& place, const Matrix& to_side) {
        for (const parts::FaceArea& area : areas) {
            const auto& all = *artwork_of(net_.faces[area.face].name);
            if (part >= all.size() || !all[part] || area.ink.empty()) continue;
            const Face& face = artwork_.faces.at(*all[part]);
            if (is_damaged(face)) continue;
            std::optional<Size> drawn = drawn_size(set_.drawn_at, face);
            if (!drawn && set_.place == kit::Place::as_drawn) {
                unknown_size(face);
                continue;
            }
            PartPicture told;
            told.page = out_.document.pages.size();
            told.part = part;
            told.face = area.face;
            told.art = *all[part];
            picture(canvas, area, face, drawn.value_or(shape_of(face)), place, to_side, told);
        }
    }

    void picture(Canvas& canvas, const parts::FaceArea& area, const Face& face, Size drawn, const Matrix& place, const Matrix& to_side, PartPicture told) {
        const Matrix upright = quarter_turned(-net_.faces[area.face].head), to_page = place.after(quarter_turned(net_.faces[area.face].head));
        const Rect canvas_upright = mapped(mapped(area.canvas, to_side), upright);
        const Size printed = set_.place == kit::Place::as_drawn ? drawn * net_.conditions.scale : size_on(set_.place, drawn, canvas_upright.size());
        const Rect target = Rect::centred(printed, canvas_upright);
        told.scale = printed.width / drawn.width;
        told.white = beyond(canvas_upright, target);
        told.lost = beyond(target, canvas_upright);
        told.trim = mapped(mapped(area.frame, to_side), place);
        if (const auto* facts = facts_of(face)) {
            told.ppi_x = facts->upright_width() / printed.width.in_inches();
            told.ppi_y = facts->upright_height() / printed.height.in_inches();
        }
        const Rect clip = mapped(target.shared_with(canvas_upright), to_page).shared_with(packed_.area);
        const Shape shape = parts::mapped(parts::mapped(area.ink, to_side), place);
        const Matrix matrix = to_page.after(matrix_onto(face, target));
        if (const auto* pdf = std::get_if<PdfArtwork>(&face.art)) canvas.add(PdfFace{pdf->file, pdf->page, matrix, clip, shape});
        else canvas.add(Picture{index_of_artwork(out_.document, std::get<PlacedArtwork>(face.art)), matrix, clip, shape});
        out_.pictures.push_back(told);
    }

    void unknown_size(const Face& face) {
        faults_.push_back({"unknown-size", set_.mark, face.shown + " does not say how large it is",
                           "'drawn-at: WIDTH x HEIGHT' in set '" + set_.name + "', or a density in the file",
                           "write 'drawn-at', or place the set as 'cover' or 'contain'"});
    }

    void legend(Canvas& canvas, std::size_t sheet) {
        const auto score = [&](bool valley) { return std::any_of(lines_.scores.begin(), lines_.scores.end(), [&](const auto& s) { return s.valley == valley; }); };
        const bool glue = std::any_of(lines_.tabs.begin(), lines_.tabs.end(), [](const auto& tab) { return !tab.empty(); });
        texts::Model model;
        model.text("kit", manifest_.title).text("version", manifest_.version).text("set", spaced_name(set_.name)).text("paper", edition_.paper.title);
        model.text("print", words_.line(name_of(edition_.print))).text("sheet", std::to_string(sheet + 1)).text("sheets", std::to_string(out_.sheets));
        draw_part_legend(canvas, {score(true), score(false), !lines_.holes.empty(), glue, words_.line("sheet", model)}, packed_.area, taken(sheet), rules_, words_);
    }

    /// Around the panels with all that is printed beyond them.
    std::vector<Rect> taken(std::size_t sheet) const {
        const Length beyond_cut = max(set_.bleed * net_.conditions.scale, rules_.cut.weight / 2) + clear_of_parts;
        std::vector<Rect> all;
        for (const std::size_t part : parts_on(sheet))
            for (const parts::Panel& panel : net_.panels) all.push_back(mapped(parts::bounds(panel.region), place_of(part)).inset(-beyond_cut));
        return all;
    }

    /// Of all pictures that are printed, by their areas.
    void tell_saved() {
        double white = 0, all = 0;
        for (const PartPicture& picture : out_.pictures)
            for (const auto* areas : {&front_, &back_})
                for (const parts::FaceArea& area : *areas) {
                    if (area.face != picture.face || area.saved >= 1) continue;
                    const double whole = parts::area_mm2(area.ink) / (1 - area.saved);
                    white += whole * area.saved;
                    all += whole;
                }
        out_.saved = all > 0 ? white / all : 0;
    }

    const kit::Manifest& manifest_;
    const kit::Set& set_;
    Edition edition_;
    const parts::Net& net_;
    const parts::Folded& folded_;
    const PartArtwork& artwork_;
    const kit::PartRules& rules_;
    const type::Fonts& fonts_;
    const texts::Passages& words_;
    std::vector<parts::FaceArea> front_, back_;
    parts::Region shape_;
    Packed packed_;
    PartLines lines_;
    PartDocument out_;
    std::vector<FaultNote> faults_;
};

}  // namespace

PartDocument part_document(const kit::Manifest& manifest, const kit::Set& set, const Edition& edition, const parts::Net& net,
                           const parts::Folded& folded, const PartArtwork& artwork, const kit::PartRules& rules,
                           const type::Fonts& fonts, const texts::Passages& words, const Date& date) {
    return PartComposer(manifest, set, edition, net, folded, artwork, rules, fonts, words).run(date);
}

}  // namespace qw::compose
