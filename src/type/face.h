// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

namespace qw::type {

/// The numbers of one font file, read once. Everything is in font units, unscaled and unhinted, so that a width is
/// the same on every machine and at every size.
struct Face {
    Path file;
    std::string name;        ///< PostScript name
    int units_per_em = 1000;
    int cap_height = 0;      ///< OS/2 sCapHeight
    int descent = 0;         ///< how far the deepest of g j p q y reaches below the baseline, positive
    unsigned embedding = 0;  ///< OS/2 fsType: what the maker allows of embedding (OpenType specification, OS/2 table)
    /// Character and advance, sorted by character; every character that the font maps to a glyph.
    std::vector<std::pair<std::uint32_t, int>> advances;
    /// The same of the characters that texts are made of, U+0000 … U+21FF, by character; -1: no glyph. Widths are what
    /// composing asks for most.
    std::vector<int> usual_advances = {};

    /// Nothing when the font has no glyph for it.
    const int* advance(std::uint32_t character) const;
};

/// Reads a TrueType file. Throws Fault (not_carried_out) when it is damaged, or has other than TrueType outlines,
/// which do not embed.
Face read_face(const Path& file);

}  // namespace qw::type
