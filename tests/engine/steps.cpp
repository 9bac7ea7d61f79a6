// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/workshop.h"

#include "base/digest.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::engine;
using test::Workshop;

TEST_CASE("a static key is told from its parts, none of which can be taken for two") {
    CHECK(static_key({"kind", "a"}) == "2b37d87ec0d8544320823285e03424a2bf38f18e53a6f8960282832ff4844fc0");
    CHECK(static_key({"kinda"}) != static_key({"kind", "a"}));
    CHECK(static_key({"a", ""}) != static_key({"", "a"}));
    CHECK(static_key({"1:a"}) != static_key({"a"}));
}

TEST_CASE("a step runs once, and then not until something that it read, made or is has changed") {
    Workshop shop;
    shop.write("a", "one");
    const auto copy = [&](const std::string& key) { return shop.copying("copy", "a", "out", key); };
    CHECK(shop.told({copy("k")}) == "copy: made (never made) out new");
    CHECK(shop.text_of("out") == "one");
    CHECK(shop.told({copy("k")}) == "copy: current out same");
    CHECK(shop.text_of("out") == "one");
    shop.write("a", "one");  // another inode and time, the same bytes
    CHECK(shop.told({copy("k")}) == "copy: current out same");
    shop.write("a", "two");
    CHECK(shop.told({copy("k")}) == "copy: made (file a) out new");
    CHECK(shop.text_of("out") == "two");
    CHECK(shop.told({copy("K")}) == "copy: made (step) out same");
    shop.lose("out");
    CHECK(shop.told({copy("K")}) == "copy: made (output out) out same");
    shop.remove("a");
    CHECK(shop.told({copy("K")}) == "copy: failed (file a) missing-file a");
    shop.write("a", "two");
    CHECK(shop.told({copy("K")}) == "copy: current out same");
    CHECK(shop.runs == 5);
}

TEST_CASE("the reason tells old and new digest, and of a value its texts and its line") {
    Workshop shop;
    shop.write("kit.yaml", "bleed=3 mm\nname=tide\n");
    const Step step = shop.quoting("quote", {{"kit.yaml", "bleed"}}, "out");
    CHECK(shop.told({step}) == "quote: made (never made) out new");
    shop.write("kit.yaml", "name=tide\n\nbleed=4 mm\n");
    const auto ran = shop.run({step});
    REQUIRE(ran.size() == 1);
    REQUIRE(ran[0].why.size() == 1);
    const Difference& why = ran[0].why[0];
    CHECK(why.cause == Cause::value);
    CHECK(why.name == "kit.yaml");
    CHECK(why.path == "bleed");
    CHECK(why.old == "3 mm");
    CHECK(why.now == "4 mm");
    CHECK(why.line == 3);
    shop.write("kit.yaml", "name=tide\n");
    const auto gone = shop.run({step});
    REQUIRE(gone[0].why.size() == 1);
    CHECK(gone[0].why[0].old == "4 mm");
    CHECK(gone[0].why[0].now.empty());

    shop.write("a", "one");
    shop.run({shop.copying("copy", "a", "o", "k")});
    shop.write("a", "two");
    const auto copied = shop.run({shop.copying("copy", "a", "o", "k")});
    REQUIRE(copied[0].why.size() == 1);
    CHECK(copied[0].why[0].old == sha256_of("one"));
    CHECK(copied[0].why[0].now == sha256_of("two"));
}

TEST_CASE("a comment, a moved line and another value in the same file run nothing, and the file is then not taken apart again") {
    Workshop shop;
    shop.write("kit.yaml", "bleed=3 mm\nname=tide\n");
    const Step step = shop.quoting("quote", {{"kit.yaml", "bleed"}, {"kit.yaml", "none"}}, "out");
    shop.run({step});
    shop.values_asked = 0;
    CHECK(shop.told({step}) == "quote: current out same");
    CHECK(shop.values_asked == 0);
    shop.write("kit.yaml", "# a comment\nname=light\nbleed=3 mm\n");
    CHECK(shop.told({step}) == "quote: current out same");
    CHECK(shop.values_asked == 2);
    CHECK(shop.told({step}) == "quote: current out same");
    CHECK(shop.values_asked == 2);
    CHECK(shop.entry("quote").reads[0].line == 3);  // what is told keeps up
    shop.write("kit.yaml", "bleed=3 mm\nnone=now\n");
    CHECK(shop.told({step}) == "quote: made (value kit.yaml none) out new");
}

TEST_CASE("all differences are told, not the first alone") {
    Workshop shop;
    shop.write("a", "one");
    shop.write("kit.yaml", "x=1\ny=2\n");
    const auto step = [&](const std::string& key) {
        return Step{"many", key, {}, [](Trace& trace) {
                        trace.file("a");
                        trace.folder(".");
                        trace.value("kit.yaml", "x");
                        trace.value("kit.yaml", "y");
                        trace.file_if_there("none");
                        trace.folder_if_there("folder");
                    }, {}};
    };
    CHECK(shop.told({step("k")}) == "many: made (never made)");
    CHECK(shop.told({step("k")}) == "many: current");
    shop.write("a", "two");
    shop.write("kit.yaml", "x=3\ny=4\n");
    shop.write("none", "");
    shop.write("folder/inside", "");
    CHECK(shop.told({step("K")}) == "many: made (step, file a, folder ., appeared folder, appeared none, value kit.yaml x, value kit.yaml y)");
    shop.remove("none");
    shop.remove("folder");
    CHECK(shop.told({step("K")}) == "many: made (file none, folder ., folder folder)");
}

