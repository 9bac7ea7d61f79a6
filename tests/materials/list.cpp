// SPDX-License-Identifier: GPL-3.0-or-later
#include "materials/list.h"

#include "base/disk.h"
#include "kit/read.h"
#include "journal/example.h"

#include <algorithm>

using namespace qw;
using materials::Line;
using materials::List;

namespace {

const kit::Pipeline& shipped() {
    static const kit::Pipeline pipeline = kit::read_pipeline(*real_disk(), Path(QW_SOURCE_DIR) / "pipeline");
    return pipeline;
}

kit::Set set(const std::string& name, kit::Role role, std::size_t files, const std::string& stock, kit::Sides sides = kit::Sides::single) {
    kit::Set s;
    s.name = name;
    s.role = role;
    s.files.resize(files);
    s.sides = sides;
    s.stock.value = stock;
    return s;
}

/// 24 faces on 12 sheets, 5 full sheets, 2 sheets of extras.
kit::Manifest almanac() {
    kit::Manifest m;
    m.sets = {set("journal-pages", kit::Role::journal_page, 24, "copy-100", kit::Sides::duplex),
              set("full-sheets", kit::Role::full_sheet, 5, "copy-80"), set("extras", kit::Role::extra, 2, "copy-100")};
    return m;
}

journal::Measures measured(const std::string& journal, const Paper& paper) {
    auto c = example::conditions(paper);
    c.page_stock = *shipped().stock("copy-100");
    c.cover_stock = *shipped().stock("copy-80");
    c.board_stock = *shipped().stock("greyboard-1mm");
    if (journal == "wrapped-booklet") c.sheets = 4, c.full_sheets = 1;
    return journal::compute(shipped().journals.at(journal), c);
}

const Line& line(const List& list, const std::string& name) {
    for (const Line& one : list.lines)
        if (one.name == name) return one;
    FAIL("no line " + name);
    return list.lines.front();
}

bool has(const List& list, const std::string& name) {
    return std::any_of(list.lines.begin(), list.lines.end(), [&](const Line& l) { return l.name == name; });
}

std::vector<std::string> cautions(const List& list) {
    std::vector<std::string> names;
    for (const kit::Caution& c : list.cautions) names.push_back(c.name);
    return names;
}

std::string code_of(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const journal::Measures& measures) {
    return example::refused([&] { materials::count(manifest, pipeline, measures); }).at(0).code;
}

}  // namespace

TEST_CASE("what a soft-spine journal needs on A4") {
    const List list = materials::count(almanac(), shipped(), measured("soft-spine", example::a4()));
    CHECK(line(list, "copy-100").metric == "14 sheets A4, 100 g/m² (27 lb bond)");
    CHECK(line(list, "copy-100").use == "12 for journal pages, printed on both sides, in 2 signatures of 6; 2 for extras");
    CHECK(line(list, "copy-80").metric == "5 sheets A4, 80 g/m² (21 lb bond)");
    CHECK(line(list, "copy-80").use == "5 for full sheets");
    // 2 × 153 × 216 + 15 × 216 mm² = 69 336 mm².
    CHECK(line(list, "greyboard-1mm").metric == "2 of 153 x 216 mm, 1 of 15 x 216 mm, 694 cm² together");
    CHECK(line(list, "greyboard-1mm").group == Line::Group::board);
    CHECK(line(list, "hinge-tape").metric == "1 of 38 x 452 mm");
    CHECK(line(list, "hinge-tape").group == Line::Group::glueing);
    CHECK(line(list, "elastic-1mm").metric == "2 of 378 mm, 756 mm together");
    CHECK(line(list, "elastic-1mm").group == Line::Group::sewing);
    CHECK(line(list, "closing-elastic").metric == "1 of 323 mm");
    CHECK(line(list, "eyelet").metric == "3 of 3 mm");
    CHECK(line(list, "pva-glue").group == Line::Group::glueing);
    CHECK(line(list, "pva-glue").metric == "1");
    // Liners and cover papers are cut from the full sheets that are on the list already.
    CHECK_FALSE(has(list, "liner"));
    CHECK_FALSE(has(list, "cover-paper"));
    CHECK(std::is_sorted(list.lines.begin(), list.lines.end(), [](const Line& a, const Line& b) { return a.group < b.group; }));
    for (const Line& one : list.lines) {
        CAPTURE(one.name);
        CHECK_FALSE(one.title.empty());
        CHECK_FALSE(one.use.empty());
        CHECK_FALSE(one.us.empty());
    }
}

TEST_CASE("on letter the same list is in inches") {
    const List list = materials::count(almanac(), shipped(), measured("soft-spine", example::letter()));
    CHECK(line(list, "copy-100").us == "14 sheets US letter, 100 g/m² (27 lb bond)");
    // 2 × 5 5/8 × 8 3/4 + 5/8 × 8 3/4 in² = 103.9 in².
    CHECK(line(list, "greyboard-1mm").us == "2 of 5 5/8 x 8 3/4 in, 1 of 5/8 x 8 3/4 in, 104 sq in together");
    CHECK(line(list, "elastic-1mm").us == "2 of 15 3/4 in, 31 1/2 in together");
    CHECK(line(list, "eyelet").us == "3 of 1/8 in");
}

