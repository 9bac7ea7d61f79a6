// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "proof/file_facts.h"
#include "proof/pdf_values.h"

#include <map>
#include <string>

namespace qw::proof {

/// What the pictures of one file are, without their place. The stream of each is hashed once, however many pages
/// show it, and never held in memory.
class PictureBook {
public:
    /// `stream` is an image XObject.
    const PlacedPicture& of(Object stream);

private:
    std::map<QPDFObjGen, PlacedPicture> known_;
};

/// An inline image (ISO 32000-1 8.9.7): its dictionary, whose abbreviations are resolved, its bytes up to EI, and the
/// resources in which its colour space may be named.
PlacedPicture inline_picture(Object dictionary, std::string data, Object resources);

}  // namespace qw::proof
