// SPDX-License-Identifier: GPL-3.0-or-later
#include "materials/workshop.h"

using namespace qw;
using namespace qw::workshop;
using namespace qw::literals;

namespace {

std::string code_of(const kit::Pipeline& pipeline, const kit::Manifest& manifest = almanac(), const kit::JournalTemplate& journal = Book().made) {
    return example::refused([&] { Counted(journal, example::conditions(example::a4()), manifest, pipeline); }).at(0).code;
}

/// An alternative of a line, by name.
const materials::OtherWay& way(const Line& line, const std::string& name) {
    for (const materials::OtherWay& one : line.instead)
        if (one.name == name) return one;
    FAIL("no way " + name);
    return line.instead.front();
}

}  // namespace

TEST_CASE("sheets of paper add up by stock, in signatures as they are sewn") {
    const Counted book(Book().made);
    CHECK(book.line("copy-100").metric == "14 sheets A4, 100 g/m² (27 lb bond; on the shelf: 28 lb)");
    CHECK(book.line("copy-100").use == "12 for journal pages, printed on both sides, in 2 signatures of 6; 2 for extras");
    CHECK(book.line("copy-80").metric == "5 sheets A4, 80 g/m² (21 lb bond; on the shelf: 20 lb)");
    CHECK(book.line("copy-80").use == "5 for full sheets, full sheets needed: 2 (kit has 5)");

    Book other;
    other.made.sewing->signatures = other.formula("1");
    CHECK_THAT(Counted(other.made).line("copy-100").use, Catch::Matchers::Contains("in one signature;"));
    other.made.sewing->signatures = other.formula("5");
    CHECK_THAT(Counted(other.made).line("copy-100").use, Catch::Matchers::Contains("in 5 signatures of up to 3;"));
    // A number that happens to be called signatures says nothing of a journal that is not sewn.
    other.made.sewing.reset();
    other.number("signatures", 2);
    CHECK(Counted(other.made).line("copy-100").use == "12 for journal pages, printed on both sides; 2 for extras");
}

TEST_CASE("full sheets that are printed again are on the list, and it is said which") {
    auto c = example::conditions(example::a4());
    c.full_sheets = 1;
    const Counted book(Book().made, c);
    CHECK(book.line("copy-80").metric == "2 sheets A4, 80 g/m² (21 lb bond; on the shelf: 20 lb)");
    CHECK(book.line("copy-80").use == "2 for full sheets, full sheets needed: 2 (kit has 1), so print it twice");
    // Told once, beside the first of two sets.
    kit::Manifest m = almanac();
    m.sets.push_back(set("more-sheets", kit::Role::full_sheet, 1, "copy-100", kit::Sides::single));
    const Counted two(Book().made, example::conditions(example::a4()), m);
    CHECK_THAT(two.line("copy-100").use, Catch::Matchers::EndsWith("; 1 for full sheets"));
}

TEST_CASE("groups come from the materials' data and stand in their order") {
    const Counted book(Book().made);
    CHECK(book.line("elastic").group == Line::Group::sewing);
    CHECK(book.line("tape").group == Line::Group::glueing);
    CHECK(book.line("pva").group == Line::Group::glueing);
    CHECK(book.line("eyelet").group == Line::Group::other);
    CHECK(book.line("greyboard-1mm").group == Line::Group::board);
    CHECK(std::is_sorted(book.list.lines.begin(), book.list.lines.end(), [](const Line& a, const Line& b) { return a.group < b.group; }));
    // A name says nothing: glue among the sewing things, if the data has it there.
    kit::Pipeline p = shelves();
    p.materials[5].group = kit::Material::Group::sewing;
    CHECK(Counted(Book().made, example::conditions(example::a4()), almanac(), p).line("pva").group == Line::Group::sewing);
    // An item that is no material has its own title.
    CHECK(book.line("bead").group == Line::Group::other);
    CHECK(book.line("bead").title == "Bead");
}

