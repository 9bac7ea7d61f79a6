// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/length.h"
#include "type/fonts.h"

namespace qw::compose {

/// How a line of text is set.
struct Setting {
    type::Cut cut = type::Cut::text;
    Length size;
    Length leading;   ///< from baseline to baseline
};

/// The few settings of the generated sheets. What is cut from is a figure: 12 pt or more, because the sheet lies on a
/// workbench, an arm's length away.
namespace setting {
inline constexpr Setting title{type::Cut::title, Length::points(27), Length::points(30)};
inline constexpr Setting further_title{type::Cut::title, Length::points(19), Length::points(23)};
inline constexpr Setting subtitle{type::Cut::text, Length::points(11), Length::points(15)};
inline constexpr Setting heading{type::Cut::title, Length::points(14), Length::points(18)};
inline constexpr Setting figure{type::Cut::strong, Length::points(13.5), Length::points(17)};
inline constexpr Setting table_figure{type::Cut::strong, Length::points(12), Length::points(15)};
/// The same for the other ruler: never cut from first, but its small fractions must be read.
inline constexpr Setting other{type::Cut::text, Length::points(9), Length::points(12)};
inline constexpr Setting label{type::Cut::strong, Length::points(10.5), Length::points(14)};
inline constexpr Setting body{type::Cut::text, Length::points(10), Length::points(14)};
inline constexpr Setting remark{type::Cut::italic, Length::points(9), Length::points(12)};
inline constexpr Setting small{type::Cut::text, Length::points(8.5), Length::points(11)};
inline constexpr Setting small_strong{type::Cut::strong, Length::points(8.5), Length::points(11)};
}  // namespace setting

/// The three line weights: hair for what only guides, line for what parts and measures, heavy for what is cut.
namespace weight {
inline constexpr Length hair = Length::points(0.3), line = Length::points(0.6), heavy = Length::points(1.0);
}  // namespace weight

}  // namespace qw::compose
