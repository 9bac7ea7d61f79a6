// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/audit_report.h"

#include "report/grouped.h"
#include "report/html.h"

namespace qw::report {

namespace {

constexpr const char* style = R"css(
:root { --ink: #1c2530; --soft: #55606c; --line: #cfd6dc; --tint: #f5f3ee; }
* { box-sizing: border-box; }
html { font: 16px/1.55 Lato, "Segoe UI", "Helvetica Neue", Arial, sans-serif; color: var(--ink); background: #fff; }
body { max-width: 68rem; margin: 0 auto; padding: 2.5rem 1.25rem 4rem; }
h1, h2 { font-family: Vollkorn, Georgia, "Times New Roman", serif; font-weight: 600; line-height: 1.2; margin: 0; }
h1 { font-size: 2.1rem; }
h2 { font-size: 1.4rem; margin: 3rem 0 1rem; padding-top: .75rem; border-top: 1px solid var(--line); }
h3 { font-size: 1rem; margin: 1.75rem 0 .6rem; }
p { margin: .3rem 0; }
.subject { color: var(--soft); }
.verdict { margin: 1.75rem 0 0; padding: 1.1rem 1.4rem 1.2rem; background: var(--tint); border-left: 6px double var(--ink); }
.verdict strong { display: block; font: 600 1.6rem/1.3 Vollkorn, Georgia, serif; }
.finding { margin: 0 0 1rem; padding: .1rem 0 .1rem 1.1rem; border-left: 1px solid var(--line); }
.finding.error { border-left: 5px solid var(--ink); }
.finding.warning { border-left: 5px double var(--ink); }
.finding .level { font-weight: 700; text-transform: capitalize; }
.finding .where { overflow-wrap: anywhere; }
.finding .todo { font-weight: 700; }
.finding .rule, .small { color: var(--soft); font-size: .875rem; }
.wall { display: grid; grid-template-columns: repeat(auto-fill, minmax(11rem, 1fr)); gap: 1.25rem 1rem; margin: 0; padding: 0; list-style: none; }
figure { margin: 0; }
figure img { display: block; width: 100%; height: auto; border: 1px solid var(--line); background: #fff; }
figcaption { font-size: .8125rem; line-height: 1.35; color: var(--soft); margin-top: .35rem; overflow-wrap: anywhere; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font-size: .875rem; font-variant-numeric: tabular-nums; }
th, td { text-align: left; vertical-align: top; padding: .3rem .8rem .3rem 0; border-bottom: 1px solid var(--line); }
th { font-weight: 700; white-space: nowrap; }
td.number, th.number { text-align: right; }
@media print { body { max-width: none; padding: 0; } .finding, figure, tr { break-inside: avoid; } h2 { break-after: avoid; } }
)css";

std::string verdict(const AuditReport& r) {
    const std::size_t errors = count(r.findings, Level::error), warnings = count(r.findings, Level::warning), notes = count(r.findings, Level::note);
    std::string sentence = counted(errors, "error") + ", " + counted(warnings, "warning") + " and " + counted(notes, "note");
    if (!r.sheets.empty()) sentence += " on " + counted(r.sheets.size(), "page");
    sentence[0] = static_cast<char>(sentence[0] >= 'a' && sentence[0] <= 'z' ? sentence[0] - 32 : sentence[0]);
    return "<div class=\"verdict\"><strong>" + std::string(r.fit_for_sale() ? "Fit for sale" : "Not fit for sale") + "</strong>" + sentence + "." +
           (r.strict ? " Warnings count here." : "") + "</div>\n";
}

std::string one_finding(const FindingGroup& group) {
    const Finding& f = group.finding;
    std::string html = "<article class=\"finding " + name_of(f.level) + "\">\n<p><span class=\"level\">" + name_of(f.level) + "</span> " + escaped(f.message) + ".</p>\n";
    if (!f.measured.empty()) html += "<p>Measured " + escaped(f.measured) + (f.limit.empty() ? "" : "; limit " + escaped(f.limit)) + ".</p>\n";
    if (!f.mend.empty()) html += "<p class=\"todo\">" + escaped(f.mend) + ".</p>\n";
    if (!group.places.empty()) {
        html += "<p class=\"where\">In ";
        for (std::size_t i = 0; i < group.places.size(); ++i) html += (i ? "; " : "") + escaped(group.places[i]);
        html += "</p>\n";
    }
    return html + "<p class=\"rule\">Rule " + escaped(f.rule) + "</p>\n</article>\n";
}

std::string findings(const AuditReport& r) {
    std::string html = "<section aria-labelledby=\"todo\">\n<h2 id=\"todo\">What to do</h2>\n";
    if (r.findings.empty()) html += "<p>Nothing. Every check that was made has passed.</p>\n";
    for (const FindingGroup& group : grouped(r.findings)) html += one_finding(group);
    return html + "</section>\n";
}

std::string figure(const std::vector<std::byte>& jpeg, const std::string& caption) {
    return "<li><figure><img alt=\"" + escaped(caption) + "\" src=\"data:image/jpeg;base64," + base64(jpeg) + "\"><figcaption>" + escaped(caption) + "</figcaption></figure></li>\n";
}

std::string pictures(const AuditReport& r) {
    std::string html, group;
    for (const SheetRow& row : r.sheets) {
        if (row.picture.empty()) continue;
        const std::string name = row.paper + (row.print.empty() ? "" : " " + row.print);
        if (name != group) {
            if (!group.empty()) html += "</ul>\n";
            group = name;
            html += "<h3>" + escaped(name) + "</h3>\n<ul class=\"wall\">\n";
        }
        const std::string caption = row.set + ", page " + std::to_string(row.page);
        html += figure(row.picture, caption);
        if (!row.misprint.empty()) html += figure(row.misprint, caption + ", enlarged by a borderless driver and lying aside");
    }
    if (group.empty()) return "";
    return "<section aria-labelledby=\"pictures\">\n<h2 id=\"pictures\">Pages as they print</h2>\n"
           "<p class=\"small\">Rendered from the finished files. Pages that are one untouched picture are proven by its digest and place instead, "
           "but for the first, the last and the darkest of each set.</p>\n" +
           html + "</ul>\n</section>\n";
}

std::string table(const AuditReport& r) {
    if (r.sheets.empty()) return "";
    std::string html = "<section aria-labelledby=\"sheets\">\n<h2 id=\"sheets\">All pages</h2>\n<div class=\"wide\" role=\"region\" aria-labelledby=\"sheets\" tabindex=\"0\">\n<table>\n"
                       "<thead><tr><th scope=\"col\">File</th><th scope=\"col\" class=\"number\">Page</th><th scope=\"col\">Size</th>"
                       "<th scope=\"col\" class=\"number\">ppi</th><th scope=\"col\" class=\"number\">Ink</th><th scope=\"col\">Proven by</th></tr></thead>\n<tbody>\n";
    for (const SheetRow& row : r.sheets) {
        html += "<tr><td>" + escaped(row.file) + "</td><td class=\"number\">" + std::to_string(row.page) + "</td><td>" + escaped(row.size) +
                "</td><td class=\"number\">" + escaped(row.ppi) + "</td><td class=\"number\">" + escaped(row.ink) + "</td><td>" + escaped(row.proven) + "</td></tr>\n";
    }
    return html + "</tbody>\n</table>\n</div>\n</section>\n";
}

std::string checked(const AuditReport& r) {
    if (r.tried.empty()) return "";
    std::string html = "<section aria-labelledby=\"checked\">\n<h2 id=\"checked\">What was checked</h2>\n<div class=\"wide\" role=\"region\" aria-labelledby=\"checked\" tabindex=\"0\">\n<table>\n"
                       "<thead><tr><th scope=\"col\">Rule</th><th scope=\"col\">What it asks</th><th scope=\"col\" class=\"number\">Times</th></tr></thead>\n<tbody>\n";
    for (const checks::Rules::Tried& t : r.tried) {
        html += "<tr><td>" + escaped(t.rule) + "</td><td>" + escaped(t.checks) +
                (t.reason.empty() ? "" : "<br>This kit sets it otherwise: " + escaped(t.reason)) + "</td><td class=\"number\">" + std::to_string(t.times) + "</td></tr>\n";
    }
    return html + "</tbody>\n</table>\n</div>\n</section>\n";
}

}  // namespace

std::string to_html(const AuditReport& r) {
    const std::string name = r.title.empty() ? r.subject : r.title;
    std::string html = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>" +
                       escaped(name) + ": audit before sale</title>\n<style>" + style + "</style>\n</head>\n<body>\n<main>\n<h1>" + escaped(name) +
                       "</h1>\n<p class=\"subject\">Audit before sale of " + escaped(r.subject) + "</p>\n";
    html += verdict(r) + findings(r) + pictures(r) + table(r) + checked(r);
    return html + "</main>\n</body>\n</html>\n";
}

}  // namespace qw::report
