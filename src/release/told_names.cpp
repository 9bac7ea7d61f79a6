// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/told_names.h"

#include "base/words.h"
#include "texts/plain_line.h"

#include <algorithm>

namespace qw::release {

namespace {

std::string singular(const std::string& word) {
    if (word == "scissors" || word.size() < 3 || !word.ends_with('s') || word.ends_with("ss")) return word;
    return word.substr(0, word.size() - 1);
}

void add_new(std::vector<std::string>& names, std::string name) {
    if (!name.empty() && std::find(names.begin(), names.end(), name) == names.end()) names.push_back(std::move(name));
}

}  // namespace

std::string phrase_of(const std::string& name) {
    std::string phrase = spaced_name(texts::plain_line(name));
    const std::size_t last = phrase.find_last_of(' ');
    const std::size_t start = last == std::string::npos ? 0 : last + 1;
    return phrase.substr(0, start) + singular(phrase.substr(start));
}

std::vector<std::string> names_of_bought(const std::string& title, const std::string& key) {
    std::string core = texts::plain_line(title);
    for (const char* behind : {",", " with ", " or ", " and ", " for ", " about ", " backed ", " by the ", " such as "}) core = core.substr(0, core.find(behind));
    std::vector<std::string> names;
    add_new(names, phrase_of(core));
    const std::string own = phrase_of(key);
    // Keys tell a size or a number that no text has: "elastic-1mm".
    if (std::none_of(own.begin(), own.end(), texts::is_digit)) add_new(names, own);
    return names;
}

std::vector<std::string> loose_names(const std::vector<std::string>& names) {
    std::vector<std::string> loose;
    for (const std::string& name : names) {
        const std::size_t last = name.find_last_of(' ');
        if (last == std::string::npos) continue;
        const std::string word = name.substr(last + 1);
        if (word != "paper" && word != "sheet" && word != "book" && word != "band" && word != "stick") add_new(loose, word);
    }
    return loose;
}

}  // namespace qw::release
