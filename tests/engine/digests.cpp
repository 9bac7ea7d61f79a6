// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/digests.h"

#include "base/digest.h"
#include "base/fault.h"
#include "support/fault_disk.h"

#include <catch2/catch.hpp>

#include <atomic>
#include <filesystem>
#include <functional>
#include <thread>

using namespace qw;
using namespace qw::engine;

namespace {

constexpr std::int64_t second = 1'000'000'000;
// NIST, "SHA-256 example (one block message)": the digest of "abc".
const std::string of_abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

/// Files of a real folder under stamps and a clock that the test sets.
class ClockedDisk : public test::FaultDisk {
public:
    explicit ClockedDisk(Disk& inner) : FaultDisk(inner), below_(inner) {}
    std::int64_t now() override { return time; }
    std::optional<FileStat> stat(const Path& path) override {
        auto there = below_.stat(path);
        if (there && there->type == FileType::file) there->mtime = mtime, there->ctime = ctime;
        return there;
    }
    std::unique_ptr<Source> open(const Path& path) override {
        ++opened;
        auto source = below_.open(path);
        if (when_opened) when_opened();
        return source;
    }

    std::int64_t time = 1000 * second, mtime = 10 * second + 1, ctime = 10 * second + 1;
    std::atomic<int> opened = 0;
    std::function<void()> when_opened;

private:
    Disk& below_;
};

struct DigestPlace {
    test::TestFolder folder;
    std::unique_ptr<Disk> real = real_disk();
    ClockedDisk disk{*real};
    std::string name = (folder / "a").string();
    DigestPlace() { write("abc"); }
    void write(const std::string& text) { write_file(*real, name, text); }
    /// What a run that knows `lines` is told, and what it learns.
    std::vector<StatLine> run(const std::vector<StatLine>& lines, const std::string& expected, Trust trust = Trust::stamps) {
        Digests digests(disk, trust);
        digests.believe(lines);
        CHECK(digests.file(name)->sha256 == expected);
        return digests.learnt();
    }
};

}  // namespace

TEST_CASE("a file is hashed once in a run, and not in the next while its stamp is the same") {
    DigestPlace place;
    Digests digests(place.disk, Trust::stamps);
    CHECK(digests.file(place.name)->sha256 == of_abc);
    CHECK(digests.file(place.name)->bytes == 3);
    CHECK(place.disk.opened == 1);
    const auto lines = digests.learnt();
    REQUIRE(lines.size() == 1);
    CHECK(lines[0].name == place.name);
    CHECK(lines[0].sha256 == of_abc);
    CHECK(lines[0].stamp == Stamp{3, place.real->stat(place.name)->inode, 10 * second + 1, 10 * second + 1});
    CHECK(digests.learnt().empty());
    CHECK(place.run(lines, of_abc).empty());
    CHECK(place.disk.opened == 1);
}

TEST_CASE("each part of the stamp selects the digest") {
    DigestPlace place;
    const auto lines = place.run({}, of_abc);
    REQUIRE(lines.size() == 1);
    const auto opened_with = [&](const std::function<void(Stamp&)>& change) {
        auto changed = lines;
        change(changed[0].stamp);
        place.disk.opened = 0;
        place.run(changed, of_abc);
        return place.disk.opened.load();
    };
    CHECK(opened_with([](Stamp&) {}) == 0);
    CHECK(opened_with([](Stamp& stamp) { ++stamp.size; }) == 1);
    CHECK(opened_with([](Stamp& stamp) { ++stamp.inode; }) == 1);
    CHECK(opened_with([](Stamp& stamp) { ++stamp.mtime; }) == 1);
    CHECK(opened_with([](Stamp& stamp) { ++stamp.ctime; }) == 1);
}

