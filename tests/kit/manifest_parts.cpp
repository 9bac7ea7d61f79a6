// SPDX-License-Identifier: GPL-3.0-or-later
// Sets of parts: their faces, what goes in what and on what, and what is told when that cannot be.
#include "kit/example.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

namespace {

const std::string pockets_and_tags =
    "  pockets:\n"
    "    role: part\n"
    "    part: trifold-pocket\n"
    "    faces: { outside: [art/p/1.png, art/p/2.png, art/p/3.png], strip: art/s.png, inside: art/in/*.png }\n"
    "    last-back: art/last.png\n"
    "    copies: 2\n"
    "    holds: [card-85x55, index-card-3x5]\n"
    "    goes-on: board\n"
    "  tags:\n"
    "    role: part\n"
    "    part: plain-tag\n"
    "    faces: { outside: art/tags.pdf }\n"
    "    goes-in: pockets/middle\n"
    "    place: contain\n";

/// What is told of two sets of parts in which `from` is made `to`; their lines count from 12.
struct BrokenParts {
    const char* from;
    const char* to;
    const char* told;
    const char* mend = "";
};

class PartsKit {
public:
    PartsKit() {
        for (const char* name : {"p/1.png", "p/2.png", "p/3.png", "s.png", "in/1.png", "in/2.png", "last.png", "tags.pdf"}) kit_.put(std::string("art/") + name);
    }
    kit::Manifest read(const std::string& sets) { return kit_.read(sound_manifest + sets); }
    std::vector<FaultNote> faults(const std::string& sets) { return kit_.faults(sound_manifest + sets); }
    void check(const std::vector<BrokenParts>& table) {
        for (const BrokenParts& row : table) {
            INFO(row.from << "  ->  " << row.to);
            const auto notes = faults(with(pockets_and_tags, row.from, row.to));
            CHECK(told(notes) == row.told);
            if (*row.mend && !notes.empty()) CHECK_THAT(notes.front().mend, Catch::Contains(row.mend));
        }
    }

private:
    ExampleKit kit_;
};

}  // namespace

TEST_CASE("a set of parts is read") {
    const kit::Manifest m = PartsKit().read(pockets_and_tags);
    REQUIRE(m.sets.size() == 3);
    const kit::Set &pockets = m.sets[1], &tags = m.sets[2];
    CHECK(pockets.role == kit::Role::part);
    CHECK(*pockets.part == "trifold-pocket");
    CHECK(pockets.files.empty());
    REQUIRE(pockets.faces.size() == 3);
    CHECK(pockets.faces.at("outside").size() == 3);
    CHECK(pockets.faces.at("inside").at(1).shown == "art/in/2.png");
    CHECK(pockets.sides == kit::Sides::duplex);  // because of the face on the back
    REQUIRE(pockets.last_back);
    REQUIRE(pockets.last_back->file);
    CHECK(pockets.last_back->file->shown == "art/last.png");
    CHECK(pockets.last_back->mark.line == 16);
    CHECK(pockets.copies == 2);
    REQUIRE(pockets.holds.size() == 2);
    CHECK(*pockets.holds[1] == "index-card-3x5");
    CHECK(pockets.holds[1].mark.column == 25);
    CHECK(*pockets.goes_on == "board");
    CHECK(pockets.goes_in->empty());
    CHECK(pockets.place == kit::Place::cover);  // the default of parts
    CHECK(tags.place == kit::Place::contain);
    CHECK(*tags.stock == "card-160");
    CHECK(tags.sides == kit::Sides::single);
    CHECK(tags.copies == 1);
    CHECK(*tags.goes_in == "pockets");
    CHECK(tags.goes_in.mark.column == 14);
    CHECK(tags.pocket == "middle");
    CHECK(PartsKit().read(with(pockets_and_tags, "pockets/middle", "pockets")).sets[2].pocket.empty());
    CHECK(*PartsKit().read(with(pockets_and_tags, "goes-on: board", "goes-on: page")).sets[1].goes_on == "page");
    CHECK_FALSE(PartsKit().read(with(pockets_and_tags, "last-back: art/last.png", "last-back: blank")).sets[1].last_back->file);
}

