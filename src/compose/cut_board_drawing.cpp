// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/cut_board_drawing.h"

#include "compose/dimension.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

namespace qw::compose {

namespace {

constexpr Grey left_over_grey = 0.88;
const Length round_number = Length::mm(0.5), arrow_room = Length::mm(4), most_arrow = Length::mm(26), leader_row_gap = Length::mm(1.6);
const Length letter_half = Length::mm(2.3);
const Setting& number_setting = setting::small_strong;

Rect square_about(Point centre, Length by) { return {centre.x - by, centre.y - by, centre.x + by, centre.y + by}; }

class CutBoardDrawing {
    using Line = ClearSpace::Line;

public:
    CutBoardDrawing(Canvas& canvas, Point top_left, Length right, double smaller, const CutBoardPicture& picture)
        : canvas_(canvas), picture_(picture), smaller_(smaller), top_(top_left.y), bottom_(), room_() {
        const Size drawn{picture.size.width / smaller, picture.size.height / smaller};
        board_ = Rect::at({top_left.x + RoundBoard::left, top_left.y - RoundBoard::above - drawn.height}, drawn);
        room_ = {top_left.x, board_.bottom - RoundBoard::below, right, top_left.y};
        bottom_ = room_.bottom;
    }

    std::optional<DrawnBoard> draw(std::size_t most_left_out) {
        if (board_.right + RoundBoard::right > room_.right) return std::nullopt;
        for (const Rect& rest : picture_.board.left_over) canvas_.fill(drawn(rest), left_over_grey);
        canvas_.frame(board_, weight::line);
        lines();
        grain();
        pieces();
        for (std::size_t i = 0; i < picture_.board.cuts.size(); ++i) {
            if (made_.left_out() > most_left_out) return std::nullopt;
            if (const int n = static_cast<int>(i) + 1; !number(n, drawn(picture_.board.cuts[i]))) made_.numbers_left_out.push_back(n);
        }
        if (made_.left_out() > most_left_out) return std::nullopt;
        for (const Rect& rest : picture_.board.left_over) left_over(drawn(rest));
        made_.height = top_ - bottom_;
        return made_;
    }

private:
    Length drawn_x(Length x) const { return board_.left + x / smaller_; }
    Length drawn_y(Length y) const { return board_.bottom + y / smaller_; }
    Rect drawn(const Rect& r) const { return {drawn_x(r.left), drawn_y(r.bottom), drawn_x(r.right), drawn_y(r.top)}; }
    Line drawn(const journal::StraightCut& cut) const {
        const Rect of = drawn(cut.of);
        if (cut.across) return {{of.left, drawn_y(cut.at)}, {of.right, drawn_y(cut.at)}};
        return {{drawn_x(cut.at), of.bottom}, {drawn_x(cut.at), of.top}};
    }

    void lines() {
        for (const auto& cut : picture_.board.cuts) space_.take(drawn(cut));
        const Point corners[] = {{board_.left, board_.bottom}, {board_.right, board_.bottom}, {board_.right, board_.top}, {board_.left, board_.top}};
        for (std::size_t i = 0; i < 4; ++i) space_.take(Line{corners[i], corners[(i + 1) % 4]});
    }

    /// A double arrow beside the board, with its word in the middle.
    void grain() {
        if (picture_.board.grain == "any") return;
        const bool up = picture_.board.grain == "height";
        const std::string word = picture_.words.line("grain");
        const Setting& set = setting::remark;
        const Length gap = canvas_.width(set, word) / 2 + Length::mm(1), half_cap = canvas_.fonts().cap_height(set.cut, set.size) / 2;
        const Length reach = max(min((up ? board_.height() : board_.width()) / 2, most_arrow / 2), gap + Length::mm(3.5));
        const Point c = up ? Point{board_.left - arrow_room, board_.centre().y} : Point{board_.centre().x, board_.bottom - arrow_room};
        const auto along = [&](Length by) { return up ? Point{c.x, c.y + by} : Point{c.x + by, c.y}; };
        for (const int way : {-1, 1}) {
            canvas_.line(along(gap * way), along(reach * way), weight::line);
            arrowhead(canvas_, along(reach * way), up ? 0 : way, up ? way : 0);
        }
        if (up) canvas_.words({c.x + half_cap, c.y}, word, set, Canvas::Anchor::middle, 90);
        else canvas_.words({c.x, c.y - half_cap}, word, set, Canvas::Anchor::middle);
        const Length side = Length::mm(2);
        space_.take(up ? Rect{c.x - side, c.y - reach, c.x + side, c.y + reach} : Rect{c.x - reach, c.y - side, c.x + reach, c.y + side});
    }