TEST_CASE("a file that is no older than the beginning of its own hashing is hashed again next time") {
    DigestPlace place;
    const std::int64_t hashed = place.disk.time;
    struct Case {
        std::int64_t mtime, ctime;
        bool believed;
    };
    // A stamp of whole seconds may be two seconds older than the change: FAT keeps every second second.
    for (const Case& one : {Case{hashed - 1, hashed - 1, true}, {hashed, 1, false}, {1, hashed, false}, {hashed + 1, hashed + 1, false},
                            {hashed - second, 1, false}, {hashed - 2 * second, 1, false}, {hashed - 3 * second, 1, true},
                            {1, hashed - 2 * second, false}, {hashed - second + 1, 1, true}}) {
        INFO(hashed - one.mtime << " and " << hashed - one.ctime << " ns before");
        place.disk.mtime = one.mtime;
        place.disk.ctime = one.ctime;
        const auto lines = place.run({}, of_abc);
        CHECK(lines.empty() != one.believed);
        place.disk.opened = 0;
        place.run(lines, of_abc);
        CHECK(place.disk.opened == (one.believed ? 0 : 1));
    }
}

TEST_CASE("a change in the same tick and of the same size is seen by the next run") {
    DigestPlace place;
    place.disk.mtime = place.disk.ctime = place.disk.time;
    const auto lines = place.run({}, of_abc);
    place.real->extend(place.name, 0)->write("abd");  // the same inode; the stamps stay by the test's clock
    place.disk.time += 5 * second;
    const auto next = place.run(lines, sha256_of("abd"));
    CHECK(next.size() == 1);
}

TEST_CASE("where nothing is trusted every file is read, once, and a wrong digest is taken back") {
    DigestPlace place;
    const auto lines = place.run({}, of_abc);
    place.real->extend(place.name, 0)->write("xyz");
    CHECK(place.run(lines, of_abc).empty());  // the stamp says it is the same
    const auto mended = place.run(lines, sha256_of("xyz"), Trust::nothing);
    REQUIRE(mended.size() == 1);
    CHECK(mended[0].sha256 == sha256_of("xyz"));
    CHECK(place.run(mended, sha256_of("xyz"), Trust::nothing).empty());

    place.disk.time = place.disk.mtime;  // no older than its hashing now: what is known under this stamp is worth nothing
    const auto taken_back = place.run(lines, sha256_of("xyz"), Trust::nothing);
    REQUIRE(taken_back.size() == 1);
    CHECK(taken_back[0].sha256.empty());
    auto both = lines;
    both.push_back(taken_back[0]);
    place.run(both, sha256_of("xyz"));
    Digests once(place.disk, Trust::nothing);
    place.disk.opened = 0;
    once.file(place.name);
    once.file(place.name);
    CHECK(place.disk.opened == 1);
}

TEST_CASE("a file that changes while it is hashed is hashed again, up to three times") {
    for (const int changes : {0, 1, 2, 3, 4}) {
        DigestPlace place;
        int left = changes;
        place.disk.when_opened = [&] {
            if (left-- > 0) ++place.disk.mtime;
        };
        Digests digests(place.disk, Trust::stamps);
        INFO(changes);
        if (changes < 3) {
            CHECK(digests.file(place.name)->sha256 == of_abc);
            CHECK(place.disk.opened == changes + 1);
            continue;
        }
        try {
            digests.file(place.name);
            FAIL("it was believed");
        } catch (const Fault& fault) {
            CHECK(fault.kind() == FaultKind::not_carried_out);
            CHECK(fault.notes().front().code == "changing-file");
            CHECK(fault.notes().front().where.file == place.name);
        }
        CHECK(place.disk.opened == 3);
        CHECK(digests.learnt().empty());
    }
}

TEST_CASE("what grows while it is hashed, or goes away, is seen") {
    DigestPlace place;
    bool grown = false;
    place.disk.when_opened = [&] {
        if (!std::exchange(grown, true)) place.write("abcd");  // another file under the name: the one that is open has three bytes
    };
    Digests digests(place.disk, Trust::stamps);
    CHECK(digests.file(place.name)->sha256 == sha256_of("abcd"));
    CHECK_FALSE(digests.file((place.folder / "none").string()));
    CHECK_FALSE(digests.file(place.folder.path().string()));
}

