// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/common.h"

#include "base/fault.h"

#include <cstdio>
#include <cstdlib>
#include <thread>

namespace qw::cli {

namespace {

std::optional<std::int64_t> source_date_epoch() {
    const char* text = std::getenv("SOURCE_DATE_EPOCH");
    if (!text || !*text) return std::nullopt;
    std::int64_t value = 0;
    for (const char* c = text; *c; ++c) {
        if (*c < '0' || *c > '9' || c - text > 14) {
            throw Fault(FaultKind::not_understood, {"bad-date", {"SOURCE_DATE_EPOCH", 0, 0}, "'" + std::string(text) + "' is no number of seconds",
                                                    "seconds since 1970-01-01 UTC, digits only", "unset it or mend it"});
        }
        value = value * 10 + (*c - '0');
    }
    return value;
}

}  // namespace

Path Session::pipeline() const {
    Path folder = program.pipeline_beside_source;
    if (const char* named = std::getenv("QUIREWRIGHT_PIPELINE"); named && *named) folder = named;
    if (!common.pipeline.empty()) folder = common.pipeline;
    const auto stat = disk->stat(folder / "papers.yaml");
    if (!stat) {
        throw Fault(FaultKind::not_understood, {"no-pipeline", {folder.string(), 0, 0}, "there is no papers.yaml in the pipeline folder",
                                                "the project's pipeline folder", "name it with --pipeline or QUIREWRIGHT_PIPELINE"});
    }
    return folder;
}

release::Order Session::order(const Path& kit) const {
    release::Order order;
    order.kit = kit;
    order.pipeline = pipeline();
    order.out = common.out;
    order.jobs = common.jobs ? common.jobs : std::max(1u, std::thread::hardware_concurrency());
    order.memory = std::uint64_t{common.memory_mib} << 20;
    if (!common.printer.empty()) order.printer = common.printer;
    order.strict = common.strict;
    order.source_date_epoch = source_date_epoch();
    order.tool = "quirewright " + program.version;
    return order;
}

void add_common(CLI::App& command, Common& common, bool makes_files) {
    command.add_option("--pipeline", common.pipeline, "Folder with the shared templates and data")->type_name("FOLDER");
    command.add_option("--printer", common.printer, "Leave this printer's margins instead of the kit's (a name from printers.yaml)")->type_name("NAME");
    command.add_flag("--json", common.json, "Print one JSON document on standard output");
    command.add_flag("--verbose", common.verbose, "Log every step to standard error");
    if (!makes_files) return;
    command.add_option("--out", common.out, "Folder that releases are published in")->type_name("FOLDER")->capture_default_str();
    command.add_option("--jobs", common.jobs, "How many things are done at once (default: the number of processors)")->type_name("N")->check(CLI::Range(1u, 64u));
    command.add_option("--memory", common.memory_mib, "MiB that may be used; fewer jobs run where pictures are large")
        ->type_name("MIB")
        ->check(CLI::Range(64u, 1u << 20))
        ->capture_default_str();
    command.add_flag("--strict", common.strict, "Warnings count as errors");
}

void print(const std::string& text) {
    if (std::fwrite(text.data(), 1, text.size(), stdout) != text.size() || std::fflush(stdout) != 0) {
        throw Fault(FaultKind::not_carried_out, {"output", {"standard output", 0, 0}, "it could not be written", "", "is the disk full, or was the pipe closed?"});
    }
}

}  // namespace qw::cli
