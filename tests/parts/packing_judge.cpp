// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/packing_judge.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace qw::tests {

namespace {

struct Dot {
    double x = 0, y = 0;
};
using Outline = std::vector<Dot>;
constexpr double forgiven = 1e-4;  // mm

double cross(Dot o, Dot a, Dot b) { return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x); }
Dot middle(Dot a, Dot b) { return {(a.x + b.x) / 2, (a.y + b.y) / 2}; }

double distance(Dot p, Dot a, Dot b) {
    const double dx = b.x - a.x, dy = b.y - a.y, squared = dx * dx + dy * dy;
    const double t = squared > 0 ? std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / squared, 0.0, 1.0) : 0;
    return std::hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

double distance(Dot p, const Outline& outline) {
    double least = 1e9;
    for (std::size_t i = 0; i < outline.size(); ++i)
        least = std::min(least, distance(p, outline[i], outline[(i + 1) % outline.size()]));
    return least;
}

bool inside(Dot p, const Outline& outline) {
    bool result = false;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Dot a = outline[i], b = outline[(i + 1) % outline.size()];
        if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)) result = !result;
    }
    return result;
}

/// Each crosses the other's line by more than rounding.
bool cross_each_other(Dot a, Dot b, Dot c, Dot d) {
    const auto apart = [](Dot o, Dot q, Dot p, Dot r) {
        const double length = std::hypot(q.x - o.x, q.y - o.y), one = cross(o, q, p) / length, other = cross(o, q, r) / length;
        return (one > forgiven && other < -forgiven) || (one < -forgiven && other > forgiven);
    };
    return apart(a, b, c, d) && apart(c, d, a, b);
}

bool deep_inside(Dot p, const Outline& outline) { return inside(p, outline) && distance(p, outline) > forgiven; }

/// A point inside, away from the edges.
Dot inner_point(const Outline& outline) {
    Dot best;
    double deepest = -1;
    const std::size_t step = 1 + outline.size() / 12;
    for (std::size_t i = 0; i < outline.size(); i += step)
        for (std::size_t j = i + 1; j < outline.size(); j += step) {
            const Dot p = middle(outline[i], outline[j]);
            const double depth = inside(p, outline) ? distance(p, outline) : -1;
            if (depth > deepest) deepest = depth, best = p;
        }
    return best;
}

struct Frame {
    double left = 1e9, bottom = 1e9, right = -1e9, top = -1e9;
    void take(Dot p) {
        left = std::min(left, p.x), right = std::max(right, p.x);
        bottom = std::min(bottom, p.y), top = std::max(top, p.y);
    }
    bool meets(const Frame& o, double gap) const {
        return left < o.right + gap && o.left < right + gap && bottom < o.top + gap && o.bottom < top + gap;
    }
};

Frame frame_of(const Outline& outline) {
    Frame frame;
    for (const Dot p : outline) frame.take(p);
    return frame;
}

Frame frame_of(Dot a, Dot b) { return frame_of(Outline{a, b}); }

bool overlap(const Outline& a, const Outline& b) {
    const Frame of_b = frame_of(b);
    for (std::size_t i = 0; i < a.size(); ++i) {
        const Dot p = a[i], q = a[(i + 1) % a.size()];
        if (!frame_of(p, q).meets(of_b, 0)) continue;
        if (deep_inside(p, b) || deep_inside(middle(p, q), b)) return true;
        for (std::size_t j = 0; j < b.size(); ++j)
            if (cross_each_other(p, q, b[j], b[(j + 1) % b.size()])) return true;
    }
    return deep_inside(inner_point(a), b);
}

/// Of two that do not overlap; only what is nearer than `gap` is of interest.
double distance(const Outline& a, const Outline& b, double gap) {
    double least = gap;
    for (const auto& [one, other] : {std::pair(&a, &b), std::pair(&b, &a)}) {
        const Frame frame = frame_of(*other);
        for (const Dot p : *one)
            if (frame_of(p, p).meets(frame, gap)) least = std::min(least, distance(p, *other));
    }
    return least;
}

Outline placed(const parts::Region& shape, const parts::Spot& spot) {
    Outline outline;
    for (const Point& point : shape.at(0)) {
        Dot p{point.x.in_mm(), point.y.in_mm()};
        for (int i = 0; i < spot.quarter_turns; ++i) p = {-p.y, p.x};
        outline.push_back({p.x + spot.by.x.in_mm(), p.y + spot.by.y.in_mm()});
    }
    return outline;
}

