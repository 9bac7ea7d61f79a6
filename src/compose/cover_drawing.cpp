// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/cover_drawing.h"

#include "compose/callouts.h"
#include "compose/clear_drawing.h"
#include "compose/cover_dimensions.h"
#include "compose/dimension.h"
#include "compose/station_strip.h"

#include <algorithm>

namespace qw::compose {

namespace {

// Where words at leaders would make the cover smaller than the first, letters and a key take their place; where the
// stations would make it smaller than the second, it is drawn without their distances.
constexpr double least_with_words = 4, least_with_stations = 6;

enum class Stations { none, beside, below };
enum class Naming { words, letters };
struct Arrangement {
    double smaller = 1;
    Stations stations = Stations::none;
    Naming naming = Naming::words;
};

/// Best first.
std::vector<Arrangement> arrangements(bool any_stations) {
    std::vector<Arrangement> all;
    const auto add = [&](double least, std::vector<Stations> stations, Naming naming) {
        for (const double smaller : drawing_scales)
            for (const Stations where : stations)
                if (smaller >= 1 && smaller <= least) all.push_back({smaller, where, naming});
    };
    const std::vector<Stations> none{Stations::none}, with = any_stations ? std::vector<Stations>{Stations::beside, Stations::below} : none;
    add(least_with_words, with, Naming::words);
    add(least_with_stations, with, Naming::letters);
    add(least_with_words, none, Naming::words);
    for (const Naming naming : {Naming::letters, Naming::words}) add(100, none, naming);
    return all;
}

/// One way to draw the cover: at a scale, with the stations at one place.
class CoverDrawing {
public:
    CoverDrawing(Canvas& canvas, const Rect& room, const journal::Measures& measures, const texts::Passages& words, const FlatCover& flat,
                 const CoverDimensions& dimensions, const Arrangement& arrangement)
        : canvas_(canvas), room_(room), measures_(measures), words_(words), flat_(flat), dimensions_(dimensions), scale_(arrangement.smaller),
          stations_(arrangement.stations), naming_(arrangement.naming) {}

    bool draw() {
        place();
        if (flat_.zigzag) from_above();
        parts();
        upright_dimensions();
        dimensions_across();
        Length low = at({}, {}).y - Length::mm(1.5);
        const auto rows = (naming_ == Naming::words ? draw_callouts : draw_keyed_callouts)(canvas_, callouts_, {room_.left, room_.bottom, room_.right, low});
        if (!rows) return false;
        low -= *rows;
        if (stations_ == Stations::beside && !upright_strip()) return false;
        if (stations_ == Stations::below && !lying_strip(low)) return false;
        if (stations_ != Stations::below) canvas_.words({origin_.x, low - Length::mm(3.4)}, scale_note(), setting::remark);
        return true;
    }

private:
    Point at(Length x, Length y) const { return {origin_.x + x / scale_, origin_.y + y / scale_}; }
    Rect at(const Rect& r) const { return {at(r.left, r.bottom).x, at(r.left, r.bottom).y, at(r.right, r.top).x, at(r.right, r.top).y}; }
    Length height_from_above() const { return flat_.zigzag ? flat_.zigzag->leaves[1].y / scale_ + Length::mm(4) : Length(); }
    bool in_line(const Span& span) const { return figure_in_line(canvas_, (span.to - span.from) / scale_, span.figure, figure); }

    void place() {
        Length left = above_lines;
        for (const Span& span : dimensions_.up) left += in_line(span) ? first_line : first_line + beside_line;
        const Length above = first_line + (dimensions_.whole.empty() ? Length() : next_line) + above_lines + height_from_above();
        right_ = room_.right;
        if (stations_ == Stations::beside) right_ = right_ - station_column() - between;
        // By itself in the middle, so that words have room at both sides of it.
        const Length spare = stations_ == Stations::beside ? Length() : max({}, room_.width() - left * 2 - flat_.size.width / scale_) / 2;
        origin_ = {room_.left + left + spare, room_.top - above - flat_.size.height / scale_};
    }

