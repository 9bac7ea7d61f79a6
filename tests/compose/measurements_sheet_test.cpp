// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/collisions.h"
#include "compose/fractions.h"
#include "compose/journal_notes.h"
#include "compose/measurements_sheet.h"
#include "compose/print_readings.h"
#include "compose/sample_kit.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <functional>

using namespace qw;
using namespace qw::compose;
using namespace qw::literals;

namespace measurements_test {  // its local names are also those of other files

namespace {

/// What the planner shows: every size from 103 to 90 %, then every fifth.
const std::vector<double>& planned() {
    static const std::vector<double> percents = [] {
        std::vector<double> all;
        for (int percent = 103; percent >= 90; --percent) all.push_back(percent);
        for (int percent = 85; percent >= 30; percent -= 5) all.push_back(percent);
        return all;
    }();
    return percents;
}

/// The pipeline's papers and two that it does not have (PWG 5101.1-2023 media names).
std::vector<Paper> papers() {
    std::vector<Paper> all{test::paper("letter"), test::paper("a4")};
    all.push_back({"iso_a5_148x210mm", "a5", "A5", {148_mm, 210_mm}, UnitSystem::metric});
    all.push_back({"na_5x7_5x7in", "5x7", "5 x 7 in", {5_in, 7_in}, UnitSystem::us});
    return all;
}

struct Sheets {
    kit::Manifest manifest;
    Paper paper;
    std::vector<SizeColumn> columns;
    Document document;
};

Sheets made(const std::string& journal, const Paper& paper, const std::vector<double>& percents, const std::function<void(std::vector<SizeColumn>&)>& change = {}) {
    Sheets s{test::sample_manifest(journal), paper, {}, {}};
    s.columns = test::sample_columns(s.manifest, paper, percents);
    if (change) change(s.columns);
    s.document = measurements_sheet({s.manifest, test::pipeline(), s.paper, test::fonts(), {}}, s.columns);
    return s;
}

void for_every_journal(const std::function<void(const Sheets&)>& look) {
    for (const auto& [journal, templ] : test::pipeline().journals)
        for (const Paper& paper : papers()) {
            CAPTURE(journal, paper.title);
            look(made(journal, paper, planned()));
        }
}

bool contains(const std::vector<std::string>& texts, const std::string& wanted) { return std::find(texts.begin(), texts.end(), wanted) != texts.end(); }

std::vector<std::string> texts_of(const Page& page) {
    Document alone;
    alone.pages = {page};
    return test::texts_of(alone);
}

/// Lines joined by spaces, so that a wrapped sentence can be found.
std::string words_of(const std::vector<std::string>& texts) {
    std::string all;
    for (const std::string& text : texts) all += text + " ";
    for (std::size_t at; (at = all.find("\u00a0")) != std::string::npos;) all.replace(at, 2, " ");
    return all;
}
std::string all_words(const Document& document) { return words_of(test::texts_of(document)); }

/// Pages whose title tells sizes of a print.
std::vector<std::string> size_pages(const Document& document, const std::string& print) {
    std::vector<std::string> texts;
    for (const Page& page : document.pages) {
        const auto own = texts_of(page);
        if (!own.empty() && own.front().starts_with(print + ", ")) texts.insert(texts.end(), own.begin(), own.end());
    }
    return texts;
}

UnitSystem other_than(UnitSystem own) { return own == UnitSystem::metric ? UnitSystem::us : UnitSystem::metric; }
std::string name_in_title(Print print) { return print == Print::borderless ? "Borderless" : "Bordered"; }

/// A template that names what no template of the pipeline may have any more.
kit::JournalTemplate with_notes() {
    kit::JournalTemplate journal = test::pipeline().journals.at("soft-spine");
    kit::NamedLength length;
    length.name = "odd-gap";
    length.value = {7.5_mm, Length::inches(0.3125)};
    length.why = "because it is odd";
    length.published = "rules say 2 3/16 in";
    journal.lengths.push_back(length);
    length.name = "odd-shrinking";
    length.printed = true;
    journal.lengths.push_back(length);
    kit::NamedNumber number;
    number.name = "odd-number";
    number.value = 7;
    number.published = "rules say 4";
    journal.numbers.push_back(number);
    kit::StepTemplate step;
    step.text = "Leave {{odd-gap}}, and {{odd-shrinking}} above it.";
    journal.steps = {step};
    return journal;
}

}  // namespace

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
            for (const SizeColumn& column : s.columns) {
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
    for (const Paper& paper : papers()) {
        const Sheets s = made("soft-spine", paper, planned());
        const auto sized = [&](const std::string& words, Length least) {
            return std::any_of(s.document.pages.begin(), s.document.pages.end(), [&](const Page& page) {
                return std::any_of(page.items.begin(), page.items.end(), [&](const Item& item) {
                    const auto* text = std::get_if<Text>(&item);
                    return text && text->words == words && text->size >= least;
                });
            });
        };
        for (const SizeColumn& column : s.columns)
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

TEST_CASE("the sheet is read by the line of the print check and by a trimmed page", "[many]") {
    for (const Paper& paper : papers()) {
        const Sheets s = made("soft-spine", paper, planned());
        std::string words;
        for (const Page& page : s.document.pages) {
            const auto texts = texts_of(page);
            if (texts.front() == "Measure your print") words += words_of(texts);
        }
        words.erase(std::remove(words.begin(), words.end(), '*'), words.end());
        const auto bare = [&](Length length) {
            const std::string text = show(round_to_step(length, ruler_mark(paper.ruler), Rounding::nearest), paper.ruler);
            return real_fractions(text.substr(0, text.rfind(' ')));
        };
        CHECK(words.find("it is " + real_fractions(show(gauge_length(paper), paper.ruler)) + " long") != std::string::npos);
        for (const SizeColumn& column : s.columns) {
            if (has_errors(column.measures.findings)) continue;
            const Size page = column.measures.conditions.page;
            char scale[16];
            std::snprintf(scale, sizeof scale, "%.3f", column.measures.conditions.scale);
            CAPTURE(paper.title, column.label);
            CHECK(words.find(" " + column.label + " " + bare(gauge_length(paper) * column.percent / 100) + " ") != std::string::npos);
            CHECK(words.find(" " + bare(page.width) + " × " + bare(page.height) + " " + scale + " ") != std::string::npos);
        }
    }
}

TEST_CASE("readings that a ruler cannot tell apart are marked, others are not", "[many]") {
    // A borderless driver prints no larger page: above 100 % only the line tells the size. On letter's 8 in line a per
    // cent is 0.08 in and more than a sixteenth; of 5 1/2 in it is less.
    const Sheets letter = made("soft-spine", test::paper("letter"), planned()), a4 = made("soft-spine", test::paper("a4"), planned());
    const std::string in_letter = all_words(letter.document), in_a4 = all_words(a4.document);
    const auto row = [](const std::string& text) { return real_fractions(text); };
    CHECK(in_letter.find(row("5 1/2") + "* × " + row("8 1/2") + "*") != std::string::npos);
    CHECK(in_letter.find(" 103 % " + row("8 1/4") + " ") != std::string::npos);
    CHECK(in_letter.find(" " + row("5 7/16") + "* × " + row("8 7/16") + " ") != std::string::npos);  // 99 %
    CHECK(in_a4.find(" 148.5* × 210* ") != std::string::npos);
    CHECK(in_a4.find(" 147 × 208 ") != std::string::npos);  // 99 %
    CHECK(in_a4.find("* A ruler cannot tell") != std::string::npos);
    const Sheets apart = made("soft-spine", test::paper("a4"), {100, 90, 80});
    CHECK(all_words(apart.document).find("* A ruler cannot tell") == std::string::npos);
}

TEST_CASE("the sheet says that A4 in quarter-inch margins and A4 made to fit a letter sheet read alike, and asks for the paper") {
    const std::string words = all_words(made("soft-spine", test::paper("a4"), planned()).document);
    const std::size_t whole = words.find("Letter in the printer, the sheet fitted to the whole of it.");
    REQUIRE(whole != std::string::npos);
    const std::size_t row = words.rfind("188 mm 94 to 94.1 %", whole);
    REQUIRE(row != std::string::npos);
    const std::string said = words.substr(row, words.find("?", whole) + 1 - row);
    CHECK(said.find("A4 in the printer, the sheet fitted inside its margins: " + real_fractions("1/4 in all round")) != std::string::npos);
    CHECK(said.ends_with("All of these are possible; a ruler cannot tell them apart. Which paper lies in the printer: Letter or A4?"));
    CHECK(std::count(said.begin(), said.end(), '%') == 1);  // one row
}

TEST_CASE("every printer of the data is among what may have happened") {
    for (const std::string name : {"letter", "a4"}) {
        const std::string words = all_words(made("soft-spine", test::paper(name), planned()).document);
        for (const kit::Printer& printer : test::pipeline().printers) CHECK(words.find(real_fractions(in_sentence(printer.title))) != std::string::npos);
    }
}

TEST_CASE("between two rows a buyer adds to her own page") {
    const std::string a4 = all_words(made("soft-spine", test::paper("a4"), planned()).document);
    CHECK(a4.find("From your own page") != std::string::npos);
    CHECK(a4.find("Board up to the next 0.5 mm page width + 4.5 mm page width + " + real_fractions("1/8 in") + " page height + 6 mm page height + " +
                  real_fractions("1/4 in")) != std::string::npos);
    const std::string letter = all_words(made("soft-spine", test::paper("letter"), planned()).document);
    CHECK(letter.find("Board up to the next " + real_fractions("1/16 in") + " page width + " + real_fractions("1/8 in") + " page width + 4.5 mm") !=
          std::string::npos);
    CHECK(letter.find("as in the row of the next larger size") != std::string::npos);
    // What does not depend on the page says the same as every row: 7 mm are more than 1/4 in, and no sixteenth.
    const Sheets cased = made("case-binding", test::paper("letter"), planned());
    const journal::Shown& spine = cased.columns[3].measures.piece("spine")->width;
    CHECK(all_words(cased.document).find("Spine piece up to the next " + real_fractions("1/16 in ") + real_fractions(show_us(spine.us)) + " " + show_metric(spine.metric)) !=
          std::string::npos);
    CHECK(all_words(made("soft-spine", test::paper("a4"), {100}).document).find("From your own page") == std::string::npos);
}

TEST_CASE("fixed lengths that a step names stay the same at every size; where rules say otherwise the sheet tells") {
    const kit::JournalTemplate journal = with_notes();
    const auto lengths = setting_out(journal);
    REQUIRE(lengths.size() == 1);
    CHECK(lengths.front()->name == "odd-gap");

    const auto manifest = test::sample_manifest("soft-spine");
    for (const Paper& paper : papers()) {
        std::vector<SizeColumn> columns;
        for (const double percent : {100.0, 90.0})
            columns.push_back({percent == 100 ? "100 %" : "90 %", percent, Print::borderless,
                               journal::compute(journal, test::sample_conditions(manifest, paper, Print::borderless, percent))});
        const std::string words = all_words(measurements_sheet({manifest, test::pipeline(), paper, test::fonts(), {}}, columns));
        const std::string metric = "7.5 mm", us = real_fractions("5/16 in");
        const bool own_metric = paper.ruler == UnitSystem::metric;
        const std::string first = own_metric ? metric : us, second = own_metric ? us : metric;
        CAPTURE(paper.title);
        CHECK(words.find("Stay the same at every size Odd gap " + first + " " + second) != std::string::npos);
        CHECK(words.find("Where this journal does otherwise") != std::string::npos);
        CHECK(words.find("Odd gap " + first + ", " + second) != std::string::npos);
        CHECK(words.find("Odd shrinking " + first + ", " + second + " at full size") != std::string::npos);
        CHECK(words.find("because it is odd") != std::string::npos);
        CHECK(words.find(real_fractions("rules say 2 3/16 in")) != std::string::npos);
        CHECK(words.find("Odd number 7") != std::string::npos);
        CHECK(words.find("rules say 4") != std::string::npos);
    }
}

TEST_CASE("what every template says of published rules stands on its sheet") {
    for (const auto& [journal, templ] : test::pipeline().journals) {
        const std::string words = all_words(made(journal, test::paper("a4"), {100, 90}).document);
        for (const kit::NamedLength& length : templ.lengths) CHECK((length.published.empty() || words.find(real_fractions(length.published)) != std::string::npos));
        for (const kit::NamedNumber& number : templ.numbers) CHECK((number.published.empty() || words.find(real_fractions(number.published)) != std::string::npos));
    }
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
    CHECK(contains(borderless, "80 % to 70 %"));
    CHECK(!contains(borderless, "80 %"));
    CHECK(contains(borderless, "The spine strip breaks at ¹⁄₁₆ in. Print larger."));
    CHECK(!contains(borderless, rows_of(s.columns[2].measures, {})[1].figures(UnitSystem::metric)));
    CHECK(contains(borderless, rows_of(s.columns[4].measures, {})[1].figures(UnitSystem::metric)));
    CHECK(contains(bordered, "60 % to 50 %"));
    CHECK(words_of(bordered).find("The spine strip breaks at 2 mm. Print larger. (Figures of 60 %.)") != std::string::npos);
    CHECK(words_of(bordered).find("1 mm.") == std::string::npos);
}

TEST_CASE("a warning leaves the size and stands below the table with the sizes it holds for") {
    const Sheets s = made("soft-spine", test::paper("a4"), {100, 90, 80, 70}, [](std::vector<SizeColumn>& columns) {
        for (SizeColumn& column : columns) {
            column.measures.findings.clear();
            if (column.print == Print::borderless && column.percent != 80) column.measures.findings.push_back({"journal-x", Level::warning, "", 0, 0, "", "", "The pages may tear.", ""});
            if (column.print == Print::bordered && column.percent <= 90)
                column.measures.findings.push_back({"journal-y", Level::warning, "", 0, 0, "", "", "It is " + column.label + " wide.", ""});
        }
    });
    const std::string words = all_words(s.document);
    CHECK(words.find("Borderless, 100 %, 90 %, 70 %: The pages may tear.") != std::string::npos);
    CHECK(words.find("Bordered, 90 % to 70 %: It is 90 % wide. (Figures of 90 %.)") != std::string::npos);
}

TEST_CASE("full size that fails shows no figure to cut from, and is not drawn") {
    const auto failing = [](bool first_too) {
        return made("soft-spine", test::paper("a4"), {100}, [&](std::vector<SizeColumn>& columns) {
            for (std::size_t i = first_too ? 0 : 1; i < columns.size(); ++i) columns[i].measures.findings.push_back({"journal-x", Level::error, "", 0, 0, "", "", "It does not hold.", ""});
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

}  // namespace measurements_test
