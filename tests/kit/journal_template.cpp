// SPDX-License-Identifier: GPL-3.0-or-later
// Journal templates: what is read out of one, and what is told of one that is wrong.
#include "base/fault.h"
#include "kit/example.h"
#include "kit/journal_names.h"
#include "kit/journal_reader.h"
#include "kit/small_pipeline.h"
#include "kit/yaml.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace qw;
using namespace qw::test;

namespace {

using Strings = std::vector<std::string>;

}  // namespace

TEST_CASE("a template's names, lengths and formulas are read with their places") {
    const kit::JournalTemplate journal = SmallPipeline().read().journals.at("j");
    CHECK(journal.file == "pipeline/journals/j.yaml");
    CHECK(journal.name == "j");
    CHECK(journal.picture == "opened-cover");
    REQUIRE(journal.lengths.size() == 1);
    CHECK(journal.lengths[0].value.metric == Length::mm(3));
    CHECK(journal.lengths[0].value.us == Length::inches(0.125));
    CHECK_FALSE(journal.lengths[0].printed);
    CHECK(journal.lengths[0].published == "1/8 in (somebody)");
    CHECK(journal.numbers.at(0).published == "four");
    REQUIRE(journal.values.size() == 1);
    CHECK(journal.values[0].name == "board-width");
    CHECK(journal.values[0].text == "page_width + edge");
    CHECK(journal.values[0].mark.file == "pipeline/journals/j.yaml");
    CHECK(journal.values[0].mark.line == 10);
    CHECK(journal.values[0].mark.column == 16);
    CHECK(journal.stations.page.size() == 3);
    CHECK(journal.stations.spine.size() == 3);
    CHECK(journal.checks.at(0).name == "fits");
    CHECK(journal.tools == Strings{"ruler"});
    CHECK(journal.replaced.empty());
    CHECK(changed_journal(", published: \"1/8  in (somebody)\"", "").lengths.at(0).published.empty());
    CHECK(changed_journal("opened-cover", "concertina").picture == "concertina");
}

TEST_CASE("pieces, cut lengths, items and figures are read with what may stand in for them") {
    const kit::JournalTemplate journal = SmallPipeline().read().journals.at("j");
    REQUIRE(journal.pieces.size() == 2);
    const kit::PieceTemplate &board = journal.pieces[0], &tape = journal.pieces[1];
    CHECK(board.rounding.step.metric == Length::mm(0.5));
    CHECK(board.rounding.step.us == Length::inches(1.0 / 16));
    CHECK(board.grain == "any");
    CHECK(board.stock == "board");
    CHECK(board.material.empty());
    CHECK(board.glue == "paste");
    CHECK_FALSE(board.optional);
    CHECK(tape.stock == "bought");
    CHECK(tape.material == "cloth");
    CHECK(tape.mark.line == 13);
    REQUIRE(tape.instead.size() == 1);
    CHECK(tape.instead[0].name == "strip");
    CHECK(tape.instead[0].title == "C");  // the material's own
    CHECK(tape.instead[0].material == "cord");
    CHECK(tape.instead[0].use == "strong");
    CHECK_FALSE(tape.thickness);
    const char* with_thickness = "material: cloth, thickness: { metric: 1 mm, us: 1/16 in }, or: { strip: { material: cord, thickness: { metric: 2 mm, us: 5/64 in },";
    const auto thick = changed_journal("material: cloth, or: { strip: { material: cord,", with_thickness).pieces[1];
    REQUIRE((thick.thickness && thick.instead.at(0).thickness));
    CHECK(thick.thickness->us == Length::inches(0.0625));
    CHECK(thick.instead[0].thickness->metric == Length::mm(2));

    REQUIRE(journal.cut_lengths.size() == 2);
    CHECK(journal.cut_lengths[0].material == "cord");
    CHECK_FALSE(journal.cut_lengths[0].optional);
    CHECK(journal.cut_lengths[1].optional);
    CHECK(journal.cut_lengths[1].mark.line == 18);
    CHECK(journal.cut_lengths[1].mark.column == 3);

    REQUIRE(journal.items.size() == 2);
    CHECK(journal.items[0].mark.line == 20);
    CHECK(journal.items[0].tools == Strings{"setter"});
    CHECK(journal.items[0].size->metric == Length::mm(3));
    CHECK(journal.items[0].instead.at(0).title == "Bare");
    CHECK(journal.items[0].instead.at(0).material.empty());
    CHECK(journal.items[0].instead.at(0).tools == Strings{"awl"});

    REQUIRE(journal.figures.size() == 1);
    CHECK(journal.figures[0].name == "left");
    CHECK(journal.figures[0].title == "Left");
    CHECK(journal.figures[0].value.text == "edge");
    CHECK_FALSE(journal.figures[0].number);
    CHECK(changed_journal("value: edge, rounding", "value: edge, is: number, rounding").figures[0].number);
    CHECK(journal.figures[0].rounding.way == Rounding::down);
    CHECK(journal.figures[0].use == "u");
    CHECK(journal.figures[0].mark.line == 23);

    for (const std::string stock : {"spine", "page", "cover"}) CHECK(changed_journal("stock: bought, material: cloth", "stock: " + stock).pieces[1].stock == stock);
    const auto order = changed_journal("or: { bare: {", "or: { zebra: { title: Z }, bare: {").items[0].instead;
    REQUIRE(order.size() == 2);
    CHECK(order[0].name == "zebra");  // as written, not by the alphabet
}

