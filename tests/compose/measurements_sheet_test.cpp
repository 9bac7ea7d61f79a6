// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/collisions.h"
#include "compose/fractions.h"
#include "compose/measurements_samples.h"
#include "compose/print_readings.h"
#include "compose/size_table.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace qw::measurements_test {

using namespace qw::compose;
using namespace qw::literals;

TEST_CASE("on no paper does a text of the measurements leave its margins, lie over another or under a line, or lack a part", "[many]") {
    for_every_journal([](const Sheets& s) {
        for (const Page& page : s.document.pages) {
            CHECK(page.size == s.paper.size);
            for (const Collision& c : collisions(page, test::fonts(), SheetMargins::text(page.size))) {
                CAPTURE(c.words, c.other);
                FAIL_CHECK("a text collides");
            }
            for (const Item& item : page.items)
                if (const auto* text = std::get_if<Text>(&item)) {
                    CAPTURE(text->words);
                    CHECK(test::fonts().missing(text->cut, text->words).empty());
                }
        }
        CHECK(all_words(s.document).find("…") == std::string::npos);
    });
}

TEST_CASE("every size is a row with its scale and every measure in both unit systems, on every paper", "[many]") {
    for_every_journal([](const Sheets& s) {
        for (const Print print : s.manifest.prints) {
            const auto texts = size_pages(s.document, name_in_title(print));
            const std::string words = words_of(texts);
            for (const SizeColumn& column : told_apart(s.columns, s.paper)) {
                if (column.print != print || has_errors(column.measures.findings)) continue;
                CHECK(contains(texts, column.label));
                for (const MeasureRow& row : rows_of(column.measures, {})) {
                    if (row.kind == MeasureRow::Kind::item || row.kind == MeasureRow::Kind::figure) continue;
                    CAPTURE(column.label, row.name);
                    CHECK(words.find(row.figures(s.paper.ruler) + " ") != std::string::npos);
                    CHECK(words.find(row.in(other_than(s.paper.ruler)) + " ") != std::string::npos);
                }
            }
        }
    });
}

TEST_CASE("sizes are left out only where the paper's ruler cannot tell them from one that is shown", "[many]") {
    const auto percents = [](const Paper& paper, Print print) {
        std::vector<double> shown;
        for (const SizeColumn& column : told_apart(test::sample_columns(test::sample_manifest("soft-spine"), paper, planned()), paper))
            if (column.print == print) shown.push_back(column.percent);
        return shown;
    };
    // A per cent is 0.08 in of letter's line of 8 in, 2 mm and 1 mm of the metric ones: more than can be told apart. Of the
    // 4 in that 5 x 7 in has room for, it is 0.04 in, less than a sixteenth.
    for (const std::string paper : {"letter", "a4", "a5"}) CHECK(percents(test::paper(paper), Print::bordered) == planned());
    for (const Print print : {Print::borderless, Print::bordered})
        CHECK(percents(test::paper("5x7"), print) == std::vector<double>{103, 100, 98, 96, 94, 92, 90, 85, 80, 75, 70, 65, 60, 55, 50, 45, 40, 35, 30});
}

TEST_CASE("on small paper, too, the sheet is no book", "[many]") {
    for (const auto& [journal, templ] : test::pipeline().journals) {
        CAPTURE(journal);
        CHECK(made(journal, test::paper("5x7"), planned()).document.pages.size() <= 33);
        CHECK(made(journal, test::paper("a5"), planned()).document.pages.size() <= 30);
    }
}

TEST_CASE("a page of sizes holds all that is to be known of them on letter and A4", "[many]") {
    for (const auto& [journal, templ] : test::pipeline().journals)
        for (const std::string name : {"letter", "a4"}) {
            const Sheets s = made(journal, test::paper(name), planned());
            for (const Page& page : s.document.pages) {
                const auto texts = texts_of(page);
                if (!texts.front().starts_with("Borderless, ") && !texts.front().starts_with("Bordered, ")) continue;
                const Print print = texts.front().starts_with("Borderless") ? Print::borderless : Print::bordered;
                for (const SizeColumn& column : s.columns) {
                    if (column.print != print || has_errors(column.measures.findings) || !contains(texts, column.label)) continue;
                    for (const MeasureRow& row : rows_of(column.measures, {})) {
                        if (row.kind == MeasureRow::Kind::item || row.kind == MeasureRow::Kind::figure) continue;
                        CAPTURE(journal, name, column.label, row.name);
                        CHECK(contains(texts, row.figures(s.paper.ruler)));
                    }
                }
            }
        }
}

