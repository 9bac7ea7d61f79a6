// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/geometry.h"
#include "base/unit_system.h"
#include "kit/part_template.h"
#include "parts/region.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::parts {

/// A closed outline of straight edges and arcs, counter-clockwise, as it is drawn.
struct Outline {
    struct Edge {
        Point to;
        std::optional<Point> centre;   ///< of an arc; nothing: straight
        bool clockwise = false;        ///< the way round the centre
    };
    Point start;
    std::vector<Edge> edges;           ///< the last one leads back to `start`
    Region region() const;             ///< with chords for its arcs
};

enum class Side { front, back };

struct Panel {
    std::string name, title;
    Outline outline;
    Region region;                     ///< outline.region()
};

struct Fold {
    std::vector<std::size_t> moves;    ///< indices of panels
    bool valley = true;
};

struct Glue {
    std::size_t tab = 0, on = 0;
    std::string with;
};

struct Face {
    std::string name, title;
    Side side = Side::front;
    std::vector<std::size_t> panels;
    Rect frame;                        ///< around its panels, in the flat net; the picture covers it and its bleed
    int head = 0;                      ///< quarter turns counter-clockwise, seen on its side
    bool needed = true;
    std::size_t after = 0;             ///< folds
    bool from_front = true;
};

struct Pocket {
    std::string name, title;
    std::size_t front = 0, back = 0;
    int opens = 0;
    bool closes = false;
    std::size_t after = 0;
};

struct Hole {
    std::string name, title;
    Point at;
    Length diameter;
    std::string tool;
};

struct NoInk {
    std::string name;
    Side side = Side::front;
    Region region;
};

/// What one part needs beside paper.
struct NeededLength {
    const kit::LengthTemplate* of = nullptr;
    int count = 0;
    Length metric, us;                 ///< as that ruler cuts it, rounded by the template's rule
};
struct NeededItem {
    const kit::ItemTemplate* of = nullptr;
    int count = 0;
};

/// What a net is computed for.
struct NetConditions {
    UnitSystem system = UnitSystem::metric;  ///< the paper's own
    double scale = 1;                        ///< print scale of the set in its edition
    Length caliper;                          ///< of its stock
    Size contents;                           ///< the largest thing that goes in, as it is put in; 0 x 0: nothing
    Length contents_thickness;
};

/// A part template in lengths, as printed: the flat net, front side up, x to the right, y upward.
struct Net {
    const kit::PartTemplate* part = nullptr; ///< outlives the net
    NetConditions conditions;
    std::vector<Panel> panels;
    std::vector<Fold> folds;
    std::vector<Glue> glue;
    std::vector<Face> faces;
    std::vector<Pocket> pockets;
    std::vector<Hole> holes;
    std::vector<NoInk> no_ink;
    std::vector<std::size_t> layers;
    std::vector<NeededLength> lengths;       ///< of one part; what has a count of 0 is left out
    std::vector<NeededItem> items;
    std::vector<const kit::StepTemplate*> steps;  ///< of the template that stand
    Region whole;                            ///< all panels together, holes not taken out
    std::vector<Outline> cut;                ///< the cut lines with their arcs: outer ones, and inner ones clockwise
};

/// Evaluates a template. Throws Fault (not_understood) with all that is wrong with its formulas and outlines, each at its
/// line: a result that is no length, an outline that crosses itself or holds nothing, an arc whose three points lie on a
/// line, a rounding that has no room, panels that overlap, a net in several pieces, a name of a panel that is not there.
Net net_of(const kit::PartTemplate& part, const NetConditions& conditions);

}  // namespace qw::parts
