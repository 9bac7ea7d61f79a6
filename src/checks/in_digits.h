// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdio>
#include <string>

namespace qw::checks {

/// `form` as for printf, of one double.
inline std::string in_digits(double value, const char* form = "%.0f") {
    char text[48];
    std::snprintf(text, sizeof text, form, value);
    return text;
}

}  // namespace qw::checks
