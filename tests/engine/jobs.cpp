// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/jobs.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <condition_variable>
#include <functional>
#include <mutex>
#include <stdexcept>
#include <string>
#include <thread>
#include <vector>

using qw::engine::Jobs;

namespace {

/// Lets threads wait until so many of them have come, or a while has passed.
class Meeting {
public:
    explicit Meeting(std::size_t wanted) : wanted_(wanted) {}
    bool come() {
        std::unique_lock lock(mutex_);
        ++here_;
        all_.notify_all();
        return all_.wait_for(lock, std::chrono::seconds(20), [&] { return here_ >= wanted_; });
    }

private:
    std::mutex mutex_;
    std::condition_variable all_;
    std::size_t wanted_, here_ = 0;
};

std::string message_of(const Jobs& jobs, std::size_t n, const std::function<void(std::size_t)>& work) {
    try {
        jobs.for_each(n, work);
    } catch (const std::runtime_error& error) {
        return error.what();
    }
    return "";
}

}  // namespace

TEST_CASE("every index is worked on once, whatever the number of jobs") {
    const unsigned count = GENERATE(1u, 2u, 3u, 8u, 64u);
    for (const std::size_t n : {std::size_t{1}, std::size_t{2}, std::size_t{7}, std::size_t{1000}}) {
        std::vector<std::atomic<int>> seen(n);
        Jobs(count).for_each(n, [&](std::size_t i) { ++seen.at(i); });
        for (std::size_t i = 0; i < n; ++i)
            if (seen[i] != 1) FAIL(count << " jobs, index " << i << " seen " << seen[i] << " times");
    }
}

TEST_CASE("nothing to do is nothing done") {
    Jobs(4).for_each(0, [](std::size_t) { FAIL("there was nothing to do"); });
    CHECK(Jobs(0).count() == 1);
    int seen = 0;
    Jobs(0).for_each(3, [&](std::size_t) { ++seen; });
    CHECK(seen == 3);
}

TEST_CASE("one job works in order, in the calling thread") {
    std::vector<std::size_t> order;
    const auto caller = std::this_thread::get_id();
    Jobs(1).for_each(50, [&](std::size_t i) {
        if (std::this_thread::get_id() != caller) throw std::runtime_error("another thread");
        order.push_back(i);
    });
    REQUIRE(order.size() == 50);
    CHECK(std::is_sorted(order.begin(), order.end()));
}

TEST_CASE("as many work at once as there are jobs, and no more") {
    constexpr unsigned count = 4;
    Meeting all(count);
    std::atomic<unsigned> now = 0, most = 0, met = 0;
    Jobs(count).for_each(40, [&](std::size_t i) {
        unsigned here = ++now, before = most;
        while (here > before && !most.compare_exchange_weak(before, here)) {}
        if (i < count && all.come()) ++met;
        --now;
    });
    CHECK(met == count);
    CHECK(most == count);
}

TEST_CASE("the first failure by index is told, though a later one came first") {
    constexpr std::size_t n = 4;
    // All four begin; the last fails at once, the others only when it has.
    Meeting begun(n);
    std::mutex mutex;
    std::condition_variable failed;
    std::size_t next = n;
    const std::string told = message_of(Jobs(n), n, [&](std::size_t i) {
        if (!begun.come()) throw std::runtime_error("the jobs did not all begin");
        std::unique_lock lock(mutex);
        failed.wait_for(lock, std::chrono::seconds(20), [&] { return next == i + 1; });
        next = i;
        failed.notify_all();
        throw std::runtime_error("index " + std::to_string(i));
    });
    CHECK(told == "index 0");
}

TEST_CASE("what is told does not depend on the number of jobs") {
    const unsigned count = GENERATE(1u, 2u, 5u, 16u);
    for (int round = 0; round < 50; ++round)
        CHECK(message_of(Jobs(count), 100, [](std::size_t i) {
                  if (i % 10 == 3) throw std::runtime_error("index " + std::to_string(i));
              }) == "index 3");
}

TEST_CASE("nothing begins after a failure") {
    std::vector<std::size_t> begun;
    CHECK(message_of(Jobs(1), 10, [&](std::size_t i) {
              begun.push_back(i);
              if (i == 4) throw std::runtime_error("stop");
          }) == "stop");
    CHECK(begun == std::vector<std::size_t>{0, 1, 2, 3, 4});

    // With more jobs, what has begun may end, and no more begins: index 0 fails, and each of the others waits until
    // the failure must have been seen.
    constexpr unsigned count = 3;
    Meeting all(count);
    std::atomic<unsigned> started = 0;
    CHECK(message_of(Jobs(count), 1000, [&](std::size_t i) {
              ++started;
              if (i < count) all.come();
              if (i == 0) throw std::runtime_error("stop");
              std::this_thread::sleep_for(std::chrono::milliseconds(200));
          }) == "stop");
    CHECK(started < 100);
}

TEST_CASE("exceptions of every type come through") {
    CHECK_THROWS_AS(Jobs(2).for_each(5, [](std::size_t i) { if (i == 2) throw 42; }), int);
}

TEST_CASE("jobs within jobs end") {
    std::atomic<int> sum = 0;
    Jobs(3).for_each(5, [&](std::size_t) { Jobs(3).for_each(5, [&](std::size_t) { ++sum; }); });
    CHECK(sum == 25);
}
