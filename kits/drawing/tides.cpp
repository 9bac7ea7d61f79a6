// SPDX-License-Identifier: GPL-3.0-or-later
#include "tides.h"

#include <cstdio>

#include "lettering.h"

namespace art {

double tide_at(double h) {
    return 3.1 + 1.75 * std::cos(2 * kPi * (h - 3.4) / 12.4206) + 0.62 * std::cos(2 * kPi * (h - 3.1) / 12.0) +
           0.16 * std::cos(2 * kPi * (h - 5) / 24.84);
}

std::vector<Turn> turns_of(int day) {
    std::vector<Turn> out;
    const double step = 1.0 / 60;
    for (int minute = 0; minute < 24 * 60; ++minute) {
        const double h = day * 24.0 + minute * step;
        const double before = tide_at(h - step), now = tide_at(h), after = tide_at(h + step);
        if (now >= before && now > after) out.push_back({h - day * 24.0, now, true});
        if (now <= before && now < after) out.push_back({h - day * 24.0, now, false});
    }
    return out;
}

std::string clock_of(double hours) {
    const int minutes = static_cast<int>(hours * 60 + 0.5);
    char text[24];
    std::snprintf(text, sizeof text, "%02d:%02d", minutes / 60 % 24, minutes % 60);
    return text;
}

void draw_tide_table(Pen& pen, const Box& box, int first_day, int days, double first_row) {
    const double row = (box.bottom() - first_row) / days;
    const double day_width = 9, column = (box.w - day_width) / 4;
    for (int i = 0; i < days; ++i) {
        const double top = first_row + i * row, base = top + row * 0.5 + 1.05;
        if (i % 2 == 0) pen.box({box.x, top, box.w, row}).fill(kGlassPale);
        put(pen, {box.x + day_width / 2, base}, std::to_string(first_day + i + 1), {"Vollkorn SemiBold", 8.5}, kInk,
            Align::centre);
        const std::vector<Turn> turns = turns_of(first_day + i);
        for (std::size_t k = 0; k < turns.size() && k < 4; ++k) {
            const double x = box.x + day_width + column * static_cast<double>(k);
            char metres[24];
            std::snprintf(metres, sizeof metres, "%.1f", turns[k].metres);
            put(pen, {x + 3, base}, clock_of(turns[k].hours), sized(kFigures, 8), kInk);
            put(pen, {x + column - 3, base}, metres, {"Vollkorn Italic", 8}, turns[k].high ? kBrick : kGlassDeep,
                Align::right);
        }
    }
}

void draw_tide_curve(Pen& pen, const Box& box, double from, double to, Colour fill, Colour line, double points) {
    Path path;
    const int steps = static_cast<int>(box.w / 0.12);
    for (int i = 0; i <= steps; ++i) {
        const double h = from + (to - from) * i / steps;
        path.push_back({box.x + box.w * i / steps, box.bottom() - box.h * tide_at(h) / 6.0});
    }
    Path area = path;
    area.push_back({box.right(), box.bottom()});
    area.push_back({box.x, box.bottom()});
    pen.poly(area, true).fill(fill);
    pen.poly(path, false).stroke(line, points);
}

}  // namespace art
