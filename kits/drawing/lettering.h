// SPDX-License-Identifier: GPL-3.0-or-later
// Type: two families, a handful of styles, set on a baseline by Pango.
#pragma once

#include <string>

#include "pen.h"

namespace art {

enum class Align { left, centre, right };

struct Type {
    const char* font;        // a Pango description without a size
    double points;           // size
    double spacing = 0;      // between letters, in thousandths of an em
    bool old_style = false;  // old-style figures in running text, lining and tabular elsewhere
};

inline constexpr Type kTitle{"Vollkorn", 24, 0, true};
inline constexpr Type kHeading{"Vollkorn", 15, 0, true};
inline constexpr Type kText{"Vollkorn", 9, 0, true};
inline constexpr Type kItalic{"Vollkorn Italic", 9, 0, true};
inline constexpr Type kNote{"Vollkorn Italic", 7.5, 0, true};
inline constexpr Type kFigures{"Vollkorn", 8.5};
inline constexpr Type kCaps{"Lato Medium", 6.2, 160};
inline constexpr Type kTiny{"Lato", 5.2, 20};

constexpr Type sized(Type t, double points) {
    t.points = points;
    return t;
}
constexpr Type spaced(Type t, double spacing) {
    t.spacing = spacing;
    return t;
}

// Throws std::runtime_error naming the first typeface that the system lacks: a substitute would
// change every file.
void require_typefaces();

// One line of text with its baseline at the point.
void put(Pen& pen, Point at, const std::string& text, const Type& type, Colour colour, Align align = Align::left);
double width_of(Pen& pen, const std::string& text, const Type& type);
// A paragraph broken to the width; the first baseline is one leading (points) below `at`.
// Returns the last baseline.
double paragraph(Pen& pen, Point at, double width, const std::string& text, const Type& type, Colour colour,
                 double leading, Align align = Align::left);
// Letters standing on a circle, centred on a bearing, reading clockwise.
void put_on_arc(Pen& pen, Point centre, double radius, double degrees, const std::string& text, const Type& type,
                Colour colour);

}  // namespace art