TEST_CASE("sewing and steps are read") {
    const kit::JournalTemplate journal = SmallPipeline().read().journals.at("j");
    REQUIRE(journal.sewing);
    CHECK(journal.sewing->path == std::vector<int>{2, 1, 3, 2});
    CHECK(journal.sewing->begins_inside);
    CHECK_FALSE(journal.sewing->goes_on);
    CHECK(journal.sewing->signatures.text == "n");
    CHECK(journal.sewing->rows.text == "1");
    CHECK(journal.sewing->row_gap.text.empty());
    CHECK(journal.sewing->thread == "cord");
    CHECK(journal.sewing->mark.line == 15);
    CHECK(journal.sewing->mark.column == 1);

    REQUIRE(journal.steps.size() == 2);
    CHECK(journal.steps[0].title == "Cut");
    CHECK(journal.steps[0].text == "Cut it.");
    CHECK(journal.steps[0].uses == Strings{"board", "page", "left"});
    CHECK(journal.steps[0].tools == Strings{"ruler"});
    CHECK(journal.steps[0].drawing == "cover");
    CHECK(journal.steps[1].uses == Strings{"cord", "eyelet", "page-stations", "spine-stations"});
    CHECK(journal.steps[1].mark.line > journal.steps[0].mark.line);
    CHECK(journal.steps[1].when.text.empty());
    const auto conditional = changed_journal("text: Sew it.", "text: Sew it., when: has_eyelet").steps[1].when;
    CHECK(conditional.text == "has_eyelet");
    CHECK(conditional.mark.line == 31);
    const auto bare = changed_journal(", uses: [board, page, left], tools: [ruler], drawing: cover", "").steps[0];
    CHECK(bare.uses.empty());
    CHECK(bare.drawing.empty());

    const auto on = *changed_journal(path_as_it_is, "row-gap: edge, path: [1, 2, 3, 2], begins: outside, goes-on: true").sewing;
    CHECK(on.goes_on);
    CHECK_FALSE(on.begins_inside);
    CHECK(on.row_gap.text == "edge");
    // Two moves are enough: out at one station, in at the other.
    CHECK(changed_journal(path_as_it_is, "path: [1, 3]").sewing->path.size() == 2);
    CHECK(changed_journal(path_as_it_is, "path: [2, 3], begins: outside").sewing->path.size() == 2);
    SmallPipeline unsewn;
    unsewn.put(j_yaml, with(with(unsewn.text(j_yaml), "sewing: { signatures: n, rows: 1, path: [2, 1, 3, 2], thread: cord }\n", ""),
                            "drawing: stitch", "drawing: corner"));
    CHECK_FALSE(unsewn.read().journals.at("j").sewing);
}

