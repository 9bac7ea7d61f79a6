// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/app.h"

#include "base/fault.h"
#include "cli/common.h"
#include "report/measures_report.h"

#include <spdlog/sinks/stdout_sinks.h>
#include <spdlog/spdlog.h>

#include <cstdio>
#include <cstring>
#include <new>

namespace qw::cli {

namespace {

int status_of(FaultKind kind) { return kind == FaultKind::not_understood ? 2 : 3; }

/// --json is honoured even when the arguments were not understood, so that a program always gets its document.
bool asks_for_json(int argc, char** argv) {
    for (int i = 1; i < argc; ++i)
        if (std::strcmp(argv[i], "--json") == 0) return true;
    return false;
}

int tell(const Fault& fault, bool json) {
    if (json) std::fputs(report::faults_json(fault).c_str(), stdout);
    for (const FaultNote& note : fault.notes()) std::fprintf(stderr, "quirewright: %s\n", to_text(note).c_str());
    return status_of(fault.kind());
}

int understood(Session& session) {
    auto logger = spdlog::stderr_logger_mt("quirewright");
    logger->set_pattern("%H:%M:%S.%e %v");
    logger->set_level(session.common.verbose ? spdlog::level::debug : spdlog::level::warn);
    spdlog::set_default_logger(logger);
    return session.chosen();
}

}  // namespace

int run(int argc, char** argv, const Program& program) {
    Session session;
    session.program = program;
    session.disk = real_disk();
    CLI::App app("Quirewright: from a printable kit's artwork and one manifest to a release that can be sold", "quirewright");
    app.require_subcommand(1);
    app.set_version_flag("--version", "quirewright " + program.version);
    app.get_formatter()->column_width(34);
    add_begin(app, session);
    add_release(app, session);
    add_audit(app, session);
    add_measure(app, session);
    add_rule(app, session);
    const bool json = asks_for_json(argc, argv);
    try {
        app.parse(argc, argv);
        return understood(session);
    } catch (const CLI::Success& help) {
        return app.exit(help);
    } catch (const CLI::ParseError& error) {
        return tell(Fault(FaultKind::not_understood,
                          {"arguments", {}, error.what(), "", "`quirewright --help` and `quirewright COMMAND --help` tell what is understood"}),
                    json);
    } catch (const Fault& fault) {
        return tell(fault, json);
    } catch (const std::bad_alloc&) {
        return tell(Fault(FaultKind::not_carried_out, {"memory", {}, "there is not enough memory", "", "close other programs, or use fewer --jobs"}), json);
    } catch (const std::exception& error) {
        return tell(Fault(FaultKind::not_carried_out, {"unexpected", {}, error.what(), "", "this is a fault of the program; please report it"}), json);
    }
}

}  // namespace qw::cli
