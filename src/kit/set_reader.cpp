// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/set_reader.h"

#include "kit/map_reader.h"
#include "kit/values.h"

#include <algorithm>

namespace qw::kit {

namespace {

/// Design: what buyers may choose when they print, from half-way below 50 % to what drivers add for borderless.
constexpr double least_print_at = 0.30, most_print_at = 1.03;

/// Beyond this a length is a slip of the unit: 3 cm for 3 mm passes the reader of lengths, but not this.
const LengthRange edge_range{Length(), Length::mm(25), "0 mm to 25 mm"};

/// More is no journal any more; a pocket that holds a booklet is some millimetres thick.
constexpr int most_glued_in = 200;
const LengthRange filled_range{Length::mm(0.02), Length::mm(50), "0.02 mm to 50 mm"};

std::vector<std::string> paper_stocks(const Pipeline& pipeline) {
    std::vector<std::string> names;
    for (const Stock& stock : pipeline.stocks)
        if (stock.kind == Stock::Kind::paper) names.push_back(stock.name);
    return names;
}

std::optional<LastBack> last_back_value(const Node& node, Faults& faults) {
    if (!word_value<bool>({{"blank", true}})(node, faults)) return std::nullopt;
    return LastBack{std::nullopt, node.mark};
}

/// "with-pages", the default, gives nothing.
std::optional<std::optional<double>> print_at_value(const Node& node, Faults& faults) {
    if (node.kind == Node::Kind::text && node.text == "with-pages") return std::optional<double>();
    const auto value =
        quantity_value({{{"%", 0.01}}, least_print_at, most_print_at, "100 %, or with-pages", "30 % to 103 %"})(node, faults);
    if (!value) return std::nullopt;
    return std::optional<double>(*value);
}

class SetReader {
public:
    SetReader(const Entry& entry, const SetContext& context, ArtworkFinder& finder, Faults& faults)
        : map_(entry.value, faults, "the set '" + entry.key + "'"), context_(context), finder_(finder), faults_(faults) {
        set_.name = entry.key;
        set_.mark = entry.mark;
    }

    Set read() {
        role_known_ = map_.required(
            "role", set_.role,
            word_value<Role>(
                {{"journal-page", Role::journal_page}, {"full-sheet", Role::full_sheet}, {"part", Role::part}, {"extra", Role::extra}}));
        read_sides();
        read_sizes();
        map_.optional("place", set_.place,
                      word_value<Place>({{"as-drawn", Place::as_drawn}, {"cover", Place::cover}, {"contain", Place::contain}}));
        map_.optional("print-at", set_.print_at, print_at_value);
        read_stock();
        read_glued_in();
        if (!role_known_) read_either();
        else if (set_.role == Role::part) read_part();
        else read_sheets();
        map_.done();
        return std::move(set_);
    }

private:
    void read_sides() {
        if (set_.role == Role::journal_page) set_.sides = Sides::duplex;
        const bool sides_read =
            map_.optional("sides", set_.sides, word_value<Sides>({{"single", Sides::single}, {"duplex", Sides::duplex}})) ||
            !map_.has("sides");
        if (sides_read && role_known_ && set_.sides == Sides::single)
            map_.forbid("last-back", "single-sided sheets have no backs", "remove it, or write 'sides: duplex'");
        else map_.optional("last-back", set_.last_back, last_back_value);
    }

    void read_sizes() {
        map_.optional("drawn-at", set_.drawn_at, size_value);
        map_.optional("bleed", set_.bleed, length_value(edge_range));
        map_.optional("safe-area", set_.safe_area, length_value(edge_range));
        if (!set_.drawn_at) return;
        const Length left = min(set_.drawn_at->width, set_.drawn_at->height) - 2 * (set_.bleed + set_.safe_area);
        if (left <= Length())
            faults_.add("out-of-range", map_.mark_of("drawn-at"), "bleed and safe area together leave nothing of the picture",
                        "a larger canvas, or less bleed and safe area");
    }

    void read_stock() {
        const bool written = map_.has("stock");
        map_.optional("stock", set_.stock, sourced(name_value({"a paper", "pipeline/stocks.yaml", paper_stocks(context_.pipeline)})));
        if (written || !role_known_) return;
        const auto usual = context_.pipeline.usual.find(name_of(set_.role));
        if (usual != context_.pipeline.usual.end()) set_.stock = usual->second;
    }

