// SPDX-License-Identifier: GPL-3.0-or-later
// How parts are drawn while they are folded, and the sheet that tells buyers how they are made.
#include "compose/fold_drawing.h"

#include "base/fault.h"
#include "compose/collisions.h"
#include "compose/fractions.h"
#include "compose/guide_drawing.h"
#include "compose/lying_panels.h"
#include "compose/part_samples.h"
#include "compose/parts_sheet.h"
#include "compose/sheet.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace qw;
using namespace qw::compose;
using namespace qw::literals;

namespace {

const Rect into{10_mm, 10_mm, 110_mm, 90_mm};

Page drawn(const test::SamplePart& part, std::size_t state, const FoldView& view, double* scale = nullptr) {
    Canvas canvas({120_mm, 100_mm}, test::fonts());
    const double used = draw_fold(canvas, into, part.net, part.folded, state, view, test::part_labels());
    if (scale) *scale = used;
    return std::move(canvas).finish();
}

/// In one line, or broken into lines that follow each other.
bool says(const Page& page, const std::string& words) {
    std::string all;
    for (const Item& item : page.items)
        if (const auto* text = std::get_if<Text>(&item)) all += text->words + " ";
    return all.find(words) != std::string::npos;
}

void for_every_state(const std::function<void(const test::SamplePart&, std::size_t, const FoldView&)>& look) {
    for (const std::string& name : test::part_names()) {
        const test::SamplePart& part = test::sample_part(name);
        for (std::size_t state = 0; state < part.folded.states.size(); ++state)
            for (const FoldView view : {FoldView{false, true}, FoldView{true, true}, usual_view(part.net, state)}) {
                INFO(name << ", state " << state << (view.from_behind ? " from behind" : ""));
                look(part, state, view);
            }
    }
}

}  // namespace

TEST_CASE("every state of every part is drawn inside its room, in black on white, without collisions", "[parts]") {
    for_every_state([](const test::SamplePart& part, std::size_t state, const FoldView& view) {
        const Page page = drawn(part, state, view);
        const auto ink = ink_box(page, test::fonts());
        REQUIRE(ink);
        CHECK(into.holds(*ink, 0.5_mm));  // half a line
        for (const Collision& c : collisions(page, test::fonts(), into)) {
            CAPTURE(c.words, c.other);
            FAIL_CHECK("collision");
        }
        for (const Item& item : page.items)
            if (const auto* line = std::get_if<Outline>(&item); line && line->stroke) {
                CHECK(line->stroke_grey == 0);
                CHECK((*line->stroke == weight::hair || *line->stroke == weight::line || *line->stroke == weight::heavy));
            }
    });
}

TEST_CASE("the side that is up is said in words where it is told by tone", "[parts]") {
    for_every_state([](const test::SamplePart& part, std::size_t state, const FoldView& view) {
        const Page page = drawn(part, state, view);
        const bool tone = std::any_of(page.items.begin(), page.items.end(), [](const Item& item) {
            const auto* area = std::get_if<Outline>(&item);
            return area && area->fill && *area->fill > 0 && *area->fill < 1;
        });
        bool back = false, wall = false;
        const LyingPanels panels(part.net, part.folded, state, view.from_behind);
        for (std::size_t i = 0; i < part.net.panels.size(); ++i) {
            const double seen = parts::area_mm2(panels.seen(i));
            if (panels.back_up(i) && seen > 1500) back = true;
            if (panels.back_up(i) && seen > 0) wall = true;
        }
        if (back) CHECK(says(page, "back of the paper"));
        if (!wall) CHECK_FALSE(tone);
    });
}

TEST_CASE("the next fold is told by an arrow's way and a sentence", "[parts]") {
    const test::SamplePart& part = test::sample_part("trifold-pocket");
    REQUIRE_FALSE(part.net.folds[2].valley);
    CHECK(says(drawn(part, 2, {false, true}), "Fold behind"));
    CHECK(says(drawn(part, 2, {true, true}), "Fold towards you"));
    CHECK_FALSE(says(drawn(part, 2, {true, false}), "Fold"));
    CHECK_FALSE(says(drawn(part, 5, {true, true}), "Fold"));
    // Hands fold towards themselves: never is a part drawn from the side that a fold goes away from.
    for (std::size_t state = 1; state < part.net.folds.size(); ++state) CHECK(usual_view(part.net, state).from_behind == !part.net.folds[state].valley);
    CHECK_FALSE(usual_view(part.net, 0).from_behind);
}

