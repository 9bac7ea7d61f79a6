// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/placement.h"

namespace qw::compose {

/// What pages and parts need to know of a face to lay it somewhere.

/// The facts of a picture; nothing for a page of a PDF.
const artwork::Facts* facts_of(const Face& face);
/// It cannot be drawn; it is for the checks to tell.
bool is_damaged(const Face& face);
/// How it is held, in no unit: only the shape is known for sure. For PDF artwork the size of its page.
Size shape_of(const Face& face);
/// The size at which it covers, is contained in, or simply lies on an area (CSS Images 3, 5.5: the larger scale covers,
/// the smaller one contains).
Size size_on(kit::Place place, Size drawn, Size area);
/// What Picture::place and PdfFace::place are for a face that fills `target` upright.
Matrix matrix_onto(const Face& face, const Rect& target);
/// How far `outer` reaches beyond `inner`; never negative.
Sides beyond(const Rect& outer, const Rect& inner);
/// Where a picture stands in the document's list; it is added when it is not there, so that each file is there once.
std::size_t index_of_artwork(Document& document, const PlacedArtwork& artwork);

}  // namespace qw::compose
