// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"

#include <map>
#include <mutex>
#include <optional>
#include <string>

namespace qw::engine {

/// What earlier runs found out, by key: one file (src/engine/kept.md) that is read at the beginning and, when something
/// changed, written anew at the end. What a run asked for or added is kept on; what it did not ask for only while the file is
/// smaller than `comfortable`. A key says all that the value depends on: digests of the bytes, versions, limits. A file that is missing, torn, damaged, of
/// another format or too large counts as empty: everything is then found out again. Safe for several jobs at once.
class Kept {
public:
    /// Keeps nothing: `find` finds nothing, `save` writes nothing.
    Kept() = default;
    enum class Use { reading, reading_and_adding };
    /// Reads `file`; an empty path keeps nothing. Throws Fault only when the disk fails.
    Kept(Disk& disk, const Path& file, Use use = Use::reading_and_adding);

    /// Something is known from earlier runs; if not, asking is in vain.
    bool knows() const { return knows_; }
    /// What is added is kept; if not, `add` does nothing.
    bool adds() const { return disk_ != nullptr && use_ == Use::reading_and_adding; }
    std::optional<std::string> find(const std::string& key);
    void add(const std::string& key, std::string value);
    /// Writes what is kept on, unless that is what the file holds already. Throws Fault.
    void save();

    static constexpr std::uint64_t comfortable = std::uint64_t{96} << 20;  ///< bytes of the file
    static constexpr std::uint64_t largest = std::uint64_t{256} << 20;  ///< bytes of the file

private:
    struct Value {
        std::string bytes;
        bool used = false;
    };
    Disk* disk_ = nullptr;
    Path file_;
    std::map<std::string, Value> values_;
    Use use_ = Use::reading_and_adding;
    bool knows_ = false, added_ = false;
    std::mutex mutex_;
};

}  // namespace qw::engine
