// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/disk.h"
#include "compose/collisions.h"
#include "compose/fractions.h"
#include "compose/materials_sheet.h"
#include "compose/sample_kit.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace qw;
using namespace qw::compose;
using namespace qw::literals;
using materials::Line;

namespace {

Document sheet_of(const materials::List& list, const Paper& paper) {
    static const kit::Manifest manifest = test::sample_manifest("soft-spine");
    static const kit::Pipeline words = test::words_alone();
    return materials_sheet({manifest, words, paper, test::fonts(), Date{2026, 9, 1}}, list);
}

Line line(Line::Group group, const std::string& title, const std::string& metric, const std::string& us, const std::string& use) {
    Line one;
    one.group = group;
    one.name = one.title = title;
    one.metric = metric;
    one.us = us;
    one.use = use;
    return one;
}

/// Of every kind one, with the longest words that the lists of the project have.
materials::List full_list() {
    using Group = Line::Group;
    materials::List list;
    list.lines = {
        line(Group::paper, "Copy paper, 100 g/m²", "14 sheets A4, 100 g/m² (27 lb bond; on the shelf: 28 lb)",
             "14 sheets A4, 100 g/m² (27 lb bond; on the shelf: 28 lb)",
             "12 for journal pages, printed on both sides, in 2 signatures of 6; 2 for extras"),
        line(Group::board, "Greyboard, 1 mm", "2 of 153 x 216 mm, 1 of 15 x 216 mm; 1 sheet: greyboard, A3",
             "2 of 5 5/8 x 8 3/4 in, 1 of 5/8 x 8 3/4 in; 1 sheet: greyboard, A3",
             "Board: one for each cover; spine strip: between the boards, with a gap on each side; grain along the height of each"),
        line(Group::sewing, "Round elastic, about 1 mm", "2 of 378 mm, 1 of 323 mm; buy 1.2 m (10 % more)",
             "2 of 15 3/4 in, 1 of 12 1/2 in; buy 1 3/8 yd (10 % more)",
             "Sewing elastic: sews one signature to the spine; closing band (optional): goes round the closed journal"),
        line(Group::glueing, "Book cloth tape, self-adhesive", "1 of 38 x 452 mm; buy 50 cm, 38 mm wide (10 % more)",
             "1 of 1 1/2 x 18 1/4 in; buy 21 in, 1 1/2 in wide (10 % more)", "Hinge tape: joins boards and spine strip, outside and then inside"),
        line(Group::glueing, "PVA bookbinding glue", "1, for 930 cm²", "1, for 144 sq in", "for the cover paper on the boards"),
        line(Group::other, "Eyelets", "3 of 3 mm; buy 4 (1 to spare)", "3 of 1/8 in; buy 4 (1 to spare)", "one for each station on the spine"),
        line(Group::other, "Label", "1", "1", "on the front")};
    list.lines[1].instead = {{"a4", "Greyboard, A4", "", "2 sheets", "2 sheets", ""}};
    list.lines[2].instead = {{"waxed-twine", "Waxed twine", "sewing elastic", "2 of 378 mm; buy 85 cm (10 % more)",
                              "2 of 15 3/4 in; buy 35 in (10 % more)", "knotted inside the fold"}};
    list.lines[3].instead = {{"paper-strip", "Strong paper", "", "1 of 38 x 452 mm, in 2 strips that overlap 20 mm",
                              "1 of 1 1/2 x 18 1/4 in, in 2 strips that overlap 3/4 in", "pasted on with PVA"}};
    list.lines[5].instead = {{"bare-holes", "Bare holes", "", "", "", "pierced and left as they are"}};
    list.lines.back().optional = true;
    for (const char* tool : {"Pencil", "Steel ruler", "Craft knife with new blades", "Cutting mat", "Scissors", "Bone folder",
                             "Piercing mat or thick felt", "Sewing needle with a large eye", "Binder clips", "Flat glue brush"})
        list.tools.push_back({{tool, tool, "for what it is made for, and under everything that is cut", {}}, ""});
    list.tools.push_back({{"setter", "Eyelet punch and setter", "for the holes in the spine strip", {}}, "eyelets"});
    list.tools.push_back({{"awl", "Awl", "to pierce the stations", {}}, "bare holes or closing band"});
    for (int i = 0; i < 8; ++i)
        list.cautions.push_back(
            {"c" + std::to_string(i),
             "Caution number " + std::to_string(i) +
                 ": cut on a mat, along a steel ruler, with a sharp blade: several light passes, not one strong "
                 "one. Move the blade away from the hand that holds the ruler and from your body, keep your fingers behind the ruler's edge.",
             false});
    list.thicknesses = {{"Copy paper, 100 g/m²", 0.125_mm}, {"Copy paper, 80 g/m²", 0.102_mm}, {"Greyboard, 1 mm", 1_mm}};
    return list;
}

/// All words of a document as they would be typed.
std::string words_of(const Document& document) {
    std::string all;
    for (const std::string& text : test::texts_of(document)) all += text + " ";
    return plain_fractions(all);
}

std::string said(const std::string& words) { return plain_fractions(real_fractions(words)); }

void check_clear(const Document& document, const Paper& paper) {
    for (const Page& page : document.pages) {
        CHECK(page.size == paper.size);
        for (const Collision& c : collisions(page, test::fonts(), SheetMargins::text(page.size))) {
            CAPTURE(paper.short_name, c.words, c.other, static_cast<int>(c.with));
            FAIL_CHECK("collides");
        }
    }
}

/// How many boxes to tick there are: frames of 3 mm.
long ticks(const Document& document) {
    long count = 0;
    for (const Page& page : document.pages)
        count += std::count_if(page.items.begin(), page.items.end(), [](const Item& item) {
            const auto* o = std::get_if<Outline>(&item);
            if (!o || o->steps.size() != 5) return false;
            const Point from = std::get<Outline::Move>(o->steps[0]).to, to = std::get<Outline::Line>(o->steps[2]).to;
            return to.x - from.x == 3_mm && to.y - from.y == 3_mm;
        });
    return count;
}

}  // namespace

