// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/measure_rows.h"
#include "compose/sheet.h"
#include "journal/measures.h"
#include "kit/manifest.h"
#include "kit/pipeline.h"
#include "materials/list.h"

#include <string>
#include <vector>

namespace qw::test {

/// The project's own pipeline/, read once.
const kit::Pipeline& pipeline();
const type::Fonts& fonts();
/// Letter and A4 of the pipeline, and the small papers that kits may come to: A5 and 5 × 7 in (PWG 5101.1-2023).
const std::vector<Paper>& sheet_papers();
/// One of these, by "letter", "a4", "a5", "5x7".
const Paper& paper(const std::string& short_name);
/// The words of the generated sheets and nothing else of the pipeline.
kit::Pipeline words_alone();

/// A manifest as the reader would give it, with a set of each role and no artwork.
kit::Manifest sample_manifest(const std::string& journal);

/// The kit's journal at a print size, by the rules of the design: trimmed borders, cover papers at 100 %.
journal::Conditions sample_conditions(const kit::Manifest& manifest, const Paper& paper, Print print, double percent);
std::vector<compose::SizeColumn> sample_columns(const kit::Manifest& manifest, const Paper& paper, const std::vector<double>& percents);

/// All texts of a document, in the order in which they are painted.
std::vector<std::string> texts_of(const compose::Document& document);

}  // namespace qw::test
