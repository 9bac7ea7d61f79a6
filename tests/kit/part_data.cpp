// SPDX-License-Identifier: GPL-3.0-or-later
// What parts have beside their templates: things of fixed size, the rules of their sheets, tools with a reach. First as
// the reader takes it, then as the project's own data has it.
#include "kit/example.h"
#include "kit/small_pipeline.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace qw;
using namespace qw::test;

namespace {

const kit::Pipeline& own_data() {
    static const kit::Pipeline pipeline = [] {
        const auto disk = real_disk();
        return kit::read_pipeline(*disk, Path(QW_SOURCE_DIR) / "pipeline");
    }();
    return pipeline;
}

const kit::Tool& tool_of(const kit::Pipeline& pipeline, const std::string& name) {
    const auto found = std::find_if(pipeline.tools.begin(), pipeline.tools.end(), [&](const kit::Tool& tool) { return tool.name == name; });
    REQUIRE(found != pipeline.tools.end());
    return *found;
}

}  // namespace

TEST_CASE("things, lines, room and reach are read") {
    const kit::Pipeline read = SmallPipeline().read();
    REQUIRE(read.things.size() == 2);
    REQUIRE(read.thing("card") != nullptr);
    CHECK(read.thing("card")->title == "Card");
    CHECK(read.thing("card")->size == Size{Length::mm(85), Length::mm(55)});
    CHECK(read.thing("card")->thickness == Length::mm(0.3));
    CHECK(read.thing("card")->source == "from memory");
    CHECK(read.thing("print")->source == "s");
    CHECK(read.thing("cards") == nullptr);

    const kit::PartRules& rules = read.part_rules;
    CHECK(rules.cut.weight == Length::points(0.6));
    CHECK(rules.cut.dash.empty());
    CHECK(rules.valley.weight == Length::points(0.5));
    CHECK(rules.valley.dash == std::vector<Length>{Length::points(3), Length::points(3)});  // equal ones may stand beside each other
    CHECK(rules.mountain.weight == Length::points(0.4));
    CHECK(rules.mountain.dash.size() == 4);
    CHECK(rules.hatch_weight == Length::points(0.3));
    CHECK(rules.hatch_gap == Length::mm(2));
    CHECK(rules.scissors_room == Length::mm(6));
    CHECK(rules.edge_room == Length::mm(3));
    CHECK(rules.over_fold == Length::mm(1));
    CHECK(rules.back_shift == Length::mm(2));
    CHECK(rules.clearance == Length::inches(0.125));
    CHECK(rules.least_clearance == Length::mm(1));

    CHECK(tool_of(read, "punch").reach == Length::mm(30));
    CHECK(tool_of(read, "punch").instead == "awl");
    CHECK_FALSE(tool_of(read, "awl").reach);
    CHECK(tool_of(read, "awl").instead.empty());
}

TEST_CASE("faults in things, in the rules of part sheets and in what tools reach") {
    const char *const things = "things.yaml", *const sheets = "part-sheets.yaml", *const materials = "materials.yaml";
    check_broken({
        {things, "size: 85 x 55 mm", "size: ▸85 x 55", "bare-number"},
        {things, "{ title: Card, size: 85 x 55 mm, ", "▸{ title: Card, ", "missing-key"},
        {things, "thickness: 0.3 mm", "thickness: ▸0.3", "bare-number"},
        {things, "thickness: 0.3 mm", "thickness: ▸60 mm", "out-of-range"},
        {things, "{ title: Print, size: 54 x 86 mm, thickness: 0.2 mm, source: s }", "▸{ title: Print, size: 54 x 86 mm, thickness: 0.2 mm }", "missing-key"},
        {things, "  print:", "  ▸Print:", "bad-name"},
        {things, "things:", "▸thing:", "unknown-key", "write 'things'"},
        {sheets, "{ weight: 0.6 pt, why: w }", "▸{ weight: 0.6 pt }", "missing-key"},
        {sheets, "weight: 0.6 pt", "weight: ▸0.6", "bare-number"},
        {sheets, "weight: 0.6 pt", "weight: ▸0.6 mn", "unknown-unit"},
        {sheets, "weight: 0.6 pt", "weight: ▸0.6 in", "out-of-range"},
        {sheets, "[3 pt, 3 pt]", "▸[3 pt]", "bad-dash"},
        {sheets, "[3 pt, 3 pt]", "[▸0 pt, 3 pt]", "out-of-range"},
        {sheets, "mountain: { weight: 0.4 pt, dash: [6 pt, 2 pt, 1 pt, 2 pt]", "▸mountain: { weight: 0.4 pt, dash: [3 pt, 3 pt]", "bad-dash"},
        {sheets, "valley: { weight: 0.5 pt, dash: [3 pt, 3 pt],", "▸valley: { weight: 0.5 pt,", "bad-dash"},
        {sheets, "gap: 2 mm", "gap: ▸0.1 mm", "out-of-range"},
        {sheets, "  hatch: {", "  ▸hatsh: {", "unknown-key", "write 'hatch'"},
        {sheets, "  scissors: { length: 6 mm, why: w }\n  edge: { length: 3 mm, why: w }\n", "  ▸scissors: { length: 6 mm, why: w }\n", "missing-key"},
        {sheets, "clearance: { length: 1/8 in", "clearance: { length: ▸1/8", "bare-number"},
        {sheets, "  least-clearance: { length: 1 mm", "  ▸least-clearance: { length: 4 mm", "out-of-range"},
        {materials, "reach: 30 mm", "reach: ▸30", "bare-number"},
        {materials, "reach: 30 mm", "reach: ▸0 mm", "out-of-range"},
        {materials, "reach: 30 mm, instead: awl, why: w", "▸instead: awl, why: w", "not-here"},
        {materials, "{ title: Punch, use: u, reach: 30 mm, instead: awl, why: w }", "▸{ title: Punch, use: u, reach: 30 mm, why: w }", "missing-key"},
        {materials, "{ title: Punch, use: u, reach: 30 mm, instead: awl, why: w }", "▸{ title: Punch, use: u, reach: 30 mm, instead: awl }", "missing-key"},
        {materials, "instead: awl", "instead: ▸owl", "unknown-name", "write 'awl'"},
        {materials, "instead: awl", "instead: ▸punch", "unknown-name"},
    });
}

