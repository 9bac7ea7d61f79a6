// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/audit_report.h"

#include "report/grouped.h"
#include "report/html.h"
#include "report/report_style.h"
#include "report/sheet_picture.h"

#include <algorithm>
#include <map>
#include <set>

namespace qw::report {

namespace {

/// Pictures beside one finding; more of them say nothing new.
constexpr std::size_t most_pictures = 3;

std::string verdict(const AuditReport& r) {
    const std::size_t errors = count(r.findings, Level::error), warnings = count(r.findings, Level::warning), notes = count(r.findings, Level::note);
    std::string sentence = counted(errors, "error") + ", " + counted(warnings, "warning") + " and " + counted(notes, "note");
    if (!r.sheets.empty()) sentence += " on " + counted(r.sheets.size(), "page");
    sentence[0] = static_cast<char>(sentence[0] >= 'a' && sentence[0] <= 'z' ? sentence[0] - 32 : sentence[0]);
    return "<div class=\"verdict\"><strong>" + std::string(r.fit_for_sale() ? "Fit for sale" : "Not fit for sale") + "</strong>" + sentence + "." +
           (r.strict ? " Warnings count here." : "") + "</div>\n";
}

std::string edition_of(const SheetRow& row) { return row.paper + (row.print.empty() ? "" : ", " + row.print); }

/// "Letter, borderless: journal-pages, page 3".
std::string named(const SheetRow& row) {
    const std::string edition = edition_of(row);
    return (edition.empty() ? row.file : edition + ": " + row.set) + ", page " + std::to_string(row.page);
}

/// The report while it is being written.
class Page {
public:
    explicit Page(const AuditReport& report) : r_(report) {
        for (const Finding& f : r_.findings) ++of_rule_[f.rule];
    }

    std::string body() {
        const std::string text = findings() + contact_sheets() + table() + checked();
        return pictures_.definitions() + text;
    }

private:
    /// How well a row shows where a finding about its artwork was made: on the paper that it names, and without a border,
    /// where most is lost.
    static int fitness(const SheetRow& row, const Finding& f) {
        return (f.message.find("on " + row.paper) != std::string::npos ? 2 : 0) + (row.print == "borderless" ? 1 : 0);
    }

    /// The row that shows what a finding is about: its page, or a page of its artwork.
    const SheetRow* row_of(const Finding& f) const {
        const SheetRow* best = nullptr;
        for (const SheetRow& row : r_.sheets) {
            if (row.picture.empty() || f.file.empty()) continue;
            if (row.file == f.file && row.page == std::max(f.page, 1)) return &row;
            if (row.artwork == f.file && (!best || fitness(row, f) > fitness(*best, f))) best = &row;
        }
        return best;
    }

    std::string of_findings(const SheetRow& row) const {
        std::size_t errors = 0, warnings = 0;
        for (const Finding& f : r_.findings)
            if ((f.file == row.file && f.page == row.page) || (!row.artwork.empty() && f.file == row.artwork)) (f.level == Level::error ? errors : warnings) += f.level != Level::note;
        if (errors + warnings == 0) return "";
        return "; " + (errors ? counted(errors, "error") : "") + (errors && warnings ? " and " : "") + (warnings ? counted(warnings, "warning") : "");
    }

    std::string figure(const std::string& picture, const std::string& caption) const { return "<li><figure>" + picture + "<figcaption>" + escaped(caption) + "</figcaption></figure></li>\n"; }

    std::string pictures_for(const std::vector<const SheetRow*>& rows) {
        std::string html;
        std::size_t shown = 0;
        for (const SheetRow* row : rows) {
            if (shown == most_pictures) break;
            ++shown;
            html += figure(marked_picture(pictures_.name_of(row->picture), *row, named(*row) + ", with its trim, safe area, margins and ink"), named(*row));
            if (row->misprint.empty()) continue;
            html += figure(page_picture(pictures_.name_of(row->misprint), row->sheet, named(*row) + ", as a misprint leaves it"), named(*row) + ", enlarged by a borderless driver and lying aside");
        }
        if (html.empty()) return "";
        return "<ul class=\"wall\">\n" + html + "</ul>\n" + (rows.size() > shown ? "<p class=\"small\">And " + counted(rows.size() - shown, "page") + " more.</p>\n" : "");
    }

    /// Findings of one kind, told together: what differs is where, and by how much.
    using Kin = std::vector<const Finding*>;

