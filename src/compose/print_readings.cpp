// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/print_readings.h"

#include "compose/sheet.h"

#include <algorithm>

namespace qw::compose {

namespace {

using Kind = PrintCause::Kind;

/// The picture keeps its shape and fills what the driver prints on, which is larger than the paper.
double enlarged_scale(const Paper& paper, Size beyond_paper) {
    const Size sheet = paper.size.as_portrait();
    return 1 + std::max(beyond_paper.width / sheet.width, beyond_paper.height / sheet.height);
}

/// The same room between the margins, in the middle of the sheet.
Margins evened(const Margins& m) { return {(m.left + m.right) / 2, (m.bottom + m.top) / 2, (m.left + m.right) / 2, (m.bottom + m.top) / 2}; }

class Causes {
public:
    Causes(const kit::Pipeline& pipeline, const Paper& made) : pipeline_(pipeline), made_(made) {}

    std::vector<PrintCause> all() {
        add({Kind::as_made, made_, nullptr, kit::Sides::single, false, 1});
        add({Kind::enlarged, made_, nullptr, kit::Sides::single, false, enlarged_scale(made_, pipeline_.borderless_enlargement)});
        for (const Paper& paper : pipeline_.papers) {
            if (paper.size != made_.size) add({Kind::whole, paper, nullptr, kit::Sides::single, false, fitted_scale(made_, {paper, Print::borderless, {}})});
            for (const kit::Printer& printer : pipeline_.printers) {
                fitted(paper, printer, kit::Sides::single);
                if (printer.duplex != printer.single) fitted(paper, printer, kit::Sides::duplex);
            }
        }
        std::stable_sort(found_.begin(), found_.end(), [](const PrintCause& a, const PrintCause& b) { return a.scale > b.scale; });
        return std::move(found_);
    }

private:
    void add(PrintCause cause) { found_.push_back(std::move(cause)); }

    void fitted(const Paper& paper, const kit::Printer& printer, kit::Sides sides) {
        const Margins& margins = sides == kit::Sides::single ? printer.single : printer.duplex;
        const double centred = fitted_scale(made_, {paper, Print::bordered, margins});
        const double within = fitted_scale(made_, {paper, Print::bordered, evened(margins)});
        add({Kind::fitted, paper, &printer, sides, centred != within, centred});
        if (centred != within) add({Kind::fitted, paper, &printer, sides, false, within});
    }

    const kit::Pipeline& pipeline_;
    const Paper& made_;
    std::vector<PrintCause> found_;
};

}  // namespace

Length gauge_length(const Paper& paper) {
    const Length room = SheetMargins::content(paper.size.as_portrait()).height() - Length::mm(16);  // title, flags and their words
    const kit::BothLengths whole{Length::mm(200), Length::inches(8)}, half{Length::mm(100), Length::inches(4)};
    return whole.in(paper.ruler) <= room ? whole.in(paper.ruler) : half.in(paper.ruler);
}

Length gauge_reading(const Paper& paper, double percent) {
    return round_to_step(gauge_length(paper) * (percent / 100), ruler_mark(paper.ruler), Rounding::nearest);
}

Length ruler_mark(UnitSystem ruler) { return ruler == UnitSystem::metric ? Length::mm(0.5) : Length::inches(1.0 / 16); }

bool read_alike(Length a, Length b, UnitSystem ruler) { return abs(a - b) <= ruler_mark(ruler); }

double fitted_scale(const Paper& made, const Edition& onto) {
    const Rect room = fit_of(onto, false).printable;
    const Size sheet = made.size.as_portrait();
    return std::min(room.width() / sheet.width, room.height() / sheet.height);
}

std::vector<PrintCause> possible_causes(const kit::Pipeline& pipeline, const Paper& paper) { return Causes(pipeline, paper).all(); }

bool PrintReading::asks_for_paper() const {
    return std::any_of(causes.begin(), causes.end(), [&](const PrintCause& c) { return c.in_printer.name != causes.front().in_printer.name; });
}

std::vector<PrintReading> possible_readings(const kit::Pipeline& pipeline, const Paper& paper) {
    const Length gauge = gauge_length(paper);
    std::vector<PrintReading> readings, enlarged;
    for (const PrintCause& cause : possible_causes(pipeline, paper)) {
        const Length reading = gauge * cause.scale;
        if (cause.kind == Kind::enlarged) enlarged.push_back({gauge, reading, {cause}});
        else readings.push_back({reading, reading, {cause}});
    }
    const auto span = [&](std::size_t i) { return readings[i].most - readings[i + 1].least; };
    while (readings.size() > 1) {
        std::size_t nearest = 0;
        for (std::size_t i = 1; i + 1 < readings.size(); ++i)
            if (span(i) < span(nearest)) nearest = i;
        if (!read_alike(readings[nearest].most, readings[nearest + 1].least, paper.ruler)) break;
        PrintReading& into = readings[nearest];
        PrintReading& from = readings[nearest + 1];
        into.least = from.least;
        into.causes.insert(into.causes.end(), from.causes.begin(), from.causes.end());
        readings.erase(readings.begin() + static_cast<std::ptrdiff_t>(nearest) + 1);
    }
    readings.insert(readings.begin(), enlarged.begin(), enlarged.end());
    return readings;
}

}  // namespace qw::compose
