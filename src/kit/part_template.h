// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/geometry.h"
#include "kit/journal_template.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::kit {

/// One step of an outline: where it leads, and how. Coordinates are formulas for lengths in the flat net: x to the right,
/// y upward, the front of the sheet up.
struct OutlineStep {
    enum class Kind {
        corner,     ///< `[x, y]`: straight to a corner
        rounded,    ///< `{ at: [x, y], rounded: r }`: a corner that is rounded with a radius
        arc         ///< `{ through: [x, y], to: [x, y] }`: along the circle from the step before through a point
    } kind = Kind::corner;
    Formula x, y;
    Formula radius;                    ///< rounded only
    Formula through_x, through_y;      ///< arc only
    SourceMark mark;
};

/// A flat area between cut lines and score lines: a wall of the part, a flap or a glue tab.
struct PanelTemplate {
    std::string name, title;
    std::vector<OutlineStep> outline;  ///< closed, either way round; three steps or more, or two with an arc
    SourceMark mark;
};

/// A half turn of some panels. The fold lines are not written: they are the edges that these panels share with those
/// that stay.
struct FoldTemplate {
    std::vector<std::string> moves;    ///< panels
    bool valley = true;                ///< toward the viewer of the flat net's front; a mountain fold goes behind
    SourceMark mark;
};

/// Two panels that are held together in the end.
struct GlueTemplate {
    std::string tab, on;               ///< the tab lies wholly on the other panel
    std::string with;                  ///< an item of the template: "pva-glue"
    SourceMark mark;
};

/// One picture's place on the net: the panels that it runs across.
struct PartFaceTemplate {
    std::string name, title;           ///< what a manifest's `faces` says: "outside", "back"
    bool front = true;                 ///< which side of the sheet it is printed on
    std::vector<std::string> panels;
    int head = 0;                      ///< quarter turns counter-clockwise of its head, seen on its side of the flat net: 0 up, 1 left, 2 down, 3 right
    bool needed = true;                ///< a kit has to give artwork for it
    /// When people look at it: after so many folds (all when nothing is written), from the viewer's side or from behind
    /// (turned over sideways). Its head is up then, and it is not covered.
    std::optional<int> after;
    bool from_front = true;
    SourceMark mark;
};

/// Room for something between two panels.
struct PocketTemplate {
    std::string name, title;
    std::string front, back;           ///< panels; their overlap less what is glued is the room
    int opens = 0;                     ///< quarter turns counter-clockwise of its opening, on the panel `back` as it lies in the flat net
    bool closes = false;               ///< what goes in must not stand out
    std::optional<int> after;          ///< folds after which it is filled; all when nothing is written
    SourceMark mark;
};

/// A round hole to be punched.
struct HoleTemplate {
    std::string name, title;
    Formula x, y;                      ///< its middle, in the flat net
    BothLengths diameter;              ///< fixed: hardware does not shrink with the print
    std::string tool;                  ///< key of materials.yaml; one with a reach is held against it
    SourceMark mark;
};

/// Where nothing may be printed, beside the tabs' glued areas, which are known.
struct NoInkTemplate {
    std::string name;
    bool front = true;
    std::vector<OutlineStep> outline;
    std::string why;
    SourceMark mark;
};

/// A part as data (pipeline/parts/NAME.yaml). src/kit/part-template.md is the format's page.
struct PartTemplate {
    std::string name, title;
    std::string file;                  ///< "pipeline/parts/trifold-pocket.yaml"
    std::vector<NamedLength> lengths;  ///< printed unless they say otherwise
    std::vector<NamedNumber> numbers;
    std::vector<Formula> values;
    std::vector<PanelTemplate> panels;
    std::vector<FoldTemplate> folds;   ///< in the order of folding
    std::vector<GlueTemplate> glue;
    std::vector<PartFaceTemplate> faces;
    std::vector<PocketTemplate> pockets;
    std::vector<HoleTemplate> holes;
    std::vector<NoInkTemplate> no_ink;
    std::vector<std::string> layers;   ///< panels of the closed part, from the viewer's side down; tabs may be left out
    std::vector<LengthTemplate> cut_lengths;  ///< of one part: twine, tape
    std::vector<ItemTemplate> items;          ///< of one part: brads, eyelets, glue
    std::vector<std::string> tools;
    std::vector<StepTemplate> steps;   ///< for the guide; `drawing` is "flat", "closed", or "fold-1" …: the state after that fold
    SourceMark mark;
};

/// things.yaml: what people buy or have and put into parts. It does not shrink with the print.
struct Thing {
    std::string name, title;
    Size size;                         ///< width × height as it stands
    Length thickness;
    std::string source;                ///< where the size comes from
};

/// A line to cut or fold along.
struct LineStyle {
    Length weight;
    std::vector<Length> dash;          ///< on, off, …; empty: solid
};

/// part-sheets.yaml: how parts are drawn, laid out and held against each other.
struct PartRules {
    LineStyle cut, valley, mountain;
    Length hatch_weight, hatch_gap;    ///< of glue tabs
    Length scissors_room;              ///< from part to part, between their bleeds
    Length edge_room;                  ///< from the edge of a borderless paper, where drivers enlarge
    Length over_fold;                  ///< how far a face reaches over a fold onto a panel that does not show it, at drawn size
    Length back_shift;                 ///< by which backs may miss their fronts; what they are drawn beyond the cut line
    Length clearance;                  ///< of paper in paper, in width, at drawn size; and of bought things as printed
    Length least_clearance;            ///< of paper in paper as printed
};

}  // namespace qw::kit
