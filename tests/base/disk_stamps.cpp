// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/disk.h"

#include "base/fault.h"
#include "support/fault_disk.h"

#include <catch2/catch.hpp>

#include <fcntl.h>
#include <sys/stat.h>

using namespace qw;
using test::FaultDisk;
using test::TestFolder;

TEST_CASE("a file's stamps tell its bytes' last change, its names and whether it is still the same file") {
    const auto disk = real_disk();
    const TestFolder folder;
    const std::int64_t before = disk->now();
    write_file(*disk, folder / "a", "abc");
    const FileStat written = *disk->stat(folder / "a");
    CHECK(written.mtime >= before);
    CHECK(written.ctime >= before);
    CHECK(written.mtime - disk->now() < 1'000'000'000);  // a tick, that is; no kernel's is as long as a second
    CHECK(written.links == 1);
    // 2020-01-02 03:04:05.678901234 UTC is 1577934245 s after the epoch (date -u -d … +%s).
    const timespec times[2] = {{0, UTIME_OMIT}, {1577934245, 678901234}};
    REQUIRE(::utimensat(AT_FDCWD, (folder / "a").c_str(), times, 0) == 0);
    CHECK(disk->stat(folder / "a")->mtime == 1577934245678901234);
    CHECK(disk->stat(folder / "a")->ctime >= written.ctime);
    disk->link(folder / "a", folder / "b");
    CHECK(disk->stat(folder / "b")->links == 2);
    CHECK(disk->stat(folder / "b")->inode == written.inode);
    CHECK(disk->stat(folder / "b")->device == written.device);
    write_file(*disk, folder / "c", "abc");
    CHECK(disk->stat(folder / "c")->inode != written.inode);
}

TEST_CASE("a file is written on from any length that it has") {
    const auto disk = real_disk();
    const TestFolder folder;
    const auto extend = [&](std::uint64_t length, std::string_view text) {
        const auto sink = disk->extend(folder / "a", length);
        sink->write(text);
        sink->close();
        return read_text(*disk, folder / "a", 100);
    };
    CHECK(extend(0, "0123456789") == "0123456789");
    CHECK(extend(10, "ab") == "0123456789ab");
    CHECK(extend(4, "x") == "0123x");
    CHECK(extend(0, "") == "");
    CHECK_THROWS_AS(extend(1, "y"), Fault);
    const auto sink = disk->extend(folder / "a", 0);
    sink->write("abc");
    sink->write_at(1, std::as_bytes(std::span("X", 1)));
    CHECK_THROWS_AS(sink->write_at(3, std::as_bytes(std::span("Y", 1))), Fault);
    CHECK(read_text(*disk, folder / "a", 100) == "aXc");
}

TEST_CASE("a copy is another file with the same bytes, with shared blocks or without; a name that is taken stays") {
    const auto disk = real_disk();
    const TestFolder folder;
    const std::string text(1'000'000, 'q');
    write_file(*disk, folder / "a", text);
    copy_file(*disk, folder / "a", folder / "b");
    CHECK(read_text(*disk, folder / "b", 2'000'000) == text);
    CHECK(disk->stat(folder / "b")->inode != disk->stat(folder / "a")->inode);
    write_file(*disk, folder / "taken", "old");
    CHECK_THROWS_AS(copy_file(*disk, folder / "a", folder / "taken"), Fault);
    CHECK(read_text(*disk, folder / "taken", 10) == "old");
    CHECK_THROWS_AS(copy_file(*disk, folder / "none", folder / "new"), Fault);
    if (disk->clone(folder / "a", folder / "c")) CHECK(read_text(*disk, folder / "c", 2'000'000) == text);
    else CHECK_FALSE(disk->stat(folder / "c"));
    CHECK_THROWS_AS(disk->clone(folder / "a", folder / "taken"), Fault);
    CHECK(read_text(*disk, folder / "taken", 10) == "old");
}

TEST_CASE("a sealed file cannot be written by anyone, and can be read, linked and removed") {
    const auto disk = real_disk();
    const TestFolder folder;
    write_file(*disk, folder / "a", "abc");
    disk->seal(folder / "a");
    struct stat st {};
    REQUIRE(::stat((folder / "a").c_str(), &st) == 0);
    CHECK((st.st_mode & 0777) == 0444);
    CHECK(read_text(*disk, folder / "a", 10) == "abc");
    disk->link(folder / "a", folder / "b");
    disk->remove(folder / "a");
    CHECK(read_text(*disk, folder / "b", 10) == "abc");
    CHECK_THROWS_AS(disk->seal(folder / "none"), Fault);
}
