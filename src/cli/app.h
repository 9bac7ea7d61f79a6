// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"

#include <string>

namespace qw::cli {

/// What main knows and nobody else: built-in paths and the version.
struct Program {
    std::string version;
    Path pipeline_beside_source;
};

/// Understands the arguments, runs one command, prints what it has to say. Returns the exit status: 0 done, 1 done and
/// found unfit, 2 not understood, 3 could not be carried out.
int run(int argc, char** argv, const Program& program);

}  // namespace qw::cli
