// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/rendered_pages.h"

#include "release/sheet_rows.h"

#include <algorithm>
#include <optional>

namespace qw::release {

namespace {

bool one_passed_picture(const PlannedFile& file, std::size_t page) {
    const compose::Page& planned = file.document.pages[page];
    if (planned.items.size() != 1) return planned.items.empty();
    const auto* picture = std::get_if<compose::Picture>(&planned.items.front());
    return picture && file.document.artwork[picture->artwork].facts.passage == artwork::Passage::through;
}

bool same_place(const compose::Picture& a, const compose::Picture& b) { return a.place == b.place && a.clip == b.clip && a.shape == b.shape; }

std::optional<Point> end_of(const std::variant<compose::Outline::Move, compose::Outline::Line, compose::Outline::Curve, compose::Outline::Close>& step) {
    return std::visit([](const auto& one) -> std::optional<Point> {
        if constexpr (requires { one.to; }) return one.to;
        else return std::nullopt;
    }, step);
}

bool same_line(const compose::Outline& a, const compose::Outline& b) {
    return a.steps.size() == b.steps.size() && a.stroke == b.stroke && a.dash == b.dash && a.stroke_grey == b.stroke_grey && a.fill == b.fill &&
           std::equal(a.steps.begin(), a.steps.end(), b.steps.begin(),
                      [](const auto& left, const auto& right) { return left.index() == right.index() && end_of(left) == end_of(right); });
}

/// Whether two pages differ only in which pictures they show and in the words of their legends: then one of them tells
/// by its rendering what both look like, and the pictures of the other are proven by structure.
bool alike_but_for_pictures(const PlannedFile& file, std::size_t a, std::size_t b) {
    const auto& one = file.document.pages[a].items;
    const auto& other = file.document.pages[b].items;
    const auto passed = [&](const compose::Picture& picture) { return file.document.artwork[picture.artwork].facts.passage == artwork::Passage::through; };
    return file.document.pages[a].size == file.document.pages[b].size && one.size() == other.size() &&
           std::equal(one.begin(), one.end(), other.begin(), [&](const compose::Item& left, const compose::Item& right) {
               if (left.index() != right.index() || std::holds_alternative<compose::PdfFace>(left)) return false;
               if (const auto* picture = std::get_if<compose::Picture>(&left))
                   return passed(*picture) && passed(std::get<compose::Picture>(right)) && same_place(*picture, std::get<compose::Picture>(right));
               if (const auto* text = std::get_if<compose::Text>(&left)) return text->at == std::get<compose::Text>(right).at;
               return same_line(std::get<compose::Outline>(left), std::get<compose::Outline>(right));
           });
}

}  // namespace

std::set<std::size_t> pages_to_render(const PlannedFile& file, Rendering rendering) {
    const std::size_t n = file.document.pages.size();
    std::set<std::size_t> pages;
    std::optional<std::size_t> first, last, darkest;
    double most = -1;
    for (std::size_t i = 0; i < n; ++i) {
        if (rendering == Rendering::all || !one_passed_picture(file, i)) {
            // The last sheet, front and back, may be filled otherwise and is always rendered.
            const bool told = rendering != Rendering::all && i + 2 < n &&
                              std::any_of(pages.begin(), pages.end(), [&](std::size_t other) { return alike_but_for_pictures(file, i, other); });
            if (!told) pages.insert(i);
            continue;
        }
        if (!first) first = i;
        last = i;
        const ShownArtwork shown = artwork_on(file, i);
        if (shown.ink && shown.ink->coverage > most) {
            most = shown.ink->coverage;
            darkest = i;
        }
    }
    for (const auto& page : {first, last, darkest})
        if (page) pages.insert(*page);
    return pages;
}

}  // namespace qw::release
