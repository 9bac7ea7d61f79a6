// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/geometry.h"

#include <utility>
#include <vector>

namespace qw::compose {

/// What of a drawing is taken by words and by lines, so that what is drawn next finds a place of its own. Touching is
/// allowed.
class ClearSpace {
public:
    using Line = std::pair<Point, Point>;

    void take(const Rect& words) { words_.push_back(words); }
    void take(const Line& line) { lines_.push_back(line); }
    /// No words lie under `box`, and no line runs through it but `except`.
    bool holds(const Rect& box, const Line* except = nullptr) const;
    /// The line runs through no words.
    bool holds(const Line& line) const;

private:
    std::vector<Rect> words_;
    std::vector<Line> lines_;
};

}  // namespace qw::compose
