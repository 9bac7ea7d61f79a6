// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/length.h"
#include "kit/journal_template.h"

#include <optional>
#include <vector>

namespace qw::compose {

/// The needle going through a hole.
struct Pass {
    int station = 0;             ///< from 0, at the head
    Length x;                    ///< a little beside its station's when other passes share it
};

/// A stretch of thread along the fold on one of its sides.
struct Stretch {
    bool outside = false;        ///< on the spine, or at the front of a block that is sewn from the side
    Length from, to;             ///< from a pass; to a pass, or to beyond the end of the fold
    std::size_t lane = 0;        ///< how far from the fold: higher than every shorter one over which it goes
    bool turns = false;          ///< `to` lies beyond the end
    Length left() const { return min(from, to); }
    Length right() const { return max(from, to); }
};

/// The thread from one pass to the next: a bracket that stands on the fold; round head or tail, one on each side that
/// meet beyond the end; round the spine of a block straight from side to side, with no stretch along it.
struct Move {
    std::size_t number = 0;      ///< from 1; leads from pass number − 1 to pass number
    kit::Around around = kit::Around::nothing;
    bool outside = false;        ///< on the spine, or at the front; a turn begins there
    Length from, to;             ///< x of its passes
    std::vector<Stretch> stretches;  ///< of a turn: away from the first pass, then back to the second one
};

/// A signature's thread, laid out along its fold so that nothing lies on anything else.
struct StitchPath {
    std::vector<Length> stations;    ///< x, from the head
    std::vector<Pass> passes;
    std::vector<Move> moves;
    bool begins_outside = false, ends_outside = false;
    bool from_the_side = false;      ///< a block with a front and a back, not a fold
    std::size_t lanes(bool outside) const;
};

/// Lays the path of a sewing along x from `left` to `right`; `stations` are the holes' places as parts of the fold's
/// length, from the head. Turns round head and tail lie up to `turn_apart` for each of them beyond left and right. Holes move apart where they are closer than `apart` beside all that passes through them.
/// Nothing when they have no room or the path names a station that is not there.
std::optional<StitchPath> lay_path(const kit::SewingTemplate& sewing, const std::vector<double>& stations, Length left, Length right, Length apart);

/// From the end of the fold to the first turn round it, and from turn to turn.
inline constexpr Length turn_apart = Length::mm(6);

}  // namespace qw::compose
