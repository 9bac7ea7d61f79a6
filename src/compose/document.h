// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/facts.h"
#include "base/clock.h"
#include "base/geometry.h"
#include "type/fonts.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace qw::compose {

/// Greys only: the generated sheets must be right on any home printer. 0 black … 1 white.
using Grey = double;

/// A line of text. `at` is the baseline's start, middle or end, by `anchor`.
struct Text {
    enum class Anchor { start, middle, end };
    Point at;
    std::string words;            ///< UTF-8, no line break
    type::Cut cut = type::Cut::text;
    Length size = Length::points(10);
    Anchor anchor = Anchor::start;
    double turn = 0;              ///< degrees counter-clockwise about `at`
    Grey grey = 0;
};

/// Straight runs and curves, stroked, filled or both.
struct Outline {
    struct Move { Point to; };
    struct Line { Point to; };
    struct Curve { Point control1, control2, to; };
    struct Close {};
    std::vector<std::variant<Move, Line, Curve, Close>> steps;
    std::optional<Length> stroke;         ///< line width
    std::vector<Length> dash;             ///< on, off, …; empty: solid
    Grey stroke_grey = 0;
    std::optional<Grey> fill;
};

/// An area with straight edges: outer rings counter-clockwise, holes clockwise, filled by the nonzero winding number rule
/// (ISO 32000-1 8.5.3.3.2).
using Shape = std::vector<std::vector<Point>>;

/// A PNG or JPEG, drawn in the unit square that `place` maps to the page (points; the EXIF turn is in it).
struct Picture {
    std::size_t artwork = 0;              ///< index into Document::artwork
    Matrix place;
    Rect clip;                            ///< nothing outside is drawn
    Shape shape = {};                     ///< nor outside this, unless it is empty
};

/// A page of a PDF as a form XObject.
struct PdfFace {
    Path file;
    int page = 1;                         ///< counted from 1
    Matrix place;                         ///< from the source page's own user space (points) to this page
    Rect clip;
    Shape shape = {};                     ///< as for pictures
};

using Item = std::variant<Text, Outline, Picture, PdfFace>;

struct Page {
    Size size;                            ///< MediaBox: exactly the paper, as it is held
    Rect trim, bleed;                     ///< TrimBox inside BleedBox inside MediaBox
    std::vector<Item> items;              ///< painted in this order
};

/// Pictures that the pages show, each by one file however often it is drawn.
struct PlacedArtwork {
    Path file;
    artwork::Facts facts;
};

enum class Duplex { simplex, flip_short_edge, flip_long_edge };

/// A PDF to be. Pure geometry: what is drawn where, in lengths; can be compared, measured and printed as JSON.
struct Document {
    std::string title;
    std::string subject;                  ///< kit, version, edition
    Date date;
    Duplex duplex = Duplex::simplex;
    std::vector<PlacedArtwork> artwork;
    std::vector<Page> pages;
};

}  // namespace qw::compose
