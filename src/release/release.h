// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"
#include "base/edition.h"
#include "journal/measures.h"
#include "kit/pipeline.h"
#include "parts/told.h"
#include "record/release_record.h"
#include "release/order.h"
#include "report/audit_report.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace qw::release {

struct Released {
    report::AuditReport report;
    bool published = false;  ///< false: the report has errors, and the previous release is as it was
    Path folder;             ///< dist/<kit>/<version>, or dist/<kit> with last-audit.html when not published
    record::ReleaseRecord record;
};

/// Artwork to bundle: read, look, plan, draw, prove, pack, prove the bundle, publish (design of the house, DEVELOPERS.md).
/// An error finding publishes nothing. Throws Fault; whatever is thrown, the previous release is as it was.
Released release(Disk& disk, const Order& order, Progress& progress);

/// The same work in a folder of its own that is removed again: what a release would say, every page rendered; and what lies
/// published under the kit's version. What was found out by rendering is kept in <out>/<kit>/.kept when that folder exists.
report::AuditReport audit_kit(Disk& disk, const Order& order, const Path& scratch, Progress& progress);
/// A release folder or a bundle, from outside: digests, names, every page. Damage is a finding, not a fault. What has to be
/// unpacked in order to look at it goes below `scratch`, an empty folder.
report::AuditReport audit_release(Disk& disk, const Order& order, const Path& folder, const Path& scratch, Progress& progress);
report::AuditReport audit_bundle(Disk& disk, const Order& order, const Path& zip, const Path& scratch, Progress& progress);

/// The numbers for one size. `percent` is the buyer's own percentage, 30 to 103.
struct Asked {
    std::optional<std::string> paper;  ///< "a4" or a PWG name; default: the kit's first
    std::optional<std::string> print;
    double percent = 100;
};
struct Measured {
    std::string kit;
    std::shared_ptr<const kit::JournalTemplate> journal;  ///< what `measures` points into
    journal::Measures measures;                           ///< its findings are the journal's and the parts'
    std::vector<parts::ToldPart> parts;                   ///< in the order of the manifest
};
Measured measure(Disk& disk, const Order& order, const Asked& asked);

/// A starter kit in a new or empty folder, named after it. Returns the kit's name.
std::string begin_kit(Disk& disk, const Path& pipeline, const Path& folder);

}  // namespace qw::release
