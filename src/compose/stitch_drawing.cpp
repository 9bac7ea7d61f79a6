// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/stitch_drawing.h"

#include "compose/clear_drawing.h"
#include "compose/dimension.h"
#include "compose/stitch_path.h"

#include <algorithm>

namespace qw::compose {

namespace {

/// How far things of the stitch stand apart.
struct StitchSpacing {
    Setting number;
    Length first_lane, lane_step, holes_apart;
};

class StitchDrawing {
public:
    StitchDrawing(Canvas& canvas, const Rect& room, const journal::Measures& measures, const texts::Passages& words, const StitchSpacing& spacing)
        : canvas_(canvas), room_(room), measures_(measures), sewing_(*measures.sewing), words_(words), first_lane_(spacing.first_lane),
          lane_step_(spacing.lane_step), holes_apart_(spacing.holes_apart), number_(spacing.number) {
        for (const std::string& name : {side_name(true), side_name(false), std::string("head")}) labels_ = max(labels_, canvas.width(strong, words.line(name)));
        left_ = room.left + labels_ + Length::mm(2) + turns(kit::Around::head);
        right_ = room.right - canvas.width(strong, words.line("tail")) - Length::mm(2) - turns(kit::Around::tail);
    }

    bool draw() {
        const auto path = lay_path(*sewing_.of, parts_of_fold(), left_, right_, holes_apart_);
        if (!path) return false;
        path_ = *path;
        fold_ = room_.top - depth(true);
        fold();
        for (const Move& move : path_.moves)
            if (!draw(move)) return false;
        ends();
        low_ = fold_ - depth(false);
        if (!path_.from_the_side && lines() > 1 && !spine()) return false;
        legend();
        return true;
    }

private:
    std::string side_name(bool outside) const {
        if (sewing_.of->from_the_side()) return outside ? "front" : "back";
        return outside ? "outside" : "inside";
    }
    /// Room beyond an end for what goes round it.
    Length turns(kit::Around around) const {
        const auto count = std::count(sewing_.of->around.begin(), sewing_.of->around.end(), around);
        return count > 0 ? turn_apart * static_cast<double>(count) + Length::mm(3) : Length();
    }
    /// From the middle to where the thread goes through: the fold's own line, or the holes on both sides of a block that
    /// lies open round its spine.
    Length half() const { return path_.from_the_side ? Length::mm(6) : fold_half; }
    Length lane_off(std::size_t lane) const { return first_lane_ - fold_half + half() + lane_step_ * static_cast<double>(lane); }
    Length edge(bool outside) const { return y(outside, half() + (path_.from_the_side ? hole_half : Length())); }
    Length last_lane(bool outside) const { return lane_off(std::max<std::size_t>(path_.lanes(outside), 1) - 1); }
    /// How far the drawing reaches on one side of the fold.
    Length depth(bool outside) const {
        const bool end_here = path_.begins_outside == outside || path_.ends_outside == outside;
        return last_lane(outside) + (end_here ? tail_length + Length::mm(4.5) : Length::mm(3));
    }
    std::vector<double> parts_of_fold() const {
        std::vector<double> parts;
        for (const journal::Shown& station : measures_.page_stations) parts.push_back(station.exact / measures_.conditions.page.height);
        return parts;
    }
    Length y(bool outside, Length off) const { return fold_ + (outside ? off : -off); }
    Length lane_y(const Stretch& stretch) const { return y(stretch.outside, lane_off(stretch.lane)); }
    Length tail_y(bool outside) const { return y(outside, last_lane(outside) + tail_length); }
    Length half_cap(const Setting& setting) const { return canvas_.fonts().cap_height(setting.cut, setting.size) / 2; }
    static std::vector<Length> stroke(bool outside) { return outside ? std::vector<Length>{} : std::vector<Length>{Length::points(3.4), Length::points(2.4)}; }

    void fold() {
        for (const Length off : {spine_half(), -spine_half()}) canvas_.line({left_, fold_ + off}, {right_, fold_ + off}, weight::line);
        const Length x = room_.left + labels_;
        for (const bool outside : {true, false})
            canvas_.words({x, y(outside, lane_off(0)) - half_cap(strong)}, words_.line(side_name(outside)), strong, Canvas::Anchor::end);
        canvas_.words({x, fold_ - half_cap(strong)}, words_.line("head"), strong, Canvas::Anchor::end);
        canvas_.words({right_ + turns(kit::Around::tail) + Length::mm(2), fold_ - half_cap(strong)}, words_.line("tail"), strong);
        if (path_.from_the_side) return block();
        for (const Pass& pass : path_.passes) canvas_.line({pass.x, fold_ - fold_half}, {pass.x, fold_ + fold_half}, weight::heavy);
    }
    Length spine_half() const { return path_.from_the_side ? Length::mm(2.6) : fold_half; }

