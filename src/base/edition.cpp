// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/edition.h"

#include <algorithm>

namespace qw {

std::string name_of(Print print) { return print == Print::borderless ? "borderless" : "bordered"; }

PrintFit fit_of(const Edition& edition, bool landscape) {
    const Margins& m = edition.margins;
    const Length across_short = max(m.left, m.right), across_long = max(m.bottom, m.top);
    const Size sheet = landscape ? edition.paper.size.as_landscape() : edition.paper.size.as_portrait();
    const Length x = landscape ? across_long : across_short, y = landscape ? across_short : across_long;
    PrintFit fit;
    fit.sheet = sheet;
    fit.printable = Rect::of(sheet).inset(x, y);
    fit.scale = std::min(fit.printable.width() / sheet.width, fit.printable.height() / sheet.height);
    fit.picture = Rect::centred(sheet * fit.scale, Rect::of(sheet));
    return fit;
}

Length pwg_from_points(int points) { return Length::hundredths_mm((std::int64_t{points} * 2540 + 36) / 72); }

}  // namespace qw
