// SPDX-License-Identifier: GPL-3.0-or-later
// A real process is killed before each of its system calls, one run a call.
#include "release/publish_sample.h"

#include <catch2/catch.hpp>

#include <csignal>
#include <cstdlib>
#include <sys/ptrace.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace qw;
using release::sample::House;

namespace {

/// The child: waits to be watched, publishes, ends without a destructor of the test's own.
[[noreturn]] void publish_watched(const House& house) {
    if (::ptrace(PTRACE_TRACEME, 0, nullptr, nullptr) != 0) ::_exit(90);
    ::raise(SIGSTOP);
    try {
        house.publish_anew(*real_disk());
    } catch (...) {
        ::_exit(91);
    }
    ::_exit(0);
}

int waited(pid_t child) {
    int status = 0;
    while (::waitpid(child, &status, 0) < 0) {}
    return status;
}

/// Runs a publication and kills it where its n-th system call (from 1) would begin. False when it ended before.
bool killed_at_call(std::size_t n, const House& house) {
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) publish_watched(house);
    int status = waited(child);
    if (!WIFSTOPPED(status)) FAIL("a process cannot be watched here (ptrace); allow it, this test must not be skipped");
    ::ptrace(PTRACE_SETOPTIONS, child, nullptr, PTRACE_O_TRACESYSGOOD | PTRACE_O_EXITKILL);
    // Each call stops the child twice, when it begins and when it has ended.
    for (std::size_t stops = 0;;) {
        ::ptrace(PTRACE_SYSCALL, child, nullptr, nullptr);
        status = waited(child);
        if (WIFEXITED(status)) {
            CHECK(WEXITSTATUS(status) == 0);
            return false;
        }
        if (!WIFSTOPPED(status)) FAIL("the watched process ended by signal " << WTERMSIG(status));
        if (WSTOPSIG(status) != (SIGTRAP | 0x80)) continue;
        if (++stops != 2 * n - 1) continue;
        ::kill(child, SIGKILL);
        waited(child);
        return true;
    }
}

}  // namespace

TEST_CASE("a process killed before any of its system calls leaves the old or the new release whole", "[many]") {
    const bool first = GENERATE(true, false);
    std::size_t old_seen = 0, new_seen = 0;
    for (std::size_t n = 1;; ++n) {
        const House house(first);
        if (!killed_at_call(n, house)) break;
        INFO("call " << n);
        REQUIRE(house.whole());
        (house.is_new() ? new_seen : old_seen) += 1;
        // The next run finds no lock held and tidies up.
        house.publish_anew(*real_disk());
        REQUIRE(house.is_new());
        REQUIRE(house.leftovers() == "");
    }
    CHECK(old_seen > 50);
    CHECK(new_seen > 3);
}
