// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"

#include <string>
#include <vector>

namespace qw::type {

/// A face as fontconfig knows it and the Debian package that brings it.
struct Wanted {
    std::string family, style, package;
};

/// The files of exactly those families and styles, TrueType and not variable; never a substitute. A copy below
/// /usr/share/fonts goes before one that a user put elsewhere, so that the same release has the same bytes for every
/// user. Throws Fault (not_carried_out), one note for each face that is missing, naming its package. Reads the
/// machine's font configuration anew at every call.
std::vector<Path> installed_files(const std::vector<Wanted>& wanted);

}  // namespace qw::type
