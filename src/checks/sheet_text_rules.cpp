// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/sheet_text_rules.h"

#include "base/words.h"

#include <algorithm>
#include <cctype>
#include <cstring>
#include <map>
#include <sstream>

namespace qw::checks {

namespace {

/// U+2074 … U+2079 are raised, U+2080 … U+2089 lowered digits, E2 81 B4 … B9 and E2 82 80 … 89 in UTF-8. -1: none of them.
int small_digit(const std::string& character) {
    if (character.size() != 3 || static_cast<unsigned char>(character[0]) != 0xe2) return -1;
    const int last = static_cast<unsigned char>(character[2]);
    switch (static_cast<unsigned char>(character[1])) {
        case 0x81: return last >= 0xb4 && last <= 0xb9 ? last - 0xb0 : -1;
        case 0x82: return last >= 0x80 && last <= 0x89 ? last - 0x80 : -1;
        default: return -1;
    }
}

/// The character of valid UTF-8 that begins there.
std::string character_at(const std::string& text, std::size_t at) {
    const auto lead = static_cast<unsigned char>(text[at]);
    return text.substr(at, lead < 0x80 ? 1 : lead < 0xe0 ? 2 : lead < 0xf0 ? 3 : 4);
}

/// The figures of a text, sorted: runs of digits with what joins them. Raised and lowered digits count as digits and the
/// fraction slash as a slash (Unicode "Superscripts and Subscripts" and U+2044); all else parts them, so that it does not
/// matter by which space a reader of the page tells words apart.
std::vector<std::string> figures_in(const std::string& text) {
    static const std::map<std::string, char> plain{{"\u2070", '0'}, {"\u00b9", '1'}, {"\u00b2", '2'}, {"\u00b3", '3'}, {"\u2044", '/'}};
    std::vector<std::string> figures;
    std::string word;
    const auto end_word = [&] {
        if (std::any_of(word.begin(), word.end(), [](char c) { return c >= '0' && c <= '9'; })) figures.push_back(word);
        word.clear();
    };
    for (std::size_t at = 0; at < text.size();) {
        const std::string character = character_at(text, at);
        at += character.size();
        const auto known = plain.find(character);
        if (known != plain.end()) word += known->second;
        else if (const int digit = small_digit(character); digit >= 0) word += static_cast<char>('0' + digit);
        else if (character.size() == 1 && std::strchr("0123456789./,", character[0])) word += character;
        else end_word();
    }
    end_word();
    std::sort(figures.begin(), figures.end());
    return figures;
}

std::string some(const std::vector<std::string>& words) {
    std::string text;
    for (std::size_t i = 0; i < std::min<std::size_t>(words.size(), 4); ++i) text += (i ? ", " : "") + words[i];
    return words.empty() ? "none" : text + (words.size() > 4 ? " …" : "");
}

/// Letters A to Z without their case, by how often they stand there. A reader of the page
/// may part a ligature or keep it, so ligatures (U+FB00 … U+FB04) count as their letters; figures are asked by themselves.
std::map<std::string, int> letters_in(const std::string& text) {
    static const std::map<std::string, std::string> ligatures{{"\ufb00", "ff"}, {"\ufb01", "fi"}, {"\ufb02", "fl"}, {"\ufb03", "ffi"}, {"\ufb04", "ffl"}};
    std::map<std::string, int> letters;
    for (std::size_t at = 0; at < text.size();) {
        const std::string character = character_at(text, at);
        at += character.size();
        if (character.size() == 1) {
            const char lower = in_lower_case(character)[0];
            if (lower >= 'a' && lower <= 'z') ++letters[std::string(1, lower)];
        } else if (const auto known = ligatures.find(character); known != ligatures.end()) {
            for (const char letter : known->second) ++letters[std::string(1, letter)];
        }
    }
    return letters;
}

std::string letters_beyond(const std::map<std::string, int>& some_letters, const std::map<std::string, int>& others) {
    std::vector<std::string> beyond;
    for (const auto& [letter, times] : some_letters) {
        const auto other = others.find(letter);
        const int more = times - (other == others.end() ? 0 : other->second);
        if (more > 0) beyond.push_back(std::to_string(more) + " x " + letter);
    }
    return some(beyond);
}

/// Where a font's characters cannot be told, fonts-readable says so, and nothing can be said of words.
bool has_readable_fonts(const proof::PageFacts& page) {
    return std::all_of(page.fonts.begin(), page.fonts.end(), [](const proof::FontFact& font) { return font.readable; });
}

/// Without blanks and marks and in lower case: how a reader parts words and lines does not matter.
std::string run_together(const std::string& text) {
    std::string joined;
    for (const char c : in_lower_case(text))
        if (static_cast<unsigned char>(c) >= 0x80 || std::isalnum(static_cast<unsigned char>(c))) joined += c;
    return joined;
}

std::vector<std::string> words_of(const std::string& text) {
    std::istringstream all(text);
    std::vector<std::string> words;
    for (std::string word; all >> word;)
        if (word = run_together(word); !word.empty()) words.push_back(word);
    return words;
}

/// All words of the sentence are there in its order. Columns are read line by line across, so that words of the neighbour
/// stand between.
bool can_be_read(const std::string& sentence, const std::vector<std::string>& read) {
    auto at = read.begin();
    for (const std::string& word : words_of(sentence)) {
        at = std::find(at, read.end(), word);
        if (at == read.end()) return false;
        ++at;
    }
    return true;
}

std::string start_of(const std::string& sentence) {
    constexpr std::size_t most = 60;
    if (sentence.size() <= most) return sentence;
    return sentence.substr(0, sentence.rfind(' ', most)) + " …";
}

Finding fault_of_sheet(const std::string& rule, const std::string& path, int page, std::string measured, std::string limit, std::string message, std::string mend) {
    return {rule, Level::error, path, page, 0, std::move(measured), std::move(limit), std::move(message), std::move(mend)};
}

}  // namespace

void check_sheet_text(const Rules& rules, const compose::Page& plan, const RenderedPage& seen, const std::string& path, Findings& findings) {
    rules.tried("sheet-text-agrees");
    const char* mend = "Check the template, and report it: the finished file is not what was planned.";
    std::string words;
    for (const compose::Item& item : plan.items)
        if (const auto* text = std::get_if<compose::Text>(&item)) words += text->words + "\n";
    const std::vector<std::string> planned = figures_in(words), read = figures_in(seen.text);
    if (planned != read) {
        std::vector<std::string> missing, extra;
        std::set_difference(planned.begin(), planned.end(), read.begin(), read.end(), std::back_inserter(missing));
        std::set_difference(read.begin(), read.end(), planned.begin(), planned.end(), std::back_inserter(extra));
        rules.say(findings, fault_of_sheet("sheet-text-agrees", path, seen.page, "reads " + some(extra), "planned " + some(missing),
                                    "The sheet does not say the figures that were computed for it", mend));
        return;
    }
    const auto meant = letters_in(words), there = letters_in(seen.text);
    if (meant == there) return;
    rules.say(findings, fault_of_sheet("sheet-text-agrees", path, seen.page, "too many: " + letters_beyond(there, meant), "missing: " + letters_beyond(meant, there),
                                "The sheet does not say the words that were written for it", mend));
}

void check_sheet_foot(const Rules& rules, const SeenPdf& seen, Findings& findings) {
    const proof::FileFacts& facts = *seen.facts;
    const std::size_t parted = facts.title.rfind(": "), version = facts.subject.rfind(", ");
    if (seen.role.empty() || kit::is_role(seen.role) || !seen.paper || parted == std::string::npos || version == std::string::npos) return;
    const std::string kit = facts.title.substr(0, parted);
    if (!facts.subject.starts_with(kit + " ")) return;
    const std::vector<std::string> names{kit, facts.subject.substr(kit.size() + 1, version - kit.size() - 1), facts.title.substr(parted + 2), seen.paper->title};
    for (const RenderedPage& page : seen.rendered) {
        if (!has_readable_fonts(facts.pages[static_cast<std::size_t>(page.page) - 1])) continue;
        rules.tried("sheet-foot");
        const std::string read = run_together(page.text);
        std::vector<std::string> missing;
        for (const std::string& name : names)
            if (read.find(run_together(name)) == std::string::npos) missing.push_back(name);
        if (missing.empty()) continue;
        rules.say(findings, fault_of_sheet("sheet-foot", seen.path, page.page, "without " + some(missing), some(names), "The sheet does not say what it belongs to",
                                    "Put kit, version, paper and sheet back into the foot (pipeline/texts/sheets.mustache)."));
    }
}

void check_sheet_cautions(const Rules& rules, const SeenPdf& seen, Findings& findings) {
    if (seen.role != "materials" || seen.rendered.size() != seen.facts->pages.size()) return;
    if (!std::all_of(seen.facts->pages.begin(), seen.facts->pages.end(), has_readable_fonts)) return;
    std::vector<std::string> read;
    for (const RenderedPage& page : seen.rendered)
        for (std::string& word : words_of(page.text)) read.push_back(std::move(word));
    for (const std::string& caution : seen.cautions) {
        rules.tried("sheet-cautions");
        if (can_be_read(caution, read)) continue;
        rules.say(findings, fault_of_sheet("sheet-cautions", seen.path, 0, "not on the sheet", start_of(caution),
                                           "The list of materials lacks a caution that it has to give",
                                           "Release the kit again with the cautions of pipeline/materials.yaml."));
    }
}

}  // namespace qw::checks
