// SPDX-License-Identifier: GPL-3.0-or-later
#include "formulas/names.h"

#include "formulas/asked.h"
#include "formulas/scan.h"

#include <algorithm>

namespace qw::formulas {

namespace {

bool can_be_written(const std::string& word) {
    const auto fits = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_'; };
    return !word.empty() && word[0] >= 'a' && word[0] <= 'z' && std::all_of(word.begin(), word.end(), fits);
}

bool is_function(const std::string& word) {
    const std::vector<std::string>& names = function_names();
    return std::find(names.begin(), names.end(), word) != names.end();
}

}  // namespace

void Names::add(const std::string& name, const SourceMark& mark, std::vector<FaultNote>& notes) {
    const std::string word = formula_name(name);
    if (!can_be_written(word))
        notes.push_back({"formula-name", mark, "'" + name + "' cannot be written in a formula", "a name that begins with a letter", {}});
    else if (find(word) || is_function(word))
        notes.push_back({"formula-name-twice", mark, "'" + name + "' is already the name of something else", {}, "give it another name"});
    words_.push_back(word);
}

std::optional<std::size_t> Names::find(const std::string& word) const {
    const auto found = std::find(words_.begin(), words_.end(), word);
    if (found == words_.end()) return std::nullopt;
    return static_cast<std::size_t>(found - words_.begin());
}

}  // namespace qw::formulas
