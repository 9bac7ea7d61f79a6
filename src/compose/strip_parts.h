// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/length.h"

#include <vector>

namespace qw::compose {

/// A part of a long strip that has to be cut from paper: from and to, measured along the strip from its beginning.
struct StripPart {
    Length from, to;
    Length length() const { return to - from; }
};

/// As few parts as fit in `most` each, of about the same length. No cut comes nearer than `clear` to a place in `avoid`
/// where that can be helped. `most` > 0.
std::vector<StripPart> strip_parts(Length length, Length most, const std::vector<Length>& avoid, Length clear);

}  // namespace qw::compose
