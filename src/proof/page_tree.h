// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "proof/damage.h"
#include "proof/file_facts.h"
#include "proof/pdf_values.h"

#include <vector>

namespace qw::proof {

/// A page with the attributes that the nodes above it hand down (ISO 32000-1 7.7.3.4).
struct TreePage {
    Object page, resources, media, crop, rotate;
};

/// The pages in order. libqpdf's own list follows the tree by recursion without a limit and mends it silently; this
/// one stops at 256 levels, 50 000 pages and at a node that it has already seen, and tells of a wrong Count.
/// Throws Unreadable.
std::vector<TreePage> pages_of(Object catalog, Damage& damage);

/// The page's boxes as they take effect (14.11.2): CropBox defaults to MediaBox, BleedBox and TrimBox to CropBox, and
/// all are cut to MediaBox. In default user space units counted as points; UserUnit is told beside them.
void tell_boxes(const TreePage& page, PageFacts& facts, Damage& damage);

}  // namespace qw::proof
