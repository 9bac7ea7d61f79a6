// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/length.h"
#include "base/source.h"
#include "base/unit_system.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::kit {

/// A length in both unit systems, each native.
struct BothLengths {
    Length metric, us;
    Length in(UnitSystem system) const { return system == UnitSystem::metric ? metric : us; }
};

/// A named length. Printed ones shrink with the print scale of the pages, fixed ones do not.
struct NamedLength {
    std::string name;        ///< plain name; its hyphens are underscores in formulas
    BothLengths value;
    bool printed = false;
    std::string why;         ///< the reason for the value, or where it comes from
    SourceMark mark;
};

/// A plain number with a name: signatures, most sheets a signature.
struct NamedNumber {
    std::string name;
    double value = 0;
    std::string why;
    SourceMark mark;
};

/// `name: formula`. A formula holds names and plain numbers, never units.
struct Formula {
    std::string name;        ///< empty where the place itself is the name
    std::string text;
    SourceMark mark;
};

/// How a piece's sizes and a length's are rounded for people: once.
struct RoundingRule {
    BothLengths step{Length::mm(0.5), Length::inches(1.0 / 16)};
    Rounding way = Rounding::up;
};

struct PieceTemplate {
    std::string name, title;          ///< "board", "Board"
    Formula count, width, height;     ///< count a number, width and height lengths
    RoundingRule rounding;
    std::string stock;                ///< "board", "page", "cover": a stock role; or "tape"; what it is cut from
    std::string grain;                ///< "height", "width" or "any": along which side the grain runs
    std::string use;                  ///< a sentence for the sheet: "two, one for each cover"
    SourceMark mark;
};

/// Holes to be pierced, measured from the head, along one line.
struct StationTemplate {
    std::vector<Formula> page, spine;
    std::string use;
};

struct LengthTemplate {
    std::string name, title;
    Formula count, length;
    RoundingRule rounding;
    std::string material;             ///< key into the materials texts: "elastic-1mm", "hinge-tape"
    std::string use;
};

/// A bought-in thing that is counted: eyelets.
struct ItemTemplate {
    std::string name, title;
    Formula count;
    std::optional<BothLengths> size;  ///< a diameter or width that is shown
    std::string use;
};

/// A condition that must hold at every size that is shown, before and after rounding.
struct CheckTemplate {
    std::string name;                 ///< kebab-case; a finding's rule is "journal-" + name
    Formula holds;                    ///< a comparison; not 0 means it holds
    Formula measured, limit;          ///< lengths or numbers that are shown in the finding
    std::string level;                ///< "error", "warning", "note"
    std::string message, mend;
    SourceMark mark;
};

/// A journal as data (pipeline/journals/NAME.yaml). src/kit/journal-template.md is the format's page.
struct JournalTemplate {
    std::string name, title;
    std::string file;                 ///< "pipeline/journals/soft-spine.yaml"
    std::vector<NamedLength> lengths;
    std::vector<NamedNumber> numbers;
    std::vector<Formula> values;      ///< named intermediate results, any order
    std::vector<PieceTemplate> pieces;
    StationTemplate stations;
    std::vector<LengthTemplate> cut_lengths;
    std::vector<ItemTemplate> items;
    std::vector<CheckTemplate> checks;
    Formula bulk;                     ///< thickness of the closed pages
    Formula creep_least, creep_most;  ///< how far the innermost fore-edge stands out
    std::vector<std::string> tools;   ///< keys into texts/tools.yaml: "steel-ruler", "craft-knife", "awl"
    std::string picture;              ///< which drawing the measurements sheet shows: "opened-cover" or "wrapped-cover"
};

}  // namespace qw::kit
