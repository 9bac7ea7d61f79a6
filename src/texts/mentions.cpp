// SPDX-License-Identifier: GPL-3.0-or-later
#include "texts/mentions.h"

#include "texts/claims.h"

#include <algorithm>
#include <initializer_list>

namespace qw::texts {

namespace {

using Some = std::initializer_list<const char*>;

bool among(const std::string& word, const Some& words) {
    return std::any_of(words.begin(), words.end(), [&](const char* one) { return word == one; });
}

const Some denying{"no", "not", "never", "without", "don't", "doesn't", "isn't", "aren't", "cannot", "can't", "won't", "instead"};

/// Looks at words around one of a sentence.
class Around {
public:
    Around(const Pasted& text, std::size_t sentence) : text_(text), bounds_(text.sentences[sentence]) {}

    bool has_before(std::size_t word, std::size_t reach, const Some& words) const {
        for (std::size_t by = 1; by <= reach && word >= bounds_.first + by; ++by) {
            if (among(text_.words[word - by].text, {";", ".", ","}) && !among(text_.words[word - by].text, words)) return false;
            if (among(text_.words[word - by].text, words)) return true;
        }
        return false;
    }
    bool has_behind(std::size_t word, std::size_t reach, const Some& words) const {
        for (std::size_t by = 1; by <= reach && word + by < bounds_.last; ++by)
            if (among(text_.words[word + by].text, words)) return true;
        return false;
    }
    bool denied(std::size_t word) const { return has_before(word, 4, denying) || has_behind(word, 4, {"not", "isn't", "aren't"}); }
    std::size_t last() const { return bounds_.last; }

private:
    const Pasted& text_;
    const Sentence& bounds_;
};

/// "us letter", "a4 and letter", "letter (8.5 x 11 in)", "files for a4": it is the paper that is meant.
bool is_paper(const Pasted& text, const Around& around, std::size_t word, const std::vector<std::string>& names) {
    const Some paper_words{"paper",   "papers",   "sheet",     "sheets", "size", "sizes", "sized",   "format",   "formats", "print", "prints",
                           "printed", "printing", "printable", "pdf",    "pdfs", "files", "version", "versions", "us",      "on",    "for"};
    const auto named = [&](std::size_t at) {
        const std::string& other = text.words[at].text;
        return other != text.words[word].text && std::find(names.begin(), names.end(), other) != names.end();
    };
    const auto joins = [&](std::size_t at) { return among(text.words[at].text, {"and", "or", "/", "&", ",", "+"}); };
    const bool joined_behind = word + 2 < around.last() && joins(word + 1) &&
                               (named(word + 2) || (text.words[word + 2].text == "us" && word + 3 < around.last() && named(word + 3)));
    const bool joined_before = word >= 2 && (joins(word - 1) ? named(word - 2)
                                                             : word >= 3 && text.words[word - 1].text == "us" && joins(word - 2) && named(word - 3));
    if (joined_behind || joined_before) return true;
    // A book of that size, or what the sheets fold to.
    const Some made{"journal", "book", "notebook", "booklet", "finished", "folded", "folds", "fold", "closed", "half"};
    if (around.has_before(word, 3, made) || around.has_behind(word, 3, made)) return false;
    if (text.words[word].text == "letter" || text.words[word].text == "legal") {
        const bool us = word > 0 && text.words[word - 1].text == "us";
        return us || around.has_behind(word, 1, {"paper", "size", "sized", "format", "sheets", "("}) || around.has_before(word, 1, {"on", "("});
    }
    return around.has_before(word, 2, paper_words) || around.has_behind(word, 2, paper_words);
}

/// The number of words of "without any white border" from `word` on; 0: it does not stand there.
std::size_t border_behind(const Pasted& text, std::size_t word, std::size_t last) {
    for (std::size_t at = word + 1; at < last && at <= word + 3; ++at) {
        if (among(text.words[at].text, {"border", "borders"})) return at - word + 1;
        if (!among(text.words[at].text, {"a", "an", "any", "the", "white", "narrow", "thin", "small", "its"})) return 0;
    }
    return 0;
}

Lists kind_of(const Pasted& text, std::size_t first, std::size_t last) {
    for (std::size_t at = first; at < last; ++at) {
        const std::string& word = text.words[at].text;
        if (among(word, {"material", "materials", "tool", "tools", "supplies", "equipment"})) return Lists::needs;
        if (word == "need" || word == "needed") return Lists::needs;
    }
    for (std::size_t at = first; at < last; ++at)
        if (among(text.words[at].text, {"includes", "included", "include", "contains", "contents", "inside", "get", "receive"})) return Lists::contents;
    return Lists::nothing;
}

}  // namespace

std::vector<Mention> mentions_in(const Pasted& text, const std::vector<std::string>& phrases) {
    std::vector<Mention> mentions;
    for (std::size_t sentence = 0; sentence < text.sentences.size(); ++sentence) {
        const Around around(text, sentence);
        for (std::size_t at = text.sentences[sentence].first; at < around.last();) {
            std::size_t size = 0;
            const std::string* phrase = phrase_at(text, at, around.last(), phrases, &size);
            if (phrase && !around.denied(at)) mentions.push_back({*phrase, text.words[at].line, sentence, at});
            at += std::max<std::size_t>(size, 1);
        }
    }
    return mentions;
}

std::vector<Mention> papers_in(const Pasted& text, const std::vector<std::string>& names) {
    std::vector<Mention> papers;
    for (std::size_t sentence = 0; sentence < text.sentences.size(); ++sentence) {
        const Around around(text, sentence);
        for (std::size_t at = text.sentences[sentence].first; at < around.last(); ++at) {
            const auto name = std::find(names.begin(), names.end(), text.words[at].text);
            if (name != names.end() && !around.denied(at) && is_paper(text, around, at, names)) papers.push_back({*name, text.words[at].line, sentence, at});
        }
    }
    return papers;
}

std::vector<PrintSaid> prints_in(const Pasted& text) {
    std::vector<PrintSaid> prints;
    for (std::size_t sentence = 0; sentence < text.sentences.size(); ++sentence) {
        const Around around(text, sentence);
        for (std::size_t at = text.sentences[sentence].first; at < around.last(); ++at) {
            const std::string& word = text.words[at].text;
            const bool bordered = word == "bordered" || (word == "with" && border_behind(text, at, around.last()) > 0);
            const bool without = word == "without" && border_behind(text, at, around.last()) > 0;
            if (word != "borderless" && !bordered && !without) continue;
            if (!around.denied(at)) prints.push_back({bordered ? Print::bordered : Print::borderless, text.words[at].line});
        }
    }
    return prints;
}

Lists listed_by(const Pasted& text, std::size_t index) {
    const Sentence& sentence = text.sentences[index];
    for (std::size_t at = sentence.first; at < sentence.last; ++at)
        if (text.words[at].text == ":" && at + 1 < sentence.last) {
            const Lists own = kind_of(text, sentence.first, at);
            if (own != Lists::nothing) return own;
        }
    if (sentence.under == 0 || !sentence.item) return Lists::nothing;
    const Sentence& heading = text.sentences[sentence.under - 1];
    return kind_of(text, heading.first, heading.last);
}

}  // namespace qw::texts
