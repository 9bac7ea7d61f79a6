// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "engine/trace.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace qw::engine {

/// One reason why a step is not as it was.
enum class Cause {
    never_made,  ///< nothing is remembered of it
    step,        ///< it is another step now: its static key
    file,        ///< the bytes of a file, or that it is gone
    folder,      ///< the names in a folder, or that it is gone
    appeared,    ///< something is there that was not
    value,       ///< a value inside a file, or that it is gone
    made,        ///< what an earlier step made
    output       ///< what it made itself is no longer in the store
};
struct Difference {
    Cause cause = Cause::file;
    std::string name;      ///< of the file, folder or output; empty for `never_made` and `step`
    std::string path;      ///< value: its place inside the file
    std::string old, now;  ///< value: as told, shortened; else digests; empty: not there
    int line = 0;          ///< value: where it is written now
};

/// What an earlier step made under a name.
struct Earlier {
    std::optional<FileDigest> digest;  ///< nothing: no step made it
    bool certain = true;               ///< false: a step that has yet to run may make something else
};
using EarlierMade = std::function<Earlier(const std::string& name)>;

/// A step held against what is remembered of it.
struct Comparison {
    std::optional<LogEntry> before;
    std::vector<Difference> differences;  ///< empty: the step is current, or only `may` differ
    bool may = false;                     ///< it reads something that a step that has yet to run may make anew
    bool reads_differ = false;            ///< in what is told and decides nothing: the line, or the file around a value
    std::vector<Read> reads;              ///< when they do: as they are now
};
Comparison compare(std::optional<LogEntry> before, const std::string& key, Digests& digests, const Store& store, const Values& values, const EarlierMade& made);

}  // namespace qw::engine
