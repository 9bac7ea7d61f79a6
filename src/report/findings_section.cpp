// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/page_sections.h"

#include "report/grouped.h"
#include "report/html.h"

#include <algorithm>

namespace qw::report {

namespace {

constexpr std::size_t most_pictures = 3, places_open = 6;

std::string link_to_sheet(std::size_t sheet, const std::string& words) { return "<a href=\"#seen-" + std::to_string(sheet) + "\">" + escaped(words) + "</a>"; }

class Teller {
public:
    Teller(const AuditReport& report, Pictures& pictures) : report_(report), pictures_(pictures) {}

    std::string tell(const Told& told, std::size_t number) {
        const Finding& f = told.finding;
        const std::string id = "finding-" + std::to_string(number);
        std::string html = "<article class=\"finding " + name_of(f.level) + "\" id=\"" + id + "\" aria-labelledby=\"" + id + "-says\">\n<h4 id=\"" +
                           id + "-says\">" + std::to_string(number) + ". <span class=\"level\">" + name_of(f.level) + ":</span> " +
                           escaped(f.message) + ".</h4>\n";
        if (!f.mend.empty()) html += "<p class=\"todo\">" + escaped(f.mend) + ".</p>\n";
        html += measure(told) + places(told) + figures(told);
        return html + "<p class=\"small\">Rule <code>" + escaped(f.rule) + "</code></p>\n</article>\n";
    }

private:
    std::string measure(const Told& told) const {
        const std::string limit = told.finding.limit.empty() ? "" : escaped(told.finding.limit);
        if (!told.one_measure) return limit.empty() ? "" : "<p>Limit " + limit + "; what was measured stands beside each place.</p>\n";
        if (told.finding.measured.empty()) return "";
        return "<p>Measured " + escaped(told.finding.measured) + (limit.empty() ? "" : "; limit " + limit) + ".</p>\n";
    }

    /// Artwork is on several sheets, one an edition: the first stands for its set and page, the editions follow.
    std::string sheets_of(const ToldPlace& place) const {
        std::string html;
        for (std::size_t i = 0; i < std::min(place.sheets.size(), places_open); ++i) {
            const SheetRow& row = report_.sheets[place.sheets[i]];
            const bool again = i && set_title(row) == set_title(report_.sheets[place.sheets[i - 1]]) && row.page == report_.sheets[place.sheets[i - 1]].page;
            const std::string edition = edition_title(row);
            html += (i ? "; " : "") + link_to_sheet(place.sheets[i], again && !edition.empty() ? edition : sheet_title(row));
        }
        if (place.sheets.size() > places_open) html += "; and " + std::to_string(place.sheets.size() - places_open) + " more";
        return html;
    }

    std::string place(const Told& told, const ToldPlace& at) const {
        // A page that buyers get is named as the contact sheets name it; its file stands in the table.
        const bool own_page = !at.whole_file && at.sheets.size() == 1 && at.shown.starts_with(report_.sheets[at.sheets.front()].file);
        std::string html = own_page ? "" : escaped(at.shown);
        if (at.whole_file) html += " (the whole file)";
        else if (!at.sheets.empty()) html += (html.empty() ? "" : ": ") + sheets_of(at);
        if (!told.one_measure && !at.measured.empty()) html += " – measured " + escaped(at.measured);
        return html;
    }

    std::string places(const Told& told) const {
        std::vector<std::string> items;
        for (const ToldPlace& at : told.places)
            if (!at.shown.empty() || (!told.one_measure && !at.measured.empty())) items.push_back(place(told, at));
        if (items.empty()) return "";
        if (items.size() == 1) return "<p class=\"places\">Where: " + items.front() + "</p>\n";
        std::string html = "<p>Where:</p>\n<ul class=\"places\">\n", more;
        // One place more is not worth opening a list for.
        const std::size_t open = items.size() <= places_open + 1 ? items.size() : places_open;
        for (std::size_t i = 0; i < items.size(); ++i) (i < open ? html : more) += "<li>" + items[i] + "</li>\n";
        html += "</ul>\n";
        if (more.empty()) return html;
        return html + "<details><summary>and at " + std::to_string(items.size() - open) + " more places</summary>\n<ul class=\"places\">\n" + more +
               "</ul>\n</details>\n";
    }

