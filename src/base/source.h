// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <utility>

namespace qw {

/// Where something was written: a file as the user knows it (relative to the kit or the pipeline), line and column
/// counted from 1, columns in characters, not bytes; 0 when unknown.
struct SourceMark {
    std::string file;
    int line = 0;
    int column = 0;
};

/// A value that remembers where it was written.
template <typename T>
struct Sourced {
    T value{};
    SourceMark mark;

    const T& operator*() const { return value; }
    const T* operator->() const { return &value; }
};

}  // namespace qw
