// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/corner_drawing.h"

#include "compose/callouts.h"
#include "compose/clear_drawing.h"
#include "compose/dimension.h"
#include "compose/fractions.h"
#include "compose/named_figure.h"
#include "compose/spread.h"

#include <algorithm>
#include <numbers>

namespace qw::compose {

namespace {

/// The origin is the board's corner; the board lies to the left and below, the paper's edges are the turn-in away.
class CornerDrawing {
public:
    enum class Notes { beside, below, keyed };

    CornerDrawing(Canvas& canvas, const Rect& room, const journal::Measures& measures, const texts::Passages& words, double smaller, Notes notes)
        : canvas_(canvas), room_(room), measures_(measures), words_(words), scale_(smaller), notes_at_(notes),
          turn_in_(measures.named_length("turn-in")), cut_(measures.named_length("corner-cut")), seen_(turn_in_ * 1.3) {}

    bool draw() {
        const Length left = room_.left + line_depth();
        origin_ = {left + seen_ / scale_, room_.top - (in_line() ? Length::mm(1) : line_off + Length::mm(1)) - turn_in_ / scale_};
        shapes();
        dimensions();
        const Length low = at(-seen_, -seen_).y - Length::mm(1) - (notes_at_ == Notes::beside ? line_depth() : Length());
        const auto used = draw_notes(low);
        if (used) canvas_.words({left, low - *used - Length::mm(2.4)}, words_.line("scale", texts::Model().text("scale", scale_text(scale_))), setting::remark);
        return used.has_value();
    }

private:
    Point at(Length x, Length y) const { return {origin_.x + x / scale_, origin_.y + y / scale_}; }
    std::string shown(Length value) const { return real_fractions(show(value, measures_.ruler)); }
    bool in_line() const { return figure_in_line(canvas_, turn_in_ / scale_, shown(turn_in_), setting::table_figure); }
    Length line_depth() const { return line_off + beyond_line + (in_line() ? Length() : beside_line); }
    /// On the cut, x + y is this.
    Length cut_sum() const { return cut_ * std::numbers::sqrt2; }
    Length cut_end() const { return cut_sum() - turn_in_; }  ///< where the cut meets the paper's edges, along them

    void shapes() {
        const Length t = turn_in_;
        canvas_.fill({at(-seen_, {}).x, at({}, -seen_).y, origin_.x, origin_.y}, 0.92);
        canvas_.line(at(-seen_, {}), at({}, {}), weight::line);
        canvas_.line(at({}, {}), at({}, -seen_), weight::line);
        canvas_.line(at(-seen_, t), at(cut_end(), t), weight::heavy);
        canvas_.line(at(cut_end(), t), at(t, cut_end()), weight::heavy);
        canvas_.line(at(t, cut_end()), at(t, -seen_), weight::heavy);
        canvas_.line(at(cut_end(), t), at(t, t), weight::line, {Length::points(4), Length::points(2.5)});
        canvas_.line(at(t, t), at(t, cut_end()), weight::line, {Length::points(4), Length::points(2.5)});
        from_corner_to_cut();
    }

    /// Too short for arrows between: they point at it from both sides.
    void from_corner_to_cut() {
        const Length on_cut = cut_sum() / 2, tail = Length::mm(4.2);
        const auto arrow = [&](Point tip, double way) {
            const auto back = [&](Length along, Length aside) { return Point{tip.x + along * way + aside, tip.y + along * way - aside}; };
            canvas_.polygon({tip, back(Length::mm(1.7), Length::mm(0.32)), back(Length::mm(1.7), -Length::mm(0.32))}, 0);
            canvas_.line(tip, back(tail, {}), weight::hair);
        };
        arrow(at({}, {}), -1);
        arrow(at(on_cut, on_cut), 1);
        canvas_.line(at({}, {}), at(on_cut, on_cut), weight::hair);
    }

