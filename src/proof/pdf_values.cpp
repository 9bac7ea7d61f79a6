// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/pdf_values.h"

#include "base/words.h"

#include <array>
#include <charconv>
#include <cmath>
#include <limits>

namespace qw::proof {

Object entry(Object holder, const std::string& key) {
    if (holder.isStream()) holder = holder.getDict();
    return holder.isDictionary() ? holder.getKey(key) : Object::newNull();
}

std::vector<Object> elements(Object object) {
    if (object.isNull()) return {};
    if (!object.isArray()) return {object};
    return object.getArrayAsVector();
}

bool is_null(Object object) { return object.isNull(); }

bool filled(Object object) {
    if (object.isArray()) return object.getArrayNItems() > 0;
    return object.isDictionary() && !object.getKeys().empty();
}

std::string valid_utf8(std::string text) {
    std::string good;
    std::string_view rest = text;
    while (const auto bad = bad_utf8_at(rest)) {
        good.append(rest.substr(0, *bad)).append("\xEF\xBF\xBD");
        rest.remove_prefix(*bad + 1);
    }
    return good.empty() ? text : good.append(rest);
}

std::string name_of(Object object) { return object.isName() ? valid_utf8(object.getName().substr(1)) : ""; }

bool is_name(Object object, std::string_view name) {
    return object.isName() && std::string_view(object.getName()).substr(1) == name;
}

std::string text_of(Object object) { return object.isString() ? valid_utf8(object.getUTF8Value()) : ""; }

std::optional<double> read_number(std::string_view digits) {
    if (digits.starts_with('+')) digits.remove_prefix(1);
    double value = 0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value, std::chars_format::fixed);
    if (error != std::errc() || end != digits.data() + digits.size()) return std::nullopt;
    if (!(std::abs(value) <= largest_number)) return std::nullopt;
    return value;
}

std::optional<double> number_of(Object object) {
    if (object.isReal()) return read_number(object.getRealValue());
    if (!object.isInteger()) return std::nullopt;
    const auto value = static_cast<double>(object.getIntValue());
    return std::abs(value) <= largest_number ? std::optional(value) : std::nullopt;
}

std::uint32_t count_of(Object object) {
    if (!object.isInteger()) return 0;
    const long long value = object.getIntValue();
    return value < 0 || value > std::numeric_limits<std::uint32_t>::max() ? 0 : static_cast<std::uint32_t>(value);
}

bool is_true(Object object) { return object.isBool() && object.getBoolValue(); }

namespace {

template <std::size_t N>
std::optional<std::array<double, N>> numbers_of(Object object) {
    if (!object.isArray() || object.getArrayNItems() != static_cast<int>(N)) return std::nullopt;
    std::array<double, N> numbers;
    for (std::size_t i = 0; i < N; ++i) {
        const auto number = number_of(object.getArrayItem(static_cast<int>(i)));
        if (!number) return std::nullopt;
        numbers[i] = *number;
    }
    return numbers;
}

}  // namespace

std::optional<Box> box_of(Object object) {
    const auto n = numbers_of<4>(object);
    if (!n) return std::nullopt;
    const auto [x0, y0, x1, y1] = *n;
    return Box{std::min(x0, x1), std::min(y0, y1), std::max(x0, x1), std::max(y0, y1)};
}

std::optional<Matrix> matrix_of(Object object) {
    const auto n = numbers_of<6>(object);
    if (!n) return std::nullopt;
    const auto [a, b, c, d, e, f] = *n;
    return Matrix{a, b, c, d, e, f};
}

}  // namespace qw::proof
