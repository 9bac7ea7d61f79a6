// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "proof/file_facts.h"
#include "proof/pdf_values.h"

namespace qw::proof {

/// Adds the fonts of a resource dictionary and of the forms, patterns, soft masks and drawn fonts (Type 3) in it,
/// whether or not text is set in them; each font of the same name and state once.
void tell_fonts(Object resources, std::vector<FontFact>& fonts);

}  // namespace qw::proof
