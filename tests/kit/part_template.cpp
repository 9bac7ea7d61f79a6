// SPDX-License-Identifier: GPL-3.0-or-later
// Part templates: every key is read, and every fault is told where it stands.
#include "kit/example.h"
#include "kit/small_pipeline.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

namespace {

const char* const t_yaml = "parts/t.yaml";

kit::PartTemplate changed_part(const std::string& from, const std::string& to) {
    SmallPipeline pipeline;
    pipeline.put(t_yaml, with(pipeline.text(t_yaml), from, to));
    return pipeline.read().parts.at("t");
}

using Kind = kit::OutlineStep::Kind;
using Names = std::vector<std::string>;

}  // namespace

TEST_CASE("a part's lengths, panels and folds are read") {
    const kit::PartTemplate part = SmallPipeline().read().parts.at("t");
    CHECK(part.name == "t");
    CHECK(part.title == "T");
    CHECK(part.file == "pipeline/parts/t.yaml");
    CHECK(part.mark.line == 2);
    REQUIRE(part.lengths.size() == 2);
    CHECK(part.lengths[0].name == "width");
    CHECK(part.lengths[0].value.metric == Length::mm(80));
    CHECK(part.lengths[0].value.us == Length::inches(3.125));
    CHECK(part.lengths[0].printed);  // the default of parts
    CHECK(part.lengths[0].why == "w w");
    CHECK(part.lengths[0].published == "p");
    CHECK_FALSE(part.lengths[1].printed);
    CHECK(part.numbers.at(0).value == 2);
    CHECK(part.values.at(0).name == "depth");
    CHECK(part.values.at(0).text == "width / n");

    REQUIRE(part.panels.size() == 3);
    const auto& back = part.panels[0].outline;
    CHECK(part.panels[0].title == "Back");
    REQUIRE(back.size() == 4);
    CHECK(back[1].kind == Kind::corner);
    CHECK(back[1].x.text == "width");
    CHECK(back[1].y.text == "0");
    CHECK(back[2].kind == Kind::rounded);
    CHECK(back[2].y.text == "depth");
    CHECK(back[2].radius.text == "hole_edge");
    CHECK(back[2].mark.line == part.panels[0].mark.line);
    const auto& front = part.panels[1].outline;
    REQUIRE(front.size() == 4);
    CHECK(front[2].kind == Kind::arc);
    CHECK(front[2].through_x.text == "width / 2");
    CHECK(front[2].through_y.text == "0");
    CHECK(front[2].x.text == "width");
    CHECK(front[2].y.text == "-depth");
    CHECK(part.panels[2].outline.size() == 2);  // an arc and its chord

    REQUIRE(part.folds.size() == 2);
    CHECK(part.folds[0].valley);
    CHECK_FALSE(part.folds[1].valley);
    CHECK(part.folds[1].moves == Names{"front", "tab"});
    CHECK(part.layers == Names{"back", "front"});
}

