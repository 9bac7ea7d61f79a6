// SPDX-License-Identifier: GPL-3.0-or-later
#include "record/release_record.h"

#include "base/fault.h"

#include <algorithm>

namespace qw::record {

namespace {

constexpr const char* own_name = "contents.txt";

/// sha256sum marks lines with such names in its own way, which not every program that reads them knows.
bool needs_marking(const std::string& path) { return path.find_first_of("\\\n\r") != std::string::npos; }

}  // namespace

std::string contents_text(const std::vector<File>& files) {
    std::vector<const File*> listed;
    for (const File& file : files)
        if (file.path != own_name) listed.push_back(&file);
    std::sort(listed.begin(), listed.end(), [](const File* a, const File* b) { return a->path < b->path; });
    std::string text;
    for (const File* file : listed) {
        if (needs_marking(file->path))
            throw Fault(FaultKind::not_carried_out, {"bundle", {own_name, 0, 0}, "a file's name has a backslash or a line's end in it", "", "rename it"});
        text += file->sha256 + "  " + file->path + "\n";
    }
    return text;
}

}  // namespace qw::record
