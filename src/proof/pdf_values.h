// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/geometry.h"
#include "proof/box.h"
#include "proof/libqpdf.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

// Values of PDF objects, read without trust: a value of another type is "not there". libqpdf answers a wrong type
// with a warning, which would be told as damage, so types are always asked for first.
namespace qw::proof {

using Object = QPDFObjectHandle;

/// An entry of a dictionary or of a stream's dictionary; null when `holder` is neither or has no such key.
/// `key` begins with "/".
Object entry(Object holder, const std::string& key);
/// The elements of an array; a single other object counts as an array of one, null as none.
std::vector<Object> elements(Object object);
/// libqpdf's own question cannot be put to a const object.
bool is_null(Object object);
bool filled(Object array_or_dictionary);

/// A name without its slash, UTF-8; "" when it is none.
std::string name_of(Object object);
bool is_name(Object object, std::string_view name);
/// A text string (ISO 32000-1 7.9.2.2: UTF-16BE with a mark, else PDFDocEncoding) as UTF-8; "" when it is none.
std::string text_of(Object object);
/// UTF-8 with U+FFFD in place of what is none.
std::string valid_utf8(std::string text);

/// Numbers beyond this are no place on any page (ISO 32000-1 annex C: a page has at most 14 400 units).
inline constexpr double largest_number = 1e9;
/// Digits of a PDF number, in no locale; nothing beyond ±`largest_number`.
std::optional<double> read_number(std::string_view digits);
std::optional<double> number_of(Object object);
/// 0 when it is no number or outside 0 … 2^32 − 1.
std::uint32_t count_of(Object object);
bool is_true(Object object);

/// Rectangle (7.9.5), corners put in order.
std::optional<Box> box_of(Object object);
std::optional<Matrix> matrix_of(Object object);

}  // namespace qw::proof
