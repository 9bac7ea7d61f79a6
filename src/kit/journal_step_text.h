// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/faults.h"
#include "kit/journal_template.h"
#include "kit/node.h"
#include "kit/source_text.h"

namespace qw::kit {

/// What the text of a step names between double braces: lengths and numbers of the template, and sections about its
/// pieces, cut lengths and items, each closed inside the ones around it. Told where the tag stands in `source`, the file
/// that `node` is from; at the beginning of the text when that is null.
void check_step_text(const Node& node, const JournalTemplate& journal, const SourceText* source, Faults& faults);

}  // namespace qw::kit
