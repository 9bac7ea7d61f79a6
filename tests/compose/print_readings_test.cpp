// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/print_readings.h"
#include "compose/sample_kit.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace qw;
using namespace qw::compose;
using namespace qw::literals;

namespace print_readings_test {  // its local names are also those of other files

namespace {

Margins all_round(Length margin) { return {margin, margin, margin, margin}; }

/// Margins of CUPS drivers and of printers that report theirs by IPP: 3 mm; 9, 12 pt; 5 mm; 18 pt all round; 18 pt at the
/// long and 36 pt at the short edges.
const std::vector<Margins> driver_margins{all_round(3_mm), all_round(9_pt), all_round(12_pt), all_round(5_mm), all_round(18_pt), {18_pt, 36_pt, 18_pt, 36_pt}};

struct PublishedScales {
    std::string made, onto;
    std::vector<double> scales;
};

bool among(const std::vector<PrintCause>& causes, PrintCause::Kind kind, const std::string& paper, const std::string& printer) {
    return std::any_of(causes.begin(), causes.end(), [&](const PrintCause& c) {
        return c.kind == kind && c.in_printer.short_name == paper && (printer.empty() ? !c.printer : c.printer && c.printer->name == printer);
    });
}

const PrintReading& reading_with(const std::vector<PrintReading>& readings, PrintCause::Kind kind, const std::string& paper, const std::string& printer = "") {
    const auto found = std::find_if(readings.begin(), readings.end(), [&](const PrintReading& r) { return among(r.causes, kind, paper, printer); });
    REQUIRE(found != readings.end());
    return *found;
}

}  // namespace

TEST_CASE("sheets are fitted into other papers and into printers' margins by the scales that follow from the standards") {
    // Derived from ISO 216 (A4 210 x 297 mm), ANSI letter (8.5 x 11 in) and the CUPS drivers' margins.
    const PublishedScales whole[] = {{"a4", "letter", {0.940741}}, {"letter", "a4", {0.972673}}};
    for (const PublishedScales& w : whole)
        CHECK(fitted_scale(test::paper(w.made), {test::paper(w.onto), Print::borderless, {}}) == Approx(w.scales[0]).margin(5e-7));
    const PublishedScales in_margins[] = {{"letter", "letter", {.9722, .9706, .9608, .9537, .9412, .9091}},
                                          {"a4", "a4", {.9714, .9698, .9597, .9524, .9395, .9145}},
                                          {"a4", "letter", {.9205, .9194, .9122, .9071, .8980, .8552}},
                                          {"letter", "a4", {.9449, .9433, .9335, .9264, .9138, .9138}}};
    for (const PublishedScales& p : in_margins)
        for (std::size_t i = 0; i < driver_margins.size(); ++i) {
            CAPTURE(p.made, p.onto, i);
            CHECK(fitted_scale(test::paper(p.made), {test::paper(p.onto), Print::bordered, driver_margins[i]}) == Approx(p.scales[i]).margin(5.1e-5));
        }
}

TEST_CASE("fitted to its own paper a sheet has the scale of the bordered edition") {
    for (const std::string name : {"letter", "a4"})
        for (const kit::Printer& printer : test::pipeline().printers) {
            const Edition edition{test::paper(name), Print::bordered, printer.single};
            CHECK(fitted_scale(test::paper(name), edition) == Approx(fit_of(edition, false).scale));
        }
}

TEST_CASE("a line of 100 mm or 1 in is as long as its per cent") {
    for (const double percent : {97.0, 96.0, 94.0}) CHECK(gauge_reading(test::paper("a4"), percent) == Length::mm(2 * percent));
    CHECK(gauge_reading(test::paper("a4"), 50) == 100_mm);
    CHECK(gauge_reading(test::paper("letter"), 100) == 8_in);
    CHECK(gauge_reading(test::paper("letter"), 95) == Length::inches(7.625));  // 7.6 in
}

TEST_CASE("every printer and paper of the data is among the causes, single-sided and duplex") {
    const kit::Pipeline& pipeline = test::pipeline();
    for (const std::string name : {"letter", "a4"}) {
        const auto causes = possible_causes(pipeline, test::paper(name));
        CHECK(std::is_sorted(causes.begin(), causes.end(), [](const PrintCause& a, const PrintCause& b) { return a.scale > b.scale; }));
        CHECK(among(causes, PrintCause::Kind::as_made, name, ""));
        CHECK(among(causes, PrintCause::Kind::enlarged, name, ""));
        for (const Paper& paper : pipeline.papers) {
            CHECK(among(causes, PrintCause::Kind::whole, paper.short_name, "") == (paper.short_name != name));
            for (const kit::Printer& printer : pipeline.printers)
                for (const auto& [sides, margins] : {std::pair{kit::Sides::single, printer.single}, std::pair{kit::Sides::duplex, printer.duplex}}) {
                    CAPTURE(name, paper.short_name, printer.name);
                    const double scale = fitted_scale(test::paper(name), {paper, Print::bordered, margins});
                    CHECK(std::any_of(causes.begin(), causes.end(), [&](const PrintCause& c) {
                        return c.printer == &printer && c.in_printer.name == paper.name && c.scale == scale &&
                               (c.sides == sides || printer.single == printer.duplex);
                    }));
                }
        }
    }
}

TEST_CASE("a printer that leaves more at one edge than at the opposite one fits into its whole room, or about the middle") {
    const kit::Printer* printer = test::pipeline().printer("half-inch-foot-inkjet");
    REQUIRE(printer);
    std::set<std::pair<bool, int>> found;  // centred, ten-thousandths
    for (const PrintCause& c : possible_causes(test::pipeline(), test::paper("letter")))
        if (c.printer == printer && c.in_printer.short_name == "letter" && c.sides == kit::Sides::single)
            found.emplace(c.centred, static_cast<int>(c.scale * 10000));
    // 12.7 mm of 215.9 across; 3.18 and 12.7 mm of 279.4 along, or twice 12.7 mm.
    CHECK(found == std::set<std::pair<bool, int>>{{false, 9411}, {true, 9090}});
}

TEST_CASE("borderless drivers enlarge by what their canvas exceeds the paper") {
    // Driver data of 50 inkjets: a borderless canvas of 627.552 x 806.112 pt for letter, 612 x 792 pt.
    const auto readings = possible_readings(test::pipeline(), test::paper("letter"));
    CHECK(readings.front().causes.front().kind == PrintCause::Kind::enlarged);
    CHECK(readings.front().least == 8_in);
    CHECK(readings.front().most / 8_in == Approx(1.0254).margin(5e-5));
}

TEST_CASE("A4 in a quarter inch of margin and an A4 file on a letter sheet cannot be told apart") {
    const auto readings = possible_readings(test::pipeline(), test::paper("a4"));
    const PrintReading& both = reading_with(readings, PrintCause::Kind::whole, "letter");
    CHECK(among(both.causes, PrintCause::Kind::fitted, "a4", "all-around-quarter-inch"));
    CHECK(both.asks_for_paper());
    CHECK(both.least.in_mm() == Approx(187.9).margin(0.05));
    CHECK(both.most.in_mm() == Approx(188.1).margin(0.05));
    CHECK(read_alike(both.least, both.most, UnitSystem::metric));
}

TEST_CASE("what is said to read alike does, nothing is said twice, and nearest neighbours are not parted") {
    for (const std::string name : {"letter", "a4"}) {
        const Paper& paper = test::paper(name);
        const auto readings = possible_readings(test::pipeline(), paper);
        std::size_t causes = 0;
        for (const PrintReading& r : readings) {
            causes += r.causes.size();
            if (r.causes.front().kind == PrintCause::Kind::enlarged) continue;
            CHECK(read_alike(r.least, r.most, paper.ruler));
            for (const PrintCause& c : r.causes) {
                CHECK(gauge_length(paper) * c.scale <= r.most);
                CHECK(gauge_length(paper) * c.scale >= r.least);
            }
        }
        CHECK(causes == possible_causes(test::pipeline(), paper).size());
        // Two readings that would still read alike as one would have been joined.
        for (std::size_t i = 2; i < readings.size(); ++i) CHECK(!read_alike(readings[i - 1].most, readings[i].least, paper.ruler));
    }
}

TEST_CASE("a ruler tells readings apart that are more than a mark from each other") {
    CHECK(read_alike(187.9_mm, 188.4_mm, UnitSystem::metric));
    CHECK(!read_alike(187.9_mm, 188.41_mm, UnitSystem::metric));
    CHECK(read_alike(Length::inches(7.5), Length::inches(7.5625), UnitSystem::us));
    CHECK(!read_alike(Length::inches(7.5), Length::inches(7.57), UnitSystem::us));
}

}  // namespace print_readings_test
