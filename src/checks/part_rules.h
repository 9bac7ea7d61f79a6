// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/edition.h"
#include "checks/rules.h"
#include "compose/part_sheets.h"
#include "kit/manifest.h"

#include <string>

namespace qw::checks {

/// Where an edition puts a picture on a part: are panels and bleed covered, is nothing of worth cut away, how many pixels
/// are there for an inch, does the safe area keep what matters off the cut. `shown` is the file as the designer knows it.
void check_part_picture(const Rules& rules, const kit::Set& set, const Edition& edition, const compose::PartPicture& picture,
                        const std::string& shown, Findings& findings);

/// Whether a part fits the paper: `part-fits-paper`, with what is missing and the largest per cent that fits.
/// `scale` is the print scale that the set has now.
void check_part_fits(const Rules& rules, const kit::Set& set, const Edition& edition, const compose::PartDocument& document, double scale,
                     Findings& findings);

}  // namespace qw::checks
