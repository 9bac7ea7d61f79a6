// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <string>

namespace qw::report {

/// Text as HTML shows it: & < > " ' as entities; nothing in it can become markup.
std::string escaped(const std::string& text);
/// Base64 (RFC 4648, with padding) of a picture for a data: address.
std::string base64(std::span<const std::byte> bytes);

}  // namespace qw::report
