// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/collisions.h"
#include "compose/cutting_plan_sheet.h"
#include "compose/fractions.h"
#include "compose/sample_kit.h"
#include "journal/example.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <functional>
#include <map>
#include <random>

using namespace qw;
using namespace qw::compose;
using namespace qw::literals;

namespace {

namespace cutting {

kit::Board board(const std::string& name, Length width, Length height, const std::string& grain) { return {name, "Board " + name, {width, height}, grain}; }

/// Sheets of board as they are bought, and one that is too small for most journals.
std::vector<kit::Board> boards() {
    return {board("A4", 210_mm, 297_mm, "height"), board("A3", 297_mm, 420_mm, "unknown"), board("square", 12_in, 12_in, "unknown"),
            board("panel", 190_mm, 280_mm, "unknown"), board("small", 100_mm, 120_mm, "height")};
}

struct Made {
    std::string journal, paper;
    std::vector<SizeColumn> columns;
    std::vector<PlannedCutting> cuttings;
    Document document;
};

Document sheet_of(const kit::Manifest& manifest, const Paper& paper, const std::vector<PlannedCutting>& cuttings) {
    return cutting_plan_sheet({manifest, test::pipeline(), paper, test::fonts(), Date{2026, 9, 1}}, cuttings);
}

void for_all(const std::vector<double>& percents, const std::function<void(const Made&)>& look) {
    for (const auto& [journal, unused] : test::pipeline().journals)
        for (const Paper& paper : test::sheet_papers()) {
            const std::string& name = paper.short_name;
            auto manifest = test::sample_manifest(journal);
            manifest.papers = {paper};
            Made made{journal, name, test::sample_columns(manifest, paper, percents), {}, {}};
            for (const SizeColumn& c : made.columns)
                made.cuttings.push_back({c.print, c.label, &c.measures, journal::board_plans(journal::board_pieces(c.measures), boards())});
            made.document = sheet_of(manifest, paper, made.cuttings);
            CAPTURE(journal, name);
            look(made);
        }
}

void check_clear(const Document& document, const Paper& paper) {
    for (const Page& page : document.pages) {
        CHECK(page.size == paper.size);
        const Rect border = SheetMargins::text(page.size);
        for (const Collision& c : collisions(page, test::fonts(), border)) {
            CAPTURE(c.words, c.other);
            FAIL_CHECK((c.with == Collision::With::text ? "over another text" : c.with == Collision::With::border ? "outside the margins" : "under a line"));
        }
        bool inside = true;
        for (const Item& item : page.items)
            if (const auto* outline = std::get_if<Outline>(&item))
                for (const auto& step : outline->steps) {
                    if (const auto* move = std::get_if<Outline::Move>(&step)) inside = inside && border.holds({move->to.x, move->to.y, move->to.x, move->to.y});
                    if (const auto* to = std::get_if<Outline::Line>(&step)) inside = inside && border.holds({to->to.x, to->to.y, to->to.x, to->to.y});
                }
        CHECK(inside);
    }
}

bool contains(const std::vector<std::string>& texts, const std::string& wanted) { return std::find(texts.begin(), texts.end(), wanted) != texts.end(); }

std::string all_words(const Document& document) {
    std::string all;
    for (const std::string& text : test::texts_of(document)) all += text + " ";
    return all;
}

/// A journal of nothing but pieces of board.
struct Pieces {
    example::Template made;
    int count = 0;
    Pieces& add(Length width, Length height, int copies, const std::string& grain) {
        const std::string n = std::to_string(++count);
        made.length("w" + n, width, width).length("h" + n, height, height);
        made.piece("piece-" + n, std::to_string(copies), "w" + n, "h" + n);
        made.made.pieces.back().title = "Piece " + n;
        made.made.pieces.back().grain = grain;
        return *this;
    }
};

Document sheet_of(const journal::Measures& measures, const std::string& paper_name, const std::vector<kit::Board>& from) {
    static const auto manifest = test::sample_manifest("soft-spine");
    return sheet_of(manifest, test::paper(paper_name),
                    {{Print::borderless, "100 %", &measures, journal::board_plans(journal::board_pieces(measures), from)}});
}

journal::Conditions conditions(const std::string& paper_name) { return example::conditions(test::paper(paper_name)); }

std::vector<const Outline*> lines_of(const Document& document, Length weight) {
    std::vector<const Outline*> lines;
    for (const Page& page : document.pages)
        for (const Item& item : page.items)
            if (const auto* o = std::get_if<Outline>(&item); o && o->stroke == weight && o->steps.size() == 2) lines.push_back(o);
    return lines;
}

}  // namespace cutting

}  // namespace

