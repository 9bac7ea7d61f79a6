// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/artwork_rules.h"

#include <string>
#include <vector>

namespace qw::checks {

/// What a PNG or JPEG is that a designer may not have meant: depth, colours, pixels that are not square, an extension that
/// says another kind, a white strip along an edge.
void check_picture(const Rules& rules, const kit::Set& set, const ArtworkSeen& seen, Findings& findings);

/// What an edition does to a picture's motif: edges that are cut away, edges in the fold of a journal page; pixels that are
/// stretched, or more of them than any printer shows. `ink` and its pixels: of the artwork as it is seen.
void check_motif(const Rules& rules, const kit::Set& set, const Edition& edition, const compose::Placement& placement, const Ink& ink, std::uint32_t width,
                 std::uint32_t height, const std::string& shown, Findings& findings);

/// One picture of a kit, for what is asked of all together.
struct PictureSeen {
    std::string set, shown, sha256;
    std::uint32_t width = 0, height = 0;     ///< as it is seen
    const Ink* ink = nullptr;
};
/// The same pixels twice, or nearly; a picture of another size than the rest of its set.
void check_pictures_together(const Rules& rules, const std::vector<PictureSeen>& all, Findings& findings);

/// How much ink a sheet takes: each face of a set, and both sides of thin paper together. `coverage`: 0 … 1 a page, in the
/// order in which they are printed.
void check_sheet_ink(const Rules& rules, const kit::Set& set, double grammage, const std::vector<double>& coverage, const std::string& path, Findings& findings);

}  // namespace qw::checks
