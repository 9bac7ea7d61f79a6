// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "engine/digests.h"
#include "engine/log.h"
#include "engine/store.h"

#include <functional>
#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

namespace qw::engine {

/// A value inside a file, as it is now.
struct Value {
    std::string text;
    int line = 0;
};
/// Told by who uses the engine: the value at `path` inside the file `name`, or nothing when it is not there. Asked only when the
/// file is not as it was; must be the value of the bytes that lie there now, and may be asked by several jobs at once.
using Values = std::function<std::optional<Value>(const std::string& name, const std::string& path)>;

/// What earlier steps made that a step may read, by name.
using Made = std::map<std::string, FileDigest>;

/// What a step touches while it runs: all that it reads is asked for here and so recorded, all that it makes is written where
/// `output` says. Safe for several jobs at once.
class Trace {
public:
    Trace(Digests& digests, Store& store, const Values& values, const Made& made) : digests_(digests), store_(store), values_(values), made_(made) {}

    /// A file that must be there: Fault ("missing-file") when it is not.
    Path file(const std::string& name);
    /// A file that may be missing; that it was is recorded, so that its coming is a reason to run again.
    std::optional<Path> file_if_there(const std::string& name);
    /// Names in a folder that must be there, sorted bytewise; Fault ("missing-file").
    std::vector<std::string> folder(const std::string& name);
    std::optional<std::vector<std::string>> folder_if_there(const std::string& name);
    /// The value's text; nothing when it is not in the file, which is recorded as well.
    std::optional<std::string> value(const std::string& name, const std::string& path);
    /// What one of the steps that this one comes after made; to be read only. Fault ("not-made") when none made it.
    Path made(const std::string& name);
    /// Where to write what is to be called `name`; must be a closed file when the step ends.
    Path output(const std::string& name);

    /// After the step: what it read, sorted by kind, name and path. Throws Fault ("changed-meanwhile") when something of it is not as
    /// it was read: what was made of it may be of both.
    std::vector<Read> reads() const;
    /// After the step: takes what it made into the store. Throws Fault ("not-made") when a file was not written.
    std::vector<Output> put_outputs();

private:
    using Key = std::tuple<ReadKind, std::string, std::string>;
    void record(Read read);

    Digests& digests_;
    Store& store_;
    const Values& values_;
    const Made& made_;
    mutable std::mutex mutex_;
    std::map<Key, Read> reads_;
    std::map<std::string, Path> outputs_;
};

/// The value as it is recorded; also how it is compared later.
Read read_of(const std::string& name, const std::string& path, const std::string& source, const std::optional<Value>& value);

}  // namespace qw::engine
