// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"

#include <string>
#include <vector>

namespace qw::proof {

/// For each page of a PDF, in order, the SHA-256 of what it puts on paper: its content (decoded, so that it may have been
/// packed anew), those of its resources that the content names, with all they refer to (streams as they are stored), its
/// boxes as they take effect, Rotate, UserUnit, its transparency group, and the appearances of its annotations. Object
/// numbers, other pages, titles, dates and metadata leave it as it is; so the same page has the same digest in a file with
/// other pages. A font that is embedded as a subset is a resource like any other: where pages share one, a letter that is
/// new in the file changes the digest of all of them.
///
/// A page that cannot be read has an empty digest. Throws Fault: not_understood when the file cannot be opened as a PDF,
/// the disk's own when that fails. Each stream is read once, however many pages share it; memory: one page's content.
std::vector<std::string> page_digests(Disk& disk, const Path& path);

}  // namespace qw::proof
