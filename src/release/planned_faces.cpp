// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/planned_faces.h"

#include "checks/artwork_rules.h"
#include "checks/likeness_rules.h"
#include "checks/picture_rules.h"

#include <algorithm>
#include <set>

namespace qw::release {

compose::Face as_composed(const LookedSet& set, const Face& face) {
    const LookedFile& file = set.file_of(face);
    if (!file.is_pdf) {
        compose::PlacedArtwork art{file.file.path, file.picture};
        art.facts.ink.map = {};  // a map an edition and page would make memory grow with the number of pages
        return {file.file.shown, std::move(art)};
    }
    const proof::PageFacts& page = file.pdf.pages[static_cast<std::size_t>(face.page) - 1];
    return {file.file.shown, compose::PdfArtwork{file.file.path, face.page, page.crop, page.rotate, page.user_unit}};
}

void check_files(const LookedSet& set, const checks::Rules& rules, Findings& findings) {
    for (const LookedFile& file : set.files) {
        checks::ArtworkSeen seen{file.file.shown, file.damage, file.is_pdf ? nullptr : &file.picture, file.is_pdf ? &file.pdf : nullptr, {}};
        for (const Ink& ink : file.pdf_ink) seen.ink.push_back(&ink);
        checks::check_artwork(rules, *set.set, seen, findings);
        checks::check_picture(rules, *set.set, seen, findings);
    }
}

namespace {

/// What is drawn alike: the pictures of a set, of parts those of one face.
std::string kin_of(const kit::Set& set, const std::string& shown) {
    for (const auto& [face, files] : set.faces)
        for (const kit::ArtworkFile& file : files)
            if (file.shown == shown) return set.name + ", " + face;
    return set.name;
}

}  // namespace

void check_together(const std::vector<LookedSet>& looked, const checks::Rules& rules, Findings& findings) {
    std::vector<checks::PictureSeen> all;
    std::set<std::string> known;  // a file that serves two sets is one picture
    for (const LookedSet& set : looked)
        for (const LookedFile& file : set.files)
            if (!file.is_pdf && file.damage.empty() && known.insert(file.file.shown).second)
                all.push_back({kin_of(*set.set, file.file.shown), file.file.shown, file.sha256, file.picture.upright_width(),
                               file.picture.upright_height(), &file.picture.ink, file.picture.pixels});
    checks::check_pictures_together(rules, all, findings);
}

std::vector<compose::Face> as_composed(const LookedSet& set) {
    std::vector<compose::Face> faces;
    for (const Face& face : set.faces) faces.push_back(as_composed(set, face));
    return faces;
}

void add_new(Findings& findings, const Findings& more) {
    for (const Finding& f : more) {
        const bool told = std::any_of(findings.begin(), findings.end(), [&](const Finding& other) {
            return other.rule == f.rule && other.file == f.file && other.page == f.page && other.message == f.message;
        });
        if (!told) findings.push_back(f);
    }
}

}  // namespace qw::release
