// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace qw::proof {

/// What a PDF may hold though exchange standards forbid it, or home printers, phones and print shops stumble over it.
/// Clauses are those of ISO 19005-2 (PDF/A-2) as they are known by the published rules of its validators, tables those of
/// ISO 32000-1.
enum class OddityKind {
    header_late,        ///< 6.1.2: the header does not stand at the first byte
    after_end,          ///< 6.1.3: bytes after the last %%EOF and its line end
    no_id,              ///< 6.1.3: no ID in the trailer
    action,             ///< 6.5: Launch, Sound, Movie, SubmitForm …, other than scripts
    link_out,           ///< 12.6.4.7: a link to an address outside of the file
    layer_off,          ///< table 101: a layer that is not shown as the file stands
    form_fields,        ///< 12.7: fields that the reader fills in
    annotation,         ///< 6.3: an annotation other than a link; hidden ones are `annotation_hidden`
    annotation_hidden,  ///< 6.3: an annotation that is not shown, or not printed
    filter,             ///< 6.1.7.2: LZWDecode, or an encryption of single streams
    rare_filter,        ///< JPXDecode, JBIG2Decode, CCITTFaxDecode: allowed, but not every program of a printer knows them
    foreign_colour,     ///< 6.2.4.3: a colour space of another kind than the output intent's RGB, or spot colours
    interpolated,       ///< 6.2.8: Interpolate true
    alternates,         ///< 6.2.8: Alternates, OPI
    depth,              ///< table 89: BitsPerComponent of no standard kind, or 16
    transparency,       ///< 11: soft masks, constant alpha below 1, blend modes other than Normal
    transfer,           ///< 6.2.5: transfer functions, halftones of one's own
    overprint,          ///< 8.6.7: overprint, which home printers do not do
    foreign_content,    ///< 6.2.9: PostScript and reference XObjects
    intent,             ///< 6.2.6: a rendering intent of no standard name
    opening,            ///< table 28 PageMode FullScreen, table 150 HideToolbar …: the file opens otherwise than a page to print
    print_range,        ///< table 150: PrintPageRange or NumCopies
    metadata_apart,     ///< 6.6.2: XMP names another title than the document information
    metadata_private,   ///< a path or an author in the document information
    profile,            ///< 6.2.3: the output intent's profile is no RGB profile
    tiny_or_huge_box    ///< 6.1.13: a page box below 3 or above 14 400 units
};

struct Oddity {
    OddityKind kind;
    int page = 0;          ///< counted from 1, the first page where it was met; 0: the file
    std::string detail;    ///< as the file has it: a name, a number
    friend bool operator==(const Oddity&, const Oddity&) = default;
};
using Oddities = std::vector<Oddity>;

}  // namespace qw::proof
