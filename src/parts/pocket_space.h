// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/folding.h"

namespace qw::parts {

/// Where something that is put into a pocket can be, turned so that the pocket opens upward. A notch in the mouth is no
/// obstacle; glue is one for all that lies deeper.
class PocketSpace {
public:
    PocketSpace(const Net& net, const Folded& folded, const Pocket& pocket);

    /// The widest straight-sided thing that reaches so deep, measured from the highest point of the mouth; 0 when none does.
    Length width_to(Length depth) const;
    /// How deep a thing of this width goes; 0 when it does not go in.
    Length depth_for(Length width) const;
    PocketRoom room() const;

private:
    Region free_;
    Rect box_;
};

}  // namespace qw::parts
