// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/yaml_error.h"

#include "kit/faults.h"

#include <yaml-cpp/exceptions.h>

#include <algorithm>

namespace qw::kit {

namespace {

/// The word that begins at `byte`: what was meant as one value.
std::string_view word_at(std::string_view text, std::size_t byte) {
    const std::string_view rest = text.substr(byte);
    return rest.substr(0, rest.find_first_of(" \t\r\n,]}"));
}

/// A `*` at the place of the error, or just before it: the library read it as an alias.
std::optional<std::size_t> star_at(const std::string& text, std::size_t byte) {
    if (byte < text.size() && text[byte] == '*') return byte;
    if (byte > 0 && byte <= text.size() && text[byte - 1] == '*') return byte - 1;
    return std::nullopt;
}

/// The library takes some characters for marks of its own, also within a word: '?' between brackets, '@', '%', '`'.
FaultNote unquoted_mark(const SourceText& source, std::size_t byte) {
    const std::string_view text = source.text();
    const std::size_t before = byte == 0 ? std::string_view::npos : text.find_last_of(" \t\n,[{", byte - 1);
    const std::size_t begin = before == std::string_view::npos ? 0 : before + 1;
    const std::string word(word_at(text, begin));
    return {"syntax", source.at_byte(byte), "the character " + in_quotes(text.substr(byte, 1)) + " needs quotes here", "a quoted text",
            "quote it: '" + word + "'"};
}

FaultNote unquoted_star(const SourceText& source, std::size_t byte) {
    const std::string word(word_at(source.text(), byte));
    const bool pattern = word.size() == 1 || word.find_first_of(".*?/", 1) != std::string::npos;
    if (pattern)
        return {"unquoted-star", source.at_byte(byte), "a text that begins with '*' is not quoted: " + in_quotes(word), "a quoted text",
                "quote it: '" + word + "'"};
    return {"alias", source.at_byte(byte), "an alias stands here: " + in_quotes(word), "the value itself",
            "write the value out; a text that begins with '*' is quoted"};
}

bool blank_before(std::string_view line, std::size_t column) {
    return std::all_of(line.begin(), line.begin() + static_cast<std::ptrdiff_t>(std::min(column, line.size())),
                       [](char c) { return c == ' ' || c == '\t'; });
}

/// ": " after a value on the same line, as in `title: Tides: a book`, or a line that is indented by mistake.
std::string mend_of_colon(const SourceText& source, int line_number, std::size_t column) {
    const std::string_view line = source.line(line_number);
    const std::size_t first = line.find(": ");
    if (first != std::string_view::npos && first < column) return "quote a text that holds ': '";
    if (line.find('\t') < column) return "indent with spaces, not with tabs";
    return "put a space after every colon, and begin keys of one level in the same column";
}

struct Known {
    const char* message;  ///< what the library says begins so
    const char* what;
    const char* mend;
};

constexpr Known known[] = {
    {"illegal tab", "a tab stands where the line is indented", "indent with spaces"},
    {"illegal EOF in scalar", "a quote is opened and never closed", "close the quote"},
    {"illegal document indicator in scalar", "a quote is opened and never closed", "close the quote"},
    {"unknown escape character", "this escape is not known between double quotes", "use single quotes, or write a backslash twice"},
    {"illegal block entry", "a list item cannot begin here", "begin each item on a line of its own, or write [a, b]"},
    {"illegal map key", "a key cannot begin here", "begin keys of one level in the same column"},
    {"illegal flow end", "a bracket is closed that was not opened", "remove it, or open it before"},
    {"end of map not found", "this line does not belong to the one before",
     "begin keys of one level in the same column, and quote the whole of a text"},
    {"end of sequence not found", "this line does not belong to the list before", "begin list items in the same column, each with '- '"},
    {"tag handle", "a tag is not well formed", "quote a text that begins with '!'"},
    {"anchor not found", "an anchor is not well formed", "quote a text that begins with '&'"},
    {"unexpected character in block scalar", "this block is not well formed", "begin the text on the next line, indented"},
};

FaultNote unclosed_bracket(const SourceMark& opened, const SourceMark& noticed) {
    return {"syntax", opened, "this bracket is not closed; noticed in line " + std::to_string(noticed.line), "",
            "close it, and part what it holds with commas"};
}

}  // namespace

FaultNote explain(const YAML::Exception& error, const SourceText& source, const std::optional<SourceMark>& open_bracket) {
    const std::size_t byte = source.byte_of(error.mark.line, error.mark.column);
    const SourceMark where = source.at_byte(byte);
    const std::string& said = error.msg;
    const bool about_alias = said.starts_with("the referenced anchor") || said.starts_with("alias not found") ||
                             said.find("while scanning alias") != std::string::npos;
    if (const auto star = about_alias ? star_at(source.text(), byte) : std::nullopt) return unquoted_star(source, *star);
    if (open_bracket && (said.starts_with("end of sequence flow") || said.starts_with("end of map flow")))
        return unclosed_bracket(*open_bracket, where);
    if (said.starts_with("unknown token") && byte < source.text().size()) return unquoted_mark(source, byte);
    if (said.starts_with("illegal map value"))
        return {"syntax", where, "a colon does not belong here", "",
                mend_of_colon(source, error.mark.line, static_cast<std::size_t>(std::max(error.mark.column, 0)))};
    const auto found = std::find_if(std::begin(known), std::end(known), [&](const Known& one) { return said.starts_with(one.message); });
    if (found == std::end(known)) return {"syntax", where, "this is not well-formed YAML: " + said, "", ""};
    const bool tab = blank_before(source.line(error.mark.line), static_cast<std::size_t>(std::max(error.mark.column, 0))) &&
                     source.line(error.mark.line).find('\t') != std::string_view::npos;
    return {"syntax", where, found->what, "", tab ? "indent with spaces, not with tabs" : found->mend};
}

}  // namespace qw::kit