    void pieces() {
        std::vector<const journal::PlacedPiece*> small;
        for (const auto& placed : picture_.board.pieces)
            if (!set_on_piece(canvas_, space_, drawn(placed.at), picture_.labels[placed.piece])) small.push_back(&placed);
        if (small.size() == 1 && named_below(*small.front())) return;
        for (const auto* placed : small) lettered(*placed);
    }

    /// A row below the board, and a leader that falls to it from the piece.
    bool named_below(const journal::PlacedPiece& placed) {
        const PieceLabel& label = picture_.labels[placed.piece];
        const Size size = size_in_a_row(canvas_, label);
        if (size.width > room_.width()) return false;
        const Rect piece = drawn(placed.at);
        const Length row_top = bottom_ - leader_row_gap, steps = piece.width() / 20;
        for (const int step : {10, 6, 14, 2, 18, 4, 16, 8, 12, 1, 19}) {
            const Point dot{piece.left + steps * step, piece.centre().y};
            const Point foot{dot.x, row_top + Length::mm(0.4)};
            if (!space_.holds(Line{dot, foot})) continue;
            leader(canvas_, dot, foot);
            space_.take(Line{dot, foot});
            space_.take(square_about(dot, Length::mm(0.7)));
            const Length left = max(min(dot.x - size.width / 2, room_.right - size.width), room_.left);
            set_in_a_row(canvas_, space_, {left, row_top - size.height}, label);
            bottom_ = row_top - size.height - leader_row_gap;
            return true;
        }
        return false;
    }

    /// A letter on the piece or, where it is too small even for that, beside it; equal pieces have the same letter.
    void lettered(const journal::PlacedPiece& placed) {
        std::vector<std::size_t>& known = made_.lettered;
        const auto letter = static_cast<std::size_t>(std::find(known.begin(), known.end(), placed.piece) - known.begin());
        if (letter == known.size()) known.push_back(placed.piece);
        if (!letter_on(letter_of(letter), drawn(placed.at))) ++made_.letters_left_out;
    }

    void put_letter(const std::string& letter, Point centre) {
        const Setting& set = setting::label;
        canvas_.words({centre.x, centre.y - canvas_.fonts().cap_height(set.cut, set.size) / 2}, letter, set, Canvas::Anchor::middle);
        space_.take(square_about(centre, letter_half));
    }

    bool letter_on(const std::string& letter, const Rect& piece) {
        for (const double x : {0.5, 0.25, 0.75})
            for (const double y : {0.5, 0.25, 0.75}) {
                const Point centre{piece.left + piece.width() * x, piece.bottom + piece.height() * y};
                if (!piece.holds(square_about(centre, letter_half)) || !space_.holds(square_about(centre, letter_half))) continue;
                put_letter(letter, centre);
                return true;
            }
        const auto put = [&](Point centre) { put_letter(letter, centre); };
        const bool upright = piece.height() > piece.width();
        const Point c = piece.centre();
        const Line middle = upright ? Line{{c.x, piece.bottom}, {c.x, piece.top}} : Line{{piece.left, c.y}, {piece.right, c.y}};
        return beside(middle, letter_half, put);
    }

    /// On its line where there is room; else at the line's end outside the board; else beside the line with a leader.
    bool number(int n, const Line& line) {
        return on_line(n, line) || at_end(n, line) || beside(line, cut_number_radius(n), [&](Point centre) { put_number(n, centre); });
    }

    static Point between(const Line& line, double share) {
        return {line.first.x + (line.second.x - line.first.x) * share, line.first.y + (line.second.y - line.first.y) * share};
    }
    static Length length_of(const Line& line) { return max(line.second.x - line.first.x, line.second.y - line.first.y); }
    static bool level(const Line& line) { return line.first.y == line.second.y; }

    bool on_line(int n, const Line& line) {
        const Length r = cut_number_radius(n), from_end = r + Length::mm(0.8), length = length_of(line);
        for (const double share : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88, 0.06, 0.94}) {
            if (length * share < from_end || length * (1 - share) < from_end) continue;
            const Point centre = between(line, share);
            if (!space_.holds(square_about(centre, r + round_number), &line)) continue;
            const Length gap_before = length * share - r, gap_after = length * share + r;
            canvas_.line(line.first, between(line, gap_before / length), weight::heavy);
            canvas_.line(between(line, gap_after / length), line.second, weight::heavy);
            put_number(n, centre);
            return true;
        }
        canvas_.line(line.first, line.second, weight::heavy);
        return false;
    }

    void put_number(int n, Point centre) {
        cut_number(canvas_, centre, n);
        space_.take(square_about(centre, cut_number_radius(n) + round_number));
    }

