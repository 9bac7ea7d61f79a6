// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/told.h"

#include "base/words.h"
#include "report/grouped.h"

#include <algorithm>
#include <map>
#include <set>

namespace qw::report {

namespace {

/// Which sheets a finding is about: by the sheet's own file and page, or by the artwork that it shows.
class SheetFinder {
public:
    explicit SheetFinder(const std::vector<SheetRow>& rows) : rows_(rows) {
        for (std::size_t i = 0; i < rows.size(); ++i) {
            of_file_[rows[i].file].push_back({i, rows[i].page});
            for (const ShownFile& shown : rows[i].artwork) of_artwork_[shown.file].push_back({i, shown.page});
        }
    }

    void find(const Finding& f, ToldPlace& place) const {
        if (const auto own = of_file_.find(f.file); own != of_file_.end()) {
            place.whole_file = f.page == 0;
            add(own->second, f.page, false, place);
        } else if (const auto art = of_artwork_.find(f.file); art != of_artwork_.end()) {
            add(art->second, f.page, true, place);
            keep_editions_named(f.message, place.sheets);
        }
    }

private:
    struct On {
        std::size_t sheet = 0;
        int page = 0;  // of the PDF or of the artwork; 0: it has none
    };
    /// A picture has no pages: whatever page a finding names, it is the whole of it.
    static void add(const std::vector<On>& all, int page, bool artwork, ToldPlace& place) {
        for (const On& on : all)
            if (page == 0 || on.page == page || (artwork && on.page == 0)) place.sheets.push_back(on.sheet);
    }
    /// Artwork lies on a sheet of each edition; a finding that names one of them is about that one.
    void keep_editions_named(const std::string& message, std::vector<std::size_t>& sheets) const {
        std::vector<std::size_t> named;
        for (const std::size_t sheet : sheets)
            if (const std::string edition = edition_title(rows_[sheet]); !edition.empty() && message.find(edition) != std::string::npos) named.push_back(sheet);
        if (!named.empty()) sheets = named;
    }

    const std::vector<SheetRow>& rows_;
    std::map<std::string, std::vector<On>> of_file_, of_artwork_;
};

bool told_alike(const Finding& a, const Finding& b) {
    return a.rule == b.rule && a.level == b.level && a.limit == b.limit && a.message == b.message && a.mend == b.mend;
}

bool ends_with_one_of(std::string name, std::initializer_list<const char*> ends) {
    std::transform(name.begin(), name.end(), name.begin(), [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
    return std::any_of(ends.begin(), ends.end(), [&](const char* end) { return name.ends_with(end); });
}

std::string title_without_sheet(const Finding& f) {
    const auto rule = [&](const char* family) { return f.rule.starts_with(family); };
    if (rule("bundle") || rule("record") || rule("shop") || ends_with_one_of(f.file, {".zip", "release.json", "contents.txt"})) return "Bundle";
    if (rule("artwork") || ends_with_one_of(f.file, {".png", ".jpg", ".jpeg"})) return "Artwork";
    if (rule("text") || rule("listing")) return "Texts";
    if (ends_with_one_of(f.file, {".pdf"})) return "Finished files";
    return "The kit";
}

std::string title_of(const Told& told, const std::vector<SheetRow>& rows) {
    std::set<std::string> sets;
    for (const ToldPlace& place : told.places)
        for (const std::size_t sheet : place.sheets) sets.insert(set_title(rows[sheet]));
    if (sets.empty()) return title_without_sheet(told.finding);
    return sets.size() == 1 ? *sets.begin() : "Several sets";
}

std::vector<Told> told_once(const AuditReport& report) {
    const SheetFinder finder(report.sheets);
    std::vector<Told> all;
    for (const Level level : {Level::error, Level::warning, Level::note}) {
        for (const Finding& f : report.findings) {
            if (f.level != level) continue;
            ToldPlace place{place_of(f), f.measured, {}, false};
            finder.find(f, place);
            auto told = std::find_if(all.begin(), all.end(), [&](const Told& one) { return told_alike(one.finding, f); });
            if (told == all.end()) told = all.insert(all.end(), Told{f, {}, true});
            told->one_measure = told->one_measure && f.measured == told->finding.measured;
            told->places.push_back(std::move(place));
        }
    }
    return all;
}

}  // namespace

std::vector<ToldSection> told_by_sheet(const AuditReport& report) {
    // What is told comes worst first, and a section stands where its first one does: so the worst section comes first.
    std::vector<ToldSection> sections;
    for (Told& told : told_once(report)) {
        const std::string title = title_of(told, report.sheets);
        auto section = std::find_if(sections.begin(), sections.end(), [&](const ToldSection& one) { return one.title == title; });
        if (section == sections.end()) section = sections.insert(sections.end(), ToldSection{title, {}});
        section->told.push_back(std::move(told));
    }
    return sections;
}

std::vector<std::vector<std::size_t>> told_of_sheets(const AuditReport& report, const std::vector<ToldSection>& sections) {
    std::vector<std::vector<std::size_t>> of_sheets(report.sheets.size());
    std::size_t number = 0;
    for (const ToldSection& section : sections) {
        for (const Told& told : section.told) {
            ++number;
            for (const ToldPlace& place : told.places)
                for (const std::size_t sheet : place.sheets)
                    if (!place.whole_file && (of_sheets[sheet].empty() || of_sheets[sheet].back() != number)) of_sheets[sheet].push_back(number);
        }
    }
    return of_sheets;
}

std::string set_title(const SheetRow& row) {
    std::string title = row.set.empty() ? row.file : spaced_name(row.set);
    if (!row.set.empty() && title[0] >= 'a' && title[0] <= 'z') title[0] = static_cast<char>(title[0] - 32);
    return title;
}

std::string edition_title(const SheetRow& row) { return row.paper + (row.paper.empty() || row.print.empty() ? "" : ", ") + row.print; }

std::string sheet_title(const SheetRow& row) {
    const std::string edition = edition_title(row);
    return set_title(row) + ", page " + std::to_string(row.page) + (edition.empty() ? "" : ", " + edition);
}

}  // namespace qw::report
