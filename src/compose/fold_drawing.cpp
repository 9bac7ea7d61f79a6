// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/fold_drawing.h"

#include "compose/collisions.h"
#include "compose/lying_panels.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace qw::compose {

namespace {

constexpr Grey back_tone = 0.87;
const Length room_for_arrow = Length::mm(5), above_sentence = Length::mm(2), fold_hatch_gap = Length::mm(1.3);
const Length fold_arrow_head = Length::mm(2.6);
constexpr Setting fold_title = setting::small, fold_side = setting::remark;

std::vector<Length> dotted() { return {Length::mm(0.35), Length::mm(0.75)}; }
std::vector<Length> dashes(bool valley) {
    if (valley) return {Length::mm(2.6), Length::mm(1.3)};
    return {Length::mm(3), Length::mm(1), Length::mm(0.5), Length::mm(1)};
}

/// What stands below: how the next fold goes, and what is hatched.
std::string sentence_of(const parts::Net& net, const LyingPanels& panels, std::size_t state, const FoldView& view, const texts::Passages& words) {
    std::string sentence;
    if (view.next && state < net.folds.size()) sentence = words.line(net.folds[state].valley != view.from_behind ? "fold-valley" : "fold-mountain");
    const bool tabs = std::any_of(net.glue.begin(), net.glue.end(), [&](const parts::Glue& glue) { return !panels.seen(glue.tab).empty(); });
    if (tabs) sentence += (sentence.empty() ? "" : " ") + words.line("hatched");
    return sentence;
}

Length height_of_sentence(const type::Fonts& fonts, Length width, const std::string& sentence) {
    if (sentence.empty()) return {};
    return above_sentence + fold_title.leading * static_cast<double>(wrapped(fonts, fold_title, width, sentence).size());
}

Rect room_of_drawing(const type::Fonts& fonts, const Rect& into, const std::string& sentence) {
    return {into.left + room_for_arrow, into.bottom + room_for_arrow + height_of_sentence(fonts, into.width(), sentence), into.right - room_for_arrow,
            into.top - room_for_arrow};
}

double scale_into(const Rect& room, const Rect& around) { return std::min(room.width() / around.width(), room.height() / around.height()); }

class FoldPicture {
public:
    FoldPicture(Canvas& canvas, const parts::Net& net, const parts::Folded& folded, std::size_t state, const FoldView& view, const texts::Passages& words)
        : canvas_(canvas), net_(net), folded_(folded), state_(state), view_(view), words_(words), panels_(net, folded, state, view.from_behind) {}

    double draw(const Rect& into, double at_most) {
        const std::string sentence = sentence_of(net_, panels_, state_, view_, words_);
        const Rect room = room_of_drawing(canvas_.fonts(), into, sentence), around = panels_.around();
        scale_ = std::min(scale_into(room, around), at_most);
        map_ = {scale_, 0, 0, scale_, room.centre().x.in_points() - around.centre().x.in_points() * scale_,
                room.centre().y.in_points() - around.centre().y.in_points() * scale_};
        paper();
        tabs();
        edges();
        scores();
        holes();
        arrow();
        names();
        say(into, sentence);
        return scale_;
    }

private:
    parts::Region on_page(const parts::Region& region) const { return parts::mapped(region, map_); }

    void paper() {
        for (const std::size_t panel : panels_.from_below()) {
            Outline area;
            for (const auto& ring : on_page(panels_.seen(panel))) {
                for (std::size_t i = 0; i < ring.size(); ++i) {
                    if (i == 0) area.steps.push_back(Outline::Move{ring[i]});
                    else area.steps.push_back(Outline::Line{ring[i]});
                }
                area.steps.push_back(Outline::Close{});
            }
            if (area.steps.empty() || !panels_.back_up(panel)) continue;
            area.fill = back_tone;
            canvas_.add(std::move(area));
        }
    }

