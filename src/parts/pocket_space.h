// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/lying.h"

namespace qw::parts {

/// The two walls of a pocket and what lies between them.
bool part_of_pocket(const Lying& state, std::size_t panel, const Pocket& pocket);

/// Where something that is put into a pocket can be, turned so that the pocket opens upward: where not all layers from wall
/// to wall are glued. A tab that is folded in is glued to one of them, and what goes in lies over it. A notch in the mouth
/// is no obstacle; walls that are glued to each other bar all that lies deeper.
class PocketSpace {
public:
    PocketSpace(const Net& net, const Folded& folded, const Pocket& pocket);

    /// The widest straight-sided thing that reaches so deep, measured from the highest point of the mouth; 0 when none does.
    Length width_to(Length depth) const;
    /// How deep a thing of this width goes; 0 when it does not go in.
    Length depth_for(Length width) const;
    /// How high a thing of this width may be that does not stand out beyond the back panel either.
    Length height_within_back(Length width) const;
    PocketRoom room() const;

private:
    Region free_;                      ///< up to the highest point of the mouth
    Region closed_;                    ///< and on, as far as the back panel goes
    Rect box_;                         ///< of what the walls have in common
};

}  // namespace qw::parts
