// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/published.h"

#include "base/fault.h"
#include "base/words.h"
#include "release/seen_release.h"

#include <algorithm>
#include <map>

namespace qw::release {

namespace {

/// Inputs that are not the same, by path.
std::vector<std::string> changed_inputs(const std::vector<record::Input>& then, const std::vector<record::Input>& now) {
    std::map<std::string, std::pair<std::string, std::string>> both;
    for (const record::Input& input : then) both[input.path].first = input.sha256;
    for (const record::Input& input : now) both[input.path].second = input.sha256;
    std::vector<std::string> changed;
    for (const auto& [path, digests] : both)
        if (digests.first != digests.second) changed.push_back(path);
    return changed;
}

std::string some_of(const std::vector<std::string>& names) {
    constexpr std::size_t most = 3;
    std::vector<std::string> first(names.begin(), names.begin() + static_cast<std::ptrdiff_t>(std::min(names.size(), most)));
    if (names.size() > most) first.push_back(std::to_string(names.size() - most) + " more");
    return listed(first, "and");
}

/// The published files of the plan that are not the ones that were just made.
void judge_differing(Disk& disk, const Prepared& prepared, engine::Kept& kept, const std::vector<FileInBundle>& published, Made& made) {
    std::map<std::string, std::string> digest_now;
    for (const record::File& file : made.record.files) digest_now[file.path] = file.sha256;
    std::vector<std::string> differing;
    for (const FileInBundle& file : published) {
        const auto& files = prepared.plan.files;
        const auto planned = std::find_if(files.begin(), files.end(), [&](const PlannedFile& one) { return one.path == file.told.path; });
        if (planned == files.end() || file.sha256 == digest_now[file.told.path]) continue;
        differing.push_back(file.told.path);
        JudgedFile judged = judge_planned(disk, file.on_disk, *planned, prepared.rules, kept, Rendering::all);
        made.report.findings.insert(made.report.findings.end(), judged.findings.begin(), judged.findings.end());
    }
    if (differing.empty()) return;
    prepared.rules.say(made.report.findings,
                       {"release-current", Level::warning, "", 0, 0, some_of(differing), "the files that the kit gives",
                        "Published files are not the ones that the same inputs give now", "Release the kit again, and upload what has changed"});
}

}  // namespace

void judge_published(Disk& disk, const Order& order, const Prepared& prepared, engine::Kept& kept, const Path& scratch, Made& made) {
    const Path folder = order.out / prepared.kit.manifest.kit / prepared.kit.manifest.version;
    if (!disk.stat(folder / "release.json")) return;
    for (const char* rule : {"release-current", "record-readable", "record-kit"}) prepared.rules.tried(rule);
    record::ReleaseRecord record;
    try {
        record = record::read_release_record(read_text(disk, folder / "release.json", std::uint64_t{64} << 20), "release.json");
    } catch (const Fault& fault) {
        prepared.rules.say(made.report.findings, damaged_record(fault));
        return;
    }
    const kit::Manifest& manifest = prepared.kit.manifest;
    if (record.kit != manifest.kit || record.version != manifest.version) {
        prepared.rules.say(
            made.report.findings,
            {"record-kit", Level::error, "release.json", 0, 0, record.kit + " " + record.version, manifest.kit + " " + manifest.version,
             "What lies published in the kit's folder is recorded as another kit or version", "Release the kit again"});
        return;
    }
    const std::vector<std::string> changed = changed_inputs(record.inputs, made.record.inputs);
    if (!changed.empty()) {
        prepared.rules.say(made.report.findings, {"release-current", Level::warning, "", 0, 0, some_of(changed), "the inputs of the release",
                                                  "What lies published under this version was made from other inputs",
                                                  "Release the kit again, or raise its version first"});
        return;
    }
    const std::vector<OpenedBundle> bundles = open_release(disk, prepared.rules, record, prepared.kit.pipeline->papers, prepared.kit.date, folder,
                                                           scratch, made.report.findings);
    judge_differing(disk, prepared, kept, pdfs_of(bundles, &record, *prepared.kit.pipeline), made);
}

}  // namespace qw::release