TEST_CASE("lengths of one material are one line with its allowance, in both rulers") {
    const Counted book(Book().made);
    const Line& elastic = book.line("elastic");
    CHECK(elastic.title == "Round elastic");
    CHECK(elastic.metric == "2 of 378 mm, 1 of 323 mm; buy 1.2 m (10 % more)");     // 1079 mm and a tenth: 1186.9
    CHECK(elastic.us == "2 of 15 in, 1 of 12 1/2 in; buy 1 3/8 yd (10 % more)");    // 42 1/2 in and a tenth: 46 3/4
    CHECK(elastic.use == "Sewing: sews a signature; band (optional): goes round the book");
    CHECK_FALSE(elastic.optional);
    REQUIRE(elastic.instead.size() == 1);
    CHECK(way(elastic, "twine").title == "Waxed twine");
    CHECK(way(elastic, "twine").stands_for == "sewing");
    CHECK(way(elastic, "twine").metric == "2 of 378 mm; buy 95 cm (20 % more)");  // 907.2
    CHECK(way(elastic, "twine").us == "2 of 15 in; buy 1 yd (20 % more)");
    CHECK(way(elastic, "twine").use == "knotted inside");

    kit::Pipeline p = shelves();
    p.materials[2].allowance = 0;
    const Counted bare(Book().made, example::conditions(example::letter()), almanac(), p);
    CHECK(bare.line("elastic").metric == "2 of 378 mm, 1 of 323 mm, 1079 mm together");
    CHECK(bare.line("elastic").us == "2 of 15 in, 1 of 12 1/2 in, 42 1/2 in together");
    // Where the whole line may be left out, the line says so and not each of its things.
    Book all;
    all.length_named("sewing").optional = true;
    const Counted free(all.made);
    CHECK(free.line("elastic").optional);
    CHECK(free.line("elastic").use == "Sewing: sews a signature; band: goes round the book");
}

TEST_CASE("items are counted with what is to spare; glue is for an area") {
    const Counted book(Book().made);
    CHECK(book.line("eyelet").title == "Eyelets");
    CHECK(book.line("eyelet").metric == "3 of 3 mm; buy 4 (1 to spare)");
    CHECK(book.line("eyelet").us == "3 of 1/8 in; buy 4 (1 to spare)");
    CHECK(way(book.line("eyelet"), "bare-holes").metric.empty());  // nothing is bought
    CHECK(way(book.line("eyelet"), "bare-holes").use == "pierced and left as they are");
    CHECK(way(book.line("eyelet"), "bare-holes").stands_for.empty());
    // 2 × 150 × 200 + 2 × 140 × 190 = 113 200 mm²; 2 × 6 × 8 + 2 × 5 1/2 × 7 1/2 = 178 1/2 in².
    CHECK(book.line("pva").metric == "1, for 1132 cm²");
    CHECK(book.line("pva").us == "1, for 179 sq in");
    CHECK(way(book.line("pva"), "wheat-paste").metric == "1, for 1132 cm²");
    CHECK(book.line("bead").metric == "1");
    CHECK(book.line("bead").optional);
    CHECK_FALSE(book.line("eyelet").optional);
}

TEST_CASE("board is added up by stock, with its area where no plan says how many sheets") {
    const Counted book(Book().made);
    const Line& board = book.line("greyboard-1mm");
    CHECK(board.metric == "2 of 150 x 200 mm, 1 of 15 x 200 mm, 630 cm² together");
    CHECK(board.us == "2 of 6 x 8 in, 1 of 1/2 x 8 in, 100 sq in together");
    CHECK(board.use == "Board: one for each cover; spine: between the boards; grain along the height of each");

    auto c = example::conditions(example::a4());
    c.spine_stock = {"card", "Card, 0.5 mm", kit::Stock::Kind::board, 380, 0.5_mm, "", false};
    const Counted two(Book().made, c);
    CHECK(two.line("greyboard-1mm").metric == "2 of 150 x 200 mm, 600 cm² together");
    CHECK(two.line("card").title == "Card, 0.5 mm");
    CHECK(two.line("card").metric == "1 of 15 x 200 mm, 30 cm²");
    CHECK(two.line("card").use == "Spine: between the boards, grain along the height");

    Book mixed;
    mixed.piece_named("spine").grain = "any";
    CHECK(Counted(mixed.made).line("greyboard-1mm").use == "Board: one for each cover, grain along the height; spine: between the boards");
}

