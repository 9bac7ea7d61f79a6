// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/judge.h"

#include "checks/finished_rules.h"
#include "checks/misprint_rules.h"
#include "checks/sheet_text_rules.h"
#include "release/page_look.h"
#include "release/sheet_rows.h"

#include <utility>

namespace qw::release {

namespace {

checks::SeenPdf told_of(const PlannedFile& file) {
    checks::SeenPdf told;
    told.path = file.path;
    told.role = file.role;
    told.paper = file.paper;
    told.print = file.print;
    told.margins = file.margins;
    told.both_sides = file.document.duplex != compose::Duplex::simplex;
    told.cautions = file.cautions;
    told.planned = true;
    return told;
}

/// A page of artwork without a border is printed aside, too.
std::optional<MisprintAsked> misprint_asked(const PlannedFile& file, std::size_t page, const checks::Rules& rules) {
    if (file.print != Print::borderless || !artwork_on(file, page).ink) return std::nullopt;
    return MisprintAsked{file.document.pages[page].size, file.looked->set->safe_area * file.placements[page].scale, checks::misprint_in_force(rules)};
}

void judge_page(const PlannedFile& file, std::size_t page, const PageLook& look, const checks::Rules& rules, JudgedFile& judged) {
    if (const auto printable = printable_of(file, page)) checks::check_ink_inside(rules, look.seen, *printable, file.path, judged.findings);
    if (!file.shows) checks::check_sheet_text(rules, file.document.pages[page], look.seen, file.path, judged.findings);
    const ShownArtwork shown = artwork_on(file, page);
    if (shown.ink)
        checks::check_rendered_artwork(rules, look.seen, file.placements[page], *shown.ink, shown.width, shown.height,
                                       file.print == Print::borderless, file.path, judged.findings);
    if (look.misprint) {
        const std::size_t before = judged.findings.size();
        checks::check_misprinted(rules, look.misprint->misprinted, file.path, static_cast<int>(page) + 1, judged.findings);
        // A misprint is shown where it takes what matters.
        if (judged.findings.size() != before) judged.rows[page].misprint = look.misprint->picture;
    }
    tell_rendering(judged.rows[page], file, look);
}

/// The rules that need no plan, once the pages are rendered; what only they need is then let go, because all files of a
/// release are held until the end.
void judge_by_itself(const checks::Rules& rules, JudgedFile& judged) {
    judged.seen.facts = &judged.facts;
    checks::check_pdf(rules, judged.seen, judged.findings);
    if (judged.facts.damage.empty()) {
        checks::check_sheet_foot(rules, judged.seen, judged.findings);
        checks::check_sheet_cautions(rules, judged.seen, judged.findings);
    }
    judged.seen.facts = nullptr;
    for (checks::RenderedPage& page : judged.seen.rendered) page.ink.map = {};
}

}  // namespace

JudgedFile judge_planned(Disk& disk, const Path& disk_path, const PlannedFile& file, const checks::Rules& rules, engine::Kept& kept, Rendering rendering) {
    JudgedFile judged;
    judged.path = file.path;
    judged.seen = told_of(file);
    for (std::size_t i = 0; i < file.document.pages.size(); ++i) judged.rows.push_back(row_of(file, i));
    judged.facts = proof::inspect(disk, disk_path);
    checks::check_finished(rules, file.document, judged.facts, file.path, judged.findings);
    if (judged.facts.damage.empty() && judged.facts.pages.size() == file.document.pages.size()) {
        PageLooks looks(disk, disk_path, judged.facts.sha256, kept);
        for (const std::size_t page : pages_to_render(file, rendering)) {
            PageLook look = looks.page(static_cast<int>(page) + 1, misprint_asked(file, page, rules));
            judge_page(file, page, look, rules, judged);
            if (file.looked && file.placements[page].face)
                judged.palettes.push_back({artwork_name(file, page), std::move(look.palette)});
            judged.seen.rendered.push_back(std::move(look.seen));
        }
    }
    for (std::size_t page = 0; page < judged.rows.size(); ++page) show_artwork(judged.rows[page], file, page);
    judge_by_itself(rules, judged);
    return judged;
}

JudgedFile judge_unplanned(Disk& disk, const Path& disk_path, checks::SeenPdf told, const checks::Rules& rules, engine::Kept& kept) {
    JudgedFile judged;
    judged.path = told.path;
    judged.seen = std::move(told);
    judged.facts = proof::inspect(disk, disk_path);
    PageLooks looks(disk, disk_path, judged.facts.sha256, kept);
    if (judged.facts.damage.empty() && !judged.facts.pages.empty()) judged.facts.damage = looks.damage();
    for (std::size_t i = 0; i < judged.facts.pages.size(); ++i) {
        judged.rows.push_back(row_of(judged.seen, judged.facts, i));
        if (!judged.facts.damage.empty()) continue;
        PageLook look = looks.page(static_cast<int>(i) + 1, std::nullopt);
        tell_rendering(judged.rows[i], look);
        judged.seen.rendered.push_back(std::move(look.seen));
    }
    judge_by_itself(rules, judged);
    return judged;
}

void judge_together(const std::vector<const JudgedFile*>& files, const checks::Rules& rules, Findings& findings) {
    std::vector<checks::SeenPdf> all;
    for (const JudgedFile* file : files) {
        all.push_back(file->seen);
        all.back().facts = &file->facts;
    }
    checks::check_editions(rules, all, findings);
}

}  // namespace qw::release
