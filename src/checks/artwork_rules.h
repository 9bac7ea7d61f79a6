// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/facts.h"
#include "checks/rules.h"
#include "compose/placement.h"
#include "kit/manifest.h"
#include "proof/file_facts.h"

#include <string>
#include <vector>

namespace qw::checks {

/// One file of artwork as it was found.
struct ArtworkSeen {
    std::string shown;                        ///< relative to the kit
    std::string damage;                       ///< not empty: it cannot be used
    const artwork::Facts* picture = nullptr;  ///< a PNG or JPEG
    const proof::FileFacts* pdf = nullptr;    ///< or a PDF
    std::vector<const Ink*> ink;              ///< one a page of a PDF; a picture's own is in its facts
};

/// One face with the size at which it is seen, for what is asked of a whole set.
struct FaceSeen {
    std::string shown;
    int page = 0;                             ///< 0 for a picture
    std::optional<Size> drawn;                ///< nothing when its size cannot be known
};

/// What a file of artwork is: damage, blank pages, what is done to it, density tags, fonts.
void check_artwork(const Rules& rules, const kit::Set& set, const ArtworkSeen& seen, Findings& findings);

/// What a set of faces is together: odd number, sizes that are unknown, portrait among landscape. `damaged`: how many more
/// there would be if their files were whole; how many faces they would give is not known, so the number is not judged.
void check_set(const Rules& rules, const kit::Set& set, const std::vector<FaceSeen>& faces, std::size_t damaged, Findings& findings);

/// Where an edition puts a face: does it cover the paper and its bleed, is the safe area kept, how many pixels are
/// there for an inch, does a bordered sheet lie inside the margins.
void check_placement(const Rules& rules, const kit::Set& set, const Edition& edition, const compose::Placement& placement,
                     const std::string& shown, Findings& findings);

}  // namespace qw::checks
