// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/fault.h"

#include <string>
#include <vector>

namespace qw::texts {

/// A Mustache text whose tags carry their own number. The library tells a missing name but not where it stands;
/// with a number for a name, whoever is asked for it can tell the place and what kind of value is wanted.
struct MarkedText {
    struct Tag {
        enum class Kind { variable, section, inverted } kind = Kind::variable;
        std::string name;
        SourceMark mark;
    };
    std::string text;           ///< the tags' names replaced by their index in `tags`
    std::vector<Tag> tags;
    std::vector<FaultNote> faults;
};

MarkedText mark_tags(const std::string& text, const std::string& shown_file, int first_line);

}  // namespace qw::texts