TEST_CASE("a step that makes the same bytes again stops the work there") {
    Workshop shop;
    shop.write("a", "one comment");
    shop.write("b", "b");
    const auto steps = [&] {
        // The first keeps the first word; the second reads what it made, the third what the second made and a file.
        return std::vector<Step>{shop.first_word("plan", "a", "word"), shop.joining("draw", {"plan"}, {"word"}, {}, "drawn"),
                                 shop.joining("pack", {"draw"}, {"drawn"}, {"b"}, "packed")};
    };
    CHECK(shop.told(steps()) == "plan: made (never made) word new; draw: made (never made) drawn new; pack: made (never made) packed new");
    CHECK(shop.text_of("packed") == "oneb");
    CHECK(shop.told(steps()) == "plan: current word same; draw: current drawn same; pack: current packed same");
    shop.write("a", "one other comment");
    CHECK(shop.told(steps()) == "plan: made (file a) word same; draw: current drawn same; pack: current packed same");
    shop.write("a", "two");
    CHECK(shop.told(steps()) == "plan: made (file a) word new; draw: made (made word) drawn new; pack: made (made drawn) packed new");
    CHECK(shop.text_of("packed") == "twob");
    shop.write("b", "B");
    CHECK(shop.told(steps()) == "plan: current word same; draw: current drawn same; pack: made (file b) packed new");
}

TEST_CASE("the same is made by any number of jobs") {
    std::vector<std::string> told;
    for (const unsigned jobs : {1u, 2u, 8u}) {
        Workshop shop;
        shop.jobs = jobs;
        std::vector<Step> steps;
        std::vector<std::string> names, words;
        for (int n = 0; n < 30; ++n) {
            const std::string number = std::to_string(n);
            shop.write("in" + number, number + " rest");
            steps.push_back(shop.first_word("word" + number, "in" + number, "w" + number));
            steps.push_back(shop.joining("twice" + number, {"word" + number}, {"w" + number}, {"in" + number}, "t" + number));
            names.push_back("twice" + number);
            words.push_back("t" + number);
        }
        steps.insert(steps.begin(), shop.joining("all", names, words, {}, "all"));  // told first, done last
        std::string all = shop.told(steps) + "\n";
        all += shop.text_of("all") + "\n";
        shop.write("in7", "seven rest");
        all += shop.told(steps) + "\n";
        all += shop.text_of("all") + "\n";
        all += shop.told(steps);
        told.push_back(all);
    }
    CHECK_THAT(told[0], Catch::Contains("00 rest11 rest22 rest"));
    CHECK_THAT(told[0], Catch::Contains("66 restsevenseven rest88 rest"));
    CHECK_THAT(told[0], Catch::Contains("twice7: made (file in7, made w7) t7 new"));
    CHECK_THAT(told[0], Catch::Contains("all: made (made t7) all new"));
    CHECK(told[0] == told[1]);
    CHECK(told[0] == told[2]);
}

TEST_CASE("a planning step tells what comes after it, also when it did not run") {
    for (const unsigned jobs : {1u, 4u}) {
        Workshop shop;
        shop.jobs = jobs;
        shop.write("list", "a b");
        shop.write("a", "A");
        shop.write("b", "B");
        shop.write("c", "C");
        const auto steps = [&] { return std::vector<Step>{shop.planning("plan", "list"), shop.copying("other", "a", "other", "k")}; };
        CHECK(shop.told(steps()) == "plan: made (never made) plan.txt new; make a: made (never made) made a new; make b: made (never made) made b new; "
                                    "all: made (never made) all new; other: made (never made) other new");
        CHECK(shop.text_of("all") == "AB");
        CHECK(shop.told(steps()) == "plan: current plan.txt same; make a: current made a same; make b: current made b same; all: current all same; "
                                    "other: current other same");
        shop.write("list", "c b");
        CHECK(shop.told(steps()) == "plan: made (file list) plan.txt new; make c: made (never made) made c new; make b: current made b same; "
                                    "all: made (step, made made a) all new; other: current other same");
        CHECK(shop.text_of("all") == "CB");
    }
}

TEST_CASE("what a current step made counts as used, though nobody took it") {
    Workshop shop;
    for (const char* name : {"a", "b", "c"}) shop.write(name, name);
    const Step one = shop.copying("one", "a", "A", "k"), two = shop.copying("two", "b", "B", "k");
    shop.run({one, two});
    // Of equal use the smaller digest would go first: that is the one that is used again.
    const bool one_stays = sha256_of("a") < sha256_of("b");
    CHECK_THAT(shop.told({one_stays ? one : two, shop.copying("three", "c", "C", "k")}), Catch::Contains("current") && Catch::Contains("three: made"));
    Store store(*shop.real, shop.stored);
    CHECK(store.clean_up(2).files_removed == 1);
    CHECK(store.has(shop.entry("one").outputs[0].digest) == one_stays);
    CHECK(store.has(shop.entry("two").outputs[0].digest) != one_stays);
    CHECK(store.has(shop.entry("three").outputs[0].digest));
}

TEST_CASE("an output that is asked for twice is one file") {
    Workshop shop;
    Step step{"twice", "k", {}, [&](Trace& trace) {
                  const auto sink = shop.disk->create(trace.output("out"));
                  sink->write("once");
                  sink->close();
                  CHECK(read_text(*shop.disk, trace.output("out"), 10) == "once");
                  CHECK(trace.output("other") != trace.output("out"));
                  shop.disk->create(trace.output("other"))->close();
              }, {}};
    CHECK(shop.told({step}) == "twice: made (never made) other new out new");
    CHECK(shop.text_of("out") == "once");
}
