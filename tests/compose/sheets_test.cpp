// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "compose/collisions.h"
#include "compose/document_json.h"
#include "compose/fractions.h"
#include "compose/materials_sheet.h"
#include "compose/measurements_sheet.h"
#include "compose/print_check_sheet.h"
#include "compose/sample_kit.h"
#include "compose/scales.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>

using namespace qw;
using namespace qw::compose;
using namespace qw::literals;

namespace {

const std::vector<double> percents{103, 100, 95, 90, 85, 80, 75, 70, 65, 60, 55, 50};

struct Made {
    std::string name;
    Document document;
};

std::vector<Made> all_sheets(const kit::Manifest& manifest, const Paper& paper) {
    const SheetContext context{manifest, test::pipeline(), paper, test::fonts(), Date{2026, 9, 1}};
    const auto columns = test::sample_columns(manifest, paper, percents);
    return {{"measurements", measurements_sheet(context, columns)},
            {"materials", materials_sheet(context, materials::count(manifest, test::pipeline(), columns[1].measures))},
            {"print check, long edge", print_check_sheet(context, {Duplex::flip_long_edge, percents})},
            {"print check, short edge", print_check_sheet(context, {Duplex::flip_short_edge, percents})},
            {"print check, one side", print_check_sheet(context, {Duplex::simplex, percents})}};
}

void for_all(const std::function<void(const Made&, const Paper&)>& look) {
    for (const std::string journal : {"soft-spine", "wrapped-booklet"})
        for (const std::string name : {"letter", "a4"}) {
            const auto manifest = test::sample_manifest(journal);
            for (const Made& made : all_sheets(manifest, test::paper(name))) {
                CAPTURE(journal, name, made.name);
                look(made, test::paper(name));
            }
        }
}

const char* word_for(Collision::With with) {
    return with == Collision::With::text ? "over another text" : with == Collision::With::border ? "outside the margins" : "under a line";
}

bool contains(const std::vector<std::string>& texts, const std::string& wanted) {
    return std::find(texts.begin(), texts.end(), wanted) != texts.end();
}

}  // namespace

TEST_CASE("on no sheet does a text leave its margins, lie over another or under a line", "[many]") {
    for_all([](const Made& made, const Paper& paper) {
        for (const Page& page : made.document.pages) {
            CHECK(page.size == paper.size);
            for (const Collision& c : collisions(page, test::fonts(), SheetMargins::text(page.size))) {
                CAPTURE(c.words, c.other);
                FAIL_CHECK(word_for(c.with));
            }
        }
    });
}

TEST_CASE("text stays where every printer of the data prints, single-sided and duplex") {
    for (const kit::Printer& printer : test::pipeline().printers)
        for (const Margins& m : {printer.single, printer.duplex})
            for (const std::string name : {"letter", "a4"}) {
                CAPTURE(printer.name, name);
                const Size size = test::paper(name).size;
                const Rect printed{m.left, m.bottom, size.width - m.right, size.height - m.top};
                CHECK(printed.holds(SheetMargins::text(size)));
            }
}

TEST_CASE("every character that a sheet shows has a glyph", "[many]") {
    for_all([](const Made& made, const Paper&) {
        for (const Page& page : made.document.pages)
            for (const Item& item : page.items)
                if (const auto* text = std::get_if<Text>(&item)) {
                    CAPTURE(text->words);
                    CHECK(test::fonts().missing(text->cut, text->words).empty());
                }
    });
}

TEST_CASE("lines have three weights, and text is black", "[many]") {
    for_all([](const Made& made, const Paper&) {
        for (const Page& page : made.document.pages)
            for (const Item& item : page.items) {
                if (const auto* text = std::get_if<Text>(&item)) CHECK(text->grey == 0);
                const auto* outline = std::get_if<Outline>(&item);
                if (outline && outline->stroke) CHECK((*outline->stroke == weight::hair || *outline->stroke == weight::line || *outline->stroke == weight::heavy));
            }
    });
}

TEST_CASE("every page says in its foot what it is", "[many]") {
    for_all([](const Made& made, const Paper& paper) {
        for (const Page& page : made.document.pages) {
            Document alone;
            alone.pages = {page};
            const auto texts = test::texts_of(alone);
            CHECK(contains(texts, "Sample & Company 1.2.3"));
            CHECK(contains(texts, "For " + paper.title + " paper, borderless and bordered"));
            const bool check = made.name.starts_with("print check");
            CHECK(contains(texts, check ? "Print this sheet with the pages, in the same way" : "Always print this sheet at 100 %"));
        }
    });
}

TEST_CASE("the same values give the same sheets", "[many]") {
    const auto manifest = test::sample_manifest("soft-spine");
    const auto first = all_sheets(manifest, test::paper("a4")), second = all_sheets(manifest, test::paper("a4"));
    for (std::size_t i = 0; i < first.size(); ++i) CHECK(to_json(first[i].document) == to_json(second[i].document));
}

namespace {

/// Straight strokes of a page as from–to pairs.
std::vector<std::pair<Point, Point>> strokes(const Page& page, Length weight) {
    std::vector<std::pair<Point, Point>> all;
    for (const Item& item : page.items)
        if (const auto* o = std::get_if<Outline>(&item); o && o->stroke == weight && o->steps.size() == 2)
            all.emplace_back(std::get<Outline::Move>(o->steps[0]).to, std::get<Outline::Line>(o->steps[1]).to);
    return all;
}

/// Centres of the register crosses: their small circles are the only curved outlines of that size.
std::vector<Point> cross_centres(const Page& page) {
    std::vector<Point> centres;
    for (const Item& item : page.items)
        if (const auto* o = std::get_if<Outline>(&item); o && o->stroke == weight::hair && o->steps.size() == 6 && !o->fill) {
            const Point right = std::get<Outline::Move>(o->steps[0]).to;
            centres.push_back({right.x - 0.9_mm, right.y});
        }
    return centres;
}

Document print_check(const std::string& name, Duplex turned) {
    static const auto manifest = test::sample_manifest("soft-spine");
    return print_check_sheet({manifest, test::pipeline(), test::paper(name), test::fonts(), {}}, {turned, percents});
}

}  // namespace

