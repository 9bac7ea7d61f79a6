// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/region.h"

#include "base/fault.h"

#include <clipper.hpp>

#include <algorithm>
#include <cmath>
#include <optional>

namespace qw::parts {

namespace {

namespace cl = ClipperLib;

cl::Path path_of(const Ring& ring) {
    cl::Path path;
    path.reserve(ring.size());
    for (const Point& p : ring) path.emplace_back(p.x.in_units(), p.y.in_units());
    return path;
}

cl::Paths paths_of(const Region& region) {
    cl::Paths paths;
    paths.reserve(region.size());
    for (const Ring& ring : region) paths.push_back(path_of(ring));
    return paths;
}

Region region_of(const cl::Paths& paths) {
    Region region;
    region.reserve(paths.size());
    for (const cl::Path& path : paths) {
        Ring& ring = region.emplace_back();
        ring.reserve(path.size());
        for (const cl::IntPoint& p : path) ring.push_back({Length::units(p.X), Length::units(p.Y)});
    }
    return region;
}

/// Lengths on paper are far inside Clipper's range; what is beyond came from a broken formula.
template <typename Work>
Region guarded(const Work& work) {
    try {
        return work();
    } catch (const cl::clipperException& e) {
        throw Fault(FaultKind::not_understood, FaultNote{"shape-out-of-range", {}, std::string("a shape cannot be computed: ") + e.what(),
                                                         "shapes that fit on paper", {}});
    }
}

Region combined(cl::ClipType way, const Region& a, const Region& b) {
    return guarded([&] {
        cl::Clipper clipper;
        clipper.AddPaths(paths_of(a), cl::ptSubject, true);
        clipper.AddPaths(paths_of(b), cl::ptClip, true);
        cl::Paths made;
        clipper.Execute(way, made, cl::pftNonZero, cl::pftNonZero);
        return region_of(made);
    });
}

/// Twice the area, positive when counter-clockwise. Products of lengths on paper are exact in 128 bits, and near enough
/// in a double.
double twice_signed_mm2(const Ring& ring) {
    double sum = 0;
    if (ring.empty()) return 0;
    const Point o = ring.front();
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point &p = ring[i], &q = ring[(i + 1) % ring.size()];
        sum += (p.x - o.x).in_mm() * (q.y - o.y).in_mm() - (q.x - o.x).in_mm() * (p.y - o.y).in_mm();
    }
    return sum;
}

}  // namespace

Region united(const Region& a, const Region& b) { return combined(cl::ctUnion, a, b); }

Region united(const std::vector<Region>& all) {
    Region together;
    for (const Region& region : all) together.insert(together.end(), region.begin(), region.end());
    return combined(cl::ctUnion, together, {});
}

Region shared(const Region& a, const Region& b) {
    if (bounds(a).shared_with(bounds(b)).empty()) return {};
    return combined(cl::ctIntersection, a, b);
}

Region without(const Region& a, const Region& b) {
    if (b.empty()) return a;
    return combined(cl::ctDifference, a, b);
}

Region grown(const Region& region, Length by) {
    if (by == Length()) return united(region, {});
    return guarded([&] {
        cl::ClipperOffset offset(2, static_cast<double>(chord_error.in_units()));
        offset.AddPaths(paths_of(region), cl::jtRound, cl::etClosedPolygon);
        cl::Paths made;
        offset.Execute(made, static_cast<double>(by.in_units()));
        return region_of(made);
    });
}

double area_mm2(const Region& region) {
    double sum = 0;
    for (const Ring& ring : region) sum += twice_signed_mm2(ring);
    return sum / 2;
}

Rect bounds(const Region& region) {
    std::optional<Rect> box;
    for (const Ring& ring : region)
        for (const Point& p : ring) {
            if (!box) box = Rect{p.x, p.y, p.x, p.y};
            box = Rect{min(box->left, p.x), min(box->bottom, p.y), max(box->right, p.x), max(box->top, p.y)};
        }
    return box.value_or(Rect{});
}

Region moved(const Region& region, Length dx, Length dy) {
    Region result = region;
    for (Ring& ring : result)
        for (Point& p : ring) p = {p.x + dx, p.y + dy};
    return result;
}

Point mapped(Point point, const Matrix& map) {
    const auto x = static_cast<double>(point.x.in_units()), y = static_cast<double>(point.y.in_units());
    const auto per_point = static_cast<double>(Length::units_per_point);
    return {Length::units(std::llround(map.a * x + map.c * y + map.e * per_point)),
            Length::units(std::llround(map.b * x + map.d * y + map.f * per_point))};
}

Region mapped(const Region& region, const Matrix& map) {
    const bool turned_over = map.a * map.d - map.b * map.c < 0;
    Region result = region;
    for (Ring& ring : result) {
        for (Point& p : ring) p = mapped(p, map);
        if (turned_over) std::reverse(ring.begin(), ring.end());
    }
    return result;
}

bool holds(const Region& region, Point point) {
    int winding = 0;
    for (const Ring& ring : region) {
        const int where = cl::PointInPolygon({point.x.in_units(), point.y.in_units()}, path_of(ring));
        if (where < 0) return true;
        if (where > 0) winding += twice_signed_mm2(ring) < 0 ? -1 : 1;
    }
    return winding != 0;
}

}  // namespace qw::parts
