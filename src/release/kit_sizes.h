// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/edition.h"
#include "journal/measures.h"
#include "kit/manifest.h"
#include "kit/pipeline.h"

#include <map>
#include <string>

namespace qw::release {

/// How many sheets the kit has; counted from the artwork, because one PDF can hold many faces.
struct SheetCounts {
    int journal_sheets = 0;  ///< duplex sheets, or single-sided ones
    int full_sheets = 0;
    std::map<std::string, int> of_set;  ///< sheets of paper by the name of the set; of parts too, where one paper is meant
    std::map<std::string, int> parts;   ///< parts by the name of their set, copies included
    std::map<std::string, Length> filled;  ///< how thick a part of that set is when it is folded and filled

    /// A duplex sheet has two faces; an odd last one takes a sheet too.
    void add(const kit::Set& set, int faces);
    /// `of_faces`: pictures by the template's faces; the most of them, times the copies, are so many parts.
    void add_parts(const kit::Set& set, const std::map<std::string, std::size_t>& of_faces);
};

/// The edition of one set: single-sided and duplex sheets have margins of their own.
Edition edition_of(const kit::Printer& printer, const Paper& paper, Print print, kit::Sides sides);

/// Print scale of a set: what the margins leave, times the buyer's percentage, or times the set's own `print-at`.
double scale_of(const kit::Set& set, const Edition& edition, bool landscape, double percent);

/// What one print size means for the journal. `percent` is the buyer's, 100 is full size.
journal::Conditions conditions_of(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const kit::Printer& printer,
                                  const SheetCounts& counts, const Paper& paper, Print print, double percent);

/// The printer that the order or the kit names. Throws Fault (not_understood) with the nearest name.
const kit::Printer& printer_of(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const std::optional<std::string>& ordered);

}  // namespace qw::release
