// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/measure_rows.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace qw::compose {

/// A length as a buyer works it out from a page that she has printed and trimmed: a side of the page, taken `times`
/// times, and a constant on top.
struct PageForm {
    enum class Side { width, height } side = Side::width;
    double times = 0;                  ///< 0, 1/2, 1 or 2; 0: the same at every size
    kit::BothLengths plus;             ///< each from the template's own lengths of that system, neither converted; may be negative

    Length of(Size page, UnitSystem system) const;
    friend bool operator==(const PageForm& a, const PageForm& b) {
        return a.side == b.side && a.times == b.times && a.plus.metric == b.plus.metric && a.plus.us == b.plus.us;
    }
};

/// A piece, or a cut length (without height), as it follows from the page; nothing where it does not.
struct OwnPageRow {
    std::string name, title;           ///< of the piece or length
    kit::RoundingRule rounding;
    bool is_piece = true;
    std::optional<PageForm> width, height;
};

/// What follows from the page at every size of one print that the sheet shows, found by trying, not by what anything is
/// called: before rounding, in both unit systems, the difference between the length and the page must be the same at all
/// sizes, within `form_tolerance`. Nothing at all when fewer than two different pages are shown. Computes the measures
/// once more for the ruler that is not the paper's own.
std::vector<OwnPageRow> from_own_page(const std::vector<SizeColumn>& columns);
inline constexpr Length form_tolerance = Length::mm(0.001);

}  // namespace qw::compose
