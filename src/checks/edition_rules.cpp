// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/pdf_rules.h"

#include <algorithm>
#include <map>
#include <set>

namespace qw::checks {

namespace {

constexpr const char* released_anew = "Release the kit again, and report it if it stays";

/// "letter/borderless/journal-pages.pdf" → "letter/borderless" and "journal-pages.pdf".
std::string folder_of(const std::string& path) { return path.substr(0, std::min(path.rfind('/'), path.size())); }
std::string name_of(const std::string& path) { return path.substr(path.rfind('/') + 1); }

/// Digests of what a page shows, in the order in which it is painted.
using Shown = std::vector<std::string>;

std::vector<Shown> pages_of(const SeenPdf& file) {
    std::vector<Shown> pages;
    for (const proof::PageFacts& page : file.facts->pages) {
        Shown shown;
        for (const proof::PlacedPicture& picture : page.pictures) shown.push_back(picture.stream_sha256);
        pages.push_back(std::move(shown));
    }
    return pages;
}

std::set<std::string> all_of(const std::vector<Shown>& pages) {
    std::set<std::string> all;
    for (const Shown& page : pages) all.insert(page.begin(), page.end());
    return all;
}

/// What most of them have; of what equally many have, the first.
template <typename Value>
std::size_t usual(const std::vector<Value>& values) {
    std::size_t best = 0, most = 0;
    for (std::size_t i = 0; i < values.size(); ++i) {
        const auto times = static_cast<std::size_t>(std::count(values.begin(), values.end(), values[i]));
        if (times > most) {
            most = times;
            best = i;
        }
    }
    return best;
}

void say(const Rules& rules, const char* rule, const SeenPdf& file, int page, std::string measured, std::string limit, std::string message, Findings& findings) {
    rules.say(findings, {rule, Level::error, file.path, page, 0, std::move(measured), std::move(limit), std::move(message), released_anew});
}

/// The same set on several papers and prints shows the same pictures in the same order. Sheets of parts are filled as each
/// paper allows; of them the pictures must be the same ones.
void check_pictures(const Rules& rules, const std::vector<const SeenPdf*>& editions, Findings& findings) {
    std::vector<std::vector<Shown>> pages;
    std::vector<std::set<std::string>> sets;
    for (const SeenPdf* file : editions) {
        pages.push_back(pages_of(*file));
        sets.push_back(all_of(pages.back()));
    }
    const bool filled_by_paper = editions.front()->role == "part" ||
                                 (editions.front()->role.empty() &&
                                  std::any_of(pages.begin(), pages.end(), [&](const auto& one) { return one.size() != pages.front().size(); }));
    const std::size_t model = filled_by_paper ? usual(sets) : usual(pages);
    for (std::size_t i = 0; i < editions.size(); ++i) {
        rules.tried("editions-same-pictures");
        if (filled_by_paper ? sets[i] == sets[model] : pages[i] == pages[model]) continue;
        const std::size_t both = std::min(pages[i].size(), pages[model].size());
        std::size_t page = 0;
        while (page < both && pages[i][page] == pages[model][page]) ++page;
        const bool counts = pages[i].size() != pages[model].size() && page == both;
        say(rules, "editions-same-pictures", *editions[i], filled_by_paper || counts ? 0 : static_cast<int>(page) + 1,
            counts ? std::to_string(pages[i].size()) + " pages" : "other pictures",
            (counts ? std::to_string(pages[model].size()) + " pages" : "the pictures") + std::string(" of ") + editions[model]->path,
            "The same set shows something else on another paper or print", findings);
    }
}

void check_turns(const Rules& rules, const std::vector<const SeenPdf*>& editions, Findings& findings) {
    std::vector<std::string> turns;
    for (const SeenPdf* file : editions) turns.push_back(file->facts->duplex);
    const std::size_t model = usual(turns);
    for (std::size_t i = 0; i < editions.size(); ++i) {
        rules.tried("editions-same-turn");
        if (turns[i] != turns[model])
            say(rules, "editions-same-turn", *editions[i], 0, turns[i].empty() ? "no Duplex" : "Duplex " + turns[i], "Duplex " + turns[model],
                "The same set turns over another edge on another paper or print", findings);
    }
}

/// Every edition has each file that one of them has; every paper each sheet that serves its prints.
void check_complete(const Rules& rules, const std::map<std::string, std::set<std::string>>& names_by_folder, Findings& findings) {
    for (const bool of_prints : {true, false}) {
        std::set<std::string> names, folders;
        for (const auto& [folder, in_it] : names_by_folder) {
            if ((folder.find('/') != std::string::npos) != of_prints) continue;
            folders.insert(folder);
            names.insert(in_it.begin(), in_it.end());
        }
        for (const std::string& folder : folders)
            for (const std::string& name : names) {
                rules.tried("editions-complete");
                if (names_by_folder.at(folder).contains(name)) continue;
                rules.say(findings, {"editions-complete", Level::error, folder + "/" + name, 0, 0, "missing", "as in the other editions",
                                     "An edition lacks a file that the others have", released_anew});
            }
    }
}

/// What every paper's buyers need in order to print and cut.
void check_sheets_there(const Rules& rules, const std::map<std::string, std::set<std::string>>& names_by_folder, Findings& findings) {
    std::set<std::string> papers;
    for (const auto& [folder, names] : names_by_folder) papers.insert(folder.substr(0, folder.find('/')));
    for (const std::string& paper : papers)
        for (const char* sheet : {"print-check.pdf", "measurements.pdf", "materials.pdf", "guide.pdf"}) {
            rules.tried("sheets-there");
            const auto found = names_by_folder.find(paper);
            if (found != names_by_folder.end() && found->second.contains(sheet)) continue;
            rules.say(findings, {"sheets-there", Level::error, paper + "/" + sheet, 0, 0, "missing", "one for each paper",
                                 "A sheet that buyers need is not in the bundle", released_anew});
        }
}

/// Subject is "title version, paper …" in every file of a release; a title may hold commas.
std::string kit_of(const SeenPdf& file) {
    const std::string& subject = file.facts->subject;
    return subject.substr(0, std::min(subject.find(", " + file.paper->title), subject.size()));
}

void check_one_kit(const Rules& rules, const std::vector<const SeenPdf*>& files, Findings& findings) {
    std::vector<std::string> kits;
    for (const SeenPdf* file : files) kits.push_back(kit_of(*file));
    const std::size_t model = usual(kits);
    for (std::size_t i = 0; i < files.size(); ++i) {
        rules.tried("file-of-another-kit");
        if (kits[i] != kits[model])
            say(rules, "file-of-another-kit", *files[i], 0, kits[i].empty() ? "no kit named" : kits[i], kits[model],
                "A file is of another kit or version than the rest", findings);
    }
}

}  // namespace

void check_editions(const Rules& rules, const std::vector<SeenPdf>& all, Findings& findings) {
    std::vector<const SeenPdf*> ours;
    std::map<std::string, std::vector<const SeenPdf*>> by_name;
    std::map<std::string, std::set<std::string>> names_by_folder;
    for (const SeenPdf& file : all) {
        if (!file.ours() || !file.paper) continue;
        names_by_folder[folder_of(file.path)].insert(name_of(file.path));
        if (!file.facts->damage.empty() || file.facts->encrypted) continue;  // told by itself
        ours.push_back(&file);
        if (file.print) by_name[name_of(file.path)].push_back(&file);
    }
    if (names_by_folder.empty()) return;
    for (const auto& [name, editions] : by_name) {
        check_pictures(rules, editions, findings);
        check_turns(rules, editions, findings);
    }
    check_complete(rules, names_by_folder, findings);
    check_sheets_there(rules, names_by_folder, findings);
    check_one_kit(rules, ours, findings);
}

}  // namespace qw::checks
