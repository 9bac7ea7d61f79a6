// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/document.h"

#include <string>
#include <vector>

namespace qw::compose {

/// What of a page may not be: two lines of text over each other, text beyond a border, text that a line runs through.
struct Collision {
    enum class With { text, border, line } with = With::text;
    std::string words;   ///< the text that collides
    std::string other;   ///< the other text; empty for borders and lines
};

/// The space that a text's ink may take: its advance, from the descenders to the capitals' height, turned.
Rect box_of(const Text& text, const type::Fonts& fonts);

/// Every collision on a page. `border` is the rectangle that all text has to stay inside. Boxes may share an edge;
/// stroked straight lines collide when they run through the inner part of a box (a filled shape below a text does not).
std::vector<Collision> collisions(const Page& page, const type::Fonts& fonts, const Rect& border);

}  // namespace qw::compose
