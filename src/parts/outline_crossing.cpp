// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/outline_crossing.h"

#include "parts/arcs.h"
#include "parts/outline.h"
#include "parts/plane.h"

#include <algorithm>

namespace qw::parts {

namespace {

struct Chord {
    Vec from, to;
    std::size_t edge = 0;
};

std::vector<Chord> chords_of(const Outline& outline) {
    std::vector<Chord> chords;
    Point at = outline.start;
    for (std::size_t i = 0; i < outline.edges.size(); ++i) {
        Ring ring;
        add_chords(ring, at, outline.edges[i]);
        for (const Point& to : ring) {
            chords.push_back({Vec::of(at), Vec::of(to), i});
            at = to;
        }
    }
    return chords;
}

double to_segment(Vec p, const Chord& s) {
    const Vec along = s.to - s.from;
    const double t = std::clamp(dot(p - s.from, along) / std::max(dot(along, along), 1e-12), 0.0, 1.0);
    return (p - (s.from + along * t)).length();
}

bool cross_over(const Chord& a, const Chord& b) {
    const Vec u = a.to - a.from, v = b.to - b.from;
    return cross(u, b.from - a.from) * cross(u, b.to - a.from) < 0 && cross(v, a.from - b.from) * cross(v, a.to - b.from) < 0;
}

bool far_apart(const Chord& a, const Chord& b) {
    const double room = same_point.in_mm();
    return std::max(a.from.x, a.to.x) + room < std::min(b.from.x, b.to.x) || std::max(b.from.x, b.to.x) + room < std::min(a.from.x, a.to.x) ||
           std::max(a.from.y, a.to.y) + room < std::min(b.from.y, b.to.y) || std::max(b.from.y, b.to.y) + room < std::min(a.from.y, a.to.y);
}

bool meet(const Chord& a, const Chord& b) {
    if (far_apart(a, b)) return false;
    if (cross_over(a, b)) return true;
    return std::min({to_segment(a.from, b), to_segment(a.to, b), to_segment(b.from, a), to_segment(b.to, a)}) < same_point.in_mm();
}

/// The next chord runs back along this one.
bool turns_back(const Chord& a, const Chord& b) {
    if (dot(a.to - a.from, b.to - b.from) >= 0) return false;
    return std::min(to_segment(a.from, b), to_segment(b.to, a)) < same_point.in_mm();
}

}  // namespace

std::optional<std::size_t> crossing_edge(const Outline& outline) {
    const std::vector<Chord> chords = chords_of(outline);
    const std::size_t n = chords.size();
    for (std::size_t i = 0; i < n; ++i) {
        if (n > 2 && turns_back(chords[i], chords[(i + 1) % n])) return chords[(i + 1) % n].edge;
        for (std::size_t j = i + 2; j < n; ++j)
            if (!(i == 0 && j + 1 == n) && meet(chords[i], chords[j])) return chords[j].edge;
    }
    return std::nullopt;
}

}  // namespace qw::parts
