// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/part_sheets.h"
#include "compose/sample_kit.h"
#include "parts/folding.h"

#include <memory>
#include <string>
#include <vector>

namespace qw::test {

/// A shipped part, folded. Kept for the whole run: nets are asked for by many tests.
struct SamplePart {
    parts::Net net;
    parts::Folded folded;
};
const SamplePart& sample_part(const std::string& name, UnitSystem system = UnitSystem::metric, double scale = 1);
std::vector<std::string> part_names();

const Edition& sample_edition(const std::string& paper, Print print);
/// The scale of the pages in that edition.
double scale_of(const Edition& edition);

/// A picture that was never on a disk: only its facts count when sheets are composed.
compose::Face sample_picture(std::uint32_t width, std::uint32_t height, const std::string& name = "art.png");

/// So many parts, every face of each with artwork; a face's own pixels are as many as its index tells apart.
compose::PartArtwork sample_art(const parts::Net& net, std::size_t parts);

compose::PartDocument sample_sheets(const std::string& part, const Edition& edition, std::size_t parts);

const texts::Passages& part_labels();

}  // namespace qw::test
