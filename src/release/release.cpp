// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/release.h"

#include "release/make.h"
#include "release/publish.h"

namespace qw::release {

namespace {

void write_report(Disk& disk, const Path& folder, const std::string& name, const report::AuditReport& report) {
    write_file(disk, folder / (name + ".html"), report::to_html(report));
    write_file(disk, folder / (name + ".json"), report::to_json(report));
}

}  // namespace

Released release(Disk& disk, const Order& order, Progress& progress) {
    const ReadKit kit = read(disk, order);
    Publication publication(disk, order.out, kit.manifest.kit, kit.manifest.version);
    engine::Kept kept = kept_of(disk, order, kit.manifest.kit, engine::Kept::Use::reading);
    const Prepared prepared(disk, order, kit, kept, progress);
    Made made = make(disk, order, prepared, kept, publication.staging(), Rendering::samples, progress);

    Released released{std::move(made.report), false, order.out / kit.manifest.kit, std::move(made.record)};
    if (!released.report.fit_for_sale()) {
        write_report(disk, released.folder, "last-audit", released.report);
        return released;
    }
    write_report(disk, publication.staging(), "audit", released.report);
    write_file(disk, publication.staging() / "release.json", record::to_json(released.record));
    progress.begin("publishing", 1);
    publication.publish();
    released.published = true;
    released.folder /= kit.manifest.version;
    return released;
}

}  // namespace qw::release