    /// Of different places first; if these are few, of the same place on another paper or in another print.
    std::vector<std::size_t> worth_showing(const Told& told) const {
        std::vector<std::size_t> sheets;
        const auto add = [&](std::size_t sheet) {
            const SheetRow& row = report_.sheets[sheet];
            const bool there = std::find(sheets.begin(), sheets.end(), sheet) != sheets.end();
            if (!there && !row.picture.empty() && row.geometry.sheet && sheets.size() < most_pictures) sheets.push_back(sheet);
        };
        for (const ToldPlace& at : told.places)
            if (!at.whole_file && !at.sheets.empty()) add(at.sheets.front());
        for (const ToldPlace& at : told.places)
            if (!at.whole_file && told.places.size() == 1)
                for (const std::size_t sheet : at.sheets) add(sheet);
        return sheets;
    }

    std::string figure(const std::string& svg, const std::string& caption) const {
        return svg.empty() ? "" : "<figure>" + svg + "<figcaption>" + caption + "</figcaption></figure>\n";
    }

    std::string figures(const Told& told) {
        std::string html;
        for (const std::size_t sheet : worth_showing(told)) {
            const SheetRow& row = report_.sheets[sheet];
            const std::string words = lines_in_words(row.geometry);
            const std::string label = sheet_title(row) + (row.picture_is_artwork ? ", its artwork in greys. " : ". ") + told.finding.message + ".";
            html += figure(pictures_.with_lines(row, label), escaped(sheet_title(row)) + "." +
                                                                 (row.picture_is_artwork ? " Not rendered: the artwork, in greys." : "") +
                                                                 (words.empty() ? "" : " " + escaped(words)));
            if (told.finding.file == row.file && told.finding.rule.starts_with("misprint"))
                html += figure(pictures_.misprinted(row, sheet_title(row) + ", as a misprint leaves it. " + told.finding.message + "."),
                               escaped(sheet_title(row)) + ", as a driver that enlarges and a sheet that lies aside leave it.");
        }
        return html.empty() ? "" : "<div class=\"shown\">\n" + html + "</div>\n";
    }

    const AuditReport& report_;
    Pictures& pictures_;
};

std::string in_short(const std::vector<ToldSection>& sections) {
    std::vector<std::pair<Level, std::string>> lines;
    std::size_t number = 0;
    for (const ToldSection& section : sections) {
        for (const Told& told : section.told) {
            ++number;
            const std::size_t n = told.places.size();
            lines.emplace_back(told.finding.level, "<li><span class=\"level\">" + name_of(told.finding.level) + "</span> <span><a href=\"#finding-" +
                                                       std::to_string(number) + "\">" + std::to_string(number) + ". " +
                                                       escaped(told.finding.message) + "</a> <span class=\"small\">" + escaped(section.title) +
                                                       (n > 1 ? ", " + std::to_string(n) + " times" : "") + "</span></span></li>\n");
        }
    }
    if (lines.size() < 2) return "";
    std::stable_sort(lines.begin(), lines.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
    std::string html = "<ul class=\"first\" aria-label=\"All findings in short, worst first\">\n";
    for (const auto& line : lines) html += line.second;
    return html + "</ul>\n";
}

}  // namespace

std::string findings_section(const AuditReport& report, const std::vector<ToldSection>& sections, Pictures& pictures) {
    std::string html = "<section aria-labelledby=\"todo\">\n<h2 id=\"todo\">What to do</h2>\n";
    if (sections.empty()) return html + "<p>Nothing. Every check that was made has passed.</p>\n</section>\n";
    html += in_short(sections);
    Teller teller(report, pictures);
    std::string told;
    std::size_t number = 0;
    for (const ToldSection& section : sections) {
        told += "<h3>" + escaped(section.title) + "</h3>\n";
        for (const Told& one : section.told) told += teller.tell(one, ++number);
    }
    if (told.find("<figure>") != std::string::npos) html += key_to_lines();
    return html + told + "</section>\n";
}

}  // namespace qw::report
