// SPDX-License-Identifier: GPL-3.0-or-later
// What unzip, zipinfo, bsdtar and Python's zipfile say of the corpus's zips, beside what we say. Where they can judge a fact, ours
// agrees; where it does not, both answers are told.
#include "corpus/cases.h"

#include "base/words.h"
#include "bundle/zip.h"
#include "support/shell.h"

#include <algorithm>
#include <map>

namespace qw::corpus {

namespace {

std::string hex(const std::string& bytes) {
    std::string text;
    for (const char c : bytes) {
        const auto byte = static_cast<unsigned char>(c);
        text += {"0123456789abcdef"[byte >> 4], "0123456789abcdef"[byte & 15]};
    }
    return text;
}

/// Whether we say anything against reading it.
bool unread(const bundle::Content& ours) {
    return !ours.damage.empty() || std::any_of(ours.entries.begin(), ours.entries.end(), [](const bundle::Seen& seen) { return !seen.unread.empty(); });
}
/// Or of its structure.
bool told(const bundle::Content& ours) {
    const auto& zip = ours.structure;
    return unread(ours) || !ours.inflates.empty() || !zip.stray.empty() || !zip.overlaps.empty() || zip.zip64 ||
           std::any_of(zip.entries.begin(), zip.entries.end(), [](const bundle::EntryHeader& entry) { return !entry.disagrees.empty() || entry.zip64; });
}

class Beside {
public:
    Beside(std::string zip, bundle::Content ours, std::vector<std::string>& faults) : zip_(std::move(zip)), ours_(std::move(ours)), faults_(faults) {}

    void python(const nlohmann::json& answer) {
        if (answer.contains("refused")) {
            if (!unread(ours_)) differ("Python refuses it: " + answer["refused"].get<std::string>(), "it can be read");
            return;
        }
        const std::string fault = answer["fault"];
        if (!fault.empty() && !told(ours_)) differ("Python: " + fault, "nothing is told");
        if (fault.empty() && unread(ours_)) differ("Python reads every file", ours_.damage.empty() ? "a file cannot be read" : ours_.damage);
        if (!ours_.structure.damage.empty()) return differ("Python reads its directory", ours_.structure.damage);
        same("comment", answer["comment"], hex(ours_.structure.comment));
        const auto& entries = answer["entries"];
        same("entries", std::to_string(entries.size()), std::to_string(ours_.structure.entries.size()));
        for (std::size_t i = 0; i < std::min(entries.size(), ours_.structure.entries.size()); ++i) entry(entries[i], ours_.structure.entries[i]);
    }

    /// Status 0: no fault; 1: a warning (unzip(1), DIAGNOSTICS). It takes names as bytes, and does not judge whether they are UTF-8.
    void unzip(const test::Said& said) {
        const auto& headers = ours_.structure.entries;
        const bool bad_name = std::any_of(headers.begin(), headers.end(),
                                          [](const bundle::EntryHeader& entry) { return entry.says_utf8() && bad_utf8_at(entry.name); });
        if (said.status == 0 && unread(ours_) && !bad_name) differ("unzip finds no fault", ours_.damage.empty() ? "a file cannot be read" : ours_.damage);
        if (said.status != 0 && !told(ours_)) differ("unzip ends with " + std::to_string(said.status) + ": " + said.text.substr(0, 200), "nothing is told");
    }

    void zipinfo(const test::Said& said) {
        if (said.status == 0 && ours_.structure.damage.empty())
            same("lines of zipinfo", std::to_string(std::count(said.text.begin(), said.text.end(), '\n')),
                 std::to_string(ours_.structure.entries.size()));
    }

    /// Of `-tv` the first letter tells a link.
    void bsdtar(const test::Said& said) {
        if (said.status != 0 || !ours_.structure.damage.empty()) return;
        std::size_t links = 0, ours = 0;
        for (std::size_t at = 0; at < said.text.size(); at = said.text.find('\n', at) + 1) links += said.text[at] == 'l';
        for (const bundle::EntryHeader& entry : ours_.structure.entries) ours += entry.unix_type() == 0120000;
        same("links that bsdtar sees", std::to_string(links), std::to_string(ours));
    }

private:
    void entry(const nlohmann::json& theirs, const bundle::EntryHeader& ours) {
        same("name", theirs["name"], hex(ours.name));
        const std::map<std::string, std::uint64_t> numbers{
            {"crc", ours.crc},         {"packed", ours.packed},         {"size", ours.size},     {"method", ours.method}, {"flags", ours.flags},
            {"made_on", ours.made_on}, {"attributes", ours.attributes}, {"offset", ours.offset}, {"date", ours.date},     {"time", ours.time}};
        for (const auto& [key, number] : numbers) same(key.c_str(), std::to_string(theirs[key].get<std::uint64_t>()), std::to_string(number));
        same("comment", theirs["comment"], hex(ours.comment));
    }
    void same(const char* what, const std::string& theirs, const std::string& ours) {
        if (theirs != ours) differ(std::string(what) + " " + theirs.substr(0, 200), ours.substr(0, 200));
    }
    void differ(const std::string& theirs, const std::string& ours) { faults_.push_back(zip_ + ": " + theirs + "; ours: " + ours); }

    std::string zip_;
    bundle::Content ours_;
    std::vector<std::string>& faults_;
};

}  // namespace

std::vector<std::string> judged_zips(const std::vector<NamedZip>& zips, const Path& folder) {
    std::vector<std::string> faults;
    std::string all;
    for (const NamedZip& zip : zips) all += " " + test::quoted(zip.path.string());
    const test::Said said = test::run("python3 " + test::quoted(QW_SOURCE_DIR "/tests/corpus/zips.py") + all, folder);
    const auto python = nlohmann::json::parse(said.text, nullptr, false);
    if (!python.is_array() || python.size() != zips.size()) return {"Python does not answer: " + said.text.substr(0, 400)};
    const auto disk = real_disk();
    for (std::size_t i = 0; i < zips.size(); ++i) {
        const std::string path = test::quoted(zips[i].path.string());
        Beside beside(zips[i].name, bundle::read_zip(*disk, zips[i].path), faults);
        beside.python(python[i]);
        beside.unzip(test::run("unzip -tqq " + path + " 2>&1 </dev/null", folder));
        beside.zipinfo(test::run("zipinfo -1 " + path + " 2>/dev/null", folder));
        beside.bsdtar(test::run("LC_ALL=C.UTF-8 bsdtar -tvf " + path + " 2>/dev/null", folder));
    }
    return faults;
}

}  // namespace qw::corpus
