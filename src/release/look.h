// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/facts.h"
#include "base/ink_map.h"
#include "engine/jobs.h"
#include "engine/kept.h"
#include "kit/manifest.h"
#include "proof/file_facts.h"
#include "release/order.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace qw::release {

/// One file of artwork as it was found.
struct LookedFile {
    kit::ArtworkFile file;
    std::string sha256;
    std::string damage;              ///< not empty: it cannot be used, and why
    std::string done;                ///< what is done to it on its way into the PDFs, for the record (src/record/release.md)
    bool is_pdf = false;
    artwork::Facts picture;          ///< when it is a PNG or JPEG
    proof::FileFacts pdf;            ///< when it is a PDF
    std::vector<Ink> pdf_ink;        ///< one a page, rendered at `pdf_look_dpi` as the page is shown
};
inline constexpr double pdf_look_dpi = 72;

/// One face of a set: a picture, or a page of a PDF.
struct Face {
    std::size_t file = 0;
    int page = 0;                    ///< counted from 1; 0 for a picture
};

struct LookedSet {
    const kit::Set* set = nullptr;
    std::vector<LookedFile> files;
    std::vector<Face> faces;         ///< undamaged ones, in order; the named back of an odd last sheet is one of them
    /// Parts only: of each face of the template the pictures in order, as indices into `faces`; nothing for a damaged one.
    std::map<std::string, std::vector<std::optional<std::size_t>>> of_part_face;
    std::optional<std::size_t> last_back;  ///< parts only: what serves backs without artwork of their own
    const LookedFile& file_of(const Face& face) const { return files[face.file]; }
};

/// Every file of artwork that a set names, in one order.
std::vector<kit::ArtworkFile> artwork_of(const kit::Set& set);

/// True for a file that begins as a PDF does.
bool starts_as_pdf(Disk& disk, const Path& path);

/// Reads every file of artwork once; those that `kept` knows by their digest are not decoded again. Damage is told in the
/// values. Points into the manifest.
std::vector<LookedSet> look(Disk& disk, const kit::Manifest& manifest, engine::Kept& kept, const engine::Jobs& jobs, Progress& progress);

}  // namespace qw::release
