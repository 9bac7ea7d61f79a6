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
const Paper& paper(const std::string& short_name);

/// A manifest as the reader would give it, with a set of each role and no artwork.
kit::Manifest sample_manifest(const std::string& journal);

/// The kit's journal at a print size, by the rules of the design: trimmed borders, cover papers at 100 %.
journal::Conditions sample_conditions(const kit::Manifest& manifest, const Paper& paper, Print print, double percent);
std::vector<compose::SizeColumn> sample_columns(const kit::Manifest& manifest, const Paper& paper, const std::vector<double>& percents);

/// All texts of a document, in the order in which they are painted.
std::vector<std::string> texts_of(const compose::Document& document);

}  // namespace qw::test
