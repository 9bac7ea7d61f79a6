// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "pdf/library.h"

#include "base/disk.h"
#include "compose/document.h"

#include <map>

namespace qw::pdf {

/// The pictures of a document as image XObjects (ISO 32000-1 8.9.5), each written when it is first shown.
class Pictures {
public:
    Pictures(Disk& disk, Paper& paper, SealedFile& file, const compose::Document& document)
        : disk_(disk), paper_(paper), file_(file), document_(document) {}
    /// `artwork` is an index into Document::artwork.
    PoDoFo::PdfReference shown(std::size_t artwork);

private:
    PoDoFo::PdfReference write(const compose::PlacedArtwork& artwork);

    Disk& disk_;
    Paper& paper_;
    SealedFile& file_;
    const compose::Document& document_;
    std::map<std::size_t, PoDoFo::PdfReference> written_;
};

}  // namespace qw::pdf
