// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/rules.h"
#include "proof/file_facts.h"

#include <optional>
#include <string>

namespace qw::checks {

/// Over which edge the sheet turns between its front and its back (ISO 32000-1 table 150, Duplex).
enum class Turn { short_edge, long_edge };

/// What the file asks for; nothing when it has no Duplex entry, or one that asks for no turn.
std::optional<Turn> turn_asked(const proof::FileFacts& seen);

/// Whether a back comes out with its head where the front has its own, for somebody who turns the sheet like a page of a
/// book. On a landscape sheet the short edges are the upright ones: turned over them head stays head, turned over a long
/// edge it goes to the foot; on a portrait sheet the other way round. Nothing for a square sheet, which has neither.
std::optional<bool> back_upright(Size front, Turn turn);

/// The backs of a finished file, its even pages, each against the page before it; pages as they are shown: CropBox,
/// turned by Rotate. Rules `backs-upright` and `backs-same-size`, one finding a back, and `duplex-entry`, one finding a
/// file. `both_sides`: the file was planned to be printed on both; one that was not is judged only when it asks for a
/// turn. A last front without a back is none of these rules' business. `path` is the file's path inside the bundle.
void check_backs(const Rules& rules, bool both_sides, const proof::FileFacts& seen, const std::string& path, Findings& findings);

}  // namespace qw::checks
