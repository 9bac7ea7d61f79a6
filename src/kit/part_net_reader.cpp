// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/part_net_reader.h"

#include "kit/data_file.h"
#include "kit/part_values.h"

#include <algorithm>
#include <map>

namespace qw::kit {

namespace {

class PartNetReader {
public:
    PartNetReader(MapReader& root, PartTemplate& part, const Lookup& tools, Faults& faults)
        : root_(root), part_(part), tools_(tools), faults_(faults), panels_{"a panel", part.file, {}} {}

    void read() {
        read_entries(root_, "panels", "the panel", faults_, [&](const Entry& e, MapReader& m) { read_panel(e, m); });
        if (root_.has("panels") && panels_.known.empty())
            faults_.add("empty-list", root_.mark_of("panels"), "the part has no panels", "at least one panel");
        read_list_of_maps(root_, "folds", "fold", "- { moves: [tab], fold: mountain }", faults_,
                          [&](const Node& n, MapReader& m) { read_fold(n, m); });
        read_list_of_maps(root_, "glue", "glue", "- { tab: tab-left, on: back, with: glue-stick }", faults_,
                          [&](const Node& n, MapReader& m) { read_glue(n, m); });
        read_entries(root_, "faces", "the face", faults_, [&](const Entry& e, MapReader& m) { read_face(e, m); });
        if (root_.has("faces") && part_.faces.empty())
            faults_.add("empty-list", root_.mark_of("faces"), "nothing can be printed on the part", "at least one face");
        read_optional_entries(root_, "pockets", "the pocket", faults_, [&](const Entry& e, MapReader& m) { read_pocket(e, m); });
        read_optional_entries(root_, "holes", "the hole", faults_, [&](const Entry& e, MapReader& m) { read_hole(e, m); });
        read_optional_entries(root_, "no-ink", "the area", faults_, [&](const Entry& e, MapReader& m) { read_no_ink(e, m); });
        root_.optional("layers", part_.layers, panels_value());
    }

private:
    /// Where no panel could be read, that has been told, and none can be looked up.
    Reader<std::string> panel_value() const { return panels_.known.empty() ? Reader<std::string>(text_value) : name_value(panels_); }
    Reader<std::vector<std::string>> panels_value() const { return list_value<std::string>(panel_value(), "[front, tab-left]"); }
    Reader<int> folds_value() const { return whole_number_value(0, static_cast<int>(part_.folds.size())); }

    void read_panel(const Entry& entry, MapReader& map) {
        PanelTemplate panel;
        panel.name = entry.key;
        panel.mark = entry.mark;
        map.required("title", panel.title, text_value);
        map.required("outline", panel.outline, outline_value);
        panels_.known.push_back(entry.key);
        part_.panels.push_back(std::move(panel));
    }

    void read_fold(const Node& node, MapReader& map) {
        FoldTemplate fold;
        fold.mark = node.mark;
        map.required("moves", fold.moves, panels_value());
        map.required("fold", fold.valley, word_value<bool>({{"valley", true}, {"mountain", false}}));
        if (!fold.moves.empty() && fold.moves.size() == panels_.known.size())
            faults_.add("moves-all", map.mark_of("moves"), "the fold moves every panel, so that none stays to be folded from",
                        "some of the panels");
        part_.folds.push_back(std::move(fold));
    }

    void read_glue(const Node& node, MapReader& map) {
        GlueTemplate glue;
        glue.mark = node.mark;
        Lookup items{"an item", part_.file, {}};
        for (const ItemTemplate& item : part_.items) items.known.push_back(item.name);
        map.required("tab", glue.tab, panel_value());
        if (map.required("on", glue.on, panel_value()) && glue.on == glue.tab)
            faults_.add("same-panel", map.mark_of("on"), in_quotes(glue.on) + " cannot be glued on itself", "another panel");
        map.required("with", glue.with, name_value(items));
        part_.glue.push_back(std::move(glue));
    }

    void read_face(const Entry& entry, MapReader& map) {
        PartFaceTemplate face;
        face.name = entry.key;
        face.mark = entry.mark;
        map.required("title", face.title, text_value);
        const bool side_known = map.required("side", face.front, side_value);
        if (map.required("panels", face.panels, panels_value()) && side_known) check_free(face, map.mark_of("panels"));
        map.optional("head", face.head, direction_value);
        map.optional("needed", face.needed, yes_no_value);
        if (const Node* seen = map.optional("seen")) read_seen(*seen, face);
        part_.faces.push_back(std::move(face));
    }