TEST_CASE("faults in a template's names and formulas") {
    check_broken({
        {j_yaml, "journal: j", "journal: ▸k", "bad-name"},
        {j_yaml, "is: fixed", "is: ▸fix", "unknown-word"},
        {j_yaml, "metric: 3 mm", "metric: ▸3", "bare-number"},
        {j_yaml, "{ metric: 3 mm, us: 1/8 in,", "▸{ metric: 3 mm,", "missing-key"},
        {j_yaml, "{ metric: 3 mm, us: 1/8 in, is: fixed, why: w,", "▸{ metric: 3 mm, us: 1/8 in, is: fixed,", "missing-key"},
        {j_yaml, "published: four", "published: ▸[four]", "wrong-type"},
        {j_yaml, "  n: {", "  ▸edge: {", "duplicate-name"},
        {j_yaml, "  board-width: page", "  ▸page-width: page", "reserved-name"},
        {j_yaml, "  board-width: page", "  has: edge\n  board-width: page_width\n  ▸has-board: page", "reserved-name"},
        {j_yaml, "  board-width: page", "  ▸page-station-4: page_width\n  page-station: edge\n  board-width: page", "reserved-name"},
        {j_yaml, "  board-width: page",
         "  ▸spine-station-10: edge\n  ▸stitch-path: edge\n  ▸strands-across: edge\n  ▸glued-in: edge\n  board-width: page", "reserved-name"},
        {j_yaml, "  board-width: page", "  ▸board_width: page", "bad-name"},
        {j_yaml, "page_width + edge", "▸[page_width]", "wrong-type"},
        {j_yaml, "page_width + edge", "▸\"\"", "bad-formula"},
        {j_yaml, "page_width + edge", "▸page_width × 2", "bad-formula"},
        {j_yaml, "level: error", "level: ▸bad", "unknown-word"},
        {j_yaml, "  fits: {", "  ▸check: {", "reserved-name"},
        {j_yaml, "  fits: {", "  ▸stations-on-page: {", "reserved-name"},
        {j_yaml, "numbers:\n  n: { value: 2, why: w, published: four }", "▸numbers:", "missing-value"},
        {j_yaml, "numbers:\n", "▸number:\n", "unknown-key"},
        {j_yaml, "bulk: page_caliper", "▸bulks: page_caliper", "unknown-key"},
        {j_yaml, "picture: opened-cover", "picture: ▸open-cover", "unknown-word", "write 'opened-cover'"},
        {j_yaml, "tools: [ruler]", "tools: [▸rular]", "unknown-name", "write 'ruler'"},
    });
}

TEST_CASE("each picture has the pieces that it reads, of the kind that it draws") {
    const std::string picture = "picture: opened-cover", pieces = "pieces:\n", paper = "{ title: P, count: 1, width: edge, height: edge, stock: cover }\n",
                      strip = "{ title: S, count: 1, width: edge, height: edge, stock: spine }\n";
    const auto read_as = [&](const std::string& name, const std::string& more) {
        SmallPipeline pipeline;
        pipeline.put(j_yaml, with(with(pipeline.text(j_yaml), picture, "picture: " + name), pieces, pieces + more));
        return pipeline.faults();
    };
    CHECK(read_as("wrapped-cover", "  cover-paper: " + paper).empty());
    CHECK(read_as("case-cover", "  spine: " + strip + "  spine-cloth: " + paper).empty());
    CHECK(read_as("soft-cover", "  soft-cover: " + paper).empty());
    CHECK(read_as("opened-cover", "  spine: " + strip + "  hinge-tape: " + paper).empty());
    CHECK(read_as("concertina", "  guard: " + paper).empty());

    const auto refused_as = [&](const std::string& name, const std::string& more, std::size_t count, const std::string& what) {
        INFO(name << " " << more);
        const auto notes = read_as(name, more);
        CHECK(notes.size() == count);
        for (const FaultNote& note : notes) {
            CHECK(note.code == "picture-lacks");
            CHECK(note.where.file == "pipeline/journals/j.yaml");
            CHECK(note.where.line == 4);
            CHECK(note.where.column == 1);
            CHECK_FALSE(note.expected.empty());
            CHECK_FALSE(note.mend.empty());
        }
        if (!notes.empty()) CHECK_THAT(notes.front().what, Catch::Contains(what));
    };
    refused_as("wrapped-cover", "", 1, "'cover-paper', which the template does not have");
    refused_as("case-cover", "", 2, "'spine'");
    refused_as("soft-cover", "", 1, "'soft-cover'");
    refused_as("case-cover", "  spine: " + paper + "  spine-cloth: " + strip, 2, "as something rigid, and it is of stock 'cover'");
    refused_as("opened-cover", "  hinge-tape: " + strip, 1, "as something soft");
    refused_as("soft-cover", "  soft-cover: { optional: true, title: P, count: 1, width: edge, height: edge, stock: cover }\n", 1, "may do without it");
    refused_as("soft-cover", "  soft-cover: { or: { bare: { title: Bare } }, title: P, count: 1, width: edge, height: edge, stock: cover }\n", 1,
               "may do without it");
    CHECK(read_as("soft-cover", "  soft-cover: { or: { tape: { material: cord } }, title: P, count: 1, width: edge, height: edge, stock: cover }\n").empty());
}

