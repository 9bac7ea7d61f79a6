// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/words.h"
#include "bundle/kinds.h"
#include "checks/told_at_once.h"
#include "checks/zip_rules.h"

#include <algorithm>
#include <map>
#include <set>

namespace qw::checks {

namespace {

using bundle::EntryHeader;

const std::vector<EntryHeader>& headers(const PackedBundle& bundle) { return bundle.content.structure.entries; }

// What lies in it.

/// Types of a Unix mode (POSIX.1, sys/stat.h); a folder's name ends with a slash.
std::string special(const EntryHeader& entry) {
    switch (entry.unix_type()) {
        case 0: case 0100000: return "";
        case 0040000: return entry.is_folder() ? "" : "a folder without its slash";
        case 0120000: return "a symbolic link";
        case 0060000: case 0020000: return "a device";
        case 0010000: return "a pipe";
        case 0140000: return "a socket";
        default: return "a file of no known type";
    }
}

std::string fault_in_folder(const EntryHeader& folder, const std::set<std::string>& all) {
    if (!folder.is_folder()) return "";
    if (folder.size > 0) return std::to_string(folder.size) + " bytes in a folder's entry";
    const auto next = all.upper_bound(folder.called());
    return next != all.end() && next->starts_with(folder.called()) ? "" : "an empty folder";
}

void check_types(const Rules& rules, const PackedBundle& bundle, Findings& findings) {
    const std::size_t count = headers(bundle).size();
    ToldAtOnce specials(rules, bundle, "bundle-special-files", count), folders(rules, bundle, "bundle-folder-entries", count),
        empty(rules, bundle, "bundle-empty-file", count), litter(rules, bundle, "bundle-litter", count);
    std::set<std::string> names;
    for (const EntryHeader& entry : headers(bundle)) names.insert(entry.called());
    for (const EntryHeader& entry : headers(bundle)) {
        specials.add(entry.called(), special(entry));
        folders.add(entry.called(), fault_in_folder(entry, names));
        const bool left = is_litter(entry.called()) || entry.called().starts_with("__MACOSX/");
        if (left && !entry.is_folder()) litter.add(entry.called(), "left by a desktop or an editor");
        else if (!entry.is_folder() && special(entry).empty() && entry.size == 0) empty.add(entry.called(), "0 bytes");
    }
    specials.say("plain files", "The bundle holds links or special files, which lead nowhere on a buyer's computer",
                 "Pack the files that the links lead to", findings);
    folders.say("folders that hold files, and no bytes of their own",
                "A folder in the bundle is empty or holds bytes where no program looks for them", pack_anew, findings);
    empty.say("1 byte or more", "Files in the bundle are empty", "Put the right files in, or leave them out", findings);
    litter.say("none", "The bundle holds what a desktop or an editor left behind; buyers take it for broken pages", "Leave these files out", findings);
}

void check_kinds(const Rules& rules, const PackedBundle& bundle, Findings& findings) {
    const auto& files = bundle.content.entries;
    ToldAtOnce programs(rules, bundle, "bundle-programs", files.size()), archives(rules, bundle, "bundle-nested", files.size());
    for (std::size_t i = 0; i < files.size(); ++i) {
        const EntryHeader& entry = headers(bundle)[i];
        if (entry.is_folder() || is_litter(entry.called()) || entry.called().starts_with("__MACOSX/") || !special(entry).empty()) continue;
        const std::string program = bundle::program_in(entry.called(), files[i].begins);
        programs.add(entry.called(), program);
        if (program.empty()) archives.add(entry.called(), bundle::archive_in(entry.called(), files[i].begins));
    }
    programs.say("nothing that runs", "The bundle holds programs or scripts, which shops and virus scanners refuse", "Leave them out", findings);
    archives.say("files that open as they are", "The bundle holds archives; phones do not open them, and what is in them was not judged",
                 "Put the files in by themselves", findings);
}

// Names.

void check_doubles(const Rules& rules, const PackedBundle& bundle, Findings& findings) {
    std::map<std::string, std::string> files, folders;  // folded, and as it was first written
    ToldAtOnce told(rules, bundle, "bundle-name-doubles", headers(bundle).size());
    for (const EntryHeader& entry : headers(bundle)) {
        const std::string name = bundle::folded(entry.is_folder() ? entry.called().substr(0, entry.called().size() - 1) : entry.called());
        for (std::size_t slash = name.find('/'); slash != std::string::npos; slash = name.find('/', slash + 1))
            folders.emplace(name.substr(0, slash), entry.called());
        if (entry.is_folder()) folders.emplace(name, entry.called());
        else if (const auto [twin, fresh] = files.emplace(name, entry.called()); !fresh) told.add(entry.called(), "and " + bundle::shown_name(twin->second));
    }
    for (const auto& [name, written] : files)
        if (const auto folder = folders.find(name); folder != folders.end()) told.add(written, "and the folder of " + bundle::shown_name(folder->second));
    told.say("names that differ in more than capitals", "Names are the same on some systems, where one of the files takes the other's place",
             "Rename one of them", findings);
}

/// Of how many characters a path is when it is unpacked where most are: C:\Users\NAME\Downloads\BUNDLE\PATH, with a NAME of 20
/// characters.
std::size_t length_unpacked(const PackedBundle& bundle, const std::string& name) {
    constexpr std::size_t before = std::string_view("C:\\Users\\").size() + 20 + std::string_view("\\Downloads\\").size();
    const std::size_t dot = bundle.path.rfind('.');
    return before + bundle::length_in_utf16(bundle.path.substr(0, dot)) + 1 + bundle::length_in_utf16(name);
}

void check_lengths(const Rules& rules, const PackedBundle& bundle, Findings& findings) {
    const auto most = static_cast<std::size_t>(rules.limit("bundle-path-length"));
    ToldAtOnce told(rules, bundle, "bundle-path-length", headers(bundle).size());
    for (const EntryHeader& entry : headers(bundle))
        if (const std::size_t length = length_unpacked(bundle, entry.called()); length > most) told.add(entry.called(), std::to_string(length) + " characters");
    told.say(std::to_string(most) + " characters",
             "Paths are too long for Windows when the bundle is unpacked among the downloads of a user whose name has 20 letters",
             "Give files, folders or the bundle shorter names", findings);
}

void check_letters(const Rules& rules, const PackedBundle& bundle, Findings& findings) {
    const std::size_t count = headers(bundle).size();
    ToldAtOnce broken(rules, bundle, "bundle-name-utf8", count), unmarked(rules, bundle, "bundle-name-unmarked", count),
        taken_apart(rules, bundle, "bundle-name-composed", count);
    for (const EntryHeader& entry : headers(bundle)) {
        const bool plain = std::all_of(entry.name.begin(), entry.name.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80; });
        const bool utf8 = !bad_utf8_at(entry.called());
        if ((entry.says_utf8() && bad_utf8_at(entry.name)) || (!entry.unicode_name.empty() && !utf8)) broken.add(entry.called(), "not UTF-8");
        else if (!plain && !entry.says_utf8() && entry.unicode_name.empty()) unmarked.add(entry.called(), "not told as UTF-8");
        else if (utf8 && !bundle::is_composed(entry.called())) taken_apart.add(entry.called(), "letters and accents apart");
    }
    broken.say("UTF-8", "Names are said to be UTF-8 and are not, so some programs refuse the bundle",
               "Rename the files with plain letters, and pack the bundle anew", findings);
    unmarked.say("names that say their encoding", "Names have letters beyond A-Z without saying how they are written; other computers show other letters",
                 "Rename the files with plain letters, or pack them with a program that writes names in UTF-8", findings);
    taken_apart.say("composed letters (form C)",
                    "Names hold letters and their accents apart, as macOS writes them; elsewhere they are shown apart or not found",
                    "Rename the files with plain letters", findings);
}

void check_names_elsewhere(const Rules& rules, const PackedBundle& bundle, Findings& findings) {
    const std::size_t count = headers(bundle).size();
    ToldAtOnce escapes(rules, bundle, "bundle-name-escapes", count), refused(rules, bundle, "bundle-name-portable", count);
    for (const EntryHeader& entry : headers(bundle)) {
        const std::string escape = bundle::escape_in_name(entry.called());
        escapes.add(entry.called(), escape);
        if (escape.empty()) refused.add(entry.called(), bundle::fault_elsewhere(entry.called()));
    }
    escapes.say("paths inside the bundle", "Names lead out of the folder that the bundle is unpacked to, as in an attack", pack_anew, findings);
    refused.say("names that Windows and macOS take", "Names are refused or changed on some systems", "Rename the files: letters, digits, spaces, hyphens", findings);
}

}  // namespace

void check_packed_files(const Rules& rules, const PackedBundle& bundle, Findings& findings) {
    check_types(rules, bundle, findings);
    check_kinds(rules, bundle, findings);
}

void check_packed_names(const Rules& rules, const PackedBundle& bundle, Findings& findings) {
    check_doubles(rules, bundle, findings);
    check_lengths(rules, bundle, findings);
    if (bundle.ours()) return;  // our custom is narrower than what follows
    check_names_elsewhere(rules, bundle, findings);
    check_letters(rules, bundle, findings);
}

}  // namespace qw::checks
