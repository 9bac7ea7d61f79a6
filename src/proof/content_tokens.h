// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "proof/box.h"
#include "proof/pdf_values.h"

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

namespace qw::proof {

/// What stands in front of an operator, as far as pictures and paths need it.
struct Operands {
    std::vector<double> numbers;  ///< outside arrays and dictionaries; the last 8
    std::string name;             ///< the last name, with its slash
    bool text = false;            ///< a string that is not empty, also in an array

    /// The number `back` places before the last; throws Unreadable when there are fewer.
    double number(std::size_t count, std::size_t index) const;
    Spot spot(std::size_t count, std::size_t index) const;
    void clear();
};

/// Receives the operators of a content stream in their order.
class ContentReader {
public:
    virtual ~ContentReader() = default;
    virtual void operation(std::uint32_t code, const Operands& operands) = 0;
    virtual void inline_image(Object dictionary, std::string data) = 0;
};

/// Splits content into operators with libqpdf's tokenizer. It makes no object for each number, as libqpdf's object
/// parser does; a million operators cost a fraction of that. `spend` is called for every token and may throw.
/// Throws Unreadable at bytes that are no token.
void read_content(const std::string& content, ContentReader& reader, const std::function<void()>& spend);

}  // namespace qw::proof
