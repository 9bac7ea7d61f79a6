// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/paper.h"

#include <string>

namespace qw {

enum class Print { borderless, bordered };
std::string name_of(Print print);

/// What a printer leaves white, for a sheet held in portrait. Data, in 1/100 mm like IPP media-*-margin.
struct Margins {
    Length left, bottom, right, top;
    friend constexpr bool operator==(const Margins&, const Margins&) = default;
};

/// One paper in one print: what a folder of the bundle holds.
struct Edition {
    Paper paper;
    Print print = Print::borderless;
    Margins margins;  ///< zero when borderless

    std::string folder() const { return paper.short_name + "/" + name_of(print); }
};

/// Where the picture of a bordered edition lies. Fronts and backs must fall on each other, so the picture is centred
/// on the paper and the margin of an axis is the larger of its two sides.
struct PrintFit {
    Size sheet;       ///< the paper as it is drawn, landscape or portrait
    Rect printable;   ///< what the margins leave, centred
    double scale = 1; ///< printed size ÷ size in the borderless edition, before the buyer's own percentage
    Rect picture;     ///< the whole borderless sheet at that scale, centred
};

/// `landscape` tells how the sheet is held; the margins turn with it.
PrintFit fit_of(const Edition& edition, bool landscape);

/// Of 1/100 mm, from points as PPD files and drivers give them: (n · 2540 + 36) / 72 in whole numbers
/// (CUPS, cups/pwg.h, PWG_FROM_POINTS).
Length pwg_from_points(int points);

}  // namespace qw