TEST_CASE("where a plan was made the sheets of board are told, and other boards as other ways") {
    const auto counted = [](const std::vector<materials::BoardsNeeded>& boards) {
        return Counted(Book().made, example::conditions(example::a4()), almanac(), shelves(), {}, boards).line("greyboard-1mm");
    };
    const Line both = counted({{"greyboard-1mm", "a3", 1, true, ""}, {"greyboard-1mm", "box", 3, false, "find its grain first"}, {"card", "box", 7, true, ""}});
    CHECK(both.metric == "2 of 150 x 200 mm, 1 of 15 x 200 mm; 1 sheet: A3 greyboard");
    CHECK(both.us == "2 of 6 x 8 in, 1 of 1/2 x 8 in; 1 sheet: A3 greyboard");
    REQUIRE(both.instead.size() == 1);
    CHECK(both.instead[0].title == "Side of a box");
    CHECK(both.instead[0].metric == "3 sheets (fewer may do)");
    CHECK(both.instead[0].use == "find its grain first");
    CHECK(counted({{"greyboard-1mm", "box", 2, true, "find its grain first"}}).use ==
          "Board: one for each cover; spine: between the boards; grain along the height of each; find its grain first");
    CHECK(example::refused([&] { counted({{"greyboard-1mm", "a2", 1, true, ""}}); }).at(0).code == "unknown-board");
}

TEST_CASE("bought pieces are told by their material, with the length that is bought and its width") {
    const Counted book(Book().made);
    const Line& tape = book.line("tape");
    CHECK(tape.title == "Cloth tape");
    CHECK(tape.metric == "1 of 40 x 450 mm; buy 50 cm, 40 mm wide (10 % more)");
    CHECK(tape.us == "1 of 1 1/2 x 18 in; buy 20 in, 1 1/2 in wide (10 % more)");
    CHECK(tape.use == "Tape: joins the boards");
    // The strip of paper is longer than the sheet that it is cut from.
    CHECK(way(tape, "paper-strip").title == "Strong paper");
    CHECK(way(tape, "paper-strip").metric == "1 of 40 x 450 mm, in 2 strips that overlap 20 mm");
    CHECK(way(tape, "paper-strip").us == "1 of 1 1/2 x 18 in, in 2 strips that overlap 3/4 in");

    Book along;
    along.piece_named("tape").grain = "width";
    along.piece_named("tape").count = along.formula("2");
    CHECK(Counted(along.made).line("tape").metric == "2 of 40 x 450 mm; buy 10 cm, 450 mm wide (10 % more)");
    CHECK(Counted(along.made).line("tape").use == "Tape: joins the boards, grain along the width");
}

