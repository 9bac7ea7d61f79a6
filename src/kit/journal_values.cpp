// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/journal_values.h"

#include "base/unit_system.h"

#include <algorithm>

namespace qw::kit {

namespace {

constexpr std::size_t longest_formula = 500;

const LengthRange step_range{Length::mm(0.01), Length::mm(100), "0.01 mm to 100 mm"};

}  // namespace

std::optional<Formula> formula_value(const Node& node, Faults& faults) {
    const std::string* text = scalar_text(node, faults, "a formula such as page_width + fore_edge_square");
    if (!text) return std::nullopt;
    const bool plain = std::all_of(text->begin(), text->end(), [](char c) { return c >= 0x20 && c < 0x7f; });
    if (text->find_first_not_of(' ') != std::string::npos && plain && text->size() <= longest_formula) return Formula{"", *text, node.mark};
    faults.add("bad-formula", node.mark, in_quotes(*text) + " is no formula",
               "names, plain numbers, + - * / and functions, in one line of at most 500 characters");
    return std::nullopt;
}

std::optional<std::vector<Formula>> formulas_value(const Node& node, Faults& faults) {
    if (!is_list(node, faults, "[ station_inset, page_height / 2 ]")) return std::nullopt;
    std::vector<Formula> list;
    for (const Node& item : node.items) list.push_back(formula_value(item, faults).value_or(Formula{}));
    return list;
}

bool read_both(MapReader& map, const LengthRange& range, BothLengths& into) {
    const bool metric = map.required("metric", into.metric, length_value(range));
    const bool us = map.required("us", into.us, length_value(range));
    return metric && us;
}

void check_pair(const Node& map, const BothLengths& both, Faults& faults) {
    constexpr double most = 0.3;
    const auto us = std::find_if(map.entries.begin(), map.entries.end(), [](const Entry& entry) { return entry.key == "us"; });
    const auto metric = std::find_if(map.entries.begin(), map.entries.end(), [](const Entry& entry) { return entry.key == "metric"; });
    if (us == map.entries.end() || metric == map.entries.end()) return;
    const Length apart = abs(both.metric - both.us), larger = max(abs(both.metric), abs(both.us));
    if (apart <= larger * most || apart <= Length::inches(1.0 / 16)) return;
    faults.add(
        "pair-differs", us->value.mark,
        in_quotes(metric->value.text) + " and " + in_quotes(us->value.text) + ", which is " + show_metric(both.us) + ", differ by more than 30 %",
        "a metric and a US length for the same thing, within 30 % or 1/16 in of each other", "correct one of the two");
}

std::optional<BothLengths> both_value(const Node& node, Faults& faults) {
    if (!is_map(node, faults, "{ metric: 3 mm, us: 1/8 in }")) return std::nullopt;
    BothLengths both;
    MapReader map(node, faults, "the length");
    if (read_both(map, step_range, both)) check_pair(node, both, faults);
    map.done();
    return both;
}

std::optional<RoundingRule> rounding_value(const Node& node, Faults& faults) {
    if (!is_map(node, faults, "{ metric: 0.5 mm, us: 1/16 in, way: up }")) return std::nullopt;
    RoundingRule rule;
    MapReader map(node, faults, "the rounding");
    read_both(map, step_range, rule.step);
    map.required("way", rule.way, word_value<Rounding>({{"up", Rounding::up}, {"down", Rounding::down}, {"nearest", Rounding::nearest}}));
    map.done();
    return rule;
}

Reader<std::string> one_of(std::vector<std::string> words) {
    std::vector<std::pair<std::string, std::string>> pairs;
    for (std::string& word : words) pairs.emplace_back(word, word);
    return word_value<std::string>(std::move(pairs));
}

}  // namespace qw::kit