    /// One side of a panel carries one picture.
    void check_free(const PartFaceTemplate& face, const SourceMark& where) {
        for (const std::string& panel : face.panels) {
            const auto [before, is_free] = taken_.emplace(std::pair(panel, face.front), face.name);
            if (is_free) continue;
            faults_.add("panel-taken", where,
                        "the " + std::string(face.front ? "front" : "back") + " of " + in_quotes(panel) + " belongs to the face " +
                            in_quotes(before->second),
                        "each side of a panel in one face");
        }
    }

    void read_seen(const Node& node, PartFaceTemplate& face) {
        if (!is_map(node, faults_, "{ after: 2, from: behind }")) return;
        MapReader map(node, faults_, "'seen'");
        read_after(map, face.after);
        map.optional("from", face.from_front, word_value<bool>({{"front", true}, {"behind", false}}));
        map.done();
    }

    void read_after(MapReader& map, std::optional<int>& after) {
        int folds = 0;
        if (map.optional("after", folds, folds_value())) after = folds;
    }

    void read_pocket(const Entry& entry, MapReader& map) {
        PocketTemplate pocket;
        pocket.name = entry.key;
        pocket.mark = entry.mark;
        map.required("title", pocket.title, text_value);
        if (const Node* between = map.required("between")) read_between(*between, pocket);
        map.required("opens", pocket.opens, direction_value);
        map.optional("closes", pocket.closes, yes_no_value);
        read_after(map, pocket.after);
        part_.pockets.push_back(std::move(pocket));
    }

    void read_between(const Node& node, PocketTemplate& pocket) {
        if (!is_list(node, faults_, "[front, back]")) return;
        if (node.items.size() != 2)
            return faults_.add("wrong-type", node.mark, "a pocket lies between two panels, and here are " + std::to_string(node.items.size()),
                               "[front panel, back panel]");
        const auto front = panel_value()(node.items[0], faults_), back = panel_value()(node.items[1], faults_);
        if (!front || !back) return;
        if (*front == *back)
            faults_.add("same-panel", node.items[1].mark, "a pocket cannot lie between " + in_quotes(*back) + " and itself", "another panel");
        pocket.front = *front;
        pocket.back = *back;
    }

    void read_hole(const Entry& entry, MapReader& map) {
        HoleTemplate hole;
        hole.name = entry.key;
        hole.mark = entry.mark;
        PlaceFormulas at;
        map.required("title", hole.title, text_value);
        map.required("at", at, place_value);
        map.required("diameter", hole.diameter, pair_value);
        map.required("tool", hole.tool, name_value(tools_));
        hole.x = at.x;
        hole.y = at.y;
        part_.holes.push_back(std::move(hole));
    }

    void read_no_ink(const Entry& entry, MapReader& map) {
        NoInkTemplate area;
        area.name = entry.key;
        area.mark = entry.mark;
        map.required("side", area.front, side_value);
        map.required("outline", area.outline, outline_value);
        map.required("why", area.why, prose_value);
        part_.no_ink.push_back(std::move(area));
    }

    MapReader& root_;
    PartTemplate& part_;
    const Lookup& tools_;
    Faults& faults_;
    Lookup panels_;
    std::map<std::pair<std::string, bool>, std::string> taken_;  ///< sides of panels, front is true, by the face on them
};

}  // namespace

void read_net(MapReader& root, PartTemplate& part, const Lookup& tools, Faults& faults) { PartNetReader(root, part, tools, faults).read(); }

void read_list_of_maps(MapReader& root, const std::string& key, const std::string& subject, const std::string& example, Faults& faults,
                       const std::function<void(const Node& item, MapReader& map)>& read) {
    const Node* list = root.optional(key);
    if (!list || !is_list(*list, faults, example)) return;
    if (list->items.empty()) faults.add("empty-list", list->mark, "the list is empty", "a list such as " + example, "fill it, or remove the key");
    int number = 0;
    for (const Node& item : list->items) {
        MapReader map(item, faults, subject + " " + std::to_string(++number));
        read(item, map);
        map.done();
    }
}

}  // namespace qw::kit
