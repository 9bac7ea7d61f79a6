// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "journal/measures.h"
#include "kit/manifest.h"
#include "kit/pipeline.h"
#include "parts/folding.h"

#include <map>
#include <string>
#include <vector>

namespace qw::materials {

/// What may be bought, or done, in place of a line or of one thing on it.
struct OtherWay {
    std::string name, title;          ///< of the template's alternative: "waxed-twine", "Waxed twine"
    std::string stands_for;           ///< which of the line's things it replaces; empty where the line is one thing
    std::string metric, us;           ///< amounts as of lines; empty: nothing is bought
    std::string use;
};

/// One line of the shopping list. Amounts are text because each is already rounded and in both unit systems.
struct Line {
    using Group = kit::Material::Group;
    Group group = Group::other;
    std::string name;                 ///< key: a stock, a material, or a piece or item of the template
    std::string title;
    std::string metric, us;           ///< "12 sheets A4, 100 g/m²", "2 of 378 mm, 1 of 323 mm; buy 1.2 m (10 % more)"
    std::string use;                  ///< says of each thing what it is for, which one is optional, and its grain
    bool optional = false;            ///< all of it may be left out
    std::vector<OtherWay> instead;
};

/// A tool, and the only things or ways it is needed for: "eyelets", "bare holes or closing band". Empty: it is needed
/// whatever the buyer chooses.
struct ToolLine {
    kit::Tool tool;
    std::string only_for;
};

/// How thick a paper or board was taken, because spine and hinge follow from it.
struct Thickness {
    std::string title;
    Length caliper;
    std::string text(UnitSystem system) const;  ///< "0.125 mm", "0.005 in": thousandths, for a paper is thinner than 1/64 in
};

/// What a cutting plan says of one kind of board: so many sheets hold all pieces of a stock. Several of one stock are
/// ways to choose from.
struct BoardsNeeded {
    std::string stock;                ///< name in stocks.yaml
    std::string board;                ///< name in boards.yaml
    int count = 0;
    bool exact = true;                ///< it is proved that fewer will not do
    std::string note;                 ///< a remark for the buyer, or empty
};

/// A set of parts, folded on one paper at full size. Points to values that outlive the list's making.
struct PartsMade {
    const kit::Set* set = nullptr;
    int count = 0;                    ///< parts, copies included
    const parts::Net* net = nullptr;
    const parts::Folded* folded = nullptr;
};

/// What the whole kit needs, for one paper at full size: journal and parts added up. Everything in it follows
/// from the manifest, the measures and materials.yaml; nothing is typed in.
struct List {
    std::vector<Line> lines;          ///< by group
    std::vector<ToolLine> tools;      ///< each once: the template's, then those of its things in their order
    std::vector<kit::Caution> cautions;  ///< those that the tools and materials call for, alternatives' too, and the ones that always stand
    std::vector<Thickness> thicknesses;  ///< of the papers and boards that the journal is made of, each once
};

/// Sheets of paper by the name of the set, as counted from the artwork: one PDF can hold many faces.
using SheetsOfSets = std::map<std::string, int>;

/// A set that `counted` does not name has the sheets of the measures' conditions when it is the only one of its role,
/// otherwise a sheet for each file, or each two files of a duplex set; sets of parts are told where `counted` names them. Board is told in the
/// sheets that `boards` names for its stock, and by its area where that names none. The measures' template has the
/// kit's choices made: what it does not have is nowhere on the list.
/// Throws Fault (not_understood) when the template, a tool or a cutting plan names what the pipeline does not have.
List count(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const journal::Measures& measures,
           const SheetsOfSets& counted = {}, const std::vector<BoardsNeeded>& boards = {}, const std::vector<PartsMade>& parts = {});

/// "160 g/m² (59 lb cover; on the shelf: 65 lb)": grammage first, then whole pounds of the stock's grade, if it has one,
/// and the nearest weight that is sold (Pipeline::sold_weights) where those pounds are not.
std::string weight_text(const kit::Stock& stock, const kit::Pipeline& pipeline);

/// Pounds of a grade for g/m²: 500 sheets of the grade's basic size (bond 17 × 22 in, text 25 × 38, cover 20 × 26,
/// index 25½ × 30½); 1 lb = 453.59237 g. Throws Fault for an unknown grade.
double basis_weight(double grams_per_square_metre, const std::string& grade);

}  // namespace qw::materials
