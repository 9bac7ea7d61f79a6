// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/fractions.h"
#include "compose/journal_notes.h"
#include "compose/named_figure.h"
#include "compose/print_readings.h"
#include "compose/measurements_samples.h"
#include "compose/size_table.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace qw::measurements_test {

using namespace qw::compose;
using namespace qw::literals;

namespace {

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

TEST_CASE("the sheet is read by the line of the print check and by a trimmed page", "[many]") {
    for (const Paper& paper : test::sheet_papers()) {
        const Sheets s = made("soft-spine", paper, planned());
        std::string words;
        for (const Page& page : s.document.pages) {
            const auto texts = texts_of(page);
            const bool sizes = texts.front().starts_with("Borderless, ") || texts.front().starts_with("Bordered, ");
            if (texts.front() == "Measure your print" || (sizes && rows_tell_the_line(paper))) words += words_of(texts);
        }
        words.erase(std::remove(words.begin(), words.end(), '*'), words.end());
        const auto bare = [&](Length length) {
            const std::string text = show(round_to_step(length, ruler_mark(paper.ruler), Rounding::nearest), paper.ruler);
            return real_fractions(text.substr(0, text.rfind(' ')));
        };
        CHECK(words.find("it is " + real_fractions(show(gauge_length(paper), paper.ruler)) + " long") != std::string::npos);
        for (const SizeColumn& column : told_apart(s.columns, paper)) {
            if (has_errors(column.measures.findings)) continue;
            const Size page = column.measures.conditions.page;
            char scale[16];
            std::snprintf(scale, sizeof scale, "%.3f", column.measures.conditions.scale);
            CAPTURE(paper.title, column.label);
            if (rows_tell_the_line(paper)) {  // a row of the sizes begins: per cent, page, and below them line and scale
                const std::string line = bare(gauge_length(paper) * column.percent / 100);
                CHECK(words.find(" " + column.label + " " + line + " · " + scale + " " + bare(page.width) + " × " + bare(page.height) + " ") != std::string::npos);
                continue;
            }
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

TEST_CASE("between two rows a buyer adds to her own page", "[many]") {
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
    CHECK(all_words(cased.document)
              .find("Spine piece up to the next " + real_fractions("1/16 in ") + real_fractions(show_us(spine.us)) + " " +
                    show_metric(spine.metric)) != std::string::npos);
    CHECK(all_words(made("soft-spine", test::paper("a4"), {100}).document).find("From your own page") == std::string::npos);
}

TEST_CASE("fixed lengths that a step names stay the same at every size; where rules say otherwise the sheet tells") {
    const kit::JournalTemplate journal = with_notes();
    const auto lengths = setting_out(journal);
    REQUIRE(lengths.size() == 1);
    CHECK(lengths.front()->name == "odd-gap");

    const auto manifest = test::sample_manifest("soft-spine");
    for (const Paper& paper : test::sheet_papers()) {
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

TEST_CASE("a template's name is read as bookbinders write it") {
    const auto names = passages_of(test::pipeline(), "names");
    CHECK(title_of_name("turn-in", names) == "Turn-in");
    CHECK(title_of_name("fore-edge-square", names) == "Fore-edge square");
    CHECK(title_of_name("least-turn-in", names) == "Least turn-in");
    CHECK(title_of_name("hinge-gap", names) == "Hinge gap");
    CHECK(title_of_name("turn", names) == "Turn");
    CHECK(title_of_name("turns-of-cord", names) == "Turns of cord");
    const std::string words = all_words(made("soft-spine", test::paper("a4"), {100, 90}).document);
    CHECK(words.find("Turn-in ") != std::string::npos);
    CHECK(words.find("Fore-edge square") != std::string::npos);
    CHECK(words.find("Turn in") == std::string::npos);
    CHECK(words.find("Fore edge") == std::string::npos);
}

TEST_CASE("a cover paper whose grain turns its picture says so") {
    for (const auto& [journal, pieces] : std::vector<std::pair<std::string, std::string>>{
             {"soft-spine", "cover paper"}, {"case-binding", "cover paper"}, {"concertina", "cover paper and liner"}, {"long-stitch", "panel"}}) {
        CAPTURE(journal);
        CHECK(all_words(made(journal, test::paper("a4"), {100, 90}).document)
                  .find("Pictures on the " + pieces + ": the grain has to run along the height.") != std::string::npos);
        const auto& steps = test::pipeline().journals.at(journal).steps;
        CHECK(std::any_of(steps.begin(), steps.end(), [](const kit::StepTemplate& s) {
            return s.text.find("picture that is wider than high then lies sideways") != std::string::npos;
        }));
    }
    // A full sheet that goes round all pages lies as it was drawn.
    CHECK(all_words(made("wrapped-booklet", test::paper("a4"), {100, 90}).document).find("Pictures on the") == std::string::npos);
}

TEST_CASE("what every template says of published rules stands on its sheet") {
    for (const auto& [journal, templ] : test::pipeline().journals) {
        const std::string words = all_words(made(journal, test::paper("a4"), {100, 90}).document);
        for (const kit::NamedLength& length : templ.lengths) CHECK((length.published.empty() || words.find(real_fractions(length.published)) != std::string::npos));
        for (const kit::NamedNumber& number : templ.numbers) CHECK((number.published.empty() || words.find(real_fractions(number.published)) != std::string::npos));
    }
}

}  // namespace qw::measurements_test