    void parts() {
        if (flat_.cloth) canvas_.frame(at(*flat_.cloth), weight::heavy, {}, 0.92);
        for (const Rect& paper : flat_.turned_in) canvas_.frame(at(paper), weight::heavy, {}, 1.0);
        if (flat_.cloth && !flat_.turned_in.empty()) canvas_.frame(at(*flat_.cloth), weight::line, dash());
        if (flat_.paper) canvas_.frame(at(*flat_.paper), weight::heavy);
        const bool hidden = flat_.paper || flat_.cloth;
        for (const Rect& board : flat_.boards) canvas_.frame(at(board), hidden ? weight::line : weight::heavy, hidden ? dash() : std::vector<Length>{});
        if (flat_.spine && hidden) canvas_.frame(at(*flat_.spine), weight::line, dash());
        if (flat_.spine && !hidden) canvas_.frame(at(*flat_.spine), weight::heavy, {}, 0.92);
        if (flat_.tape) canvas_.frame(at(*flat_.tape), weight::line, dash());
        if (flat_.panel) panel();
        if (flat_.fold) canvas_.line(at(*flat_.fold, {}), at(*flat_.fold, flat_.size.height), weight::line, fold_dash());
        if (flat_.zigzag) from_the_front();
        for (const Length down : flat_.stations)
            for (const Length row : flat_.rows) hole(at(row, flat_.size.height - down));
        for (const Rect& board : flat_.boards) name_of_board(board);
    }

    void hole(Point centre) {
        const Length apart = flat_.rows.size() > 1 ? (flat_.rows[1] - flat_.rows[0]) / scale_ : Length::mm(9);
        canvas_.circle(centre, min(Length::mm(0.7), apart * 0.3), weight::line, 1.0);
    }

    void panel() {
        const Rect drawn = at(*flat_.panel);
        canvas_.fill({drawn.left, drawn.bottom + weight::heavy, drawn.right, drawn.top - weight::heavy}, 0.92);
        for (const Length x : {drawn.left, drawn.right}) canvas_.line({x, drawn.bottom}, {x, drawn.top}, weight::line, fold_dash());
    }

    /// Where a board is too narrow for it, its width is said in words, with its name.
    void name_of_board(const Rect& board) {
        const std::string title = measures_.piece("board")->of->title;
        const Rect drawn = at(board);
        if (canvas_.width(setting::label, title) > drawn.width() - Length::mm(4)) return;
        canvas_.words({drawn.centre().x, drawn.bottom + drawn.height() * 0.55}, title, setting::label, Canvas::Anchor::middle);
    }

    /// The concertina's edge as it is seen when it stands on the table.
    void from_above() {
        const Zigzag& z = *flat_.zigzag;
        const Length face = room_.top - height_from_above() + Length::mm(2.2), thick = Length::mm(1.1);
        const auto above = [&](Point p) { return Point{origin_.x + p.x / scale_, face + p.y / scale_}; };
        for (const Rect& board : flat_.boards) {
            const Rect drawn = at(board);
            canvas_.frame({drawn.left, face - thick, drawn.right, face}, weight::line, {}, 0.6);
        }
        for (std::size_t i = 1; i < z.leaves.size(); ++i) canvas_.line(above(z.leaves[i - 1]), above(z.leaves[i]), weight::line);
        const double part = z.guard / 2 / measures_.conditions.page.width;
        for (std::size_t join = 0; join < z.leaves.size() && part > 0; join += 2) {
            const Point at_join = z.leaves[join];
            const auto along = [&](const Point& leaf) { return above({at_join.x + (leaf.x - at_join.x) * part, leaf.y * part}); };
            if (join > 0) canvas_.line(above(at_join), along(z.leaves[join - 1]), weight::heavy);
            if (join + 1 < z.leaves.size()) canvas_.line(above(at_join), along(z.leaves[join + 1]), weight::heavy);
        }
        const auto model = texts::Model().text("count", std::to_string(z.sheets)).text("drawn", std::to_string(z.drawn)).truth("part", z.drawn < z.sheets);
        const std::string from_above = words_.line("from-above");
        const Length before_pages = above(z.leaves[0]).x - Length::mm(2) - canvas_.width(setting::remark, from_above);
        canvas_.words({min(origin_.x, before_pages), face + Length::mm(1.6)}, from_above, setting::remark);
        callouts_.push_back({at((z.leaves[0].x + z.leaves[1].x) * 0.5, z.low + (z.high - z.low) * 0.2), words_.line("sheets", model), ""});
    }

    void from_the_front() {
        const Zigzag& z = *flat_.zigzag;
        canvas_.frame(at({z.leaves.front().x, z.low, z.leaves.back().x, z.high}), weight::line);
        for (const Point& leaf : z.leaves) canvas_.line(at(leaf.x, z.low), at(leaf.x, z.high), weight::line);
        if (z.guard <= Length()) return;
        const Length slanting = z.guard / 2 * ((z.leaves[1].x - z.leaves[0].x) / measures_.conditions.page.width);
        const auto edge = [&](Length x) { canvas_.line(at(x, z.low), at(x, z.high), weight::hair, dash()); };
        for (std::size_t join = 0; join < z.leaves.size(); join += 2) {  // at the ends, one half lies on the board
            edge(z.leaves[join].x - (join == 0 ? z.guard / 2 : slanting));
            edge(z.leaves[join].x + (join + 1 == z.leaves.size() ? z.guard / 2 : slanting));
        }
    }

