// SPDX-License-Identifier: GPL-3.0-or-later
#include "field.h"

#include <map>
#include <utility>

#include "chance.h"

namespace art {
namespace {

using Edge = std::pair<long, int>;  // cell corner, 0 to the right or 1 downwards

// Values on a grid whose rim is far below every level, so that every outline closes.
struct Grid {
    long columns, rows;
    std::vector<double> value;
    double get(long x, long y) const { return value[static_cast<std::size_t>(y * columns + x)]; }
};

Grid sample(const Field& field, const Box& box, double cell) {
    Grid g{static_cast<long>(box.w / cell) + 5, static_cast<long>(box.h / cell) + 5, {}};
    for (long y = 0; y < g.rows; ++y)
        for (long x = 0; x < g.columns; ++x) {
            const bool rim = x == 0 || y == 0 || x == g.columns - 1 || y == g.rows - 1;
            const Point p{box.x + static_cast<double>(x - 2) * cell, box.y + static_cast<double>(y - 2) * cell};
            g.value.push_back(rim ? -1e6 : field.at(p));
        }
    return g;
}

// Marching squares: the directed edge-to-edge steps with the high ground on the left.
std::multimap<Edge, Edge> steps(const Grid& g, double level) {
    std::multimap<Edge, Edge> next;
    for (long y = 0; y + 1 < g.rows; ++y)
        for (long x = 0; x + 1 < g.columns; ++x) {
            const int code = (g.get(x, y) > level) | (g.get(x + 1, y) > level) << 1 |
                             (g.get(x + 1, y + 1) > level) << 2 | (g.get(x, y + 1) > level) << 3;
            const long k = y * g.columns + x;
            const Edge top{k, 0}, left{k, 1}, bottom{k + g.columns, 0}, right{k + 1, 1};
            const auto go = [&](Edge a, Edge b) { next.emplace(a, b); };
            switch (code) {
                case 1:
                    go(top, left);
                    break;
                case 2:
                    go(right, top);
                    break;
                case 3:
                    go(right, left);
                    break;
                case 4:
                    go(bottom, right);
                    break;
                case 5:
                    go(top, left), go(bottom, right);
                    break;
                case 6:
                    go(bottom, top);
                    break;
                case 7:
                    go(bottom, left);
                    break;
                case 8:
                    go(left, bottom);
                    break;
                case 9:
                    go(top, bottom);
                    break;
                case 10:
                    go(right, top), go(left, bottom);
                    break;
                case 11:
                    go(right, bottom);
                    break;
                case 12:
                    go(left, right);
                    break;
                case 13:
                    go(top, right);
                    break;
                case 14:
                    go(left, top);
                    break;
                default:
                    break;
            }
        }
    return next;
}

Point on_edge(const Grid& g, Edge e, double level, const Box& box, double cell) {
    const long x = e.first % g.columns, y = e.first / g.columns;
    const double a = g.get(x, y), b = e.second == 0 ? g.get(x + 1, y) : g.get(x, y + 1);
    const double t = (level - a) / (b - a);
    return {box.x + (static_cast<double>(x - 2) + (e.second == 0 ? t : 0)) * cell,
            box.y + (static_cast<double>(y - 2) + (e.second == 1 ? t : 0)) * cell};
}

}  // namespace

Field::Field(std::vector<Hill> hills, double floor, double roughness, unsigned seed)
    : hills_(std::move(hills)), floor_(floor), roughness_(roughness), seed_(seed) {}

double Field::corner(long ix, long iy) const {
    const auto x = static_cast<std::uint64_t>(ix + 4096), y = static_cast<std::uint64_t>(iy + 4096);
    return Chance(seed_ * 1000003ULL + x * 8191ULL + y * 131071ULL).between(-1, 1);
}

double Field::noise(Point p) const {
    const double fx = std::floor(p.x), fy = std::floor(p.y);
    const auto ease = [](double t) { return t * t * t * (t * (t * 6 - 15) + 10); };
    const double u = ease(p.x - fx), v = ease(p.y - fy);
    const auto ix = static_cast<long>(fx), iy = static_cast<long>(fy);
    const double top = corner(ix, iy) + (corner(ix + 1, iy) - corner(ix, iy)) * u;
    const double low = corner(ix, iy + 1) + (corner(ix + 1, iy + 1) - corner(ix, iy + 1)) * u;
    return top + (low - top) * v;
}

double Field::at(Point p) const {
    double sum = floor_;
    for (const Hill& h : hills_) {
        const double dx = (p.x - h.at.x) / (h.reach * h.stretch), dy = (p.y - h.at.y) / h.reach;
        sum += h.height * std::exp(-(dx * dx + dy * dy));
    }
    double scale = 34, weight = roughness_;
    for (int i = 0; i < 4; ++i) {
        sum += weight * noise({p.x / scale + 17.0 * i, p.y / scale});
        scale *= 0.5;
        weight *= 0.46;
    }
    return sum;
}

std::vector<Path> Field::above(double level, const Box& box, double cell) const {
    const Grid g = sample(*this, box, cell);
    std::multimap<Edge, Edge> next = steps(g, level);
    std::vector<Path> out;
    while (!next.empty()) {
        Path path;
        auto it = next.begin();
        while (it != next.end()) {
            path.push_back(on_edge(g, it->first, level, box, cell));
            const Edge to = it->second;
            next.erase(it);
            it = next.find(to);
        }
        if (path.size() > 6) out.push_back(path);
    }
    return out;
}

}  // namespace art
