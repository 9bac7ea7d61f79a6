// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/length.h"
#include "base/unit_system.h"
#include "checks/rules.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::checks {

/// A sheet that somebody printed and signed, held against the kit as it is now.
struct SignedSheet {
    enum class State {
        same_file,   ///< the file has the bytes of then
        same_pages,  ///< it has others, and these pages are the same
        changed,     ///< the pages are others, or cannot be read
        gone         ///< the kit has no such file or page
    } state = State::same_file;
    std::string file;                    ///< path inside the bundle
    std::vector<int> pages;              ///< counted from 1
    std::string version, printed_by, printer, stock, setting, date;
    bool good = true;
    std::optional<Length> gauge, drawn;  ///< what the gauge read, and what it was drawn as
    std::optional<Length> right, up;     ///< of the back against the front
    UnitSystem ruler = UnitSystem::metric;  ///< that of its paper

    bool holds() const { return state == State::same_file || state == State::same_pages; }
    /// "page 3", "pages 1 and 2"
    std::string pages_told() const;
};

/// What signatures say of a kit: which no longer hold, and of those that do, which were bad or out of limits.
void check_proofs(const Rules& rules, const std::vector<SignedSheet>& sheets, Findings& findings);

}  // namespace qw::checks
