// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/sample_kit.h"

#include "kit/read.h"

#include <algorithm>
#include <cstdio>

namespace qw::test {

const kit::Pipeline& pipeline() {
    static const kit::Pipeline read = [] {
        const auto disk = real_disk();
        return kit::read_pipeline(*disk, Path(QW_SOURCE_DIR) / "pipeline");
    }();
    return read;
}

const type::Fonts& fonts() {
    static const type::Fonts found = type::Fonts::find();
    return found;
}

const std::vector<Paper>& sheet_papers() {
    static const std::vector<Paper> all = [] {
        std::vector<Paper> papers;
        for (const char* name : {"letter", "a4"})
            papers.push_back(*std::find_if(pipeline().papers.begin(), pipeline().papers.end(), [&](const Paper& p) { return p.short_name == name; }));
        papers.push_back({"iso_a5_148x210mm", "a5", "A5", {Length::mm(148), Length::mm(210)}, UnitSystem::metric});
        papers.push_back({"na_5x7_5x7in", "5x7", "5 x 7 in", {Length::inches(5), Length::inches(7)}, UnitSystem::us});
        return papers;
    }();
    return all;
}

kit::Pipeline words_alone() {
    kit::Pipeline words;
    words.texts = pipeline().texts;
    return words;
}

const Paper& paper(const std::string& short_name) {
    const auto& all = sheet_papers();
    return *std::find_if(all.begin(), all.end(), [&](const Paper& p) { return p.short_name == short_name; });
}

kit::Manifest sample_manifest(const std::string& journal) {
    kit::Manifest m;
    m.kit = "sample";
    m.title = "Sample & Company";
    m.version = "1.2.3";
    m.journal.value = journal;
    m.papers = {paper("letter"), paper("a4")};
    m.prints = {Print::borderless, Print::bordered};
    kit::Set pages, covers;
    pages.name = "journal-pages";
    pages.role = kit::Role::journal_page;
    pages.sides = kit::Sides::duplex;
    pages.stock.value = "copy-100";
    covers.name = "full-sheets";
    covers.role = kit::Role::full_sheet;
    covers.stock.value = "copy-80";
    covers.print_at = 1.0;
    m.sets = {pages, covers};
    return m;
}

journal::Conditions sample_conditions(const kit::Manifest& manifest, const Paper& paper, Print print, double percent) {
    const kit::Pipeline& p = pipeline();
    Edition edition{paper, print, print == Print::bordered ? p.printer("most-home-printers")->duplex : Margins{}};
    const PrintFit fit = fit_of(edition, true);
    journal::Conditions c;
    c.paper = paper;
    c.print = print;
    c.scale = fit.scale * percent / 100;
    const Size sheet = fit.sheet * std::min(1.0, c.scale), cover = fit.sheet * fit.scale;  // who enlarges prints no larger paper
    c.page = {sheet.width / 2, sheet.height};
    c.cover_sheet = cover.as_portrait();
    c.sheets = *manifest.journal == "wrapped-booklet" ? 4 : 12;
    c.full_sheets = 5;
    c.page_stock = *p.stock("copy-100");
    c.cover_stock = *p.stock("copy-80");
    c.board_stock = *p.stock("greyboard-1mm");
    c.spine_stock = c.board_stock;
    return c;
}

std::vector<compose::SizeColumn> sample_columns(const kit::Manifest& manifest, const Paper& paper, const std::vector<double>& percents) {
    std::vector<compose::SizeColumn> columns;
    for (const Print print : manifest.prints)
        for (const double percent : percents) {
            char label[16];
            std::snprintf(label, sizeof label, "%g %%", percent);
            columns.push_back({label, percent, print,
                               journal::compute(pipeline().journals.at(*manifest.journal), sample_conditions(manifest, paper, print, percent))});
        }
    return columns;
}

std::vector<std::string> texts_of(const compose::Document& document) {
    std::vector<std::string> texts;
    for (const compose::Page& page : document.pages)
        for (const compose::Item& item : page.items)
            if (const auto* text = std::get_if<compose::Text>(&item)) texts.push_back(text->words);
    return texts;
}

}  // namespace qw::test