TEST_CASE("what lies where on a part is read") {
    const kit::PartTemplate part = SmallPipeline().read().parts.at("t");
    REQUIRE(part.glue.size() == 1);
    CHECK(part.glue[0].tab == "tab");
    CHECK(part.glue[0].on == "back");
    CHECK(part.glue[0].with == "paste");
    REQUIRE(part.faces.size() == 2);
    const kit::PartFaceTemplate &outside = part.faces[0], &inside = part.faces[1];
    CHECK(outside.front);
    CHECK(outside.head == 2);
    CHECK(outside.needed);
    CHECK(outside.after == 1);
    CHECK_FALSE(outside.from_front);
    CHECK_FALSE(inside.front);
    CHECK(inside.panels == Names{"back", "front"});
    CHECK(inside.head == 0);
    CHECK_FALSE(inside.needed);
    CHECK_FALSE(inside.after);
    CHECK(inside.from_front);
    CHECK(changed_part("head: down", "head: left").faces[0].head == 1);
    CHECK(changed_part("head: down", "head: right").faces[0].head == 3);
    REQUIRE(part.pockets.size() == 1);
    CHECK(part.pockets[0].front == "front");
    CHECK(part.pockets[0].back == "back");
    CHECK(part.pockets[0].opens == 3);
    CHECK(part.pockets[0].closes);
    CHECK(part.pockets[0].after == 1);
    CHECK_FALSE(changed_part(", closes: true, after: 1", "").pockets[0].closes);
    REQUIRE(part.holes.size() == 1);
    CHECK(part.holes[0].x.text == "width / 2");
    CHECK(part.holes[0].y.text == "depth - hole_edge");
    CHECK(part.holes[0].diameter.us == Length::inches(0.1875));
    CHECK(part.holes[0].tool == "punch");
    REQUIRE(part.no_ink.size() == 1);
    CHECK(part.no_ink[0].name == "stamp");
    CHECK_FALSE(part.no_ink[0].front);
    CHECK(part.no_ink[0].outline.size() == 3);
    CHECK(part.no_ink[0].why == "people write here");
}

TEST_CASE("what a part needs and how it is made is read") {
    const kit::PartTemplate part = SmallPipeline().read().parts.at("t");
    REQUIRE(part.cut_lengths.size() == 1);
    CHECK(part.cut_lengths[0].material == "cord");
    CHECK(part.cut_lengths[0].length.text == "width");
    CHECK(part.cut_lengths[0].rounding.way == Rounding::down);
    CHECK(part.cut_lengths[0].use == "u");
    REQUIRE(part.items.size() == 1);
    CHECK(part.items[0].count.text == "n");
    CHECK(part.items[0].size->metric == Length::mm(3));
    CHECK(part.items[0].tools == Names{"awl"});
    CHECK(part.tools == Names{"ruler", "punch"});
    REQUIRE(part.steps.size() == 2);
    CHECK(part.steps[0].text == "Cut it.");
    CHECK(part.steps[0].tools == Names{"ruler"});
    CHECK(part.steps[0].drawing == "flat");
    CHECK(part.steps[1].drawing == "fold-2");
    CHECK(changed_part("drawing: fold-2", "drawing: closed").steps[1].drawing == "closed");
    // A part of one panel is as good as one with folds.
    SmallPipeline pipeline;
    pipeline.put("parts/tag.yaml",
                 "format: 1\npart: tag\ntitle: Tag\nlengths: { a: { metric: 1 mm, us: 1/32 in, why: w } }\n"
                 "panels: { tag: { title: T, outline: [[0, 0], [a, 0], [a, a]] } }\n"
                 "faces: { outside: { title: O, side: front, panels: [tag] } }\ntools: [ruler]\nsteps: [{ title: Cut, text: Cut. }]\n");
    CHECK(pipeline.read().parts.at("tag").folds.empty());
}

