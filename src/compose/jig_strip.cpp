// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/jig_strip.h"

#include <algorithm>

namespace qw::compose {

namespace {

class JigPart {
public:
    JigPart(Canvas& canvas, Point at, const JigStrip& strip, const StripPart& part, const texts::Passages& words)
        : canvas_(canvas), at_(at), strip_(strip), part_(part), words_(words) {}

    void draw() {
        canvas_.frame({at_.x, at_.y - part_.length(), right(), at_.y}, weight::heavy);
        const Length low = at_.y - part_.length();
        canvas_.line({centre(), low}, {centre(), at_.y}, weight::line, {Length::points(9), Length::points(2.5), Length::points(1.5), Length::points(2.5)});
        for (const Length down : strip_.page)
            if (here(down)) hole(y(down));
        for (const Length down : strip_.spine)
            if (here(down)) canvas_.line({right() - edge_mark, y(down)}, {right(), y(down)}, weight::line);
        if (here(strip_.middle())) middle();
        if (part_.from == Length()) top();
        along("in-the-fold", at_.x + Length::mm(7.2), true);
        if (!strip_.spine.empty()) along("on-the-spine", right() - edge_mark - Length::mm(2.4), false);
    }

private:
    Length right() const { return at_.x + jig_width; }
    Length centre() const { return at_.x + jig_width / 2; }
    Length y(Length down) const { return at_.y - (down - part_.from); }
    bool here(Length down) const { return down >= part_.from && down <= part_.to; }

    /// Pierced in the middle of the cross.
    void hole(Length at) {
        canvas_.circle({centre(), at}, Length::mm(1.5), weight::line, 1.0);
        canvas_.line({centre() - hole_arm, at}, {centre() + hole_arm, at}, weight::hair);
        canvas_.line({centre(), at - Length::mm(1.5)}, {centre(), at + Length::mm(1.5)}, weight::hair);
    }

    void middle() {
        const Length at = y(strip_.middle()), side = Length::mm(1.6);
        canvas_.polygon({{at_.x, at - side}, {at_.x + side * 1.6, at}, {at_.x, at + side}}, 0);
        canvas_.polygon({{right(), at - side}, {right() - side * 1.6, at}, {right(), at + side}}, 0);
        canvas_.line({at_.x, at}, {right(), at}, weight::hair);
        canvas_.words({at_.x + Length::mm(3), at + Length::mm(1.2)}, words_.line("middle"), setting::small_strong);
    }

    void top() {
        const Length x = at_.x + Length::mm(7.2), high = at_.y - Length::mm(2), side = Length::mm(1.8);
        canvas_.polygon({{x - side, high - side * 1.5}, {x + side, high - side * 1.5}, {x, high}}, 0);
        canvas_.words({x, at_.y - Length::mm(9)}, words_.line("top"), setting::label, Canvas::Anchor::middle);
    }

    /// Upright words in the longest stretch of a half that nothing crosses; the directions say the same again.
    void along(const std::string& name, Length x, bool left) {
        std::vector<Length> crossed = left ? strip_.page : strip_.spine;
        for (const Length place : {Length(), strip_.middle() - middle_word, strip_.middle(), strip_.length}) crossed.push_back(place);
        if (left) crossed.push_back(top_words);
        else for (const Length end : {part_.from + joint_mark, part_.to - joint_mark}) crossed.push_back(end);
        crossed.insert(crossed.end(), {part_.from, part_.to});
        std::sort(crossed.begin(), crossed.end());
        Length from, longest;
        for (std::size_t i = 1; i < crossed.size(); ++i) {
            if (!here(crossed[i - 1]) || !here(crossed[i])) continue;
            if (const Length stretch = crossed[i] - crossed[i - 1]; stretch > longest) longest = stretch, from = crossed[i - 1];
        }
        const std::string text = words_.line(name);
        const Length free = Length::mm(4), cap = canvas_.fonts().cap_height(setting::small.cut, setting::small.size);
        if (canvas_.width(setting::small, text) + free > longest) return;
        canvas_.words({x + cap / 2, y(from + longest / 2)}, text, setting::small, Canvas::Anchor::middle, 90);
    }

    static constexpr Length edge_mark = Length::mm(5), hole_arm = Length::mm(4);
    /// What the word at the middle takes above its line, TOP below the head, and a mark of a joint beside its end.
    static constexpr Length middle_word = Length::mm(5.5), top_words = Length::mm(10.5), joint_mark = Length::mm(7.5);

    Canvas& canvas_;
    Point at_;
    const JigStrip& strip_;
    const StripPart& part_;
    const texts::Passages& words_;
};

}  // namespace

void match_mark(Canvas& canvas, Point p, int dx, int dy, std::size_t joint) {
    const Length side = Length::mm(2.2);
    const Point tip{p.x + side * dx, p.y + side * dy};
    canvas.line({p.x - side * dy, p.y - side * dx}, tip, weight::line);
    canvas.line(tip, {p.x + side * dy, p.y + side * dx}, weight::line);
    const Length half = canvas.fonts().cap_height(setting::small_strong.cut, setting::small_strong.size) / 2, off = side + Length::mm(2.6);
    canvas.words({p.x + off * dx, p.y + off * dy - half}, std::string(1, static_cast<char>('A' + joint % 26)), setting::small_strong, Canvas::Anchor::middle);
}

void draw_jig_part(Canvas& canvas, Point at, const JigStrip& strip, const std::vector<StripPart>& parts, std::size_t index,
                   const texts::Passages& words) {
    JigPart(canvas, at, strip, parts[index], words).draw();
    // In the right half, between the holes' crosses and the edge's marks.
    const Length x = at.x + jig_width * 0.73;
    if (index > 0) match_mark(canvas, {x, at.y}, 0, -1, index - 1);
    if (index + 1 < parts.size()) match_mark(canvas, {x, at.y - parts[index].length()}, 0, 1, index);
}

}  // namespace qw::compose
