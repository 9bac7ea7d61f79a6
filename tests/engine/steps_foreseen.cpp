// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/workshop.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::engine;
using test::Workshop;

namespace {

std::vector<Step> chain(Workshop& shop) {
    return {shop.first_word("plan", "a", "word"), shop.joining("draw", {"plan"}, {"word"}, {}, "drawn"), shop.joining("pack", {"draw"}, {"drawn"}, {"b"}, "packed"),
            shop.copying("other", "b", "other", "k")};
}

}  // namespace

TEST_CASE("a dry run tells what will run, and what may if something before it comes out differently") {
    Workshop shop;
    shop.write("a", "one comment");
    shop.write("b", "b");
    CHECK(shop.foretold(chain(shop)) == "plan: will (never made); draw: will (never made); pack: will (never made); other: will (never made)");
    shop.run(chain(shop));
    CHECK(shop.foretold(chain(shop)) == "plan: current; draw: current; pack: current; other: current");
    shop.write("a", "one other comment");
    CHECK(shop.foretold(chain(shop)) == "plan: will (file a); draw: may; pack: may; other: current");
    shop.write("b", "B");
    CHECK(shop.foretold(chain(shop)) == "plan: will (file a); draw: may; pack: will (file b); other: will (file b)");
    shop.write("a", "one comment");
    CHECK(shop.foretold(chain(shop)) == "plan: current; draw: current; pack: will (file b); other: will (file b)");
    // What it told comes true: nothing that was current runs.
    CHECK(shop.told(chain(shop)) == "plan: current word same; draw: current drawn same; pack: made (file b) packed new; other: made (file b) other new");
}

TEST_CASE("a dry run writes nothing and runs nothing") {
    Workshop shop;
    shop.write("a", "one");
    shop.write("b", "b");
    shop.run(chain(shop));
    shop.write("a", "two");
    const int before = shop.runs;
    test::FaultDisk counting(*shop.real);
    shop.disk = &counting;
    shop.foresee(chain(shop));
    CHECK(counting.changes() == 0);
    CHECK(shop.runs == before);
}

TEST_CASE("what comes after a planning step that will run is told from its last plan, as far as that is known") {
    Workshop shop;
    shop.write("list", "a b");
    for (const char* name : {"a", "b", "c"}) shop.write(name, name);
    const auto steps = [&] { return std::vector<Step>{shop.planning("plan", "list")}; };
    CHECK(shop.foretold(steps()) == "plan: will (never made) open");
    shop.run(steps());
    CHECK(shop.foretold(steps()) == "plan: current; make a: current; make b: current; all: current");
    shop.write("a", "A");
    CHECK(shop.foretold(steps()) == "plan: current; make a: will (file a); make b: current; all: may");
    shop.write("list", "c");
    CHECK(shop.foretold(steps()) == "plan: will (file list) open; make a: will (file a); make b: may; all: may");
    shop.lose("plan.txt");
    CHECK(shop.foretold(steps()) == "plan: will (file list, output plan.txt) open");
}

TEST_CASE("what cannot be told is told in its place") {
    Workshop shop;
    shop.write("kit.yaml", "x=1\n");
    shop.write("a", "a");
    const Step good = shop.copying("good", "a", "A", "k");
    const Step quote = shop.quoting("quote", {{"kit.yaml", "x"}}, "quoted");
    shop.run({quote, good});
    shop.write("kit.yaml", "x=1\n#\n");
    Log log(*shop.real, shop.log_file);
    Store store(*shop.real, shop.stored);
    Digests digests(*shop.real, Trust::stamps, [&](const std::string& name) { return shop.inputs / name; });
    const Values broken = [](const std::string& name, const std::string&) -> std::optional<Value> {
        throw Fault(FaultKind::not_understood, {"bad-yaml", {name, 1, 1}, "it is broken", "", ""});
    };
    const auto told = Steps(log, store, digests, broken).foresee({quote, good});
    REQUIRE(told.size() == 2);
    CHECK(told[0].foreseen == Foreseen::unclear);
    REQUIRE(told[0].fault);
    CHECK(told[0].fault->notes().front().code == "bad-yaml");
    CHECK(told[1].foreseen == Foreseen::current);
}
