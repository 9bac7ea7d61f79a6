// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"

#include <string>
#include <vector>

namespace qw::proof {

/// A page of a finished PDF.
struct TakenPage {
    Path file;
    int page = 1;        ///< counted from 1
};

/// What a PDF of taken pages says of itself.
struct Gathered {
    std::string title;
    std::string duplex;  ///< a name of ISO 32000-1 table 150; empty: nothing is said, as for pages of several kinds
};

/// Writes a PDF of pages that are taken over as they are: streams byte for byte, with boxes, rotation and layers, so that
/// each page has the digest (page_digest.h) that it has in its own file. The output intent is that of the first file;
/// viewer preferences say PrintScaling None and PickTrayByPDFSize. Stands here and not in `pdf`, which draws: what is taken
/// over must not pass through a library that builds pages anew. The same pages give the same bytes. Pages and the
/// objects that they share are written once each; memory: their dictionaries, never a picture.
///
/// Throws Fault: not_understood for a file or page that cannot be read, the disk's own, or the sink's, when those fail.
void gather_pages(Disk& disk, const std::vector<TakenPage>& pages, const Gathered& said, Sink& to);

}  // namespace qw::proof
