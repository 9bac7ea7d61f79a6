// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/measure_rows.h"
#include "texts/passages.h"

#include <string>
#include <vector>

namespace qw::compose {

/// What a step's text may name: the template's lengths in both rulers ("3 mm (1/8 in)", the paper's own first), its
/// numbers, and for each piece, cut length and item whether it is there as the template has it (`has-NAME`). A printed
/// length is told for every print where they differ, rounded to the nearest 0.5 mm or 1/16 in as stations are.
texts::Model step_model(const std::vector<SizeColumn>& columns, const texts::Passages& words);

/// The texts of all steps that stand at the size of the first column as paragraphs, in their order. Throws Fault (not_understood) with everything that they name
/// and are not given, each at its step's place in the template.
std::vector<std::vector<std::string>> step_texts(const std::vector<SizeColumn>& columns, const texts::Passages& words);

/// The paragraphs of a step's text, each as one line: empty lines part them.
std::vector<std::string> step_paragraphs(const std::string& text);

}  // namespace qw::compose
