// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/geometry.h"
#include "base/unit_system.h"

#include <optional>
#include <string>

namespace qw {

/// A paper that buyers print on. `size` is portrait, as the name gives it (shorter dimension first).
struct Paper {
    std::string name;        ///< PWG 5101.1 self-describing name, "iso_a4_210x297mm"
    std::string short_name;  ///< what manifests and folders call it, "a4"
    std::string title;       ///< what buyers call it, "A4"
    Size size;
    UnitSystem ruler = UnitSystem::metric;  ///< the unit system that is exact for kits on this paper
};

/// The size in a PWG 5101.1-2023 media-size-name (class "_" size-name "_" width "x" length unit), or nothing when
/// the text is none. Inch classes must end in "in" and metric ones in "mm"; disc and roll media are not sheets.
std::optional<Size> size_of_pwg_name(const std::string& name);

}  // namespace qw
