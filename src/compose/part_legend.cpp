// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/part_legend.h"

#include <algorithm>
#include <functional>
#include <optional>

namespace qw::compose {

namespace {

const Length sample_width = Length::mm(9), sample_gap = Length::mm(1.5), entry_gap = Length::mm(5), legend_step = Length::mm(1.5);
constexpr Setting legend_type = setting::small;

/// A sample of a line with its name, or words alone.
struct LegendEntry {
    std::string words;
    std::function<void(Canvas&, Point middle_left)> sample;
    Length width;
};

class LegendLayout {
public:
    LegendLayout(Canvas& canvas, const PartLegend& legend, const kit::PartRules& rules, const texts::Passages& words)
        : canvas_(canvas), rules_(rules), words_(words) {
        line("cut", rules.cut);
        if (legend.valley) line("valley", rules.valley);
        if (legend.mountain) line("mountain", rules.mountain);
        if (legend.glue) entry("glue-here", [this](Canvas& c, Point at) { hatched(c, at); });
        if (legend.holes) entry("hole", [this](Canvas& c, Point at) { hole(c, at); });
        entries_.push_back({legend.sheet, {}, canvas.width(legend_type, legend.sheet)});
    }

    /// Lines of entries no wider than `width`; nothing when one is wider by itself.
    std::optional<std::vector<std::vector<const LegendEntry*>>> lines(Length width) const {
        std::vector<std::vector<const LegendEntry*>> all(1);
        Length used;
        for (const LegendEntry& one : entries_) {
            if (one.width > width) return std::nullopt;
            const Length more = all.back().empty() ? one.width : entry_gap + one.width;
            if (used + more > width) all.emplace_back(), used = one.width;
            else used += more;
            all.back().push_back(&one);
        }
        return all;
    }

    static Length height(std::size_t lines) { return legend_type.leading * static_cast<double>(lines); }

    void draw(const std::vector<std::vector<const LegendEntry*>>& lines, Point top_left) {
        const Length cap = canvas_.fonts().cap_height(legend_type.cut, legend_type.size);
        Length y = top_left.y - (legend_type.leading + cap) / 2;
        for (const auto& entries : lines) {
            Length x = top_left.x;
            for (const LegendEntry* one : entries) {
                if (one->sample) one->sample(canvas_, {x, y + cap / 2});
                canvas_.words({one->sample ? x + sample_width + sample_gap : x, y}, one->words, legend_type);
                x += one->width + entry_gap;
            }
            y -= legend_type.leading;
        }
    }

private:
    void entry(const std::string& name, std::function<void(Canvas&, Point)> sample) {
        const std::string words = words_.line(name);
        entries_.push_back({words, std::move(sample), sample_width + sample_gap + canvas_.width(legend_type, words)});
    }
    void line(const std::string& name, const kit::LineStyle& style) {
        entry(name, [&style](Canvas& c, Point at) { c.line(at, {at.x + sample_width, at.y}, style.weight, style.dash); });
    }
    void hatched(Canvas& canvas, Point at) const {
        const Rect field{at.x, at.y - Length::mm(1.2), at.x + sample_width, at.y + Length::mm(1.2)};
        canvas.add(strokes_outline(hatching(region_of(field), rules_.hatch_gap), rules_.hatch_weight));
    }
    void hole(Canvas& canvas, Point at) const {
        const Length radius = Length::mm(1.2);
        const Point middle{at.x + sample_width - radius, at.y};
        canvas.circle(middle, radius, rules_.hatch_weight);
        canvas.line({middle.x - radius, middle.y}, {middle.x + radius, middle.y}, rules_.hatch_weight);
        canvas.line({middle.x, middle.y - radius}, {middle.x, middle.y + radius}, rules_.hatch_weight);
    }

    Canvas& canvas_;
    const kit::PartRules& rules_;
    const texts::Passages& words_;
    std::vector<LegendEntry> entries_;
};

/// The lowest place, and there the one farthest left.
std::optional<Point> free_place(Size box, const Rect& area, const std::vector<Rect>& taken) {
    for (Length y = area.bottom; y + box.height <= area.top; y += legend_step)
        for (Length x = area.left; x + box.width <= area.right; x += legend_step) {
            const Rect rect = Rect::at({x, y}, box);
            if (std::all_of(taken.begin(), taken.end(), [&](const Rect& t) { return t.shared_with(rect).empty(); })) return Point{x, y};
        }
    return std::nullopt;
}

}  // namespace

bool draw_part_legend(Canvas& canvas, const PartLegend& legend, const Rect& area, const std::vector<Rect>& taken, const kit::PartRules& rules,
                      const texts::Passages& words) {
    LegendLayout layout(canvas, legend, rules, words);
    std::size_t before = 0;
    for (const double share : {1.0, 0.75, 0.5, 0.33, 0.25, 0.15}) {
        const Length width = area.width() * share;
        const auto lines = layout.lines(width);
        if (!lines || lines->size() == before) continue;
        before = lines->size();
        Length widest;
        for (const auto& entries : *lines) {
            Length used = entry_gap * static_cast<double>(entries.size() - 1);
            for (const LegendEntry* one : entries) used += one->width;
            widest = max(widest, used);
        }
        const Size box{widest, LegendLayout::height(lines->size())};
        const auto place = free_place(box, area, taken);
        if (!place) continue;
        layout.draw(*lines, {place->x, place->y + box.height});
        return true;
    }
    return false;
}

}  // namespace qw::compose
