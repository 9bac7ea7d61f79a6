// SPDX-License-Identifier: GPL-3.0-or-later
#include "bundle/zip.h"

#include "base/digest.h"
#include "base/fault.h"
#include "bundle/sample.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdlib>
#include <ctime>
#include <sys/stat.h>

using namespace qw;
using namespace qw::bundle;
using qw::test::FaultDisk;
using qw::test::TestFolder;

namespace {

Written write_small(Disk& disk, const TestFolder& folder, const Path& zip) {
    return write_zip(disk, zip, sample::small(folder.path()), sample::date);
}

/// Files that are not there: every one has the size that its name gives, and holds zeros.
class ClaimingDisk : public FaultDisk {
public:
    using FaultDisk::FaultDisk;
    std::unique_ptr<Source> open(const Path& path) override {
        if (path.extension() != ".claim") return FaultDisk::open(path);
        struct Zeros : Source {
            std::uint64_t bytes = 0;
            std::uint64_t size() const override { return bytes; }
            std::size_t read(std::uint64_t offset, std::span<std::byte> to) override {
                const auto n = static_cast<std::size_t>(std::min<std::uint64_t>(to.size(), bytes - std::min(bytes, offset)));
                std::fill_n(to.begin(), n, std::byte{0});
                return n;
            }
        };
        auto zeros = std::make_unique<Zeros>();
        zeros->bytes = std::stoull(path.stem().string());
        return zeros;
    }
};

/// The file "changing" is `by` bytes longer or shorter when it is read than when it was opened, or already when it is
/// opened for the second time.
class ChangingDisk : public FaultDisk {
public:
    ChangingDisk(Disk& inner, std::int64_t by, bool between_opens) : FaultDisk(inner), by_(by), between_opens_(between_opens) {}
    std::unique_ptr<Source> open(const Path& path) override {
        if (path.filename() != "changing") return FaultDisk::open(path);
        ++opened_;
        struct Changing : Source {
            std::uint64_t told = 0, there = 0;
            std::uint64_t size() const override { return told; }
            std::size_t read(std::uint64_t offset, std::span<std::byte> to) override {
                const auto n = static_cast<std::size_t>(std::min<std::uint64_t>(to.size(), there - std::min(there, offset)));
                std::fill_n(to.begin(), n, std::byte{'x'});
                return n;
            }
        };
        auto file = std::make_unique<Changing>();
        const std::uint64_t changed = static_cast<std::uint64_t>(std::int64_t{size} + by_);
        file->told = between_opens_ && opened_ > 1 ? changed : std::uint64_t{size};
        file->there = between_opens_ ? file->told : changed;
        return file;
    }
    static constexpr std::int64_t size = 600'000;

private:
    std::int64_t by_;
    bool between_opens_;
    int opened_ = 0;
};

std::string message_of(Disk& disk, const Path& zip, const std::vector<Entry>& entries) {
    try {
        write_zip(disk, zip, entries, sample::date);
    } catch (const Fault& fault) {
        CHECK(fault.kind() == FaultKind::not_carried_out);
        CHECK_FALSE(disk.stat(zip));
        return fault.what();
    }
    return "";
}

}  // namespace

TEST_CASE("a bundle reads back as it was packed, in its order") {
    const auto disk = real_disk();
    const TestFolder folder;
    const Written written = write_small(*disk, folder, folder / "o.zip");
    const std::string bytes = sample::get(folder / "o.zip");
    CHECK(written.bytes == bytes.size());
    CHECK(written.sha256 == sha256_of(bytes));

    const Content content = read_zip(*disk, folder / "o.zip");
    REQUIRE(content.damage == "");
    REQUIRE(content.entries.size() == 4);
    const std::vector<Entry> entries = sample::small(folder.path());
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const std::string original = sample::get(entries[i].file);
        CHECK(content.entries[i].name == entries[i].name);
        CHECK(content.entries[i].bytes == original.size());
        CHECK(content.entries[i].sha256 == sha256_of(original));
    }
    CHECK(content.entries[0].stored);
    CHECK_FALSE(content.entries[1].stored);
    CHECK(bytes.size() < 5000 + 3000);  // 6,290 bytes of text were deflated
}

