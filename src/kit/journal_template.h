// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/length.h"
#include "base/source.h"
#include "base/unit_system.h"

#include <algorithm>
#include <map>
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
    std::string published;   ///< what published rules say where this journal does otherwise; the sheet shows it with `why`; empty: nothing
    SourceMark mark;
};

/// A plain number with a name: signatures, most sheets a signature.
struct NamedNumber {
    std::string name;
    double value = 0;
    std::string why;
    std::string published;   ///< as for lengths
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

/// What may stand in for a piece, length or item: another material, or another way that needs other tools.
struct Alternative {
    std::string name;                 ///< plain name; what a kit's `choices` names
    std::string title;                ///< "Waxed twine"; a material's own title when `material` is one and none is given
    std::string material;             ///< key of materials.yaml, or empty: nothing is bought
    std::vector<std::string> tools;   ///< keys of tools, needed for this way
    std::string use;
    std::optional<BothLengths> thickness{};  ///< where it is thicker or thinner than the thing; nothing: as thick
};

/// What a thing on the list may be besides what it is: left out, or done in another way.
struct Choosable {
    bool optional = false;            ///< the buyer may leave it out
    std::vector<std::string> tools;   ///< keys of tools that only this thing needs
    std::vector<Alternative> instead; ///< in the order written
    std::optional<BothLengths> thickness{};  ///< of the thing itself, for formulas: thickness_of_NAME; nothing: none uses it
};

struct PieceTemplate : Choosable {
    std::string name, title;          ///< "board", "Board"
    Formula count, width, height;     ///< count a number, width and height lengths
    RoundingRule rounding;
    std::string stock;                ///< what it is cut from: "board", "spine", "page", "cover" (roles of stocks), or "bought": `material`
    std::string material;             ///< key of materials.yaml when `stock` is "bought", else empty
    std::string grain;                ///< "height", "width" or "any": along which side the grain runs
    std::string glue;                 ///< the item with which one whole face of it is glued down, or empty; glue areas add up from it
    std::string use;                  ///< a sentence for the sheet: "two, one for each cover"
    SourceMark mark;
};

/// Holes to be pierced, measured from the head, along one line. Formulas may use them as page_station_1, spine_station_1 …
struct StationTemplate {
    std::vector<Formula> page, spine;
    std::string use;
};

/// What the thread goes round on its way from a station back to the same one, from one side to the other.
enum class Around { nothing, spine, head, tail };

/// How the needle goes: the path of one signature, by stations. Each station is a way through, from one side to the
/// other; so is each turn round an edge. The sides are the inside of the fold and the spine; of a block that is sewn
/// through from the side, with turns round its spine, the back and the front.
struct SewingTemplate {
    std::vector<int> path;            ///< stations in the order in which the needle passes them, 1 is the one at the head
    std::vector<Around> around{};     ///< what lies between path[i] and path[i + 1]; straight on where it is shorter
    Formula inset{};                  ///< a length: from the row of holes to the spine's edge; empty where no turn is round the spine
    Formula through{};                ///< a length: what the needle goes through at each station; empty: nothing worth counting
    bool begins_inside = true;        ///< the thread's beginning lies in the fold of the signature, or outside on the spine; at the back, or at the front
    bool goes_on = false;             ///< one thread for all signatures: every second one is sewn from the last station back
    Formula signatures;               ///< a count: how many folds are sewn
    Formula rows;                     ///< a count: rows of holes across the spine, one that all share or one a signature
    Formula row_gap;                  ///< a length, from row to row; empty where there is never a second row
    std::string thread;               ///< the cut length that is sewn with
    SourceMark mark;

    Around after(std::size_t i) const { return i < around.size() ? around[i] : Around::nothing; }
    /// Sewn through from front to back beside the spine: the pages have no fold there.
    bool from_the_side() const { return std::find(around.begin(), around.end(), Around::spine) != around.end(); }
};

struct LengthTemplate : Choosable {
    std::string name, title;
    Formula count, length;
    RoundingRule rounding;
    std::string material;             ///< key into the materials texts: "elastic-1mm", "hinge-tape"
    std::string use;
    SourceMark mark;
};

/// A bought-in thing that is counted: eyelets.
struct ItemTemplate : Choosable {
    std::string name, title;          ///< the name is a key of materials.yaml, too, where that has one
    Formula count;
    std::optional<BothLengths> size;  ///< a diameter or width that is shown
    std::string use;
    SourceMark mark;
};

/// A result worth knowing that is neither cut nor bought: thickness of the pages, room for filled pockets, glue area.
struct FigureTemplate {
    std::string name, title;
    Formula value;                    ///< a length, or a number
    bool number = false;              ///< which of the two: 0 alone does not tell
    RoundingRule rounding;            ///< of a length; a number is rounded to a whole one, the same way
    std::string use;
    SourceMark mark;
};

/// A step of the guide.
struct StepTemplate {
    std::string title;
    std::string text;                 ///< sentences; {{name}} is a named length or number, {{#has-name}}…{{/has-name}} what is chosen
    std::vector<std::string> uses;    ///< pieces, lengths, items, figures, "page", "page-stations", "spine-stations" whose numbers stand beside it
    std::vector<std::string> tools;   ///< keys; their cautions stand where a tool is used first
    std::string drawing;              ///< "cover", "corner", "stitch", "stations", or empty
    SourceMark mark;
    Formula when{};                   ///< a number: the step stands in the guide where it is not 0; empty: always
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
    std::optional<SewingTemplate> sewing;
    std::vector<LengthTemplate> cut_lengths;
    std::vector<ItemTemplate> items;
    std::vector<FigureTemplate> figures;
    std::vector<CheckTemplate> checks;
    Formula bulk;                     ///< thickness of the closed pages
    Formula creep_least, creep_most;  ///< how far the innermost fore-edge stands out
    std::vector<std::string> tools;   ///< keys of materials.yaml that are needed whatever is chosen; a step's own are needed where it stands
    std::vector<StepTemplate> steps;  ///< in the order of the work
    /// Which drawing of the cover the sheets show: opened-cover, wrapped-cover, case-cover, soft-cover, concertina, or none.
    std::string picture;
    /// What a kit chose: things left out or replaced by an alternative. Formulas see has_NAME as 0 for these, 1 for the
    /// others, and without_NAME as 1 for those of them that are not on the lists any more.
    std::vector<std::string> replaced;
};

/// A kit's choices among optional things and alternatives: "none", or the name of an alternative, by thing.
using Choices = std::map<std::string, Sourced<std::string>>;

/// The template with the choices made: what is left out is gone, an alternative stands in place of the thing (title,
/// material, tools, use, thickness), and nothing is left to choose there. What is not named stays as it is. Throws Fault
/// (not_understood) with all choices that the template does not offer, at their marks.
JournalTemplate chosen(const JournalTemplate& journal, const Choices& choices);

}  // namespace qw::kit
