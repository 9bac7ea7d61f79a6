// SPDX-License-Identifier: GPL-3.0-or-later
// A template with a kit's choices made.
#include "base/fault.h"
#include "kit/example.h"
#include "kit/journal_template.h"
#include "kit/read.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace qw;
using namespace qw::test;

namespace {

kit::Alternative stand_in(const std::string& name, const std::string& material, std::vector<std::string> tools, const std::string& use = "") {
    return {name, "Title of " + name, material, std::move(tools), use};
}

/// Everything that can be chosen, and steps that use it.
kit::JournalTemplate journal_of_choices() {
    kit::JournalTemplate journal;
    journal.file = "pipeline/journals/c.yaml";
    journal.tools = {"ruler"};
    const auto piece = [&](const std::string& name, const std::string& stock, const std::string& material) -> kit::PieceTemplate& {
        kit::PieceTemplate made;
        made.name = name;
        made.title = name;
        made.stock = stock;
        made.material = material;
        made.glue = "paste";
        made.use = "as written";
        journal.pieces.push_back(made);
        return journal.pieces.back();
    };
    piece("board", "board", "");
    piece("tape", "bought", "cloth").instead = {stand_in("strip", "paper-strip", {"bone"}, "in strips")};
    kit::PieceTemplate& liner = piece("liner", "cover", "");
    liner.optional = true;
    liner.instead = {stand_in("felt", "felt-sheet", {}), stand_in("painted", "", {"brush"})};
    kit::LengthTemplate thread;
    thread.name = "thread";
    thread.material = "elastic";
    thread.use = "sews";
    thread.instead = {stand_in("twine", "waxed-twine", {})};
    kit::LengthTemplate band;
    band.name = "band";
    band.material = "elastic";
    band.optional = true;
    band.tools = {"clips"};
    journal.cut_lengths = {thread, band};
    kit::ItemTemplate eyelet;
    eyelet.name = "eyelet";
    eyelet.title = "Eyelet";
    eyelet.count.text = "3";
    eyelet.size = kit::BothLengths{Length::mm(3), Length::inches(0.125)};
    eyelet.tools = {"setter", "hammer"};
    eyelet.instead = {stand_in("bare", "", {"awl", "ruler"}), stand_in("grommet", "grommets", {"hammer", "pliers"})};
    kit::ItemTemplate paste;
    paste.name = "paste";
    paste.optional = true;
    journal.items = {eyelet, paste};
    kit::StepTemplate glue, pierce;
    glue.uses = {"board", "liner", "tape", "page"};
    glue.tools = {"ruler"};
    pierce.uses = {"eyelet", "spine-stations", "band"};
    pierce.tools = {"setter", "hammer", "ruler", "clips"};
    journal.steps = {glue, pierce};
    return journal;
}

kit::Choices choices_of(const std::vector<std::pair<std::string, std::string>>& pairs) {
    kit::Choices choices;
    int line = 5;
    for (const auto& [name, choice] : pairs) choices[name] = {choice, {"kit.yaml", line++, 9}};
    return choices;
}

kit::JournalTemplate journal_with(const std::vector<std::pair<std::string, std::string>>& pairs) { return kit::chosen(journal_of_choices(), choices_of(pairs)); }

std::vector<FaultNote> refused(const std::vector<std::pair<std::string, std::string>>& pairs) {
    try {
        journal_with(pairs);
        return {};
    } catch (const Fault& fault) {
        CHECK(fault.kind() == FaultKind::not_understood);
        return fault.notes();
    }
}

template <typename Thing>
std::vector<std::string> names_of(const std::vector<Thing>& things) {
    std::vector<std::string> names;
    for (const Thing& thing : things) names.push_back(thing.name);
    return names;
}

using Words = std::vector<std::string>;

}  // namespace

TEST_CASE("without a choice the template stays as it is") {
    const auto journal = journal_with({});
    CHECK(names_of(journal.pieces) == Words{"board", "tape", "liner"});
    CHECK(journal.pieces[2].optional);
    CHECK(journal.pieces[2].instead.size() == 2);
    CHECK(names_of(journal.items) == Words{"eyelet", "paste"});
    CHECK(journal.tools == Words{"ruler"});
    CHECK(journal.replaced.empty());
}

