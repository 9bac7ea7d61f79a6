// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/look.h"

#include "proof/render.h"

#include <array>
#include <cstring>

namespace qw::release {

namespace {

void look_at_pdf(Disk& disk, LookedFile& looked) {
    looked.is_pdf = true;
    looked.pdf = proof::inspect(disk, looked.file.path);
    looked.sha256 = looked.pdf.sha256;
    looked.damage = looked.pdf.damage;
    if (looked.damage.empty() && looked.pdf.encrypted) looked.damage = "it is encrypted";
    if (!looked.damage.empty()) return;
    proof::Renderer renderer(looked.file.path);
    looked.damage = renderer.damage();
    for (int page = 1; looked.damage.empty() && page <= renderer.pages(); ++page)
        looked.pdf_ink.push_back(proof::ink_of(renderer.page(page, pdf_look_dpi)));
}

LookedFile look_at(Disk& disk, const kit::ArtworkFile& file) {
    LookedFile looked;
    looked.file = file;
    if (starts_as_pdf(disk, file.path)) {
        look_at_pdf(disk, looked);
    } else {
        looked.picture = artwork::look(disk, file.path);
        looked.sha256 = looked.picture.sha256;
        looked.damage = looked.picture.damage;
        // No check of a release asks for it, and it would be kept for every page.
        looked.picture.ink.map.darkest = {};
    }
    return looked;
}

void list_faces(LookedSet& set) {
    for (std::size_t i = 0; i < set.files.size(); ++i) {
        const LookedFile& file = set.files[i];
        if (!file.damage.empty()) continue;
        if (!file.is_pdf) set.faces.push_back({i, 0});
        for (int page = 1; file.is_pdf && page <= static_cast<int>(file.pdf.pages.size()); ++page) set.faces.push_back({i, page});
    }
}

}  // namespace

/// A PDF header may stand anywhere in the first kilobyte (ISO 32000-1 annex H.3, note 13 of Adobe's readers); ours to
/// accept is only one at the very start, which is what every exporter writes.
bool starts_as_pdf(Disk& disk, const Path& path) {
    std::array<std::byte, 5> head{};
    const auto source = disk.open(path);
    return source->read(0, head) == head.size() && std::memcmp(head.data(), "%PDF-", head.size()) == 0;
}

std::vector<LookedSet> look(Disk& disk, const kit::Manifest& manifest, const engine::Jobs& jobs, Progress& progress) {
    std::vector<LookedSet> sets(manifest.sets.size());
    std::vector<std::pair<std::size_t, std::size_t>> all;
    for (std::size_t s = 0; s < sets.size(); ++s) {
        sets[s].set = &manifest.sets[s];
        sets[s].files.resize(manifest.sets[s].files.size());
        for (std::size_t f = 0; f < sets[s].files.size(); ++f) all.emplace_back(s, f);
    }
    progress.begin("looking at the artwork", all.size());
    jobs.for_each(all.size(), [&](std::size_t i) {
        const auto [s, f] = all[i];
        sets[s].files[f] = look_at(disk, manifest.sets[s].files[f]);
        progress.step();
    });
    for (LookedSet& set : sets) list_faces(set);
    return sets;
}

}  // namespace qw::release
