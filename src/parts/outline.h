// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/net.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::parts {

/// A step of an outline with its formulas evaluated (kit/part_template.h, OutlineStep).
struct Step {
    kit::OutlineStep::Kind kind = kit::OutlineStep::Kind::corner;
    Point at;                          ///< where it leads
    Length radius;                     ///< rounded only
    Point through;                     ///< arc only
};

/// Why steps make no outline.
struct OutlineFault {
    std::size_t step = 0;              ///< index of the step that is to blame
    std::string code;                  ///< "outline-crosses-itself", "outline-holds-nothing", "arc-on-a-line", "rounding-without-room"
    std::string wrong;                 ///< one sentence without its subject and full stop: "crosses itself"
    std::string expected, mend;
};

struct MadeOutline {
    std::optional<Outline> outline;    ///< counter-clockwise; nothing when there is a fault
    std::vector<OutlineFault> faults;
};

/// Draws the outline. Straight steps shorter than `same_point` are left out, so that a formula may make a bevel vanish.
/// - A rounded corner takes radius / tan(half its angle) from the straight edges on its two sides (geometry); beside an arc
///   there are none to take from. A radius of zero is a corner.
/// - An arc is the circle through the step before, `through` and `at`, from the one to the other by way of `through`.
MadeOutline outline_of(const std::vector<Step>& steps);

/// Points that are nearer than this are one point: shared edges may miss each other by it.
inline constexpr Length same_point = Length::mm(0.005);
/// What is smaller or narrower than this is no area: it comes from rounding.
inline constexpr double least_area_mm2 = 0.05;
inline constexpr Length least_width = Length::mm(0.02);

/// Whether a region is an area for people, by the two limits above.
bool is_area(const Region& region);

}  // namespace qw::parts
