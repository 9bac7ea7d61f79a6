// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

// Test code is compiled once and linked with and without sanitizers, so it asks when it runs.
extern "C" {
void __lsan_disable(void) __attribute__((weak));
void __lsan_enable(void) __attribute__((weak));
}

namespace qw::test {

/// True in the program that runs under AddressSanitizer.
inline bool sanitized() { return &__lsan_disable != nullptr; }

/// What is lost while this lives is not counted as a leak.
class NoLeakCheck {
public:
    NoLeakCheck() {
        if (sanitized()) __lsan_disable();
    }
    ~NoLeakCheck() {
        if (sanitized()) __lsan_enable();
    }
    NoLeakCheck(const NoLeakCheck&) = delete;
    NoLeakCheck& operator=(const NoLeakCheck&) = delete;
};

}  // namespace qw::test
