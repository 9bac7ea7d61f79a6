// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>

namespace qw::bundle {

/// So many of a file's first bytes tell what it is: the mark of a tar archive ends at 262 (POSIX.1, ustar), the header that a
/// program of Windows points to mostly stands before 512.
inline constexpr std::size_t telling_bytes = 512;

/// Why a file is a program or a script that a double click runs, in a few words, or "". By its first bytes where they are
/// plain (PE format, ELF, Mach-O, "#!"), else by its name (Microsoft, "Blocked attachments in Outlook").
std::string program_in(const std::string& name, const std::string& begins);

/// Why a file is an archive, or "": by its first bytes, whatever its name, or by its name. Documents that are zips inside, as
/// .docx, .odt and .epub, are none.
std::string archive_in(const std::string& name, const std::string& begins);

}  // namespace qw::bundle
