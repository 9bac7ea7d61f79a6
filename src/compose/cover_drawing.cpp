// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/cover_drawing.h"

#include "compose/dimension.h"
#include "compose/flat_cover.h"
#include "compose/fractions.h"

#include <cstdio>

namespace qw::compose {

namespace {

constexpr double scales[] = {1, 1.5, 2, 2.5, 3, 3.5, 4, 5, 6, 8, 10};
const Setting& figure = setting::table_figure;

// What the dimensions and words take round the drawing.
const Length room_left = Length::mm(11), room_above = Length::mm(11), room_below = Length::mm(15);
const Length between = Length::mm(10), most_between = Length::mm(24), station_column = Length::mm(31);
const std::vector<Length> dash{Length::points(4), Length::points(2.5)};
const std::vector<Length> fold_dash{Length::points(9), Length::points(2.5), Length::points(1.5), Length::points(2.5)};

class CoverDrawing {
public:
    CoverDrawing(Canvas& canvas, const journal::Measures& measures, const texts::Passages& words)
        : canvas_(canvas), measures_(measures), words_(words), flat_(flat_cover(measures)) {}

    bool draw(const Rect& room) {
        if (!choose_scale(room)) return false;
        origin_ = {room.left + room_left, room.top - room_above - flat_.size.height / scale_};
        parts();
        if (!flat_.stations.empty()) stations(room);
        measured_sides();
        middle();
        return true;
    }

private:
    bool choose_scale(const Rect& room) {
        const Length wide = room.width() - room_left - (flat_.stations.empty() ? Length() : between + station_column);
        const Length high = room.height() - room_above - room_below;
        for (const double scale : scales)
            if (flat_.size.width / scale + strip_width() / scale <= wide && flat_.size.height / scale <= high) {
                scale_ = scale;
                return true;
            }
        return false;
    }

    Length strip_width() const { return flat_.spine ? flat_.spine->width() : Length(); }
    Point at(Length x, Length y) const { return {origin_.x + x / scale_, origin_.y + y / scale_}; }
    Rect at(const Rect& r) const { return {at(r.left, r.bottom).x, at(r.left, r.bottom).y, at(r.right, r.top).x, at(r.right, r.top).y}; }
    std::string length(Length value) const { return real_fractions(show(value, measures_.ruler)); }
    Length mid_x() const { return flat_.size.width / 2; }

    void parts() {
        if (flat_.paper) canvas_.frame(at(*flat_.paper), weight::heavy);
        const Length board_weight = flat_.paper ? weight::line : weight::heavy;
        for (const Rect& board : flat_.boards) canvas_.frame(at(board), board_weight, flat_.paper ? dash : std::vector<Length>{});
        if (flat_.spine) canvas_.frame(at(*flat_.spine), weight::heavy, {}, 0.9);
        if (flat_.tape) canvas_.frame(at(*flat_.tape), weight::line, dash);
        if (flat_.fold) canvas_.line(at(*flat_.fold, {}), at(*flat_.fold, flat_.size.height), weight::line, fold_dash);
        for (const Length down : flat_.stations) hole(at(mid_x(), flat_.size.height - down));
        for (const Rect& board : flat_.boards) name_of_board(board);
    }

    void hole(Point centre) { canvas_.circle(centre, Length::mm(0.7), weight::line, 1.0); }

    void name_of_board(const Rect& board) {
        const journal::Piece* piece = measures_.piece("board");
        const Rect drawn = at(board);
        if (canvas_.width(setting::label, piece->of->title) > drawn.width() - Length::mm(4)) return;
        canvas_.words(drawn.centre(), piece->of->title, setting::label, Canvas::Anchor::middle);
    }

    /// The left side's pieces: width above, height at the left; what surrounds the boards is measured outside.
    void measured_sides() {
        const Rect board = flat_.boards.front(), drawn = at(board);
        const Rect whole = at(Rect::of(flat_.size));
        dimension_across(canvas_, drawn.left, drawn.right, whole.top + Length::mm(6), flat_.paper ? drawn.top : whole.top, length(board.width()), figure);
        dimension_up(canvas_, whole.left - Length::mm(6), drawn.bottom, drawn.top, drawn.left, length(board.height()), figure);
    }

