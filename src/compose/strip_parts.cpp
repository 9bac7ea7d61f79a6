// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/strip_parts.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace qw::compose {

namespace {

bool is_clear(Length cut, const std::vector<Length>& avoid, Length clear) {
    return std::none_of(avoid.begin(), avoid.end(), [&](Length place) { return abs(place - cut) < clear; });
}

/// The clear place nearest to `wanted` that leaves no more than `most` on either side of it.
std::optional<Length> clear_cut(Length wanted, Length low, Length high, const std::vector<Length>& avoid, Length clear) {
    const Length step = Length::mm(0.5);
    for (Length off; off <= high - low; off += step)
        for (const Length cut : {wanted - off, wanted + off})
            if (cut >= low && cut <= high && is_clear(cut, avoid, clear)) return cut;
    return std::nullopt;
}

}  // namespace

std::vector<StripPart> strip_parts(Length length, Length most, const std::vector<Length>& avoid, Length clear) {
    const double hair = 1e-9;  // a strip as long as its room is one part
    const int least = std::max(1, static_cast<int>(std::ceil(length / most - hair)));
    for (const int count : {least, least + 1}) {
        std::vector<StripPart> parts{{{}, length}};
        for (int i = 1; i < count; ++i) {
            const Length from = parts.back().from;
            const Length low = max(from + clear, length - most * (count - i)), high = min(from + most, length - clear);
            const auto cut = clear_cut(length / count * i, low, high, avoid, clear);
            if (!cut) break;
            parts.back().to = *cut;
            parts.push_back({*cut, length});
        }
        if (static_cast<int>(parts.size()) == count) return parts;
    }
    std::vector<StripPart> parts;  // no clear place: cut where it is due
    for (int i = 0; i < least; ++i) parts.push_back({length / least * i, length / least * (i + 1)});
    return parts;
}

}  // namespace qw::compose
