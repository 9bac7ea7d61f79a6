// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/values.h"

#include "base/words.h"

#include <algorithm>
#include <array>
#include <charconv>

namespace qw::kit {

namespace {

constexpr std::size_t longest_line = 200, longest_prose = 4000;

bool has_control(const std::string& text) {
    return std::any_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; });
}

bool blank(const std::string& text) { return text.find_first_not_of(" \t") == std::string::npos; }

bool within(const std::string& text, std::size_t most, const SourceMark& where, Faults& faults) {
    const std::size_t count = characters_in(text, text.size());
    if (count <= most) return true;
    faults.add("too-long", where, "the text has " + std::to_string(count) + " characters", "at most " + std::to_string(most));
    return false;
}

/// Names that no file may have on Windows, with any ending (Microsoft, "Naming Files, Paths, and Namespaces").
bool reserved_on_windows(const std::string& name) {
    static constexpr std::array<const char*, 4> words{"con", "prn", "aux", "nul"};
    if (std::find(words.begin(), words.end(), name) != words.end()) return true;
    return name.size() == 4 && (name.starts_with("com") || name.starts_with("lpt")) && name[3] >= '1' && name[3] <= '9';
}

std::string plain_name_from(const std::string& text) {
    std::string name;
    for (const char c : text) {
        if (c >= 'A' && c <= 'Z') name += static_cast<char>(c - 'A' + 'a');
        else if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) name += c;
        else if (!name.empty() && name.back() != '-') name += '-';
    }
    while (!name.empty() && name.back() == '-') name.pop_back();
    return name;
}

}  // namespace

std::optional<std::string> text_value(const Node& node, Faults& faults) {
    const std::string* text = scalar_text(node, faults, "a line of text");
    if (!text) return std::nullopt;
    if (blank(*text)) {
        faults.add("missing-value", node.mark, "the text is empty", "a line of text");
        return std::nullopt;
    }
    if (has_control(*text)) {
        faults.add("control-character", node.mark, "the text has more than one line or holds a control character", "one line of text");
        return std::nullopt;
    }
    return within(*text, longest_line, node.mark, faults) ? std::optional(*text) : std::nullopt;
}

std::optional<std::string> prose_value(const Node& node, Faults& faults) {
    const std::string* text = scalar_text(node, faults, "a sentence");
    if (!text) return std::nullopt;
    std::string prose;
    for (const char c : *text) {
        const bool gap = c == ' ' || c == '\t' || c == '\n' || c == '\r';
        if (!gap) prose += c;
        else if (!prose.empty() && prose.back() != ' ') prose += ' ';
    }
    if (prose.ends_with(' ')) prose.pop_back();
    if (prose.empty()) faults.add("missing-value", node.mark, "the text is empty", "a sentence");
    else if (has_control(prose)) faults.add("control-character", node.mark, "the text holds a control character", "plain sentences");
    else if (within(prose, longest_prose, node.mark, faults)) return prose;
    return std::nullopt;
}

std::optional<std::string> plain_name_value(const Node& node, Faults& faults) {
    const std::string* text = scalar_text(node, faults, "a name");
    if (!text) return std::nullopt;
    return check_plain_name(*text, node.mark, faults) ? std::optional(*text) : std::nullopt;
}

bool check_plain_name(const std::string& name, const SourceMark& where, Faults& faults) {
    if (!is_plain_name(name)) {
        const std::string better = plain_name_from(name);
        faults.add("bad-name", where, in_quotes(name) + " cannot stand in the names of files",
                   "1 to 64 of a-z, 0-9 and hyphens, no hyphen at the ends", is_plain_name(better) ? "write '" + better + "'" : "");
        return false;
    }
    if (!reserved_on_windows(name)) return true;
    faults.add("bad-name", where, "Windows allows no file with the name " + in_quotes(name), "another name");
    return false;
}

std::optional<bool> yes_no_value(const Node& node, Faults& faults) {
    return word_value<bool>({{"true", true}, {"false", false}})(node, faults);
}

