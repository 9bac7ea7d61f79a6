// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/packing.h"

#include "parts/packing_all_boxes.h"
#include "parts/packing_bound.h"
#include "parts/packing_boxes.h"
#include "parts/packing_search.h"

#include <algorithm>
#include <array>
#include <numbers>
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

/// A gap between copies is half a gap round each, and round the area: boxes without a gap on a larger area.
Size grown_by(Size size, Length gap) { return {size.width + gap, size.height + gap}; }

Copies copies_of(const std::vector<Box>& boxes, int upright) {
    Copies copies;
    for (const Box& box : boxes) copies.push_back({(upright + box.turned) % 4, box.at});
    return copies;
}

/// Copies side by side by their bounds: what holds for any shape.
Copies by_bounds(const Task& task, int upright) {
    constexpr std::int64_t steps = 2'000'000;
    return copies_of(boxes_on(grown_by(task.area, task.gap), grown_by(task.size[upright], task.gap), task.target, steps), upright);
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

bool is_rectangle(const Region& shape) {
    const Rect box = bounds(shape);
    return same_area(shape, {{{box.left, box.bottom}, {box.right, box.bottom}, {box.right, box.top}, {box.left, box.top}}});
}

/// One more rectangle than known, as often as trying all ways finds it; `target` comes down if that proves that there are
/// no more. Two copies at a corner from each other may be closer along both axes than the gap, but not by more than the
/// diagonal of a square with it: with that much between them no way must be left.
void try_all_ways(Task& task, int upright, Copies& copies) {
    constexpr std::int64_t steps = 300'000;
    const auto more = [&](Length gap) {
        return all_ways(grown_by(task.area, gap), grown_by(task.size[upright], gap), copies.size() + 1, steps);
    };
    while (copies.size() < task.target) {
        const auto boxes = more(task.gap);
        if (!boxes || boxes->empty()) break;
        copies = copies_of(*boxes, upright);
    }
    if (copies.size() >= task.target) return;
    const auto closer = more(Length::units(static_cast<std::int64_t>(task.gap / Length::units(1) * (std::numbers::sqrt2 / 2))));
    if (closer && closer->empty()) task.target = copies.size();
}

SheetFill filled(const Region& shape, Size area, Length gap, std::size_t wanted) {
    constexpr std::int64_t many_steps = 8'000'000, few_steps = 1'000'000;  // for rectangles little is left to find
    const bool turn_sheet = area.width < area.height;
    const Sheet sheet{shape, turn_sheet ? area.turned() : area, gap, turn_sheet ? 1 : 0};
    Task task = task_of(sheet);
    if (task.turns.empty()) return {{}, true};
    task.target = std::min(wanted, most_copies(shape, sheet.area, gap));
    Copies copies = by_bounds(task, sheet.upright);
    if (copies.size() == 1 && task.target > 1 && one_at_most(shape, sheet.area, gap, task.turns)) task.target = 1;
    const bool rectangle = is_rectangle(shape);
    if (copies.size() < task.target && rectangle) try_all_ways(task, sheet.upright, copies);
    if (copies.size() < task.target) copies = searched(task, copies, {rectangle ? few_steps : many_steps});
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
