// SPDX-License-Identifier: GPL-3.0-or-later
#include "texts/plain_line.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace qw::texts {

namespace {

using Change = std::pair<std::string_view, std::string_view>;

/// Typed by hand, by a word processor, or by a shop's editor: the same character in several dresses.
constexpr std::array<Change, 41> changes{{
    {"\u2018", "'"}, {"\u2019", "'"}, {"\u02bc", "'"}, {"\u2032", "'"}, {"\u201c", "\""}, {"\u201d", "\""}, {"\u201e", "\""}, {"\u2033", "\""},
    {"\u00d7", "x"}, {"\u2715", "x"}, {"\u2010", "-"}, {"\u2011", "-"}, {"\u2012", "-"}, {"\u2013", "-"}, {"\u2212", "-"}, {"\u2014", " - "},
    {"\u00a0", " "}, {"\u2009", " "}, {"\u202f", " "}, {"\u2007", " "}, {"\u200a", " "}, {"\t", " "},
    {"\u200b", ""}, {"\u2060", ""}, {"\ufeff", ""}, {"\u00ad", ""}, {"\ufe0f", ""},
    {"\u00bd", " 1/2"}, {"\u00bc", " 1/4"}, {"\u00be", " 3/4"}, {"\u215b", " 1/8"}, {"\u215c", " 3/8"}, {"\u215d", " 5/8"}, {"\u215e", " 7/8"},
    {"\u2153", " 1/3"}, {"\u2154", " 2/3"}, {"\u2044", "/"}, {"\u00b2", "2"}, {"\u2248", "~"}, {"\u2011", "-"}, {"\u2026", ". "}}};

std::string changed(const std::string& line) {
    std::string plain;
    plain.reserve(line.size());
    for (std::size_t i = 0; i < line.size();) {
        const auto found = std::find_if(changes.begin(), changes.end(),
                                        [&](const Change& change) { return line.compare(i, change.first.size(), change.first) == 0; });
        if (found != changes.end()) {
            plain += found->second;
            i += found->first.size();
        } else {
            plain += line[i] >= 'A' && line[i] <= 'Z' ? static_cast<char>(line[i] + 32) : line[i];
            ++i;
        }
    }
    return plain;
}

}  // namespace

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines(1);
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] == '\n' || text[i] == '\r') {
            if (text[i] == '\r' && i + 1 < text.size() && text[i + 1] == '\n') ++i;
            lines.emplace_back();
        } else {
            lines.back() += text[i];
        }
    }
    return lines;
}

std::string plain_line(const std::string& line) {
    const std::string all = changed(line);
    std::string plain;
    plain.reserve(all.size());
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (all[i] != '*' && all[i] != '`' && all[i] != '_') plain += all[i];
        else if (all[i] == '*' && i > 0 && i + 1 < all.size() && is_digit(all[i - 1]) && is_digit(all[i + 1])) plain += 'x';
    }
    return plain;
}

}  // namespace qw::texts
