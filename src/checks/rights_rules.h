// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/rules.h"

#include <string>
#include <vector>

namespace qw::checks {

/// A font that the kit's PDFs carry.
struct FontSeen {
    std::string name;         ///< PostScript name, without the subset's tag
    std::string file;         ///< the artwork that brings it, relative to the kit; empty: it is one of the generated sheets' own
    unsigned embedding = 0;   ///< OS/2 fsType, of the generated sheets' own only
};

/// Each set of artwork and each font says where it comes from and what allows it to be sold. What is written there is
/// told and recorded, not judged: that is for someone licensed to practise law.
void check_rights(const Rules& rules, const kit::Manifest& manifest, const kit::Pipeline& pipeline, const std::vector<FontSeen>& fonts, Findings& findings);

/// What a font's own file says of embedding it, as PDFs do here: a part of its glyphs, as outlines.
void check_embedding(const Rules& rules, const std::vector<FontSeen>& fonts, Findings& findings);

}  // namespace qw::checks