TEST_CASE("headers hold the date, midnight, and nothing of the machine") {
    const auto disk = real_disk();
    const TestFolder folder;
    // Microsoft, DosDateTimeToFileTime: bits 0-4 day, 5-8 month, 9-15 year from 1980.
    const auto [date, low, high] = GENERATE(table<Date, int, int>({{{1980, 1, 1}, 0x21, 0x00}, {{2024, 2, 29}, 0x5d, 0x58}}));
    sample::put(folder / "a", "123456789");
    write_zip(*disk, folder / "o.zip", {{"a", folder / "a", true}}, date);
    const std::string zip = sample::get(folder / "o.zip");
    REQUIRE(zip.size() == 30 + 1 + 9 + 46 + 1 + 22);  // no extra field anywhere (APPNOTE 4.3.7, 4.3.12, 4.3.16)
    const auto byte = [&](std::size_t at) { return static_cast<int>(static_cast<unsigned char>(zip[at])); };
    for (const std::size_t time_at : {std::size_t{10}, std::size_t{40 + 12}}) {
        CHECK(byte(time_at) == 0);
        CHECK(byte(time_at + 1) == 0);
        CHECK(byte(time_at + 2) == low);
        CHECK(byte(time_at + 3) == high);
    }
    // CRC-32 of "123456789": CBF43926, from memory.
    for (const std::size_t crc_at : {std::size_t{14}, std::size_t{40 + 16}})
        CHECK(zip.substr(crc_at, 4) == std::string("\x26\x39\xf4\xcb"));
    CHECK(sample::crc32("123456789") == 0xcbf43926u);
}

TEST_CASE("zone, umask and working folder leave no trace") {
    const auto disk = real_disk();
    const TestFolder folder;
    write_small(*disk, folder, folder / "one.zip");
    // The second zone's clocks leap from midnight to one on 29 February, so that this midnight does not exist there.
    const char* zone = GENERATE("Asia/Kathmandu", "XXX5YYY,59/0,300/0", "Pacific/Kiritimati");
    const char* before = std::getenv("TZ");
    const std::string kept = before ? before : "";
    const auto mask = ::umask(077);
    const Path here = std::filesystem::current_path();
    ::setenv("TZ", zone, 1);
    ::tzset();
    std::filesystem::current_path(folder.path());
    write_small(*disk, folder, "two.zip");
    std::filesystem::current_path(here);
    ::umask(mask);
    before ? ::setenv("TZ", kept.c_str(), 1) : ::unsetenv("TZ");
    ::tzset();
    CHECK(sample::get(folder / "one.zip") == sample::get(folder / "two.zip"));
}

TEST_CASE("headers are patched wherever they lie in the buffer") {
    const auto disk = real_disk();
    const TestFolder folder;
    constexpr std::size_t buffer = 1 << 18;
    sample::put(folder / "tail", "the second file");
    for (std::size_t less = 0; less < 120; less += 3) {
        sample::put(folder / "long", sample::noise(buffer - less));
        const Path zip = folder / ("o" + std::to_string(less) + ".zip");
        write_zip(*disk, zip, {{"long", folder / "long", true}, {"tail", folder / "tail", true}}, sample::date);
        const Content content = read_zip(*disk, zip);
        INFO(less);
        CHECK(content.damage == "");
        REQUIRE(content.entries.size() == 2);
        CHECK(content.entries[0].sha256 == sha256_of(sample::get(folder / "long")));
        CHECK(content.entries[1].sha256 == sha256_of("the second file"));
    }
}

TEST_CASE("data that looks like headers stays as it is") {
    const auto disk = real_disk();
    const TestFolder folder;
    const std::string local = "PK\3\4" + std::string(26, 'x'), central = "PK\1\2" + std::string(42, 'x');
    sample::put(folder / "local", local);
    sample::put(folder / "central", central);
    write_zip(*disk, folder / "o.zip", {{"local", folder / "local", true}, {"central", folder / "central", true}}, sample::date);
    const Content content = read_zip(*disk, folder / "o.zip");
    REQUIRE(content.damage == "");
    CHECK(content.entries[0].sha256 == sha256_of(local));
    CHECK(content.entries[1].sha256 == sha256_of(central));
}

TEST_CASE("names are checked before anything is written") {
    const auto disk = real_disk();
    FaultDisk counted(*disk);
    const TestFolder folder;
    sample::put(folder / "a", "a");
    CHECK_THAT(message_of(counted, folder / "o.zip", {{"../a", folder / "a", true}}), Catch::Contains("'../a'"));
    CHECK_THAT(message_of(counted, folder / "o.zip", {{"A.pdf", folder / "a", true}, {"a.pdf", folder / "a", true}}), Catch::Contains("A.pdf"));
    CHECK_THAT(message_of(counted, folder / "o.zip", {{"a", folder / "a", true}, {"a", folder / "a", true}}), Catch::Contains("two files"));
    CHECK_THAT(message_of(counted, folder / "o.zip", {}), Catch::Contains("nothing"));
    CHECK(counted.changes() == 0);
}

