// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/canvas.h"

#include <algorithm>
#include <sstream>

namespace qw::compose {

namespace {

bool is_unit(const std::string& word) {
    static const std::vector<std::string> units{"mm", "cm", "in", "pt", "%", "g/m²", "lb", "cm²", "sq"};
    return std::any_of(units.begin(), units.end(), [&](const std::string& unit) {
        // With the punctuation that may follow it.
        return word == unit || (word.starts_with(unit) && word.size() == unit.size() + 1 && std::string(",.;:)").find(word.back()) != std::string::npos);
    });
}

bool ends_as_number(const std::string& word) {
    static const std::vector<std::string> inferior{"₀", "₁", "₂", "₃", "₄", "₅", "₆", "₇", "₈", "₉"};
    return (word.back() >= '0' && word.back() <= '9') ||
           std::any_of(inferior.begin(), inferior.end(), [&](const std::string& figure) { return word.ends_with(figure); });
}

/// Words, with what must stay on one line glued together by its spaces.
std::vector<std::string> unbreakable(const std::string& text) {
    std::vector<std::string> glued;
    std::istringstream in(text);
    bool glue_next = false;
    for (std::string word; in >> word;) {
        // "2 of 153 × 216 mm" is one amount.
        const bool times = word == "×" || (word == "of" && !glued.empty() && ends_as_number(glued.back()));
        const bool glue = !glued.empty() && (glue_next || times || (is_unit(word) && ends_as_number(glued.back())));
        if (glue) glued.back() += " " + word;
        else glued.push_back(word);
        glue_next = times;
    }
    return glued;
}

/// As many characters (UTF-8) of a word as fit; at least one.
std::size_t bytes_that_fit(const type::Fonts& fonts, const Setting& setting, Length width, const std::string& word) {
    std::size_t fitting = 0;
    for (std::size_t end = 1; end <= word.size(); ++end) {
        const bool whole = end == word.size() || (static_cast<unsigned char>(word[end]) & 0xC0) != 0x80;
        if (!whole) continue;
        if (fitting > 0 && fonts.width(setting.cut, setting.size, word.substr(0, end)) > width) break;
        fitting = end;
    }
    return fitting;
}

}  // namespace

namespace {

std::vector<std::string> broken(const type::Fonts& fonts, const Setting& setting, Length width, const std::string& words) {
    const auto fits = [&](const std::string& line) { return fonts.width(setting.cut, setting.size, line) <= width; };
    std::vector<std::string> lines;
    std::string line;
    for (std::string word : unbreakable(words)) {
        if (!line.empty() && fits(line + " " + word)) {
            line += " " + word;
            continue;
        }
        if (!line.empty()) lines.push_back(line);
        while (!fits(word)) {
            const std::size_t bytes = bytes_that_fit(fonts, setting, width, word);
            if (bytes == word.size()) break;
            lines.push_back(word.substr(0, bytes));
            word.erase(0, bytes);
        }
        line = word;
    }
    if (!line.empty()) lines.push_back(line);
    return lines;
}

}  // namespace

std::vector<std::string> wrapped(const type::Fonts& fonts, const Setting& setting, Length width, const std::string& words) {
    const auto lines = broken(fonts, setting, width, words);
    // A last line of one short word looks like a slip: a little narrower, the lines before it hand some words down.
    for (const double part : {1.0, 0.97, 0.94, 0.91, 0.88}) {
        const auto narrower = broken(fonts, setting, width * part, words);
        if (narrower.size() != lines.size()) break;
        if (lines.size() < 2 || fonts.width(setting.cut, setting.size, narrower.back()) >= width / 5) return narrower;
    }
    return lines;
}

}  // namespace qw::compose