TEST_CASE("faults in a part's names, lengths and outlines") {
    check_broken({
        {t_yaml, "part: t\n", "part: ▸u\n", "bad-name"},
        {t_yaml, "format: 1\npart: t\n", "▸format: 1\n", "missing-key"},
        {t_yaml, "title: T\n", "▸titel: T\n", "unknown-key", "write 'title'"},
        {t_yaml, "3 1/8 in", "▸3.1", "bare-number"},
        {t_yaml, "us: 3 1/8 in", "▸us: 2 in", "unlike-pair"},           // 50.8 mm for 80 mm
        {t_yaml, "us: 1/4 in", "▸us: 3/8 in", "unlike-pair"},           // 9.5 mm for 6 mm
        {t_yaml, "us: 3/16 in", "▸us: 1/2 in", "unlike-pair"},          // 12.7 mm for 5 mm
        {t_yaml, "us: 1/8 in }", "▸us: 1/16 in }", "unlike-pair"},      // of an item
        {t_yaml, "is: fixed", "is: ▸fixd", "unknown-word", "write 'fixed'"},
        {t_yaml, "{ metric: 6 mm, us: 1/4 in, is: fixed, why: w }", "▸{ metric: 6 mm, us: 1/4 in }", "missing-key"},
        {t_yaml, "  n: {", "  ▸width: {", "duplicate-name"},
        {t_yaml, "  depth: width / n", "  ▸hole-edge: width / n\n  depth: width / n", "duplicate-name"},
        {t_yaml, "  depth: width / n", "  ▸print-scale: n\n  ▸stock-caliper: n\n  ▸pi: n\n  ▸max: n\n  depth: width / n", "reserved-name"},
        {t_yaml, "  depth: width / n", "  ▸contents-width: n\n  ▸contents-height: n\n  ▸contents-thickness: n\n  depth: width / n", "reserved-name"},
        {t_yaml, "  depth: width / n", "  ▸Depth: n\n  depth: width / n", "bad-name"},
        {t_yaml, "  depth: width / n", "  depth: ▸width × n", "bad-formula"},
        {t_yaml, "panels:\n", "▸panel:\n", "unknown-key", "write 'panels'"},
        {t_yaml, "[0, 0], [width, 0], {", "[0, 0], [width, ▸[0]], {", "wrong-type"},
        {t_yaml, "[0, 0], [width, 0], {", "[0, 0], ▸[width], {", "bad-outline"},
        {t_yaml, "[0, 0], [width, 0], {", "[0, 0], ▸[max(width, 0), 0], {", "bad-outline", "under 'values'"},
        {t_yaml, "[0, 0], [width, 0], {", "[0, 0], ▸width, {", "wrong-type"},
        {t_yaml, "rounded: hole_edge", "▸rouned: hole_edge", "unknown-key", "write 'rounded'"},
        {t_yaml, "{ at: [width, depth], rounded: hole_edge }", "▸{ at: [width, depth] }", "missing-key"},
        {t_yaml, "{ through: [width / 2, 0], to: [width, -depth] }", "▸{ through: [width / 2, 0] }", "missing-key"},
        {t_yaml, "{ through: [width / 2, 0], to: [width, -depth] }", "{ ▸at: [0, 0], through: [width / 2, 0], to: [width, -depth] }", "unknown-key"},
        {t_yaml, "[[0, 0], { through: [-width, -depth], to: [0, -depth] }]", "[▸{ through: [-width, -depth], to: [0, -depth] }, [0, 0]]", "bad-outline"},
        {t_yaml, "[[0, 0], { through: [-width, -depth], to: [0, -depth] }]", "▸[[0, 0], [0, -depth]]", "bad-outline"},
        {t_yaml, "[[0, 0], { through: [-width, -depth], to: [0, -depth] }]", "▸[]", "bad-outline"},
    });
}

TEST_CASE("faults in how a part folds and is glued") {
    check_broken({
        {t_yaml, "moves: [tab]", "moves: [▸tap]", "unknown-name", "write 'tab'"},
        {t_yaml, "moves: [front, tab]", "moves: [front, tab, ▸tab]", "duplicate-value"},
        {t_yaml, "moves: [front, tab]", "▸moves: [front, tab, back]", "moves-all"},
        {t_yaml, "moves: [front, tab]", "moves: ▸[]", "empty-list"},
        {t_yaml, "{ moves: [tab], fold: valley }", "▸{ moves: [tab] }", "missing-key"},
        {t_yaml, "fold: valley", "fold: ▸vally", "unknown-word", "write 'valley'"},
        {t_yaml, "tab: tab, on", "tab: ▸tabs, on", "unknown-name", "write 'tab'"},
        {t_yaml, "on: back", "on: ▸bck", "unknown-name", "write 'back'"},
        {t_yaml, "on: back", "▸on: tab", "same-panel"},
        {t_yaml, "with: paste", "with: ▸past", "unknown-name", "write 'paste'"},
        {t_yaml, "layers: [back, front]", "layers: [back, ▸frnt]", "unknown-name", "write 'front'"},
        {t_yaml, "layers: [back, front]", "layers: [back, ▸back]", "duplicate-value"},
        {t_yaml, "between: [front, back]", "between: [front, ▸front]", "same-panel"},
        {t_yaml, "between: [front, back]", "between: [front, ▸bak]", "unknown-name", "write 'back'"},
        {t_yaml, "between: [front, back]", "between: ▸[front]", "wrong-type"},
        {t_yaml, "opens: right", "opens: ▸sideways", "unknown-word"},
        {t_yaml, "closes: true, after: 1", "closes: ▸yes, after: 1", "unknown-word"},
        {t_yaml, "closes: true, after: 1", "closes: true, after: ▸3", "out-of-range"},
    });
}

