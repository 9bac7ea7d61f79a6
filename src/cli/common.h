// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/app.h"
#include "release/order.h"

#include <CLI/CLI.hpp>

#include <functional>
#include <memory>
#include <string>

namespace qw::cli {

/// Options that every command understands, as they were typed.
struct Common {
    std::string pipeline, out = "dist", printer;
    unsigned jobs = 0;        ///< 0: as many as there are processors
    unsigned memory_mib = 1024;
    bool strict = false, json = false, verbose = false;
};

/// A command: adds itself to the app; `run` is called once its arguments are understood and returns the exit status.
struct Session {
    Common common;
    Program program;
    std::unique_ptr<Disk> disk;
    std::function<int()> chosen;  ///< set by the command that was asked for

    /// The order that the common options ask for. Throws Fault (not_understood), also for a bad SOURCE_DATE_EPOCH.
    release::Order order(const Path& kit) const;
    Path pipeline() const;
};

/// Adds the named common options to a command.
void add_common(CLI::App& command, Common& common, bool makes_files);

void add_release(CLI::App& app, Session& session);
void add_audit(CLI::App& app, Session& session);
void add_measure(CLI::App& app, Session& session);
void add_begin(CLI::App& app, Session& session);
void add_rule(CLI::App& app, Session& session);

/// Standard output, all at once; a closed pipe or a full disk is a Fault.
void print(const std::string& text);

}  // namespace qw::cli