TEST_CASE("a fold's drawing is as large as its room lets it be, and no larger than it is asked for", "[parts]") {
    const test::SamplePart& part = test::sample_part("envelope");
    double scale = 0;
    const Page page = drawn(part, 0, {}, &scale);
    CHECK(scale == Approx(fold_scale(test::fonts(), into.size(), part.net, part.folded, 0, {}, test::part_labels())));
    const auto ink = ink_box(page, test::fonts());
    const Size flat = parts::bounds(part.net.whole).size();
    CHECK(ink->width().in_mm() == Approx((flat.width * scale).in_mm()).margin(0.3));
    Canvas canvas({120_mm, 100_mm}, test::fonts());
    CHECK(draw_fold(canvas, into, part.net, part.folded, 0, {}, test::part_labels(), 0.2) == Approx(0.2));
}

TEST_CASE("what lies under another panel is not seen, and all that is seen is as large as the part lies", "[parts]") {
    for_every_state([](const test::SamplePart& part, std::size_t state, const FoldView& view) {
        const LyingPanels panels(part.net, part.folded, state, view.from_behind);
        double seen = 0;
        std::vector<parts::Region> all;
        for (std::size_t i = 0; i < part.net.panels.size(); ++i) {
            seen += parts::area_mm2(panels.seen(i));
            all.push_back(panels.whole(i));
        }
        CHECK(seen == Approx(parts::area_mm2(parts::united(all))).epsilon(1e-3));
    });
}

namespace {

/// Every shipped part as a set of the kit, in both prints of a paper.
Document all_parts_on(const Paper& paper) {
    static const kit::Manifest manifest = test::sample_manifest("soft-spine");
    static const kit::Set set;
    std::vector<PartOfKit> parts;
    for (const std::string& name : test::part_names()) {
        PartOfKit part{"Set of " + name, &set, 6, {}, {"A card of 3 x 5 in goes in from 98 % on."}};
        for (const auto& [print, scale] : {std::pair(Print::borderless, 1.0), std::pair(Print::bordered, 0.9091)}) {
            const test::SamplePart& sample = test::sample_part(name, paper.ruler, scale);
            part.prints.push_back({print, &sample.net, &sample.folded});
        }
        parts.push_back(part);
    }
    return *parts_sheet({manifest, test::pipeline(), paper, test::fonts(), {2026, 9, 1}}, parts);
}

bool any_page_says(const Document& document, const std::string& words) {
    return std::any_of(document.pages.begin(), document.pages.end(), [&](const Page& page) { return says(page, words); });
}

}  // namespace

TEST_CASE("on no paper does the sheet of parts collide with itself, and no sign lacks its glyph", "[many][parts]") {
    for (const Paper& paper : test::sheet_papers()) {
        const Document document = all_parts_on(paper);
        for (std::size_t i = 0; i < document.pages.size(); ++i) {
            INFO(paper.title << ", page " << i + 1);
            for (const Collision& c : collisions(document.pages[i], test::fonts(), SheetMargins::text(document.pages[i].size))) {
                CAPTURE(c.words, c.other);
                FAIL_CHECK("collision");
            }
            for (const Item& item : document.pages[i].items)
                if (const auto* text = std::get_if<Text>(&item)) CHECK(test::fonts().missing(text->cut, text->words).empty());
        }
    }
}

TEST_CASE("the sheet of parts tells sizes and rooms of both prints in both rulers, steps and limits", "[parts]") {
    const Document a4 = all_parts_on(test::paper("a4"));
    // Trifold pocket: 84 x 120 mm closed, 76.5 mm (84 at 0.9091, rounded to half a millimetre) by 109 mm bordered.
    for (const std::string words : {"84 x 120 mm", "76.5 x 109 mm", "3 5/16 x 4 3/4 in"}) CHECK(any_page_says(a4, real_fractions(words)));
    CHECK(any_page_says(a4, "A card of 3 x 5 in goes in from 98 % on."));
    CHECK(any_page_says(a4, "half folded"));
    for (const std::string& name : test::part_names())
        for (const kit::StepTemplate& step : test::pipeline().parts.at(name).steps) CHECK(any_page_says(a4, step.title));
}

TEST_CASE("a caution of the parts stands where it applies first, once, and is pointed to from then on", "[parts]") {
    const Document a4 = all_parts_on(test::paper("a4"));
    const auto count_of = [&](const std::string& words) {
        std::ptrdiff_t count = 0;
        for (const Page& page : a4.pages)
            count += std::count_if(page.items.begin(), page.items.end(), [&](const Item& item) {
                const auto* text = std::get_if<Text>(&item);
                return text && text->words.find(words) != std::string::npos;
            });
        return count;
    };
    for (const kit::Caution& caution : test::pipeline().cautions)
        if (caution.always) CHECK(count_of(caution.text.substr(0, 30)) == 1);
    CHECK(count_of("Take care as in Set of") > 1);
}

TEST_CASE("a kit without parts has no sheet of parts", "[parts]") {
    const auto manifest = test::sample_manifest("soft-spine");
    CHECK_FALSE(parts_sheet({manifest, test::pipeline(), test::paper("a4"), test::fonts(), {}}, {}));
}
