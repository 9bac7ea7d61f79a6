// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/claim_rules.h"

#include "checks/rules_in_force.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

namespace {

checks::SizeTold size(double width, double height) { return {{Length::mm(width), Length::mm(height)}, {Length::mm(width), Length::mm(height)}}; }

const checks::StockTold copy_100{"Copy paper", 100, 0, "100 g/m² (27 lb bond; on the shelf: 28 lb)"};
const checks::StockTold card_160{"Card", 160, 0, "160 g/m² (59 lb cover; on the shelf: 65 lb)"};
const checks::StockTold board{"Greyboard", 615, 0, "615 g/m²"};

checks::ThingTold bought(const std::string& title, std::vector<std::string> phrases, std::vector<std::string> loose, bool needed, bool cautioned = false) {
    checks::ThingTold thing{title, std::move(phrases), std::move(loose)};
    thing.to_buy = true;
    thing.needed = thing.must = needed;
    thing.cautioned = cautioned;
    return thing;
}

/// Twelve duplex sheets, six pockets with three pockets each, six tags, A4, no border.
checks::KitTold kit() {
    checks::KitTold kit;
    kit.version = "1.2.0";
    kit.things = {{"pages", {"page"}, {}, {24, 48}, {size(148.5, 210), size(210, 297)}, {copy_100}},
                  {"journal pages", {"journal page"}, {}, {24}, {size(148.5, 210)}, {copy_100}},
                  {"journal sheets", {"sheet of journal page", "double sided sheet"}, {}, {12}, {}, {copy_100}},
                  {"sheets", {"sheet"}, {}, {12, 5, 30, 47}},
                  {"full sheets", {"full sheet", "cover sheet"}, {}, {5}, {}, {copy_100}},
                  {"pockets", {"pocket", "trifold pocket"}, {}, {6, 3, 18}, {size(84, 120.5), size(270, 184)}, {card_160}},
                  {"tags", {"tag"}, {}, {6}, {size(74.5, 105)}, {card_160}},
                  {"envelope", {"envelope"}, {}, {0}},
                  {"board", {"board"}, {}, {2}, {size(153, 216), size(152.4, 215.9)}, {board}},
                  {"A4", {"a4", "paper"}, {}, {}, {size(210, 297)}},
                  {"closed journal", {"journal", "book"}, {}, {}, {{{Length::mm(148.5), Length::mm(210)}, {Length::mm(165), Length::mm(216)}}}},
                  {"paper sizes", {"paper size"}, {}, {1}},
                  bought("Awl", {"awl"}, {}, true, true),
                  bought("Craft knife", {"craft knife"}, {"knife"}, true, true),
                  bought("Steel ruler", {"steel ruler"}, {"ruler"}, true),
                  bought("Hammer", {"hammer"}, {}, false),
                  bought("Bone folder", {"bone folder"}, {"folder"}, true)};
    kit.stocks = {copy_100, card_160, board};
    kit.papers = {"a4"};
    kit.prints = {"borderless"};
    return kit;
}

/// "rule:line", one for each finding, in their order.
std::string told(const std::string& text) {
    Findings findings;
    checks::check_claims(rules(), kit(), texts::read_pasted(text), "listing.txt", findings);
    std::string all;
    for (const Finding& finding : findings) all += (all.empty() ? "" : " ") + finding.rule + ":" + std::to_string(finding.line);
    return all;
}

struct Row {
    const char* text;
    const char* told;
};

void check(const std::vector<Row>& rows) {
    for (const Row& row : rows) {
        INFO(row.text);
        CHECK(told(row.text) == row.told);
    }
}

}  // namespace

TEST_CASE("counts in a listing are the kit's") {
    check({{"The kit includes 24 journal pages, 6 tags and six fold-up trifold pockets.", ""},
           {"The kit includes 23 journal pages.", "text-counts:1"},
           {"- 12 sheets of journal pages\n- 5 tags\n- 6 pockets", "text-counts:2"},
           {"\u2022 6x tags\r\n\u2022 twelve double-sided sheets\r\n\u2022 seven pockets\r\n", "text-counts:3"},
           {"Tags: 6\nJournal pages: 22 (A4)", "text-counts:2"},
           {"| Pages | 24 |\n| Tags | 8 |", "text-counts:2"},
           {"You get 5 tags. Yes, 5 tags! Once more: 5 tags.", "text-counts:1"},  // one difference, however often it is made
           {"It contains a set of twenty-four pages and two dozen pages.", ""},
           {"It contains twenty-five pages.", "text-counts:1"},
           {"- 2 envelopes", "text-counts:1"},
           {"- 2 paper sizes", "text-counts:1"}});
}

TEST_CASE("numbers that tell nothing of the kit are left alone") {
    check({{"The kit has over 20 pages, up to 40 tags, about 10 pockets and 2 tags per pocket.", ""},
           {"Fold two pages together, then cut 3 tags.", ""},
           {"See page 12, step 3, and print 2 tags on each page.", ""},
           {"Two of the pages go in first. One tag fits.", ""},
           {"In 2024 I made 300 prints, 5 friends helped for 3 days; includes 40 stickers.", ""},
           {"The set includes 1 journal page to try.", ""},
           {"Made with love since 1998, 5-star rated, $12 instead of $15.", ""},
           {"Print at 100 %, 300 dpi; the file has 20 MB.", ""}});
}