TEST_CASE("the gauge is exactly as long as it says") {
    for (const auto& [name, length] : {std::pair<std::string, Length>("a4", 200_mm), std::pair<std::string, Length>("letter", 8_in)}) {
        const Document document = print_check(name, Duplex::flip_long_edge);
        CHECK(gauge_length(test::paper(name)) == length);
        const auto heavy = strokes(document.pages[0], weight::heavy);
        CHECK(std::count_if(heavy.begin(), heavy.end(), [&, l = length](const auto& s) { return s.first.x == s.second.x && s.second.y - s.first.y == l; }) == 1);
    }
}

TEST_CASE("the rulers are exactly 150 mm and 6 in long") {
    const auto lines = strokes(print_check("a4", Duplex::simplex).pages[0], weight::line);
    for (const Length length : {150_mm, 6_in})
        CHECK(std::any_of(lines.begin(), lines.end(), [&](const auto& s) { return s.first.y == s.second.y && s.second.x - s.first.x == length; }));
}

TEST_CASE("the back's crosses lie behind the front's, whichever edge the sheet turns over") {
    for (const std::string name : {"letter", "a4"})
        for (const Duplex turned : {Duplex::flip_long_edge, Duplex::flip_short_edge}) {
            const Document document = print_check(name, turned);
            CHECK(document.duplex == turned);
            REQUIRE(document.pages.size() == 3);  // the third tells how it is done by hand
            const auto front = cross_centres(document.pages[0]), back = cross_centres(document.pages[1]);
            REQUIRE(front.size() == 4);
            REQUIRE(back.size() == 4);
            const Size paper = test::paper(name).size;
            for (std::size_t i = 0; i < 4; ++i) {
                CHECK(back[i] == behind(front[i], paper, turned));
                CHECK(SheetMargins::text(paper).holds(Rect::at({back[i].x - register_arm, back[i].y - register_arm}, {register_arm * 2, register_arm * 2})));
            }
        }
    CHECK(behind({30_mm, 40_mm}, {210_mm, 297_mm}, Duplex::flip_long_edge) == Point{180_mm, 40_mm});
    CHECK(behind({30_mm, 40_mm}, {210_mm, 297_mm}, Duplex::flip_short_edge) == Point{30_mm, 257_mm});
}

TEST_CASE("seen through the paper the two scales of a cross stand on different sides of its arms") {
    // All marks of a cross, as from–to relative to its centre; the back's are seen as the light shows them.
    const auto marks = [](std::optional<Duplex> back_turned) {
        Canvas canvas({100_mm, 100_mm}, test::fonts());
        register_cross(canvas, {50_mm, 50_mm}, back_turned);
        Length up, down, right, left;
        for (auto [from, to] : strokes(std::move(canvas).finish(), weight::hair)) {
            if (back_turned) from = behind(from, {100_mm, 100_mm}, *back_turned), to = behind(to, {100_mm, 100_mm}, *back_turned);
            if (abs(from.x - to.x) > 10_mm || abs(from.y - to.y) > 10_mm) continue;  // the arms
            if (from.y == 50_mm) up = max(up, to.y - from.y), down = max(down, from.y - to.y);
            if (from.x == 50_mm) right = max(right, to.x - from.x), left = max(left, from.x - to.x);
        }
        return std::array<bool, 4>{up > 0_mm, down > 0_mm, right > 0_mm, left > 0_mm};
    };
    CHECK(marks(std::nullopt) == std::array<bool, 4>{true, false, true, false});
    CHECK(marks(Duplex::flip_long_edge) == std::array<bool, 4>{false, true, false, true});
    CHECK(marks(Duplex::flip_short_edge) == std::array<bool, 4>{false, true, false, true});
}

TEST_CASE("margin frames stand at the distances they name") {
    const Document document = print_check("a4", Duplex::simplex);
    REQUIRE(document.pages.size() == 1);
    for (const Length distance : {3_mm, 6.35_mm, 12.7_mm, 17_mm}) {
        const Rect wanted = Rect::of({210_mm, 297_mm}).inset(distance);
        CHECK(std::any_of(document.pages[0].items.begin(), document.pages[0].items.end(), [&](const Item& item) {
            const auto* o = std::get_if<Outline>(&item);
            return o && o->stroke == weight::hair && o->steps.size() == 5 && std::get<Outline::Move>(o->steps[0]).to == Point{wanted.left, wanted.bottom} &&
                   std::get<Outline::Line>(o->steps[2]).to == Point{wanted.right, wanted.top};
        }));
        CHECK(contains(test::texts_of(document), show_metric(distance)));
    }
}

TEST_CASE("a sheet whose words are missing is refused") {
    kit::Pipeline bare = test::pipeline();
    bare.texts.erase("print-check.mustache");
    const auto manifest = test::sample_manifest("soft-spine");
    CHECK_THROWS_AS(print_check_sheet({manifest, bare, test::paper("a4"), test::fonts(), {}}, {}), Fault);
}