TEST_CASE("on no paper does the list of materials leave its margins or collide", "[many]") {
    for (const Paper& paper : test::sheet_papers()) check_clear(sheet_of(full_list(), paper), paper);
}

TEST_CASE("nothing of a list is lost on any paper", "[many]") {
    const materials::List list = full_list();
    for (const Paper& paper : test::sheet_papers()) {
        CAPTURE(paper.short_name);
        const std::string words = words_of(sheet_of(list, paper));
        const auto says = [&](const std::string& text) {
            CAPTURE(text);
            CHECK(words.find(said(text)) != std::string::npos);
        };
        for (const Line& one : list.lines) {
            says(one.title), says(one.metric), says(one.us), says(one.use);
            for (const materials::OtherWay& way : one.instead) says(way.title.substr(1)), says(way.metric), says(way.us), says(way.use);
        }
        for (const materials::ToolLine& tool : list.tools) says(tool.tool.title), says(tool.tool.use);
        for (const kit::Caution& caution : list.cautions) says(caution.text);
        for (const materials::Thickness& one : list.thicknesses) says(one.title + ": " + one.text(paper.ruler));
        says("Label (optional)");
        says("or, for the sewing elastic: waxed twine");
        says("or bare holes");
        says("only for eyelets");
        says("only for bare holes or closing band");
    }
}

TEST_CASE("everything that is bought or laid ready has a box to tick, what is only done has none") {
    const materials::List list = full_list();
    long bought = static_cast<long>(list.lines.size() + list.tools.size());
    for (const Line& one : list.lines)
        bought += std::count_if(one.instead.begin(), one.instead.end(), [](const materials::OtherWay& way) { return !way.metric.empty(); });
    for (const Paper& paper : test::sheet_papers()) CHECK(ticks(sheet_of(list, paper)) == bought);
}

TEST_CASE("the paper's own ruler stands first and larger", "[many]") {
    const auto size_of = [](const Document& document, const std::string& words) {
        Length size;
        for (const Page& page : document.pages)
            for (const Item& item : page.items)
                if (const auto* text = std::get_if<Text>(&item); text && plain_fractions(text->words) == said(words)) size = max(size, text->size);
        return size;
    };
    for (const Paper& paper : test::sheet_papers()) {
        const Document document = sheet_of(full_list(), paper);
        const bool metric = paper.ruler == UnitSystem::metric;
        CHECK(size_of(document, metric ? "1, for 930 cm²" : "1, for 144 sq in") >= 12_pt);
        const Length other = size_of(document, metric ? "1, for 144 sq in" : "1, for 930 cm²");
        CHECK(other < 12_pt);
        CHECK(other >= 8_pt);
    }
}

TEST_CASE("an amount that both rulers tell alike stands once") {
    const std::string words = words_of(sheet_of(full_list(), test::sheet_papers()[1]));
    const std::string amount = said("14 sheets A4, 100 g/m² (27 lb bond; on the shelf: 28 lb)");
    const auto first = words.find(amount);
    REQUIRE(first != std::string::npos);
    CHECK(words.find(amount, first + 1) == std::string::npos);
}

TEST_CASE("a long list takes more pages, and each that goes on in a group says which", "[many]") {
    materials::List list = full_list();
    for (int i = 0; i < 40; ++i)
        list.lines.insert(list.lines.begin() + 5,
                          line(Line::Group::glueing, "Tape " + std::to_string(i), "1 of 38 x 452 mm", "1 of 1 1/2 x 18 in", "joins the boards"));
    for (int i = 0; i < 60; ++i) list.tools.push_back({{"t", "Tool " + std::to_string(i), "to work with", {}}, ""});
    for (int i = 0; i < 40; ++i) list.cautions.push_back(list.cautions[0]);
    for (const Paper& paper : test::sheet_papers()) {
        CAPTURE(paper.short_name);
        const Document document = sheet_of(list, paper);
        check_clear(document, paper);
        CHECK(document.pages.size() > 4);
        for (const Page& page : document.pages) {
            Document alone;
            alone.pages = {page};
            const std::string words = words_of(alone);
            if (words.find("Tape ") != std::string::npos) CHECK(words.find("Gluing") != std::string::npos);
        }
        const std::string words = words_of(document);
        for (int i = 0; i < 60; ++i) CHECK(words.find("Tool " + std::to_string(i) + " ") != std::string::npos);
    }
}

TEST_CASE("a list of nothing is still a sheet") {
    for (const Paper& paper : test::sheet_papers()) {
        const Document document = sheet_of({}, paper);
        CHECK(document.pages.size() == 1);
        check_clear(document, paper);
    }
}

TEST_CASE("the shipped journals' lists fit on every paper", "[many]") {
    for (const auto& [name, journal] : test::pipeline().journals) {
        const auto manifest = test::sample_manifest(name);
        for (const Paper& paper : {test::paper("letter"), test::paper("a4")}) {
            CAPTURE(name, paper.short_name);
            const auto measures = test::sample_columns(manifest, paper, {100})[0].measures;
            const materials::List list = materials::count(manifest, test::pipeline(), measures);
            REQUIRE(!list.lines.empty());
            REQUIRE(!list.cautions.empty());
            check_clear(sheet_of(list, paper), paper);
            for (const Line& one : list.lines) {
                CAPTURE(one.name);
                CHECK_FALSE(one.title.empty());
                CHECK_FALSE(one.use.empty());
            }
        }
    }
}