TEST_CASE("faults in a part's faces, holes and areas without ink") {
    check_broken({
        {t_yaml, "  outside: { title: Outside, side: front, panels", "  outside: ▸{ title: Outside, panels", "missing-key"},
        {t_yaml, "side: front", "side: ▸behind", "unknown-word"},
        {t_yaml, "panels: [back, front]", "panels: [back, ▸fornt]", "unknown-name", "write 'front'"},
        {t_yaml, "panels: [back, front]", "panels: [back, ▸back]", "duplicate-value"},
        {t_yaml, "side: back, panels: [back, front]", "side: front, ▸panels: [back, front]", "panel-taken"},
        {t_yaml, "head: down", "head: ▸dawn", "unknown-word", "write 'down'"},
        {t_yaml, "after: 1, from: behind", "after: ▸3, from: behind", "out-of-range"},
        {t_yaml, "after: 1, from: behind", "after: ▸-1, from: behind", "out-of-range"},
        {t_yaml, "from: behind", "from: ▸back", "unknown-word"},
        {t_yaml, "from: behind", "▸form: behind", "unknown-key", "write 'from'"},
        {t_yaml, "needed: false", "needed: ▸no", "unknown-word"},
        {t_yaml, "at: [width / 2, depth - hole_edge]", "at: ▸[width / 2]", "bad-outline"},
        {t_yaml, "tool: punch", "tool: ▸pinch", "unknown-name", "write 'punch'"},
        {t_yaml, "metric: 5 mm", "metric: ▸0 mm", "out-of-range"},
        {t_yaml, "[[0, 0], [n, 0], [0, n]]", "▸[[0, 0], [n, 0]]", "bad-outline"},
        {t_yaml, "{ side: back, outline: [[0, 0], [n, 0], [0, n]], why: people write here }", "▸{ side: back, outline: [[0, 0], [n, 0], [0, n]] }", "missing-key"},
    });
}

TEST_CASE("faults in what a part needs and in its steps") {
    check_broken({
        {t_yaml, "material: cord", "material: ▸chord", "unknown-name", "write 'cord'"},
        {t_yaml, "tools: [awl]", "tools: [▸owl]", "unknown-name", "write 'awl'"},
        {t_yaml, "count: n, size", "count: n, ▸optional: true, size", "not-here"},
        {t_yaml, "count: n, size", "count: n, ▸or: { x: { title: X } }, size", "not-here"},
        {t_yaml, "tools: [ruler, punch]", "tools: [ruler, ▸pinch]", "unknown-name", "write 'punch'"},
        {t_yaml, "drawing: flat", "drawing: ▸flt", "unknown-word", "write 'flat'"},
        {t_yaml, "drawing: fold-2", "drawing: ▸fold-3", "unknown-word", "fold-"},
        {t_yaml, "drawing: fold-2", "drawing: ▸fold-0", "unknown-word"},
        {t_yaml, "drawing: fold-2", "▸uses: [front]", "unknown-key"},
        {t_yaml, "- { title: Fold, text: Fold it.,", "- ▸{ title: Fold,", "missing-key"},
    });
}
