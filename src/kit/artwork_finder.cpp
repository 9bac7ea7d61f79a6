// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/artwork_finder.h"

#include "base/words.h"
#include "kit/glob.h"
#include "kit/node_kind.h"

#include <algorithm>

namespace qw::kit {

namespace {

constexpr std::size_t longest_part = 255;  // of a path; what the usual file systems accept
constexpr std::size_t longest_path = 1024;

std::vector<std::string> parts_of(const std::string& path) {
    std::vector<std::string> parts{""};
    for (const char c : path) {
        if (c == '/') parts.emplace_back();
        else parts.back() += c;
    }
    return parts;
}

bool printable(const std::string& name) {
    return !bad_utf8_at(name) &&
           std::none_of(name.begin(), name.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; });
}

bool names_drive(const std::string& text) {
    return text.size() >= 2 && text[1] == ':' && ((text[0] >= 'a' && text[0] <= 'z') || (text[0] >= 'A' && text[0] <= 'Z'));
}

/// The name that was probably meant: the same but for capitals, or else the nearest. Nothing when it cannot be shown.
std::optional<std::string> name_meant(const std::string& written, const std::vector<std::string>& names) {
    const auto same = std::find_if(names.begin(), names.end(), [&](const std::string& name) { return in_lower_case(name) == in_lower_case(written); });
    const auto near = same != names.end() ? std::optional(*same) : nearest_word(written, names);
    return near && printable(*near) ? near : std::nullopt;
}

std::string shown_path(const std::vector<std::string>& folders, const std::string& name) {
    std::string path;
    for (const std::string& folder : folders) path += folder + "/";
    return path + name;
}

}  // namespace

std::vector<ArtworkFile> ArtworkFinder::find(const Node& patterns, Faults& faults) {
    std::vector<ArtworkFile> found;
    if (patterns.kind == Node::Kind::list && patterns.items.empty())
        faults.add("empty-list", patterns.mark, "the list of files is empty", "a path such as art/pages/*.png");
    const bool one = patterns.kind != Node::Kind::list;
    for (std::size_t i = 0; i < (one ? 1 : patterns.items.size()); ++i) {
        const Node& node = one ? patterns : patterns.items[i];
        const std::string* text = scalar_text(node, faults, "a path such as art/pages/*.png, or a list of them");
        if (!text) continue;
        Pattern pattern{parts_of(*text), "", *text, node.mark};
        pattern.name = pattern.folders.back();
        pattern.folders.pop_back();
        if (!check(pattern, faults)) continue;
        std::erase(pattern.folders, ".");
        find_one(pattern, faults, found);
    }
    return found;
}

bool ArtworkFinder::check(const Pattern& pattern, Faults& faults) const {
    const auto refuse = [&](const std::string& code, const std::string& why, const std::string& mend) {
        faults.add(code, pattern.mark, in_quotes(pattern.text) + " " + why, "a path inside the kit, such as art/pages/*.png", mend);
        return false;
    };
    const std::vector<std::string>& folders = pattern.folders;
    const auto any = [&](auto&& is) { return std::any_of(folders.begin(), folders.end(), is) || is(pattern.name); };
    if (pattern.text.empty()) return refuse("bad-path", "names no file", "");
    if (!printable(pattern.text)) return refuse("bad-path", "holds a control character", "give the file another name");
    if (pattern.text.starts_with('/') || names_drive(pattern.text))
        return refuse("leaves-kit", "is an absolute path", "write it from the kit's folder on");
    if (any([](const std::string& part) { return part == ".."; }))
        return refuse("leaves-kit", "leads out of the kit with '..'", "move the file into the kit");
    if (pattern.text.find('\\') != std::string::npos) return refuse("bad-path", "holds a backslash", "part folders with '/'");
    if (pattern.text.size() > longest_path || any([](const std::string& part) { return part.size() > longest_part; }))
        return refuse("bad-path", "is too long", "");
    if (pattern.name.empty() || pattern.name == ".")
        return refuse("bad-path", "names a folder", "write '" + pattern.text + (pattern.name.empty() ? "" : "/") + "*.png'");
    if (std::any_of(folders.begin(), folders.end(), [](const std::string& part) { return part.empty(); }))
        return refuse("bad-path", "has two '/' in a row", "write one");
    if (std::any_of(folders.begin(), folders.end(), has_wildcards))
        return refuse("bad-path", "has a wildcard in the name of a folder", "write a list, one line for each folder");
    return true;
}

