// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/finding.h"
#include "checks/in_digits.h"

#include <string>
#include <utility>

namespace qw::checks {

/// `Rules::say` gives it its level.
inline Finding of_picture(const char* rule, const std::string& file, int page, std::string measured, std::string limit, std::string message, std::string mend) {
    return {rule, Level::error, file, page, 0, std::move(measured), std::move(limit), std::move(message), std::move(mend)};
}

}  // namespace qw::checks
