// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/kept.h"

#include "base/digest.h"
#include "base/fault.h"
#include "support/fault_disk.h"

#include <catch2/catch.hpp>

using namespace qw;

namespace {

std::string key(int n) { return sha256_of(std::to_string(n)); }

struct Place {
    test::TestFolder folder;
    std::unique_ptr<Disk> disk = real_disk();
    Path file = folder.path() / ".kept";
    std::string bytes() { return read_text(*disk, file, engine::Kept::largest); }
    void write(const std::string& text) { write_file(*disk, file, text); }
};

}  // namespace

TEST_CASE("what is kept is found by the next run, and by its key alone") {
    Place place;
    {
        engine::Kept kept(*place.disk, place.file);
        CHECK_FALSE(kept.find(key(1)));
        kept.add(key(1), "one");
        kept.add(key(2), std::string("\0\n\xff", 3));
        CHECK(kept.find(key(1)) == "one");
        kept.save();
    }
    engine::Kept again(*place.disk, place.file);
    CHECK(again.find(key(1)) == "one");
    CHECK(again.find(key(2)) == std::string("\0\n\xff", 3));
    CHECK_FALSE(again.find(key(3)));
    const std::string before = place.bytes();
    again.save();
    CHECK(place.bytes() == before);
}

TEST_CASE("a file of kept findings that is torn anywhere or has a changed byte counts as empty, and is written anew") {
    Place place;
    engine::Kept kept(*place.disk, place.file);
    kept.add(key(1), "one");
    kept.add(key(2), "two");
    kept.save();
    const std::string whole = place.bytes();
    for (std::size_t length = 0; length < whole.size(); ++length) {
        place.write(whole.substr(0, length));
        engine::Kept torn(*place.disk, place.file);
        REQUIRE_FALSE(torn.find(key(1)));
        REQUIRE_FALSE(torn.find(key(2)));
    }
    for (std::size_t at = 0; at < whole.size(); ++at) {
        std::string changed = whole;
        changed[at] = static_cast<char>(changed[at] ^ 1);
        place.write(changed);
        engine::Kept damaged(*place.disk, place.file);
        REQUIRE_FALSE(damaged.find(key(1)));
    }
    engine::Kept mended(*place.disk, place.file);
    mended.add(key(1), "one");
    mended.add(key(2), "two");
    mended.save();
    CHECK(place.bytes() == whole);
}

TEST_CASE("what a run did not ask for is kept on while there is room, and goes when there is none") {
    Place place;
    const std::string large(engine::Kept::comfortable / 2 + 1, 'x');
    engine::Kept first(*place.disk, place.file);
    first.add(key(1), large);
    first.save();
    engine::Kept second(*place.disk, place.file);
    second.add(key(2), "two");
    second.save();
    CHECK(engine::Kept(*place.disk, place.file).find(key(1)));
    engine::Kept third(*place.disk, place.file);
    CHECK(third.find(key(2)));
    third.add(key(3), large);
    third.save();
    engine::Kept last(*place.disk, place.file);
    CHECK_FALSE(last.find(key(1)));
    CHECK(last.find(key(2)) == "two");
    CHECK(last.find(key(3)));
}

TEST_CASE("where nothing is kept nothing is written, and a folder in the file's place is borne") {
    Place place;
    engine::Kept nowhere;
    nowhere.add(key(1), "one");
    CHECK_FALSE(nowhere.find(key(1)));
    nowhere.save();
    place.disk->make_folders(place.file);
    engine::Kept blocked(*place.disk, place.file);
    blocked.add(key(1), "one");
    CHECK_THROWS_AS(blocked.save(), Fault);
}
