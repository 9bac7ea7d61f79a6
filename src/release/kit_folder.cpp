// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/kit_folder.h"

#include "checks/folder_rules.h"
#include "checks/set_rules.h"
#include "release/look.h"

namespace qw::release {

namespace {

constexpr std::size_t most_files = 10'000;
constexpr int deepest_folder = 16;

/// False: there is more than was looked at.
bool collect(Disk& disk, const Path& folder, const std::string& shown, int depth, std::vector<std::string>& all) {
    bool whole = true;
    for (const std::string& name : disk.list(folder)) {
        if (all.size() >= most_files) return false;
        const auto stat = disk.stat(folder / name);
        if (!stat) continue;
        if (stat->type == FileType::folder) {
            if (name.starts_with('.')) continue;  // what a version control or a desktop keeps for itself
            whole = depth < deepest_folder && collect(disk, folder / name, shown + name + "/", depth + 1, all) && whole;
        } else {
            all.push_back(shown + name);
        }
    }
    return whole;
}

std::vector<checks::FilesOfSet> files_of_sets(const kit::Manifest& manifest) {
    std::vector<checks::FilesOfSet> sets;
    const auto add = [&](const std::string& name, const std::string& face, const std::vector<kit::ArtworkFile>& files) {
        sets.push_back({name, face, {}});
        for (const kit::ArtworkFile& file : files) sets.back().files.push_back(file.shown);
    };
    for (const kit::Set& set : manifest.sets) {
        if (set.role != kit::Role::part) add(set.name, "", set.files);
        for (const auto& [face, files] : set.faces) add(set.name, face, files);
    }
    return sets;
}

}  // namespace

std::vector<std::string> files_below(Disk& disk, const Path& folder) {
    std::vector<std::string> all;
    collect(disk, folder, "", 0, all);
    return all;
}

void check_kit_folder(Disk& disk, const kit::Manifest& manifest, const checks::Rules& rules, Findings& findings) {
    std::set<std::string> named;
    for (const kit::Set& set : manifest.sets)
        for (const kit::ArtworkFile& file : artwork_of(set)) named.insert(file.shown);
    std::vector<std::string> all;
    const bool whole = collect(disk, manifest.folder, "", 0, all);
    checks::check_folder(rules, all, named, whole, findings);
    checks::check_sets(rules, files_of_sets(manifest), findings);
}

}  // namespace qw::release
