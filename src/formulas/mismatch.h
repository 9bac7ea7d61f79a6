// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "formulas/asked.h"
#include "formulas/figures.h"

#include <functional>
#include <optional>
#include <string>

namespace qw::formulas {

/// Why a formula that was found unsound is neither a length nor a number, in the words of a message: "adds a length
/// to an area: 'gap' and 'edge * edge'". Nothing when no place in it tells. `kind` says what a name is; nothing: unknown.
struct Mismatch {
    std::string what, mend;
};
std::optional<Mismatch> mismatch_in(const Asked& asked, const std::function<std::optional<Kind>(const std::string& name)>& kind);

}  // namespace qw::formulas