    /// With a gap for the word. Where the glue goes below, hatching is dashed.
    void tabs() {
        std::set<std::size_t> done;
        for (const parts::Glue& glue : net_.glue) {
            if (!done.insert(glue.tab).second) continue;
            parts::Region tab = on_page(panels_.seen(glue.tab));
            if (tab.empty()) continue;
            const bool front = !parts::glued(net_, folded_, glue.tab, parts::Side::front).empty();
            const bool glue_up = front != panels_.back_up(glue.tab);
            if (const auto gap = word_on(tab, words_.line("glue"))) tab = parts::without(tab, region_of(*gap));
            const auto strokes = hatching(tab, fold_hatch_gap);
            canvas_.add(strokes_outline(strokes, weight::hair, glue_up ? std::vector<Length>() : dotted()));
            lines_.insert(lines_.end(), strokes.begin(), strokes.end());
        }
    }

    std::optional<Rect> word_on(const parts::Region& area, const std::string& word) {
        const Length clear = Length::mm(0.6);
        const Setting setting = setting::small;
        for (const double turn : {0.0, 90.0}) {
            const Rect box = box_of({{}, word, setting.cut, setting.size, Canvas::Anchor::middle, turn, 0}, canvas_.fonts());
            const auto middle = room_for(box.inset(-clear).size(), area, {}, parts::bounds(area).centre());
            if (!middle) continue;
            const Point at{middle->x - box.centre().x, middle->y - box.centre().y};
            canvas_.words(at, word, setting, Canvas::Anchor::middle, turn);
            return box.moved(at.x, at.y).inset(-clear);
        }
        return std::nullopt;
    }

    void runs(const std::vector<LyingPanels::Run>& all, Length seen_weight, const std::vector<Length>& seen_dash) {
        for (const LyingPanels::Run& run : all) {
            Outline line;
            line.stroke = run.seen ? seen_weight : weight::hair;
            line.dash = run.seen ? seen_dash : dotted();
            for (std::size_t i = 0; i < run.points.size(); ++i) {
                const Point at = parts::mapped(run.points[i], map_);
                if (i == 0) line.steps.push_back(Outline::Move{at});
                else line.steps.push_back(Outline::Line{at}), lines_.push_back({parts::mapped(run.points[i - 1], map_), at});
            }
            if (run.points.front() == run.points.back()) line.steps.back() = Outline::Close{};
            canvas_.add(std::move(line));
        }
    }

    void edges() {
        for (const std::size_t panel : panels_.from_below()) runs(panels_.cut_edges(panel), weight::line, {});
    }

    /// Folded edges are solid, the next fold is heavy, later ones are thin.
    void scores() {
        for (const parts::ScoreLine& score : folded_.scores) {
            const bool folded = score.fold < state_, next = view_.next && score.fold == state_;
            const bool valley = score.valley != panels_.back_up(score.stays);
            for (const std::size_t panel : folded ? std::vector<std::size_t>{score.moves, score.stays} : std::vector<std::size_t>{score.stays})
                runs(panels_.score_on(panel, score.from, score.to, folded), next ? weight::heavy : folded ? weight::line : weight::hair,
                     folded ? std::vector<Length>() : dashes(valley));
        }
    }

    /// Where nothing lies over their middles.
    void holes() {
        for (const parts::Hole& hole : net_.holes)
            for (const std::size_t panel : panels_.from_below()) {
                const Point at = parts::mapped(hole.at, panels_.place(panel));
                if (!parts::holds(net_.panels[panel].region, hole.at) || !parts::holds(panels_.seen(panel), at)) continue;
                const Point middle = parts::mapped(at, map_);
                const Length radius = hole.diameter / 2 * scale_;
                canvas_.circle(middle, radius, weight::line);
                for (const Stroke& edge : edges_of(region_of(Rect{middle.x, middle.y, middle.x, middle.y}.inset(-radius)))) lines_.push_back(edge);
            }
    }