TEST_CASE("a bundle that is there is not written over") {
    const auto disk = real_disk();
    const TestFolder folder;
    sample::put(folder / "o.zip", "precious");
    CHECK_THROWS_AS(write_small(*disk, folder, folder / "o.zip"), Fault);
    CHECK(sample::get(folder / "o.zip") == "precious");
}

TEST_CASE("what old unzip programs cannot open is refused before anything is written") {
    // APPNOTE 4.4.1.4: 0xFFFF entries and 0xFFFFFFFF bytes mark a ZIP64 archive.
    const auto disk = real_disk();
    ClaimingDisk claiming(*disk);
    const TestFolder folder;
    const Path zip = folder / "o.zip";
    const auto of_size = [&](std::uint64_t size, bool stored) { return Entry{"a", folder / (std::to_string(size) + ".claim"), stored}; };
    CHECK_THAT(message_of(claiming, zip, {of_size(0xffffffffu, true)}), Catch::Contains("4 GiB"));
    CHECK_THAT(message_of(claiming, zip, {of_size(0xffffffffffffffffu, true)}), Catch::Contains("4 GiB"));
    CHECK_THAT(message_of(claiming, zip, {of_size(0xffffffffu - 22 - 76 - 2, true)}), Catch::Contains("4 GiB"));
    CHECK_THAT(message_of(claiming, zip, {of_size(0xfffffff0u - 4'000'000, false)}), Catch::Contains("4 GiB"));
    std::vector<Entry> many;
    for (int i = 0; i < 0xffff; ++i) many.push_back({"f" + std::to_string(i), folder / "1.claim", true});
    CHECK_THAT(message_of(claiming, zip, many), Catch::Contains("65535"));
    CHECK(claiming.changes() == 0);
}

TEST_CASE("the most entries that old unzip programs open are packed") {
    const auto disk = real_disk();
    ClaimingDisk claiming(*disk);
    const TestFolder folder;
    std::vector<Entry> many;
    for (int i = 0; i < 0xfffe; ++i) many.push_back({"f" + std::to_string(i), folder / "1.claim", true});
    write_zip(claiming, folder / "o.zip", many, sample::date);
    const Content content = read_zip(*disk, folder / "o.zip");
    CHECK(content.damage == "");
    CHECK(content.entries.size() == 0xfffe);
}

TEST_CASE("a file that changes while it is packed is a fault") {
    const auto disk = real_disk();
    const TestFolder folder;
    const auto by = GENERATE(-600'000, -1, 1, 300'000);
    const auto stored = GENERATE(true, false);
    const auto between_opens = GENERATE(true, false);
    ChangingDisk changing(*disk, by, between_opens);
    CHECK_THAT(message_of(changing, folder / "o.zip", {{"a", folder / "changing", stored}}), Catch::Contains("changed while"));
}

TEST_CASE("a missing file is a fault that names it") {
    const auto disk = real_disk();
    const TestFolder folder;
    CHECK_THAT(message_of(*disk, folder / "o.zip", {{"a", folder / "gone", true}}), Catch::Contains("gone"));
}

TEST_CASE("a disk that fails at any write leaves a fault and no bundle") {
    const auto disk = real_disk();
    const TestFolder folder;
    std::vector<Entry> entries = sample::small(folder.path());
    sample::put(folder / "long", sample::noise(700'000));
    entries.push_back({"long.pdf", folder / "long", true});
    FaultDisk counted(*disk);
    write_zip(counted, folder / "whole.zip", entries, sample::date);
    REQUIRE(counted.writes() >= 5);  // three full buffers and the rest, one patch, the close
    CHECK(std::any_of(counted.calls().begin(), counted.calls().end(), [](const std::string& call) { return call.starts_with("write_at"); }));
    for (std::size_t n = 1; n <= counted.changes(); ++n) {
        FaultDisk failing(*disk);
        failing.fail_at(n);
        INFO(counted.calls()[n - 1]);
        CHECK_THAT(message_of(failing, folder / "o.zip", entries), Catch::Contains("no space left"));
    }
}
