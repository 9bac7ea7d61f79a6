// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "release/order.h"

#include <chrono>
#include <mutex>

namespace qw::cli {

/// One line on a terminal that says what is being done and how far it is; nothing for work shorter than a second,
/// nothing at all when standard error is no terminal.
class TerminalProgress : public release::Progress {
public:
    TerminalProgress();
    ~TerminalProgress() override;
    void begin(const std::string& what, std::size_t steps) override;
    void step() override;

private:
    void show();
    std::mutex mutex_;
    bool on_terminal_, shown_ = false;
    std::chrono::steady_clock::time_point start_, last_;
    std::string what_;
    std::size_t steps_ = 0, done_ = 0;
};

}  // namespace qw::cli
