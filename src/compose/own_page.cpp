// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/own_page.h"

#include <algorithm>
#include <functional>

namespace qw::compose {

namespace {

using journal::Measures;
using Side = PageForm::Side;

constexpr std::array<double, 4> multiples{0, 1, 0.5, 2};

Length side_of(Size page, Side side) { return side == Side::width ? page.width : page.height; }

/// One size in both unit systems, before rounding.
struct Exact {
    const Measures* metric = nullptr;
    const Measures* us = nullptr;
};

/// Where a length stands in the measures; nothing when that size has none.
using Place = std::function<const journal::Shown*(const Measures&)>;

std::optional<Length> constant_over(const std::vector<Exact>& sizes, const Measures* Exact::*system, const Place& place, Side side, double times) {
    std::optional<Length> constant;
    for (const Exact& size : sizes) {
        const Measures& m = *(size.*system);
        const journal::Shown* shown = place(m);
        if (!shown) return std::nullopt;
        const Length rest = shown->exact - side_of(m.conditions.page, side) * times;
        if (!constant) constant = rest;
        if (abs(rest - *constant) > form_tolerance) return std::nullopt;
    }
    return constant;
}

/// The side that has the length's own direction goes first.
std::optional<PageForm> form_of(const std::vector<Exact>& sizes, const Place& place, std::array<Side, 2> sides) {
    for (const Side side : sides)
        for (const double times : multiples) {
            const auto metric = constant_over(sizes, &Exact::metric, place, side, times), us = constant_over(sizes, &Exact::us, place, side, times);
            if (metric && us) return PageForm{side, times, {*metric, *us}};
        }
    return std::nullopt;
}

std::vector<const SizeColumn*> shown_sizes(const std::vector<SizeColumn>& columns) {
    std::vector<const SizeColumn*> shown;
    for (const SizeColumn& column : columns)
        if (!has_errors(column.measures.findings)) shown.push_back(&column);
    return shown;
}

bool differ(const std::vector<const SizeColumn*>& sizes) {
    return std::any_of(sizes.begin(), sizes.end(),
                       [&](const SizeColumn* c) { return abs(c->measures.conditions.page.width - sizes.front()->measures.conditions.page.width) > Length::mm(1); });
}

/// The measures' exact values are those of the paper's ruler; the same paper with the other ruler has the other ones.
std::vector<Measures> with_other_ruler(const std::vector<const SizeColumn*>& sizes) {
    journal::Calculation calculation(*sizes.front()->measures.journal);
    std::vector<Measures> all;
    for (const SizeColumn* column : sizes) {
        journal::Conditions conditions = column->measures.conditions;
        conditions.paper.ruler = conditions.paper.ruler == UnitSystem::metric ? UnitSystem::us : UnitSystem::metric;
        all.push_back(calculation.at(conditions));
    }
    return all;
}

}  // namespace

Length PageForm::of(Size page, UnitSystem system) const { return side_of(page, side) * times + plus.in(system); }

std::vector<OwnPageRow> from_own_page(const std::vector<SizeColumn>& columns) {
    const auto shown = shown_sizes(columns);
    if (shown.empty() || !differ(shown)) return {};
    const auto others = with_other_ruler(shown);
    std::vector<Exact> sizes;
    for (std::size_t i = 0; i < shown.size(); ++i) {
        const bool metric = shown[i]->measures.ruler == UnitSystem::metric;
        sizes.push_back({metric ? &shown[i]->measures : &others[i], metric ? &others[i] : &shown[i]->measures});
    }
    std::vector<OwnPageRow> rows;
    for (const journal::Piece& piece : shown.front()->measures.pieces) {
        const std::string& name = piece.of->name;
        const auto side = [&](auto which) { return Place([&name, which](const Measures& m) { const auto* p = m.piece(name); return p ? &(p->*which) : nullptr; }); };
        rows.push_back({name, piece.of->title, piece.of->rounding, true, form_of(sizes, side(&journal::Piece::width), {Side::width, Side::height}),
                        form_of(sizes, side(&journal::Piece::height), {Side::height, Side::width})});
    }
    for (const journal::CutLength& length : shown.front()->measures.lengths) {
        const std::string& name = length.of->name;
        const Place place = [&name](const Measures& m) { const auto* l = m.length(name); return l ? &l->length : nullptr; };
        rows.push_back({name, length.of->title, length.of->rounding, false, form_of(sizes, place, {Side::width, Side::height}), std::nullopt});
    }
    return rows;
}

}  // namespace qw::compose
