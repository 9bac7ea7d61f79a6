// SPDX-License-Identifier: GPL-3.0-or-later
// The misprint of borderless printing, against driver data and pages with ink at known places.
#include "proof/misprint.h"

#include "proof/written_pdf.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <unistd.h>

using namespace qw;
using namespace qw::literals;
using namespace qw::proof;
using namespace qw::proof::sample;

namespace {

const Size letter{8.5_in, 11_in};
const Misprint widest{2.75_mm, 3_mm};

/// White, four pixels a millimetre.
Pixels blank(Size sheet) {
    Pixels page{static_cast<std::uint32_t>(sheet.width.in_mm() * 4 + 0.5), static_cast<std::uint32_t>(sheet.height.in_mm() * 4 + 0.5), {}};
    page.rgb.assign(std::size_t{page.width} * page.height * 3, 255);
    return page;
}

/// Black from left, top to right, bottom, in pixels.
void blacken(Pixels& page, std::uint32_t left, std::uint32_t top, std::uint32_t right, std::uint32_t bottom) {
    for (std::uint32_t y = top; y < bottom; ++y)
        for (std::uint32_t x = left; x < right; ++x)
            for (std::size_t c = 0; c < 3; ++c) page.rgb[(std::size_t{y} * page.width + x) * 3 + c] = 0;
}

bool is_black(const Pixels& page, std::uint32_t x, std::uint32_t y) { return page.rgb[(std::size_t{y} * page.width + x) * 3] == 0; }

/// A page that is black but for a white frame.
Pixels framed(Size sheet, Length frame) {
    Pixels page = blank(sheet);
    const auto f = static_cast<std::uint32_t>(frame.in_mm() * 4 + 0.5);
    blacken(page, f, f, page.width - f, page.height - f);
    return page;
}

}  // namespace

TEST_CASE("the canvases of borderless drivers enlarge by no more than is simulated", "[proof][misprint]") {
    // HPLIP hpcups.drv.in: borderless canvases and the sheets that they are for, in points; millimetres a side derived.
    struct Canvas {
        double width, height, sheet_width, sheet_height, side, end;
    };
    const Canvas canvases[] = {{627.552, 806.112, 612, 792, 2.743, 2.489},        {622, 802, 612, 792, 1.764, 1.764},
                               {627.55, 802.36, 612, 792, 2.743, 1.827},          {610.992, 855.792, 595.44, 841.68, 2.743, 2.489},
                               {605, 852, 595.44, 841.68, 1.686, 1.820},          {610.99, 852.04, 595.44, 841.68, 2.743, 1.827}};
    for (const Canvas& canvas : canvases) {
        const Size sheet{Length::points(canvas.sheet_width), Length::points(canvas.sheet_height)};
        const Length side = (Length::points(canvas.width) - sheet.width) / 2, end = (Length::points(canvas.height) - sheet.height) / 2;
        CAPTURE(canvas.width, canvas.height);
        CHECK(side.in_mm() == Approx(canvas.side).margin(0.0006));
        CHECK(end.in_mm() == Approx(canvas.end).margin(0.0006));
        CHECK(side <= widest.enlarged);
        CHECK(end <= widest.enlarged);
        // A point at the sheet's edge moves outward by just that, the middle not at all.
        for (const auto& [across, enlarged] : {std::pair{sheet.width, side}, {sheet.height, end}}) {
            CHECK(outward_move({enlarged, {}}, across, {}) == enlarged);
            CHECK(abs(outward_move({enlarged, {}}, across, across / 2)) <= Length::units(1));
            // The driver's own arithmetic: the canvas is laid over the sheet, so that this much of the page is off it.
            const Length off = across * (enlarged / (across + 2 * enlarged));
            CHECK(abs(reach({enlarged, {}}, across) - off) <= Length::units(1));
        }
    }
}

TEST_CASE("enlargement and shift together stay inside a safe area of 6 mm", "[proof][misprint]") {
    CHECK(widest.farthest() == 5.75_mm);
    for (const Length across : {letter.width, letter.height, 210_mm, 297_mm}) {
        CHECK(reach(widest, across) < 5.75_mm);
        CHECK(reach(widest, across) > 5.5_mm);
        // Where a point lies as far in as `reach`, it moves to the very edge.
        CHECK(abs(outward_move(widest, across, reach(widest, across)) - reach(widest, across)) <= Length::units(2));
        CHECK(outward_move(widest, across, 6_mm) < 6_mm);
    }
}

