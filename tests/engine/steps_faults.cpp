// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/workshop.h"

#include "base/digest.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <stdexcept>
#include <thread>

using namespace qw;
using namespace qw::engine;
using test::Workshop;

namespace {

std::string code_of_run(Workshop& shop, std::vector<Step> steps) {
    try {
        shop.run(std::move(steps));
        return "";
    } catch (const Fault& fault) {
        return fault.notes().front().code;
    }
}

Step idle(const std::string& name, std::vector<std::string> after = {}) { return {name, "k", std::move(after), [](Trace&) {}, {}}; }

void write_through(Disk& disk, const Path& path, const std::string& text) {
    const auto sink = disk.create(path);
    sink->write(text);
    sink->close();
}

}  // namespace

TEST_CASE("a step that fails holds up only those that come after it") {
    for (const unsigned jobs : {1u, 4u}) {
        Workshop shop;
        shop.jobs = jobs;
        shop.write("b", "B");
        const auto steps = [&] {
            return std::vector<Step>{shop.copying("one", "a", "A", "k"), shop.joining("two", {"one", "three"}, {"A"}, {}, "AA"), shop.copying("three", "b", "BB", "k"),
                                     shop.joining("four", {"two"}, {"AA"}, {}, "AAA")};
        };
        CHECK(shop.told(steps()) == "one: failed (never made) missing-file a; two: not reached; three: made (never made) BB new; four: not reached");
        shop.write("a", "A");
        CHECK(shop.told(steps()) == "one: made (never made) A new; two: made (never made) AA new; three: current BB same; four: made (never made) AAA new");
    }
}

TEST_CASE("what is told to come after a step that failed already is not reached") {
    Workshop shop;
    Step plan = idle("plan", {"free"});
    plan.then = [](const MadeFiles&) { return std::vector<Step>{idle("late", {"bad"}), idle("good", {"free"})}; };
    CHECK(shop.told({shop.copying("bad", "none", "A", "k"), idle("free"), plan}) ==
          "bad: failed (never made) missing-file none; free: made (never made); plan: made (never made); late: not reached; good: made (never made)");
}

TEST_CASE("an input that changes while it is used is no success, and nothing is remembered") {
    Workshop shop;
    shop.write("a", "one");
    shop.write("b", "");
    const auto steps = [&](const std::function<void()>& meanwhile) {
        return std::vector<Step>{Step{"copy", "k", {}, [&shop, meanwhile](Trace& trace) {
                                          const Path from = trace.file("a");
                                          trace.folder(".");
                                          trace.file_if_there("none");
                                          const std::string text = read_text(*shop.real, from, 100);
                                          meanwhile();
                                          write_through(*shop.real, trace.output("out"), text);
                                      }, {}}};
    };
    CHECK(shop.told(steps([&] { shop.write("a", "two"); })) == "copy: failed (never made) changed-meanwhile a");
    CHECK(shop.told(steps([&] { shop.write("none", ""); })) == "copy: failed (never made) changed-meanwhile .");
    shop.remove("none");
    CHECK(shop.told(steps([&] { shop.write("none/x", ""), shop.remove("none/x"); })) == "copy: failed (never made) changed-meanwhile .");
    shop.remove("none");
    CHECK(shop.told(steps([&] { shop.write("b", "was not read"); })) == "copy: made (never made) out new");
    CHECK(shop.text_of("out") == "two");
}

TEST_CASE("a step reads only what those made that it comes after, and makes what it says") {
    Workshop shop;
    shop.write("a", "A");
    CHECK(shop.told({shop.copying("one", "a", "A", "k"), shop.joining("two", {}, {"A"}, {}, "AA")}) ==
          "one: made (never made) A new; two: failed (never made) not-made A");
    Step promise{"promise", "k", {}, [](Trace& trace) { trace.output("letter/promised.pdf"); }, {}};
    CHECK(shop.told({promise}) == "promise: failed (never made) disk letter/promised.pdf");
}

TEST_CASE("a list of steps that is wrong in itself is refused") {
    for (const unsigned jobs : {1u, 3u}) {
        Workshop shop;
        shop.jobs = jobs;
        shop.write("a", "A");
        CHECK(code_of_run(shop, {idle("one"), idle("one")}) == "step-twice");
        CHECK(code_of_run(shop, {idle("one", {"two"})}) == "unknown-step");
        CHECK(code_of_run(shop, {idle("free"), idle("one", {"three"}), idle("two", {"one"}), idle("three", {"two"})}) == "circular-steps");
        CHECK(code_of_run(shop, {idle("self", {"self"})}) == "circular-steps");
        CHECK(code_of_run(shop, {shop.copying("one", "a", "A", "k"), shop.copying("two", "a", "A", "k")}) == "made-twice");
        Step plan = idle("plan");
        plan.then = [](const MadeFiles&) { return std::vector<Step>{idle("told", {"nobody"})}; };
        CHECK(code_of_run(shop, {plan}) == "unknown-step");
        plan.then = [](const MadeFiles&) -> std::vector<Step> { throw Fault(FaultKind::not_understood, {"odd-plan", {}, "odd", "", ""}); };
        CHECK(shop.told({plan, idle("other")}) == "plan: failed odd-plan; other: made (never made)");
    }
}

