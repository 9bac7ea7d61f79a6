// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "proof/pdf_values.h"

#include <vector>

namespace qw::proof {

struct Appearance {
    Object form;
    Matrix place;  ///< what is put after the form's own Matrix (ISO 32000-1 12.5.5, algorithm 8.1, matrix A)
};

/// The normal appearances of a page's annotations that are not hidden, in their order.
std::vector<Appearance> shown_appearances(Object page);

}  // namespace qw::proof
