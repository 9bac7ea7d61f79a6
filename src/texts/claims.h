// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "texts/pasted.h"

#include <string>
#include <vector>

namespace qw::texts {

/// What a text says of a thing by a number. A number that stands with no thing, no unit and no name is no claim.
struct Claim {
    enum class Kind {
        count,     ///< "6 pockets": first
        grammage,  ///< "160 g/m²": first, or a range first to second; grade is empty
        pounds,    ///< "65 lb cover": the same in pounds of the grade
        size,      ///< "5 1/2 x 8 1/2 in": first × second in mm
        version,   ///< "version 1.0": the words
    } kind = Kind::count;
    std::string thing;      ///< the phrase that names what is meant, as it was handed in; empty: none stands near
    double first = 0, second = 0;
    double step = 0;        ///< how finely it is said: in mm of sizes
    bool rough = false;     ///< "about"
    bool same_as_before = false;  ///< the claim before it in other units, in brackets or after a stroke
    std::string grade;      ///< of pounds: bond, text, cover, index
    int line = 0;
    std::string words;      ///< as read, for the report: "120 g/m2"
};

/// Words of the model that claims are tied to, lower case, singular, parted by blanks. `counted` things are counted,
/// `measured` things have a size, `weighed` things a stock.
struct Phrases {
    std::vector<std::string> counted, measured, weighed;
};

/// In the order of the text. A count is a claim only where the text tells what is in the kit: in an item of a list, in a
/// "Name: 6" row, or in a sentence with a word such as "includes"; not in instructions, not "over 20", not "2 per page".
std::vector<Claim> claims_in(const Pasted& text, const Phrases& phrases);

/// The longest of the phrases that begins at a word, in singular or plural; how many words it has in `size`. Null: none.
const std::string* phrase_at(const Pasted& text, std::size_t word, std::size_t last, const std::vector<std::string>& phrases, std::size_t* size);

}  // namespace qw::texts
