// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>

namespace qw {

/// A day of the Gregorian calendar; what files that need a date carry. Read from a manifest or from
/// SOURCE_DATE_EPOCH, never from the wall clock, so that the same inputs give the same bytes on any day.
struct Date {
    int year = 1980, month = 1, day = 1;
    /// "2026-09-01"; nothing when the text is no such day or lies outside 1980-01-01 … 2107-12-31, the range of a
    /// ZIP entry's date (Microsoft, FileTimeToDosDateTime).
    static std::optional<Date> read(const std::string& text);
    /// From seconds since 1970-01-01 UTC; days before 1980 become 1980-01-01 (reproducible-builds.org,
    /// SOURCE_DATE_EPOCH, which names max(315532800, value) for ZIP).
    static Date from_epoch(std::int64_t seconds);
    std::string iso() const;
    /// "D:20260901000000Z" (ISO 32000-1 7.9.4).
    std::string pdf() const;
    /// Bits 0–4 day, 5–8 month, 9–15 year − 1980 (Microsoft, DosDateTimeToFileTime).
    std::uint16_t dos() const;
    friend bool operator==(const Date&, const Date&) = default;
};

}  // namespace qw
