// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/edition.h"
#include "texts/pasted.h"

#include <string>
#include <vector>

namespace qw::texts {

/// A name that stands in a text.
struct Mention {
    std::string phrase;         ///< as it was handed in
    int line = 0;
    std::size_t sentence = 0;   ///< index in Pasted::sentences
    std::size_t word = 0;       ///< index in Pasted::words
};

/// Every place at which one of the phrases stands and nothing denies it ("no", "not", "without" shortly before).
std::vector<Mention> mentions_in(const Pasted& text, const std::vector<std::string>& phrases);

/// Papers that the text offers files for. A paper's name by itself is none: "letter" is post, "A5 journal" is a size.
std::vector<Mention> papers_in(const Pasted& text, const std::vector<std::string>& names);

/// Prints that the text offers: "borderless", "without a white border", "with borders".
struct PrintSaid {
    Print print = Print::borderless;
    int line = 0;
};
std::vector<PrintSaid> prints_in(const Pasted& text);

/// What a sentence lists: it stands under a heading, or has words before a colon, that say so.
enum class Lists { nothing, contents, needs };
Lists listed_by(const Pasted& text, std::size_t sentence);

}  // namespace qw::texts
