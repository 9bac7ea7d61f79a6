// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "checks/bundle_rules.h"
#include "kit/read.h"
#include "release/audit_proofs.h"
#include "release/audit_text.h"
#include "release/make.h"
#include "release/published.h"
#include "release/release.h"
#include "release/seen_release.h"

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

report::AuditReport ended(const checks::Rules& rules, report::AuditReport report) {
    report.tried = rules.what_was_tried();
    report.untried = rules.what_was_not_tried();
    order_findings(report.findings);
    return report;
}

/// What was found out is kept for the next audit; where the disk refuses, the audit is none the worse for it.
void keep(engine::Kept& kept) {
    try {
        kept.save();
    } catch (const Fault&) {
    }
}

/// A published release lies in <out>/<kit>/<version>, what is kept in <out>/<kit>.
Path kept_beside(const Path& release) { return (std::filesystem::absolute(release) / ".").lexically_normal().parent_path().parent_path() / ".kept"; }

/// A bundle by itself is known by its name: <kit>-<version>….zip. Where no such kit has been released nothing is kept.
Path kept_for_bundle(Disk& disk, const Order& order, const std::string& name) {
    const auto stat = disk.stat(order.out);
    if (!stat || stat->type != FileType::folder) return {};
    for (const std::string& kit : disk.list(order.out))
        if (name.starts_with(kit + "-") && disk.stat(order.out / kit)->type == FileType::folder) return order.out / kit / ".kept";
    return {};
}

}  // namespace

report::AuditReport audit_kit(Disk& disk, const Order& order, const Path& scratch, Progress& progress) {
    const ReadKit kit = read(disk, order);
    const ProofsFile proofs = read_proofs(disk, order, kit.manifest);  // a slip in it is told before the work
    engine::Kept kept = kept_of(disk, order, kit.manifest.kit, engine::Kept::Use::reading_and_adding);
    const Prepared prepared(disk, order, kit, kept, progress);
    const Path made_folder = scratch / "made", opened = scratch / "published";
    for (const Path& folder : {made_folder, opened}) disk.make_folders(folder);
    Made made = make(disk, order, prepared, kept, made_folder, Rendering::all, progress);
    judge_published(disk, order, prepared, kept, opened, made);
    if (order.text) audit_text(disk, *order.text, prepared, made.report.findings);
    audit_proofs(disk, order, prepared, proofs, made_folder, scratch / "proofing", made);
    made.report.tried = prepared.rules.what_was_tried();
    made.report.untried = prepared.rules.what_was_not_tried();
    order_findings(made.report.findings);
    keep(kept);
    return std::move(made.report);
}

report::AuditReport audit_bundle(Disk& disk, const Order& order, const Path& zip, const Path& scratch, Progress& progress) {
    const kit::Pipeline pipeline = kit::read_pipeline(disk, order.pipeline);
    const checks::Rules rules(pipeline.checks, {});
    report::AuditReport report = begun(order, shown_name(zip));
    engine::Kept kept(disk, kept_for_bundle(disk, order, shown_name(zip)));
    std::vector<OpenedBundle> bundles;
    bundles.push_back(open_bundle(disk, zip, shown_name(zip), scratch));
    checks::check_bundle(rules, bundles.front().packed, report.findings);
    judge_bundles(disk, pdfs_of(bundles, nullptr, pipeline), nullptr, all_whole(bundles), rules, kept, engine::Jobs(order.jobs), progress, report);
    keep(kept);
    return ended(rules, std::move(report));
}

report::AuditReport audit_release(Disk& disk, const Order& order, const Path& folder, const Path& scratch, Progress& progress) {
    const kit::Pipeline pipeline = kit::read_pipeline(disk, order.pipeline);
    const checks::Rules rules(pipeline.checks, {});
    report::AuditReport report = begun(order, shown_name(folder));
    record::ReleaseRecord record;
    rules.tried("record-readable");
    try {
        record = record::read_release_record(read_text(disk, folder / "release.json", std::uint64_t{64} << 20), "release.json");
    } catch (const Fault& fault) {
        rules.say(report.findings, damaged_record(fault));
        return ended(rules, std::move(report));
    }
    report.subject = record.kit + " " + record.version;
    engine::Kept kept(disk, kept_beside(folder));
    const std::vector<OpenedBundle> bundles = open_release(disk, rules, record, pipeline.papers, std::nullopt, folder, scratch, report.findings);
    judge_bundles(disk, pdfs_of(bundles, &record, pipeline), &record, all_whole(bundles), rules, kept, engine::Jobs(order.jobs), progress, report);
    keep(kept);
    return ended(rules, std::move(report));
}

}  // namespace qw::release
