// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/shared_data.h"
#include "kit/values.h"

namespace qw::kit {

namespace {

const LengthRange weight_range{Length::points(0.1), Length::points(6), "0.1 pt to 6 pt"};
const LengthRange dash_range{Length::points(0.1), Length::points(72), "0.1 pt to 72 pt"};
const LengthRange room_range{Length(), Length::mm(50), "0 mm to 50 mm"};

/// Lengths in turns on and off. Equal ones may stand beside each other.
std::optional<std::vector<Length>> dash_value(const Node& node, Faults& faults) {
    if (!is_list(node, faults, "[6 pt, 3 pt]")) return std::nullopt;
    std::vector<Length> dash;
    for (const Node& item : node.items)
        if (const auto length = length_value(dash_range)(item, faults)) dash.push_back(*length);
    if (node.items.size() % 2 != 0)
        faults.add("bad-dash", node.mark, "a dash has pairs of lengths, on and off, and here are " + std::to_string(node.items.size()),
                   "such as [6 pt, 3 pt]");
    return dash;
}

class RulesReader {
public:
    RulesReader(const Node& root, Faults& faults, PartRules& rules)
        : map_(root, faults, "the file"), faults_(faults), rules_(rules) {}

    void read() {
        check_format(map_);
        read_lines();
        read_room();
        map_.done();
    }

private:
    using ReadOne = std::function<void(const Entry& entry, MapReader& map)>;

    /// One of the names that must be there, with its reader and its reason.
    void read_one(MapReader& parent, const std::string& name, const ReadOne& read) {
        const Node* node = parent.required(name);
        if (!node) return;
        const Entry entry{name, parent.mark_of(name), *node};
        MapReader map(*node, faults_, in_quotes(name));
        read(entry, map);
        need_origin(map, entry, faults_);
        map.done();
    }

    void read_lines() {
        const Node* lines = map_.required("lines");
        if (!lines || !is_map(*lines, faults_, "cut: { weight: 0.6 pt, why: … }")) return;
        MapReader map(*lines, faults_, "'lines'");
        const auto line = [&](const char* name, LineStyle& style) {
            read_one(map, name, [&](const Entry&, MapReader& m) {
                m.required("weight", style.weight, length_value(weight_range));
                m.optional("dash", style.dash, dash_value);
            });
        };
        line("cut", rules_.cut);
        line("valley", rules_.valley);
        line("mountain", rules_.mountain);
        read_one(map, "hatch", [&](const Entry&, MapReader& m) {
            m.required("weight", rules_.hatch_weight, length_value(weight_range));
            m.required("gap", rules_.hatch_gap, length_value({Length::mm(0.5), Length::mm(20), "0.5 mm to 20 mm"}));
        });
        map.done();
        check_apart(map);
    }

    /// Who folds has nothing but the dashes to tell one from the other.
    void check_apart(const MapReader& map) {
        const bool all_there = map.has("cut") && map.has("valley") && map.has("mountain");
        if (!all_there) return;
        if (rules_.valley.dash == rules_.mountain.dash)
            faults_.add("bad-dash", map.mark_of("mountain"), "valley and mountain folds look alike", "another dash than that of 'valley'");
        for (const auto& [name, style] : {std::pair{"valley", &rules_.valley}, std::pair{"mountain", &rules_.mountain}})
            if (style->dash == rules_.cut.dash)
                faults_.add("bad-dash", map.mark_of(name), "the line looks like the cut line", "another dash than that of 'cut'");
    }

    void read_room() {
        const Node* room = map_.required("room");
        if (!room || !is_map(*room, faults_, "scissors: { length: 6 mm, why: … }")) return;
        MapReader map(*room, faults_, "'room'");
        const auto length = [&](const char* name, Length& into) {
            bool known = false;
            read_one(map, name, [&](const Entry&, MapReader& m) { known = m.required("length", into, length_value(room_range)); });
            return known;
        };
        length("scissors", rules_.scissors_room);
        length("edge", rules_.edge_room);
        length("over-fold", rules_.over_fold);
        length("back-shift", rules_.back_shift);
        const bool clearance_known = length("clearance", rules_.clearance);
        const bool least_known = length("least-clearance", rules_.least_clearance);
        map.done();
        if (clearance_known && least_known && rules_.least_clearance > rules_.clearance)
            faults_.add("out-of-range", map.mark_of("least-clearance"), "the least clearance is larger than the clearance",
                        "at most that of 'clearance'");
    }

    MapReader map_;
    Faults& faults_;
    PartRules& rules_;
};

}  // namespace

void read_part_rules(DataFolder& folder, Pipeline& into) {
    const auto root = folder.tree("part-sheets.yaml");
    if (root) RulesReader(*root, folder.faults(), into.part_rules).read();
}

}  // namespace qw::kit
