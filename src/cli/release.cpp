// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/release.h"

#include "base/fault.h"
#include "cli/common.h"
#include "cli/progress.h"

namespace qw::cli {

namespace {

std::string told(const release::Released& released) {
    std::string text = report::to_text(released.report);
    if (released.published) {
        text += "\npublished " + released.folder.string() + "\n";
        for (const record::Bundle& bundle : released.record.bundles)
            text += "  " + bundle.path + ", " + std::to_string(bundle.entries) + " files, " + std::to_string((bundle.bytes + 999'999) / 1'000'000) + " MB\n";
    } else {
        text += "\nnothing was published; what was there before is untouched. See " + (released.folder / "last-audit.html").string() + "\n";
    }
    return text;
}

int release_all(Session& session, const std::vector<std::string>& kits) {
    int status = 0;
    std::string json;
    for (const std::string& kit : kits) {
        const release::Order order = session.order(kit);
        release::Released released;
        {
            TerminalProgress progress;
            released = release::release(*session.disk, order, progress);
        }
        if (!released.report.fit_for_sale()) status = 1;
        if (!session.common.json) print(told(released));
        else json += (json.empty() ? "" : ",\n") + report::to_json(released.report);
    }
    // One document whatever the number of kits: the report itself for one, a list for several.
    if (session.common.json) print(kits.size() == 1 ? json : "[" + json + "]\n");
    return status;
}

}  // namespace

void add_release(CLI::App& app, Session& session) {
    auto* command = app.add_subcommand("release", "Make, check, bundle and publish a kit");
    command->footer("Publishes OUT/<kit>/<version>/ in one step. With an error nothing is published and the earlier release stays as it was.");
    auto kits = std::make_shared<std::vector<std::string>>();
    command->add_option("KIT", *kits, "Folder with kit.yaml")->required();
    add_common(*command, session.common, true);
    command->callback([&session, kits] { session.chosen = [&session, kits] { return release_all(session, *kits); }; });
}

}  // namespace qw::cli
