// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "journal/measures.h"

#include <optional>
#include <string>

namespace qw::materials {

/// The same said in both unit systems.
struct BothTexts {
    std::string metric, us;
    std::string& in(UnitSystem system) { return system == UnitSystem::metric ? metric : us; }
    const std::string& in(UnitSystem system) const { return system == UnitSystem::metric ? metric : us; }
};
inline constexpr UnitSystem both_systems[] = {UnitSystem::metric, UnitSystem::us};

/// What is measured off in a shop, no less than `needed`: metric by 5 cm up to a metre and by 0.1 m above, us by whole
/// inches up to a yard and by 1/8 yd, the least that cloth is cut by, above (common practice, no source).
/// "85 cm", "1.2 m", "33 in", "1 3/8 yd".
std::string shop_length(Length needed, UnitSystem system);

/// "buy 1.2 m (10 % more)"; with a width "buy 0.5 m, 38 mm wide (10 % more)".
std::string to_buy(Length needed, double allowance, UnitSystem system, std::optional<Length> width = std::nullopt);
/// "buy 4 (1 to spare)", rounded up; empty without an allowance.
std::string to_buy(int needed, double allowance);

/// What the piece covers, all its copies, as cut with that system's ruler; in mm².
double area_of(const journal::Piece& piece, UnitSystem system);
/// "930 cm²", "144 sq in": rounded up, because it is what has to be there.
std::string area_text(double square_mm, UnitSystem system);

/// "2 of 153 x 216 mm"
std::string pieces_text(const journal::Piece& piece, UnitSystem system);

/// "in 2 strips that overlap 20 mm" for what is longer than the sheet it is cut from, else empty. What is broader than a
/// strip is pasted up from parts.
std::string strips_text(Length length, Length sheet, Length overlap, UnitSystem system, bool strip = true);
/// By how much strips overlap: the template's `strip-overlap`, else its `tape-overlap`, else 20 mm or 3/4 in, as wide as
/// a glued joint that bears no load needs to be held down with a finger (common practice, no source).
Length strip_overlap(const journal::Measures& measures, UnitSystem system);
/// The longer side of a sheet that strips are cut from: of the kit's paper, or of a full sheet as it was printed and
/// trimmed where the kit has those, because then either will do.
Length strip_sheet(const journal::Conditions& conditions);

/// "Bare holes" becomes "bare holes", "PVA glue" and "A4 board" stay: for the middle of a sentence.
std::string inside_sentence(std::string title);
/// With `between` where both say something.
std::string joined(const std::string& first, const std::string& between, const std::string& second);

}  // namespace qw::materials
