// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "support/fault_disk.h"
#include "support/shell.h"

#include <nlohmann/json.hpp>

#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace qw::test {

inline const Path source_folder = QW_SOURCE_DIR;
inline const std::string program = QW_PROGRAM;
/// Where the test [release] has put dist/<kit>/<version>.
inline const Path released = QW_RELEASED;
inline const std::vector<std::string> demo_kits = {"tidewater-almanac", "lamplight-mini"};

inline Path release_of(const std::string& kit) { return released / kit / "1.0.0"; }

/// The program's standard output alone, and its status.
Said quirewright(const std::string& arguments, const Path& folder = released);
/// Its one JSON document; fails the test when it is none.
nlohmann::json quirewright_json(const std::string& arguments, const Path& folder = released);

std::string read(const Path& path);
void write(const Path& path, const std::string& text);
/// A copy of a demo kit that a test may spoil.
Path copy_of_kit(const std::string& kit, const Path& folder);
/// `from` replaced once; fails the test when it is not there.
void replace_in(const Path& path, const std::string& from, const std::string& to);
/// Relative path → SHA-256 of every file below a folder.
std::map<std::string, std::string> digests_below(const Path& folder);
std::vector<Path> files_below(const Path& folder, const std::string& extension);

}  // namespace qw::test
