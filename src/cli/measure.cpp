// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "cli/common.h"
#include "release/release.h"
#include "report/measures_report.h"

namespace qw::cli {

namespace {

struct Arguments {
    std::string kit, paper, print;
    double percent = 100;
};

int measure_one(Session& session, const Arguments& asked) {
    if (!(asked.percent >= 30 && asked.percent <= 103)) {
        throw Fault(FaultKind::not_understood, {"scale", {"--scale", 0, 0}, "the scale is outside what is computed", "30 to 103 per cent",
                                                "drivers enlarge borderless prints by up to 2.5 %; below 30 % nothing can be sewn"});
    }
    release::Asked what;
    what.percent = asked.percent;
    if (!asked.paper.empty()) what.paper = asked.paper;
    if (!asked.print.empty()) what.print = asked.print;
    const release::Measured measured = release::measure(*session.disk, session.order(asked.kit), what);
    qw::cli::print(session.common.json ? report::to_json(measured.measures, measured.kit, measured.parts)
                                       : report::to_text(measured.measures, measured.kit, measured.parts));
    return has_errors(measured.measures.findings) ? 1 : 0;
}

}  // namespace

void add_measure(CLI::App& app, Session& session) {
    auto* command = app.add_subcommand("measure", "Show every piece, station and length for one print size");
    command->footer("--scale is the percentage that the buyer chose when printing, 30 to 103.");
    auto asked = std::make_shared<Arguments>();
    command->add_option("KIT", asked->kit, "Folder with kit.yaml")->required();
    command->add_option("--paper", asked->paper, "letter, a4 or a PWG name (default: the kit's first)")->type_name("PAPER");
    command->add_option("--print", asked->print, "borderless or bordered (default: the kit's first)")->type_name("PRINT");
    command->add_option("--scale", asked->percent, "The buyer's percentage")->type_name("PERCENT")->capture_default_str();
    add_common(*command, session.common, false);
    command->callback([&session, asked] { session.chosen = [&session, asked] { return measure_one(session, *asked); }; });
}

}  // namespace qw::cli
