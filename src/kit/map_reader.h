// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/faults.h"
#include "kit/node.h"

#include <set>
#include <string>
#include <utility>
#include <vector>

namespace qw::kit {

/// Reads one map of a file. Each key is asked for by name; `done` then tells the keys that nobody asked for, with the
/// nearest that was, and the required ones that are missing. A value that is wrong is told and left at its default.
/// Over anything but a map it tells that once and has no keys.
class MapReader {
public:
    /// `subject` stands in messages: "the set 'tags'", "the manifest".
    MapReader(const Node& map, Faults& faults, std::string subject);

    /// The value of a key, or null when it is missing, was not written or has been refused.
    const Node* optional(const std::string& key);
    const Node* required(const std::string& key);

    /// The same, read by `read(node, faults)`, which returns a std::optional and tells its faults itself. True when
    /// `into` was set.
    template <typename T, typename Read>
    bool optional(const std::string& key, T& into, Read read) {
        return assign(optional(key), into, read);
    }
    template <typename T, typename Read>
    bool required(const std::string& key, T& into, Read read) {
        return assign(required(key), into, read);
    }

    /// Whether the key stands there and nothing is written after it, as in a form; it then counts as asked for.
    bool blank(const std::string& key);
    /// Whether the key stands there, with whatever value.
    bool has(const std::string& key) const { return entry(key) != nullptr; }
    SourceMark mark_of(const std::string& key) const;
    /// Tells that a key cannot stand here, and why; it then counts as asked for.
    void forbid(const std::string& key, const std::string& why, const std::string& mend);
    /// To be called once, last. `elsewhere`: keys that belong to another level of the same file, and its name.
    void done(const std::vector<std::string>& elsewhere = {}, const std::string& where_else = "");

private:
    template <typename T, typename Read>
    bool assign(const Node* node, T& into, Read read) {
        if (!node) return false;
        auto value = read(*node, faults_);
        if (!value) return false;
        into = std::move(*value);
        return true;
    }
    const Entry* entry(const std::string& key) const;
    std::set<std::string> tell_unknown(const std::vector<std::string>& elsewhere, const std::string& where_else);

    const Node& map_;
    Faults& faults_;
    std::string subject_;
    std::vector<std::string> asked_;
    std::vector<std::string> missing_;
};

}  // namespace qw::kit