void tell_unknown_name(const std::string& code, const SourceMark& where, const std::string& written, const Lookup& lookup, Faults& faults) {
    constexpr std::size_t most_listed = 12;
    const std::string in_place = lookup.place.empty() ? "" : " in " + lookup.place;
    std::string expected = listed(lookup.known);
    if (lookup.known.empty()) expected = lookup.kind + in_place + ", which holds none";
    else if (lookup.known.size() > most_listed) expected = "one of the " + std::to_string(lookup.known.size()) + in_place;
    const auto near = nearest_word(written, lookup.known);
    faults.add(code, where, in_quotes(written) + " is not " + lookup.kind + in_place, expected, near ? "write '" + *near + "'" : "");
}

Reader<std::string> name_value(Lookup lookup) {
    return [lookup](const Node& node, Faults& faults) -> std::optional<std::string> {
        const std::string* text = scalar_text(node, faults, lookup.kind);
        if (!text) return std::nullopt;
        if (std::find(lookup.known.begin(), lookup.known.end(), *text) != lookup.known.end()) return *text;
        tell_unknown_name("unknown-name", node.mark, *text, lookup, faults);
        return std::nullopt;
    };
}

std::optional<Date> date_value(const Node& node, Faults& faults) {
    const std::string expected = "a day from 1980-01-01 to 2107-12-31, written 2026-09-01";
    const std::string* text = scalar_text(node, faults, expected);
    if (!text) return std::nullopt;
    const auto date = text->size() == 10 ? Date::read(*text) : std::nullopt;
    if (!date) faults.add("bad-date", node.mark, in_quotes(*text) + " is no day that files can carry", expected);
    return date;
}

namespace {

bool is_number_part(std::string_view part) {
    const bool digits = !part.empty() && std::all_of(part.begin(), part.end(), [](char c) { return c >= '0' && c <= '9'; });
    return digits && part.size() <= 9 && (part.size() == 1 || part[0] != '0');
}

std::vector<std::string_view> split(std::string_view text, char at) {
    std::vector<std::string_view> parts;
    for (std::size_t end = text.find(at); end != std::string_view::npos; end = text.find(at)) {
        parts.push_back(text.substr(0, end));
        text.remove_prefix(end + 1);
    }
    parts.push_back(text);
    return parts;
}

/// Semantic Versioning 2.0.0, items 2 and 9; lower case only.
bool is_version(std::string_view text) {
    const std::size_t hyphen = text.find('-');
    const auto core = split(text.substr(0, hyphen), '.');
    if (core.size() != 3 || !std::all_of(core.begin(), core.end(), is_number_part)) return false;
    if (hyphen == std::string_view::npos) return true;
    for (const std::string_view part : split(text.substr(hyphen + 1), '.')) {
        const auto allowed = [](char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || c == '-'; };
        const bool digits = std::all_of(part.begin(), part.end(), [](char c) { return c >= '0' && c <= '9'; });
        if (part.empty() || !std::all_of(part.begin(), part.end(), allowed) || (digits && !is_number_part(part))) return false;
    }
    return true;
}

std::string version_mend(const std::string& text) {
    const auto parts = split(text, '.');
    const bool numbers = std::all_of(parts.begin(), parts.end(), is_number_part);
    if (numbers && parts.size() == 2) return "write '" + text + ".0'";
    if (numbers && parts.size() == 1) return "write '" + text + ".0.0'";
    if (text.starts_with('v') && is_version(std::string_view(text).substr(1))) return "write '" + text.substr(1) + "'";
    if (text.find('+') != std::string::npos) return "leave out what follows '+'";
    return "";
}

}  // namespace

std::optional<std::string> version_value(const Node& node, Faults& faults) {
    constexpr std::size_t longest_version = 40;
    const std::string expected = "a semantic version such as 1.0.0 or 1.1.0-beta.2, in lower case and without build part";
    const std::string* text = scalar_text(node, faults, expected);
    if (!text) return std::nullopt;
    if (text->size() <= longest_version && is_version(*text)) return *text;
    faults.add("bad-version", node.mark, in_quotes(*text) + " is no version", expected, version_mend(*text));
    return std::nullopt;
}

}  // namespace qw::kit
