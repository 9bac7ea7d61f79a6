// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/own_page.h"
#include "compose/sample_kit.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace qw;
using namespace qw::compose;
using namespace qw::literals;

namespace own_page_test {  // its local names are also those of other files

namespace {

const std::vector<double> shown{100, 95, 90, 85, 80, 75, 70, 65, 60};
const std::vector<double> odd{87.31, 99.49, 61.803, 93.0001};

std::vector<SizeColumn> of_print(const std::vector<SizeColumn>& columns, Print print) {
    std::vector<SizeColumn> own;
    std::copy_if(columns.begin(), columns.end(), std::back_inserter(own), [&](const SizeColumn& c) { return c.print == print; });
    return own;
}

const OwnPageRow& row(const std::vector<OwnPageRow>& rows, const std::string& name) {
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const OwnPageRow& r) { return r.name == name; });
    REQUIRE(found != rows.end());
    return *found;
}

/// The measures of an odd size in one unit system, exact.
journal::Measures computed(const kit::Manifest& manifest, Paper paper, Print print, double percent, UnitSystem system) {
    journal::Conditions conditions = test::sample_conditions(manifest, paper, print, percent);
    conditions.paper.ruler = system;
    return journal::compute(test::pipeline().journals.at(*manifest.journal), conditions);
}

}  // namespace

TEST_CASE("what is added to one's own page gives every piece at sizes that no row shows", "[many]") {
    for (const auto& [journal, templ] : test::pipeline().journals) {
        const auto manifest = test::sample_manifest(journal);
        for (const std::string name : {"letter", "a4"})
            for (const Print print : manifest.prints) {
                const auto columns = of_print(test::sample_columns(manifest, test::paper(name), shown), print);
                const auto rows = from_own_page(columns);
                int checked = 0;
                for (const double percent : odd)
                    for (const UnitSystem system : {UnitSystem::metric, UnitSystem::us}) {
                        const auto m = computed(manifest, test::paper(name), print, percent, system);
                        const Size page = m.conditions.page;
                        for (const OwnPageRow& r : rows) {
                            CAPTURE(journal, name, percent, r.name);
                            const journal::Piece* piece = m.piece(r.name);
                            const journal::CutLength* length = m.length(r.name);
                            REQUIRE((piece || length));
                            if (r.width) {
                                const Length exact = piece ? piece->width.exact : length->length.exact;
                                CHECK(abs(r.width->of(page, system) - exact) <= 0.002_mm);
                                ++checked;
                            }
                            if (r.height) {
                                CHECK(abs(r.height->of(page, system) - piece->height.exact) <= 0.002_mm);
                                ++checked;
                            }
                        }
                    }
                CAPTURE(journal, name);
                CHECK(checked > 0);
            }
    }
}

TEST_CASE("the soft spine's boards follow from the page by its squares, each unit system by its own") {
    // Squares of 3 and 4.5 mm; letter's own are 1/8 in: common practice, no source.
    const auto manifest = test::sample_manifest("soft-spine");
    for (const std::string name : {"letter", "a4"})
        for (const Print print : manifest.prints) {
            const auto rows = from_own_page(of_print(test::sample_columns(manifest, test::paper(name), shown), print));
            const OwnPageRow& board = row(rows, "board");
            REQUIRE(board.width);
            REQUIRE(board.height);
            CHECK(board.width->side == PageForm::Side::width);
            CHECK(board.width->times == 1);
            CHECK(abs(board.width->plus.metric - 4.5_mm) < form_tolerance);
            CHECK(abs(board.width->plus.us - Length::inches(1.0 / 8)) < form_tolerance);
            CHECK(board.height->side == PageForm::Side::height);
            CHECK(abs(board.height->plus.metric - 6_mm) < form_tolerance);
            CHECK(abs(board.height->plus.us - Length::inches(1.0 / 4)) < form_tolerance);
            CHECK(row(rows, "spine").width->times == 0);
        }
}

TEST_CASE("a letter page at 94 per cent is 202.946 mm high and its board 208.946, not 94 per cent of the whole board") {
    // ANSI letter: 8.5 in; 0.94 x 215.9 = 202.946.
    const auto manifest = test::sample_manifest("soft-spine");
    const auto columns = of_print(test::sample_columns(manifest, test::paper("letter"), shown), Print::borderless);
    const auto rows = from_own_page(columns);
    const Size page = computed(manifest, test::paper("letter"), Print::borderless, 94, UnitSystem::metric).conditions.page;
    CHECK(page.height.in_mm() == Approx(202.946).margin(0.0005));
    CHECK(row(rows, "board").height->of(page, UnitSystem::metric).in_mm() == Approx(208.946).margin(0.0005));
    CHECK(row(rows, "board").height->of(page, UnitSystem::us).in_mm() == Approx(209.296).margin(0.0005));
}

TEST_CASE("what does not follow from the page is not said to") {
    // End stations shrink with the print, so that the way of the thread between them is no simple part of the page.
    const auto manifest = test::sample_manifest("soft-spine");
    const auto rows = from_own_page(of_print(test::sample_columns(manifest, test::paper("a4"), shown), Print::borderless));
    CHECK(!row(rows, "sewing-elastic").width);
}

TEST_CASE("one size, or none that can be made, tells no form") {
    const auto manifest = test::sample_manifest("soft-spine");
    auto columns = of_print(test::sample_columns(manifest, test::paper("a4"), {100, 90}), Print::borderless);
    CHECK(!from_own_page(columns).empty());
    columns[1].measures.findings.push_back({"journal-x", Level::error, "", 0, 0, "", "", "It does not hold.", ""});
    CHECK(from_own_page(columns).empty());
    CHECK(from_own_page({}).empty());
}

TEST_CASE("a length that differs by more than the tolerance at one size has no form") {
    const auto manifest = test::sample_manifest("soft-spine");
    auto columns = of_print(test::sample_columns(manifest, test::paper("a4"), shown), Print::borderless);
    columns[3].measures.pieces[0].width.exact += 0.0015_mm;
    const auto rows = from_own_page(columns);
    CHECK(!row(rows, columns[3].measures.pieces[0].of->name).width);
    CHECK(row(rows, columns[3].measures.pieces[0].of->name).height);
}

}  // namespace own_page_test
