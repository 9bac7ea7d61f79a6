// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/clock.h"

#include <chrono>
#include <cstdio>

namespace qw {

std::optional<Date> Date::read(const std::string& text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
    const auto number = [&](std::size_t from, std::size_t digits) {
        int value = 0;
        for (std::size_t i = from; i < from + digits; ++i) value = text[i] >= '0' && text[i] <= '9' && value >= 0 ? value * 10 + (text[i] - '0') : -1;
        return value;
    };
    const Date date{number(0, 4), number(5, 2), number(8, 2)};
    if (date.year < 0 || date.month < 0 || date.day < 0) return std::nullopt;
    const std::chrono::year_month_day day{std::chrono::year(date.year), std::chrono::month(static_cast<unsigned>(date.month)),
                                          std::chrono::day(static_cast<unsigned>(date.day))};
    if (!day.ok() || date.year < 1980 || date.year > 2107) return std::nullopt;
    return date;
}

Date Date::from_epoch(std::int64_t seconds) {
    constexpr std::int64_t first = 315532800, last = 4354819199;  // 1980-01-01 … 2107-12-31 23:59:59 UTC
    const std::int64_t held = seconds < first ? first : seconds > last ? last : seconds;
    const std::chrono::year_month_day day{std::chrono::sys_days(std::chrono::days(held / 86400))};
    return {static_cast<int>(day.year()), static_cast<int>(static_cast<unsigned>(day.month())),
            static_cast<int>(static_cast<unsigned>(day.day()))};
}

std::string Date::iso() const {
    char text[48];
    std::snprintf(text, sizeof text, "%04d-%02d-%02d", year, month, day);
    return text;
}

std::string Date::pdf() const {
    char text[48];
    std::snprintf(text, sizeof text, "D:%04d%02d%02d000000Z", year, month, day);
    return text;
}

std::uint16_t Date::dos() const { return static_cast<std::uint16_t>(((year - 1980) << 9) | (month << 5) | day); }

}  // namespace qw
