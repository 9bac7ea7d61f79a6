// SPDX-License-Identifier: GPL-3.0-or-later
// Writes the artwork of one kit below its folder.
#pragma once

#include <string>

namespace art {

// `only` draws a single file by its name ("pages/03.png"); empty draws all.
void write_almanac(const std::string& folder, const std::string& only);
// The same for its pieces to cut out and fold ("tags/2.png").
void write_parts(const std::string& folder, const std::string& only);
void write_lamplight(const std::string& folder);
void write_starter(const std::string& folder);

}  // namespace art
