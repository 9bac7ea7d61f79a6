// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/faults.h"
#include "kit/journal_template.h"

#include <string>
#include <vector>

namespace qw::kit {

/// The pictures of a cover that sheets can show, and `none`.
const std::vector<std::string>& picture_names();

/// Whether the template has the pieces that its picture reads, and each is what it is drawn as: rigid where a board or a
/// spine piece is drawn, soft where paper, cloth or tape is. A piece that every cover of this kind has must be there
/// whatever a kit chooses. Told at `where`, the place of `picture`.
void check_picture(const JournalTemplate& journal, const SourceMark& where, Faults& faults);

}  // namespace qw::kit
