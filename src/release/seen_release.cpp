// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/seen_release.h"

#include "bundle/unicode.h"
#include "release/kit_folder.h"

#include <algorithm>

namespace qw::release {

namespace {

const Paper* paper_called(const std::vector<Paper>& papers, const std::string& name) {
    const auto found = std::find_if(papers.begin(), papers.end(), [&](const Paper& paper) { return paper.name == name || paper.short_name == name; });
    return found == papers.end() ? nullptr : &*found;
}

std::optional<Print> print_called(const std::string& name) {
    for (const Print print : {Print::borderless, Print::bordered})
        if (name_of(print) == name) return print;
    return std::nullopt;
}

void know_paper(checks::SeenPdf& told, const std::vector<Paper>& papers, const std::string& name) {
    if (const Paper* paper = paper_called(papers, name)) told.paper = *paper;
}

/// A loose file of a release folder: what the record says of it.
void check_loose(Disk& disk, const checks::Rules& rules, const Path& folder, const record::File& told, Findings& findings) {
    rules.tried("record-agrees");
    const auto stat = disk.stat(folder / told.path);
    const bool there = stat && stat->type == FileType::file;
    const std::string sha256 = there ? digest_of(disk, folder / told.path).sha256 : "missing";
    if (sha256 == told.sha256) return;
    rules.say(findings, {"record-agrees", Level::error, told.path, 0, 0, sha256.substr(0, 16), told.sha256.substr(0, 16),
                         there ? "The file is not the one that release.json tells of" : "A file that release.json tells of is not there", "Release the kit again"});
}

}  // namespace

checks::SeenPdf told_by_record(const record::File& file, const std::vector<Paper>& papers) {
    checks::SeenPdf told;
    told.path = file.path;
    told.role = file.role;
    if (file.paper) know_paper(told, papers, *file.paper);
    if (file.print) told.print = print_called(*file.print);
    return told;
}

checks::SeenPdf told_by_path(const std::string& path, const std::vector<Paper>& papers) {
    checks::SeenPdf told;
    told.path = path;
    const std::size_t first = path.find('/'), second = first == std::string::npos ? first : path.find('/', first + 1);
    if (first == std::string::npos) return told;
    know_paper(told, papers, path.substr(0, first));
    if (told.paper && second != std::string::npos) told.print = print_called(path.substr(first + 1, second - first - 1));
    return told;
}

Finding damaged_record(const Fault& fault) {
    return {"record-readable",
            Level::error,
            "release.json",
            0,
            0,
            fault.notes().front().what,
            "a whole record",
            "The record of the release cannot be read",
            "Release the kit again"};
}

std::vector<OpenedBundle> open_release(Disk& disk, const checks::Rules& rules, const record::ReleaseRecord& record, const std::vector<Paper>& papers,
                                       const std::optional<Date>& date, const Path& folder, const Path& scratch, Findings& findings) {
    std::vector<OpenedBundle> opened;
    std::vector<checks::PackedBundle> bundles;
    for (const record::Bundle& told : record.bundles) {
        const auto stat = disk.stat(folder / told.path);
        if (!stat || stat->type != FileType::file || told.path.find('/') != std::string::npos) continue;  // check_record tells of it
        const Path inside = scratch / std::to_string(opened.size());
        disk.make_folders(inside);
        opened.push_back(open_bundle(disk, folder / told.path, told.path, inside));
        opened.back().packed.recorded = true;
        opened.back().packed.date = date;
        bundles.push_back(opened.back().packed);
        checks::check_bundle(rules, bundles.back(), findings);
    }
    checks::check_record(rules, record, bundles, findings);
    checks::check_record_itself(rules, record, papers, findings);
    checks::check_loose_files(rules, record, files_below(disk, folder), findings);
    for (const record::File& told : record.files) check_loose(disk, rules, folder, told, findings);
    return opened;
}

std::vector<FileInBundle> pdfs_of(const std::vector<OpenedBundle>& bundles, const record::ReleaseRecord* record, const kit::Pipeline& pipeline) {
    std::vector<FileInBundle> files;
    for (const OpenedBundle& bundle : bundles) {
        const bool ours = bundle.packed.ours();
        for (std::size_t i = 0; i < bundle.packed.content.entries.size(); ++i) {
            if (!bundle.taken_out[i]) continue;
            const bundle::Seen& seen = bundle.packed.content.entries[i];
            FileInBundle file{ours ? told_by_path(seen.name, pipeline.papers) : checks::SeenPdf{}, *bundle.taken_out[i], seen.sha256, std::nullopt};
            file.told.path = bundle::shown_name(seen.name);
            if (record)
                for (const record::File& told : record->files)
                    if (told.path == seen.name && told.bundle == bundle.packed.path) {
                        file.told = told_by_record(told, pipeline.papers);
                        file.recorded = told;
                    }
            for (const kit::Caution& caution : pipeline.cautions)
                if (caution.always) file.told.cautions.push_back(caution.text);
            files.push_back(std::move(file));
        }
    }
    return files;
}

bool all_whole(const std::vector<OpenedBundle>& bundles) {
    return std::all_of(bundles.begin(), bundles.end(), [](const OpenedBundle& bundle) { return bundle.packed.content.is_whole(); });
}

void judge_bundles(Disk& disk, const std::vector<FileInBundle>& files, const record::ReleaseRecord* record, bool whole, const checks::Rules& rules,
                   engine::Kept& kept, const engine::Jobs& jobs, Progress& progress, report::AuditReport& report) {
    std::vector<JudgedFile> judged(files.size());
    progress.begin("looking at the finished pages", files.size());
    jobs.for_each(files.size(), [&](std::size_t i) {
        judged[i] = judge_unplanned(disk, files[i].on_disk, files[i].told, rules, kept);
        if (record && files[i].recorded) checks::check_recorded_pdf(rules, *files[i].recorded, judged[i].facts, judged[i].findings);
        progress.step();
    });
    std::vector<const JudgedFile*> all;
    std::vector<std::string> subjects;
    for (JudgedFile& file : judged) {
        all.push_back(&file);
        if (!file.facts.subject.empty()) subjects.push_back(file.facts.subject);
        std::move(file.rows.begin(), file.rows.end(), std::back_inserter(report.sheets));
        report.findings.insert(report.findings.end(), file.findings.begin(), file.findings.end());
    }
    if (record) checks::check_recorded_version(rules, *record, subjects, report.findings);
    if (whole) judge_together(all, rules, report.findings);
}

}  // namespace qw::release