TEST_CASE("figures that are cut from are 12 pt or more in the paper's own ruler, and can be read in the other", "[many]") {
    for (const Paper& paper : test::sheet_papers()) {
        const Sheets s = made("soft-spine", paper, planned());
        const auto sized = [&](const std::string& words, Length least) {
            return std::any_of(s.document.pages.begin(), s.document.pages.end(), [&](const Page& page) {
                return std::any_of(page.items.begin(), page.items.end(), [&](const Item& item) {
                    const auto* text = std::get_if<Text>(&item);
                    return text && text->words == words && text->size >= least;
                });
            });
        };
        for (const SizeColumn& column : told_apart(s.columns, paper))
            for (const MeasureRow& row : rows_of(column.measures, {})) {
                if (row.kind != MeasureRow::Kind::piece || has_errors(column.measures.findings)) continue;
                CAPTURE(paper.title, column.label, row.name);
                CHECK(sized(row.figures(paper.ruler), 12_pt));
                CHECK(sized(row.in(other_than(paper.ruler)), 8_pt));
                if (column.percent == 100) CHECK(sized(row.in(paper.ruler), 12_pt));
            }
    }
}

TEST_CASE("full size says every measure, figure, thickness and creep in both unit systems") {
    for (const auto& [journal, templ] : test::pipeline().journals)
        for (const std::string name : {"letter", "a4"}) {
            const Sheets s = made(journal, test::paper(name), {100, 90});
            const std::string words = all_words(s.document);
            RowTitles titles;
            titles.to = "to";
            for (const SizeColumn& column : s.columns)
                for (const MeasureRow& row : rows_of(column.measures, titles)) {
                    if (column.percent != 100 || row.kind == MeasureRow::Kind::page || has_errors(column.measures.findings)) continue;
                    CAPTURE(journal, name, row.name);
                    CHECK(words.find(row.metric + " ") != std::string::npos);
                    CHECK(words.find(row.us + " ") != std::string::npos);
                }
        }
}

TEST_CASE("the soft-spine journal's sheet says what is usual") {
    // Common practice, no source.
    const std::pair<std::string, std::vector<std::string>> usual[] = {
        {"a4", {"153 x 216 mm", "15 x 216 mm", "147 x 210 mm"}}, {"letter", {"5 5/8 x 8 3/4 in", "5/8 x 8 3/4 in", "5 3/8 x 8 1/2 in"}}};
    for (const auto& [name, lines] : usual) {
        std::vector<std::string> plain;
        for (const std::string& text : test::texts_of(made("soft-spine", test::paper(name), {100, 90}).document)) plain.push_back(plain_fractions(text));
        for (const std::string& line : lines) {
            CAPTURE(name, line);
            CHECK(contains(plain, line));
        }
    }
}

TEST_CASE("every piece that is cut says how its grain runs, and one that is bought does not") {
    for (const auto& [journal, templ] : test::pipeline().journals) {
        const Sheets s = made(journal, test::paper("a4"), {100, 90});
        RowTitles titles;
        titles.grain_height = "grain along its height";
        titles.grain_width = "grain along its width";
        const std::string words = words_of(texts_of(s.document.pages.front()));
        for (const journal::Piece& piece : s.columns.front().measures.pieces) {
            const auto rows = rows_of(s.columns.front().measures, titles);
            const auto row = std::find_if(rows.begin(), rows.end(), [&](const MeasureRow& r) { return r.name == piece.of->name; });
            CAPTURE(journal, row->use);
            const bool grain = piece.of->stock != "bought" && piece.of->grain != "any";
            CHECK((row->use.find("grain along its " + piece.of->grain) != std::string::npos) == grain);
            CHECK(words.find(row->use) != std::string::npos);
        }
        const std::string all = all_words(s.document), of_pages = "Grain of the pages:";
        CHECK(all.find(of_pages) != std::string::npos);
        CHECK(all.find(of_pages, all.find(of_pages) + 1) == std::string::npos);  // said once
    }
}

TEST_CASE("bulk and creep are told once, creep as an interval") {
    const auto m = made("soft-spine", test::paper("a4"), {100, 90}).columns.front().measures;
    RowTitles titles;
    titles.to = "to";
    auto rows = rows_of(m, titles);
    const auto creep = std::find_if(rows.begin(), rows.end(), [](const MeasureRow& r) { return r.name == "creep"; });
    REQUIRE(creep != rows.end());
    // From one caliper to half pi of it for each sheet that lies in another.
    CHECK(m.creep_most / m.creep_least == Approx(3.14159 / 2).margin(1e-4));
    CHECK(creep->metric.find(" to ") != std::string::npos);
    CHECK(creep->metric.ends_with(show_metric(round_to_step(m.creep_most, 0.1_mm, Rounding::nearest))));
    journal::Measures told = m;
    journal::ToldFigure figure;
    static const kit::FigureTemplate bulk_figure = [] { kit::FigureTemplate f; f.name = "thick"; return f; }();
    figure.of = &bulk_figure;
    figure.is_length = true;
    figure.length.exact = m.bulk;
    told.figures.push_back(figure);
    const auto named_bulk = [](const MeasureRow& r) { return r.name == "bulk"; };
    CHECK(std::count_if(rows.begin(), rows.end(), named_bulk) == 1);
    rows = rows_of(told, titles);
    CHECK(std::count_if(rows.begin(), rows.end(), named_bulk) == 0);
}

