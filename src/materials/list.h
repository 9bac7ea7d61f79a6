// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "journal/measures.h"
#include "kit/manifest.h"
#include "kit/pipeline.h"

#include <map>
#include <string>
#include <vector>

namespace qw::materials {

/// One line of the shopping list. Amounts are text because each is already rounded and in both unit systems.
struct Line {
    enum class Group { paper, board, sewing, glueing, other } group = Group::other;
    std::string name;                 ///< key: a stock, a material or an item of the template
    std::string title;
    std::string metric, us;           ///< "12 sheets A4, 100 g/m²", "2 of 390 mm"
    std::string use;
};

/// What the whole kit needs, for one paper at full size: journal and, later, parts added up. Everything in it follows
/// from the manifest, the measures and materials.yaml; nothing is typed in.
struct List {
    std::vector<Line> lines;
    std::vector<kit::Tool> tools;
    std::vector<kit::Caution> cautions;  ///< those that the tools and materials call for, and the ones that always stand
};

/// Sheets of paper by the name of the set, as counted from the artwork: one PDF can hold many faces.
using SheetsOfSets = std::map<std::string, int>;

/// A set that `counted` does not name has the sheets of the measures' conditions when it is the only one of its role,
/// otherwise a sheet for each file, or each two files of a duplex set. Parts are not counted yet.
/// Throws Fault (not_understood) when the template or a tool names what the pipeline does not have.
List count(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const journal::Measures& measures,
           const SheetsOfSets& counted = {});

/// "160 g/m² (59 lb cover)": grammage first, then whole pounds of the stock's grade, if it has one.
std::string weight_text(const kit::Stock& stock);

/// Pounds of a grade for g/m²: 500 sheets of the grade's basic size (bond 17 × 22 in, text 25 × 38, cover 20 × 26,
/// index 25½ × 30½); 1 lb = 453.59237 g. Throws Fault for an unknown grade.
double basis_weight(double grams_per_square_metre, const std::string& grade);

}  // namespace qw::materials
