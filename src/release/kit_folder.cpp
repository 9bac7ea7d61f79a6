// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/kit_folder.h"

#include "checks/folder_rules.h"
#include "release/look.h"

namespace qw::release {

namespace {

constexpr std::size_t most_files = 10'000;
constexpr int deepest_folder = 16;

void collect(Disk& disk, const Path& folder, const std::string& shown, int depth, std::vector<std::string>& all) {
    for (const std::string& name : disk.list(folder)) {
        if (all.size() >= most_files) return;
        const auto stat = disk.stat(folder / name);
        if (!stat) continue;
        if (stat->type == FileType::folder) {
            if (depth < deepest_folder && !name.starts_with('.')) collect(disk, folder / name, shown + name + "/", depth + 1, all);
        } else {
            all.push_back(shown + name);
        }
    }
}

}  // namespace

void check_kit_folder(Disk& disk, const kit::Manifest& manifest, const checks::Rules& rules, Findings& findings) {
    std::set<std::string> named;
    for (const kit::Set& set : manifest.sets)
        for (const kit::ArtworkFile& file : artwork_of(set)) named.insert(file.shown);
    std::vector<std::string> all;
    collect(disk, manifest.folder, "", 0, all);
    checks::check_folder(rules, all, named, findings);
}

}  // namespace qw::release
