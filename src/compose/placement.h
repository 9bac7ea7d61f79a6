// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/edition.h"
#include "compose/document.h"
#include "kit/manifest.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace qw::compose {

/// A page of a PDF as artwork, in its own user space (ISO 32000-1 7.7.3.3, 8.3.2.3; table 30).
struct PdfArtwork {
    Path file;
    int page = 1;           ///< counted from 1
    Rect crop;              ///< CropBox; its lengths are user space units taken as points
    int rotate = 0;         ///< Rotate: 0, 90, 180, 270, clockwise when shown
    double user_unit = 1;   ///< UserUnit: points a unit
};

/// What one face of a sheet shows.
struct Face {
    std::string shown;      ///< how the designer knows the file
    std::variant<PlacedArtwork, PdfArtwork> art;
};

struct Sides {
    Length left, bottom, right, top;
    friend constexpr bool operator==(const Sides&, const Sides&) = default;
};

/// Where one page's artwork lies: the plan that the checks compare with the set's rules and with the finished file.
struct Placement {
    std::optional<std::size_t> face;  ///< index into the faces that were handed in; nothing: a blank page
    Size sheet;                       ///< the paper as it is held
    double print_scale = 1;           ///< printed size ÷ size in the borderless edition
    Rect picture;                     ///< what of the paper may be covered: all of it, or what the margins leave
    Rect artwork;                     ///< where the whole artwork lies; may exceed the picture and the paper
    Rect visible;                     ///< what of it is seen: artwork ∩ picture; empty for a blank page
    Sides lost;                       ///< how far the artwork reaches beyond the picture, at printed size; never negative
    Sides white;                      ///< how far the picture reaches beyond the artwork; never negative
    double scale = 1;                 ///< printed size ÷ drawn size, along x; along y it is the same but for cuts in drawn sizes
    double ppi_x = 0, ppi_y = 0;      ///< pixels of the artwork on a printed inch, as it is seen; 0 for PDF artwork
    Matrix place;                     ///< as the page's Picture or PdfFace has it
};

struct ArtworkDocument {
    Document document;
    std::vector<Placement> pages;     ///< one for each page of the document
};

/// The size at which artwork was drawn, as it is seen: `drawn_at` held as the artwork is held; without it pixels
/// over the file's own density, or the PDF page's crop box. Nothing when no size can be known.
std::optional<Size> drawn_size(const std::optional<Size>& drawn_at, const Face& face);

/// The stored picture's unit square as it is seen, for EXIF orientation 1…8 (CIPA DC-008, tag 0x0112).
Matrix turned_upright(int turn);

/// A set's faces on an edition's paper, one page a face. The sheet is held as the artwork is (single-sided sets: face
/// by face; duplex sets: all as the first face, because both sides of a sheet are held alike). Bordered pages are the
/// borderless page scaled about its centre to what the margins leave, and cut there (base/edition.h, fit_of).
/// TrimBox and BleedBox are the picture: nothing is drawn outside it.
/// Damaged artwork leaves its page blank and its placement without a rectangle; it is for the checks to tell.
/// The named back of an odd last sheet is the last of `faces`, and lies on its page as any other; a set that says `blank`,
/// or whose named back is not there, gets a blank one.
/// Throws Fault (not_understood) with all of: artwork to be drawn at its own size whose size is unknown, and an odd
/// number of faces in a duplex set that does not say what the last back carries.
ArtworkDocument artwork_document(const kit::Manifest& manifest, const kit::Set& set, const Edition& edition,
                                 const std::vector<Face>& faces, const Date& date);

}  // namespace qw::compose
