// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/bundle_rules.h"

#include "base/words.h"

#include <algorithm>
#include <set>
#include <sstream>

namespace qw::checks {

namespace {

Finding finding(const std::string& rule, const std::string& file, std::string measured, std::string limit, std::string message, std::string mend) {
    return {rule, Level::error, file, 0, 0, std::move(measured), std::move(limit), std::move(message), std::move(mend)};
}

constexpr const char* again = "Release the kit again and replace the bundle";

/// Name → digest as contents.txt tells them; lines of another form end up under an empty name.
std::map<std::string, std::string> told_by(const std::string& contents) {
    std::map<std::string, std::string> told;
    std::istringstream lines(contents);
    for (std::string line; std::getline(lines, line);) {
        const bool formed = line.size() > 66 && line.compare(64, 2, "  ") == 0;
        told[formed ? line.substr(66) : ""] = formed ? line.substr(0, 64) : line;
    }
    return told;
}

void check_names(const Rules& rules, const PackedBundle& bundle, Findings& findings) {
    std::set<std::string> folded;
    rules.tried("bundle-names", bundle.files.size());
    for (const PackedFile& file : bundle.files) {
        std::string fault = file.name_fault;
        if (!folded.insert(in_lower_case(file.name)).second) fault = "another name differs in case only, or not at all";
        if (fault.empty()) continue;
        rules.say(findings, finding("bundle-names", bundle.path, file.name, "a-z 0-9 - _ . and /, at most 180 bytes", "A name in the bundle does not unpack on every system: " + fault, again));
    }
}

}  // namespace

void check_bundle(const Rules& rules, const PackedBundle& bundle, Findings& findings) {
    rules.tried("bundle-damaged");
    if (!bundle.damage.empty()) {
        rules.say(findings, finding("bundle-damaged", bundle.path, bundle.damage, "a whole zip", "The bundle cannot be unpacked: " + bundle.damage, again));
        return;
    }
    check_names(rules, bundle, findings);
    rules.tried("bundle-complete");
    auto told = told_by(bundle.contents);
    rules.tried("bundle-digests", bundle.files.size());
    for (const PackedFile& file : bundle.files) {
        if (file.name == "contents.txt") continue;
        const auto found = told.find(file.name);
        if (found == told.end()) {
            rules.say(findings, finding("bundle-complete", bundle.path, file.name, "every file", "contents.txt does not tell of a file in the bundle", again));
            continue;
        }
        if (found->second != file.sha256)
            rules.say(findings, finding("bundle-digests", bundle.path, file.name + " " + file.sha256.substr(0, 16), found->second.substr(0, 16), "A file in the bundle is not the one that contents.txt tells of", again));
        told.erase(found);
    }
    for (const auto& [name, digest] : told)
        rules.say(findings, finding("bundle-complete", bundle.path, name.empty() ? digest : name, "every file that is told", name.empty() ? "contents.txt has a line that sha256sum cannot read" : "A file that contents.txt tells of is not in the bundle", again));
}

void check_record(const Rules& rules, const record::ReleaseRecord& record, const std::vector<PackedBundle>& bundles, Findings& findings) {
    rules.tried("record-agrees", record.files.size() + record.bundles.size());
    std::map<std::string, const PackedBundle*> by_path;
    for (const PackedBundle& bundle : bundles) by_path[bundle.path] = &bundle;
    for (const record::Bundle& told : record.bundles) {
        const auto found = by_path.find(told.path);
        if (found == by_path.end()) rules.say(findings, finding("record-agrees", told.path, "missing", "a bundle", "release.json tells of a bundle that is not there", again));
        else if (found->second->sha256 != told.sha256 || found->second->bytes != told.bytes)
            rules.say(findings, finding("record-agrees", told.path, found->second->sha256.substr(0, 16), told.sha256.substr(0, 16), "The bundle is not the one that release.json tells of", again));
    }
    for (const record::File& told : record.files) {
        const auto bundle = by_path.find(told.bundle);
        if (bundle == by_path.end() || !bundle->second->damage.empty()) continue;
        const auto& files = bundle->second->files;
        const auto found = std::find_if(files.begin(), files.end(), [&](const PackedFile& f) { return f.name == told.path; });
        if (found == files.end()) rules.say(findings, finding("record-agrees", told.path, "missing", "in " + told.bundle, "release.json tells of a file that is not in the bundle", again));
        else if (found->sha256 != told.sha256)
            rules.say(findings, finding("record-agrees", told.path, found->sha256.substr(0, 16), told.sha256.substr(0, 16), "A file in the bundle is not the one that release.json tells of", again));
    }
}

void check_shop(const Rules& rules, const kit::Shop* shop, const std::vector<PackedBundle>& bundles, Findings& findings) {
    if (!shop) return;
    rules.tried("shop-limits", 1 + bundles.size());
    if (shop->most_files && bundles.size() > static_cast<std::size_t>(*shop->most_files))
        rules.say(findings, finding("shop-limits", "", std::to_string(bundles.size()) + " files", std::to_string(*shop->most_files), "The shop takes fewer delivery files", "Choose another shop, or sell the kit in parts"));
    for (const PackedBundle& bundle : bundles) {
        if (!shop->most_bytes_a_file || bundle.bytes <= *shop->most_bytes_a_file) continue;
        rules.say(findings, finding("shop-limits", bundle.path, std::to_string(bundle.bytes) + " bytes", std::to_string(*shop->most_bytes_a_file) + " bytes", "The bundle is larger than the shop takes",
                                    "Save the artwork smaller (JPEG for pictures, palette PNG for flat drawings), or choose another shop"));
    }
}

}  // namespace qw::checks
