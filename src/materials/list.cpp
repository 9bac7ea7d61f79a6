// SPDX-License-Identifier: GPL-3.0-or-later
#include "materials/list.h"

#include "materials/lines.h"

#include <algorithm>
#include <cstdio>
#include <iterator>

namespace qw::materials {

namespace {

void append(std::vector<Line>& lines, std::vector<Line> more) {
    lines.insert(lines.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

}  // namespace

std::string Thickness::text(UnitSystem system) const {
    char number[32];
    std::snprintf(number, sizeof number, "%.3f", system == UnitSystem::metric ? caliper.in_mm() : caliper.in_inches());
    std::string shown = number;
    shown.erase(shown.find_last_not_of('0') + 1);
    if (shown.back() == '.') shown.pop_back();
    return shown + (system == UnitSystem::metric ? " mm" : " in");
}

std::vector<Thickness> thicknesses_of(const journal::Measures& measures) {
    const journal::Conditions& c = measures.conditions;
    const auto cut_from = [&](const std::string& stock) {
        return std::any_of(measures.pieces.begin(), measures.pieces.end(), [&](const journal::Piece& piece) { return piece.of->stock == stock; });
    };
    std::vector<Thickness> all;
    const auto add = [&](const kit::Stock& stock, bool used) {
        const auto same = [&](const Thickness& one) { return one.title == stock.title && one.caliper == stock.caliper; };
        if (used && stock.caliper > Length() && std::none_of(all.begin(), all.end(), same)) all.push_back({stock.title, stock.caliper});
    };
    add(c.page_stock, c.sheets > 0);
    add(c.cover_stock, c.full_sheets > 0 || cut_from("cover"));
    add(c.board_stock, cut_from("board"));
    add(c.spine_stock, cut_from("spine"));
    return all;
}

List count(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const journal::Measures& measures, const SheetsOfSets& counted,
           const std::vector<BoardsNeeded>& boards, const std::vector<PartsMade>& parts) {
    List list;
    append(list.lines, paper_lines(manifest, pipeline, measures, counted));
    append(list.lines, board_lines(pipeline, measures, boards));
    append(list.lines, piece_lines(pipeline, measures));
    append(list.lines, length_lines(pipeline, measures, parts));
    append(list.lines, item_lines(manifest, pipeline, measures, parts));
    std::stable_sort(list.lines.begin(), list.lines.end(), [](const Line& a, const Line& b) { return a.group < b.group; });
    list.tools = tool_lines(manifest, pipeline, measures, parts);
    list.cautions = cautions_of(manifest, pipeline, measures, parts, list.tools);
    list.thicknesses = thicknesses_of(measures);
    return list;
}

}  // namespace qw::materials