TEST_CASE("without a picture nothing is asked of the pieces, and no cover and no holes in it are shown") {
    SmallPipeline pipeline;
    std::string text = with(with(pipeline.text(j_yaml), "picture: opened-cover", "picture: none"), "  board: {", "  plank: {");
    text = with(with(text, "[board, page", "[plank, page"), ", spine: [edge, edge * 2, page_height - edge]", "");
    text = with(text, ", spine-stations", "");
    pipeline.put(j_yaml, with(text, "drawing: cover", "drawing: corner"));
    CHECK(pipeline.read().journals.at("j").picture == "none");
    pipeline.put(j_yaml, text);
    CHECK(pipeline.told() == "not-here pipeline/journals/j.yaml 30:80\n");
    check_broken({{j_yaml, "picture: opened-cover\nlengths", "▸picture: wrapped-cover\nlengths", "picture-lacks", "picture: none"}});
    pipeline.put(j_yaml, with(with(pipeline.text(j_yaml), "drawing: cover", "drawing: corner"), "page: [edge, edge * 2, edge * 3]",
                              "page: [edge, edge * 2, edge * 3], spine: [edge, edge * 2, edge * 3]"));
    CHECK(pipeline.told() == "picture-lacks pipeline/journals/j.yaml 4:1\n");
}

TEST_CASE("a misspelt key at the top is told once, and what stands below it is read as it was meant") {
    check_broken({
        {j_yaml, "pieces:\n", "▸peices:\n", "unknown-key", "write 'pieces'"},
        {j_yaml, "lengths:\n  edge", "▸lenghts:\n  edge", "unknown-key", "write 'lengths'"},
        {j_yaml, "values:\n", "▸value:\n", "unknown-key", "write 'values'"},
        {j_yaml, "stations:", "▸station:", "unknown-key", "write 'stations'"},
        {j_yaml, "sewing:", "▸sewin:", "unknown-key", "write 'sewing'"},
        {j_yaml, "cut-lengths:", "▸cutlengths:", "unknown-key", "write 'cut-lengths'"},
        {j_yaml, "items:\n", "▸itmes:\n", "unknown-key", "write 'items'"},
        {j_yaml, "figures:\n", "▸figure:\n", "unknown-key", "write 'figures'"},
        {j_yaml, "tools: [ruler]\nsteps", "▸toosl: [ruler]\nsteps", "unknown-key", "write 'tools'"},
        {j_yaml, "figures:\n", "▸ornaments: 3\nfigures:\n", "unknown-key", "remove it"},
    });
    // What is wrong below it is told, too.
    SmallPipeline pipeline;
    pipeline.put(j_yaml, with(with(pipeline.text(j_yaml), "pieces:\n", "peices:\n"), "stock: board", "stock: bord"));
    CHECK(pipeline.told() == "unknown-key pipeline/journals/j.yaml 11:1\nunknown-word pipeline/journals/j.yaml 12:80\n");
}

