// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/finding.h"
#include "kit/part_template.h"
#include "parts/folding.h"

#include <optional>
#include <string>

namespace qw::parts {

/// What goes into a pocket, as it is put in.
struct Contents {
    std::string title;
    Size size;                         ///< as printed, or as bought
    bool printed = false;              ///< it shrinks with its own print scale
    double scale = 1;                  ///< that scale; 1 for bought things
};

/// Whether the contents go in, in this edition: clearance in width, and for a pocket that closes in height too, inside its
/// back panel. Paper in paper keeps `clearance` at drawn size and `least_clearance` as printed; a bought thing keeps
/// `clearance` as printed. Finding `part-goes-in` says what is missing and the smallest per cent, rounded up to a whole one,
/// from which it holds (of both together when both are printed; none when no scale in 30 … 103 % does). Other scales are
/// told from this net's lengths: what a template keeps the same on small prints is taken to shrink with the rest.
/// How the thing is turned is the caller's: `size` is width across the opening, height into it. With no pocket named, it
/// is held against every one of the net.
Findings check_goes_in(const Net& net, const Folded& folded, const Pocket& pocket, const Contents& contents, const kit::PartRules& rules);
Findings check_goes_in(const Net& net, const Folded& folded, const Contents& contents, const kit::PartRules& rules);

/// Whether the closed part lies on what it is glued to: `part-goes-on`, with the largest per cent that does.
Findings check_goes_on(const Net& net, const Folded& folded, const std::string& on_title, Size on, bool on_shrinks_too);

/// The smallest print scale, 0.30 … 1.03, at which a bought thing goes in; nothing when none does.
std::optional<double> smallest_scale(Length room_at_full_size, Length thing, Length clearance);

}  // namespace qw::parts