TEST_CASE("ink inside a safe area of 6 mm stays on the sheet; of a narrower one it leaves", "[proof][misprint]") {
    const Misprinted kept = misprint(framed(letter, 6_mm), letter, 6_mm, widest);
    CHECK(kept.lost == 0);
    CHECK(kept.lost_safe == 0);
    CHECK(kept.deepest == 0_mm);
    CHECK(kept.move < 6_mm);
    CHECK(kept.bare == 0.25_mm);

    const Misprinted lost = misprint(framed(letter, 5_mm), letter, 5_mm, widest);
    CHECK(lost.lost_safe > 0);
    CHECK(lost.lost == lost.lost_safe);
    CHECK(lost.deepest > 5_mm);
    CHECK(lost.deepest < 5.75_mm);
    CHECK(lost.move > 5_mm);
    // Black to the edges, nothing of the safe area leaves, but a strip along two edges does.
    const Misprinted full = misprint(framed(letter, {}), letter, 6_mm, widest);
    const double w = 1 - reach(widest, letter.width) / letter.width, h = 1 - reach(widest, letter.height) / letter.height;
    CHECK(full.lost == Approx(1 - w * h).margin(0.001));
    CHECK(full.lost_safe == 0);
    CHECK(misprint(blank(letter), letter, 5_mm, widest).lost == 0);
}

TEST_CASE("the worst corner is where the ink lies", "[proof][misprint]") {
    const Length reach_across = reach(widest, letter.width);
    for (const bool right : {false, true})
        for (const bool low : {false, true}) {
            CAPTURE(right, low);
            Pixels page = blank(letter);
            // A dot 5.125 mm from one edge, half-way down, and one as far from another, half-way across.
            const std::uint32_t x = right ? page.width - 21 : 20, y = low ? page.height - 21 : 20;
            blacken(page, x, page.height / 2, x + 1, page.height / 2 + 1);
            blacken(page, page.width / 2, y, page.width / 2 + 1, y + 1);
            blacken(page, 400, 400, 410, 410);
            const Misprinted seen = misprint(page, letter, 5_mm, widest);
            CHECK(seen.lost == Approx(2.0 / 102));
            CHECK((seen.aside.right > 0_mm) == right);
            CHECK((seen.aside.up > 0_mm) == !low);
            CHECK(abs(seen.deepest - 5.125_mm) < 0.01_mm);
            CHECK(seen.deepest < reach_across);
            // In the picture the dots are gone and the square is there, moved.
            const Pixels printed = printed_aside(page, letter, widest.enlarged, seen.aside);
            std::size_t black = 0;
            for (std::size_t i = 0; i < printed.rgb.size(); i += 3) black += printed.rgb[i] == 0;
            CHECK(black >= 100);
            CHECK(black <= 121);
        }
}

TEST_CASE("the misprinted picture puts points where the arithmetic says", "[proof][misprint]") {
    Pixels page = blank(letter);
    blacken(page, 40, 0, 44, page.height);  // 10 to 11 mm from the left
    const Pixels printed = printed_aside(page, letter, 2.75_mm, {-3_mm, 3_mm});
    // From the middle line of the sheet 97.95 mm and 96.95 mm, 1.02548 times as much once enlarged, then 3 mm to the left.
    const double half = letter.width.in_mm() / 2, factor = 1 + 5.5 / letter.width.in_mm();
    const auto at = [&](double mm) { return static_cast<std::uint32_t>((half - (half - mm) * factor - 3) * 4); };
    CHECK(is_black(printed, at(10.5), 500));
    CHECK_FALSE(is_black(printed, at(10) - 2, 500));
    CHECK_FALSE(is_black(printed, at(11) + 2, 500));
    // Moved up by 3 mm, the page leaves 0.25 mm of its lower edge's paper bare.
    CHECK(is_black(printed, at(10.5), 0));
    CHECK(is_black(printed, at(10.5), page.height - 3));
    CHECK_FALSE(is_black(printed, at(10.5), page.height - 1));
}

TEST_CASE("a rendered page is misprinted as its drawing says", "[proof][misprint]") {
    // Letters' height of ink 14 pt (4.94 mm) and 18 pt (6.35 mm) from the left edge of a letter sheet.
    const auto page_with = [](const char* x) {
        const Path file = std::filesystem::temp_directory_path() / ("misprint-" + std::to_string(::getpid()) + ".pdf");
        put(file, one_page(std::string("0 g ") + x + " 300 10 40 re f", "", "/MediaBox [0 0 612 792]"));
        const Pixels pixels = Renderer(file).page(1, 72);
        std::filesystem::remove(file);
        return misprint(pixels, letter, Length::points(14), widest);
    };
    const Misprinted near = page_with("14"), far = page_with("18");
    CHECK(near.lost_safe > 0);
    CHECK(near.lost_safe < 0.3);  // 14 to 15.9 of 14 to 24 pt
    CHECK(near.aside.right < 0_mm);
    CHECK(far.lost_safe == 0);
}
