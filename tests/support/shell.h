// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"

#include <string>

namespace qw::test {

/// What a program said (standard output and error together) and how it ended.
struct Said {
    int status = -1;  ///< exit status; -1 when it did not end by itself
    std::string text;
};

/// Runs a command line of the shell, for tools that judge from outside. `folder` is where it runs.
Said run(const std::string& command, const Path& folder);
/// The text within single quotes, as the shell takes it.
std::string quoted(const std::string& text);

}  // namespace qw::test