    std::vector<Kin> kinds() const {
        std::vector<Kin> all;
        for (const Level level : {Level::error, Level::warning, Level::note})
            for (const Finding& f : r_.findings) {
                if (f.level != level) continue;
                const auto same = std::find_if(all.begin(), all.end(), [&](const Kin& kin) {
                    const Finding& other = *kin.front();
                    return other.rule == f.rule && other.level == f.level && other.message == f.message && other.limit == f.limit && other.mend == f.mend;
                });
                if (same == all.end()) all.push_back({&f});
                else same->push_back(&f);
            }
        return all;
    }

    static std::string measured(const Finding& f) { return f.measured.empty() ? "" : "measured " + escaped(f.measured); }

    std::string one_kind(const Kin& kin) {
        const Finding& f = *kin.front();
        std::string html = "<article class=\"finding " + report_name(f.level) + "\">\n<h3><span class=\"level\">" + report_name(f.level) + "</span> " + escaped(f.message) + "</h3>\n";
        if (!f.mend.empty()) html += "<p class=\"todo\">" + escaped(f.mend) + ".</p>\n";
        if (!f.limit.empty()) html += "<p>Limit " + escaped(f.limit) + ".</p>\n";
        html += "<ul class=\"where\">\n";
        std::vector<const SheetRow*> rows;
        for (const Finding* one : kin) {
            const std::string place = place_of(*one), by = measured(*one);
            if (!place.empty() || !by.empty()) html += "<li>" + escaped(place) + (place.empty() || by.empty() ? "" : ": ") + by + "</li>\n";
            const SheetRow* row = row_of(*one);
            if (row && std::find(rows.begin(), rows.end(), row) == rows.end()) rows.push_back(row);
        }
        html += "</ul>\n";
        return html + pictures_for(rows) + "<p class=\"rule\">Rule " + escaped(f.rule) + "</p>\n</article>\n";
    }

    static std::string report_name(Level level) { return name_of(level); }

    std::string findings() {
        std::string html = "<section aria-labelledby=\"todo\">\n<h2 id=\"todo\">What to do</h2>\n";
        if (r_.findings.empty()) return html + "<p>Nothing. Every check that was made has passed.</p>\n</section>\n";
        const bool pictured = std::any_of(r_.findings.begin(), r_.findings.end(), [&](const Finding& f) { return row_of(f) != nullptr; });
        if (pictured) html += key_of_marks();
        for (const Kin& kin : kinds()) html += one_kind(kin);
        return html + "</section>\n";
    }

    /// The same artwork as it was rendered on another paper or in another print.
    const SheetRow* elsewhere(const SheetRow& row) const {
        for (const SheetRow& other : r_.sheets)
            if (!row.artwork.empty() && other.artwork == row.artwork && !other.picture.empty() && other.set == row.set && other.page == row.page) return &other;
        return nullptr;
    }

    std::string contact_picture(const SheetRow& row) {
        const std::string caption = row.set + ", page " + std::to_string(row.page), label = named(row) + of_findings(row);
        if (!row.picture.empty()) return figure(page_picture(pictures_.name_of(row.picture), row.sheet, label), caption + of_findings(row));
        if (const SheetRow* other = elsewhere(row)) return figure(page_picture(pictures_.name_of(other->picture), other->sheet, label), caption + ", shown as on " + edition_of(*other));
        return figure("<p class=\"small\">Not rendered; proven by " + escaped(row.proven) + ".</p>", caption);
    }

    std::string contact_sheets() {
        std::vector<std::string> order;
        std::map<std::string, std::string> walls;
        std::map<std::string, std::size_t> pages;
        for (const SheetRow& row : r_.sheets) {
            const std::string edition = edition_of(row).empty() ? "Files" : edition_of(row);
            if (!walls.contains(edition)) order.push_back(edition);
            walls[edition] += contact_picture(row);
            ++pages[edition];
        }
        if (order.empty()) return "";
        std::string html = "<section aria-labelledby=\"pictures\">\n<h2 id=\"pictures\">Every page, edition by edition</h2>\n"
                           "<p class=\"small\">Rendered from the finished files. A page that is one untouched picture may be proven by its digest and place instead; it is then shown as on another paper.</p>\n";
        for (const std::string& edition : order)
            html += "<details" + std::string(edition == order.front() ? " open" : "") + ">\n<summary>" + escaped(edition) + ": " + counted(pages[edition], "page") + "</summary>\n<ul class=\"wall\">\n" + walls[edition] + "</ul>\n</details>\n";
        return html + "</section>\n";
    }

