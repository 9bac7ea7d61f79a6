// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "materials/list.h"

#include <vector>

namespace qw::materials {

/// Sheets of paper to print on, added up by stock.
std::vector<Line> paper_lines(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const journal::Measures& measures,
                              const SheetsOfSets& counted);
/// Pieces of board, added up by stock, in sheets of board or with their area.
std::vector<Line> board_lines(const kit::Pipeline& pipeline, const journal::Measures& measures, const std::vector<BoardsNeeded>& boards);
/// Other pieces that are cut: from a material, from plain paper; from a printed sheet only where there is something to
/// say about it, because the sheets are on the list already.
std::vector<Line> piece_lines(const kit::Pipeline& pipeline, const journal::Measures& measures);
/// Elastic and thread, added up by material. Throws Fault for a material that the pipeline does not have.
std::vector<Line> length_lines(const kit::Pipeline& pipeline, const journal::Measures& measures, const std::vector<PartsMade>& parts);
/// What is bought by the piece: eyelets; glue, with the area that it is for.
std::vector<Line> item_lines(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const journal::Measures& measures,
                             const std::vector<PartsMade>& parts);

/// Each once, with what it is needed for.
std::vector<ToolLine> tool_lines(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const journal::Measures& measures,
                                 const std::vector<PartsMade>& parts);
/// Those that the tools and every material on the list call for and those that always stand, each once, in the order
/// of the data.
std::vector<kit::Caution> cautions_of(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const journal::Measures& measures,
                                      const std::vector<PartsMade>& parts, const std::vector<ToolLine>& tools);
/// Of the stocks that the pages, their cover and its boards are made of.
std::vector<Thickness> thicknesses_of(const journal::Measures& measures);

}  // namespace qw::materials