TEST_CASE("own data: things have the sizes that their sources say") {
    const auto size = [](const char* name) {
        INFO(name);
        const kit::Thing* thing = own_data().thing(name);
        REQUIRE(thing != nullptr);
        return thing->size;
    };
    CHECK(size("card-id-1") == Size{Length::mm(85.6), Length::mm(53.98)});         // ISO/IEC 7810, ID-1
    CHECK(own_data().thing("card-id-1")->thickness == Length::mm(0.76));           // ISO/IEC 7810, ID-1
    CHECK(size("card-85x55") == Size{Length::mm(85), Length::mm(55)});             // common practice, no source
    CHECK(size("card-us") == Size{Length::inches(3.5), Length::inches(2)});        // common practice, no source
    CHECK(size("index-card-3x5") == Size{Length::inches(3), Length::inches(5)});   // PWG 5101.1: na_index-3x5
    CHECK(size("index-card-4x6") == Size{Length::inches(4), Length::inches(6)});   // PWG 5101.1: na_index-4x6
    CHECK(size("mini-print-54x86") == Size{Length::mm(54), Length::mm(86)});       // PWG 5101.1: om_card_54x86mm
    for (const kit::Thing& thing : own_data().things) CHECK_FALSE(thing.source.empty());
}

TEST_CASE("own data: the rules of part sheets") {
    const kit::PartRules& rules = own_data().part_rules;
    CHECK(rules.clearance == Length::mm(2));        // common practice, no source, as the next
    CHECK(rules.least_clearance == Length::mm(1));
    CHECK(rules.back_shift == Length::mm(2));       // from memory
    CHECK(rules.edge_room > Length::points((627.552 - 612) / 2));  // borderless letter of HP drivers, 627.552 pt for 612 pt
    CHECK(rules.cut.dash.empty());
    CHECK(rules.valley.dash != rules.mountain.dash);
    CHECK(tool_of(own_data(), "hole-punch").instead == "awl");
}

TEST_CASE("own data: six parts, each complete") {
    std::set<std::string> names;
    for (const auto& [name, part] : own_data().parts) {
        INFO(name);
        names.insert(name);
        CHECK(part.name == name);
        CHECK_FALSE(part.layers.empty());
        CHECK(std::any_of(part.faces.begin(), part.faces.end(), [](const kit::PartFaceTemplate& face) { return face.needed; }));
        for (const kit::NamedLength& length : part.lengths) CHECK_FALSE(length.why.empty());
        for (const kit::ItemTemplate& item : part.items)
            CHECK(std::any_of(own_data().materials.begin(), own_data().materials.end(), [&](const kit::Material& m) { return m.name == item.name; }));
        // Every tool of a step is on the part's list, and every tool of the list is used.
        std::set<std::string> used;
        for (const kit::StepTemplate& step : part.steps) used.insert(step.tools.begin(), step.tools.end());
        CHECK(used == std::set<std::string>(part.tools.begin(), part.tools.end()));
    }
    CHECK(names == std::set<std::string>{"envelope", "library-card-pocket", "plain-tag", "pocket-tag", "trifold-pocket", "tuck-pocket"});
    const auto& trifold = own_data().parts.at("trifold-pocket");
    CHECK(trifold.pockets.size() == 3);
    CHECK(trifold.glue.size() == 2);
}
