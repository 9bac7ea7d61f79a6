// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/page_sections.h"

#include "report/grouped.h"
#include "report/html.h"

#include <algorithm>
#include <map>

namespace qw::report {

namespace {

using Numbers = std::vector<std::size_t>;

std::string told_in_words(const Numbers& told) { return counted(told.size(), "finding"); }

/// Which picture shows a page: its own rendering; the same artwork's on the same page of another edition; the artwork.
struct Stand {
    const SheetRow* row = nullptr;
    std::string says;              ///< what it is, when it is not the page itself
};

class StandIns {
public:
    explicit StandIns(const std::vector<SheetRow>& rows) {
        for (const SheetRow& row : rows)
            if (rendered(row) && !row.artwork.empty()) rendered_.emplace(key(row), &row);
    }

    Stand of(const SheetRow& row) const {
        if (!row.geometry.sheet) return {};
        if (rendered(row)) return {&row, ""};
        const auto other = row.artwork.empty() ? rendered_.end() : rendered_.find(key(row));
        if (other != rendered_.end() && other->second->artwork == row.artwork) return {other->second, "picture from " + edition_title(*other->second)};
        if (row.picture_is_artwork) return {&row, "artwork, in greys"};
        return {nullptr, "no picture"};
    }

private:
    static bool rendered(const SheetRow& row) { return !row.picture.empty() && !row.picture_is_artwork && row.geometry.sheet; }
    static std::pair<std::string, int> key(const SheetRow& row) { return {row.set, row.page}; }
    std::map<std::pair<std::string, int>, const SheetRow*> rendered_;
};

std::string small_page(const SheetRow& row, std::size_t index, const Numbers& told, const Stand& stand, Pictures& pictures) {
    std::string html = "<li id=\"seen-" + std::to_string(index) + "\"><a href=\"#sheet-" + std::to_string(index) + "\">";
    if (stand.row) html += pictures.plain(*stand.row);
    html += "<span class=\"aside\">" + escaped(set_title(row)) + ", page </span><span class=\"page\">" + std::to_string(row.page) + "</span><span class=\"aside\">" +
            (edition_title(row).empty() ? "" : ", " + escaped(edition_title(row))) + "</span>";
    if (!told.empty()) html += " · " + told_in_words(told);
    if (!stand.says.empty()) html += " <span class=\"small\">" + escaped(stand.says) + "</span>";
    return html + "</a></li>\n";
}

/// The sheets of one edition, set by set, as the rows are ordered.
struct EditionOf {
    std::string title;
    std::vector<std::size_t> sheets;
};

std::vector<EditionOf> editions_of(const std::vector<SheetRow>& rows) {
    std::vector<EditionOf> editions;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const std::string title = rows[i].paper.empty() ? "Pages" : rows[i].print.empty() ? rows[i].paper + ", for every print" : edition_title(rows[i]);
        auto edition = std::find_if(editions.begin(), editions.end(), [&](const EditionOf& one) { return one.title == title; });
        if (edition == editions.end()) edition = editions.insert(editions.end(), EditionOf{title, {}});
        edition->sheets.push_back(i);
    }
    return editions;
}

std::string cell(const std::string& text, const char* kind = "") {
    return std::string("<td") + (*kind ? std::string(" class=\"") + kind + "\"" : "") + ">" + escaped(text) + "</td>";
}

std::string links_to(const Numbers& told) {
    if (told.empty()) return "<td>none</td>";
    std::string html = "<td>";
    for (const std::size_t n : told) html += "<a href=\"#finding-" + std::to_string(n) + "\"><span class=\"aside\">Finding </span>" + std::to_string(n) + "</a> ";
    return html + "</td>";
}

std::string table_row(const SheetRow& row, std::size_t index, const Numbers& told) {
    const std::string id = std::to_string(index);
    return "<tr id=\"sheet-" + id + "\"><th scope=\"row\">" + escaped(row.file) + "</th><td class=\"number\"><a href=\"#seen-" + id +
           "\"><span class=\"aside\">Picture of page </span>" + std::to_string(row.page) + "</a></td>" + links_to(told) +
           cell(row.set.empty() ? "" : set_title(row), "tight") + cell(row.paper) + cell(row.print) + cell(row.size, "tight") +
           cell(row.ppi, "number") + cell(row.ink, "number") + cell(row.stock, "tight") + cell(row.proven) + "</tr>\n";
}

}  // namespace

std::string contact_sheets(const AuditReport& r, const std::vector<Numbers>& told, Pictures& pictures) {
    if (r.sheets.empty()) return "";
    std::string html =
        "<section aria-labelledby=\"seen\" class=\"new-page\">\n<h2 id=\"seen\">All pages, small</h2>\n<p class=\"small\">Pages lie in the order in "
        "which they are printed. A page leads to its line in the table of sheets. "
        "Where a page was not rendered – its picture is the artwork’s own bytes, in the planned place – that is said, and what its picture is "
        "instead.</p>\n";
    const StandIns stand_ins(r.sheets);
    for (const EditionOf& edition : editions_of(r.sheets)) {
        html += "<h3>" + escaped(edition.title) + "</h3>\n";
        std::string file;
        for (const std::size_t i : edition.sheets) {
            const SheetRow& row = r.sheets[i];
            if (row.file != file || i == edition.sheets.front())
                html += (i == edition.sheets.front() ? "" : std::string("</ul>\n")) + "<h4>" + escaped(set_title(row)) +
                        "</h4>\n<ul class=\"wall\">\n";
            file = row.file;
            html += small_page(row, i, told[i], stand_ins.of(row), pictures);
        }
        html += "</ul>\n";
    }
    return html + "</section>\n";
}

std::string sheet_table(const AuditReport& r, const std::vector<Numbers>& told) {
    if (r.sheets.empty()) return "";
    std::string html =
        "<section aria-labelledby=\"sheets\" class=\"new-page\">\n<h2 id=\"sheets\">All sheets, in figures</h2>\n<div class=\"wide\" role=\"region\" "
        "aria-labelledby=\"sheets-caption\" tabindex=\"0\">\n<table>\n"
        "<caption id=\"sheets-caption\">" +
        counted(r.sheets.size(), "page") +
        " that buyers get. Coverage is the mean darkness of a page’s artwork, or of the rendered page.</caption>\n<thead><tr>";
    for (const char* title : {"File", "Page", "Findings", "Set", "Paper", "Print", "Size", "ppi", "Coverage", "Stock", "Proven by"}) {
        const std::string name = title;
        html += std::string("<th scope=\"col\"") + (name == "Page" || name == "ppi" || name == "Coverage" ? " class=\"number\"" : "") + ">" + name + "</th>";
    }
    html += "</tr></thead>\n<tbody>\n";
    for (std::size_t i = 0; i < r.sheets.size(); ++i) html += table_row(r.sheets[i], i, told[i]);
    return html + "</tbody>\n</table>\n</div>\n</section>\n";
}

}  // namespace qw::report