TEST_CASE("a size whose checks fail is explained, not shown; neighbours that fail by one rule share a row") {
    const auto fail = [](const std::string& figure) {
        return Finding{"journal-spine", Level::error, "", 0, 0, "", "", "The spine strip breaks at " + figure + ".", "Print larger."};
    };
    const Sheets s = made("soft-spine", test::paper("a4"), {100, 90, 80, 70, 60, 50}, [&](std::vector<SizeColumn>& columns) {
        for (SizeColumn& column : columns) {
            column.measures.findings.clear();
            if (column.print == Print::borderless && (column.percent == 80 || column.percent == 70)) column.measures.findings.push_back(fail("1/16 in"));
            if (column.print == Print::bordered && column.percent <= 60) column.measures.findings.push_back(fail(column.percent == 60 ? "2 mm" : "1 mm"));
        }
    });
    const auto borderless = size_pages(s.document, "Borderless"), bordered = size_pages(s.document, "Bordered");
    CHECK(contains(borderless, "80 to 70 %"));
    CHECK(!contains(borderless, "80 %"));
    CHECK(contains(borderless, "The spine strip breaks at ¹⁄₁₆ in. Print larger."));
    CHECK(!contains(borderless, rows_of(s.columns[2].measures, {})[1].figures(UnitSystem::metric)));
    CHECK(contains(borderless, rows_of(s.columns[4].measures, {})[1].figures(UnitSystem::metric)));
    CHECK(contains(bordered, "60 to 50 %"));
    CHECK(words_of(bordered).find("The spine strip breaks at 2 mm. Print larger. (Figures of 60 %.)") != std::string::npos);
    CHECK(words_of(bordered).find("1 mm.") == std::string::npos);
}

TEST_CASE("a warning leaves the size and stands below the table with the sizes it holds for") {
    const Sheets s = made("soft-spine", test::paper("a4"), {100, 90, 80, 70}, [](std::vector<SizeColumn>& columns) {
        for (SizeColumn& column : columns) {
            column.measures.findings.clear();
            if (column.print == Print::borderless && column.percent != 80)
                column.measures.findings.push_back({"journal-x", Level::warning, "", 0, 0, "", "", "The pages may tear.", ""});
            if (column.print == Print::bordered && column.percent <= 90)
                column.measures.findings.push_back({"journal-y", Level::warning, "", 0, 0, "", "", "It is " + column.label + " wide.", ""});
        }
    });
    const std::string words = all_words(s.document);
    CHECK(words.find("Borderless, 100 %, 90 %, 70 %: The pages may tear.") != std::string::npos);
    CHECK(words.find("Bordered, 90 to 70 %: It is 90 % wide. (Figures of 90 %.)") != std::string::npos);
}

TEST_CASE("full size that fails shows no figure to cut from, and is not drawn") {
    const auto failing = [](bool first_too) {
        return made("soft-spine", test::paper("a4"), {100}, [&](std::vector<SizeColumn>& columns) {
            for (std::size_t i = first_too ? 0 : 1; i < columns.size(); ++i)
                columns[i].measures.findings.push_back({"journal-x", Level::error, "", 0, 0, "", "", "It does not hold.", ""});
        });
    };
    const Sheets one = failing(false), both = failing(true);
    const auto texts = texts_of(one.document.pages.front());
    CHECK(!contains(texts, rows_of(one.columns[1].measures, {})[1].metric));
    CHECK(contains(texts, rows_of(one.columns[0].measures, {})[1].metric));
    CHECK(words_of(texts).find("It does not hold.") != std::string::npos);
    CHECK(all_words(one.document).find("The opened cover, borderless, 100 %") != std::string::npos);
    CHECK(all_words(both.document).find("The opened cover") == std::string::npos);
}

TEST_CASE("the sheet tells what keeps its size, found by looking at the sizes, and what is printed at its own") {
    const std::string words = all_words(made("soft-spine", test::paper("a4"), {100, 50}).document);
    CHECK(words.find("the width of the spine strip") != std::string::npos);
    CHECK(words.find("the width of the board") == std::string::npos);
    CHECK(words.find("Print the full sheets at 100 %") != std::string::npos);
}

}  // namespace qw::measurements_test
