// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/set_rules.h"

#include "base/words.h"
#include "checks/said_of_picture.h"

#include <algorithm>
#include <charconv>
#include <map>
#include <set>

namespace qw::checks {

namespace {

/// Longer runs of digits are dates or codes, and count nothing.
constexpr std::size_t most_digits = 6;
/// Numbers that lie far apart are no numbering.
constexpr long most_missing = 4;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// A name parted at its last run of digits: "art/page-", 3, ".png".
struct Numbered {
    std::string before, after;
    long number = 0;
    std::size_t digits = 0;
};
std::optional<Numbered> numbered(const std::string& path) {
    const std::size_t name = path.rfind('/') == std::string::npos ? 0 : path.rfind('/') + 1;
    std::size_t end = std::min(path.rfind('.'), path.size());
    while (end > name && !is_digit(path[end - 1])) --end;
    std::size_t first = end;
    while (first > name && is_digit(path[first - 1])) --first;
    if (first == end || end - first > most_digits) return std::nullopt;
    Numbered one{path.substr(0, first), path.substr(end), 0, end - first};
    std::from_chars(path.data() + first, path.data() + end, one.number);
    return one;
}

std::string name_with(const Numbered& like, long number) {
    std::string digits = std::to_string(number);
    if (digits.size() < like.digits) digits.insert(0, like.digits - digits.size(), '0');
    return like.before + digits + like.after;
}

void check_numbers(const Rules& rules, const FilesOfSet& set, Findings& findings) {
    std::map<std::pair<std::string, std::string>, std::map<long, Numbered>> rows;
    for (const std::string& file : set.files) {
        rules.tried("set-numbering");
        if (const auto one = numbered(file)) rows[{one->before, one->after}].emplace(one->number, *one);
    }
    for (const auto& [name, row] : rows) {
        if (row.size() < 3) continue;
        for (auto next = std::next(row.begin()); next != row.end(); ++next) {
            const auto last = std::prev(next);
            const long missing = next->first - last->first - 1;
            if (missing < 1 || missing > most_missing) continue;
            std::vector<std::string> names;
            for (long number = last->first + 1; number < next->first; ++number) names.push_back(name_with(last->second, number));
            rules.say(findings, of_picture("set-numbering", name_with(next->second, next->first), 0, "after " + name_with(last->second, last->first),
                                           names.front(),
                                           "Between the files of set " + set.set + (set.face.empty() ? "" : ", " + set.face) +
                                               " a number is missing: " + listed(names, "and"),
                                           "Look whether a file was forgotten; else number the files through"));
        }
    }
}

}  // namespace

/// The faces of one part may be alike: its left and right side, its front and back.
void check_sets(const Rules& rules, const std::vector<FilesOfSet>& sets, Findings& findings) {
    std::map<std::string, std::string> shown_by;
    for (const FilesOfSet& set : sets) {
        check_numbers(rules, set, findings);
        for (const std::string& file : set.files) {
            rules.tried("set-shares-file");
            const auto [known, fresh] = shown_by.emplace(file, set.set);
            if (fresh || known->second == set.set) continue;
            rules.say(findings, of_picture("set-shares-file", file, 0, "in " + known->second + " and " + set.set, "in one set",
                                           "Two sets show the same file, so buyers get it twice", "Look whether both patterns were meant to find it"));
        }
    }
}

}  // namespace qw::checks