TEST_CASE("a folder's digest is that of its names, sorted, and of nothing else") {
    DigestPlace place;
    place.real->make_folders(place.folder / "b");
    Digests digests(place.disk, Trust::stamps);
    const auto listing = digests.folder(place.folder.path().string());
    REQUIRE(listing);
    CHECK(listing->names == std::vector<std::string>{"a", "b"});
    // printf 'a\0b\0' | sha256sum
    CHECK(listing->sha256 == "8fb20ef63ced4145fc2e983ffe597d1dcff39154c3bf21f0fa9dde6a0c50fdc9");
    place.write("other bytes");
    write_file(*place.real, place.folder / "b/inside", "");
    CHECK(Digests(place.disk, Trust::stamps).folder(place.folder.path().string())->sha256 == listing->sha256);
    write_file(*place.real, place.folder / "c", "");
    CHECK(Digests(place.disk, Trust::stamps).folder(place.folder.path().string())->sha256 != listing->sha256);
    CHECK_FALSE(digests.folder(place.name));
    CHECK_FALSE(digests.folder((place.folder / "none").string()));
}

TEST_CASE("it is seen whether what a run was told still holds") {
    DigestPlace place;
    const std::string none = (place.folder / "none").string(), here = place.folder.path().string();
    Digests digests(place.disk, Trust::stamps);
    digests.file(place.name);
    digests.file(none);
    digests.folder(here);
    CHECK(digests.still(place.name));
    CHECK(digests.still(none));
    CHECK(digests.still(here));
    ++place.disk.mtime;
    CHECK_FALSE(digests.still(place.name));
    CHECK(digests.still(here));
    write_file(*place.real, none, "");
    CHECK_FALSE(digests.still(none));
    CHECK_FALSE(digests.still(here));
}

TEST_CASE("names lie where they are said to lie, and links are followed to what they lead to") {
    DigestPlace place;
    std::filesystem::create_symlink("a", place.folder / "link");
    std::filesystem::create_symlink("nowhere", place.folder / "broken");
    Digests digests(place.disk, Trust::stamps, [&](const std::string& name) { return place.folder / name; });
    CHECK(digests.file("link")->sha256 == of_abc);
    CHECK_FALSE(digests.file("broken"));
    const auto lines = digests.learnt();
    REQUIRE(lines.size() == 1);
    CHECK(lines[0].name == "link");
    CHECK(lines[0].stamp.size == 3);
    write_file(*place.real, place.folder / "b", "xyz");
    std::filesystem::remove(place.folder / "link");
    std::filesystem::create_symlink("b", place.folder / "link");
    Digests next(place.disk, Trust::stamps, [&](const std::string& name) { return place.folder / name; });
    next.believe(lines);
    CHECK(next.file("link")->sha256 == sha256_of("xyz"));
}

TEST_CASE("two jobs that ask for the same file read it once") {
    DigestPlace place;
    place.write(std::string(1 << 20, 'x'));
    Digests digests(place.disk, Trust::stamps);
    std::thread other([&] { digests.file(place.name); });
    digests.file(place.name);
    other.join();
    CHECK(place.disk.opened == 1);
}

TEST_CASE("on the machine's own disk a file that was just written is not believed next time, an old one is") {
    test::TestFolder folder;
    const auto disk = real_disk();
    const std::string name = (folder / "a").string();
    write_file(*disk, name, "abc");
    std::this_thread::sleep_for(std::chrono::milliseconds(50));  // more than a tick of the coarse clock
    Digests late(*disk, Trust::stamps);
    late.file(name);
    CHECK(late.learnt().size() == 1);
    std::filesystem::last_write_time(name, std::filesystem::file_time_type::clock::now() + std::chrono::hours(1));
    Digests ahead(*disk, Trust::stamps);
    ahead.file(name);
    CHECK(ahead.learnt().empty());
}
