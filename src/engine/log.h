// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"
#include "engine/digests.h"

#include <cstdint>
#include <deque>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace qw::engine {

enum class ReadKind {
    file,     ///< the bytes of a file
    folder,   ///< the names in a folder
    missing,  ///< that neither file nor folder was there
    value,    ///< a value inside a file
    made      ///< what an earlier step made, by its name
};

/// One thing that a step read while it ran.
struct Read {
    ReadKind kind = ReadKind::file;
    std::string name;    ///< of the file, folder or output; of a value, the file that holds it
    std::string digest;  ///< SHA-256 of the bytes, the names or the value's text, in hex; empty: not there
    std::string path;    ///< value: its place inside the file
    std::string text;    ///< value: as it is told, shortened
    std::string source;  ///< value: digest of the whole file it was read from; while that is equal, so is the value
    int line = 0;        ///< value: where it was written; told, never part of a digest
    friend bool operator==(const Read&, const Read&) = default;
};

struct Output {
    std::string name;
    FileDigest digest;
};

/// What is remembered of a step that succeeded. Without a step's name it only brings stat lines.
struct LogEntry {
    std::string step;
    std::string key;  ///< digest of all that the step is, but for what it reads
    std::vector<Read> reads;
    std::vector<Output> outputs;
    std::vector<StatLine> stats;
};

/// At most 200 characters (own limit) of a value's text, the last of them an ellipsis when there were more.
std::string shortened(std::string_view text);

/// The steps that succeeded, in one file that is only appended to (src/engine/log.md). Of several entries for a step the last
/// one counts. A tail that was torn off is dropped. Losing the file costs time, nothing else. Safe for several jobs at once; that
/// only one run writes is seen to by who calls (Disk::lock).
class Log {
public:
    /// A place in the file from which on nothing was believed when it was read, though whole entries follow it.
    struct Damage {
        std::uint64_t offset = 0, bytes = 0;
    };

    /// Reads the file; a missing one is empty. Throws Fault (not_carried_out, "newer-log") for a file of a newer version, which is
    /// left as it is. Writes nothing. `disk` must live longer.
    Log(Disk& disk, const Path& file);
    /// What was appended stays written, but only `close` promises that it survives a power cut.
    ~Log() = default;
    Log(const Log&) = delete;
    Log& operator=(const Log&) = delete;

    std::optional<LogEntry> find(const std::string& step) const;
    std::vector<StatLine> stats() const;
    const std::optional<Damage>& damage() const { return damage_; }

    /// To be called after the step's success. What was not believed is cut off first; when more than half of the file is
    /// superseded it is written anew beside and renamed. Throws Fault; the entry then counts as not appended, and what the file
    /// held before is still believed.
    void append(const LogEntry& entry);
    /// Syncs and closes; `append` opens again.
    void close();

    static constexpr std::uint64_t largest = std::uint64_t{1} << 30;  ///< bytes of the file; own limit
    static constexpr std::uint64_t smallest = 1 << 14;                ///< bytes below which writing anew saves nothing; own limit

private:
    /// A step's body without its stat lines. This and the maps' keys lie inside `texts_`, as they are written there: only what is
    /// asked for is taken apart.
    struct Step {
        std::string_view body;
        std::uint64_t bytes = 0;
    };

    void read(std::string text);
    void take_in(std::string_view body, std::uint64_t bytes);
    void take_in_stats(std::string_view lines);
    void write(const std::string& bytes);
    void write_anew();

    Disk& disk_;
    Path file_;
    mutable std::mutex mutex_;
    std::deque<std::string> texts_;  ///< the file, then what was appended
    std::unordered_map<std::string_view, Step> steps_;
    std::unordered_map<std::string_view, std::string_view> stats_;  ///< lines by name
    std::uint64_t end_ = 0;  ///< bytes of the file that are believed
    std::uint64_t superseded_ = 0;
    std::optional<Damage> damage_;
    std::unique_ptr<Sink> sink_;
};

}  // namespace qw::engine
