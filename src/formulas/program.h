// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "formulas/scan.h"
#include "formulas/names.h"

#include <cstddef>
#include <memory>
#include <vector>

namespace qw::formulas {

/// A formula made ready to be evaluated often. The only place that knows muParser, which is given our functions and
/// signs and nothing of its own, so that formulas can do what formulas.md says and no more.
class Program {
public:
    /// Reads values from `slots`, which must keep its place while the program lives. Throws Fault for an unknown
    /// name (with the nearest word) or words that make no sense together.
    Program(const Asked& asked, const Names& names, const std::vector<double>& slots);
    Program(Program&&) noexcept;
    Program& operator=(Program&&) noexcept;
    ~Program();

    /// The slots that the formula reads, each once.
    const std::vector<std::size_t>& uses() const { return uses_; }

    /// Throws Fault when a step on the way is not finite: a division by nothing, a root of less than nothing.
    /// Comparisons take values within 1e-9 of each other as equal, ceil and floor take them as whole, because the
    /// values went through several sums.
    double run() const;

private:
    class Parser;

    Asked asked_;
    std::vector<std::size_t> uses_;
    std::unique_ptr<Parser> parser_;
};

}  // namespace qw::formulas
