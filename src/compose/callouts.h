// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/canvas.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::compose {

/// What is too small to be named where it is: a dot on it, and below the drawing its words and its figure.
struct Callout {
    Point dot;
    std::string words, figure;   ///< either may be empty
};

/// Draws the callouts in rows from the top of `room` down; leaders fall straight from their dots. Words run to
/// the left or to the right of their leaders, the outermost highest, in as few rows as the room allows; no leader ever
/// meets words. Returns the height of the rows; nothing, and draws nothing, when some words have no room.
std::optional<Length> draw_callouts(Canvas& canvas, std::vector<Callout> callouts, const Rect& room);

/// The same in less room: below the drawing a letter for each dot, and under them the words and figures by their
/// letters, as many in a line as fit.
std::optional<Length> draw_keyed_callouts(Canvas& canvas, std::vector<Callout> callouts, const Rect& room);

/// The words small and the figure large enough to cut from, beside each other; returns their width.
Length draw_words_and_figure(Canvas& canvas, Point at, const std::string& words, const std::string& figure);
Length width_of_words_and_figure(const Canvas& canvas, const std::string& words, const std::string& figure);

}  // namespace qw::compose
