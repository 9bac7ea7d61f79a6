// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/colour.h"
#include "artwork/facts.h"

namespace qw::artwork {

/// What is done to a picture on its way into a PDF, in plain words for the record: "passed through", "flattened on white
/// and packed again". Empty for a damaged file.
std::string done_to(const Facts& facts);

/// Notes in `facts` from which profile the colours are converted.
void tell_conversion(const Profile& profile, Facts& facts);

}  // namespace qw::artwork