    /// Spine strip or whole cover paper below, and what joins the boards.
    void middle() {
        const Rect whole = at(Rect::of(flat_.size));
        const Length y = whole.bottom - Length::mm(6);
        if (flat_.spine) dimension_across(canvas_, at(*flat_.spine).left, at(*flat_.spine).right, y, whole.bottom, length(flat_.spine->width()), figure);
        if (flat_.paper) dimension_across(canvas_, whole.left, whole.right, y, whole.bottom, length(flat_.size.width), figure);
        const Length words_y = y - Length::mm(4.5);
        if (flat_.spine && flat_.gap > Length()) gap_note(words_y);
        if (flat_.tape) tape_note(words_y);
        scale_note(words_y);
    }

    void gap_note(Length y) {
        const Length x = flat_.boards.front().right + flat_.gap / 2;
        const Point dot = at(x, flat_.size.height * 0.08);
        const Point end{dot.x - Length::mm(9), y + Length::mm(4.5)};
        leader(canvas_, dot, end);
        const auto model = texts::Model().text("gap", length(flat_.gap));
        // May begin left of the cover: a number that is cut off is worse than none.
        canvas_.words({end.x - Length::mm(1), end.y - Length::mm(1)}, words_.line("gap", model), setting::other, Canvas::Anchor::end);
    }

    void tape_note(Length y) {
        const Point dot = at(flat_.tape->right, flat_.size.height * 0.08);
        const Point end{dot.x + Length::mm(9), y + Length::mm(4.5)};
        leader(canvas_, dot, end);
        const auto model = texts::Model().text("tape", measures_.piece("hinge-tape")->of->title).text("width", length(flat_.tape->width()));
        canvas_.words({end.x + Length::mm(1), end.y - Length::mm(1)}, words_.line("tape", model), setting::other);
    }

    void scale_note(Length y) {
        char shown[16];
        std::snprintf(shown, sizeof shown, "%g", scale_);
        canvas_.words({at(Rect::of(flat_.size)).left, y - Length::mm(3)}, words_.line("scale", texts::Model().text("scale", shown)), setting::remark);
    }

    /// The spine strip or the fold once more, by itself, with each hole's distance from the head in one running row.
    void stations(const Rect& room) {
        const Rect whole = at(Rect::of(flat_.size));
        const Length strip = strip_width() / scale_;
        const Length spare = room.right - station_column - strip - whole.right;
        const Length left = whole.right + min(spare, most_between), x = left + strip / 2;
        if (flat_.spine) canvas_.frame({left, whole.bottom, left + strip, whole.top}, weight::heavy, {}, 0.9);
        else canvas_.line({x, whole.bottom}, {x, whole.top}, weight::line, fold_dash);
        const Length run = left + strip + Length::mm(6), words_x = run + Length::mm(2.5);
        canvas_.line({left + strip + Length::mm(1), whole.top}, {run + Length::mm(1.6), whole.top}, weight::hair);
        const Length half_cap = canvas_.fonts().cap_height(figure.cut, figure.size) / 2;
        Length last = whole.top;
        for (const Length down : flat_.stations) {
            const Length y = whole.top - down / scale_;
            hole({x, y});
            canvas_.line({x + Length::mm(1.2), y}, {run + Length::mm(1.6), y}, weight::hair);
            canvas_.line({run, last}, {run, y}, weight::hair);
            arrowhead(canvas_, {run, y}, 0, -1);
            canvas_.words({words_x, y - half_cap}, length(down), figure);
            last = y;
        }
        canvas_.words_within({left, whole.top + Length::mm(4)}, room.right - left, words_.line("stations-heading"), setting::small_strong);
    }

    Canvas& canvas_;
    const journal::Measures& measures_;
    const texts::Passages& words_;
    FlatCover flat_;
    double scale_ = 1;
    Point origin_;
};

}  // namespace

bool draw_cover(Canvas& canvas, const Rect& room, const journal::Measures& measures, const texts::Passages& words) {
    return CoverDrawing(canvas, measures, words).draw(room);
}

}  // namespace qw::compose
