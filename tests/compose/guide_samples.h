// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/guide_sheet.h"
#include "compose/sample_kit.h"

#include <string>
#include <utility>
#include <vector>

// A guide to look at. The book, tools and cautions are invented.
namespace guide_tests {

using namespace qw;
using namespace qw::compose;

kit::Formula formula(const std::string& text);

template <typename Thing>
Thing named(const std::string& name, const std::string& title) {
    Thing thing;
    thing.name = name;
    thing.title = title;
    thing.count = formula("1");
    return thing;
}

kit::PieceTemplate piece(const std::string& name, const std::string& title, const std::string& width, const std::string& height);
kit::StepTemplate step(int line, const std::string& title, const std::string& text, std::vector<std::string> uses = {},
                       std::vector<std::string> tools = {}, const std::string& drawing = "");
/// A sewn leaflet with something of everything that a guide tells.
kit::JournalTemplate leaflet();
/// Its tools, materials and cautions, and the words of the project's sheets.
const kit::Pipeline& workshop();
journal::Measures measured(const kit::JournalTemplate& journal, const Paper& paper, Print print, int sheets);

/// A guide, with what it was made from; made in place, because its columns point into its journal.
struct Made {
    kit::JournalTemplate journal;
    kit::Manifest manifest;
    std::vector<SizeColumn> columns;
    Document document;

    Made(kit::JournalTemplate of, const std::string& paper, const kit::Pipeline& pipeline = workshop(), int sheets = 19,
         std::vector<Print> prints = {Print::borderless, Print::bordered})
        : journal(std::move(of)) {
        manifest = test::sample_manifest("leaflet");
        manifest.prints = prints;
        for (const Print print : prints) columns.push_back({"100 %", 100, print, measured(journal, test::paper(paper), print, sheets)});
        compose(paper, pipeline);
    }
    Made(const Made&) = delete;

    void compose(const std::string& paper, const kit::Pipeline& pipeline = workshop()) {
        document = guide_sheet({manifest, pipeline, test::paper(paper), test::fonts(), Date{2026, 9, 1}}, columns);
    }
};

std::vector<std::string> plain_texts(const Document& document);
/// All that is written, as one running text.
std::string running(const Document& document);
int times(const std::string& all, const std::string& words);
bool said(const std::string& all, const std::string& words);
/// The page on which a line stands; -1 if none.
int page_of(const Document& document, const std::string& words);
Length size_of_text(const Document& document, const std::string& words);
/// Nothing collides or leaves the margins, every character has a glyph, and no tag was left as it was.
void check_placed(const Document& document);

}  // namespace guide_tests