TEST_CASE("nothing on a cutting plan touches anything else, on any paper, of any journal, at any size", "[many]") {
    cutting::for_all({103, 100, 50, 30}, [](const cutting::Made& made) { cutting::check_clear(made.document, test::paper(made.paper)); });
}

TEST_CASE("ten pieces of any size are drawn clearly on any paper", "[many]") {
    std::mt19937 numbers(5);
    const auto from = [&](int least, int most) { return least + static_cast<int>(numbers() % static_cast<unsigned>(most - least + 1)); };
    for (int n = 0; n < 9; ++n) {
        cutting::Pieces pieces;
        const int small = n % 3 == 0 ? 10 : 40;
        for (int i = 0; i < 10; ++i) pieces.add(Length::mm(from(small, 120)), Length::mm(from(small, 150)), 1, from(0, 1) ? "height" : "any");
        for (const auto& [long_name, name, title, size, ruler] : test::sheet_papers()) {
            const auto measures = journal::compute(pieces.made.made, cutting::conditions(name));
            CAPTURE(n, name);
            cutting::check_clear(cutting::sheet_of(measures, name, {cutting::board("A4", 210_mm, 297_mm, "height")}), test::paper(name));
        }
    }
}

TEST_CASE("titles that are longer than the paper is wide are drawn, too") {
    cutting::Pieces pieces;
    for (int i = 0; i < 3; ++i) pieces.add(Length::mm(12 + i), 200_mm, 1, "height");
    for (auto& piece : pieces.made.made.pieces) piece.title = "The strip that goes between the front board and the back board of the cover";
    const auto measures = journal::compute(pieces.made.made, cutting::conditions("5x7"));
    auto board = cutting::board("a sheet whose name is far longer than any sheet of paper is wide, in any language at all", 210_mm, 297_mm, "height");
    cutting::check_clear(cutting::sheet_of(measures, "5x7", {board}), test::paper("5x7"));
}

TEST_CASE("pieces are labelled with both rulers, and every cut is listed with its distance", "[many]") {
    cutting::for_all({100}, [](const cutting::Made& made) {
        const auto texts = test::texts_of(made.document);
        const std::string words = cutting::all_words(made.document);
        for (const PlannedCutting& cutting : made.cuttings) {
            const journal::Measures& m = *cutting.measures;
            for (const auto& plan : cutting.plans)
                for (const auto& board : plan.plan.boards) {
                    for (const auto& placed : board.pieces) {
                        const auto* piece = m.piece(journal::board_pieces(m)[placed.piece].name);
                        CHECK(words.find(real_fractions(piece->text(m.ruler))) != std::string::npos);
                        CHECK(words.find(real_fractions(piece->text(m.ruler == UnitSystem::metric ? UnitSystem::us : UnitSystem::metric))) != std::string::npos);
                    }
                    for (const auto& cut : board.cuts)
                        CHECK(cutting::contains(texts, real_fractions(show(cut.across ? cut.at - cut.of.bottom : cut.at - cut.of.left, m.ruler))));
                }
        }
        CHECK(words.find("Always print this sheet at 100 %") != std::string::npos);
        CHECK(words.find("draw the blade in or cap it") != std::string::npos);
        CHECK(words.find("the pieces become smaller") != std::string::npos);
    });
}

TEST_CASE("the drawing is to the scale that it states, and its numbered lines are the cuts") {
    cutting::Pieces pieces;
    pieces.add(100_mm, 200_mm, 2, "height");
    const auto measures = journal::compute(pieces.made.made, cutting::conditions("a4"));
    const Document document = cutting::sheet_of(measures, "a4", {cutting::board("board", 210_mm, 240_mm, "height")});
    REQUIRE(cutting::contains(test::texts_of(document), "Drawn at 1 : 2.5, 79 % used"));
    // Cuts: 200 mm across the whole of 210 mm, 200 mm up off the strip of 10 mm, 100 mm up between the pieces. A line
    // that is parted by its number is put together again.
    std::map<std::pair<bool, Length>, std::pair<Length, Length>> cuts;
    for (const Outline* o : cutting::lines_of(document, weight::heavy)) {
        const Point a = std::get<Outline::Move>(o->steps[0]).to, b = std::get<Outline::Line>(o->steps[1]).to;
        if (abs(b.x - a.x) > 160_mm) continue;  // the rule below the title
        const bool across = a.y == b.y;
        const Length low = across ? a.x : a.y, high = across ? b.x : b.y;
        const auto [at, fresh] = cuts.insert({{across, across ? a.y : a.x}, {low, high}});
        if (!fresh) at->second = {min(at->second.first, low), max(at->second.second, high)};
    }
    REQUIRE(cuts.size() == 3);
    std::vector<std::pair<bool, Length>> found;
    for (const auto& [where, from_to] : cuts) found.emplace_back(where.first, from_to.second - from_to.first);
    CHECK(std::count(found.begin(), found.end(), std::pair(true, 84_mm)) == 1);   // 210 mm
    CHECK(std::count(found.begin(), found.end(), std::pair(false, 80_mm)) == 2);  // 200 mm
    const Length left = std::min(std::next(cuts.begin(), 0)->first.second, std::next(cuts.begin(), 1)->first.second);
    const Length right = std::max(std::next(cuts.begin(), 0)->first.second, std::next(cuts.begin(), 1)->first.second);
    CHECK(right - left == 40_mm);
}

