// SPDX-License-Identifier: GPL-3.0-or-later
// A sixth journal, written with what src/kit/journal-template.md says and nothing else: a block of single leaves, sewn
// through from the side. Its lengths are invented. It is read, computed and composed as the project's own are.
#include "compose/gauges_sheet.h"
#include "compose/guide_samples.h"
#include "compose/hole_jig_sheet.h"
#include "compose/materials_sheet.h"
#include "compose/measurements_sheet.h"
#include "compose/stitch_path.h"

#include "kit/read.h"
#include "support/fault_disk.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>

using namespace qw;
using namespace qw::compose;
using namespace qw::literals;

namespace {

const char* const side_sewn_yaml = R"yaml(# Side-sewn block: the sheets are cut in two, laid on each other and sewn through from front to back beside the spine, with
# a cover leaf at the front and at the back. Lengths without a source are common practice.
format: 1
journal: side-sewn
title: Side-sewn block
picture: none

lengths:
  hole-inset:
    { metric: 10 mm, us: 3/8 in, is: fixed, why: "from the row of holes to the spine's edge; nearer ones tear out" }
  end-inset:
    { metric: 15 mm, us: 5/8 in, is: printed, why: "from head and tail to the end holes" }
  least-inset:
    { metric: 5 mm, us: 3/16 in, is: fixed, why: "a hole that is nearer to an edge tears out" }
  thread-tail:
    { metric: 100 mm, us: 4 in, is: fixed, why: "enough of each end to hold and to knot" }
  thickest:
    { metric: 10 mm, us: 3/8 in, is: fixed, why: "a thicker block is not pierced straight with an awl" }

values:
  # A sheet that is cut in two is two leaves.
  leaves: 2 * sheets
  block: leaves * page_caliper + 2 * thickness_of_cover_leaf
  apart: (page_height - 2 * end_inset) / 3
  # The ends meet over the way from the second station to the third.
  thread-length: stitch_path + apart + 2 * thread_tail

pieces:
  cover-leaf:
    { title: Cover leaf, count: 2, width: page_width, height: page_height, stock: bought, material: heavy-paper, grain: height,
      thickness: { metric: 0.4 mm, us: 1/64 in }, use: "front and back, as large as the pages" }
  spine-paper:
    { title: Paper over the spine, optional: true, count: 1, width: 2 * hole_inset + block, height: page_height, stock: page, grain: height, glue: glue-stick,
      rounding: { metric: 0.5 mm, us: 1/16 in, way: down }, use: "glued round the spine before it is pierced" }

stations:
  use: "pierce the whole block, straight down"
  page: [ end_inset, end_inset + apart, page_height - end_inset - apart, page_height - end_inset ]

sewing:
  signatures: 1
  rows: 1
  path: [2, spine, 2, 1, spine, 1, head, 1, 2, 3, spine, 3, 4, spine, 4, tail, 4, 3]
  inset: hole_inset
  through: block
  begins: front
  thread: sewing-thread

cut-lengths:
  sewing-thread:
    { title: Sewing thread, count: 1, length: thread_length, material: linen-thread,
      rounding: { metric: 10 mm, us: 1/2 in, way: up }, use: "three times through each hole",
      or: { waxed-twine: { material: waxed-twine, use: "thicker, and seen better" } } }

items:
  glue-stick: { title: Glue stick, count: has_spine_paper, use: "for the paper over the spine" }

figures:
  leaves: { title: Leaves, is: number, value: leaves, use: "two from each sheet" }
  block-thickness: { title: Thickness of the block, value: block, use: "with its cover leaves, pressed" }

bulk: leaves * page_caliper
# No leaf lies in another.
creep: { least: 0, most: 0 }

checks:
  block-pierced:
    { holds: block <= thickest, measured: block, limit: thickest, level: error,
      message: "The block is {measured} thick, and an awl goes straight through {limit}.", mend: "Take fewer sheets or thinner paper." }
  hole-near-end:
    { holds: end_inset >= least_inset, measured: end_inset, limit: least_inset, level: warning,
      message: "The end holes are so near head and tail that the pages may tear.", mend: "Print the pages larger." }

tools: [ steel-ruler, craft-knife, cutting-mat, clips, awl, piercing-mat, needle, scissors ]

steps:
  - title: Cut the sheets in two
    text: >-
      Trim the sheets, and cut each across its middle. Lay the leaves on each other in the order of the file.
    uses: [page, leaves]
    tools: [steel-ruler, craft-knife, cutting-mat]
  - title: Cover the spine
    when: has_spine_paper
    text: >-
      Glue the paper round the spine, {{hole-inset}} on each side.
    uses: [spine-paper, glue-stick]
    tools: [bone-folder]
  - title: Pierce the block
    text: >-
      Knock the block square, lay a cover leaf on each side and clip it. Draw a line {{hole-inset}} from the spine and pierce each
      station on it, no nearer than {{least-inset}} to an edge.
    uses: [cover-leaf, page-stations, block-thickness]
    tools: [clips, awl, piercing-mat]
    drawing: stations
  - title: Sew
    text: >-
      Begin at the front and follow the numbers. Each turn goes round an edge and back through the same hole. Tie the two ends
      at the front.
    uses: [sewing-thread]
    tools: [needle, scissors]
    drawing: stitch
)yaml";

