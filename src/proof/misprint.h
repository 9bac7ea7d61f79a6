// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/geometry.h"
#include "proof/render.h"

namespace qw::proof {

/// What a borderless driver and a sheet that lies aside do to a page. Drivers enlarge about the sheet's middle, so that
/// each edge of the page lies this far beyond the sheet's; along both axes the sheet may then lie aside by `shifted`.
struct Misprint {
    Length enlarged, shifted;
    /// How far a point at an edge moves outward when all goes the same way; no point of the sheet moves farther.
    Length farthest() const { return enlarged + shifted; }
};

/// How near to an edge a point may not lie if it is to stay on the sheet whichever way that lies aside. `across` is the
/// sheet's side at right angles to the edge. A little less than `farthest`: enlarging moves points by less the nearer
/// to the middle they lie.
Length reach(const Misprint& misprint, Length across);
/// How far a point moves outward that lies `from_edge` inside the sheet.
Length outward_move(const Misprint& misprint, Length across, Length from_edge);

/// The way in which a sheet lies aside, or the page on it: along each axis by no more than `shifted`.
struct Aside {
    Length right, up;
};

/// What the worst of the four corners, towards which a page can lie aside, takes off it.
struct Misprinted {
    Aside aside;             ///< the page, on its sheet
    double lost = 0;         ///< of the page's ink, what leaves the sheet: 0 … 1
    double lost_safe = 0;    ///< of the ink in the safe area, what leaves the sheet
    Length deepest;          ///< how far inside its edge the innermost ink lay that leaves the sheet; 0: none leaves
    Length move;             ///< how far the farthest-moved point of the safe area moves outward, along one axis
    Length bare;             ///< the strip of paper without a page at the edge that it moves away from; 0: none
};

/// Simulates a page that fills its sheet and is printed without a border. `page` shows the whole of it; what is on the
/// sheet counts by its darkness, from `ink_threshold` (base/ink_map.h). Exact to a pixel.
Misprinted misprint(const Pixels& page, Size sheet, Length safe_area, const Misprint& misprint);

/// The sheet as it then comes out of the printer, white where the page does not reach; as many pixels as `page`.
Pixels printed_aside(const Pixels& page, Size sheet, Length enlarged, const Aside& aside);

}  // namespace qw::proof