TEST_CASE("what is left out is gone from the lists and from the steps") {
    const auto journal = journal_with({{"liner", "none"}, {"band", "none"}, {"paste", "none"}});
    CHECK(names_of(journal.pieces) == Words{"board", "tape"});
    CHECK(names_of(journal.cut_lengths) == Words{"thread"});
    CHECK(names_of(journal.items) == Words{"eyelet"});
    CHECK(journal.replaced == Words{"band", "liner", "paste"});
    CHECK(journal.steps[0].uses == Words{"board", "tape", "page"});
    CHECK(journal.steps[1].uses == Words{"eyelet", "spine-stations"});
    CHECK(journal.steps[1].tools == Words{"setter", "hammer", "ruler"});  // the clips held the band
    CHECK(journal.pieces[0].glue.empty());                                // nothing that is there glues it
    CHECK(journal.tools == Words{"ruler"});
}

TEST_CASE("a bought piece, a cut length and a cut piece get the alternative's material") {
    const auto journal = journal_with({{"tape", "strip"}, {"thread", "twine"}, {"liner", "felt"}});
    REQUIRE(names_of(journal.pieces) == Words{"board", "tape", "liner"});
    const kit::PieceTemplate &tape = journal.pieces[1], &liner = journal.pieces[2];
    CHECK(tape.title == "Title of strip");
    CHECK(tape.stock == "bought");
    CHECK(tape.material == "paper-strip");
    CHECK(tape.tools == Words{"bone"});
    CHECK(tape.use == "in strips");
    CHECK(tape.instead.empty());
    CHECK(tape.glue == "paste");
    CHECK(liner.stock == "bought");  // it was cut from the cover papers
    CHECK(liner.material == "felt-sheet");
    CHECK(liner.use == "as written");
    CHECK_FALSE(liner.optional);  // nothing is left to choose
    CHECK(liner.instead.empty());
    CHECK(journal.cut_lengths[0].material == "waxed-twine");
    CHECK(journal.cut_lengths[0].title == "Title of twine");
    CHECK(journal.cut_lengths[0].use == "sews");
    CHECK(journal.steps[0].uses == Words{"board", "liner", "tape", "page"});
    CHECK(journal.steps[0].tools == Words{"ruler", "bone"});
    CHECK(journal.replaced == Words{"liner", "tape", "thread"});
    CHECK(journal.pieces[0].title == "board");
}

TEST_CASE("an item that is replaced by one that is bought keeps its name and count") {
    const auto journal = journal_with({{"eyelet", "grommet"}});
    REQUIRE(names_of(journal.items) == Words{"eyelet", "paste"});
    CHECK(journal.items[0].title == "Title of grommet");
    CHECK(journal.items[0].count.text == "3");
    CHECK_FALSE(journal.items[0].size);
    CHECK(journal.items[0].tools == Words{"hammer", "pliers"});
    CHECK(journal.items[0].instead.empty());
    CHECK(journal.steps[1].uses == Words{"eyelet", "spine-stations", "band"});
    CHECK(journal.steps[1].tools == Words{"hammer", "ruler", "clips", "pliers"});
    CHECK(journal.tools == Words{"ruler"});
    CHECK(journal.replaced == Words{"eyelet"});
}

TEST_CASE("an alternative for which nothing is bought leaves its tools") {
    const auto journal = journal_with({{"eyelet", "bare"}, {"liner", "painted"}});
    CHECK(names_of(journal.items) == Words{"paste"});
    CHECK(names_of(journal.pieces) == Words{"board", "tape"});
    CHECK(journal.tools == Words{"ruler", "awl", "brush"});  // the ruler once
    CHECK(journal.steps[0].uses == Words{"board", "tape", "page"});
    CHECK(journal.steps[0].tools == Words{"ruler", "brush"});
    CHECK(journal.steps[1].uses == Words{"spine-stations", "band"});
    CHECK(journal.steps[1].tools == Words{"ruler", "clips", "awl"});
    CHECK(journal.replaced == Words{"eyelet", "liner"});
}

