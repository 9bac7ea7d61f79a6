// SPDX-License-Identifier: GPL-3.0-or-later
// What a manifest says of boards, calipers, what is glued in, choices, and the checks of its journal.
#include "base/fault.h"
#include "kit/example.h"
#include "kit/stock_of.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

namespace {

/// The sound manifest with lines before its title.
std::string with_lines(const std::string& lines) { return with(sound_manifest, "title: Sea", lines + "\ntitle: Sea"); }

std::string with_extra(const std::string& keys) { return sound_manifest + "  tags: { role: extra, files: art/1.png" + keys + " }\n"; }

struct Slip {
    const char* lines;  ///< before the title, in line 2
    const char* told;
    const char* mend = "";  ///< part of the first one's
};

}  // namespace

TEST_CASE("the spine's stock is the boards' unless it is written") {
    ExampleKit kit;
    const auto plain = kit.read(sound_manifest);
    CHECK(*plain.spine_stock == "greyboard-1mm");
    CHECK(plain.spine_stock.mark.file == "pipeline/stocks.yaml");
    const auto boards = kit.read(with_lines("board-stock: greyboard-2mm"));
    CHECK(*boards.spine_stock == "greyboard-2mm");
    CHECK(boards.spine_stock.mark.file == "kit.yaml");
    CHECK(boards.spine_stock.mark.line == 2);
    CHECK(boards.spine_stock.mark.column == 14);
    const auto both = kit.read(with_lines("spine-stock: greyboard-1mm\nboard-stock: greyboard-2mm"));
    CHECK(*both.spine_stock == "greyboard-1mm");
    CHECK(*both.board_stock == "greyboard-2mm");
    CHECK(both.spine_stock.mark.line == 2);
}

TEST_CASE("boards, calipers, choices and what is glued in") {
    ExampleKit kit;
    const auto none = kit.read(sound_manifest);
    CHECK(none.boards.empty());
    CHECK(none.calipers.empty());
    CHECK(none.choices.empty());
    CHECK(none.sets[0].glued_in == 0);
    CHECK_FALSE(none.sets[0].filled);

    CHECK(kit.read(with_lines("boards: [chipboard-12in, a4-greyboard]")).boards == std::vector<std::string>{"chipboard-12in", "a4-greyboard"});
    const auto choices = kit.read(with_lines("choices: { sewing-elastic: waxed-twine, closing-band: none }")).choices;
    REQUIRE(choices.size() == 2);
    CHECK(*choices.at("closing-band") == "none");
    CHECK(choices.at("closing-band").mark.line == 2);
    CHECK(choices.at("closing-band").mark.column == 55);
    CHECK(*choices.at("sewing-elastic") == "waxed-twine");

    const auto tags = kit.read(with_extra(", glued-in: 6, filled: 1.5 mm")).sets.at(1);
    CHECK(tags.glued_in == 6);
    CHECK(tags.filled == Length::mm(1.5));
    CHECK_FALSE(kit.read(with_extra(", glued-in: 200")).sets.at(1).filled);
    const auto part = kit.read(sound_manifest +
                               "  pockets: { role: part, part: trifold-pocket, faces: { outside: art/1.png }, glued-in: 2, filled: 1/8 in }\n")
                          .sets.at(1);
    CHECK(part.glued_in == 2);
    CHECK(part.filled == Length::inches(0.125));
}

