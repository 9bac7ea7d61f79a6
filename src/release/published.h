// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "release/make.h"

namespace qw::release {

/// What lies published under the kit's version in `order.out` against what the kit gives now (`made`). Nothing is there:
/// nothing to say. Published from other inputs: told, and not judged further, because its plan is not known. From the same
/// inputs: every file that is not the one that was just made is held against its plan. `scratch` must exist and be empty.
void judge_published(Disk& disk, const Order& order, const Prepared& prepared, engine::Kept& kept, const Path& scratch, Made& made);

}  // namespace qw::release