TEST_CASE("what is no fault ends the run and comes through, with any number of jobs") {
    for (const unsigned jobs : {1u, 4u}) {
        Workshop shop;
        shop.jobs = jobs;
        std::vector<Step> steps;
        for (int n = 0; n < 20; ++n) steps.push_back(idle("idle " + std::to_string(n)));
        steps.push_back({"bad", "k", {}, [](Trace&) {
                             std::this_thread::sleep_for(std::chrono::milliseconds(30));  // until the other jobs wait for it
                             throw std::logic_error("a bug");
                         }, {}});
        for (int n = 20; n < 40; ++n) steps.push_back(idle("idle " + std::to_string(n), {"bad"}));
        CHECK_THROWS_WITH(shop.run(steps), "a bug");
    }
}

TEST_CASE("where nothing is trusted a spoiled stored file is made again") {
    Workshop shop;
    shop.write("a", "one");
    const Step copy = shop.copying("copy", "a", "out", "k");
    shop.run({copy});
    const Path stored = Store(*shop.real, shop.stored).path(sha256_of("one"));
    std::filesystem::permissions(stored, std::filesystem::perms::owner_write, std::filesystem::perm_options::add);
    shop.real->extend(stored, 0)->write("eno");
    CHECK(shop.told({copy}) == "copy: current out same");
    shop.trust = Trust::nothing;
    CHECK(shop.told({copy}) == "copy: made (output out) out same");
    CHECK(shop.text_of("out") == "one");
    CHECK(shop.told({copy}) == "copy: current out same");
}

TEST_CASE("a run with nothing to do writes nothing and reads no input") {
    Workshop shop;
    shop.write("a", "one");
    shop.write("kit.yaml", "x=1\n");
    const auto steps = [&] { return std::vector<Step>{shop.copying("copy", "a", "out", "k"), shop.quoting("quote", {{"kit.yaml", "x"}}, "quoted")}; };
    shop.run(steps());
    std::this_thread::sleep_for(std::chrono::milliseconds(30));  // older than the next hashing
    shop.run(steps());
    struct ReadingDisk : test::FaultDisk {
        using FaultDisk::FaultDisk;
        std::unique_ptr<Source> open(const Path& path) override {
            opened.push_back(path.filename());
            return FaultDisk::open(path);
        }
        std::vector<std::string> opened;
    } counting(*shop.real);
    shop.disk = &counting;
    CHECK(shop.told(steps()) == "copy: current out same; quote: current quoted same");
    CHECK(counting.changes() == 0);
    CHECK(counting.opened == std::vector<std::string>{"log"});
}

TEST_CASE("wherever a run fails or is killed, the next one makes what the first would have made") {
    for (const bool killed : {false, true}) {
        bool ended = false;
        for (std::size_t n = 1; !ended; ++n) {
            Workshop shop;
            shop.write("list", "a b");
            shop.write("a", "A");
            shop.write("b", "B");
            test::FaultDisk failing(*shop.real);
            if (killed) failing.stop_at(n);
            else failing.fail_at(n);
            shop.disk = &failing;
            ended = true;
            try {
                for (const Ran& ran : shop.run({shop.planning("plan", "list")})) ended = ended && ran.fate == Fate::made;
            } catch (const Fault&) {
                ended = false;
            } catch (const test::Stopped&) {
                ended = false;
            }
            ended = ended && failing.changes() < n;
            INFO((killed ? "killed" : "failed") << " at " << n << ": " << (failing.calls().empty() ? "" : failing.calls().back()));
            shop.disk = shop.real.get();
            const std::string again = shop.told({shop.planning("plan", "list")});
            INFO(again);
            REQUIRE_THAT(again, !Catch::Contains("failed") && !Catch::Contains("not reached") && Catch::Contains("all: "));
            REQUIRE(shop.text_of("all") == "AB");
            REQUIRE(shop.told({shop.planning("plan", "list")}).find(": made") == std::string::npos);
            REQUIRE(n < 200);
        }
    }
}
