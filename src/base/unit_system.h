// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/length.h"

#include <optional>
#include <string>

namespace qw {

/// Which ruler lies on the workbench. A template gives its lengths in both; neither is converted from the other.
enum class UnitSystem { metric, us };

/// Which way a value may be rounded and still work: up for what must cover, down for what must go into something.
enum class Rounding { up, down, nearest };

/// Rounds once, to a whole number of `step` (> 0). A value within 0.05 mm of a step is that step: cutting with a
/// ruler and a knife cannot tell them apart, and plain ceil or floor would turn 144.02 mm into 144.5 mm.
Length round_to_step(Length value, Length step, Rounding way);
inline constexpr Length snap_to_step = Length::mm(0.05);

/// "153 mm", "4.5 mm", at most two decimals, no trailing zeros.
std::string show_metric(Length value);
/// "8 3/4 in", "1/16 in", "12 in": the nearest 1/64 in, reduced. ASCII; sheets set the fraction as a real fraction.
std::string show_us(Length value);
std::string show(Length value, UnitSystem system);
/// "153 x 216 mm", "5 5/8 x 8 3/4 in".
std::string show(Length width, Length height, UnitSystem system);

/// Reads a length as people write it: "3 mm", "15.3 cm", "5 5/8 in", "1/8 in", "12 pt", "0.5in". Nothing if the
/// text is no length, has no unit or an unknown one, or is beyond ±100 m.
std::optional<Length> read_length(const std::string& text);

}  // namespace qw