    static std::string scrolling(const std::string& id, const std::string& caption, const std::string& head, const std::string& rows) {
        return "<div class=\"wide\" role=\"region\" aria-labelledby=\"" + id + "-table\" tabindex=\"0\">\n<table>\n<caption id=\"" + id + "-table\">" + caption + "</caption>\n<thead><tr>" + head + "</tr></thead>\n<tbody>\n" + rows + "</tbody>\n</table>\n</div>\n";
    }

    std::string table() const {
        if (r_.sheets.empty()) return "";
        std::string rows;
        for (const SheetRow& row : r_.sheets)
            rows += "<tr><th scope=\"row\">" + escaped(row.file) + "</th><td class=\"number\">" + std::to_string(row.page) + "</td><td>" + escaped(row.size) + "</td><td class=\"number\">" + escaped(row.ppi) +
                    "</td><td class=\"number\">" + escaped(row.ink) + "</td><td>" + escaped(row.artwork) + "</td><td>" + escaped(row.proven) + "</td></tr>\n";
        return "<section aria-labelledby=\"sheets\">\n<h2 id=\"sheets\">All pages</h2>\n" +
               scrolling("sheets", "Size on paper, pixels an inch as printed, mean coverage of the page with ink",
                         "<th scope=\"col\">File</th><th scope=\"col\" class=\"number\">Page</th><th scope=\"col\">Size</th><th scope=\"col\" class=\"number\">ppi</th><th scope=\"col\" class=\"number\">Ink</th>"
                         "<th scope=\"col\">Artwork</th><th scope=\"col\">Proven by</th>",
                         rows) +
               "</section>\n";
    }

    std::string result_of(const checks::Rules::Tried& t) const {
        const auto found = of_rule_.find(t.rule);
        return found == of_rule_.end() ? "passed" : counted(found->second, "finding");
    }

    std::string checked() const {
        if (r_.tried.empty()) return "";
        std::string rows, otherwise;
        std::size_t passed = 0;
        for (const checks::Rules::Tried& t : r_.tried) {
            passed += !of_rule_.contains(t.rule);
            rows += "<tr><th scope=\"row\">" + escaped(t.rule) + "</th><td>" + escaped(t.checks) + "</td><td class=\"number\">" + std::to_string(t.times) + "</td><td>" + result_of(t) + "</td></tr>\n";
            if (!t.reason.empty()) otherwise += "<li><strong>" + escaped(t.rule) + "</strong>: " + escaped(t.reason) + "</li>\n";
        }
        std::string html = "<section aria-labelledby=\"checked\">\n<h2 id=\"checked\">What was checked</h2>\n<p>" + std::to_string(r_.tried.size()) + " rules were asked, and " + std::to_string(passed) + " of them had nothing to say.</p>\n";
        if (!otherwise.empty()) html += "<h3>What this kit sets otherwise, and why</h3>\n<ul>\n" + otherwise + "</ul>\n";
        return html + "<details>\n<summary>All rules that were asked</summary>\n" +
               scrolling("checked", "How often each rule was asked, and what came of it",
                         "<th scope=\"col\">Rule</th><th scope=\"col\">What it asks</th><th scope=\"col\" class=\"number\">Times</th><th scope=\"col\">Result</th>", rows) +
               "</details>\n</section>\n";
    }

    const AuditReport& r_;
    std::map<std::string, std::size_t> of_rule_;
    PictureStore pictures_;
};

std::string contents(const AuditReport& r) {
    std::string html = "<nav aria-label=\"In this report\"><ul><li><a href=\"#todo\">What to do</a></li>";
    if (!r.sheets.empty()) html += "<li><a href=\"#pictures\">Every page</a></li><li><a href=\"#sheets\">Table of pages</a></li>";
    if (!r.tried.empty()) html += "<li><a href=\"#checked\">What was checked</a></li>";
    return html + "</ul></nav>\n";
}

}  // namespace

std::string to_html(const AuditReport& r) {
    const std::string name = r.title.empty() ? r.subject : r.title;
    std::string html = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>" +
                       escaped(name) + ": audit before sale</title>\n<style>" + report_style + "</style>\n</head>\n<body>\n<a class=\"skip\" href=\"#todo\">Skip to what is to be done</a>\n<header>\n<h1>" + escaped(name) +
                       "</h1>\n<p class=\"subject\">Audit before sale of " + escaped(r.subject) + "</p>\n</header>\n<main>\n";
    return html + verdict(r) + contents(r) + Page(r).body() + "</main>\n</body>\n</html>\n";
}

}  // namespace qw::report
