// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/finding.h"

#include <cstdio>
#include <string>
#include <utility>

namespace qw::checks {

/// `form` as for printf, of one double.
inline std::string in_digits(double value, const char* form = "%.0f") {
    char text[48];
    std::snprintf(text, sizeof text, form, value);
    return text;
}

/// `Rules::say` gives it its level.
inline Finding of_picture(const char* rule, const std::string& file, int page, std::string measured, std::string limit, std::string message, std::string mend) {
    return {rule, Level::error, file, page, 0, std::move(measured), std::move(limit), std::move(message), std::move(mend)};
}

}  // namespace qw::checks
