// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/shape_room.h"
#include "parts/folding.h"

#include <vector>

namespace qw::compose {

/// The panels of a part as they lie in one state, for drawing: what of them is seen, and their edges.
class LyingPanels {
public:
    /// From behind everything lies mirrored, as after turning it over sideways.
    LyingPanels(const parts::Net& net, const parts::Folded& folded, std::size_t state, bool from_behind);

    const std::vector<std::size_t>& from_below() const { return order_; }  ///< panels by their levels
    const parts::Region& whole(std::size_t panel) const { return placed_[panel]; }
    parts::Region seen(std::size_t panel) const { return parts::without(placed_[panel], above_[panel]); }
    const Matrix& place(std::size_t panel) const { return poses_[panel].place; }
    bool back_up(std::size_t panel) const { return poses_[panel].back_up; }
    Rect around() const;

    /// A run of an edge of a panel, from corner to corner.
    struct Run {
        std::vector<Point> points;
        bool seen = true;              ///< nothing lies over it
    };
    /// The edges along which the panel was cut out.
    std::vector<Run> cut_edges(std::size_t panel) const;
    /// A score line that runs along the edge of this panel; folded, or still flat with paper on both sides.
    std::vector<Run> score_on(std::size_t panel, Point from, Point to, bool folded) const;

private:
    struct Piece {
        Point from, to;
        bool drawn = true, seen = true;
    };
    enum class Kind { cut, folded, flat };
    void split(std::size_t panel, Point from, Point to, Kind kind, std::vector<Piece>& into) const;
    Piece judged(std::size_t panel, Point flat, Length nx, Length ny, Kind kind) const;
    static std::vector<Run> runs(const std::vector<Piece>& pieces);

    const parts::Net& net_;
    parts::State poses_;
    std::vector<parts::Region> placed_, above_;
    std::vector<std::size_t> order_;
};

}  // namespace qw::compose
