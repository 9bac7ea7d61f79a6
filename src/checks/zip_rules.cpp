// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/zip_rules.h"

#include "checks/told_at_once.h"

namespace qw::checks {

namespace {

using bundle::EntryHeader;
using bundle::StrayBytes;

const std::vector<EntryHeader>& headers(const PackedBundle& bundle) { return bundle.content.structure.entries; }
std::string shown(const EntryHeader& entry) { return bundle::shown_name(entry.called()); }

template <typename Fault>
ToldAtOnce told_of_each(const Rules& rules, const PackedBundle& bundle, const char* rule, Fault fault_in) {
    ToldAtOnce told(rules, bundle, rule, headers(bundle).size());
    for (const EntryHeader& entry : headers(bundle))
        told.add(entry.called(), fault_in(entry));
    return told;
}

void check_packing(const Rules& rules, const PackedBundle& bundle, Findings& findings) {
    told_of_each(rules, bundle, "bundle-encrypted", [](const EntryHeader& entry) { return entry.is_encrypted() ? "encrypted" : ""; })
        .say("no password", "Files in the bundle ask for a password, which buyers do not have", pack_anew, findings);
    told_of_each(rules, bundle, "bundle-method",
                 [](const EntryHeader& entry) -> std::string {
                     if (entry.is_encrypted()) return "";
                     if ((entry.flags & 0x20) != 0) return "patched data";
                     return entry.method == 0 || entry.method == 8 ? "" : "method " + std::to_string(entry.method);
                 })
        .say("stored or deflate", "Files are packed in a way that the computers and phones of buyers do not unpack",
             "Pack the bundle anew, by the plain method (deflate)", findings);
    told_of_each(rules, bundle, "bundle-descriptors",
                 [](const EntryHeader& entry) { return entry.has_descriptor() && entry.method == 0 && !entry.is_folder() ? "stored" : ""; })
        .say("sizes before the data of stored files", "Programs that unpack while they download cannot tell where these files end", pack_anew,
             findings);
    rules.tried("bundle-inflates");
    if (!bundle.content.inflates.empty())
        rules.say(findings, {"bundle-inflates", Level::error, bundle.path, 0, 0, bundle.content.inflates, "200 times its size, 2 GiB a file",
                             "The bundle would fill a buyer's disk, and was not unpacked", pack_anew});
}

void check_zip64(const Rules& rules, const PackedBundle& bundle, Findings& findings) {
    const auto most = static_cast<std::size_t>(rules.limit("bundle-zip64"));
    const auto& structure = bundle.content.structure;
    ToldAtOnce told(rules, bundle, "bundle-zip64", 1);
    if (structure.entries.size() > most) told.add(std::to_string(structure.entries.size()) + " entries");
    else if (structure.zip64) told.add("an end record of ZIP64");
    for (const EntryHeader& entry : structure.entries)
        if (entry.zip64) told.add(shown(entry));
    told.say(std::to_string(most) + " entries, none of 4 GiB", "The bundle needs ZIP64, which older programs do not open",
             "Make more bundles of fewer or smaller files, and pack files rather than a stream", findings);
}

std::string where(StrayBytes::Where place) {
    return place == StrayBytes::Where::before ? "before the first file" : place == StrayBytes::Where::after ? "behind the end" : "between files";
}

void check_agreement(const Rules& rules, const PackedBundle& bundle, Findings& findings) {
    told_of_each(rules, bundle, "bundle-headers-agree", [](const EntryHeader& entry) { return entry.disagrees; })
        .say("the same in both headers",
             "The zip tells two things of a file; which one a program believes differs, so buyers may get different files", pack_anew, findings);
    const auto& structure = bundle.content.structure;
    ToldAtOnce overlaps(rules, bundle, "bundle-overlap", structure.entries.size());
    for (const auto& [one, other] : structure.overlaps)
        overlaps.add(shown(structure.entries[other]) + (one == other ? " and the directory" : " and " + shown(structure.entries[one])));
    overlaps.say("each byte belongs to one file", "Files in the zip share their bytes, which virus scanners take for an attack", pack_anew, findings);
    ToldAtOnce stray(rules, bundle, "bundle-stray-bytes", 1);
    for (const StrayBytes& bytes : structure.stray) stray.add(std::to_string(bytes.bytes) + " bytes " + where(bytes.where));
    stray.say("none", "The zip holds bytes that belong to none of its files; some programs refuse it, and nobody sees what they are", pack_anew, findings);
    ToldAtOnce comments(rules, bundle, "bundle-comment", 1 + structure.entries.size());
    const auto text = [](const std::string& comment) { return "'" + bundle::shown_name(comment.substr(0, 60)) + "'"; };
    if (!structure.comment.empty()) comments.add(text(structure.comment));
    for (const EntryHeader& entry : structure.entries)
        if (!entry.comment.empty()) comments.add(shown(entry) + ": " + text(entry.comment));
    comments.say("no comments", "The zip has comments, which are sold with it and which hardly anybody sees",
                 "Read them, and pack the bundle without comments", findings);
}

std::string two_digits(int number) { return (number < 10 ? "0" : "") + std::to_string(number); }
std::string day_of(const EntryHeader& entry) {
    return std::to_string(1980 + (entry.date >> 9)) + "-" + two_digits(entry.date >> 5 & 15) + "-" + two_digits(entry.date & 31);
}

/// Day and time as MS-DOS has them (Microsoft, DosDateTimeToFileTime): year 1980 + bits 9–15, month, day; hours, minutes, half
/// seconds.
std::string fault_in_date(const EntryHeader& entry) {
    if (!Date::read(day_of(entry))) return day_of(entry) + " is no day";
    const int hour = entry.time >> 11, minute = entry.time >> 5 & 63, second = 2 * (entry.time & 31);
    return hour > 23 || minute > 59 || second > 58 ? two_digits(hour) + ":" + two_digits(minute) + ":" + two_digits(second) + " is no time" : "";
}

void check_dates(const Rules& rules, const PackedBundle& bundle, Findings& findings) {
    told_of_each(rules, bundle, "bundle-dates", fault_in_date)
        .say("a day from 1980-01-01 to 2107-12-31", "Files have a date that is none, which some programs refuse or show as nonsense",
             "Save the files again, and pack the bundle anew", findings);
    if (!bundle.date) return;
    told_of_each(rules, bundle, "bundle-date-of-kit",
                 [&](const EntryHeader& entry) { return fault_in_date(entry).empty() && entry.date > bundle.date->dos() ? day_of(entry) : ""; })
        .say(bundle.date->iso(), "Files in the bundle are of a later day than the kit that they were made from",
             "Release the kit again and replace the bundle", findings);
}

}  // namespace

void check_zip(const Rules& rules, const PackedBundle& bundle, Findings& findings) {
    check_packing(rules, bundle, findings);
    check_zip64(rules, bundle, findings);
    check_agreement(rules, bundle, findings);
    check_dates(rules, bundle, findings);
}

}  // namespace qw::checks