TEST_CASE("paper that is not printed is on the list") {
    kit::Manifest m;
    m.sets = {set("pages", kit::Role::journal_page, 8, "copy-100", kit::Sides::duplex), set("cover", kit::Role::full_sheet, 1, "copy-80")};
    const List booklet = materials::count(m, shipped(), measured("wrapped-booklet", example::a4()));
    CHECK(line(booklet, "copy-100").use == "4 for journal pages, printed on both sides, in one signature");
    CHECK(line(booklet, "copy-80").metric == "1 sheet A4, 80 g/m² (21 lb bond)");
    CHECK_THAT(line(booklet, "liner").metric, Catch::Matchers::Contains("100 g/m² (27 lb bond)"));
    CHECK(line(booklet, "liner").group == Line::Group::paper);
    CHECK(line(booklet, "linen-thread").group == Line::Group::sewing);

    // A kit without full sheets: the buyer's own cover paper.
    auto c = measured("soft-spine", example::a4()).conditions;
    c.full_sheets = 0;
    c.cover_sheet = {};
    m.sets.pop_back();
    const List bare = materials::count(m, shipped(), journal::compute(shipped().journals.at("soft-spine"), c));
    CHECK(line(bare, "cover-paper").metric == "2 of 179 x 242 mm, 80 g/m² (21 lb bond)");
    CHECK(has(bare, "liner"));
}

TEST_CASE("sheets are counted from the artwork where that is told, because a PDF holds many faces") {
    const auto measures = measured("soft-spine", example::a4());
    kit::Manifest m = almanac();
    m.sets[0].files.resize(1);  // one PDF; the conditions know its 12 sheets
    m.sets[2].files.resize(1);
    CHECK(line(materials::count(m, shipped(), measures), "copy-100").metric == "13 sheets A4, 100 g/m² (27 lb bond)");
    CHECK(line(materials::count(m, shipped(), measures, {{"extras", 6}}), "copy-100").metric == "18 sheets A4, 100 g/m² (27 lb bond)");
    // Two sets of one role: each by its own files; an odd face has a sheet of its own.
    m = almanac();
    m.sets[0].files.resize(17);
    m.sets.push_back(set("more-pages", kit::Role::journal_page, 7, "card-160", kit::Sides::duplex));
    const List two = materials::count(m, shipped(), measures);
    CHECK(line(two, "copy-100").metric == "11 sheets A4, 100 g/m² (27 lb bond)");
    CHECK(line(two, "card-160").metric == "4 sheets A4, 160 g/m² (59 lb cover)");
    CHECK(line(two, "card-160").use == "4 for journal pages, printed on both sides");
    // Signatures that do not come out even.
    auto c = measures.conditions;
    c.sheets = 13;
    const List odd = materials::count(almanac(), shipped(), journal::compute(shipped().journals.at("soft-spine"), c));
    CHECK_THAT(line(odd, "copy-100").use, Catch::Matchers::Contains("in 2 signatures of up to 7"));
    // None of a set: no line.
    CHECK_FALSE(has(materials::count(almanac(), shipped(), measures, {{"full-sheets", 0}}), "copy-80"));
}

TEST_CASE("cautions follow from tools and materials, each once, in the order of the data") {
    const auto measures = measured("soft-spine", example::a4());
    const List list = materials::count(almanac(), shipped(), measures);
    std::vector<std::string> expected;
    for (const kit::Caution& c : shipped().cautions) expected.push_back(c.name);
    CHECK(cautions(list) == expected);  // this journal has knives, points, elastic, eyelets, glue: all of them
    CHECK(list.tools.size() == measures.journal->tools.size());

    const List booklet = materials::count(almanac(), shipped(), measured("wrapped-booklet", example::a4()));
    const auto said = cautions(booklet);
    CHECK(std::count(said.begin(), said.end(), "elastic-loops") == 0);  // sewn with thread
    CHECK(std::count(said.begin(), said.end(), "hammer-blows") == 0);
    CHECK(std::count(said.begin(), said.end(), "fumes") == 1);
    CHECK(std::count(said.begin(), said.end(), "blades") == 1);

    // What always stands, stands on a list of nothing.
    kit::JournalTemplate nothing;
    journal::Measures bare;
    bare.journal = &nothing;
    kit::Pipeline p;
    p.cautions = {{"first", "F.", false}, {"always", "A.", true}, {"last", "L.", false}};
    CHECK(cautions(materials::count({}, p, bare)) == std::vector<std::string>{"always"});
    p.tools = {{"knife", "Knife", "u", {"last", "first", "last"}}};
    nothing.tools = {"knife", "knife"};
    const List knife = materials::count({}, p, bare);
    CHECK(cautions(knife) == std::vector<std::string>{"first", "always", "last"});
    CHECK(knife.tools.size() == 1);
}

TEST_CASE("what the pipeline does not have is refused") {
    const auto measures = measured("soft-spine", example::a4());
    kit::Pipeline p = shipped();
    SECTION("a tool") {
        p.tools.erase(p.tools.begin());
        CHECK(code_of(almanac(), p, measures) == "unknown-tool");
    }
    SECTION("a material") {
        p.materials.clear();
        CHECK(code_of(almanac(), p, measures) == "unknown-material");
    }
    SECTION("a caution") {
        p.cautions.pop_back();
        CHECK(code_of(almanac(), p, measures) == "unknown-caution");
    }
    SECTION("a stock") {
        kit::Manifest m = almanac();
        m.sets[1].stock.value = "copy-81";
        CHECK(code_of(m, p, measures) == "unknown-stock");
    }
}