TEST_CASE("a weight of paper is that of the thing beside it") {
    check({{"Print the pages on 100 g/m\u00b2 paper and the tags on 160gsm card.", ""},
           {"Print the pages on 120 g/m\u00b2 paper and the tags on 160 gsm card.", "text-grammage:1"},
           {"Print the pages on 160 g/m2 paper.", "text-grammage:1"},  // right for tags only
           {"Use 160 g card.", ""},
           {"Paper: 120 g/m\u00b2.", "text-grammage:1"},
           {"Pages: 120 g/m\u00b2 (32 lb bond)\nAgain, 120 gsm paper is best.", "text-grammage:1"},  // the changed stock: one difference
           {"Print the pages on 120 g/m\u00b2 paper (32 lb bond). Yes, 120 gsm.", "text-grammage:1"},
           {"Print the pages on 100 g/m\u00b2 paper (40 lb bond).", "text-grammage:1"},
           {"Tags on 65 lb cardstock (175 g/m2).", "text-grammage:1"},
           {"Tags on 59 lb cover or 65 lb cover.", ""},
           {"Tags on 80 lb cover.", "text-grammage:1"},
           {"Pages on 28 lb copy paper.", ""},
           {"Pages on 90-120 gsm paper, tags on 150 to 170 g/m2.", ""},
           {"Pages on 110 \u2013 130 gsm paper.", "text-grammage:1"},
           {"Pages on about 104 g/m2.", ""},
           {"80 lb paper, 5 lb of flour and 120 g of sugar.", ""}});
}

TEST_CASE("a size is that of the thing beside it, in any unit") {
    check({{"Page size: 14,85 x 21 cm. The boards measure 15.3 \u00d7 21.6 cm (6 x 8\u00bd in).", ""},
           {"Page size: 14 x 20 cm.", "text-sizes:1"},
           {"The boards measure 6 x 8 1/2 in (152 x 216 mm).", ""},
           {"The boards measure 5\u00be\u2033 \u00d7 8\u00bd\u2033 (14.6 x 21.6 cm).", "text-sizes:1"},  // twice the same, told once
           {"Closed journal: 16 by 21.5 cm.", ""},
           {"The closed journal is 18 x 25 cm.", "text-sizes:1"},
           {"Tags are 105 x 74.5 mm, folded pockets 8.4 x 12 cm.", ""},
           {"Tags are 110 x 74.5 mm.", "text-sizes:1"},
           {"A4 (21 x 29.7 cm)", ""},
           {"The video is 1920 x 1080, the box 30 x 20 x 5 cm, my desk 60 x 120 cm.", ""}});
}

TEST_CASE("papers, prints and versions that a listing offers are the kit's") {
    check({{"Files for A4 paper, borderless.", ""},
           {"Files for A4 and US Letter.", "text-papers:1"},
           {"Print on Letter paper.", "text-papers:1"},
           {"Makes an A5 journal; write a letter and put it in.", ""},
           {"Not for letter paper. No bordered files. Letters fit into the pockets.", ""},
           {"Borderless files and files with a white border.", "text-prints:1"},
           {"Without a border.", ""},
           {"Tidewater v1.2.0, version 1.2, PDF version 1.7", ""},
           {"Version: 1.1.0", "text-version:1"},
           {"Almanac v1.3", "text-version:1"}});
}

TEST_CASE("lists of what is included and of what is needed are the kit's") {
    check({{"What's included:\n- tags\n- pockets", ""},
           {"What's included:\n- tags\n- envelopes", "text-included:3"},
           {"Envelopes are not included. No envelopes.", ""},
           {"## You will need\n- awl (careful, sharp)\n- ruler, knife\n- bone folder", ""},
           {"## You will need\n- awl (careful, sharp)\n- ruler, knife\n- bone folder\n- a hammer", "text-materials:5"},
           {"Tools: awl, knife, ruler and care.", "text-list-short:1"},
           {"Tools: awl, knife, ruler, bone folder.", "text-cautions:1"},
           {"A hammer of a kit!", ""}});
}

TEST_CASE("a pasted text of any kind is read to its end") {
    CHECK(told("") == "");
    CHECK(told("\n\r\n\r") == "");
    CHECK(told("# \n- \n1. \n:") == "");
    std::string long_text;
    for (int i = 0; i < 20000; ++i) long_text += "The kit includes 6 tags, 5 tags and 1/2 x (\u00bd\u2033 of 12 x 14 in pages).\n";
    CHECK(long_text.size() > 1000000);
    CHECK(told(long_text) == "text-counts:1 text-sizes:1");
    CHECK(told(std::string(100000, '(') + std::string(100000, '1') + std::string(100000, '*')) == "");
    CHECK(told("1/0 x 2/0 in pages, 99999999999999999999 tags, 1,2,3.4.5 tags, 1/1000 tag") == "");
}
