// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/collisions.h"
#include "compose/fractions.h"
#include "compose/sample_kit.h"

#include "base/unit_system.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::compose;
using namespace qw::literals;

TEST_CASE("lengths are set with real fractions") {
    CHECK(real_fractions("5 5/8 x 8 3/4 in") == "5\u2009⁵⁄₈ × 8\u2009³⁄₄ in");
    CHECK(real_fractions("1/16 in") == "¹⁄₁₆ in");
    CHECK(real_fractions("15 x 216 mm") == "15 × 216 mm");
    CHECK(real_fractions("5/8 x 8 in, 2 of 3 x 4 in") == "⁵⁄₈ × 8 in, 2 of 3 × 4 in");
    CHECK(real_fractions("A box of x and y, 7 %") == "A box of x and y, 7 %");
}

TEST_CASE("what was taken from a sheet reads as it was written") {
    for (int i = 0; i <= 640; ++i)
        for (int j : {0, 1, 13, 32, 63, 64}) {
            const std::string written = show(Length::inches(i / 64.0), Length::inches(j / 64.0), UnitSystem::us);
            REQUIRE(plain_fractions(real_fractions(written)) == written);
        }
    CHECK(plain_fractions("5⅝ × 8¾ in") == "5 5/8 x 8 3/4 in");
    CHECK(plain_fractions("5 ⁵⁄₈ × 8 in") == "5 5/8 x 8 in");  // as a reader of PDFs gives the thin space back
    CHECK(plain_fractions("½ in") == "1/2 in");
}

TEST_CASE("every figure that a fraction needs is in every cut that shows lengths") {
    for (const type::Cut cut : {type::Cut::text, type::Cut::strong, type::Cut::italic})
        CHECK(test::fonts().missing(cut, real_fractions("12345 67890/12345 67890/67890 x 1 in")).empty());
}

TEST_CASE("lines break at spaces, keep amounts together, and are never too wide") {
    const auto& fonts = test::fonts();
    const std::string text = "The boards are 153 mm wide and two of them, each 153 × 216 mm, are cut from one sheet of board, says the list.";
    for (int width = 20; width < 120; width += 3) {
        const auto lines = wrapped(fonts, setting::body, Length::mm(width), text);
        std::string joined;
        for (const std::string& line : lines) {
            CHECK(fonts.width(setting::body.cut, setting::body.size, line) <= Length::mm(width));
            CHECK(line.find("mm") != 0);
            CHECK(line.find("×") != 0);
            joined += (joined.empty() ? "" : " ") + line;
        }
        if (width > 35) CHECK(joined == text);
    }
    CHECK(wrapped(fonts, setting::body, 50_mm, "").empty());
    CHECK(wrapped(fonts, setting::body, 10_mm, "Überlängenwörterbuchhalter").size() > 2);
}

TEST_CASE("text that does not fit its room ends in an ellipsis inside it") {
    Canvas canvas({100_mm, 100_mm}, test::fonts());
    canvas.words_within({10_mm, 50_mm}, 30_mm, "Ein Titel, der für den Fuß zu lang geraten ist", setting::small);
    canvas.words_within({10_mm, 40_mm}, 30_mm, "Kurz", setting::small);
    const Page page = std::move(canvas).finish();
    const auto& cut = std::get<Text>(page.items.at(0));
    CHECK(cut.words.ends_with("…"));
    CHECK(test::fonts().width(cut.cut, cut.size, cut.words) <= 30_mm);
    CHECK(std::get<Text>(page.items.at(1)).words == "Kurz");
}

namespace {

std::vector<Collision> on_page(const std::function<void(Canvas&)>& draw) {
    Canvas canvas({100_mm, 100_mm}, test::fonts());
    draw(canvas);
    return collisions(std::move(canvas).finish(), test::fonts(), Rect::of({100_mm, 100_mm}).inset(10_mm));
}

}  // namespace

TEST_CASE("text over text, beyond the border and under a line is found") {
    CHECK(on_page([](Canvas& c) { c.words({20_mm, 50_mm}, "alone", setting::body); }).empty());
    const auto over = on_page([](Canvas& c) {
        c.words({20_mm, 50_mm}, "first", setting::body);
        c.words({22_mm, 51_mm}, "second", setting::body);
    });
    REQUIRE(over.size() == 1);
    CHECK(over[0].with == Collision::With::text);
    CHECK(over[0].other == "second");
    const auto outside = on_page([](Canvas& c) { c.words({89_mm, 50_mm}, "beyond", setting::body); });
    REQUIRE(outside.size() == 1);
    CHECK(outside[0].with == Collision::With::border);
    const auto struck = on_page([](Canvas& c) {
        c.words({20_mm, 50_mm}, "struck", setting::body);
        c.line({10_mm, 51_mm}, {90_mm, 51_mm}, weight::hair);
        c.line({10_mm, 60_mm}, {90_mm, 60_mm}, weight::hair);
    });
    REQUIRE(struck.size() == 1);
    CHECK(struck[0].with == Collision::With::line);
}

TEST_CASE("anchors and turns move a text's box") {
    const auto box = [](Canvas::Anchor anchor, double turn) {
        return box_of(Text{{50_mm, 50_mm}, "words", setting::body.cut, setting::body.size, anchor, turn, 0}, test::fonts());
    };
    const Length width = test::fonts().width(setting::body.cut, setting::body.size, "words");
    CHECK(abs(box(Canvas::Anchor::end, 0).right - 50_mm) < Length::mm(0.001));
    CHECK(abs(box(Canvas::Anchor::middle, 0).centre().x - 50_mm) < Length::mm(0.001));
    const Rect turned = box(Canvas::Anchor::start, 90);
    CHECK(abs(turned.height() - width) < Length::mm(0.001));
    CHECK(turned.left < 50_mm);  // capitals stand to the left of a baseline that runs upward
    CHECK(abs(turned.bottom - 50_mm) < Length::mm(0.001));
}
