// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/clock.h"
#include "compose/placement.h"
#include "kit/part_template.h"
#include "parts/folding.h"
#include "parts/packing.h"
#include "texts/passages.h"
#include "type/fonts.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace qw::compose {

/// The artwork of a set of parts: of each face of the template by its name, an index into `faces` for each part in the
/// order of the kit, nothing where it stays white.
struct PartArtwork {
    std::vector<Face> faces;
    std::map<std::string, std::vector<std::optional<std::size_t>>> of_parts;
    std::size_t parts = 0;            ///< how many, copies included
};

/// One picture on one part, where it is printed.
struct PartPicture {
    std::size_t page = 0;             ///< of the document
    std::size_t part = 0;
    std::size_t face = 0;             ///< index into Net::faces
    std::size_t art = 0;              ///< index into PartArtwork::faces
    double scale = 1;                 ///< printed size ÷ drawn size
    Sides white;                      ///< how far panels and bleed reach beyond the artwork, at printed size; sides of the upright picture
    Sides lost;                       ///< how far the artwork reaches beyond them; likewise
    double ppi_x = 0, ppi_y = 0;      ///< 0 for PDF artwork
    Rect trim;                        ///< the face's panels on the page, for the safe area
};

struct PartDocument {
    Document document;
    std::vector<PartPicture> pictures;
    std::size_t a_sheet = 0;          ///< how many parts lie on a full sheet
    std::size_t sheets = 0;           ///< of paper
    bool exact = false;               ///< it is proved that fewer sheets will not do
    double saved = 0;                 ///< share of the faces that is left white because nobody sees it
    std::optional<parts::Lack> lack;  ///< a part does not fit the paper: nothing is drawn
};

/// Parts of a set on an edition's paper, as many on a sheet as fit the printable area (on borderless paper all but the
/// rules' edge room), in whichever way of holding the paper takes more of them. Front, back, front, back when a face is
/// printed on the back: backs lie mirrored for a sheet that is turned over sideways (flip on the short edge of
/// landscape sheets, on the long edge of portrait ones), and are drawn beyond the cut line by the rules' shift.
/// Cut, score and tab lines lie on the front, over the pictures; labels on tabs, none where anybody looks. Where a front
/// has room beside its parts a legend says which line is which, and what the sheet is.
/// `words` are pipeline/texts/part-labels.mustache. Throws Fault (not_understood) for artwork to be drawn at its own size
/// whose size is unknown.
PartDocument part_document(const kit::Manifest& manifest, const kit::Set& set, const Edition& edition, const parts::Net& net,
                           const parts::Folded& folded, const PartArtwork& artwork, const kit::PartRules& rules,
                           const type::Fonts& fonts, const texts::Passages& words, const Date& date);

}  // namespace qw::compose