    /// What is glued into the journal fills its spine.
    void read_glued_in() {
        if (role_known_ && set_.role != Role::part && set_.role != Role::extra) {
            const std::string why = "only parts and extras are glued into the journal";
            for (const char* key : {"glued-in", "filled"}) map_.forbid(key, why, "remove it, or write 'role: extra'");
            return;
        }
        map_.optional("glued-in", set_.glued_in, whole_number_value(0, most_glued_in));
        if (map_.has("glued-in")) map_.optional("filled", set_.filled, length_value(filled_range));
        else map_.forbid("filled", "nothing of the set is glued in", "remove it, or say with 'glued-in' how many are");
    }

    void read_sheets() {
        if (const Node* files = map_.required("files")) set_.files = finder_.find(*files, faults_);
        const std::string why = "only a set with 'role: part' has it";
        for (const char* key : {"part", "faces", "goes-in"}) map_.forbid(key, why, "remove it, or write 'role: part'");
    }

    void read_part() {
        map_.required("part", set_.part, sourced(name_value({"a part", "pipeline/parts/", context_.part_names})));
        if (const Node* faces = map_.required("faces")) read_faces(*faces);
        map_.optional("goes-in", set_.goes_in, sourced(name_value({"a set", "this kit", context_.set_names})));
        map_.forbid("files", "the artwork of a part stands under 'faces'", "write 'faces: { outside: … }'");
    }

    void read_faces(const Node& node) {
        if (!is_map(node, faults_, "outside: art/pockets/*.png")) return;
        if (node.entries.empty()) faults_.add("empty-list", node.mark, "no face is given", "such as { outside: art/pockets/*.png }");
        for (const Entry& entry : node.entries)
            if (check_plain_name(entry.key, entry.mark, faults_)) set_.faces[entry.key] = finder_.find(entry.value, faults_);
    }

    /// A set whose role is not known: what it holds is checked, whichever role was meant.
    void read_either() {
        if (const Node* files = map_.optional("files")) set_.files = finder_.find(*files, faults_);
        map_.optional("part", set_.part, sourced(name_value({"a part", "pipeline/parts/", context_.part_names})));
        if (const Node* faces = map_.optional("faces")) read_faces(*faces);
        map_.optional("goes-in", set_.goes_in, sourced(name_value({"a set", "this kit", context_.set_names})));
    }

    MapReader map_;
    const SetContext& context_;
    ArtworkFinder& finder_;
    Faults& faults_;
    Set set_;
    bool role_known_ = false;
};

}  // namespace

Set read_set(const Entry& entry, const SetContext& context, ArtworkFinder& finder, Faults& faults) {
    return SetReader(entry, context, finder, faults).read();
}

void check_goes_in(const std::vector<Set>& sets, Faults& faults) {
    const auto find = [&](const std::string& name) {
        return std::find_if(sets.begin(), sets.end(), [&](const Set& set) { return set.name == name; });
    };
    for (const Set& set : sets) {
        if (set.goes_in->empty()) continue;
        const auto outer = find(*set.goes_in);
        if (outer == sets.end()) continue;  // it has been told
        if (outer->role != Role::part)
            faults.add("not-here", set.goes_in.mark, in_quotes(*set.goes_in) + " is no part, so nothing goes in it",
                       "a set with 'role: part'");
        auto next = outer;
        for (std::size_t steps = 0; next != sets.end() && next->name != set.name && steps < sets.size(); ++steps)
            next = find(*next->goes_in);
        if (next != sets.end() && next->name == set.name)
            faults.add("goes-in-circle", set.goes_in.mark, in_quotes(set.name) + " would go in itself", "a larger part");
    }
}

const std::vector<std::string>& set_keys() {
    static const std::vector<std::string> keys{"role",  "files",    "sides",    "last-back", "drawn-at", "bleed", "safe-area", "place",
                                               "stock", "print-at", "glued-in", "filled",    "part",     "faces", "goes-in"};
    return keys;
}

}  // namespace qw::kit
