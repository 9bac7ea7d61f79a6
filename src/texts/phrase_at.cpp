// SPDX-License-Identifier: GPL-3.0-or-later
#include "texts/claims.h"

namespace qw::texts {

namespace {

/// "pockets" for "pocket", "boxes" for "box", "leaves" for "leaf" is its own phrase.
bool same_noun(const std::string& written, std::string_view singular) {
    if (!written.starts_with(singular)) return singular.ends_with('y') && written == std::string(singular.substr(0, singular.size() - 1)) + "ies";
    const std::string_view rest = std::string_view(written).substr(singular.size());
    return rest.empty() || rest == "s" || rest == "es" || rest == "'s";
}

/// Words of the phrase that stand from `word` on; 0: it does not stand there.
std::size_t matched(const Pasted& text, std::size_t word, std::size_t last, const std::string& phrase) {
    std::size_t count = 0;
    for (std::size_t start = 0; start <= phrase.size(); ++count) {
        const std::size_t end = std::min(phrase.find(' ', start), phrase.size());
        if (word + count >= last) return 0;
        const Word& seen = text.words[word + count];
        // A number word can be part of a name, a figure cannot.
        if ((seen.number && !seen.in_words) || !same_noun(seen.text, std::string_view(phrase).substr(start, end - start))) return 0;
        start = end + 1;
    }
    return count;
}

}  // namespace

const std::string* phrase_at(const Pasted& text, std::size_t word, std::size_t last, const std::vector<std::string>& phrases, std::size_t* size) {
    const std::string* longest = nullptr;
    std::size_t most = 0;
    for (const std::string& phrase : phrases) {
        const std::size_t words = matched(text, word, last, phrase);
        if (words <= most) continue;
        most = words;
        longest = &phrase;
    }
    if (size) *size = most;
    return longest;
}

}  // namespace qw::texts
