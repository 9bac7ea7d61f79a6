// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/graphics_state.h"

namespace qw::proof {

void PathBounds::add(Spot page) {
    box_ = box_ ? box_->with(page.x, page.y) : Box{page.x, page.y, page.x, page.y};
}

void PathBounds::move(const Matrix& ctm, Spot to) { pending_move_ = mapped(ctm, to); }

void PathBounds::line(const Matrix& ctm, Spot to) {
    if (pending_move_) add(*pending_move_);
    pending_move_.reset();
    add(mapped(ctm, to));
}

void PathBounds::rectangle(const Matrix& ctm, Spot corner, double width, double height) {
    move(ctm, corner);
    line(ctm, {corner.x + width, corner.y});
    line(ctm, {corner.x + width, corner.y + height});
    line(ctm, {corner.x, corner.y + height});
}

}  // namespace qw::proof
