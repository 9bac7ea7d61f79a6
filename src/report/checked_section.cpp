// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/page_sections.h"

#include "report/grouped.h"
#include "report/html.h"

#include <algorithm>
#include <array>
#include <set>

namespace qw::report {

namespace {

/// Rules that a reader thinks of together. `begin` are the first words of their names; the last family takes the rest.
struct Family {
    const char* title;
    std::vector<std::string> begin;
    const char* nothing;  ///< why none of them was asked
};

const std::vector<Family>& families() {
    static const std::vector<Family> all{
        {"The kit and its journal", {"no-journal", "journal-", "full-sheets", "odd-", "mixed-", "kit-", "board-"}, "no kit with its journal was read"},
        {"Artwork", {"artwork-"}, "no artwork was there to look at"},
        {"Parts", {"part-"}, "no parts to cut and fold were there"},
        {"Backs and misprints", {"backs-", "duplex-", "misprint-"}, "no sheets with backs or without borders were there"},
        {"Texts", {"text-", "texts-", "sheet-text", "listing-", "link-"}, "no text was there to read"},
        {"Bundle", {"bundle-", "record-", "shop-", "zip-"}, "no bundle was made; a kit is packed when it has no error"},
        {"Signed proofs", {"proof-"}, "no sheet was signed"},
        {"Finished files", {}, "no finished PDF was there to open"},
    };
    return all;
}

const Family& family_of(const std::string& rule) {
    const auto found = std::find_if(families().begin(), families().end(), [&](const Family& family) {
        return std::any_of(family.begin.begin(), family.begin.end(), [&](const std::string& begin) { return rule.starts_with(begin); });
    });
    return found == families().end() ? families().back() : *found;
}

struct Counts {
    std::size_t rules = 0, times = 0, found = 0, off = 0;
};

std::string outcome(const checks::Rules::Tried& tried, const std::set<std::string>& found) {
    if (tried.off) return "switched off";
    return found.contains(tried.rule) ? "see findings" : "passed";
}

std::string times(std::size_t n) { return n == 1 ? "once" : std::to_string(n) + " times"; }

std::string family_rules(const Family& family, const AuditReport& r, const std::set<std::string>& found) {
    std::string html;
    for (const checks::Rules::Tried& tried : r.tried)
        if (&family_of(tried.rule) == &family)
            html += "<dt><code>" + escaped(tried.rule) + "</code> " + outcome(tried, found) + "</dt>\n<dd>" + escaped(tried.checks) + " Asked " +
                    times(tried.times) + ".</dd>\n";
    return html.empty() ? "" : "<details><summary>" + std::string(family.title) + ": what was asked</summary>\n<dl>\n" + html + "</dl>\n</details>\n";
}

std::string families_table(const AuditReport& r, const std::set<std::string>& found) {
    std::string rows;
    for (const Family& family : families()) {
        Counts n;
        for (const checks::Rules::Tried& tried : r.tried) {
            if (&family_of(tried.rule) != &family) continue;
            ++n.rules;
            n.times += tried.times;
            n.found += found.contains(tried.rule);
            n.off += tried.off;
        }
        if (n.rules)
            rows += "<tr><th scope=\"row\">" + std::string(family.title) + "</th><td class=\"number\">" + std::to_string(n.rules) +
                    "</td><td class=\"number\">" + std::to_string(n.times) + "</td><td class=\"number\">" +
                    std::to_string(n.rules - n.found - n.off) + "</td><td class=\"number\">" + std::to_string(n.found) +
                    "</td><td class=\"number\">" + std::to_string(n.off) + "</td></tr>\n";
    }
    return "<div class=\"wide\" role=\"region\" aria-labelledby=\"families-caption\" tabindex=\"0\">\n<table>\n<caption "
           "id=\"families-caption\">Rules by family, how often they were asked, and how many found something</caption>\n"
           "<thead><tr><th scope=\"col\">Family</th><th scope=\"col\" class=\"number\">Rules</th><th scope=\"col\" class=\"number\">Times "
           "asked</th><th scope=\"col\" class=\"number\">Found nothing</th>"
           "<th scope=\"col\" class=\"number\">Found something</th><th scope=\"col\" class=\"number\">Switched off</th></tr></thead>\n<tbody>\n" +
           rows + "</tbody>\n</table>\n</div>\n";
}

std::string set_otherwise(const AuditReport& r) {
    std::string html;
    const auto add = [&](const std::string& rule, const std::string& checks, bool off, const std::string& reason) {
        if (reason.empty()) return;
        html += "<dt><code>" + escaped(rule) + "</code>" + (off ? " is switched off" : "") + "</dt>\n<dd>Reason: " + escaped(reason) +
                "<br>The rule: " + escaped(checks) + "</dd>\n";
    };
    for (const auto& one : r.tried) add(one.rule, one.checks, one.off, one.reason);
    for (const auto& one : r.untried) add(one.rule, one.checks, one.off, one.reason);
    return html.empty() ? "" : "<h3>What this kit sets otherwise</h3>\n<dl>\n" + html + "</dl>\n";
}

std::string not_asked(const AuditReport& r) {
    if (r.untried.empty()) return "";
    std::string html = "<h3>What was not asked</h3>\n<ul>\n";
    for (const Family& family : families()) {
        std::string names;
        std::size_t n = 0;
        for (const checks::Rules::Untried& one : r.untried)
            if (&family_of(one.rule) == &family) {
                names += (n++ ? ", " : "") + ("<code>" + escaped(one.rule) + "</code>");
            }
        const bool some = std::any_of(r.tried.begin(), r.tried.end(), [&](const auto& one) { return &family_of(one.rule) == &family; });
        if (n)
            html += "<li>" + std::string(family.title) + ": " + (some ? "there was nothing that these ask about" : family.nothing) +
                    ". <span class=\"small\">" + names + "</span></li>\n";
    }
    return html + "</ul>\n";
}

}  // namespace

std::string checked_section(const AuditReport& r) {
    if (r.tried.empty() && r.untried.empty()) return "";
    std::set<std::string> found;
    for (const Finding& f : r.findings) found.insert(f.rule);
    std::size_t all = 0;
    for (const auto& tried : r.tried) all += tried.times;
    const auto passed = static_cast<std::size_t>(
        std::count_if(r.tried.begin(), r.tried.end(), [&](const auto& one) { return !one.off && !found.contains(one.rule); }));
    std::string html = "<section aria-labelledby=\"checked\" class=\"new-page\">\n<h2 id=\"checked\">What was checked</h2>\n<p>" +
                       counted(r.tried.size(), "rule") + " asked " + times(all) + "; " + std::to_string(passed) +
                       " of them found nothing to say.</p>\n" + families_table(r, found);
    for (const Family& family : families()) html += family_rules(family, r, found);
    return html + set_otherwise(r) + not_asked(r) + "</section>\n";
}

}  // namespace qw::report