TEST_CASE("faults of parts, their faces and how many pictures they have") {
    PartsKit kit;
    REQUIRE(kit.faults(pockets_and_tags).empty());
    kit.check({
        {"part: trifold-pocket", "part: trifold-poket", "unknown-name 14:11", "write 'trifold-pocket'"},
        {"part: trifold-pocket", "parts: trifold-pocket", "unknown-key 14:5", "write 'part'"},
        {"faces: { outside: [art/p/1.png, art/p/2.png, art/p/3.png], ", "faces: { ", "missing-key 15:12"},
        {"faces: { outside: art/tags.pdf }", "faces: {}", "empty-list 23:12"},
        {"faces: { outside: art/tags.pdf }", "faces: [art/tags.pdf]", "wrong-type 23:12"},
        {"faces: { outside: art/tags.pdf }", "face: { outside: art/tags.pdf }", "unknown-key 23:5", "write 'faces'"},
        {"outside: [", "outsid: [", "unknown-key 15:14", "write 'outside'"},
        {"strip: art/s.png", "flap: art/s.png", "unknown-key 15:64"},
        {"strip: art/s.png", "strip: art/t.png", "missing-file 15:71"},
        {"outside: [art/p/1.png, art/p/2.png, art/p/3.png]", "outside: [art/p/1.png, art/p/2.png]", ""},
        {"strip: art/s.png", "strip: [art/p/1.png, art/p/2.png, art/p/3.png, art/last.png]", "face-count 15:14", "add the missing pictures"},
        {"    last-back: art/last.png\n", "", "face-count 15:82", "'last-back'"},
        {"last-back: art/last.png", "last-back: blan", "unknown-word 16:16", "write 'blank'"},
        {"last-back: art/last.png", "last-back: art/lost.png", "missing-file 16:16"},
        {"last-back: art/last.png", "last-back: art/in/*.png", "bad-path 16:16"},
        {"last-back: art/last.png", "last-back: [art/last.png]", "wrong-type 16:16"},
        {"copies: 2", "copies: 0", "out-of-range 17:13"},
        {"copies: 2", "copies: 201", "out-of-range 17:13"},
        {"copies: 2", "copies: 2\n    sides: duplex", "not-here 18:5", "remove it"},
        {"copies: 2", "drawn-at: 303 x 221.9 mm", "not-here 17:5", "remove it"},
        {"copies: 2", "files: art/s.png", "not-here 17:5", "faces"},
    });
}

TEST_CASE("faults of what goes in what and on what") {
    PartsKit kit;
    kit.check({
        {"goes-in: pockets/middle", "goes-in: pocket/middle", "unknown-name 24:14", "write 'pockets'"},
        {"goes-in: pockets/middle", "goes-in: pockets/midle", "unknown-name 24:14", "write 'middle'"},
        {"goes-in: pockets/middle", "goes-in: pockets/", "bad-name 24:14", "write 'pockets'"},
        {"goes-in: pockets/middle", "goes-in: [pockets]", "wrong-type 24:14"},
        {"goes-in: pockets/middle", "goes-in: pages", "not-here 24:14"},
        {"goes-in: pockets/middle", "goes-in: tags", "not-here 24:14\ngoes-in-circle 24:14"},
        {"copies: 2", "goes-in: tags", "not-here 17:14\ngoes-in-circle 17:14\ngoes-in-circle 24:14"},
        {"holds: [card-85x55", "holds: [card-85x5", "unknown-name 18:13", "write 'card-85x55'"},
        {"holds: [card-85x55", "holds: [index-card-3x5", "duplicate-value 18:29"},
        {"holds: [card-85x55, index-card-3x5]", "holds: []", "empty-list 18:12"},
        {"holds: [card-85x55, index-card-3x5]", "holds: card-85x55", "wrong-type 18:12"},
        {"place: contain", "holds: [card-85x55]", "not-here 25:5", "remove it"},
        {"goes-on: board", "goes-on: bord", "unknown-name 19:14", "write 'board'"},
        {"goes-on: board", "goes-on: closing-band", "unknown-name 19:14"},
    });
    const std::string on_liner = with(pockets_and_tags, "goes-on: board", "goes-on: liner");
    CHECK(kit.faults(on_liner).empty());
    CHECK(told(kit.faults(on_liner + "choices: { liner: none }\n")) == "not-here 19:14");
}

TEST_CASE("the keys of parts stand in no other set") {
    ExampleKit kit;
    for (const char* key : {"part: trifold-pocket", "faces: { outside: art/1.png }", "copies: 2", "goes-in: pages", "holds: [card-85x55]", "goes-on: page"}) {
        INFO(key);
        const auto notes = kit.faults(with(sound_manifest, "stock: copy-100", key));
        CHECK(told(notes) == "not-here 11:5");
        CHECK_THAT(notes.at(0).mend, Catch::Contains("role: part"));
    }
    // Whichever role was meant.
    CHECK(told(kit.faults(with(with(sound_manifest, "journal-page", "prt"), "files: art/*.png", "part: plain-tg"))) == "unknown-word 8:11\nunknown-name 9:11");
}

TEST_CASE("the last back of pages is blank, or one picture that is none of the pages") {
    ExampleKit kit;
    kit.put("art/3.jpg");
    const auto with_back = [](const std::string& back) { return with(sound_manifest, "stock: copy-100", "last-back: " + back); };
    const auto read = kit.read(with_back("art/3.jpg")).sets.at(0).last_back;
    REQUIRE(read);
    REQUIRE(read->file);
    CHECK(read->file->shown == "art/3.jpg");
    CHECK(read->mark.line == 11);
    CHECK(told(kit.faults(with_back("art/2.png"))) == "duplicate-file 11:16");
    CHECK(told(kit.faults(with_back("black"))) == "unknown-word 11:16");
}
