// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/edition.h"
#include "base/ink_map.h"
#include "checks/rules.h"
#include "compose/placement.h"

#include <string>
#include <vector>

namespace qw::checks {

/// A picture as it is seen on one page of an edition.
struct MotifSeen {
    const compose::Placement* placement = nullptr;  ///< never null
    const Ink* ink = nullptr;                       ///< of the artwork; never null
    std::uint32_t width = 0, height = 0;            ///< its pixels
    std::string shown;                              ///< how the designer knows the file
};

/// What an edition does to a picture's motif: edges that are cut away, edges in the fold of a journal page; pixels that are
/// stretched, or more of them than any printer shows.
void check_motif(const Rules& rules, const kit::Set& set, const Edition& edition, const MotifSeen& seen, Findings& findings);

/// Where the sheet is pierced or punched: a motif whose drawn edges crowd about a hole is spoiled by it. `holes` are points of
/// the sheet; `what` names them: "sewing holes". Each picture is told once, with the hole that meets most.
void check_holes(const Rules& rules, const std::vector<Point>& holes, const std::string& what, const std::string& where, const MotifSeen& seen, Findings& findings);

}  // namespace qw::checks
