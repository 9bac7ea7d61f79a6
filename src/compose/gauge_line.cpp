// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/gauge_line.h"

#include "compose/fractions.h"
#include "compose/print_check_sheet.h"
#include "compose/scales.h"

namespace qw::compose {

void draw_gauge(Canvas& canvas, const Rect& room, const Paper& paper) {
    const Length gauge = gauge_length(paper), x = room.right - Length::mm(7.5), low = room.bottom + (room.height() - gauge) / 2;
    gauge_up(canvas, {x, low}, gauge);
    const Length cap = canvas.fonts().cap_height(setting::figure.cut, setting::figure.size);
    canvas.words({x + Length::mm(2.2) + cap, low + gauge / 2}, real_fractions(show(gauge, paper.ruler)), setting::figure, Canvas::Anchor::middle, 90);
}

}  // namespace qw::compose
