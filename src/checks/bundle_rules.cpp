// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/bundle_rules.h"

#include "bundle/unicode.h"
#include "checks/zip_rules.h"

#include <algorithm>
#include <map>
#include <set>
#include <sstream>
#include <string_view>

namespace qw::checks {

namespace {

Finding finding(const std::string& rule, const std::string& file, std::string measured, std::string limit, std::string message, std::string mend) {
    return {rule, Level::error, file, 0, 0, std::move(measured), std::move(limit), std::move(message), std::move(mend)};
}

constexpr const char* again = "Release the kit again and replace the bundle";
constexpr std::string_view contents_name = "contents.txt";

/// As sha256sum reads it: digest, two spaces, name.
bool is_formed(const std::string& line) {
    const auto hexadecimal = [](char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'); };
    return line.size() > 66 && line.compare(64, 2, "  ") == 0 && std::all_of(line.begin(), line.begin() + 64, hexadecimal);
}

/// Name → digest as contents.txt tells them; lines of another form end up under an empty name.
std::map<std::string, std::string> told_by(const std::string& contents) {
    std::map<std::string, std::string> told;
    std::istringstream lines(contents);
    for (std::string line; std::getline(lines, line);) told[is_formed(line) ? line.substr(66) : ""] = is_formed(line) ? line.substr(0, 64) : line;
    return told;
}

/// Sheets that every bundle of ours has, side by side.
bool has_our_sheets(const std::vector<bundle::Seen>& files) {
    std::set<std::string> names;
    for (const bundle::Seen& file : files) names.insert(file.name);
    constexpr std::string_view one = "print-check.pdf", other = "measurements.pdf";
    return std::any_of(names.begin(), names.end(), [&](const std::string& name) {
        return name.ends_with(one) && names.contains(name.substr(0, name.size() - one.size()) + std::string(other));
    });
}

void check_names(const Rules& rules, const PackedBundle& bundle, Findings& findings) {
    rules.tried("bundle-names", bundle.content.entries.size());
    for (const bundle::Seen& file : bundle.content.entries)
        if (const std::string fault = bundle::fault_in_name(file.name); !fault.empty())
            rules.say(findings, finding("bundle-names", bundle.path, bundle::shown_name(file.name), "a-z 0-9 - _ . and /, at most 180 bytes",
                                        "A name in the bundle does not unpack on every system: " + fault, again));
}

void check_contents(const Rules& rules, const PackedBundle& bundle, Findings& findings) {
    const auto& files = bundle.content.entries;
    rules.tried("bundle-complete");
    auto told = told_by(bundle.content.text);
    rules.tried("bundle-digests", files.size());
    std::set<std::string> met;
    for (const bundle::Seen& file : files) {
        if (file.name == contents_name) continue;
        const bool again_met = !met.insert(file.name).second;  // a double, which is told as such
        const auto found = told.find(file.name);
        if (found == told.end()) {
            if (!again_met)
                rules.say(findings, finding("bundle-complete", bundle.path, bundle::shown_name(file.name), "every file",
                                            "contents.txt does not tell of a file in the bundle", again));
            continue;
        }
        if (file.unread.empty() && found->second != file.sha256)
            rules.say(findings, finding("bundle-digests", bundle.path, file.name + " " + file.sha256.substr(0, 16), found->second.substr(0, 16),
                                        "A file in the bundle is not the one that contents.txt tells of", again));
        told.erase(found);
    }
    for (const auto& [name, digest] : told)
        rules.say(findings, finding("bundle-complete", bundle.path, bundle::shown_name(name.empty() ? digest : name), "every file that is told",
                                    name.empty() ? "contents.txt has a line that sha256sum cannot read"
                                                 : "A file that contents.txt tells of is not in the bundle",
                                    again));
}

}  // namespace

bool PackedBundle::ours() const {
    if (recorded || has_our_sheets(content.entries)) return true;
    std::istringstream lines(content.text);
    for (std::string line; std::getline(lines, line);)
        if (is_formed(line)) return true;
    return false;
}

void check_bundle(const Rules& rules, const PackedBundle& bundle, Findings& findings) {
    rules.tried("bundle-damaged");
    if (!bundle.content.damage.empty()) {
        const std::string damage = bundle::shown_name(bundle.content.damage);
        rules.say(findings, finding("bundle-damaged", bundle.path, damage, "a whole zip", "The bundle cannot be unpacked: " + damage,
                                    bundle.ours() ? again : "Pack the bundle anew, and test it before it is uploaded"));
        return;
    }
    check_zip(rules, bundle, findings);
    if (!bundle.content.inflates.empty()) return;
    check_packed_files(rules, bundle, findings);
    check_packed_names(rules, bundle, findings);
    if (!bundle.ours()) return;
    check_names(rules, bundle, findings);
    check_contents(rules, bundle, findings);
}

void check_shop(const Rules& rules, const kit::Shop* shop, const std::vector<PackedBundle>& bundles, Findings& findings) {
    if (!shop) return;
    rules.tried("shop-limits", 1 + bundles.size());
    if (shop->most_files && bundles.size() > static_cast<std::size_t>(*shop->most_files))
        rules.say(findings, finding("shop-limits", "", std::to_string(bundles.size()) + " files", std::to_string(*shop->most_files),
                                    "The shop takes fewer delivery files", "Choose another shop, or sell the kit in parts"));
    for (const PackedBundle& bundle : bundles) {
        if (!shop->most_bytes_a_file || bundle.bytes <= *shop->most_bytes_a_file) continue;
        rules.say(findings, finding("shop-limits", bundle.path, std::to_string(bundle.bytes) + " bytes",
                                    std::to_string(*shop->most_bytes_a_file) + " bytes", "The bundle is larger than the shop takes",
                                    "Save the artwork smaller (JPEG for pictures, palette PNG for flat drawings), or choose another shop"));
    }
}

}  // namespace qw::checks
