// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/log.h"

#include "base/digest.h"
#include "base/fault.h"
#include "engine/log_text.h"
#include "support/fault_disk.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <thread>

using namespace qw;
using namespace qw::engine;

namespace {

std::string hex_of(const std::string& text) { return sha256_of(text); }

/// An entry with a read of every kind, all of which depend on `n`.
LogEntry entry_of(const std::string& step, int n) {
    const std::string number = std::to_string(n);
    LogEntry entry{step, hex_of("key" + number), {}, {}, {}};
    entry.reads = {{ReadKind::file, "kit/art/a.png", hex_of("a" + number), {}, {}, {}, 0},
                   {ReadKind::folder, "kit/art", hex_of("f" + number), {}, {}, {}, 0},
                   {ReadKind::missing, "kit/none", {}, {}, {}, {}, 0},
                   {ReadKind::value, "kit/kit.yaml", hex_of("v" + number), "sets.tags.bleed", number + " mm", hex_of("y"), 12},
                   {ReadKind::value, "kit/kit.yaml", {}, "sets.tags.none", {}, hex_of("y"), 0},
                   {ReadKind::value, "pipeline/stocks.yaml", hex_of("w"), "card", "a\tb\nc\\d\\n", hex_of("z"), 3},
                   {ReadKind::made, "plan", hex_of("p" + number), {}, {}, {}, 0}};
    entry.outputs = {{"letter/pages.pdf", {1000u + n, hex_of("o" + number)}}, {"odd\tname\n", {0, hex_of("")}}};
    entry.stats = {{"kit/art/a" + number + ".png", {3, 17, 1577934245678901234, -5}, hex_of("a" + number)}};
    return entry;
}

struct LogPlace {
    test::TestFolder folder;
    std::unique_ptr<Disk> disk = real_disk();
    Path file = folder / "log";
    std::string bytes() { return read_text(*disk, file, Log::largest); }
    void write(const std::string& text) { write_file(*disk, file, text); }
};

void check_same(const std::optional<LogEntry>& found, const LogEntry& entry) {
    REQUIRE(found);
    CHECK(found->key == entry.key);
    CHECK(found->reads == entry.reads);
    REQUIRE(found->outputs.size() == entry.outputs.size());
    for (std::size_t i = 0; i < entry.outputs.size(); ++i) {
        CHECK(found->outputs[i].name == entry.outputs[i].name);
        CHECK(found->outputs[i].digest.bytes == entry.outputs[i].digest.bytes);
        CHECK(found->outputs[i].digest.sha256 == entry.outputs[i].digest.sha256);
    }
}

}  // namespace

TEST_CASE("a log's bytes are those of its page") {
    LogPlace place;
    const std::string a(64, 'a'), b(64, 'b'), c(64, 'c');
    {
        Log log(*place.disk, place.file);
        LogEntry entry{"draw", a, {{ReadKind::file, "x", b, {}, {}, {}, 0}, {ReadKind::value, "k.yaml", c, "p.q", "3 mm", b, 12}}, {{"out", {7, c}}}, {{"x", {3, 4, 5, 6}, b}}};
        log.append(entry);
        log.close();
    }
    const std::string body = "step\tdraw\t" + a + "\nfile\tx\t" + b + "\nvalues\tk.yaml\t" + b + "\nvalue\tp.q\t" + c + "\t12\t3 mm\noutput\tout\t7\t" + c +
                             "\nstat\tx\t3\t4\t5\t6\t" + b + "\n";
    CHECK(place.bytes() == "quirewright steps 1\nentry " + std::to_string(body.size()) + " " + sha256_of(body) + "\n" + body);
}

