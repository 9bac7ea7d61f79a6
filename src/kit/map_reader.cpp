// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/map_reader.h"

#include "base/words.h"
#include "kit/node_kind.h"

#include <algorithm>

namespace qw::kit {

MapReader::MapReader(const Node& map, Faults& faults, std::string subject) : map_(map), faults_(faults), subject_(std::move(subject)) {
    is_map(map, faults, "key: value");
}

const Entry* MapReader::entry(const std::string& key) const {
    const auto found = std::find_if(map_.entries.begin(), map_.entries.end(), [&](const Entry& e) { return e.key == key; });
    return found == map_.entries.end() ? nullptr : &*found;
}

const Node* MapReader::optional(const std::string& key) {
    asked_.push_back(key);
    const Entry* found = entry(key);
    if (!found || found->value.kind == Node::Kind::refused) return nullptr;
    if (found->value.kind == Node::Kind::nothing) {
        faults_.add("missing-value", found->mark, "nothing is written after " + in_quotes(key), "a value", "write one, or remove the key");
        return nullptr;
    }
    return &found->value;
}

const Node* MapReader::required(const std::string& key) {
    if (!has(key)) missing_.push_back(key);
    return optional(key);
}

bool MapReader::blank(const std::string& key) {
    const Entry* found = entry(key);
    if (!found || found->value.kind != Node::Kind::nothing) return false;
    asked_.push_back(key);
    return true;
}

SourceMark MapReader::mark_of(const std::string& key) const {
    const Entry* found = entry(key);
    return found ? found->mark : map_.mark;
}

void MapReader::forbid(const std::string& key, const std::string& why, const std::string& mend) {
    asked_.push_back(key);
    if (const Entry* found = entry(key)) faults_.add("not-here", found->mark, in_quotes(key) + " cannot stand here: " + why, "", mend);
}

/// Returns the keys that were probably meant, so that they are not told to be missing as well.
std::set<std::string> MapReader::tell_unknown(const std::vector<std::string>& elsewhere, const std::string& where_else) {
    std::set<std::string> meant;
    for (const Entry& e : map_.entries) {
        if (std::find(asked_.begin(), asked_.end(), e.key) != asked_.end()) continue;
        std::vector<std::string> free;  // what stands there already was not meant
        std::copy_if(asked_.begin(), asked_.end(), std::back_inserter(free), [&](const std::string& key) { return !has(key); });
        const auto near = nearest_word(e.key, free);
        const bool misplaced = std::find(elsewhere.begin(), elsewhere.end(), e.key) != elsewhere.end();
        std::string mend = "remove it";
        if (misplaced) mend = "it belongs to " + where_else + ": mind the indentation";
        else if (near) mend = "write '" + *near + "'";
        if (near && !misplaced) meant.insert(*near);
        faults_.add("unknown-key", e.mark, subject_ + " has no key " + in_quotes(e.key), listed(asked_), mend);
    }
    return meant;
}

void MapReader::done(const std::vector<std::string>& elsewhere, const std::string& where_else) {
    if (map_.kind != Node::Kind::map) return;
    const std::set<std::string> meant = tell_unknown(elsewhere, where_else);
    for (const std::string& key : missing_)
        if (!meant.contains(key))
            faults_.add("missing-key", map_.mark, subject_ + " has no " + in_quotes(key), "'" + key + ": …'", "add it");
}

}  // namespace qw::kit
