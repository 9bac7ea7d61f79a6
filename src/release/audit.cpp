// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "checks/bundle_rules.h"
#include "kit/read.h"
#include "release/make.h"
#include "release/pack.h"
#include "release/release.h"

namespace qw::release {

namespace {

/// Names of files and folders that a report may show: the last part of a path, which says enough and tells nothing of
/// the machine.
std::string shown_name(const Path& path) {
    const Path plain = std::filesystem::absolute(path).lexically_normal();
    return (plain.has_filename() ? plain : plain.parent_path()).filename().string();
}

report::AuditReport begun(const Order& order, std::string subject) {
    report::AuditReport report;
    report.subject = std::move(subject);
    report.strict = order.strict;
    return report;
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

report::AuditReport audit_kit(Disk& disk, const Order& order, const Path& scratch, Progress& progress) {
    const ReadKit kit = read(disk, order);
    return make(disk, order, kit, scratch, Rendering::all, progress).report;
}

report::AuditReport audit_bundle(Disk& disk, const Order& order, const Path& zip) {
    const kit::Pipeline pipeline = kit::read_pipeline(disk, order.pipeline);
    const checks::Rules rules(pipeline.checks, {});
    report::AuditReport report = begun(order, shown_name(zip));
    checks::check_bundle(rules, read_back(disk, zip, shown_name(zip), digest_of(disk, zip)), report.findings);
    report.tried = rules.what_was_tried();
    return report;
}

report::AuditReport audit_release(Disk& disk, const Order& order, const Path& folder) {
    const kit::Pipeline pipeline = kit::read_pipeline(disk, order.pipeline);
    const checks::Rules rules(pipeline.checks, {});
    report::AuditReport report = begun(order, shown_name(folder));
    record::ReleaseRecord record;
    try {
        record = record::read_release_record(read_text(disk, folder / "release.json", std::uint64_t{64} << 20), "release.json");
    } catch (const Fault& fault) {
        // Damage of what is under judgement is a finding.
        rules.tried("record-agrees");
        rules.say(report.findings, {"record-agrees", Level::error, "release.json", 0, 0, fault.notes().front().what, "a whole record", "The record of the release cannot be read", "Release the kit again"});
        report.tried = rules.what_was_tried();
        return report;
    }
    report.subject = record.kit + " " + record.version;
    std::vector<checks::PackedBundle> bundles;
    for (const record::Bundle& told : record.bundles) {
        const auto stat = disk.stat(folder / told.path);
        if (!stat || stat->type != FileType::file || told.path.find('/') != std::string::npos) continue;  // check_record tells of it
        bundles.push_back(read_back(disk, folder / told.path, told.path, digest_of(disk, folder / told.path)));
        checks::check_bundle(rules, bundles.back(), report.findings);
    }
    checks::check_record(rules, record, bundles, report.findings);
    for (const record::File& told : record.files) check_loose(disk, rules, folder, told, report.findings);
    report.tried = rules.what_was_tried();
    return report;
}

}  // namespace qw::release
