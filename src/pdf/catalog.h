// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "pdf/library.h"

#include "compose/document.h"

namespace qw::pdf {

/// What the document says of itself: title, subject and dates; how a viewer shall print it (viewer preferences,
/// ISO 32000-1 table 150); and which RGB its colours are (output intent, ISO 32000-1 14.11.5).
void describe_document(Paper& paper, SealedFile& file, const compose::Document& document);

/// An array of four numbers.
PoDoFo::PdfArray box(const Rect& rect);

}  // namespace qw::pdf
