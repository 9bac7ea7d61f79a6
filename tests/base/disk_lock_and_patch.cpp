// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/disk.h"

#include "base/fault.h"
#include "support/fault_disk.h"

#include <catch2/catch.hpp>

#include <csignal>
#include <sys/wait.h>
#include <unistd.h>

using namespace qw;
using test::TestFolder;

namespace {

std::span<const std::byte> bytes_of(std::string_view text) { return std::as_bytes(std::span(text.data(), text.size())); }

std::string code_of_lock(Disk& disk, const Path& path) {
    try {
        const auto lock = disk.lock(path);
        return "";
    } catch (const Fault& fault) {
        return fault.notes().front().code;
    }
}

}  // namespace

TEST_CASE("a file is patched where it was written, and its end stays") {
    const auto disk = real_disk();
    const TestFolder folder;
    const auto sink = disk->create(folder / "a");
    sink->write("high water at nine");
    sink->write_at(14, bytes_of("four"));
    sink->write_at(0, bytes_of("HIGH"));
    sink->write_at(18, {});
    sink->write(" o'clock");
    sink->close();
    CHECK(read_text(*disk, folder / "a", 100) == "HIGH water at four o'clock");
}

TEST_CASE("nothing is patched beyond the end of a file") {
    const auto disk = real_disk();
    const TestFolder folder;
    const auto sink = disk->create(folder / "a");
    sink->write("ebb");
    CHECK_THROWS_AS(sink->write_at(2, bytes_of("xx")), Fault);
    CHECK_THROWS_AS(sink->write_at(4, {}), Fault);
    CHECK_THROWS_AS(sink->write_at(~std::uint64_t{0}, bytes_of("x")), Fault);
    sink->close();
    CHECK(read_text(*disk, folder / "a", 100) == "ebb");
}

TEST_CASE("a lock has one holder, in this process too, and is free again when that ends") {
    const auto disk = real_disk();
    const TestFolder folder;
    {
        const auto lock = disk->lock(folder / ".lock");
        CHECK(code_of_lock(*disk, folder / ".lock") == "in-use");
        CHECK(code_of_lock(*disk, folder / ".other") == "");
    }
    CHECK(code_of_lock(*disk, folder / ".lock") == "");
    CHECK(code_of_lock(*disk, folder / "gone" / ".lock") == "disk");
    std::filesystem::create_symlink("elsewhere", folder / "link");
    CHECK(code_of_lock(*disk, folder / "link") == "disk");
    CHECK_FALSE(std::filesystem::exists(folder / "elsewhere"));
}

TEST_CASE("a lock is free when the process that held it was killed") {
    const auto disk = real_disk();
    const TestFolder folder;
    int pipe[2];
    REQUIRE(::pipe(pipe) == 0);
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        const auto lock = disk->lock(folder / ".lock");
        const bool told = ::write(pipe[1], "x", 1) == 1;
        for (; told;) ::pause();
        ::_exit(1);
    }
    ::close(pipe[1]);
    char held = 0;
    CHECK(::read(pipe[0], &held, 1) == 1);
    ::close(pipe[0]);
    CHECK(code_of_lock(*disk, folder / ".lock") == "in-use");
    ::kill(child, SIGKILL);
    int status = 0;
    ::waitpid(child, &status, 0);
    CHECK(WIFSIGNALED(status));
    CHECK(code_of_lock(*disk, folder / ".lock") == "");
}
