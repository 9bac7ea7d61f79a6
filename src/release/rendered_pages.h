// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "release/plan.h"

#include <set>

namespace qw::release {

/// Which pages are rendered. A page that is one passed-through picture is proven by structure in every edition: the
/// stream's digest is the artwork's, its matrix and clip are the plan's. Rendering is what costs, so a release renders
/// of each such set the first, the last and the darkest page; an audit renders all.
enum class Rendering { samples, all };

/// Pages to render, counted from 0.
std::set<std::size_t> pages_to_render(const PlannedFile& file, Rendering rendering);

}  // namespace qw::release