TEST_CASE("a metric and a US length that are far apart are a slip") {
    check_broken({
        {j_yaml, "edge: { metric: 3 mm, us: 1/8 in", "edge: { metric: 3 mm, us: ▸1/2 in", "pair-differs", "correct one of the two"},
        {j_yaml, "edge: { metric: 3 mm, us: 1/8 in", "edge: { metric: 30 mm, us: ▸1/8 in", "pair-differs"},
        {j_yaml, "edge: { metric: 3 mm, us: 1/8 in", "edge: { metric: -3 mm, us: ▸1/8 in", "pair-differs"},
        {j_yaml, "size: { metric: 3 mm, us: 1/8 in }", "size: { metric: 3 mm, us: ▸1/4 in }", "pair-differs"},
        {j_yaml, "stock: bought,", "thickness: { metric: 2 mm, us: ▸1/4 in }, stock: bought,", "pair-differs"},
    });
    // 4.5 and 3.175 mm; 0.5 mm and 1/16 in, one mark of the ruler apart; steps of rulers are what they are.
    CHECK(changed_journal("edge: { metric: 3 mm", "edge: { metric: 4.5 mm").lengths[0].value.metric == Length::mm(4.5));
    CHECK(changed_journal("edge: { metric: 3 mm, us: 1/8 in", "edge: { metric: 0.5 mm, us: 1/16 in").lengths[0].value.metric == Length::mm(0.5));
    CHECK(changed_journal("rounding: { metric: 1 mm, us: 1/8 in", "rounding: { metric: 1 mm, us: 1/2 in").figures[0].rounding.step.us == Length::inches(0.5));
}

TEST_CASE("what a step's text names is there, and its sections are closed, or that is told at its line") {
    const std::string sew = "text: Sew it.";
    CHECK(changed_journal(sew, "text: \"{{#has-eyelet}}Set {{n}} of {{edge}}{{^has-band}} or less{{/has-band}}.{{/has-eyelet}} {{! {{ }}Done.\"").steps.size() == 2);
    check_broken({
        {j_yaml, "text: Sew it.", "text: \"Sew ▸{{edeg}} on.\"", "unknown-name", "write '{{edge}}'"},
        {j_yaml, "text: Sew it.", "text: \"Sew {{edge}} at ▸{{board-width}}.\"", "unknown-name", "under 'uses'"},  // a value
        {j_yaml, "text: Sew it.", "text: \"{{n}} ▸{{has-band}}\"", "unknown-name", "{{#has-band}}…{{/has-band}}"},
        {j_yaml, "text: Sew it.", "text: \"Sew ▸{{#has-bnad}}it{{/has-bnad}}.\"", "unknown-name", "write 'has-band'"},
        {j_yaml, "text: Sew it.", "text: \"Sew ▸{{#has-left}}it{{/has-left}}.\"", "unknown-name"},  // a figure
        {j_yaml, "text: Sew it.", "text: \"Sew ▸{{#has-band}}it.\"", "unclosed-section", "close it"},
        {j_yaml, "text: Sew it.", "text: \"Sew {{#has-band}}it{{/has-band}}▸{{/has-band}}.\"", "unopened-section"},
        {j_yaml, "text: Sew it.", "text: \"Sew {{#has-band}}{{#has-cord}}it▸{{/has-band}}{{/has-cord}}.\"", "crossed-sections", "reverse order"},
        {j_yaml, "text: Sew it.", "text: \"Sew ▸{{edge it.\"", "unclosed-tag"},
        {j_yaml, "text: Sew it.", "text: \"Sew ▸{{{edge}}} it.\"", "bad-tag"},
        {j_yaml, "text: Sew it.", "text: \"Sew {{! {{ }}▸{{edeg}} it.\"", "unknown-name", "write '{{edge}}'"},
        {j_yaml, "text: \"Cut  it.\"", "text: \"Cut  ▸{{it}}.\"", "unknown-name"},
        {j_yaml, "- { title: Sew, text: Sew it., uses",
         "- title: Sew\n    text: >-\n      Äußere {{n}}\n      ends {{#has-band}}once\n      or ▸{{twise}}{{/has-band}} or ▸{{thrise}}\n      "
         "never.\n  - { title: Sew, text: Sew it., uses",
         "unknown-name"},
    });
}

