// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/progress.h"

#include <spdlog/spdlog.h>

#include <cstdio>
#include <unistd.h>

namespace qw::cli {

TerminalProgress::TerminalProgress() : on_terminal_(::isatty(STDERR_FILENO) == 1), start_(std::chrono::steady_clock::now()), last_(start_) {}

TerminalProgress::~TerminalProgress() {
    if (shown_) std::fputs("\r\033[K", stderr);
}

void TerminalProgress::begin(const std::string& what, std::size_t steps) {
    const std::lock_guard lock(mutex_);
    what_ = what;
    steps_ = steps;
    done_ = 0;
    spdlog::debug("{} ({})", what, steps);
    show();
}

void TerminalProgress::step() {
    const std::lock_guard lock(mutex_);
    ++done_;
    show();
}

void TerminalProgress::show() {
    using namespace std::chrono_literals;
    const auto now = std::chrono::steady_clock::now();
    if (!on_terminal_ || now - start_ < 1s || (shown_ && now - last_ < 100ms && done_ != 0)) return;
    last_ = now;
    shown_ = true;
    if (steps_ > 1) std::fprintf(stderr, "\r\033[K%s, %zu of %zu", what_.c_str(), done_, steps_);
    else std::fprintf(stderr, "\r\033[K%s", what_.c_str());
    std::fflush(stderr);
}

}  // namespace qw::cli
