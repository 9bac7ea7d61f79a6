// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/source.h"
#include "texts/model.h"

#include <map>
#include <string>
#include <vector>

namespace qw::texts {

/// A file of named passages (src/texts/passages.md, format 1): what one sheet says, as data. Holds the raw texts;
/// they are rendered when they are asked for.
class Passages {
public:
    /// Throws Fault (not_understood) with every fault: no or another format number, a doubled or bad name, words before
    /// the first name.
    static Passages read(const std::string& text, const std::string& shown_file);

    bool has(const std::string& name) const { return passages_.contains(name); }
    /// A passage as one line: its lines joined by spaces. Throws Fault when the file has no such passage, and as `render`.
    std::string line(const std::string& name, const Model& model = {}) const;
    /// A passage as paragraphs, which empty lines part; each is one line. A passage that renders to nothing has none.
    std::vector<std::string> paragraphs(const std::string& name, const Model& model = {}) const;

private:
    struct Passage {
        std::string text;
        int first_line = 0;
    };
    std::string shown_file_;
    std::map<std::string, Passage> passages_;
};

}  // namespace qw::texts
