// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "report/audit_report.h"

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace qw::report {

/// The pictures of one report. Each is written into the page once, however often it is shown: as a symbol at the end of
/// the page, so that the words can be read before the pictures have come. Keeps views of the rows that are handed in,
/// which must outlive it.
class Pictures {
public:
    /// The page alone, in its paper's frame; hidden from those who listen, for whom the caption says what it is.
    std::string plain(const SheetRow& row);
    /// The page with its lines: trim, safe area, margins, ink box, and what of the artwork is cut away. `label` is what
    /// those are told who cannot see it.
    std::string with_lines(const SheetRow& row, const std::string& label);
    /// The sheet as a misprint leaves it.
    std::string misprinted(const SheetRow& row, const std::string& label);
    /// What the pictures above refer to; goes into the page once, after all of them.
    std::string symbols() const;

private:
    std::size_t number_of(const std::vector<std::byte>& jpeg);
    std::string shown(const SheetRow& row);
    std::vector<std::string_view> jpegs_;
    std::map<std::string_view, std::size_t> numbers_;
};

/// What the lines of `with_lines` mean, each with a sample of it.
std::string key_to_lines();

/// The same in words: what is lost on which side, how near ink comes to the edge. Empty where nothing is known.
std::string lines_in_words(const SheetGeometry& at);

}  // namespace qw::report