TEST_CASE("pieces of paper: plain ones are bought, printed ones are on the list already") {
    const Counted book(Book().made);
    CHECK(book.line("liner").metric == "2 of 140 x 190 mm, 100 g/m² (27 lb bond; on the shelf: 28 lb)");
    CHECK(book.line("liner").use == "inside the boards, grain along the height");
    CHECK(book.line("liner").group == Line::Group::paper);
    CHECK_FALSE(book.has("cover-paper"));
    // What may be left out is told all the same.
    CHECK(book.line("corner").optional);
    CHECK(book.line("corner").metric == "4 of 30 x 30 mm, from the full sheets");
    CHECK(book.line("corner").use == "on the outer corners");

    auto c = example::conditions(example::a4());
    c.full_sheets = 0;
    c.cover_sheet = {};
    kit::Manifest m = almanac();
    m.sets.erase(m.sets.begin() + 1);
    const Counted bare(Book().made, c, m);
    CHECK(bare.line("cover-paper").metric == "2 of 180 x 230 mm, 80 g/m² (21 lb bond; on the shelf: 20 lb)");
    CHECK(bare.line("corner").metric == "4 of 30 x 30 mm, 80 g/m² (21 lb bond; on the shelf: 20 lb)");

    // A piece that is longer than the sheet it is cut from.
    Book longer;
    longer.add("wrap", "1", {60, 2.5}, {500, 20}, "cover", "height", "round the spine");
    longer.add("belt", "1", {60, 2.5}, {300, 12}, "page", "any", "round the book");
    const Counted strips(longer.made);
    CHECK(strips.line("wrap").metric == "1 of 60 x 500 mm, in 2 strips that overlap 20 mm, from the full sheets");
    CHECK(strips.line("wrap").use == "round the spine, grain along the height");
    CHECK(strips.line("belt").metric == "1 of 60 x 300 mm, in 2 strips that overlap 20 mm, 100 g/m² (27 lb bond; on the shelf: 28 lb)");
    // Broad paper is pasted up from parts, and bought as large as it has to be.
    longer.add("poster", "1", {250, 10}, {400, 16}, "page", "any", "for the wall");
    longer.add("jacket", "1", {250, 10}, {400, 16}, "bought", "any", "over the cover");
    longer.made.pieces.back().material = "strip-paper";
    const Counted broad(longer.made);
    CHECK(broad.line("poster").us == "1 of 10 x 16 in, in 2 parts that overlap 3/4 in, 100 g/m² (27 lb bond; on the shelf: 28 lb)");
    CHECK(broad.line("strip-paper").metric == "1 of 250 x 400 mm");
}

TEST_CASE("on letter the list is the same, with inches as they are and its own paper") {
    const Counted book(Book().made, example::conditions(example::letter()));
    CHECK(book.line("copy-100").us == "14 sheets US letter, 100 g/m² (27 lb bond; on the shelf: 28 lb)");
    CHECK(book.line("tape").us == "1 of 1 1/2 x 18 in; buy 20 in, 1 1/2 in wide (10 % more)");
    CHECK(book.line("tape").metric == "1 of 40 x 450 mm; buy 50 cm, 40 mm wide (10 % more)");
}

TEST_CASE("sheets are counted from the artwork where that is told, because a PDF holds many faces") {
    const auto paper = [](const kit::Manifest& m, const materials::SheetsOfSets& counted = {}) {
        const Counted book(Book().made, example::conditions(example::a4()), m, shelves(), counted);
        return book.has("copy-80") ? book.line("copy-100").metric.substr(0, 12) : "none of a set";
    };
    kit::Manifest m = almanac();
    m.sets[0].files.resize(1);  // one PDF; the conditions know its 12 sheets
    m.sets[2].files.resize(1);
    CHECK(paper(m) == "13 sheets A4");
    CHECK(paper(m, {{"extras", 6}}) == "18 sheets A4");
    CHECK(paper(almanac(), {{"full-sheets", 0}}) == "none of a set");
    // Two sets of one role: each by its own files; an odd face has a sheet of its own.
    m = almanac();
    m.sets[0].files.resize(17);
    m.sets.push_back(set("more-pages", kit::Role::journal_page, 7, "copy-80", kit::Sides::duplex));
    const Counted two(Book().made, example::conditions(example::a4()), m);
    CHECK_THAT(two.line("copy-100").metric, Catch::Matchers::StartsWith("11 sheets A4"));
    CHECK(two.line("copy-80").use == "5 for full sheets, full sheets needed: 2 (kit has 5); 4 for journal pages, printed on both sides");
}