    void dimensions() {
        const Point low = at(-seen_, -seen_);
        // Leaders to notes below need the room under the paper; the turn-ins are equal.
        if (notes_at_ == Notes::beside) dimension_across(canvas_, at({}, {}).x, at(turn_in_, {}).x, low.y - line_off, low.y, shown(turn_in_), setting::table_figure);
        dimension_up(canvas_, low.x - line_off, at({}, {}).y, at({}, turn_in_).y, low.x, shown(turn_in_), setting::table_figure);
    }

    /// From the top down.
    std::vector<Callout> notes() const {
        const Length t = turn_in_, arrow = cut_sum() / 2 + Length::mm(4.2) * scale_;
        std::vector<Callout> all;
        all.push_back({at(t * 0.82, t * 0.82), words_.line("comes-off"), ""});
        all.push_back({at(arrow, arrow), words_.line("corner-to-cut"), named_figure(measures_, "corner-cut", measures_.ruler, Rounding::up)});
        const Length low = cut_end() * 0.55;
        all.push_back({at(cut_sum() - low, low), words_.line("cut-here"), ""});
        all.push_back({at(t * 0.6, -t * 1.0), words_.line("back-of-paper", texts::Model().text("piece", paper_title())), ""});
        const Length caliper = measures_.conditions.board_stock.caliper;
        all.push_back({at(-t * 0.25, -t * 1.2), words_.line("board-thick"), shown(caliper)});
        return all;
    }
    std::string paper_title() const {
        const journal::Piece* paper = measures_.piece("cover-paper");
        return paper ? paper->of->title : words_.line("cover-paper");
    }

    /// The height that they take below the drawing.
    std::optional<Length> draw_notes(Length low) {
        const Rect below{room_.left, room_.bottom, room_.right, low};
        if (notes_at_ == Notes::below) return draw_callouts(canvas_, notes(), below);
        if (notes_at_ == Notes::keyed) return draw_keyed_callouts(canvas_, notes(), below);
        return notes_beside(notes()) ? std::optional(Length()) : std::nullopt;
    }

    bool notes_beside(const std::vector<Callout>& notes) {
        const Length edge = at(turn_in_, {}).x, half_cap = canvas_.fonts().cap_height(setting::table_figure.cut, setting::table_figure.size) / 2;
        std::vector<Length> wanted;
        for (const Callout& note : notes) wanted.insert(wanted.begin(), note.dot.y);
        auto places = spread(wanted, note_step, room_.bottom + Length::mm(2.5), room_.top - Length::mm(2));
        if (!places) return false;
        std::reverse(places->begin(), places->end());
        for (std::size_t i = 0; i < notes.size(); ++i) {
            const Point bend{edge + Length::mm(1.5), notes[i].dot.y};
            canvas_.circle(notes[i].dot, Length::mm(0.5), std::nullopt, 0);
            canvas_.line(notes[i].dot, bend, weight::hair);
            canvas_.line(bend, {edge + note_off, (*places)[i]}, weight::hair);
            draw_words_and_figure(canvas_, {edge + note_off + Length::mm(1), (*places)[i] - half_cap}, notes[i].words, notes[i].figure);
        }
        return true;
    }

    static constexpr Length line_off = Length::mm(6), beyond_line = Length::mm(2.4), beside_line = Length::mm(5);
    static constexpr Length note_step = Length::mm(5.6), note_off = Length::mm(6);

    Canvas& canvas_;
    const Rect& room_;
    const journal::Measures& measures_;
    const texts::Passages& words_;
    double scale_;
    Notes notes_at_;
    Length turn_in_, cut_, seen_;
    Point origin_;
};

}  // namespace

bool draw_corner(Canvas& canvas, const Rect& room, const journal::Measures& measures, const texts::Passages& words) {
    if (measures.named_length("turn-in") <= Length() || measures.named_length("corner-cut") <= Length()) return false;
    using Notes = CornerDrawing::Notes;
    std::vector<Way> ways;
    for (const Notes notes : {Notes::beside, Notes::below, Notes::keyed})
        for (const double smaller : drawing_scales)
            ways.emplace_back([&, smaller, notes](Canvas& to) { return CornerDrawing(to, room, measures, words, smaller, notes).draw(); });
    return draw_first_clear(canvas, room, ways);
}

}  // namespace qw::compose