TEST_CASE("the sheet says whether the number of boards is proven, and how the grain is found") {
    cutting::Pieces three;
    three.add(150_mm, 200_mm, 3, "height");
    const auto of_three = journal::compute(three.made.made, cutting::conditions("a4"));
    const std::string known = cutting::all_words(cutting::sheet_of(of_three, "a4", {cutting::board("board", 210_mm, 297_mm, "height")}));
    CHECK(known.find("3 boards, proven to be the fewest.") != std::string::npos);
    CHECK(known.find("The grain has to run along the board's longer side.") != std::string::npos);
    CHECK(known.find("Boards 1 to 3 of 3, each the same") != std::string::npos);
    CHECK(known.find("bending it gently") != std::string::npos);

    const std::string unknown = cutting::all_words(cutting::sheet_of(of_three, "a4", {cutting::board("board", 210_mm, 297_mm, "unknown")}));
    CHECK(unknown.find("If you find its grain along the longer side, cut like this.") != std::string::npos);
    CHECK(unknown.find("If you find its grain along the shorter side, cut like this.") != std::string::npos);
    const std::string square = cutting::all_words(cutting::sheet_of(of_three, "a4", {cutting::board("board", 300_mm, 300_mm, "unknown")}));
    CHECK(square.find("Turn the board until its grain runs as the arrow does.") != std::string::npos);

    cutting::Pieces many;
    for (int i = 0; i < 14; ++i) many.add(Length::mm(40 + 17 * i % 60), Length::mm(70 + 29 * i % 90), 1, "any");
    const auto of_many = journal::compute(many.made.made, cutting::conditions("a4"));
    const auto plan = journal::board_plans(journal::board_pieces(of_many), {cutting::board("board", 210_mm, 297_mm, "height")});
    REQUIRE(!plan.at(0).plan.exact);
    const std::string open = cutting::all_words(cutting::sheet_of(of_many, "a4", {cutting::board("board", 210_mm, 297_mm, "height")}));
    CHECK(open.find("there are too many pieces to try every way") != std::string::npos);
    CHECK(open.find("proven") == std::string::npos);
    CHECK(open.find("grain") == std::string::npos);  // none of these pieces has a grain
}

TEST_CASE("a piece that does not come out of a board is told in a sentence, and boards are told as alternatives") {
    cutting::Pieces pieces;
    pieces.add(250_mm, 150_mm, 1, "height");
    const auto measures = journal::compute(pieces.made.made, cutting::conditions("a4"));
    const std::string words = cutting::all_words(
        cutting::sheet_of(measures, "a4", {cutting::board("A4", 210_mm, 297_mm, "unknown"), cutting::board("small", 200_mm, 140_mm, "height")}));
    CHECK(words.find("the board is too small for it. 40 mm are missing in width. It would fit only with its grain the wrong way.") != std::string::npos);
    CHECK(words.find("50 mm are missing in width and 10 mm in height.") != std::string::npos);
    CHECK(words.find("If you find its grain along the longer side, this board will not do.") != std::string::npos);
    CHECK(words.find("Take one of these") == std::string::npos);  // only one of them can be taken
    const std::string two = cutting::all_words(
        cutting::sheet_of(measures, "a4", {cutting::board("A4", 210_mm, 297_mm, "unknown"), cutting::board("A3", 297_mm, 420_mm, "height")}));
    CHECK(two.find("Take one of these: 1 × Board A4; or 1 × Board A3.") != std::string::npos);
}