/// The project's pipeline with the journal in it.
const kit::Pipeline& with_side_sewn() {
    static const kit::Pipeline read = [] {
        const test::TestFolder folder;
        std::filesystem::copy(Path(QW_SOURCE_DIR) / "pipeline", folder.path(), std::filesystem::copy_options::recursive);
        std::ofstream(folder / "journals/side-sewn.yaml") << side_sewn_yaml;
        return kit::read_pipeline(*real_disk(), folder.path());
    }();
    return read;
}

const kit::JournalTemplate& side_sewn() { return with_side_sewn().journals.at("side-sewn"); }

/// 12 sheets of paper of 0.125 mm.
journal::Measures side_measures(const std::string& paper, double percent = 100, Print print = Print::borderless, const kit::JournalTemplate& journal = side_sewn()) {
    return journal::compute(journal, test::sample_conditions(test::sample_manifest("side-sewn"), test::paper(paper), print, percent));
}

struct SideKit {
    kit::JournalTemplate journal;
    kit::Manifest manifest = test::sample_manifest("side-sewn");
    std::vector<SizeColumn> columns, full;
    SheetContext context;

    SideKit(const std::string& paper, kit::JournalTemplate of)
        : journal(std::move(of)), context{manifest, with_side_sewn(), test::paper(paper), test::fonts(), Date{2026, 9, 1}} {
        for (const Print print : manifest.prints)
            for (const double percent : {100.0, 90.0, 50.0})
                columns.push_back({std::to_string(static_cast<int>(percent)) + " %", percent, print, side_measures(paper, percent, print, journal)});
        for (const SizeColumn& column : columns)
            if (column.percent == 100) full.push_back(column);
    }
    SideKit(const SideKit&) = delete;
};

}  // namespace

TEST_CASE("a side-sewn block: thread by hand on four papers") {
    // Path: 2 spine 2 1 spine 1 head 1 2 3 spine 3 4 spine 4 tail 4 3. So there are four turns round the spine, two insets
    // long each; one round head and one round tail, two end insets long each; five moves from a hole to its neighbour
    // (2-1, 1-2, 2-3, 3-4, 4-3), a third of what is left between the end holes each; and 12 ways through holes and 6 round
    // edges, as long as the block is thick. The ends meet over one more third, with two tails.
    struct ByHand {
        const char* paper;
        double percent, path_mm;
        Length thread;
    };
    // Block: 24 leaves of 0.125 mm and two cover leaves of 0.4 mm, 3.8 mm; in inches 3 mm + 2/64 in = 0.14936 in.
    const ByHand table[] = {
        // thirds (210 - 30) / 3 = 60: 4 * 20 + 4 * 15 + 5 * 60 + 18 * 3.8 = 508.4; + 60 + 200 = 768.4
        {"a4", 100, 508.4, 770_mm},
        // (105 - 15) / 3 = 30; the end inset shrinks with the pages, all else stays: 80 + 30 + 150 + 68.4 = 328.4; + 30 + 200 = 558.4
        {"a4", 50, 328.4, 560_mm},
        // (148 - 30) / 3 = 39.333: 80 + 60 + 196.667 + 68.4 = 405.067; + 39.333 + 200 = 644.4
        {"a5", 100, 405.0667, 650_mm},
        // in: (8.5 - 1.25) / 3 = 2.41667: 4 * 0.75 + 4 * 0.625 + 12.08333 + 18 * 0.14936 = 20.27182; + 2.41667 + 8 = 30.68848
        {"letter", 100, 20.27182 * 25.4, 31_in},
        // in: (5 - 1.25) / 3 = 1.25: 3 + 2.5 + 6.25 + 2.68848 = 14.43848; + 1.25 + 8 = 23.68848
        {"5x7", 100, 14.43848 * 25.4, 24_in}};
    for (const ByHand& row : table) {
        CAPTURE(row.paper, row.percent);
        const journal::Measures m = side_measures(row.paper, row.percent);
        REQUIRE(m.sewing);
        CHECK(m.sewing->path.in_mm() == Approx(row.path_mm).margin(0.002));
        CHECK(m.length("sewing-thread")->length.rounded == row.thread);
        CHECK(m.findings.empty());
        CHECK(m.figure("leaves")->number == 24);
    }
    // What stands in for the cover or for the paper over the spine changes what the needle goes through.
    CHECK(side_measures("a4").figure("block-thickness")->length.exact == 3.8_mm);
}

