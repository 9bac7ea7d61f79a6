// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/packing.h"

#include "parts/packing_bound.h"
#include "parts/packing_boxes.h"
#include "parts/packing_search.h"

#include <algorithm>
#include <array>
#include <tuple>

namespace qw::parts {

namespace packing {
namespace {

bool fits(Size size, Size area) { return size.width <= area.width && size.height <= area.height; }

/// A sheet lies the long way while it is filled, so that a sheet and the same one turned get the same filling. `upright`
/// is the turn that a copy has here when it is not turned on the sheet as it was given.
struct Sheet {
    Region shape;
    Size area;
    Length gap;
    int upright = 0;
};

Task task_of(const Sheet& sheet) {
    constexpr std::size_t corners = 40;
    Task task;
    task.area = sheet.area;
    task.gap = sheet.gap;
    std::array<Region, 4> seen;
    for (int i = 0; i < 4; ++i) {
        const int turn = (sheet.upright + i) % 4;
        const Region shape = turned(sheet.shape, turn);
        const Rect box = bounds(shape);
        task.size[turn] = box.size();
        seen[turn] = moved(shape, -box.left, -box.bottom);
        const bool known = std::any_of(task.turns.begin(), task.turns.end(),
                                       [&](int other) { return same_area(seen[other], seen[turn]); });
        if (fits(box.size(), sheet.area) && !known) task.turns.push_back(turn);
    }
    if (task.turns.empty()) return task;
    const Pairs pairs = pairs_of(with_fewer_corners(sheet.shape, corners), disc_outside(sheet.gap), task.turns);
    for (const int stays : task.turns)
        for (const int other : task.turns) task.no_fit[stays][other] = NoFit(pairs[stays][other]);
    return task;
}

/// Copies side by side by their bounds: what holds for any shape.
Copies by_bounds(const Task& task, int upright) {
    constexpr std::int64_t steps = 2'000'000;
    const Size area{task.area.width + task.gap, task.area.height + task.gap};
    const Size box{task.size[upright].width + task.gap, task.size[upright].height + task.gap};
    Copies copies;
    for (const Box& found : boxes_on(area, box, task.target, steps)) copies.push_back({(upright + found.turned) % 4, found.at});
    return copies;
}

/// The copies as they lie on the sheet that was given, as far up and left as they go together, in reading order.
std::vector<Spot> spots_of(const Copies& copies, const Task& task, const Region& shape, bool sheet_turned, std::size_t wanted) {
    struct Placed {
        Spot spot;
        Rect box;
    };
    std::vector<Placed> placed;
    for (const Copy& copy : copies) {
        Rect box = Rect::at(copy.at, task.size[copy.turn]);
        if (sheet_turned) box = {box.bottom, task.area.width - box.right, box.top, task.area.width - box.left};
        placed.push_back({{(copy.turn + (sheet_turned ? 3 : 0)) % 4, {}}, box});
    }
    std::sort(placed.begin(), placed.end(), [](const Placed& a, const Placed& b) {
        return std::tuple(-a.box.top, a.box.left, a.spot.quarter_turns) < std::tuple(-b.box.top, b.box.left, b.spot.quarter_turns);
    });
    if (placed.size() > wanted) placed.resize(wanted);
    Length left = placed[0].box.left;
    for (const Placed& one : placed) left = min(left, one.box.left);
    const Length up = (sheet_turned ? task.area.width : task.area.height) - placed[0].box.top;
    std::vector<Spot> spots;
    for (Placed& one : placed) {
        const Rect own = bounds(turned(shape, one.spot.quarter_turns));
        one.spot.by = {one.box.left - own.left - left, one.box.bottom - own.bottom + up};
        spots.push_back(one.spot);
    }
    return spots;
}

/// Blocks of rectangles leave little to find.
std::int64_t search_steps(const Region& shape) {
    constexpr std::int64_t most = 8'000'000;
    const Rect box = bounds(shape);
    const Ring corners{{box.left, box.bottom}, {box.right, box.bottom}, {box.right, box.top}, {box.left, box.top}};
    return same_area(shape, {corners}) ? most / 8 : most;
}

SheetFill filled(const Region& shape, Size area, Length gap, std::size_t wanted) {
    const bool turn_sheet = area.width < area.height;
    const Sheet sheet{shape, turn_sheet ? area.turned() : area, gap, turn_sheet ? 1 : 0};
    Task task = task_of(sheet);
    if (task.turns.empty()) return {{}, true};
    task.target = std::min(wanted, most_copies(shape, sheet.area, gap));
    Copies copies = by_bounds(task, sheet.upright);
    if (copies.size() == 1 && task.target > 1 && one_at_most(shape, sheet.area, gap, task.turns)) task.target = 1;
    if (copies.size() < task.target) copies = searched(task, copies, {search_steps(shape)});
    SheetFill fill{spots_of(copies, task, shape, turn_sheet, wanted), false};
    fill.exact = fill.spots.size() >= task.target;
    return fill;
}

}  // namespace
}  // namespace packing

SheetFill fill_sheet(const Region& shape, Size area, Length gap, std::size_t wanted) {
    const Region outer = packing::outer_rings(shape);
    const Size used{min(area.width, packing::largest_area), min(area.height, packing::largest_area)};
    if (outer.empty() || wanted == 0) return {{}, true};
    return packing::filled(outer, used, max(gap, Length()), wanted);
}

Lack lack_of(const Region& shape, Size area) {
    const Size size = bounds(shape).size();
    if (size.width <= Length() || size.height <= Length()) return {};
    const auto lack = [area](Size as_turned) {
        return Lack{max(as_turned.width - area.width, {}), max(as_turned.height - area.height, {}),
                    std::min(area.width / as_turned.width, area.height / as_turned.height)};
    };
    const Lack upright = lack(size), turned = lack(size.turned());
    return turned.largest_scale > upright.largest_scale ? turned : upright;
}

}  // namespace qw::parts