/// A copy on the grid: what it covers, and what it keeps others from.
struct Place {
    std::uint64_t covers = 0, keeps = 0;
};

std::vector<Place> places_on(const Cells& cells, int gap) {
    std::vector<Place> places;
    for (int turn = 0; turn < 4; ++turn)
        for (int dy = -8; dy < 16; ++dy)
            for (int dx = -8; dx < 16; ++dx) {
                Place place;
                bool on_sheet = true;
                for (auto [x, y] : cells.shape) {
                    for (int i = 0; i < turn; ++i) std::swap(x, y), x = -x;
                    x += dx, y += dy;
                    on_sheet = on_sheet && x >= 0 && y >= 0 && x < cells.width && y < cells.height;
                    if (!on_sheet) break;
                    place.covers |= std::uint64_t{1} << (y * cells.width + x);
                }
                const auto same = [&](const Place& other) { return other.covers == place.covers; };
                if (on_sheet && std::none_of(places.begin(), places.end(), same)) places.push_back(place);
            }
    for (Place& place : places)
        for (int cell = 0; cell < cells.width * cells.height; ++cell)
            for (int other = 0; other < cells.width * cells.height; ++other) {
                if (!(place.covers >> cell & 1)) break;
                const int apart_x = std::max(0, std::abs(cell % cells.width - other % cells.width) - 1);
                const int apart_y = std::max(0, std::abs(cell / cells.width - other / cells.width) - 1);
                if (cell == other || apart_x * apart_x + apart_y * apart_y < gap * gap) place.keeps |= std::uint64_t{1} << other;
            }
    std::sort(places.begin(), places.end(), [](const Place& a, const Place& b) { return (a.covers & -a.covers) < (b.covers & -b.covers); });
    return places;
}

void most_of(const std::vector<Place>& places, std::size_t count, std::size_t size, std::size_t wanted, std::size_t& best) {
    best = std::max(best, count);
    std::uint64_t open = 0;
    for (const Place& place : places) open |= place.covers;
    std::size_t cells_open = 0;
    for (; open; open &= open - 1) ++cells_open;
    for (std::size_t i = 0; i < places.size() && best < wanted && count + cells_open / size > best; ++i) {
        std::vector<Place> left;
        for (std::size_t j = i + 1; j < places.size(); ++j)
            if (!(places[i].keeps & places[j].covers)) left.push_back(places[j]);
        most_of(left, count + 1, size, wanted, best);
    }
}

}  // namespace

parts::Region shape_mm(const std::vector<std::pair<double, double>>& corners) {
    parts::Ring ring;
    for (const auto& [x, y] : corners) ring.push_back({Length::mm(x), Length::mm(y)});
    return {ring};
}

parts::Region rectangle_mm(double width, double height) { return shape_mm({{0, 0}, {width, 0}, {width, height}, {0, height}}); }

std::string wrong_with(const parts::SheetFill& fill, const parts::Region& shape, Size area, Length gap) {
    std::vector<Outline> outlines;
    for (const parts::Spot& spot : fill.spots) outlines.push_back(placed(shape, spot));
    for (std::size_t i = 0; i < outlines.size(); ++i) {
        for (const Dot p : outlines[i])
            if (p.x < -1e-9 || p.y < -1e-9 || p.x > area.width.in_mm() + 1e-9 || p.y > area.height.in_mm() + 1e-9)
                return "spot " + std::to_string(i) + " leaves the area";
        for (std::size_t j = 0; j < i; ++j) {
            if (!frame_of(outlines[i]).meets(frame_of(outlines[j]), gap.in_mm())) continue;
            const std::string pair = "spots " + std::to_string(j) + " and " + std::to_string(i);
            if (overlap(outlines[i], outlines[j]) || overlap(outlines[j], outlines[i])) return pair + " overlap";
            const double apart = distance(outlines[i], outlines[j], gap.in_mm());
            if (apart < gap.in_mm() - forgiven) return pair + " are " + std::to_string(apart) + " mm apart";
        }
    }
    return {};
}

std::size_t most_on_cells(const Cells& cells, int gap, std::size_t wanted) {
    std::size_t best = 0;
    most_of(places_on(cells, gap), 0, cells.shape.size(), wanted, best);
    return best;
}

}  // namespace qw::tests