TEST_CASE("a side-sewn block: each hole is gone through three times, and both ends lie at the front") {
    const journal::Measures m = side_measures("a4");
    std::vector<double> places;
    for (const journal::Shown& station : m.page_stations) places.push_back(station.exact / m.conditions.page.height);
    const auto laid = lay_path(*m.sewing->of, places, 20_mm, 180_mm, 6_mm);
    REQUIRE(laid);
    for (int station = 0; station < 4; ++station)
        CHECK(std::count_if(laid->passes.begin(), laid->passes.end(), [&](const Pass& pass) { return pass.station == station; }) == 3);
    CHECK(laid->begins_outside);
    CHECK(laid->ends_outside);
    std::string moves;
    for (const Move& move : laid->moves)
        moves += std::to_string(move.number) + (move.around == kit::Around::spine  ? "spine "
                                                : move.around == kit::Around::head ? "head "
                                                : move.around == kit::Around::tail ? "tail "
                                                : move.outside                     ? "front "
                                                                                   : "back ");
    CHECK(moves == "1spine 2back 3spine 4head 5front 6back 7spine 8front 9spine 10tail 11back ");
}

TEST_CASE("a side-sewn block: all its sheets are composed on four papers", "[many]") {
    for (const Paper& paper : test::sheet_papers()) {
        CAPTURE(paper.short_name);
        const SideKit kit(paper.short_name, side_sewn());
        const Document guide = guide_sheet(kit.context, kit.full), measurements = measurements_sheet(kit.context, kit.columns);
        guide_tests::check_placed(guide);
        guide_tests::check_placed(measurements);
        guide_tests::check_placed(gauges_sheet(kit.context, kit.full.front().measures));
        guide_tests::check_placed(materials_sheet(kit.context, materials::count(kit.manifest, with_side_sewn(), kit.full.front().measures)));
        const auto jig = hole_jig_sheet(kit.context, kit.full.front(), kit.columns);
        REQUIRE(jig);
        guide_tests::check_placed(*jig);
        const std::string all = guide_tests::running(guide);
        for (const std::string words : {"front", "back", "spine", "head", "tail", "on the back", "11", "2 Cover the spine", "4 Sew"}) {
            CAPTURE(words);
            CHECK(guide_tests::said(all, words));
        }
        for (const std::string words : {"signature", "inside the fold", "Front cover", "12 17"}) {
            CAPTURE(words);
            CHECK(!guide_tests::said(all, words));
        }
        CHECK(!guide_tests::said(guide_tests::running(measurements), "opened cover"));
        CHECK(guide_tests::said(guide_tests::running(measurements), "Cover leaf"));
    }
}

TEST_CASE("a side-sewn block: what is left out takes its step, its tool and its glue along") {
    const auto tools = [](const SideKit& kit) {
        std::string all;
        for (const materials::ToolLine& line : materials::count(kit.manifest, with_side_sewn(), kit.full.front().measures).tools) all += line.tool.name + " ";
        return all;
    };
    const SideKit whole("a4", side_sewn()), bare("a4", kit::chosen(side_sewn(), {{"spine-paper", {"none", {}}}}));
    CHECK_THAT(tools(whole), Catch::Contains("bone-folder"));
    CHECK_THAT(tools(bare), !Catch::Contains("bone-folder"));
    CHECK(bare.full.front().measures.items.empty());
    const std::string guide = guide_tests::running(guide_sheet(bare.context, bare.full));
    CHECK(!guide_tests::said(guide, "Cover the spine"));
    CHECK(guide_tests::said(guide, "3 Sew"));
}
