// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/clock.h"
#include "base/geometry.h"
#include "base/source.h"
#include "kit/faults.h"
#include "kit/node.h"
#include "kit/node_kind.h"

#include <algorithm>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace qw::kit {

/// Readers of single values. Each returns nothing after it has told the fault; none throws.
template <typename T>
using Reader = std::function<std::optional<T>(const Node&, Faults&)>;

/// One line of text for people, 1 to 200 characters, not blank.
std::optional<std::string> text_value(const Node& node, Faults& faults);
/// Sentences: line ends and runs of blanks become single blanks; at most 4000 characters.
std::optional<std::string> prose_value(const Node& node, Faults& faults);
/// A plain name (a–z, 0–9, hyphen) that every system accepts as a file's name.
std::optional<std::string> plain_name_value(const Node& node, Faults& faults);
/// The same for a key; false when it was told.
bool check_plain_name(const std::string& name, const SourceMark& where, Faults& faults);
/// true or false.
std::optional<bool> yes_no_value(const Node& node, Faults& faults);
/// A decimal number without unit and without quotes, within the bounds.
Reader<double> number_value(double least, double most);
Reader<int> whole_number_value(int least, int most);

/// A unit that a value may carry, and what one of it is worth.
struct Unit {
    std::string name;
    double worth = 1;
};
/// "80 g/m2", "100 %", "20 MB": a number and one of the units; the result is number × worth. `bare` allows a number
/// alone. The bounds are those of the result, and `range` says them in words: "30 % to 103 %".
struct QuantityForm {
    std::vector<Unit> units;
    double least = 0, most = 0;
    std::string example, range;
    bool bare = false;
};
Reader<double> quantity_value(QuantityForm form);

struct LengthRange {
    Length least, most;
    std::string words;  ///< "0 mm or more"
};
/// "3 mm", "5 5/8 in"; a bare number and an unknown unit have codes of their own.
Reader<Length> length_value(LengthRange range);
/// "303 x 221.9 mm", "8 1/2 × 11 in": the first number may leave out the unit. 10 mm to 5080 mm each way (a PDF page
/// has at most 14 400 units, ISO 32000-1 annex C).
std::optional<Size> size_value(const Node& node, Faults& faults);

std::optional<Date> date_value(const Node& node, Faults& faults);
/// Semantic Versioning 2.0.0, `MAJOR.MINOR.PATCH` and perhaps `-PRERELEASE`; no build part and no capitals, because it
/// stands in file names. At most 40 characters.
std::optional<std::string> version_value(const Node& node, Faults& faults);

/// One of the words; a word that is near to none is told with all of them.
template <typename T>
Reader<T> word_value(std::vector<std::pair<std::string, T>> words);

/// A name that stands in `known`; `kind` ("a paper") and `place` ("pipeline/papers.yaml", may be empty) stand in the
/// message.
struct Lookup {
    std::string kind, place;
    std::vector<std::string> known;
};
Reader<std::string> name_value(Lookup lookup);

/// Tells that `written` is none of the known names, with the nearest one. `code` is "unknown-word" or "unknown-name".
void tell_unknown_name(const std::string& code, const SourceMark& where, const std::string& written, const Lookup& lookup, Faults& faults);

/// A list of at least one item, each read by `read`; `example` stands in the message. An item that is equal to one
/// before is told and left out.
template <typename T>
Reader<std::vector<T>> list_value(Reader<T> read, std::string example);

/// The reader's value together with its place.
template <typename T>
Reader<Sourced<T>> sourced(Reader<T> read) {
    return [read](const Node& node, Faults& faults) -> std::optional<Sourced<T>> {
        auto value = read(node, faults);
        if (!value) return std::nullopt;
        return Sourced<T>{std::move(*value), node.mark};
    };
}

template <typename T>
Reader<T> word_value(std::vector<std::pair<std::string, T>> words) {
    return [words](const Node& node, Faults& faults) -> std::optional<T> {
        Lookup lookup{"a word that can stand here", "", {}};
        for (const auto& [word, value] : words) lookup.known.push_back(word);
        const std::string* text = scalar_text(node, faults, lookup.known.front());
        if (!text) return std::nullopt;
        for (const auto& [word, value] : words)
            if (word == *text) return value;
        tell_unknown_name("unknown-word", node.mark, *text, lookup, faults);
        return std::nullopt;
    };
}

template <typename T>
Reader<std::vector<T>> list_value(Reader<T> read, std::string example) {
    return [read, example](const Node& node, Faults& faults) -> std::optional<std::vector<T>> {
        if (!is_list(node, faults, example)) return std::nullopt;
        if (node.items.empty()) faults.add("empty-list", node.mark, "the list is empty", "a list such as " + example);
        std::vector<T> values;
        for (const Node& item : node.items) {
            auto value = read(item, faults);
            if (!value) continue;
            if (std::find(values.begin(), values.end(), *value) == values.end()) values.push_back(std::move(*value));
            else faults.add("duplicate-value", item.mark, in_quotes(item.text) + " stands in the list a second time", "each value once", "remove it");
        }
        return values;
    };
}

}  // namespace qw::kit