bool ArtworkFinder::inside(const Path& real) const {
    return std::mismatch(folder_.begin(), folder_.end(), real.begin(), real.end()).first == folder_.end();
}

std::optional<Path> ArtworkFinder::folder_of(const Pattern& pattern, Faults& faults) {
    Path real = folder_;
    std::string shown;
    for (const std::string& part : pattern.folders) {
        const auto next = disk_.resolve(real / part);
        const auto there = next ? disk_.stat(*next) : std::nullopt;
        if (!there || there->type != FileType::folder) {
            const auto near = name_meant(part, disk_.list(real));
            faults.add("missing-folder", pattern.mark, "there is no folder " + in_quotes(shown + part) + " in the kit", "",
                       near ? "write '" + shown + *near + "'" : "");
            return std::nullopt;
        }
        if (!inside(*next)) {
            faults.add("leaves-kit", pattern.mark, in_quotes(shown + part) + " is a link that leads out of the kit",
                       "a folder inside the kit", "move the folder into the kit");
            return std::nullopt;
        }
        real = *next;
        shown += part + "/";
    }
    return real;
}

void ArtworkFinder::find_one(const Pattern& pattern, Faults& faults, std::vector<ArtworkFile>& found) {
    const auto folder = folder_of(pattern, faults);
    if (!folder) return;
    if (!has_wildcards(pattern.name)) {
        if (disk_.stat(*folder / pattern.name)) return add(pattern, *folder, pattern.name, faults, found);
        const auto near = name_meant(pattern.name, disk_.list(*folder));
        faults.add("missing-file", pattern.mark, "there is no file " + in_quotes(pattern.text) + " in the kit", "",
                   near ? "write '" + shown_path(pattern.folders, *near) + "'" : "");
        return;
    }
    const std::vector<std::string> names = disk_.list(*folder);
    std::vector<std::string> matched;
    for (const std::string& name : names) {
        if (!glob_matches(pattern.name, name)) continue;
        const auto real = disk_.resolve(*folder / name);
        const auto there = real ? disk_.stat(*real) : std::nullopt;
        if (!there || there->type != FileType::folder) matched.push_back(name);  // folders are not what a pattern of files means
    }
    std::sort(matched.begin(), matched.end(), natural_less);
    if (matched.empty()) tell_nothing_found(pattern, names, faults);
    for (const std::string& name : matched) add(pattern, *folder, name, faults, found);
}

void ArtworkFinder::tell_nothing_found(const Pattern& pattern, const std::vector<std::string>& names, Faults& faults) const {
    const auto other_case =
        std::find_if(names.begin(), names.end(), [&](const std::string& name) { return glob_matches(in_lower_case(pattern.name), in_lower_case(name)); });
    const bool showable = other_case != names.end() && printable(*other_case);
    faults.add("empty-glob", pattern.mark, "no file matches " + in_quotes(pattern.text), "at least one file",
               showable ? "capitals count: there is " + in_quotes(*other_case) : "put the artwork there, or correct the path");
}

void ArtworkFinder::add(const Pattern& pattern, const Path& in, const std::string& name, Faults& faults, std::vector<ArtworkFile>& found) {
    const std::string shown = shown_path(pattern.folders, name);
    const auto refuse = [&](const std::string& code, const std::string& what, const std::string& mend) {
        faults.add(code, pattern.mark, what, "", mend);
    };
    if (!printable(name))
        return refuse("bad-file-name", "the file name " + in_quotes(shown) + " holds a control character or is not UTF-8",
                      "give the file another name");
    const auto real = disk_.resolve(in / name);
    const auto there = real ? disk_.stat(*real) : std::nullopt;
    if (!there) return refuse("broken-link", in_quotes(shown) + " is a link that leads nowhere", "put the file in its place");
    if (!inside(*real))
        return refuse("leaves-kit", in_quotes(shown) + " is a link that leads out of the kit", "put the file itself into the kit");
    if (there->type == FileType::folder) return refuse("not-a-file", in_quotes(shown) + " is a folder", "write '" + shown + "/*.png'");
    if (there->type != FileType::file) return refuse("not-a-file", in_quotes(shown) + " is no ordinary file", "put a file in its place");
    const bool twice = std::any_of(found.begin(), found.end(), [&](const ArtworkFile& file) { return file.shown == shown; });
    if (twice) return refuse("duplicate-file", in_quotes(shown) + " is named a second time", "name each file once");
    found.push_back({*real, shown, pattern.mark});
}

}  // namespace qw::kit
