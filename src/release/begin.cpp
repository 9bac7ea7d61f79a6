// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/disk.h"
#include "base/fault.h"
#include "bundle/zip.h"
#include "release/release.h"

namespace qw::release {

namespace {

void copy_tree(Disk& disk, const Path& from, const Path& to) {
    disk.make_folders(to);
    for (const std::string& name : disk.list(from)) {
        const auto stat = disk.stat(from / name);
        if (stat && stat->type == FileType::folder) copy_tree(disk, from / name, to / name);
        else if (name != "kit.yaml") copy_file(disk, from / name, to / name);
    }
}

/// "My First Kit" → "my-first-kit"; what is left of a name that has none of the letters is "kit".
std::string plain_name_of(const std::string& folder) {
    std::string name;
    for (const char c : folder) {
        if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) name += c;
        else if (c >= 'A' && c <= 'Z') name += static_cast<char>(c - 'A' + 'a');
        else if (!name.empty() && name.back() != '-') name += '-';
    }
    if (name.size() > 40) name.resize(40);
    while (!name.empty() && name.back() == '-') name.pop_back();
    if (name.empty()) return "kit";
    // "con" and its like are devices on some systems, and the name stands in file names.
    return bundle::fault_in_name(name).empty() ? name : "kit-" + name;
}

/// The starter's manifest with the kit's own name and title in their lines.
std::string named(const std::string& yaml, const std::string& name) {
    std::string title;
    for (std::size_t i = 0; i < name.size(); ++i) {
        const char c = name[i] == '-' ? ' ' : name[i];
        const bool first = i == 0 || name[i - 1] == '-';
        title += first && c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    }
    std::string text;
    for (std::size_t at = 0; at < yaml.size();) {
        const std::size_t end = std::min(yaml.find('\n', at), yaml.size());
        const std::string line = yaml.substr(at, end - at);
        if (line.rfind("kit:", 0) == 0) text += "kit: " + name;
        else if (line.rfind("title:", 0) == 0) text += "title: \"" + title + "\"";
        else text += line;
        text += "\n";
        at = end + 1;
    }
    return text;
}

}  // namespace

std::string begin_kit(Disk& disk, const Path& pipeline, const Path& folder) {
    const Path whole = std::filesystem::absolute(folder).lexically_normal();
    const Path target = whole.has_filename() ? whole : whole.parent_path();
    const auto there = disk.stat(target);
    if (there && (there->type != FileType::folder || !disk.list(target).empty())) {
        throw Fault(FaultKind::not_understood, {"folder-not-empty", {folder.string(), 0, 0}, "there is something in it already",
                                                "a folder that does not exist yet, or is empty", "name another folder; nothing was changed"});
    }
    const std::string name = plain_name_of(target.filename().string());
    disk.make_folders(target.parent_path());
    // Made beside and renamed, so that a full disk or a kill leaves no half a kit.
    const Path part = target.string() + ".part";
    disk.remove(part);
    try {
        copy_tree(disk, pipeline / "starter", part);
        write_file(disk, part / "kit.yaml", named(read_text(disk, pipeline / "starter" / "kit.yaml", 1 << 20), name));
        if (there) disk.remove(target);
        disk.rename(part, target);
    } catch (...) {
        try {
            disk.remove(part);
        } catch (const Fault&) {  // the first fault is the one to tell
        }
        throw;
    }
    return name;
}

}  // namespace qw::release
