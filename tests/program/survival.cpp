// SPDX-License-Identifier: GPL-3.0-or-later
#include "program/program.h"

#include "base/fault.h"
#include "release/release.h"

#include <catch2/catch.hpp>

#include <csignal>
#include <sys/wait.h>
#include <unistd.h>

using namespace qw;
using namespace qw::test;

namespace {

/// Starts the program and kills it after a while; true if it was still running then.
bool killed_after(const std::vector<std::string>& arguments, int milliseconds) {
    const pid_t child = ::fork();
    if (child == 0) {
        std::vector<char*> argv{const_cast<char*>(program.c_str())};
        for (const std::string& argument : arguments) argv.push_back(const_cast<char*>(argument.c_str()));
        argv.push_back(nullptr);
        std::freopen("/dev/null", "w", stdout);
        ::execv(program.c_str(), argv.data());
        ::_exit(127);
    }
    ::usleep(static_cast<useconds_t>(milliseconds) * 1000);
    const bool running = ::kill(child, SIGKILL) == 0 && ::waitpid(child, nullptr, 0) == child;
    return running;
}

release::Order order_for(const Path& kit, const Path& out) {
    release::Order order;
    order.kit = kit;
    order.pipeline = source_folder / "pipeline";
    order.out = out;
    order.tool = "test";
    return order;
}

}  // namespace

TEST_CASE("a killed run leaves the previous release whole, and the next one works", "[survival]") {
    TestFolder folder;
    REQUIRE(quirewright("begin kit", folder.path()).status == 0);
    REQUIRE(quirewright("release kit --out out", folder.path()).status == 0);
    const auto before = digests_below(folder / "out/kit/1.0.0");
    replace_in(folder / "kit/kit.yaml", "title: \"Kit\"", "title: \"Another\"");
    for (const int after : {5, 60, 150, 300, 500, 800}) {
        killed_after({"release", (folder / "kit").string(), "--out", (folder / "out").string()}, after);
        const auto now = digests_below(folder / "out/kit/1.0.0");
        if (now != before) {
            // It was done before the signal came: then all of it is the new release.
            CHECK(run("sha256sum -c --quiet contents.txt", folder / "out/kit/1.0.0").status == 0);
            break;
        }
    }
    CHECK(quirewright("release kit --out out", folder.path()).status == 0);
    CHECK(digests_below(folder / "out/kit/1.0.0") != before);
    CHECK(run("sha256sum -c --quiet contents.txt", folder / "out/kit/1.0.0").status == 0);
    CHECK(run("ls -A out/kit", folder.path()).text == ".lock\n1.0.0\n");
}

TEST_CASE("a disk that fills up at any moment of a release leaves the previous one whole", "[survival]") {
    TestFolder folder;
    REQUIRE(quirewright("begin kit", folder.path()).status == 0);
    const auto disk = real_disk();
    release::Progress progress;
    const release::Order order = order_for(folder / "kit", folder / "out");
    FaultDisk counting(*disk);
    REQUIRE(release::release(counting, order, progress).published);
    const auto before = digests_below(folder / "out/kit/1.0.0");
    replace_in(folder / "kit/kit.yaml", "title: \"Kit\"", "title: \"Another\"");
    // Every call near the end, where the release is shown, and a spread over all that comes before.
    const std::size_t all = counting.changes();
    std::vector<std::size_t> moments;
    for (std::size_t n = 1; n <= all; n += std::max<std::size_t>(1, all / 5)) moments.push_back(n);
    for (std::size_t n = all > 10 ? all - 10 : 1; n <= all; ++n) moments.push_back(n);
    for (const std::size_t n : moments) {
        INFO("change " << n << " of " << all);
        FaultDisk failing(*disk);
        failing.fail_at(n);
        bool published = false;
        try {
            published = release::release(failing, order, progress).published;
        } catch (const Fault& fault) {
            CHECK(fault.kind() == FaultKind::not_carried_out);
        }
        const auto now = digests_below(folder / "out/kit/1.0.0");
        if (now == before) continue;
        // What is shown is whole, whether or not tidying up behind it has failed.
        CHECK(run("sha256sum -c --quiet contents.txt", folder / "out/kit/1.0.0").status == 0);
        CHECK((published || n + 6 > all));
    }
}

TEST_CASE("a full disk is told with the file and ends with 3", "[survival]") {
    // A file-size limit stands in for a full disk: the same refused write, from the system itself.
    TestFolder folder;
    REQUIRE(quirewright("begin kit", folder.path()).status == 0);
    const Said said = run("trap '' XFSZ; ulimit -f 16; " + quoted(program) + " release kit --out out --json 2>/dev/null", folder.path());
    CHECK(said.status == 3);
    const nlohmann::json answer = nlohmann::json::parse(said.text, nullptr, false);
    REQUIRE_FALSE(answer.is_discarded());
    CHECK_FALSE(answer["faults"][0]["file"].get<std::string>().empty());
    CHECK_FALSE(std::filesystem::exists(folder / "out/kit/1.0.0"));
}
