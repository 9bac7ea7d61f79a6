// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/document.h"
#include "compose/setting.h"

#include <string>
#include <utility>
#include <vector>

namespace qw::compose {

/// Breaks words into lines no wider than `width`, at spaces; a number and its unit stay together, as does what stands
/// around a multiplication sign. A word that is wider than a line is broken inside. A last line of one short word is
/// avoided where that costs no further line.
std::vector<std::string> wrapped(const type::Fonts& fonts, const Setting& setting, Length width, const std::string& words);

/// A page that is being composed. Lengths from the paper's lower left corner. Keeps a reference to the fonts.
class Canvas {
public:
    using Anchor = Text::Anchor;

    Canvas(Size paper, const type::Fonts& fonts);

    const type::Fonts& fonts() const { return fonts_; }
    Size size() const { return page_.size; }
    Length width(const Setting& setting, const std::string& words) const;

    void words(Point at, const std::string& words, const Setting& setting, Anchor anchor = Anchor::start, double turn = 0);
    /// Cut off with an ellipsis where it is wider than `width`.
    void words_within(Point at, Length width, const std::string& words, const Setting& setting, Anchor anchor = Anchor::start);
    /// A wrapped paragraph whose first line's box begins at `top_left`; returns its height (lines × leading).
    Length paragraph(Point top_left, Length width, const std::string& words, const Setting& setting);

    void line(Point from, Point to, Length weight, std::vector<Length> dash = {});
    void frame(const Rect& rect, Length weight, std::vector<Length> dash = {}, std::optional<Grey> fill = std::nullopt);
    void fill(const Rect& rect, Grey grey);
    /// Straight from corner to corner and back to the first, not filled.
    void closed_line(const std::vector<Point>& corners, Length weight);
    void polygon(const std::vector<Point>& corners, Grey fill);
    void circle(Point centre, Length radius, std::optional<Length> weight, std::optional<Grey> fill = std::nullopt);

    /// Anything else that a page may hold.
    void add(Item item) { page_.items.push_back(std::move(item)); }

    Page finish() &&;

private:
    Page page_;
    const type::Fonts& fonts_;
};

}  // namespace qw::compose
