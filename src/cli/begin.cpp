// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/common.h"
#include "release/release.h"

namespace qw::cli {

void add_begin(CLI::App& app, Session& session) {
    auto* command = app.add_subcommand("begin", "Make a starter kit that releases as it stands");
    command->footer("Replace the pictures under art/ by your own and change kit.yaml; then run: quirewright release FOLDER");
    auto folder = std::make_shared<std::string>();
    command->add_option("FOLDER", *folder, "A folder that does not exist yet, or is empty")->required();
    command->add_option("--pipeline", session.common.pipeline, "Folder with the shared templates and data")->type_name("FOLDER");
    command->add_flag("--json", session.common.json, "Print one JSON document on standard output");
    command->callback([&session, folder] {
        session.chosen = [&session, folder] {
            const std::string kit = release::begin_kit(*session.disk, session.pipeline(), *folder);
            print(session.common.json ? "{\"kit\":\"" + kit + "\"}\n"
                                      : "began " + kit + " in " + *folder + "\nchange " + (Path(*folder) / "kit.yaml").string() +
                                            " and the pictures under art/, then run: quirewright release " + *folder + "\n");
            return 0;
        };
    });
}

}  // namespace qw::cli