    void upright_dimensions() {
        Length x = origin_.x;
        for (const Span& span : dimensions_.up) {
            x -= first_line;
            dimension_up(canvas_, x, at({}, span.from).y, at({}, span.to).y, at(span.off, {}).x, span.figure, figure);
            if (!in_line(span)) x -= beside_line;
        }
    }

    void dimensions_across() {
        Length y = at({}, flat_.size.height).y + first_line;
        for (const Remark& remark : dimensions_.remarks) call_out(remark);
        bool any = false;
        for (const Span& span : dimensions_.across) {
            if (in_line(span)) across(span, y), any = true;
            else call_out(span.else_remark);
        }
        if (any) y += next_line;
        for (const Span& span : dimensions_.whole) across(span, y);
    }
    void across(const Span& span, Length y) {
        dimension_across(canvas_, at(span.from, {}).x, at(span.to, {}).x, y, at({}, span.off).y, span.figure, figure);
    }
    void call_out(const Remark& remark) {
        if (!remark.words.empty()) callouts_.push_back({at(remark.spot.x, remark.spot.y), remark.words, remark.figure});
    }

    /// The spine or the fold once more, by itself.
    Strip strip() const {
        Strip strip{flat_.spine ? flat_.spine->width() : flat_.panel ? flat_.panel->width() : Length(), flat_.size.height, flat_.stations, {}, measures_.ruler};
        for (const Length row : flat_.rows) strip.rows.push_back(row - flat_.size.width / 2);
        return strip;
    }

    Length station_column() const {
        return max(strip().width / scale_ + width_of_distances(canvas_, strip()), canvas_.width(setting::small_strong, words_.line("stations-heading")));
    }

    bool upright_strip() {
        const Rect whole = at(Rect::of(flat_.size));
        const Length most = right_ + between - whole.right;
        const Length x = whole.right + min(most, most_between);
        canvas_.words({x, whole.top + Length::mm(6)}, words_.line("stations-heading"), setting::small_strong);
        return most >= between && draw_upright_strip(canvas_, {x, whole.top}, scale_, strip(), room_.bottom, whole.top + Length::mm(4));
    }

    std::string scale_note() const { return words_.line("scale", texts::Model().text("scale", scale_text(scale_))); }

    bool lying_strip(Length low) {
        low -= Length::mm(5.5);
        const Length left = room_.centre().x - strip().length / scale_ / 2;
        canvas_.words({left, low}, words_.line("stations-heading"), setting::small_strong);
        const Length after_heading = left + canvas_.width(setting::small_strong, words_.line("stations-heading")) + Length::mm(5);
        canvas_.words({max(after_heading, left + strip().length / scale_ - canvas_.width(setting::remark, scale_note())), low}, scale_note(), setting::remark);
        low -= Length::mm(2.5);
        return draw_lying_strip(canvas_, {room_.left, room_.bottom, room_.right, low}, left, scale_, strip()).has_value();
    }

    static constexpr Setting figure = setting::table_figure;
    // From the drawing to the first line of dimensions, from line to line, and to one whose figure stands beside its line.
    static constexpr Length first_line = Length::mm(6), next_line = Length::mm(7), beside_line = Length::mm(5), above_lines = Length::mm(2.4);
    static constexpr Length between = Length::mm(8), most_between = Length::mm(24);
    static std::vector<Length> dash() { return {Length::points(4), Length::points(2.5)}; }
    static std::vector<Length> fold_dash() { return {Length::points(9), Length::points(2.5), Length::points(1.5), Length::points(2.5)}; }

    Canvas& canvas_;
    const Rect& room_;
    const journal::Measures& measures_;
    const texts::Passages& words_;
    const FlatCover& flat_;
    const CoverDimensions& dimensions_;
    double scale_;
    Stations stations_;
    Naming naming_;
    Point origin_;
    Length right_;                  ///< where the stations' column begins
    std::vector<Callout> callouts_;
};

}  // namespace

bool draw_cover(Canvas& canvas, const Rect& room, const journal::Measures& measures, const texts::Passages& words) {
    if (measures.journal->picture == "none") return false;
    const FlatCover flat = flat_cover(measures);
    const CoverDimensions dimensions = cover_dimensions(flat, measures, words);
    std::vector<Way> ways;
    for (const Arrangement& arrangement : arrangements(!flat.stations.empty()))
        ways.emplace_back([&, arrangement](Canvas& to) { return CoverDrawing(to, room, measures, words, flat, dimensions, arrangement).draw(); });
    return draw_first_clear(canvas, room, ways);
}

}  // namespace qw::compose
