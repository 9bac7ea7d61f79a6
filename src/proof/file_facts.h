// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"
#include "base/geometry.h"
#include "proof/oddities.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::proof {

/// A picture as a finished page shows it.
struct PlacedPicture {
    std::string stream_sha256;  ///< of the raw, still encoded stream (of an encrypted file: once decrypted)
    std::string filter;         ///< "FlateDecode", "DCTDecode" …; several joined by "+"
    std::uint32_t width = 0, height = 0;
    int bits = 0;
    std::string colour_space;   ///< "DeviceRGB", "Indexed" …
    bool soft_mask = false;
    Matrix place;               ///< from the unit square to the page, all nested matrices multiplied in
    /// What the clips in force leave, all matrices multiplied in; nothing where there is none, an empty rectangle where
    /// they leave nothing. A clip that is no upright rectangle counts with the smallest box around it.
    std::optional<Rect> clip;
};

struct FontFact {
    std::string name;           ///< BaseFont without the subset tag
    bool embedded = false, subset = false;
    bool drawn = false;         ///< Type 3: glyphs are content streams
    bool readable = false;      ///< its characters can be told from its codes: ToUnicode, a named encoding, or a named CMap (9.10.2)
};

/// One page, seen from outside (ISO 32000-1 14.11.2 for the boxes; inherited and defaulted values resolved, cut to
/// the MediaBox). Boxes, places and clips are in the page's user space with its unit taken as a point; where
/// `user_unit` is not 1, multiply by it for the size on paper.
struct PageFacts {
    Rect media, crop, bleed, trim;
    bool has_trim = false, has_bleed = false;  ///< said by the page itself, not a default
    int rotate = 0;
    double user_unit = 1;
    std::vector<PlacedPicture> pictures;       ///< in the order in which they are painted, forms entered
    bool has_text = false;                     ///< text is shown
    bool has_paths = false;                    ///< lines are stroked or areas filled
    bool paints_cmyk = false;                  ///< by the operators k and K
    std::string content_sha256;                ///< of the page's own content streams, decoded
    std::vector<FontFact> fonts;               ///< of all resources that the page reaches, used or not
};

/// As it is shown and printed: CropBox, in its unit, turned by Rotate.
inline Size shown_size(const PageFacts& page) {
    const Size size = page.crop.size() * page.user_unit;
    return page.rotate % 180 == 0 ? size : size.turned();
}

struct FileFacts {
    std::uint64_t bytes = 0;
    std::string sha256;
    std::string damage;                 ///< not empty: it cannot be read as a PDF, and why
    std::string version, title, subject;
    std::string print_scaling, duplex;  ///< names in ViewerPreferences (ISO 32000-1 table 150), "" when absent
    std::optional<bool> pick_tray_by_pdf_size;
    std::string output_intent;          ///< OutputConditionIdentifier, "" when there is none
    bool output_profile = false;
    bool encrypted = false, scripts = false, layers = false, attachments = false;
    Oddities oddities;                  ///< in the order in which they were met
    std::vector<PageFacts> pages;
};

/// Reads the structure of a PDF with libqpdf. Whatever is wrong with the file is told in `damage` (also what libqpdf
/// could only repair), the first thing only; what could be read is told all the same. Throws Fault only when the disk
/// fails. Knows no plan. Memory: the largest content stream, never a picture. The file is read once, and the stream of
/// each picture once more. Limits, passing which is damage: content_walk.h (Budget), page_tree.h.
FileFacts inspect(Disk& disk, const Path& path);

}  // namespace qw::proof
