// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/text_rules.h"

#include "base/words.h"
#include "texts/pasted.h"
#include "texts/plain_line.h"

#include <algorithm>
#include <array>
#include <regex>

namespace qw::checks {

namespace {

/// At most so much of what was found stands in the report.
constexpr std::size_t most_shown = 60;

int line_of(const std::string& text, std::size_t at) {
    return static_cast<int>(texts::lines_of(text.substr(0, at)).size());
}

/// Cut at the end of a character.
std::string shortened(std::string text) {
    if (text.size() <= most_shown) return text;
    std::size_t end = most_shown;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xc0) == 0x80) --end;
    return text.substr(0, end) + " …";
}

struct Pattern {
    const char* rule;
    std::regex what;
    const char* message;
    const char* mend;
};

const std::vector<Pattern>& left_over() {
    constexpr auto flags = std::regex::icase | std::regex::optimize;
    static const std::vector<Pattern> patterns{
        {"text-placeholders", std::regex(R"(\{\{[^\n]{0,60}|\}\}|\blorem\s+ipsum\b|\b(todo|tbd|tbc|fixme)\b|\bx{2,4}\b|\?\?\?|\[(insert|your|add|name|number|size|price|link)\b[^\n]{0,40}|<(insert|your|add)\b[^\n]{0,40})", flags),
         "Something that was to be filled in is still there", "Write what belongs there, or take it out"},
        {"text-private", std::regex(R"((^|[^a-z0-9])(file://|/(home|Users|mnt|Volumes|tmp)/|[a-z]:\\|\\\\[a-z0-9])[^\s]{0,60})", flags), "A path of somebody's machine stands in the text", "Take it out"},
        {"text-private", std::regex(R"([a-z0-9._%+-]{1,64}@[a-z0-9-]{1,63}(\.[a-z0-9-]{1,63}){0,4}\.[a-z]{2,24}\b)", flags), "An address stands in the text; shops have their own way for buyers to write",
         "Take it out, or point to the shop's messages"}};
    return patterns;
}

/// The title that the text itself has: its first line with words, when that is marked as one.
std::string title_in(const std::string& text, int* line) {
    *line = 0;
    for (const std::string& raw : texts::lines_of(text)) {
        ++*line;
        const std::string words = raw.starts_with("\ufeff") ? raw.substr(3) : raw;
        const std::size_t start = words.find_first_not_of(" \t");
        if (start == std::string::npos) continue;
        const std::string rest = words.substr(start);
        for (const char* mark : {"# ", "Title: ", "TITLE: ", "title: "})
            if (rest.starts_with(mark)) return rest.substr(std::string(mark).size());
        return "";
    }
    return "";
}

std::size_t measured(const std::string& text, const kit::TextLimit& limit) { return limit.in_bytes ? text.size() : characters_in(text, text.size()); }

void check_length(const Rules& rules, const std::string& rule, const std::optional<kit::TextLimit>& limit, const std::string& text,
                  const std::string& what, const std::string& file, int line, Findings& findings) {
    if (!limit) return;
    rules.tried(rule);
    const std::size_t length = measured(text, *limit);
    if (length <= static_cast<std::size_t>(limit->most)) return;
    const std::string unit = limit->in_bytes ? " bytes" : " characters";
    rules.say(findings, {rule, Level::error, file, 0, line, std::to_string(length) + unit, limit->text(), what + " is longer than the shop takes",
                         "Shorten it by " + std::to_string(length - static_cast<std::size_t>(limit->most)) + unit});
}

}  // namespace

bool check_text_bytes(const Rules& rules, const std::string& bytes, const std::string& file, Findings& findings) {
    rules.tried("text-characters");
    if (const auto bad = bad_utf8_at(bytes)) {
        rules.say(findings, {"text-characters", Level::error, file, 0, line_of(bytes, *bad), "byte " + std::to_string(*bad + 1), "UTF-8",
                             "The text is not UTF-8, so letters beyond a to z come out wrong", "Save it as UTF-8 text"});
        return false;
    }
    const auto control = std::find_if(bytes.begin(), bytes.end(), [](char c) {
        return (static_cast<unsigned char>(c) < 0x20 && c != '\n' && c != '\r' && c != '\t') || c == 0x7f;
    });
    const std::size_t lost = bytes.find("\ufffd");
    if (control != bytes.end() || lost != std::string::npos) {
        const std::size_t at = std::min(lost, static_cast<std::size_t>(control - bytes.begin()));
        const std::string what = at == lost ? "a character that was lost (U+FFFD)" : "a control character";
        rules.say(findings, {"text-characters", Level::error, file, 0, line_of(bytes, at), what, "characters that people can read",
                             "The text holds " + what, "Type that place anew"});
    }
    rules.tried("text-empty");
    const bool empty = bytes.find_first_not_of(" \t\r\n") == std::string::npos || bytes == "\ufeff";
    if (empty)
        rules.say(findings, {"text-empty", Level::error, file, 0, 0, "no word", "a text", "There is nothing in the text",
                             "Look whether the right file was named"});
    return !empty;
}

void check_text_left_over(const Rules& rules, const std::string& text, const std::string& file, Findings& findings) {
    rules.tried("text-placeholders");
    rules.tried("text-private");
    int number = 0;
    for (const std::string& line : texts::lines_of(text)) {
        ++number;
        // std::regex goes a level deeper for each character: a line that nobody typed is looked at in part.
        const std::string looked = line.substr(0, 4000);
        for (const Pattern& pattern : left_over()) {
            std::smatch found;
            if (!std::regex_search(looked, found, pattern.what)) continue;
            const std::size_t blank = found.str().find_first_not_of(" \t(\"'");
            rules.say(findings, {pattern.rule, Level::error, file, 0, number, shortened(found.str().substr(blank)), "none", pattern.message, pattern.mend});
        }
    }
}

void check_shop_text(const Rules& rules, const kit::Shop* shop, const std::string& text, const std::string& kit_title, const std::string& file, Findings& findings) {
    if (!shop) return;
    check_length(rules, "shop-text-length", shop->longest_text, text, "The text", file, 0, findings);
    int line = 0;
    const std::string title = title_in(text, &line);
    if (!title.empty()) check_length(rules, "shop-title-length", shop->longest_title, title, "The title in the text", file, line, findings);
    else check_length(rules, "shop-title-length", shop->longest_title, kit_title, "The kit's title", "kit.yaml", 0, findings);
    const std::string plain = texts::plain_words(text);
    for (const kit::Statement& statement : shop->statements) {
        rules.tried("shop-statements");
        const auto stands = [&](const std::string& wording) {
            std::string words = texts::plain_words(wording);
            words.erase(words.find_last_not_of(' ') + 1);
            return plain.find(words) != std::string::npos;
        };
        if (std::any_of(statement.any_of.begin(), statement.any_of.end(), stands)) continue;
        std::vector<std::string> wordings;
        for (const std::string& wording : statement.any_of) wordings.push_back("\"" + wording + "\"");
        rules.say(findings, {"shop-statements", Level::error, file, 0, 0, "no " + spaced_name(statement.name), listed(wordings),
                             "The text does not say what the shop's data ask for: " + spaced_name(statement.name),
                             "Add a sentence with one of the wordings: " + statement.why});
    }
}

}  // namespace qw::checks
