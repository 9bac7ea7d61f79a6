// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/folder_rules.h"

#include "base/words.h"

#include <algorithm>
#include <map>

namespace qw::checks {

namespace {

std::string last_part(const std::string& path) { return path.substr(path.rfind('/') + 1); }

bool is_artwork(const std::string& path) {
    const std::string name = in_lower_case(path);
    return name.ends_with(".png") || name.ends_with(".jpg") || name.ends_with(".jpeg") || name.ends_with(".pdf");
}

Finding finding(const char* rule, const std::string& file, std::string measured, std::string limit, std::string message, std::string mend) {
    return {rule, Level::error, file, 0, 0, std::move(measured), std::move(limit), std::move(message), std::move(mend)};
}

}  // namespace

void check_folder(const Rules& rules, const std::vector<std::string>& all, const std::set<std::string>& named, bool whole, Findings& findings) {
    rules.tried("folder-looked-through");
    if (!whole)
        rules.say(findings, finding("folder-looked-through", "", std::to_string(all.size()) + " files and more", "10 000 files, 16 folders deep",
                                    "The kit's folder holds so much that not all of it was looked through", "Move out of it what does not belong to the kit"));
    std::map<std::string, std::string> by_lower;
    for (const std::string& path : all) {
        for (const char* rule : {"folder-litter", "folder-unused", "folder-names", "folder-case-twins"}) rules.tried(rule);
        if (is_litter(path)) {
            rules.say(findings, finding("folder-litter", path, "a file of the desktop or of an editor", "none",
                                        "The folder holds what a desktop or an editor left behind", "Remove it"));
            continue;
        }
        if (is_artwork(path) && !named.contains(path))
            rules.say(findings, finding("folder-unused", path, "in no set", "in a set",
                                        "A picture lies in the kit's folder and is in no set, so buyers do not get it",
                                        "Add it to a set, or move it out of the folder"));
        if (const std::string why = fault_on_windows(last_part(path)); !why.empty())
            rules.say(findings, finding("folder-names", path, why, "a name for every system", "A name does not travel to every system",
                                        "Rename it: letters, digits, hyphens"));
        const auto [twin, fresh] = by_lower.emplace(in_lower_case(path), path);
        if (!fresh)
            rules.say(findings,
                      finding("folder-case-twins", path, "and " + twin->second, "names that differ in more than case",
                              "Two names differ in case only; on other systems one of the files takes the other's place", "Rename one of them"));
    }
}

}  // namespace qw::checks
