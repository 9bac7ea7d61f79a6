// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/jobs.h"

#include <algorithm>
#include <exception>
#include <mutex>
#include <system_error>
#include <thread>
#include <vector>

namespace qw::engine {

Jobs::Jobs(unsigned count) : count_(std::max(1u, count)) {}

void Jobs::for_each(std::size_t n, const std::function<void(std::size_t)>& work) const {
    std::mutex mutex;
    std::size_t next = 0, failed_at = n;
    std::exception_ptr failure;
    const auto run = [&] {
        for (;;) {
            std::size_t i;
            {
                const std::lock_guard lock(mutex);
                if (next >= n || failure) return;
                i = next++;
            }
            try {
                work(i);
            } catch (...) {
                const std::lock_guard lock(mutex);
                if (i < failed_at) {
                    failed_at = i;
                    failure = std::current_exception();
                }
            }
        }
    };
    // Indices are handed out in order, so everything below a failing index has begun and its own failure is seen.
    std::vector<std::thread> others;
    try {
        for (std::size_t k = 1; k < std::min<std::size_t>(count_, n); ++k) others.emplace_back(run);
    } catch (const std::system_error&) {  // no more threads to be had: those that run do all the work
    }
    run();
    for (std::thread& thread : others) thread.join();
    if (failure) std::rethrow_exception(failure);
}

}  // namespace qw::engine