TEST_CASE("thicknesses are those that the journal was computed with, each once") {
    auto c = example::conditions(example::a4());
    c.page_stock.caliper = 0.125_mm;
    const auto thicknesses = [](const kit::JournalTemplate& journal, const journal::Conditions& conditions) {
        std::string all;
        for (const materials::Thickness& one : Counted(journal, conditions).list.thicknesses)
            all += one.title + " " + one.text(UnitSystem::metric) + " " + one.text(UnitSystem::us) + "; ";
        return all;
    };
    CHECK(thicknesses(Book().made, c) == "Paper 0.125 mm 0.005 in; Paper 0.1 mm 0.004 in; Greyboard, 1 mm 1 mm 0.039 in; ");
    c.spine_stock = {"card", "Card", kit::Stock::Kind::board, 380, 0.5_mm, "", false};
    c.cover_stock = c.page_stock;
    CHECK(thicknesses(Book().made, c) == "Paper 0.125 mm 0.005 in; Greyboard, 1 mm 1 mm 0.039 in; Card 0.5 mm 0.02 in; ");
    Book soft;
    std::erase_if(soft.made.pieces, [](const kit::PieceTemplate& p) { return p.stock == "board" || p.stock == "spine"; });
    CHECK(thicknesses(soft.made, c) == "Paper 0.125 mm 0.005 in; ");
}

TEST_CASE("what the pipeline does not have is refused") {
    kit::Pipeline p = shelves();
    SECTION("a tool of the template") {
        p.tools.erase(p.tools.begin());
        CHECK(code_of(p) == "unknown-tool");
    }
    SECTION("a tool of an alternative") {
        p.tools.pop_back();
        CHECK(code_of(p) == "unknown-tool");
    }
    SECTION("a material of a length") {
        p.materials.erase(p.materials.begin() + 2);
        CHECK(code_of(p) == "unknown-material");
        const auto note = example::refused([&] { Counted(Book().made, example::conditions(example::a4()), almanac(), p); }).at(0);
        CHECK(note.where.line == 91);
    }
    SECTION("a material of a bought piece") {
        p.materials.erase(p.materials.begin());
        CHECK(code_of(p) == "unknown-material");
    }
    SECTION("a material of an alternative") {
        p.materials.erase(p.materials.begin() + 3);
        CHECK(code_of(p) == "unknown-material");
    }
    SECTION("a caution") {
        std::erase_if(p.cautions, [](const kit::Caution& c) { return c.name == "mould"; });  // only the alternative's
        CHECK(code_of(p) == "unknown-caution");
    }
    SECTION("a stock") {
        kit::Manifest m = almanac();
        m.sets[1].stock.value = "copy-81";
        CHECK(code_of(p, m) == "unknown-stock");
    }
    SECTION("what a piece is cut from") {
        Book book;
        book.piece_named("liner").stock = "skin";
        CHECK(code_of(p, almanac(), book.made) == "unknown-stock");
    }
    SECTION("but an item need not be a material") {
        std::erase_if(p.materials, [](const kit::Material& m) { return m.name == "eyelet"; });
        const Counted book(Book().made, example::conditions(example::a4()), almanac(), p);
        CHECK(book.line("eyelet").title == "Eyelet");
        CHECK(book.line("eyelet").metric == "3 of 3 mm");
    }
}

TEST_CASE("what may stand in for a length has the length that it needs itself") {
    Book tied;
    tied.length("bow", 200_mm, 8_in);
    tied.length_named("sewing").length.text = "sewing_length + has_sewing * bow";
    const Counted book(tied.made);
    const Line& elastic = book.line("elastic");
    CHECK_THAT(elastic.metric, Catch::Matchers::StartsWith("2 of 578 mm"));
    CHECK_THAT(way(elastic, "twine").metric, Catch::Matchers::StartsWith("2 of 378 mm"));  // as if twine had been chosen
}