    /// The pages as they lie round their spine, front above and back below, each with the holes.
    void block() {
        for (const Length x : {left_, right_}) canvas_.line({x, edge(false) - Length::mm(1)}, {x, edge(true) + Length::mm(1)}, weight::hair);
        for (std::size_t s = 0; s < path_.stations.size(); ++s) {
            Length low = path_.stations[s], high = low;
            for (const Pass& pass : path_.passes)
                if (pass.station == static_cast<int>(s)) low = min(low, pass.x), high = max(high, pass.x);
            for (const bool outside : {true, false}) {
                const Length at = y(outside, half());
                canvas_.frame({low - hole_half, at - hole_half, high + hole_half, at + hole_half}, weight::line, {}, 1.0);
            }
        }
        name_of_spine();
    }

    /// Where the stations leave most room between them.
    void name_of_spine() {
        std::vector<Length> ends{left_};
        ends.insert(ends.end(), path_.stations.begin(), path_.stations.end());
        ends.push_back(right_);
        std::size_t widest = 1;
        for (std::size_t i = 1; i < ends.size(); ++i)
            if (ends[i] - ends[i - 1] > ends[widest] - ends[widest - 1]) widest = i;
        canvas_.words({(ends[widest] + ends[widest - 1]) / 2, fold_ - half_cap(small)}, words_.line("spine"), small, Canvas::Anchor::middle);
    }

    /// Where the number breaks the line: as near to the middle as lets no upright of another move run through it.
    std::optional<Length> place_of_number(const Stretch& stretch, Length wide) const {
        std::vector<Length> uprights;
        for (const Move& other : path_.moves)
            for (const Stretch& over : other.stretches)
                if (over.outside == stretch.outside && over.lane > stretch.lane) uprights.insert(uprights.end(), {over.from, over.to});
        if (path_.begins_outside == stretch.outside) uprights.push_back(path_.passes.front().x);
        if (path_.ends_outside == stretch.outside) uprights.push_back(path_.passes.back().x);
        const Length middle = (stretch.from + stretch.to) / 2, reach = (stretch.right() - stretch.left()) / 2 - wide;
        for (const Length aside : {wide + Length::mm(2), wide})  // well apart, or at least not on each other
            for (Length off; off <= reach; off += Length::mm(0.3))
                for (const Length x : {middle + off, middle - off})
                    if (std::none_of(uprights.begin(), uprights.end(), [&](Length u) { return abs(u - x) < aside; })) return x;
        return std::nullopt;
    }

    bool draw(const Move& move) {
        if (move.around == kit::Around::nothing) return straight(move, move.stretches.front());
        if (move.around == kit::Around::spine) round_spine(move);
        else round_end(move, move.stretches[0], move.stretches[1]);
        return true;
    }
    Length half_of_number(const Move& move) const { return canvas_.width(number_, std::to_string(move.number)) / 2 + Length::mm(0.6); }
    void number(const Move& move, Point middle) {
        canvas_.words({middle.x, middle.y - half_cap(number_)}, std::to_string(move.number), number_, Canvas::Anchor::middle);
    }
    void arrive(Length x, bool outside) { arrowhead(canvas_, {x, edge(outside)}, 0, outside ? -1 : 1); }

    bool straight(const Move& move, const Stretch& stretch) {
        const Length wide = half_of_number(move), lane = lane_y(stretch);
        const auto place = place_of_number(stretch, wide);
        if (!place) return false;
        const auto dash = stroke(move.outside);
        canvas_.line({move.from, edge(move.outside)}, {move.from, lane}, weight::heavy, dash);
        canvas_.line({move.to, lane}, {move.to, edge(move.outside)}, weight::heavy, dash);
        const double right = move.to > move.from ? 1 : -1;
        canvas_.line({move.from, lane}, {*place - wide * right, lane}, weight::heavy, dash);
        canvas_.line({*place + wide * right, lane}, {move.to, lane}, weight::heavy, dash);
        arrive(move.to, move.outside);
        number(move, {*place, lane});
        return true;
    }

