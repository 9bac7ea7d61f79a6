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

/// The thread from one pass to the next, as a bracket that stands on the fold.
struct Move {
    std::size_t number = 0;      ///< from 1; leads from pass number − 1 to pass number
    bool outside = false;        ///< on the spine; else inside the fold
    Length from, to;             ///< x of its passes
    std::size_t lane = 0;        ///< how far from the fold: higher than every shorter move over which it goes
    Length left() const { return min(from, to); }
    Length right() const { return max(from, to); }
};

/// A signature's thread, laid out along its fold so that nothing lies on anything else.
struct StitchPath {
    std::vector<Length> stations;    ///< x, from the head
    std::vector<Pass> passes;
    std::vector<Move> moves;
    bool begins_outside = false, ends_outside = false;
    std::size_t lanes(bool outside) const;
};

/// Lays the path of a sewing along x from `left` to `right`; `stations` are the holes' places as parts of the fold's
/// length, from the head. Holes move apart where they are closer than `apart` beside all that passes through them.
/// Nothing when they have no room or the path names a station that is not there.
std::optional<StitchPath> lay_path(const kit::SewingTemplate& sewing, const std::vector<double>& stations, Length left, Length right, Length apart);

}  // namespace qw::compose
