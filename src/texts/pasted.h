// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace qw::texts {

/// One word of a text that people wrote, or a mark such as "," or "(" by itself.
struct Word {
    std::string text;              ///< lower case; quotes straight, × is x, ″ after a number is "in", g/m² is "g/m2"
    std::optional<double> number;  ///< in figures, as a fraction, or a word up to ninety-nine
    double step = 1;               ///< of a number: the worth of its last place, or of one part of its fraction
    bool fraction = false;
    bool in_words = false;         ///< of a number: it was spelled out
    int line = 0;                  ///< counted from 1
    bool is_mark() const { return text.size() == 1 && !number && std::string("()[],;:.!?+&=/-~|\"'").find(text[0]) != std::string::npos; }
};

/// A sentence, an item of a list, or a heading: a line that begins with #, that ends with a colon, or that stands in
/// bold or in capitals.
struct Sentence {
    std::size_t first = 0, last = 0;  ///< words [first, last)
    int line = 0;
    bool item = false, heading = false;
    std::size_t under = 0;            ///< index + 1 of the heading above it; 0: there is none
};

/// A text as it was pasted from a shop's page: plain or Markdown, any line ends.
struct Pasted {
    std::vector<Word> words;
    std::vector<Sentence> sentences;
};

/// `text` is valid UTF-8. Never fails: what is no word is passed over.
Pasted read_pasted(const std::string& text);

/// The text as phrases are looked for in it: lower case, straight quotes, single blanks, no emphasis.
std::string plain_words(const std::string& text);

}  // namespace qw::texts
