// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "proof/box.h"

#include <optional>

namespace qw::proof {

/// The part of the graphics state (ISO 32000-1 8.4) that decides where a picture falls.
struct GraphicsState {
    Matrix ctm;
    /// What the clips leave, in the page's space; nothing where no clip is in force. A clip that is no upright
    /// rectangle counts with the smallest box around it: no picture shows outside that, but it may show less.
    std::optional<Box> clip;

    void narrow(const Box& to) { clip = clip ? clip->shared_with(to) : to; }
};

/// The path under construction, as far as it matters: the box around it, in the page's space. Control points of
/// curves count, so the box is never too small.
class PathBounds {
public:
    void move(const Matrix& ctm, Spot to);
    void line(const Matrix& ctm, Spot to);
    void rectangle(const Matrix& ctm, Spot corner, double width, double height);
    void clear() { *this = {}; }
    /// Nothing while no segment has been drawn; a lone "move" paints and clips nothing.
    const std::optional<Box>& box() const { return box_; }

private:
    void add(Spot page);
    std::optional<Spot> pending_move_;
    std::optional<Box> box_;
};

}  // namespace qw::proof