    /// From one side of a block to the other, seen as it lies open.
    void round_spine(const Move& move) {
        const Point from{move.from, y(move.outside, half() - hole_half)}, to{move.to, y(!move.outside, half() - hole_half)};
        const Length gap = half_cap(number_) + Length::mm(0.8), rise = abs(to.y - from.y);
        const double part = (rise / 2 - gap) / rise;
        const auto along = [&](double p) { return Point{from.x + (to.x - from.x) * p, from.y + (to.y - from.y) * p}; };
        canvas_.line(from, along(part), weight::heavy);
        canvas_.line(along(1 - part), to, weight::heavy);
        arrowhead(canvas_, to, 0, to.y > from.y ? 1 : -1);
        number(move, along(0.5));
    }

    /// Away on one side, round the end, and back on the other.
    void round_end(const Move& move, const Stretch& away, const Stretch& back) {
        const Length beyond = away.to, gap = half_cap(number_) + Length::mm(0.8);
        for (const Stretch* stretch : {&away, &back}) {
            const auto dash = stroke(stretch->outside);
            canvas_.line({stretch->from, edge(stretch->outside)}, {stretch->from, lane_y(*stretch)}, weight::heavy, dash);
            canvas_.line({stretch->from, lane_y(*stretch)}, {beyond, lane_y(*stretch)}, weight::heavy, dash);
            canvas_.line({beyond, lane_y(*stretch)}, {beyond, y(stretch->outside, gap)}, weight::heavy);
        }
        arrive(back.from, back.outside);
        number(move, {beyond, fold_});
    }

    /// Both ends hang from their holes. Close together, their words part to the left and to the right.
    void ends() {
        const Pass &first = path_.passes.front(), &last = path_.passes.back();
        const bool tied = !sewing_.of->goes_on && first.station == last.station && path_.begins_outside == path_.ends_outside;
        const bool close = path_.begins_outside == path_.ends_outside && abs(first.x - last.x) < Length::mm(16);
        const std::string goes_on = sewing_.of->goes_on && sewing_.signatures > 1 ? "next-signature" : "end";
        end(first.x, path_.begins_outside, words_.line("start"), close ? (first.x < last.x ? -1 : 1) : 0);
        end(last.x, path_.ends_outside, words_.line(goes_on), close ? (first.x < last.x ? 1 : -1) : 0);
        const Length at = edge(path_.begins_outside) + (path_.begins_outside ? knot_off : -knot_off);
        if (tied) knot({(first.x + last.x) / 2, at});
        else if (sewing_.of->goes_on) knot({first.x, at});
        knots_ = tied || sewing_.of->goes_on;
    }
    void end(Length x, bool outside, const std::string& words, int side) {
        const Length tip = tail_y(outside);
        canvas_.line({x, edge(outside)}, {x, tip}, weight::heavy, stroke(outside));
        if (side != 0)
            return canvas_.words({x + Length::mm(1.2) * side, tip - half_cap(small)}, words, small,
                                 side < 0 ? Canvas::Anchor::end : Canvas::Anchor::start);
        const Length cap = half_cap(small) * 2;
        const Length base = outside ? tip + Length::mm(1) : tip - Length::mm(0.8) - cap;
        const Length half = canvas_.width(small, words) / 2;
        canvas_.words({std::clamp(x, room_.left + half, room_.right - half), base}, words, small, Canvas::Anchor::middle);
    }
    void knot(Point centre) { canvas_.circle(centre, Length::mm(1.2), std::nullopt, 0); }

    /// Rows of holes across the spine; with one thread for all signatures that share a row, their folds.
    int lines() const { return std::max(sewing_.rows, sewing_.of->goes_on ? sewing_.signatures : 1); }