TEST_CASE("faults in a template's pieces, lengths, items and figures") {
    check_broken({
        {j_yaml, "stock: board", "stock: ▸bord", "unknown-word", "write 'board'"},
        {j_yaml, "stock: bought, material: cloth", "stock: ▸tape, material: cloth", "unknown-word"},
        {j_yaml, "{ title: B, count: n, width: board_width,", "▸{ title: B, count: n,", "missing-key"},
        {j_yaml, "stock: board", "stock: board, rounding: { metric: ▸0 mm, us: 1/16 in, way: up }", "out-of-range"},
        {j_yaml, "stock: board", "stock: board, ▸material: cord", "not-here", "stock: bought"},
        {j_yaml, "{ title: T, count: 1, width: edge, height: edge, stock: bought, material: cloth,",
         "▸{ title: T, count: 1, width: edge, height: edge, stock: bought,", "missing-key"},
        {j_yaml, "material: cloth", "material: ▸clothe", "unknown-name", "write 'cloth'"},
        {j_yaml, "glue: paste", "glue: ▸past", "unknown-name", "write 'paste'"},
        {j_yaml, "glue: paste", "glue: ▸cord", "unknown-name"},  // a length, not an item
        {j_yaml, "{ material: cord, use: strong }", "{ material: ▸cort, use: strong }", "unknown-name", "write 'cord'"},
        {j_yaml, "{ material: cord, use: strong }", "▸{ use: strong }", "missing-key"},  // no material whose title could serve
        {j_yaml, "{ material: cord, use: strong }", "{ material: cord, ▸uses: strong }", "unknown-key", "write 'use'"},
        {j_yaml, "or: { strip: { material: cord, use: strong } }", "or: ▸{}", "empty-list"},
        {j_yaml, "or: { strip: { material: cord, use: strong } }", "or: ▸[strip]", "wrong-type"},
        {j_yaml, "{ strip:", "{ ▸none:", "reserved-name", "optional: true"},
        {j_yaml, "{ strip:", "{ ▸Strip:", "bad-name", "write 'strip'"},
        {j_yaml, "cord, use: strong", "cord, ▸thickness: { metric: 1 mm, us: 1/16 in }, use: strong", "not-here", "to the thing itself"},
        {j_yaml, "{ title: Bare,", "{ ▸thickness: { metric: 1 mm, us: 1/16 in }, title: Bare,", "not-here"},
        {j_yaml, "tools: [setter], or: { bare: {",
         "tools: [setter], thickness: { metric: 1 mm, us: 1/16 in }, or: { bare: { ▸thickness: { metric: 1 mm, us: 1/16 in },", "not-here",
         "material"},
        {j_yaml, "stock: bought,", "thickness: ▸3 mm, stock: bought,", "wrong-type"},
        {j_yaml, "stock: bought,", "thickness: { metric: ▸3, us: 1/8 in }, stock: bought,", "bare-number"},
        {j_yaml, "tools: [awl]", "tools: [▸owl]", "unknown-name", "write 'awl'"},
        {j_yaml, "tools: [setter]", "tools: [▸seter]", "unknown-name", "write 'setter'"},
        {j_yaml, "optional: true", "optional: ▸maybe", "unknown-word"},
        {j_yaml, "optional: true", "▸optionel: true", "unknown-key", "write 'optional'"},
        {j_yaml, "length: edge, material: cord", "length: edge, material: ▸cort", "unknown-name"},
        {j_yaml, "  left: {", "  left: { title: L, value: edge }\n  ▸tape: {", "duplicate-name"},
        {j_yaml, "items:\n", "items:\n  ▸brad: { title: Brads, count: 2 }\n", "item-without-material", "add 'brad' there"},
        {j_yaml, "items:\n", "items:\n  ▸eyelets: { title: Eyelets, count: 2 }\n", "item-without-material", "write 'eyelet'"},
        {j_yaml, "  left: {", "  left: { title: L, value: edge }\n  ▸band: {", "duplicate-name"},
        {j_yaml, "  left: {", "  left: { title: L, value: edge }\n  ▸page: {", "reserved-name"},
        {j_yaml, "  left: {", "  left: { title: L, value: edge }\n  ▸spine-stations: {", "reserved-name"},
        {j_yaml, "{ title: Left, value: edge,", "▸{ title: Left,", "missing-key"},
        {j_yaml, "{ title: Left, value: edge,", "{ title: Left, value: edge, is: ▸numbers,", "unknown-word", "write 'number'"},
    });
}

