// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/publish.h"

#include "base/fault.h"
#include "release/publish_sample.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>

using namespace qw;
using namespace qw::release;
using sample::House;
using test::FaultDisk;
using test::Stopped;

namespace {

/// A file system without RENAME_EXCHANGE.
class PlainDisk : public FaultDisk {
public:
    using FaultDisk::FaultDisk;
    void exchange(const Path&, const Path& b) override {
        throw Fault(FaultKind::not_carried_out, {"disk", {b.string(), 0, 0}, "cannot exchange it for the new one: Invalid argument", "", ""});
    }
};

std::string code_of(Disk& disk, const House& house, const std::string& version = "1.0.0", const std::string& kit = "mini") {
    try {
        Publication publication(disk, house.out(), kit, version);
    } catch (const Fault& fault) {
        CHECK(fault.kind() == FaultKind::not_carried_out);
        return fault.notes().front().code;
    }
    return "";
}

}  // namespace

TEST_CASE("a release is not seen before it is published, and then it is whole") {
    const bool first = GENERATE(true, false);
    const House house(first);
    const auto disk = real_disk();
    {
        Publication publication(*disk, house.out(), "mini", "1.0.0");
        CHECK(publication.folder() == house.shown());
        CHECK(publication.staging().parent_path() == house.shown().parent_path());
        CHECK(disk->list(publication.staging()).empty());
        sample::fill(*disk, publication.staging(), sample::Edition::anew);
        CHECK(sample::digests_of(house.shown()) == house.before);
        publication.publish();
        CHECK(house.is_new());
    }
    CHECK(house.is_new());
    CHECK(house.anew != house.before);
    CHECK(house.leftovers() == "");
}

TEST_CASE("what is not published leaves nothing") {
    const bool first = GENERATE(true, false);
    const House house(first);
    const auto disk = real_disk();
    {
        Publication publication(*disk, house.out(), "mini", "1.0.0");
        sample::fill(*disk, publication.staging(), sample::Edition::anew);
    }
    CHECK(sample::digests_of(house.shown()) == house.before);
    CHECK(house.leftovers() == "");
}

TEST_CASE("one exchange shows it, after everything was synced and before anything is removed") {
    const House house(false);
    const auto disk = real_disk();
    FaultDisk counted(*disk);
    house.publish_anew(counted);
    const std::vector<std::string>& calls = counted.calls();
    const std::string folder = house.shown().string(), staging = (house.out() / "mini" / ".new-1.0.0").string();
    const auto place = [&](const std::string& call) { return std::find(calls.begin(), calls.end(), call) - calls.begin(); };
    const auto shown = place("exchange " + staging + " " + folder), end = static_cast<std::ptrdiff_t>(calls.size());
    REQUIRE(shown < end);
    for (const char* inside : {"", "/listing", "/listing/pictures"}) CHECK(place("sync_folder " + staging + inside) < shown);
    CHECK(place("sync_folder " + staging + "/listing/pictures") < place("sync_folder " + staging + "/listing"));
    const auto synced = place("sync_folder " + (house.out() / "mini").string());
    CHECK(synced > shown);
    CHECK(synced < end);
    CHECK(place("remove " + staging) > synced);
    CHECK(place("remove " + staging) < end);
    CHECK(std::count_if(calls.begin(), calls.end(), [&](const std::string& call) { return call.ends_with(" " + folder); }) == 1);
}

TEST_CASE("a run that ends at any change leaves the old or the new release whole") {
    const bool first = GENERATE(true, false);
    const auto disk = real_disk();
    std::size_t changes = 0, old_seen = 0, new_seen = 0;
    {
        const House house(first);
        FaultDisk counted(*disk);
        house.publish_anew(counted);
        changes = counted.changes();
    }
    REQUIRE(changes > 20);
    for (std::size_t k = 1; k <= changes; ++k) {
        const House house(first);
        FaultDisk stopping(*disk);
        stopping.stop_at(k);
        INFO(k);
        // After the exchange only the removal of the old release is left, whose failure is nobody's trouble.
        try {
            house.publish_anew(stopping);
            CHECK(house.is_new());
        } catch (const Stopped&) {
        }
        CHECK(house.whole());
        (house.is_new() ? new_seen : old_seen) += 1;
        house.publish_anew(*disk);
        CHECK(house.is_new());
        CHECK(house.leftovers() == "");
    }
    CHECK(old_seen > 15);
    CHECK(new_seen >= 2);
}