    /// From the panels that move over their fold line to where they will lie: filled and solid over the front of what
    /// stays, behind it dashed with an open head.
    void arrow() {
        if (!view_.next) return;
        const parts::ScoreLine* line = nullptr;
        for (const parts::ScoreLine& score : folded_.scores)
            if (score.fold == state_ && (!line || length_of({score.from, score.to}) > length_of({line->from, line->to}))) line = &score;
        if (!line) return;
        const Matrix place = map_.after(panels_.place(line->stays));
        const Point from = parts::mapped(line->from, place), to = parts::mapped(line->to, place);
        const double length = length_of({from, to}).in_mm();
        double ux = (to.x - from.x).in_mm() / length, uy = (to.y - from.y).in_mm() / length;
        if (ux < -0.01 || (std::abs(ux) <= 0.01 && uy < 0)) ux = -ux, uy = -uy;  // it bends up or to the right
        double nx = -uy, ny = ux;
        // How far the moving panels reach from the line, and on which side.
        double far = 0;
        for (const std::size_t panel : net_.folds[state_].moves)
            for (const auto& ring : on_page(panels_.whole(panel)))
                for (const Point p : ring) {
                    const double beside = (p.x - from.x).in_mm() * nx + (p.y - from.y).in_mm() * ny;
                    if (std::abs(beside) > std::abs(far)) far = beside;
                }
        if (far < 0) nx = -nx, ny = -ny, far = -far;
        const double reach = std::max(0.6 * far, room_for_arrow.in_mm());
        const Point middle{(from.x + to.x) / 2, (from.y + to.y) / 2};
        const auto at = [&](double along, double beside) {
            return Point{middle.x + Length::mm(ux * along + nx * beside), middle.y + Length::mm(uy * along + ny * beside)};
        };
        const double bend = std::min(0.35 * reach, length * 0.3);
        const Point begin = at(0, reach), over = at(bend, 0), end = at(0, -reach);
        half_arrow(begin, at(bend * 0.7, reach * 0.6), at(bend, reach * 0.25), over, {});
        const bool valley = net_.folds[state_].valley != view_.from_behind;
        half_arrow(over, at(bend, -reach * 0.25), at(bend * 0.7, -reach * 0.6), end, valley ? std::vector<Length>() : dashes(true));
        head(end, at(bend * 0.7, -reach * 0.6), valley);
    }

    void half_arrow(Point a, Point control1, Point control2, Point b, std::vector<Length> dash) {
        Outline curve;
        curve.stroke = weight::line;
        curve.dash = std::move(dash);
        curve.steps = {Outline::Move{a}, Outline::Curve{control1, control2, b}};
        canvas_.add(std::move(curve));
        Point before = a;
        constexpr int chords = 12;
        for (int i = 1; i <= chords; ++i) {
            const double t = i / double{chords}, s = 1 - t;
            const auto mix = [&](Length p, Length q, Length r, Length w) { return p * (s * s * s) + q * (3 * s * s * t) + r * (3 * s * t * t) + w * (t * t * t); };
            const Point here{mix(a.x, control1.x, control2.x, b.x), mix(a.y, control1.y, control2.y, b.y)};
            lines_.push_back({before, here});
            before = here;
        }
    }

    void head(Point tip, Point from, bool filled) {
        const double length = length_of({from, tip}).in_mm(), x = (tip.x - from.x).in_mm() / length, y = (tip.y - from.y).in_mm() / length;
        const Length half = fold_arrow_head * 0.35;
        const Point foot{tip.x - fold_arrow_head * x, tip.y - fold_arrow_head * y};
        const std::vector<Point> corners{tip, {foot.x - half * y, foot.y + half * x}, {foot.x + half * y, foot.y - half * x}};
        canvas_.polygon(corners, filled ? 0.0 : 1.0);
        canvas_.closed_line(corners, weight::line);
        for (std::size_t i = 0; i < 3; ++i) lines_.push_back({corners[i], corners[(i + 1) % 3]});
    }

    /// Titles where they have room; the word for the side that is up once for each side, on the largest panel that
    /// has room for it.
    void names() {
        std::vector<std::size_t> largest_first = panels_.from_below();
        std::vector<double> area(net_.panels.size());
        for (const std::size_t panel : largest_first) area[panel] = parts::area_mm2(panels_.seen(panel));
        std::stable_sort(largest_first.begin(), largest_first.end(), [&](std::size_t a, std::size_t b) { return area[a] > area[b]; });
        bool told[2] = {false, false};
        for (const std::size_t panel : largest_first) {
            if (is_tab(panel) || area[panel] <= 0) continue;
            const bool back = panels_.back_up(panel);
            const std::string side = told[back] ? "" : words_.line(back ? "back" : "front");
            if (name(panel, net_.panels[panel].title, side) || (!side.empty() && name(panel, "", side))) told[back] = true;
            else name(panel, net_.panels[panel].title, "");
        }
    }
    bool is_tab(std::size_t panel) const {
        return std::any_of(net_.glue.begin(), net_.glue.end(), [&](const parts::Glue& g) { return g.tab == panel; });
    }