TEST_CASE("faults in a template's steps") {
    check_broken({
        {j_yaml, "steps:\n", "▸step:\n", "unknown-key", "write 'steps'"},
        {j_yaml, "uses: [board, page, left]", "uses: [▸bord, page, ▸edge]", "unknown-name", "write 'board'"},
        {j_yaml, "uses: [board, page, left]", "uses: [board, ▸board]", "duplicate-value"},
        {j_yaml, "uses: [board, page, left]", "uses: ▸[]", "empty-list"},
        {j_yaml, "left], tools: [ruler]", "left], tools: [▸rule]", "unknown-name", "write 'ruler'"},
        {j_yaml, "drawing: cover", "drawing: ▸covers", "unknown-word", "write 'cover'"},
        {j_yaml, "{ title: Cut, text: \"Cut  it.\",", "▸{ title: Cut,", "missing-key"},
        {j_yaml, "{ title: Cut,", "▸{", "missing-key"},
        {j_yaml, "text: Sew it.", "text: ▸''", "missing-value"},
        {j_yaml, "text: Sew it.", "text: Sew it., when: ▸[has_band]", "wrong-type"},
        {j_yaml, "text: Sew it.", "text: Sew it., ▸whenn: has_band", "unknown-key", "write 'when'"},
        {j_yaml, "  - { title: Cut, text: \"Cut  it.\", uses: [board, page, left], tools: [ruler], drawing: cover }\n  - { title: Sew,",
         "  - ▸Cut it.\n  - { title: Sew,", "wrong-type"},
    });
}

TEST_CASE("steps do not name or draw what the template does not have") {
    SmallPipeline pipeline;
    std::string text = pipeline.text(j_yaml);
    for (const char* line : {"stations: { page: [edge, edge * 2, edge * 3], spine: [edge, edge * 2, page_height - edge] }\n",
                             "sewing: { signatures: n, rows: 1, path: [2, 1, 3, 2], thread: cord }\n"})
        text = with(text, line, "");
    pipeline.put(j_yaml, with(text, "drawing: cover", "drawing: stations"));
    // Neither the stations of page and spine, nor their drawing, nor that of the stitch.
    CHECK(pipeline.told() ==
          "not-here pipeline/journals/j.yaml 28:80\nunknown-name pipeline/journals/j.yaml 29:55\nunknown-name pipeline/journals/j.yaml 29:70\n"
          "not-here pipeline/journals/j.yaml 29:111\n");
    pipeline.put(j_yaml, pipeline.text(j_yaml).substr(0, pipeline.text(j_yaml).find("steps:")) + "steps: []\n");
    CHECK(pipeline.told() == "empty-list pipeline/journals/j.yaml 27:8\n");
}

TEST_CASE("all faults of a template are told in one run") {
    SmallPipeline pipeline;
    std::string text = pipeline.text(j_yaml);
    for (const auto& [from, to] : {std::pair("stock: board", "stock: bord"), {"glue: paste", "glue: past"}, {"3, 2]", "3, 4]"}, {"thread: cord", "thread: cort"},
                                   {"value: edge,", ""}, {"page, left]", "page, lefd]"}, {"drawing: stitch", "drawing: sewing"}})
        text = with(text, from, to);
    pipeline.put(j_yaml, text);
    CHECK(pipeline.told() ==
          "unknown-word pipeline/journals/j.yaml 12:80\nunknown-name pipeline/journals/j.yaml 12:92\nbad-path pipeline/journals/j.yaml 15:51\n"
          "unknown-name pipeline/journals/j.yaml 15:63\nmissing-key pipeline/journals/j.yaml 23:9\nunknown-name pipeline/journals/j.yaml 30:57\n"
          "unknown-word pipeline/journals/j.yaml 31:120\n");
}

TEST_CASE("names that formulas are given") {
    for (const char* name : {"page_width", "spine_caliper", "page_grammage", "cover_grammage", "board_printed", "glued_in", "stitch_path",
                             "stitch_strands", "stitch_inset", "stitch_through", "strands_across", "page_station_1", "page_station_12",
                             "spine_station_3", "has_eyelet", "has_closing_band", "without_closing_band", "thickness_of_tape", "pi", "max"}) {
        INFO(name);
        CHECK(kit::is_given_name(name));
    }
    for (const char* name : {"page_station_", "page_station", "page_station_1a", "station_1", "hash", "edge", "stitch"}) {
        INFO(name);
        CHECK_FALSE(kit::is_given_name(name));
    }
}