TEST_CASE("a kit's own caliper is a length, or follows from a bulk") {
    ExampleKit kit;
    const auto manifest = kit.read(with_lines("calipers: { card-160: 0.2 mm, copy-100: 1.3 cm3/g, greyboard-1mm: 1.6 cm³/g, copy-80: 4/1000 in }"));
    CHECK(manifest.calipers.at("card-160") == Length::mm(0.2));
    // ISO 534: thickness = bulk × grammage; 1.3 cm³/g × 100 g/m² = 0.13 mm.
    CHECK(manifest.calipers.at("copy-100") == Length::mm(0.13));
    CHECK(manifest.calipers.at("greyboard-1mm").in_mm() == Approx(0.984));
    CHECK(manifest.calipers.at("copy-80") == Length::mm(0.1016));
    const auto caliper = [&](const char* name) { return kit::stock_of(manifest, kit.pipeline(), name).caliper; };
    CHECK(caliper("card-160") == Length::mm(0.2));
    CHECK(caliper("copy-100") == Length::mm(0.13));
    CHECK(caliper("greyboard-2mm") == Length::mm(2));  // as stocks.yaml has it
    CHECK(kit::stock_of(manifest, kit.pipeline(), "copy-100").grammage == 100);
    CHECK(kit::stock_of(kit.read(sound_manifest), kit.pipeline(), "copy-100").caliper == Length::mm(0.125));
    try {
        kit::stock_of(manifest, kit.pipeline(), "copy-101");
        FAIL("found");
    } catch (const Fault& fault) {
        CHECK(fault.kind() == FaultKind::not_understood);
        CHECK(fault.notes().at(0).code == "unknown-name");
        CHECK(fault.notes()[0].mend == "write 'copy-100'");
    }
}

TEST_CASE("the level of a journal's own check can be set, and has its reason") {
    ExampleKit kit;
    const auto manifest = kit.read(with_lines("rules: { journal-spine-fill: { level: note, reason: pressed flat } }"));
    REQUIRE(manifest.overrides.size() == 1);
    CHECK(manifest.overrides[0].rule == "journal-spine-fill");
    CHECK(manifest.overrides[0].level == std::string("note"));
    CHECK_FALSE(manifest.overrides[0].limit);
    CHECK(manifest.overrides[0].reason == "pressed flat");
}

TEST_CASE("faults in what a manifest says of its materials") {
    const std::vector<Slip> table{
        {"spine-stock: greyboard-1", "unknown-name 2:14", "write 'greyboard-1mm'"},
        {"spine-stock: copy-80", "unknown-name 2:14"},
        {"boards: [a4-greybord]", "unknown-name 2:10", "write 'a4-greyboard'"},
        {"boards: [a4-greyboard, a4-greyboard]", "duplicate-value 2:24"},
        {"boards: a4-greyboard", "wrong-type 2:9"},
        {"boards: []", "empty-list 2:9"},
        {"calipers: [card-160]", "wrong-type 2:11"},
        {"calipers: { card-16: 0.2 mm }", "unknown-name 2:13", "write 'card-160'"},
        {"calipers: { card-160: 0.2 }", "bare-number 2:23", "write '0.2 mm'"},
        {"calipers: { card-160: 0.01 mm }", "out-of-range 2:23"},
        {"calipers: { card-160: 11 mm }", "out-of-range 2:23"},
        {"calipers: { card-160: 1.3 cm2/g }", "unknown-unit 2:23", "write 'cm3/g'"},
        {"calipers: { card-160: 0.4 cm3/g }", "out-of-range 2:23"},
        {"calipers: { card-160: cm3/g }", "bad-quantity 2:23"},
        {"calipers: { card-160: thin }", "bad-length 2:23"},
        {"calipers: { card-160: [0.2 mm] }", "wrong-type 2:23"},
        {"calipers: { card-160: }", "missing-value 2:13"},
        {"choices: [closing-band]", "wrong-type 2:10"},
        {"choices: { closing-bnd: none }", "unknown-name 2:25", "write 'closing-band'"},
        {"choices: { closing-band: non }", "unknown-word 2:26", "write 'none'"},
        {"choices: { sewing-elastic: none }", "not-here 2:28"},
        {"choices: { board: none }", "not-here 2:19"},
        {"choices: { sewing-elastic: waxed-twin, board: none, band: none }", "unknown-word 2:28\nnot-here 2:47\nunknown-name 2:59", "write 'waxed-twine'"},
        {"choices: { Band: none, closing-band: None }", "bad-name 2:12\nbad-name 2:38", "write 'band'"},
        {"choices: { closing-band: }", "missing-value 2:12"},
        {"choises: { closing-band: none }", "unknown-key 2:1", "write 'choices'"},
        {"glued-in: 3", "unknown-key 2:1", "belongs to a set"},
        {"filled: 3 mm", "unknown-key 2:1", "belongs to a set"},
        {"rules: { journal-spine-fil: { level: note, reason: r } }", "unknown-name 2:10", "write 'journal-spine-fill'"},
        {"rules: { journal-spine-fill: { limit: 3 mm, level: note, reason: r } }", "not-here 2:32"},
        {"rules: { journal-spine-fill: { reason: r } }", "missing-key 2:30"},
        {"rules: { journal-spine-fill: { level: note } }", "missing-key 2:30"},
        {"rules: { journal-spine-fill: { level: milder, reason: r } }", "unknown-word 2:39"},
    };
    ExampleKit kit;
    for (const Slip& row : table) {
        INFO(row.lines);
        const auto notes = kit.faults(with_lines(row.lines));
        CHECK(told(notes) == row.told);
        if (*row.mend && !notes.empty()) CHECK_THAT(notes.front().mend, Catch::Contains(row.mend));
    }
    CHECK_THAT(kit.faults(with_lines("rules: { journal-spine-fill: { limit: 3 mm, level: note, reason: r } }")).at(0).what,
               Catch::Contains("formula of the template"));
    CHECK_THAT(kit.faults(with_lines("rules: { journal-x: { level: note, reason: r } }")).at(0).what, Catch::Contains("pipeline/journals/soft-spine.yaml"));
}