    /// In one line each, or broken into more where the panel is narrow.
    bool name(std::size_t panel, const std::string& title, const std::string& side) {
        for (const double share : {1.0, 0.6, 0.4}) {
            const auto lines = [&](const std::string& words, const Setting& setting) {
                return words.empty() ? std::vector<std::string>()
                                     : wrapped(canvas_.fonts(), setting, canvas_.width(setting, words) * share + Length::points(0.1), words);
            };
            if (name_lines(panel, lines(title, fold_title), lines(side, fold_side))) return true;
        }
        return false;
    }

    bool name_lines(std::size_t panel, const std::vector<std::string>& title, const std::vector<std::string>& side) {
        const parts::Region area = on_page(panels_.seen(panel));
        const Length clear = Length::mm(1.2), leading = fold_title.leading;
        Length width;
        for (const std::string& line : title) width = max(width, canvas_.width(fold_title, line));
        for (const std::string& line : side) width = max(width, canvas_.width(fold_side, line));
        if (title.empty() && side.empty()) return false;
        const Size box{width + clear * 2, leading * static_cast<double>(title.size() + side.size()) + clear};
        const auto middle = room_for(box, area, lines_, parts::bounds(area).centre());
        if (!middle) return false;
        const Length cap = canvas_.fonts().cap_height(fold_title.cut, fold_title.size);
        Length y = middle->y + box.height / 2 - clear / 2 - (leading + cap) / 2;
        for (const std::string& line : title) canvas_.words({middle->x, y}, line, fold_title, Canvas::Anchor::middle), y -= leading;
        for (const std::string& line : side) canvas_.words({middle->x, y}, line, fold_side, Canvas::Anchor::middle), y -= leading;
        const Rect taken = Rect::at({middle->x - box.width / 2, middle->y - box.height / 2}, box);
        for (const Stroke& edge : edges_of(region_of(taken))) lines_.push_back(edge);
        return true;
    }

    void say(const Rect& into, const std::string& sentence) {
        if (sentence.empty()) return;
        const Length cap = canvas_.fonts().cap_height(fold_title.cut, fold_title.size);
        const auto lines = wrapped(canvas_.fonts(), fold_title, into.width(), sentence);
        Length y = into.bottom + fold_title.leading * static_cast<double>(lines.size()) - (fold_title.leading + cap) / 2;
        for (const std::string& line : lines) canvas_.words({into.centre().x, y}, line, fold_title, Canvas::Anchor::middle), y -= fold_title.leading;
    }

    Canvas& canvas_;
    const parts::Net& net_;
    const parts::Folded& folded_;
    std::size_t state_;
    FoldView view_;
    const texts::Passages& words_;
    LyingPanels panels_;
    double scale_ = 1;
    Matrix map_;
    std::vector<Stroke> lines_;        ///< all that words must not lie on
};

}  // namespace

FoldView usual_view(const parts::Net& net, std::size_t state) {
    if (state == 0) return {};
    const bool last = state >= net.folds.size();
    return {!net.folds[last ? net.folds.size() - 1 : state].valley, !last};
}

double draw_fold(Canvas& canvas, const Rect& into, const parts::Net& net, const parts::Folded& folded, std::size_t state, const FoldView& view,
                 const texts::Passages& words, double at_most) {
    return FoldPicture(canvas, net, folded, state, view, words).draw(into, at_most);
}

double fold_scale(const type::Fonts& fonts, Size into, const parts::Net& net, const parts::Folded& folded, std::size_t state, const FoldView& view,
                  const texts::Passages& words) {
    const LyingPanels panels(net, folded, state, view.from_behind);
    return scale_into(room_of_drawing(fonts, Rect::of(into), sentence_of(net, panels, state, view, words)), panels.around());
}

}  // namespace qw::compose
