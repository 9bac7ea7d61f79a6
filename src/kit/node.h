// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/source.h"

#include <string>
#include <vector>

namespace qw::kit {

struct Entry;

/// One value of a YAML file that has been checked: no aliases, no tags, keys are texts and stand once.
struct Node {
    /// `refused`: a value that has already been told to be wrong; readers pass over it without a word.
    enum class Kind { nothing, text, list, map, refused };
    Kind kind = Kind::nothing;
    std::string text;            ///< of a scalar, as written or as its quotes say; valid UTF-8
    bool quoted = false;         ///< in quotes or a block: a text, whatever it looks like
    SourceMark mark;             ///< of the first character; of the key where no value was written
    std::vector<Node> items;     ///< of a list
    std::vector<Entry> entries;  ///< of a map, in the order written
};

struct Entry {
    std::string key;
    SourceMark mark;  ///< of the key
    Node value;
};

}  // namespace qw::kit
