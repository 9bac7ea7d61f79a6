// SPDX-License-Identifier: GPL-3.0-or-later
// Chance that falls alike on every run and every machine: SplitMix64. The standard library's
// distributions differ between implementations, so none is used.
#pragma once

#include <cstdint>

namespace art {

class Chance {
public:
    explicit Chance(std::uint64_t seed) : state_(seed) {}

    // Even in [0, 1).
    double next() {
        state_ += 0x9e3779b97f4a7c15ULL;
        std::uint64_t z = state_;
        z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
        z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
        return static_cast<double>((z ^ (z >> 31)) >> 11) * 0x1.0p-53;
    }
    double between(double low, double high) { return low + (high - low) * next(); }
    int below(int n) { return static_cast<int>(next() * n); }

private:
    std::uint64_t state_;
};

}  // namespace art