TEST_CASE("a disk that fails at any change leaves the old or the new release whole, and tidies up") {
    const bool first = GENERATE(true, false);
    const auto disk = real_disk();
    std::size_t faults = 0;
    for (std::size_t k = 1;; ++k) {
        const House house(first);
        FaultDisk failing(*disk);
        failing.fail_at(k);
        INFO(k);
        bool failed = false;
        try {
            house.publish_anew(failing);
        } catch (const Fault&) {
            failed = true;
        }
        if (!failed && failing.changes() < k) break;
        faults += failed ? 1 : 0;
        CHECK(house.whole());
        CHECK((failed || house.is_new()));
        const bool removal = failing.calls()[k - 1].starts_with("remove ");
        if (!house.is_new() && !removal) CHECK(house.leftovers() == "");
        house.publish_anew(*disk);
        CHECK(house.is_new());
        CHECK(house.leftovers() == "");
    }
    CHECK(faults > 20);
}

TEST_CASE("a kept file outlives the release that links to it") {
    const House house(false);
    house.publish_anew(*real_disk());
    CHECK(std::filesystem::file_size(house.folder / "kept") == 15);
    CHECK(std::filesystem::hard_link_count(house.folder / "kept") == 2);
}

TEST_CASE("there is one writer at a time") {
    const House house(false);
    const auto disk = real_disk();
    {
        const Publication publication(*disk, house.out(), "mini", "1.0.0");
        CHECK(code_of(*disk, house) == "in-use");
        CHECK(code_of(*disk, house, "1.0.1") == "in-use");
        CHECK(code_of(*disk, house, "1.0.0", "another") == "");
        try {
            Publication second(*disk, house.out(), "mini", "1.0.0");
            FAIL("two writers at once");
        } catch (const Fault& fault) {
            CHECK_THAT(fault.what(), Catch::Contains((house.out() / "mini" / ".lock").string()));
        }
        CHECK(disk->stat(publication.staging()));
    }
    CHECK(code_of(*disk, house) == "");
}

TEST_CASE("a file system that cannot exchange folders is told before any work") {
    const bool first = GENERATE(true, false);
    const House house(first);
    const auto disk = real_disk();
    PlainDisk plain(*disk);
    CHECK(code_of(plain, house) == "no-exchange");
    CHECK(sample::digests_of(house.shown()) == house.before);
    CHECK(house.leftovers() == "");
}

TEST_CASE("leftovers of runs that were killed are removed, and nothing else") {
    const House house(false);
    const auto disk = real_disk();
    disk->make_folders(house.out() / "mini" / ".new-0.9.0" / "deep");
    disk->make_folders(house.out() / "mini" / ".new-1.0.0.try");
    disk->make_folders(house.out() / "mini" / "0.9.0");
    std::ofstream(house.out() / "mini" / ".new-file") << "x";
    std::ofstream(house.out() / "mini" / "last-audit.html") << "x";
    CHECK(code_of(*disk, house) == "");
    CHECK(house.leftovers() == "0.9.0 last-audit.html ");
    CHECK(sample::digests_of(house.shown()) == house.before);
}

TEST_CASE("what is no folder where the release belongs is told and kept") {
    const House house(true);
    const auto disk = real_disk();
    disk->make_folders(house.out() / "mini");
    std::ofstream(house.shown()) << "a file";
    CHECK(code_of(*disk, house) == "not-a-folder");
    CHECK(std::filesystem::file_size(house.shown()) == 6);
    std::filesystem::remove(house.shown());
    std::filesystem::create_directory_symlink("/", house.shown());
    CHECK(code_of(*disk, house) == "not-a-folder");
}

TEST_CASE("names that lead elsewhere are refused") {
    const House house(false);
    const auto disk = real_disk();
    FaultDisk counted(*disk);
    for (const char* version : {"", ".", "..", "../1", "1/2", ".lock"}) CHECK(code_of(counted, house, version) == "bad-name");
    for (const char* kit : {"", "..", "a/b", "Mini"}) CHECK(code_of(counted, house, "1.0.0", kit) == "bad-name");
    CHECK(counted.changes() == 0);
}
