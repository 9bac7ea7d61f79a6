// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/part_values.h"

#include "kit/journal_values.h"

#include <algorithm>

namespace qw::kit {

namespace {

const LengthRange hardware_range{Length::mm(0.01), Length::mm(100), "0.01 mm to 100 mm"};

bool are_unlike(const BothLengths& both) {
    return abs(both.metric - both.us) > most_unlike * max(abs(both.metric), abs(both.us));
}

void read_place(MapReader& map, const std::string& key, Formula& x, Formula& y) {
    PlaceFormulas place;
    if (!map.required(key, place, place_value)) return;
    x = place.x;
    y = place.y;
}

OutlineStep read_corner(const Node& node, Faults& faults) {
    OutlineStep step;
    const PlaceFormulas place = place_value(node, faults).value_or(PlaceFormulas());
    step.x = place.x;
    step.y = place.y;
    return step;
}

/// { at: [x, y], rounded: r } or { through: [x, y], to: [x, y] }
OutlineStep read_bend(const Node& node, Faults& faults) {
    OutlineStep step;
    MapReader map(node, faults, "the step");
    if (map.has("through") || map.has("to")) {
        step.kind = OutlineStep::Kind::arc;
        read_place(map, "through", step.through_x, step.through_y);
        read_place(map, "to", step.x, step.y);
    } else {
        step.kind = OutlineStep::Kind::rounded;
        read_place(map, "at", step.x, step.y);
        map.required("rounded", step.radius, formula_value);
    }
    map.done();
    return step;
}

std::optional<OutlineStep> outline_step_value(const Node& node, Faults& faults) {
    if (node.kind == Node::Kind::refused) return std::nullopt;
    if (node.kind != Node::Kind::list && node.kind != Node::Kind::map) {
        faults.add("wrong-type", node.mark, in_quotes(node.text) + " is no step of an outline",
                   "[x, y], { at: [x, y], rounded: r } or { through: [x, y], to: [x, y] }");
        return std::nullopt;
    }
    OutlineStep step = node.kind == Node::Kind::list ? read_corner(node, faults) : read_bend(node, faults);
    step.mark = node.mark;
    return step;
}

void check_outline(const std::vector<OutlineStep>& steps, const SourceMark& where, Faults& faults) {
    const auto is_arc = [](const OutlineStep& step) { return step.kind == OutlineStep::Kind::arc; };
    if (!steps.empty() && is_arc(steps.front()))
        faults.add("bad-outline", steps.front().mark, "an outline cannot begin with an arc, which has a step before it",
                   "a corner, or a rounded one", "begin with the point where the arc begins");
    const bool any_arc = std::any_of(steps.begin(), steps.end(), is_arc);
    if (steps.size() < (any_arc ? 2u : 3u))
        faults.add("bad-outline", where, "an outline of " + std::to_string(steps.size()) + (steps.size() == 1 ? " step" : " steps") + " holds nothing",
                   "three steps or more, or two with an arc");
}

}  // namespace

void read_pair(MapReader& map, const LengthRange& range, BothLengths& into, Faults& faults) {
    const bool metric = map.required("metric", into.metric, length_value(range));
    const bool us = map.required("us", into.us, length_value(range));
    if (!metric || !us || !are_unlike(into)) return;
    faults.add("unlike-pair", map.mark_of("us"),
               show_metric(into.metric) + " and " + show_us(into.us) + " (" + show_metric(into.us) + ") are not about the same length",
               "two lengths that differ by at most 30 % of the larger one");
}

std::optional<BothLengths> pair_value(const Node& node, Faults& faults) {
    if (!is_map(node, faults, "{ metric: 5 mm, us: 3/16 in }")) return std::nullopt;
    BothLengths both;
    MapReader map(node, faults, "the length");
    read_pair(map, hardware_range, both, faults);
    map.done();
    return both;
}

std::optional<PlaceFormulas> place_value(const Node& node, Faults& faults) {
    const std::string example = "[width / 2, height - hole_down]";
    if (!is_list(node, faults, example)) return std::nullopt;
    if (node.items.size() != 2) {
        faults.add("bad-outline", node.mark, "a place has two formulas, and here are " + std::to_string(node.items.size()),
                   "a place such as " + example, "put a formula with commas under 'values', and its name here");
        return std::nullopt;
    }
    const auto x = formula_value(node.items[0], faults), y = formula_value(node.items[1], faults);
    return x && y ? std::optional(PlaceFormulas{*x, *y}) : std::nullopt;
}

std::optional<std::vector<OutlineStep>> outline_value(const Node& node, Faults& faults) {
    if (!is_list(node, faults, "[[0, 0], [width, 0], { at: [width, height], rounded: corner }]")) return std::nullopt;
    std::vector<OutlineStep> steps;
    for (const Node& item : node.items)
        if (auto step = outline_step_value(item, faults)) steps.push_back(std::move(*step));
    if (steps.size() == node.items.size()) check_outline(steps, node.mark, faults);
    return steps;
}

std::optional<bool> side_value(const Node& node, Faults& faults) { return word_value<bool>({{"front", true}, {"back", false}})(node, faults); }

std::optional<int> direction_value(const Node& node, Faults& faults) {
    return word_value<int>({{"up", 0}, {"left", 1}, {"down", 2}, {"right", 3}})(node, faults);
}

}  // namespace qw::kit