TEST_CASE("what is appended is found at once and by the next run; the last entry counts") {
    LogPlace place;
    {
        Log log(*place.disk, place.file);
        CHECK_FALSE(log.find("one"));
        log.append(entry_of("one", 1));
        log.append(entry_of("two", 2));
        log.append(entry_of("one", 3));
        check_same(log.find("one"), entry_of("one", 3));
        log.close();
        log.append(entry_of("after", 4));
    }
    const Log log(*place.disk, place.file);
    check_same(log.find("one"), entry_of("one", 3));
    check_same(log.find("two"), entry_of("two", 2));
    check_same(log.find("after"), entry_of("after", 4));
    CHECK_FALSE(log.find("three"));
    CHECK_FALSE(log.damage());
    CHECK(log.stats().size() == 4);
}

TEST_CASE("a log in a folder that is not there yet makes it when it is written") {
    LogPlace place;
    place.file = place.folder / "below/log";
    Log log(*place.disk, place.file);
    CHECK_FALSE(place.disk->stat(place.folder / "below"));
    log.append(entry_of("one", 1));
    log.close();
    check_same(Log(*place.disk, place.file).find("one"), entry_of("one", 1));
}

TEST_CASE("of stat lines the last counts, and one without a digest takes back") {
    LogPlace place;
    Log log(*place.disk, place.file);
    log.append({{}, {}, {}, {}, {{"a", {1, 2, 3, 4}, hex_of("old")}, {"b", {1, 1, 1, 1}, hex_of("b")}, {"c", {1, 1, 1, 1}, hex_of("c")}}});
    log.append({{}, {}, {}, {}, {{"a", {5, 6, 7, 8}, hex_of("new")}, {"c", {2, 2, 2, 2}, ""}}});
    log.append({});  // nothing to say: nothing is written
    log.close();
    const std::string bytes = place.bytes();
    Log again(*place.disk, place.file);
    auto lines = again.stats();
    std::sort(lines.begin(), lines.end(), [](const StatLine& x, const StatLine& y) { return x.name < y.name; });
    CHECK(lines == std::vector<StatLine>{{"a", {5, 6, 7, 8}, hex_of("new")}, {"b", {1, 1, 1, 1}, hex_of("b")}});
    again.append({});
    again.close();
    CHECK(place.bytes() == bytes);
}