    bool spine() {
        const int count = lines();
        const auto model = texts::Model().text("count", std::to_string(count));
        low_ -= Length::mm(5);
        canvas_.words({room_.left, low_}, words_.line(sewing_.rows > 1 ? "spine-rows" : "spine-folds", model), strong);
        low_ -= Length::mm(5);
        const Length pitch = min(most_pitch, (low_ - room_.bottom - legend_height() - Length::mm(3)) / std::max(count - 1, 1));
        if (pitch < least_pitch) return false;
        const int label_each = pitch < Length::mm(3.4) ? 2 : 1;
        for (int row = 0; row < count; ++row) {
            const Length line = low_ - pitch * row;
            if (row % label_each == 0)
                canvas_.words({room_.left + labels_, line - half_cap(strong)}, std::to_string(row + 1), strong, Canvas::Anchor::end);
            spine_row(line, min(Length::mm(0.7), pitch * 0.2));
            if (sewing_.of->goes_on && row + 1 < count) climb(line, line - pitch, row % 2 == 0);
        }
        low_ -= pitch * (count - 1) + Length::mm(3);
        return true;
    }
    void spine_row(Length line, Length hole) {
        canvas_.line({left_, line}, {right_, line}, weight::hair);
        for (const Move& move : path_.moves) {
            const Length from = station_of(move.number - 1), to = station_of(move.number);
            if (move.outside && move.around == kit::Around::nothing) canvas_.line({from, line}, {to, line}, weight::heavy);
        }
        for (const Length station : path_.stations) canvas_.circle({station, line}, hole, weight::line, 1.0);
    }
    void climb(Length from, Length to, bool at_the_end) {
        const Length x = station_of(at_the_end ? path_.passes.size() - 1 : 0);
        canvas_.line({x, from}, {x, to}, weight::heavy);
        if (from - to > Length::mm(4.4)) arrowhead(canvas_, {x, (from + to) / 2 - Length::mm(1.2)}, 0, -1);
    }
    Length station_of(std::size_t pass) const { return path_.stations[static_cast<std::size_t>(path_.passes[pass].station)]; }

    enum class Sample { outside, inside, knot, none };
    std::vector<std::pair<Sample, std::string>> legend_items() const {
        std::vector<std::pair<Sample, std::string>> items{{Sample::outside, words_.line("legend-" + side_name(true))},
                                                          {Sample::inside, words_.line("legend-" + side_name(false))}};
        if (knots_) items.emplace_back(Sample::knot, words_.line("legend-knot"));
        items.emplace_back(Sample::none, words_.line("not-to-scale"));
        return items;
    }
    /// Room that the legend may take, one item a line.
    Length legend_height() const { return Length::mm(4.4) * static_cast<double>(legend_items().size()) + Length::mm(1); }

    void legend() {
        Length x = room_.left, line = low_ - Length::mm(3.6);
        for (const auto& [sample, words] : legend_items()) {
            const Length before = sample == Sample::none ? Length() : sample == Sample::knot ? Length::mm(4) : Length::mm(10);
            const Length wide = before + canvas_.width(small, words);
            if (x > room_.left && x + wide > room_.right) x = room_.left, line -= Length::mm(4.4);
            const Length middle = line + half_cap(small);
            if (sample == Sample::knot) knot({x + Length::mm(1.3), middle});
            else if (sample != Sample::none) canvas_.line({x, middle}, {x + Length::mm(8), middle}, weight::heavy, stroke(sample == Sample::outside));
            canvas_.words({x + before, line}, words, small);
            x += wide + Length::mm(6);
        }
    }

    static constexpr Length fold_half = Length::mm(1), tail_length = Length::mm(4.4), hole_half = Length::mm(0.9), knot_off = Length::mm(1.6),
                            most_pitch = Length::mm(7), least_pitch = Length::mm(2.4);
    static constexpr Setting small = setting::small, strong = setting::small_strong;

    Canvas& canvas_;
    const Rect& room_;
    const journal::Measures& measures_;
    const journal::Sewing& sewing_;
    const texts::Passages& words_;
    const Length first_lane_, lane_step_, holes_apart_;
    const Setting& number_;
    StitchPath path_;
    Length labels_, left_, right_, fold_, low_;
    bool knots_ = false;
};

}  // namespace

bool draw_stitch(Canvas& canvas, const Rect& room, const journal::Measures& measures, const texts::Passages& words) {
    if (!measures.sewing || measures.page_stations.empty() || measures.sewing->of->path.size() < 2) return false;
    static constexpr StitchSpacing spacings[] = {{setting::label, Length::mm(7), Length::mm(6.2), Length::mm(8)},
                                                 {setting::label, Length::mm(5.4), Length::mm(4.8), Length::mm(6.4)},
                                                 {setting::small_strong, Length::mm(5), Length::mm(4), Length::mm(4.8)}};
    std::vector<Way> ways;
    for (const StitchSpacing& spacing : spacings)
        ways.emplace_back([&](Canvas& to) { return StitchDrawing(to, room, measures, words, spacing).draw(); });
    return draw_first_clear(canvas, room, ways);
}

}  // namespace qw::compose
