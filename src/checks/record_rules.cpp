// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/record_rules.h"

#include "base/words.h"
#include "bundle/unicode.h"
#include "kit/manifest.h"

#include <algorithm>
#include <map>
#include <set>

namespace qw::checks {

namespace {

Finding finding(const char* rule, const std::string& file, std::string measured, std::string limit, std::string message) {
    return {rule, Level::error, file, 0, 0, std::move(measured), std::move(limit), std::move(message), "Release the kit again and replace the bundle"};
}

std::string bytes(std::uint64_t count) { return std::to_string(count) + " bytes"; }

void check_file(const Rules& rules, const record::File& told, const bundle::Seen* found, Findings& findings) {
    if (!found) rules.say(findings, finding("record-agrees", told.path, "missing", "in " + told.bundle, "release.json tells of a file that is not in the bundle"));
    else if (!found->unread.empty()) return;
    else if (found->sha256 != told.sha256)
        rules.say(findings, finding("record-agrees", told.path, found->sha256.substr(0, 16), told.sha256.substr(0, 16),
                                    "A file in the bundle is not the one that release.json tells of"));
    else if (found->bytes != told.bytes)
        rules.say(findings, finding("record-agrees", told.path, bytes(found->bytes), bytes(told.bytes),
                                    "release.json tells another size of a file than it has"));
}

/// The files of a bundle that was read: each that is told is the one, each that is there is told, and they are as many as the
/// record counts.
void check_files(const Rules& rules, const record::ReleaseRecord& record, const record::Bundle& told, const PackedBundle& bundle, Findings& findings) {
    const auto& files = bundle.content.entries;
    rules.tried("record-complete", files.size());
    std::map<std::string, const bundle::Seen*> by_name;
    for (const bundle::Seen& file : files) by_name.emplace(file.name, &file);
    std::set<std::string> named;
    for (const record::File& file : record.files) {
        if (file.bundle != told.path) continue;
        named.insert(file.path);
        const auto found = by_name.find(file.path);
        check_file(rules, file, found == by_name.end() ? nullptr : found->second, findings);
    }
    for (const bundle::Seen& file : files)
        if (!named.contains(file.name))
            rules.say(findings, finding("record-complete", bundle::shown_name(file.name), "in " + told.path, "in release.json",
                                        "release.json does not tell of a file in the bundle"));
    if (static_cast<std::size_t>(told.entries) != files.size())
        rules.say(findings, finding("record-complete", told.path, std::to_string(files.size()) + " files", std::to_string(told.entries) + " files",
                                    "release.json counts other files than the bundle has"));
}

std::string stem_of(const std::string& path) {
    const std::string name = path.substr(path.rfind('/') + 1);
    return name.substr(0, name.rfind('.'));
}

/// What a file's path says of it: folders of paper and print, and a generated sheet's name.
void check_said(const Rules& rules, const record::File& file, const std::vector<Paper>& papers, Findings& findings) {
    rules.tried("record-roles");
    const auto differ = [&](const std::string& said, const std::string& by_path, const char* of) {
        rules.say(findings, finding("record-roles", file.path, said.empty() ? "none" : said, by_path.empty() ? "none" : by_path,
                                    "release.json says of a file another " + std::string(of) + " than its path"));
    };
    std::string paper, print;
    const std::size_t first = file.path.find('/'), second = first == std::string::npos ? first : file.path.find('/', first + 1);
    if (first != std::string::npos) {
        for (const Paper& one : papers)
            if (one.short_name == file.path.substr(0, first)) paper = one.name;
        if (second != std::string::npos) print = file.path.substr(first + 1, second - first - 1);
    }
    if (file.paper.value_or("") != paper) differ(file.paper.value_or(""), paper, "paper");
    else if (file.print.value_or("") != print) differ(file.print.value_or(""), print, "print");
    else if (kit::is_role(file.role) ? print.empty() : file.role != stem_of(file.path))
        differ(file.role, kit::is_role(file.role) ? "a generated sheet" : stem_of(file.path), "role");
}

/// <kit>-<version>.zip, or <kit>-<version>-1-of-3.zip.
bool is_bundle_of(const std::string& path, const std::string& stem) {
    if (!path.starts_with(stem) || !path.ends_with(".zip") || path.size() < stem.size() + 4) return false;
    const std::string between = path.substr(stem.size(), path.size() - stem.size() - 4);
    return between.empty() || (between.starts_with('-') && between.find("-of-") != std::string::npos);
}

}  // namespace

void check_record(const Rules& rules, const record::ReleaseRecord& record, const std::vector<PackedBundle>& bundles, Findings& findings) {
    rules.tried("record-agrees", record.files.size() + record.bundles.size());
    std::map<std::string, const PackedBundle*> by_path;
    for (const PackedBundle& bundle : bundles) by_path[bundle.path] = &bundle;
    for (const record::Bundle& told : record.bundles) {
        const auto found = by_path.find(told.path);
        if (found == by_path.end())
            rules.say(findings, finding("record-agrees", told.path, "missing", "a bundle", "release.json tells of a bundle that is not there"));
        else if (found->second->bytes != told.bytes)
            rules.say(findings, finding("record-agrees", told.path, bytes(found->second->bytes), bytes(told.bytes),
                                        "The bundle is not the one that release.json tells of"));
        else if (found->second->sha256 != told.sha256)
            rules.say(findings, finding("record-agrees", told.path, found->second->sha256.substr(0, 16), told.sha256.substr(0, 16),
                                        "The bundle is not the one that release.json tells of"));
        if (found != by_path.end() && found->second->content.is_whole()) check_files(rules, record, told, *found->second, findings);
    }
}

void check_record_itself(const Rules& rules, const record::ReleaseRecord& record, const std::vector<Paper>& papers, Findings& findings) {
    for (const record::File& file : record.files) check_said(rules, file, papers, findings);
    rules.tried("record-kit", record.bundles.size());
    for (const record::Bundle& bundle : record.bundles)
        if (!is_bundle_of(bundle.path, record.kit + "-" + record.version))
            rules.say(findings, finding("record-kit", bundle.path, record.kit + " " + record.version, "the bundle's kit and version",
                                        "release.json is of another kit or version than a bundle that it names"));
}

void check_loose_files(const Rules& rules, const record::ReleaseRecord& record, const std::vector<std::string>& loose, Findings& findings) {
    std::set<std::string> named;
    for (const record::File& file : record.files) named.insert(file.path);
    for (const record::Bundle& bundle : record.bundles) named.insert(bundle.path);
    rules.tried("record-complete", loose.size());
    for (const std::string& path : loose) {
        const std::string lower = in_lower_case(path);
        if ((lower.ends_with(".zip") || lower.ends_with(".pdf")) && !named.contains(path))
            rules.say(findings, finding("record-complete", bundle::shown_name(path), "in the release", "in release.json",
                                        "A file lies in the release that release.json does not tell of; it may be uploaded by mistake"));
    }
}

void check_recorded_pdf(const Rules& rules, const record::File& told, const proof::FileFacts& facts, Findings& findings) {
    if (!facts.damage.empty() || facts.encrypted) return;
    rules.tried("record-pages");
    if (facts.pages.size() != static_cast<std::size_t>(told.pages))
        rules.say(findings, finding("record-pages", told.path, std::to_string(facts.pages.size()) + " pages", std::to_string(told.pages) + " pages",
                                    "release.json counts other pages than the file has"));
}

void check_recorded_version(const Rules& rules, const record::ReleaseRecord& record, const std::vector<std::string>& subjects, Findings& findings) {
    if (subjects.empty()) return;
    rules.tried("record-kit", subjects.size());
    // Subject of our files is "title version, paper …".
    const bool any = std::any_of(subjects.begin(), subjects.end(),
                                 [&](const std::string& subject) { return subject.find(" " + record.version + ", ") != std::string::npos; });
    if (!any)
        rules.say(findings, finding("record-kit", "release.json", "version " + record.version, subjects.front(),
                                    "release.json is of another version than the files that it names"));
}

}  // namespace qw::checks
