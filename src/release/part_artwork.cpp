// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/part_artwork.h"

#include <algorithm>

namespace qw::release {

compose::PartArtwork part_artwork(const LookedSet& set, std::vector<compose::Face> faces) {
    compose::PartArtwork artwork;
    artwork.faces = std::move(faces);
    std::size_t most = 0;
    for (const auto& [name, pictures] : set.of_part_face) most = std::max(most, pictures.size());
    for (const auto& [name, pictures] : set.of_part_face) {
        auto& of_parts = artwork.of_parts[name];
        for (std::size_t i = 0; i < most; ++i) {
            const auto picture = pictures.size() == 1 ? pictures.front() : i < pictures.size() ? pictures[i] : set.last_back;
            of_parts.insert(of_parts.end(), static_cast<std::size_t>(set.set->copies), picture);
        }
    }
    artwork.parts = most * static_cast<std::size_t>(set.set->copies);
    return artwork;
}

}  // namespace qw::release