TEST_CASE("a log cut at any length holds the entries that are whole, is not damaged, and is written on") {
    LogPlace place;
    std::vector<std::size_t> ends;
    {
        Log log(*place.disk, place.file);
        for (int n = 0; n < 17; ++n) {
            log.append(entry_of("step " + std::to_string(n), n));
            ends.push_back(std::filesystem::file_size(place.file));
        }
    }
    const std::string whole = place.bytes();
    REQUIRE(whole.size() > 16'000);
    REQUIRE(whole.size() < 20'480);
    const Path cut = place.folder / "cut";
    for (std::size_t length = 0; length <= whole.size(); ++length) {
        place.disk->extend(cut, 0)->write(whole.substr(0, length));
        const Log log(*place.disk, cut);
        const auto fits = static_cast<std::size_t>(std::upper_bound(ends.begin(), ends.end(), length) - ends.begin());
        INFO("length " << length);
        REQUIRE_FALSE(log.damage());
        REQUIRE(log.stats().size() == fits);
        for (std::size_t n = 0; n < ends.size(); ++n) REQUIRE(log.find("step " + std::to_string(n)).has_value() == (n < fits));
        if (length % 7 != 0) continue;
        Log more(*place.disk, cut);
        more.append(entry_of("more", 99));
        more.close();
        const Log next(*place.disk, cut);
        REQUIRE_FALSE(next.damage());
        REQUIRE(next.find("more"));
        REQUIRE(next.stats().size() == fits + 1);
    }
}

TEST_CASE("a damaged middle is told, what follows is not believed, and the next writer mends the file") {
    LogPlace place;
    std::vector<std::size_t> ends{log_text::file_head().size()};
    {
        Log log(*place.disk, place.file);
        for (int n = 0; n < 4; ++n) {
            log.append(entry_of("step " + std::to_string(n), n));
            ends.push_back(std::filesystem::file_size(place.file));
        }
    }
    const std::string whole = place.bytes();
    for (std::size_t at = 0; at < whole.size(); ++at) {
        std::string changed = whole;
        changed[at] = static_cast<char>(changed[at] ^ 0x01);
        const auto hit = static_cast<std::size_t>(std::upper_bound(ends.begin(), ends.end(), at) - ends.begin());  // 0: the head
        INFO("byte " << at << " of entry " << hit);
        place.disk->extend(place.file, 0)->write(changed);
        const std::size_t believed = hit == 0 ? 0 : hit - 1;
        Log log(*place.disk, place.file);
        for (std::size_t n = 0; n < 4; ++n) REQUIRE(log.find("step " + std::to_string(n)).has_value() == (n < believed));
        if (hit == 4) {  // the last: nothing whole follows, so it is a torn tail
            REQUIRE_FALSE(log.damage());
        } else {
            REQUIRE(log.damage());
            REQUIRE(log.damage()->offset == (hit == 0 ? 0 : ends[hit - 1]));
            REQUIRE(log.damage()->offset + log.damage()->bytes == whole.size());
        }
        if (at % 23 != 0) continue;
        log.append(entry_of("more", 9));
        log.close();
        const Log mended(*place.disk, place.file);
        REQUIRE_FALSE(mended.damage());
        REQUIRE(mended.find("more"));
        REQUIRE(mended.stats().size() == believed + 1);
    }
}

TEST_CASE("a log of a newer version is refused and left as it is") {
    LogPlace place;
    for (const std::string text : {"quirewright steps 2\nsomething else\n", "quirewright steps 2", "quirewright steps 10\n", "quirewright steps 99999999999999999999\n"}) {
        place.write(text);
        try {
            Log log(*place.disk, place.file);
            FAIL("it was read: " << text);
        } catch (const Fault& fault) {
            CHECK(fault.kind() == FaultKind::not_carried_out);
            CHECK(fault.notes().front().code == "newer-log");
            CHECK(fault.notes().front().where.file == place.file.string());
        }
        CHECK(place.bytes() == text);
    }
}

TEST_CASE("a log is written anew when more than half of it is superseded, and says the same") {
    LogPlace place;
    std::uintmax_t last = 0;
    int shrunk = 0;
    {
        Log log(*place.disk, place.file);
        log.append(entry_of("steady", 7));
        for (int n = 0; n < 100; ++n) {
            log.append(entry_of("busy", n % 2));
            const auto size = std::filesystem::file_size(place.file);
            if (size < last) {
                ++shrunk;
                CHECK(last >= Log::smallest - 2000);
                CHECK(size * 2 < last);
            }
            CHECK(size < Log::smallest + 4000);
            last = size;
        }
        check_same(log.find("steady"), entry_of("steady", 7));
        check_same(log.find("busy"), entry_of("busy", 1));
        log.close();
    }
    CHECK(shrunk > 2);
    CHECK(place.disk->list(place.folder.path()) == std::vector<std::string>{"log"});
    const Log log(*place.disk, place.file);
    check_same(log.find("steady"), entry_of("steady", 7));
    check_same(log.find("busy"), entry_of("busy", 1));
    CHECK(log.stats().size() == 3);
}

TEST_CASE("a log of which less than half is superseded is only appended to") {
    LogPlace place;
    Log log(*place.disk, place.file);
    std::string before;
    for (int n = 0; n < 40; ++n) {
        log.append(entry_of("step " + std::to_string(n), n));
        const std::string now = place.bytes();
        REQUIRE(now.starts_with(before));
        before = now;
    }
    REQUIRE(before.size() > 2 * Log::smallest);
    for (int n = 0; n < 30; ++n) log.append(entry_of("step " + std::to_string(n), n));
    CHECK(place.bytes().starts_with(before));
}

TEST_CASE("wherever the disk fails or the run is killed, what was appended before is still there, and only that or the next with it") {
    for (const bool killed : {false, true}) {
        bool ended = false;
        for (std::size_t n = 1; !ended; ++n) {
            LogPlace place;
            test::FaultDisk failing(*place.disk);
            if (killed) failing.stop_at(n);
            else failing.fail_at(n);
            int done = 0;
            ended = true;
            try {
                Log log(failing, place.file);
                for (int k = 0; k < 30; ++k) {
                    log.append(entry_of("busy", k));
                    done = k + 1;
                    if (k == 3) log.close();
                }
                log.close();
            } catch (const Fault&) {
                ended = false;
            } catch (const test::Stopped&) {
                ended = false;
            }
            ended = ended && failing.changes() < n;
            INFO((killed ? "killed" : "failed") << " at " << n << ": " << (failing.calls().empty() ? "" : failing.calls().back()));
            const Log log(*place.disk, place.file);
            REQUIRE_FALSE(log.damage());
            const auto found = log.find("busy");
            if (done > 0) REQUIRE(found);
            if (found) REQUIRE((found->key == entry_of("busy", done - 1).key || found->key == entry_of("busy", done).key));
            REQUIRE(n < 500);
        }
    }
}

TEST_CASE("after a write that failed the next entry follows the last whole one") {
    /// Half of what is to be written is written before the disk is full.
    struct HalfSink : Sink {
        HalfSink(std::unique_ptr<Sink> sink, bool& full) : inner(std::move(sink)), is_full(full) {}
        void write(std::span<const std::byte> bytes) override {
            inner->write(is_full ? bytes.first(bytes.size() / 2) : bytes);
            if (is_full) throw Fault(FaultKind::not_carried_out, {"disk", {}, "full", "", ""});
        }
        void write_at(std::uint64_t at, std::span<const std::byte> bytes) override { inner->write_at(at, bytes); }
        void close() override { inner->close(); }
        std::unique_ptr<Sink> inner;
        bool& is_full;
    };
    struct HalfDisk : test::FaultDisk {
        HalfDisk(Disk& inner) : FaultDisk(inner) {}
        std::unique_ptr<Sink> extend(const Path& path, std::uint64_t length) override { return std::make_unique<HalfSink>(FaultDisk::extend(path, length), full); }
        bool full = false;
    };
    LogPlace place;
    HalfDisk disk(*place.disk);
    Log log(disk, place.file);
    log.append(entry_of("one", 1));
    disk.full = true;
    CHECK_THROWS_AS(log.append(entry_of("two", 2)), Fault);
    CHECK_FALSE(log.find("two"));
    disk.full = false;
    log.append(entry_of("three", 3));
    log.close();
    const Log again(*place.disk, place.file);
    CHECK_FALSE(again.damage());
    check_same(again.find("one"), entry_of("one", 1));
    CHECK_FALSE(again.find("two"));
    check_same(again.find("three"), entry_of("three", 3));
}

TEST_CASE("several jobs append at once") {
    LogPlace place;
    {
        Log log(*place.disk, place.file);
        std::vector<std::thread> jobs;
        for (int job = 0; job < 4; ++job)
            jobs.emplace_back([&log, job] {
                for (int n = 0; n < 25; ++n) log.append(entry_of(std::to_string(job) + "/" + std::to_string(n), n));
            });
        for (std::thread& job : jobs) job.join();
    }
    const Log log(*place.disk, place.file);
    CHECK_FALSE(log.damage());
    for (int job = 0; job < 4; ++job)
        for (int n = 0; n < 25; ++n) check_same(log.find(std::to_string(job) + "/" + std::to_string(n)), entry_of("", n));
}

TEST_CASE("long values are shortened to 200 characters, however many bytes they have") {
    CHECK(shortened("") == "");
    const std::string plain(200, 'x');
    CHECK(shortened(plain) == plain);
    CHECK(shortened(plain + "y") == std::string(199, 'x') + "…");
    std::string wide, wide_short;
    for (int n = 0; n < 200; ++n) wide += "ß";
    for (int n = 0; n < 199; ++n) wide_short += "ß";
    CHECK(shortened(wide) == wide);
    CHECK(shortened(wide + "ß") == wide_short + "…");
}
