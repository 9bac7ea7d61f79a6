// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/paper.h"

#include <cstdlib>
#include <regex>

namespace qw {

std::optional<Size> size_of_pwg_name(const std::string& name) {
    // dim = integer-part [fraction-part] / "0" fraction-part, where integer-part starts with a non-zero digit.
    static const std::regex form(
        R"(^(custom|na|asme|roc|oe|iso|jis|jpn|prc|om)_([a-z0-9][a-z0-9.-]*)_((?:[1-9]\d*(?:\.\d+)?|0\.\d+))x((?:[1-9]\d*(?:\.\d+)?|0\.\d+))(in|mm)$)");
    std::smatch m;
    if (name.size() > 120 || !std::regex_match(name, m, form)) return std::nullopt;
    const std::string family = m[1], unit = m[5];
    const bool inch_family = family == "na" || family == "asme" || family == "roc" || family == "oe";
    if (family != "custom" && inch_family != (unit == "in")) return std::nullopt;
    const auto length = [&](const std::string& text) {
        const double value = std::strtod(text.c_str(), nullptr);
        return unit == "in" ? Length::inches(value) : Length::mm(value);
    };
    return Size{length(m[3]), length(m[4])};
}

}  // namespace qw
