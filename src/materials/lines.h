// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "materials/list.h"

#include <vector>

namespace qw::materials {

/// A material of the pipeline, or null.
const kit::Material* material_of(const kit::Pipeline& pipeline, const std::string& name);

/// Sheets of paper to print on, added up by stock.
std::vector<Line> paper_lines(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const journal::Measures& measures,
                              const SheetsOfSets& counted);
/// Pieces that are cut: board with its area, tape, and paper that is not one of the printed sheets.
std::vector<Line> piece_lines(const kit::Pipeline& pipeline, const journal::Measures& measures);
/// Elastic and thread, added up by material. Throws Fault for a material that the pipeline does not have.
std::vector<Line> length_lines(const kit::Pipeline& pipeline, const journal::Measures& measures);
/// What is bought by the piece: eyelets, glue.
std::vector<Line> item_lines(const kit::Pipeline& pipeline, const journal::Measures& measures);

}  // namespace qw::materials