TEST_CASE("a tool stays in a step for what else needs it there") {
    auto journal = journal_of_choices();
    journal.cut_lengths[1].tools = {"hammer"};
    CHECK(kit::chosen(journal, choices_of({{"eyelet", "bare"}})).steps[1].tools == Words{"hammer", "ruler", "clips", "awl"});
    CHECK(kit::chosen(journal, choices_of({{"eyelet", "bare"}, {"band", "none"}})).steps[1].tools == Words{"ruler", "clips", "awl"});
    journal.tools.push_back("setter");
    CHECK(kit::chosen(journal, choices_of({{"eyelet", "bare"}})).steps[1].tools == Words{"setter", "hammer", "ruler", "clips", "awl"});
}

TEST_CASE("choices that the template does not offer are told together, at their marks") {
    const auto notes = refused(
        {{"eyelt", "bare"}, {"board", "none"}, {"eyelet", "none"}, {"liner", "feld"}, {"thread", "wire"}, {"band", "twine"}, {"tape", "strip"}});
    REQUIRE(notes.size() == 6);
    const auto note = [&](int line) { return *std::find_if(notes.begin(), notes.end(), [&](const FaultNote& n) { return n.where.line == line; }); };
    for (const FaultNote& one : notes) {
        CHECK(one.where.file == "kit.yaml");
        CHECK(one.where.column == 9);
    }
    CHECK(note(5).code == "unknown-name");
    CHECK(note(5).mend == "write 'eyelet'");
    CHECK(note(5).expected == "tape, liner, thread, band, eyelet or paste");
    CHECK(note(6).code == "not-here");
    CHECK_THAT(note(6).what, Catch::Contains("no choice for 'board'"));
    CHECK(note(7).code == "not-here");
    CHECK_THAT(note(7).what, Catch::Contains("'eyelet' cannot be left out"));
    CHECK(note(7).expected == "bare or grommet");
    CHECK(note(8).code == "unknown-word");
    CHECK(note(8).mend == "write 'felt'");
    CHECK(note(8).expected == "felt, painted or none");
    CHECK(note(9).code == "unknown-word");
    CHECK(note(9).expected == "twine");
    CHECK(note(10).code == "unknown-word");
    CHECK(note(10).expected == "none");
    CHECK(refused({{"tape", "strip"}}).empty());
}

TEST_CASE("each choice that the project's own journals offer can be made, and leaves nothing that names what is gone") {
    const auto disk = real_disk();
    const kit::Pipeline pipeline = kit::read_pipeline(*disk, Path(QW_SOURCE_DIR) / "pipeline");
    int made = 0;
    const auto try_all = [&](const kit::JournalTemplate& journal, const auto& things) {
        for (const auto& thing : things) {
            Words offered = names_of(thing.instead);
            if (thing.optional) offered.push_back("none");
            for (const std::string& choice : offered) {
                INFO(journal.name << ": " << thing.name << ": " << choice);
                const auto after = kit::chosen(journal, choices_of({{thing.name, choice}}));
                ++made;
                CHECK(after.replaced == Words{thing.name});
                Words there{"page", "page-stations", "spine-stations", ""};
                for (const Words& names : {names_of(after.pieces), names_of(after.cut_lengths), names_of(after.items), names_of(after.figures)})
                    there.insert(there.end(), names.begin(), names.end());
                const auto is_there = [&](const std::string& name) { return std::find(there.begin(), there.end(), name) != there.end(); };
                for (const kit::StepTemplate& step : after.steps) CHECK(std::all_of(step.uses.begin(), step.uses.end(), is_there));
                for (const kit::PieceTemplate& piece : after.pieces) CHECK(is_there(piece.glue));
                if (after.sewing) CHECK(is_there(after.sewing->thread));
            }
        }
    };
    for (const auto& [name, journal] : pipeline.journals) {
        try_all(journal, journal.pieces);
        try_all(journal, journal.cut_lengths);
        try_all(journal, journal.items);
    }
    CHECK(made > 0);
}

TEST_CASE("a choice is made once") {
    const auto journal = journal_with({{"eyelet", "grommet"}});
    CHECK_THROWS_AS(kit::chosen(journal, choices_of({{"eyelet", "bare"}})), Fault);
    CHECK(kit::chosen(journal, choices_of({{"liner", "none"}})).replaced == Words{"eyelet", "liner"});
}
