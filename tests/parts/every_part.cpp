// SPDX-License-Identifier: GPL-3.0-or-later
// The templates of pipeline/parts, each folded as it is printed: with both rulers, on thin and on thick paper, from the
// smallest print to the largest.
#include "parts/folding.h"

#include "base/fault.h"
#include "kit/read.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace qw::parts::every_part_tests {

namespace {

const kit::Pipeline& data() {
    static const kit::Pipeline pipeline = [] {
        const auto disk = real_disk();
        return kit::read_pipeline(*disk, Path(QW_SOURCE_DIR) / "pipeline");
    }();
    return pipeline;
}

NetConditions conditions(UnitSystem system, double scale = 1, Length caliper = Length::mm(0.186)) {
    NetConditions made;
    made.system = system;
    made.scale = scale;
    made.caliper = caliper;
    return made;
}

Net net(const std::string& name, const NetConditions& as) { return net_of(data().parts.at(name), as); }

Rect panel(const Net& net, const std::string& name) {
    const auto found = std::find_if(net.panels.begin(), net.panels.end(), [&](const Panel& one) { return one.name == name; });
    REQUIRE(found != net.panels.end());
    return bounds(found->region);
}

std::string text_of(const Findings& findings) {
    std::string text;
    for (const Finding& finding : findings) text += finding.rule + " " + std::to_string(finding.line) + ": " + finding.message + "\n";
    return text;
}

bool near_mm(Length length, double mm) { return length.in_mm() == Approx(mm).margin(0.01); }

}  // namespace

TEST_CASE("every part folds without a finding, at every size, with both rulers, on thin and thick paper", "[many]") {
    REQUIRE(data().parts.size() >= 6);
    for (const auto& [name, part] : data().parts)
        for (const UnitSystem system : {UnitSystem::metric, UnitSystem::us})
            // 103 %: what drivers add; 0.9145 and 0.9091: A4 and letter with a white border; 30 %: the smallest print.
            for (const double scale : {1.03, 1.0, 0.9145, 0.9091, 0.75, 0.5, 0.3})
                for (const double caliper : {0.1, 0.186, 0.3}) {
                    INFO(name << (system == UnitSystem::us ? " us " : " metric ") << scale << " caliper " << caliper);
                    const Net made = net_of(part, conditions(system, scale, Length::mm(caliper)));
                    const Folded folded = fold(made);
                    INFO(text_of(folded.findings));
                    CHECK(folded.findings.empty());
                    CHECK(folded.states.size() == part.folds.size() + 1);
                }
}

TEST_CASE("the trifold pocket has the sizes of its kind, and its net fits every paper and print") {
    struct Sheet { UnitSystem system; double scale, width, height; };
    // Paper less 3 mm at each edge; what the margins of most home printers leave: 12.7 and 6.35 mm (generic PPD, 36 and 18 pt).
    const Sheet sheets[] = {{UnitSystem::us, 1, 273.4, 209.9}, {UnitSystem::us, 0.9091, 254, 203.2},
                            {UnitSystem::metric, 1, 291, 204}, {UnitSystem::metric, 0.9145, 271.6, 197.3}};
    for (const Sheet& sheet : sheets) {
        INFO(sheet.width);
        const Rect flat = bounds(net("trifold-pocket", conditions(sheet.system, sheet.scale)).whole);
        const double bleed = 3 * sheet.scale;
        CHECK(flat.width().in_mm() <= sheet.width);  // the tabs have no bleed, and stand out farther than that of the panels
        CHECK(flat.height().in_mm() + 2 * bleed <= sheet.height);
    }
    const Net metric = net("trifold-pocket", conditions(UnitSystem::metric)), us = net("trifold-pocket", conditions(UnitSystem::us));
    const Folded folded = fold(metric);
    CHECK(near_mm(folded.size.width, 84));
    CHECK(near_mm(folded.size.height, 120));
    CHECK(near_mm(panel(metric, "inner").width(), 82.5));
    CHECK(near_mm(panel(us, "middle").width(), (3 + 5.0 / 16) * 25.4));
    CHECK(near_mm(panel(us, "inner").width(), (3 + 4.0 / 16) * 25.4));
    CHECK(near_mm(room_of(metric, folded, metric.pockets.at(1)).width, 84));
    CHECK(near_mm(room_of(metric, folded, metric.pockets.at(1)).depth, 64));
}

TEST_CASE("at half size the inner panel is shorter by what the paper asks, not by half of what it was") {
    const Net half = net("trifold-pocket", conditions(UnitSystem::metric, 0.5, Length::mm(0.2)));
    CHECK(near_mm(panel(half, "middle").width(), 42));
    CHECK(near_mm(panel(half, "inner").width(), 42 - 7 * 0.2));  // 1.4 mm, and half of 1.5 mm is less
    const Net thin = net("trifold-pocket", conditions(UnitSystem::metric, 0.5, Length::mm(0.1)));
    CHECK(near_mm(panel(thin, "inner").width(), 42 - 0.75));
}

TEST_CASE("the tuck pocket grows with what goes in, and keeps its own size for less") {
    NetConditions as = conditions(UnitSystem::metric);
    as.contents = {Length::mm(54), Length::mm(86)};
    as.contents_thickness = Length::mm(0.3);
    CHECK(near_mm(panel(net("tuck-pocket", as), "front").width(), 62));
    as.contents = {Length::mm(70), Length::mm(110)};
    as.contents_thickness = Length::mm(2);
    const Net grown = net("tuck-pocket", as);
    CHECK(near_mm(panel(grown, "front").width(), 70 + 2 + 2.5));
    CHECK(near_mm(panel(grown, "back").height(), 110 + 2.5));
    CHECK(fold(grown).findings.empty());
}

TEST_CASE("a tag's hole and its twine stay what they are on a small print") {
    const Net small = net("plain-tag", conditions(UnitSystem::metric, 0.5));
    REQUIRE(small.holes.size() == 1);
    CHECK(small.holes[0].diameter == Length::mm(5));
    CHECK(near_mm(panel(small, "tag").top - small.holes[0].at.y, 6));  // half of 8 mm would tear out
    REQUIRE(small.lengths.size() == 1);
    CHECK(small.lengths[0].metric == Length::mm(200));
    CHECK(small.lengths[0].us == Length::inches(8));
}

}  // namespace qw::parts::every_part_tests
