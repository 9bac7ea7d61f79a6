// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/look.h"

#include "artwork/done.h"
#include "base/words.h"
#include "proof/render.h"
#include "release/kept_looks.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstring>
#include <functional>

namespace qw::release {

namespace {

/// "Rotate turns page 2", or nothing when it concerns no page.
void tell_pages(std::vector<std::string>& done, const std::string& what, const proof::FileFacts& pdf,
                const std::function<bool(const proof::PageFacts&)>& concerned) {
    std::vector<std::string> pages;
    for (std::size_t i = 0; i < pdf.pages.size(); ++i)
        if (concerned(pdf.pages[i])) pages.push_back(std::to_string(i + 1));
    if (pages.empty()) return;
    const bool all = pages.size() == pdf.pages.size();
    done.push_back(what + (all ? " all pages" : pages.size() == 1 ? " page " : " pages ") + (all ? "" : listed(pages, "and")));
}

/// The pages of a PDF are drawn as they are; these of their entries are followed by the placement.
std::string done_to(const proof::FileFacts& pdf) {
    std::vector<std::string> done{"its pages drawn as they are, without annotations"};
    tell_pages(done, "Rotate turns", pdf, [](const proof::PageFacts& page) { return page.rotate != 0; });
    tell_pages(done, "CropBox cuts", pdf, [](const proof::PageFacts& page) { return !(page.crop == page.media); });
    tell_pages(done, "UserUnit scales", pdf, [](const proof::PageFacts& page) { return page.user_unit != 1; });
    if (pdf.layers) done.push_back("layers that are off stay off");
    return listed(done, "and");
}

void look_at_pdf(Disk& disk, engine::Kept& kept, LookedFile& looked) {
    looked.is_pdf = true;
    looked.pdf = proof::inspect(disk, looked.file.path);
    looked.sha256 = looked.pdf.sha256;
    looked.damage = looked.pdf.damage;
    if (looked.damage.empty() && looked.pdf.encrypted) looked.damage = "it is encrypted";
    if (!looked.damage.empty()) return;
    if (auto known = kept_ink(kept, looked.sha256, pdf_look_dpi)) {
        looked.pdf_ink = std::move(*known);
    } else {
        proof::Renderer renderer(looked.file.path);
        looked.damage = renderer.damage();
        for (int page = 1; looked.damage.empty() && page <= renderer.pages(); ++page)
            looked.pdf_ink.push_back(proof::ink_of(renderer.page(page, pdf_look_dpi)));
        if (looked.damage.empty()) keep_ink(kept, looked.sha256, pdf_look_dpi, looked.pdf_ink);
    }
    if (looked.damage.empty()) looked.done = done_to(looked.pdf);
}

/// Hashing costs a fiftieth of decoding, so it is done first where something is known, and else on the way.
artwork::Facts facts_of(Disk& disk, engine::Kept& kept, const Path& path) {
    if (kept.knows())
        if (auto known = kept_facts(kept, digest_of(disk, path).sha256)) return std::move(*known);
    artwork::Facts facts = artwork::look(disk, path);
    // No check of a release asks for it, and it would be kept for every page.
    facts.ink.map.darkest = {};
    keep_facts(kept, facts);
    return facts;
}

LookedFile look_at(Disk& disk, engine::Kept& kept, const kit::ArtworkFile& file) {
    LookedFile looked;
    looked.file = file;
    if (starts_as_pdf(disk, file.path)) {
        look_at_pdf(disk, kept, looked);
    } else {
        looked.picture = facts_of(disk, kept, file.path);
        looked.sha256 = looked.picture.sha256;
        looked.damage = looked.picture.damage;
        looked.done = artwork::done_to(looked.picture);
    }
    return looked;
}

std::size_t pages_of(const LookedFile& file) { return file.is_pdf ? file.pdf.pages.size() : 1; }

/// Adds the faces of one file, the first ones alone where there is no use for more; nothing in place of those of a damaged
/// file.
std::vector<std::optional<std::size_t>> add_faces(LookedSet& set, std::size_t index, std::size_t at_most = SIZE_MAX) {
    const LookedFile& file = set.files[index];
    if (!file.damage.empty()) return {std::nullopt};
    std::vector<std::optional<std::size_t>> added;
    for (std::size_t page = 1; page <= std::min(pages_of(file), at_most); ++page) {
        added.push_back(set.faces.size());
        set.faces.push_back({index, file.is_pdf ? static_cast<int>(page) : 0});
    }
    return added;
}

void list_part_faces(LookedSet& set) {
    std::size_t index = 0;
    for (const auto& [name, files] : set.set->faces) {
        auto& of_face = set.of_part_face[name];
        for (std::size_t i = 0; i < files.size(); ++i)
            for (const auto& face : add_faces(set, index++)) of_face.push_back(face);
    }
    if (index < set.files.size()) set.last_back = add_faces(set, index, 1).front();
}

void list_faces(LookedSet& set) {
    if (set.set->role == kit::Role::part) return list_part_faces(set);
    for (std::size_t i = 0; i < set.set->files.size(); ++i) add_faces(set, i);
    const bool odd = set.set->sides == kit::Sides::duplex && set.faces.size() % 2 != 0;
    if (odd && set.files.size() > set.set->files.size()) add_faces(set, set.set->files.size(), 1);
}

}  // namespace

std::vector<kit::ArtworkFile> artwork_of(const kit::Set& set) {
    std::vector<kit::ArtworkFile> all = set.files;
    for (const auto& [name, files] : set.faces) all.insert(all.end(), files.begin(), files.end());
    if (set.last_back && set.last_back->file) all.push_back(*set.last_back->file);
    return all;
}

/// A PDF header may stand anywhere in the first kilobyte (ISO 32000-1 annex H.3, note 13 of Adobe's readers); ours to
/// accept is only one at the very start, which is what every exporter writes.
bool starts_as_pdf(Disk& disk, const Path& path) {
    std::array<std::byte, 5> head{};
    const auto source = disk.open(path);
    return source->read(0, head) == head.size() && std::memcmp(head.data(), "%PDF-", head.size()) == 0;
}

std::vector<LookedSet> look(Disk& disk, const kit::Manifest& manifest, engine::Kept& kept, const engine::Jobs& jobs, Progress& progress) {
    std::vector<LookedSet> sets(manifest.sets.size());
    std::vector<std::vector<kit::ArtworkFile>> files(sets.size());
    std::vector<std::pair<std::size_t, std::size_t>> all;
    for (std::size_t s = 0; s < sets.size(); ++s) {
        sets[s].set = &manifest.sets[s];
        files[s] = artwork_of(manifest.sets[s]);
        sets[s].files.resize(files[s].size());
        for (std::size_t f = 0; f < files[s].size(); ++f) all.emplace_back(s, f);
    }
    progress.begin("looking at the artwork", all.size());
    jobs.for_each(all.size(), [&](std::size_t i) {
        const auto [s, f] = all[i];
        sets[s].files[f] = look_at(disk, kept, files[s][f]);
        progress.step();
    });
    for (LookedSet& set : sets) list_faces(set);
    return sets;
}

}  // namespace qw::release