    /// A number or letter of half-size `r` at the end of a leader; `dx`, `dy` is its direction, of length 1.
    template <typename Put> bool away(Point from, double dx, double dy, Length distance, Length r, Put&& put) {
        const Point centre{from.x + distance * dx, from.y + distance * dy}, touch{centre.x - r * dx, centre.y - r * dy};
        const Rect box = square_about(centre, r + round_number);
        if (!room_.holds(box) || !space_.holds(box) || !space_.holds(Line{from, touch})) return false;
        canvas_.line(from, touch, weight::hair);
        space_.take(Line{from, touch});
        put(centre);
        return true;
    }

    bool at_end(int n, const Line& line) {
        const Length r = cut_number_radius(n), near = r + Length::mm(1.2);
        const auto put = [&](Point centre) { put_number(n, centre); };
        for (const Length distance : {near, near + Length::mm(1.4)})
            for (const bool second : {true, false}) {
                const Point end = second ? line.second : line.first;
                const bool at_edge = level(line) ? end.x == (second ? board_.right : board_.left) : end.y == (second ? board_.top : board_.bottom);
                const int way = second ? 1 : -1;
                if (at_edge && away(end, level(line) ? way : 0, level(line) ? 0 : way, distance, r, put)) return true;
            }
        return false;
    }

    /// Beside a line, as near as there is room, straight off it if that goes and else aslant.
    template <typename Put> bool beside(const Line& line, Length r, Put&& put) {
        for (Length distance = r + Length::mm(0.9); distance < room_.width() + room_.height(); distance += Length::mm(1))
            for (const double degrees : {90.0, 60.0, 120.0, 30.0, 150.0})
                for (const double share : {0.5, 0.3, 0.7, 0.15, 0.85, 0.05, 0.95})
                    for (const int way : {1, -1}) {
                        const double angle = (degrees * way + (level(line) ? 0 : 90)) * std::numbers::pi / 180;
                        const Point from = between(line, share);
                        if (!away(from, std::cos(angle), std::sin(angle), distance, r, put)) continue;
                        canvas_.circle(from, Length::mm(0.5), std::nullopt, 0);
                        return true;
                    }
        return false;
    }

    /// The word, where it has room; the grey says it, too.
    void left_over(const Rect& rest) {
        const std::string word = picture_.words.line("left-over");
        const Setting& set = setting::remark;
        const Length w = canvas_.width(set, word), cap = canvas_.fonts().cap_height(set.cut, set.size), low = canvas_.fonts().descent(set.cut, set.size);
        for (const bool turned : {false, true})
            for (const double share : {0.5, 0.25, 0.75}) {
                const Point c{rest.left + rest.width() * (turned ? 0.5 : share), rest.bottom + rest.height() * (turned ? share : 0.5)};
                const Length half = (cap + low) / 2;
                const Rect box = turned ? Rect{c.x - half, c.y - w / 2, c.x + half, c.y + w / 2} : Rect{c.x - w / 2, c.y - half, c.x + w / 2, c.y + half};
                if (!rest.inset(Length::mm(0.6)).holds(box) || !space_.holds(box.inset(-Length::mm(0.8)))) continue;
                canvas_.words(turned ? Point{c.x + half - low, c.y} : Point{c.x, c.y - half + low}, word, set, Canvas::Anchor::middle, turned ? 90 : 0);
                space_.take(box);
                return;
            }
    }

    Canvas& canvas_;
    const CutBoardPicture& picture_;
    double smaller_;
    Length top_, bottom_;
    Rect board_, room_;
    DrawnBoard made_;
    ClearSpace space_;
};

}  // namespace

Length cut_number_radius(int number) { return number < 10 ? Length::mm(2.1) : Length::mm(2.5); }

void cut_number(Canvas& canvas, Point centre, int number) {
    canvas.circle(centre, cut_number_radius(number), weight::line, 1.0);
    const Length half_cap = canvas.fonts().cap_height(number_setting.cut, number_setting.size) / 2;
    canvas.words({centre.x, centre.y - half_cap}, std::to_string(number), number_setting, Canvas::Anchor::middle);
}

std::string letter_of(std::size_t lettered) {
    const std::string letter(1, static_cast<char>('A' + lettered % 26));
    return lettered < 26 ? letter : letter + std::to_string(lettered / 26);
}

std::optional<DrawnBoard> draw_cut_board(Canvas& canvas, Point top_left, Length right, double smaller, const CutBoardPicture& picture,
                                         std::size_t most_left_out) {
    return CutBoardDrawing(canvas, top_left, right, smaller, picture).draw(most_left_out);
}

}  // namespace qw::compose