TEST_CASE("a bulk that makes no sheet is out of range") {
    ExampleKit kit;
    CHECK(told(kit.faults(with_lines("calipers: { copy-80: 0.5 cm3/g }"))).empty());  // 0.04 mm
    auto pipeline = kit.pipeline();
    pipeline.stocks[0].grammage = 20;  // 0.01 mm
    const auto disk = real_disk();
    std::vector<kit::InputFile> inputs;
    CHECK_THROWS_AS(kit::read_manifest(*disk, kit / "", pipeline, inputs), Fault);
}

TEST_CASE("a journal that is not known is told once, and nothing is asked of it") {
    ExampleKit kit;
    const std::string lines = "choices: { anything: goes }\nrules: { journal-anything: { level: note, reason: r }, journal-limit: { limit: 3, reason: r } }";
    CHECK(told(kit.faults(with(with_lines(lines), "soft-spine", "soft-spin"))) == "not-here 3:73\nunknown-name 6:10");
}

TEST_CASE("what is glued in: only extras and parts, and a thickness only of something") {
    ExampleKit kit;
    const auto told_of = [&](const std::string& keys) { return told(kit.faults(with_extra(keys))); };
    CHECK(told_of(", glued-in: 201") == "out-of-range 12:52");
    CHECK(told_of(", glued-in: -1") == "out-of-range 12:52");
    CHECK(told_of(", glued-in: 1.5") == "wrong-type 12:52");
    CHECK(told_of(", glued-in: 0").empty());
    CHECK(told_of(", filled: 1 mm") == "not-here 12:42");
    CHECK(told_of(", glued-in: 3, filled: 1") == "bare-number 12:63");
    CHECK(told_of(", glued-in: 3, filled: 51 mm") == "out-of-range 12:63");
    CHECK(told_of(", glued-in: 3, filled: 0.01 mm") == "out-of-range 12:63");
    CHECK(told(kit.faults(with(sound_manifest, "stock: copy-100", "glued-in: 3\n    filled: 1 mm"))) == "not-here 11:5\nnot-here 12:5");
    CHECK(told(kit.faults(with(with(sound_manifest, "journal-page", "full-sheet"), "stock: copy-100", "glued-in: 3"))) == "not-here 11:5");
    CHECK(told(kit.faults(with(with(sound_manifest, "journal-page", "extras"), "stock: copy-100", "glued-in: 3"))) == "unknown-word 8:11");  // whichever was meant
}
