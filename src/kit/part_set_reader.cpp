// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/part_set_reader.h"

#include "kit/journal_names.h"
#include "kit/values.h"

#include <algorithm>

namespace qw::kit {

namespace {

constexpr int most_copies = 200;

template <typename T>
Lookup lookup_of(const std::string& kind, const std::string& place, const std::vector<T>& things) {
    Lookup lookup{kind, place, {}};
    for (const T& thing : things) lookup.known.push_back(thing.name);
    return lookup;
}

const PartTemplate* template_of(const Set& set, const Pipeline& pipeline) {
    const auto found = pipeline.parts.find(*set.part);
    return found == pipeline.parts.end() ? nullptr : &found->second;
}

/// How many pictures a face has cannot be told here when a PDF is among them.
bool is_pdf_name(const ArtworkFile& file) {
    if (file.shown.size() < 4) return false;
    std::string ending = file.shown.substr(file.shown.size() - 4);
    std::transform(ending.begin(), ending.end(), ending.begin(), [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return ending == ".pdf";
}

class PartKeys {
public:
    PartKeys(MapReader& map, bool is_part, const SetContext& context, ArtworkFinder& finder, Set& set, Faults& faults)
        : map_(map), is_part_(is_part), context_(context), finder_(finder), set_(set), faults_(faults) {}

    void read() {
        Lookup parts{"a part", "pipeline/parts/", {}};
        for (const auto& [name, part] : context_.pipeline.parts) parts.known.push_back(name);
        asked("part", set_.part, sourced(name_value(parts)));
        part_ = template_of(set_, context_.pipeline);
        if (const Node* faces = is_part_ ? map_.required("faces") : map_.optional("faces")) read_faces(*faces);
        map_.optional("copies", set_.copies, whole_number_value(1, most_copies));
        if (const Node* goes_in = map_.optional("goes-in")) read_goes_in(*goes_in);
        if (const Node* holds = map_.optional("holds")) read_holds(*holds);
        map_.optional("goes-on", set_.goes_on, sourced<std::string>(text_value));
        if (is_part_) map_.forbid("files", "the artwork of a part stands under 'faces'", "write 'faces: { outside: … }'");
    }

private:
    template <typename T, typename Read>
    void asked(const std::string& key, T& into, Read read) {
        if (is_part_) map_.required(key, into, read);
        else map_.optional(key, into, read);
    }

    void read_faces(const Node& node) {
        if (!is_map(node, faults_, "outside: art/pockets/*.png")) return;
        if (node.entries.empty()) return faults_.add("empty-list", node.mark, "no face is given", "such as { outside: art/pockets/*.png }");
        if (!part_) return read_any_faces(node);
        MapReader faces(node, faults_, "'faces' of a " + part_->name);
        for (const PartFaceTemplate& face : part_->faces) {
            const Node* files = face.needed ? faces.required(face.name) : faces.optional(face.name);
            if (!files) continue;
            set_.faces[face.name] = finder_.find(*files, faults_);
            if (!face.front) set_.sides = Sides::duplex;
        }
        faces.done();
        check_counts(faces);
    }

    /// Of a part that is not known: only the files can be looked for.
    void read_any_faces(const Node& node) {
        for (const Entry& entry : node.entries)
            if (check_plain_name(entry.key, entry.mark, faults_)) set_.faces[entry.key] = finder_.find(entry.value, faults_);
    }

    /// Nothing when it cannot be told yet.
    std::optional<std::size_t> pictures_of(const std::string& face) const {
        const auto found = set_.faces.find(face);
        if (found == set_.faces.end() || found->second.empty()) return std::nullopt;
        if (std::any_of(found->second.begin(), found->second.end(), is_pdf_name)) return std::nullopt;
        return found->second.size();
    }

    void check_counts(const MapReader& faces) {
        std::size_t parts = 0;
        for (const PartFaceTemplate& face : part_->faces) parts = std::max(parts, pictures_of(face.name).value_or(0));
        for (const PartFaceTemplate& face : part_->faces) {
            const std::size_t count = pictures_of(face.name).value_or(parts);
            if (count == 1 || count == parts || (!face.needed && map_.has("last-back"))) continue;
            faults_.add("face-count", faces.mark_of(face.name),
                        "the face " + in_quotes(face.name) + " has " + std::to_string(count) + " pictures, and there are " + std::to_string(parts) +
                            " parts",
                        "one picture for all, or one for each",
                        face.needed ? "add the missing pictures" : "add the missing pictures, or say with 'last-back' what the others have");
        }
    }

    /// SET or SET/POCKET.
    void read_goes_in(const Node& node) {
        const std::string* text = scalar_text(node, faults_, "a set, or a set and its pocket such as pockets/middle");
        if (!text) return;
        const std::size_t slash = text->find('/');
        Node set = node;
        set.text = text->substr(0, slash);
        const auto name = sourced(name_value({"a set", "this kit", context_.set_names}))(set, faults_);
        if (!name) return;
        set_.goes_in = *name;
        if (slash == std::string::npos) return;
        set_.pocket = text->substr(slash + 1);
        if (set_.pocket.empty())
            faults_.add("bad-name", node.mark, in_quotes(*text) + " names no pocket", "a set and its pocket such as pockets/middle",
                        "write '" + set.text + "' for every pocket");
    }

    void read_holds(const Node& node) {
        if (!is_list(node, faults_, "[card-85x55]")) return;
        if (node.items.empty()) faults_.add("empty-list", node.mark, "the list is empty", "a list such as [card-85x55]");
        const auto thing = sourced(name_value(lookup_of("a thing", "pipeline/things.yaml", context_.pipeline.things)));
        for (const Node& item : node.items) {
            const auto name = thing(item, faults_);
            if (!name) continue;
            const bool twice = std::any_of(set_.holds.begin(), set_.holds.end(), [&](const auto& other) { return *other == **name; });
            if (twice) faults_.add("duplicate-value", item.mark, in_quotes(**name) + " stands in the list a second time", "each value once", "remove it");
            else set_.holds.push_back(*name);
        }
        if (part_ && part_->pockets.empty())
            faults_.add("not-here", map_.mark_of("holds"), "a " + part_->name + " has no pocket, so it holds nothing", "", "remove it");
    }

    MapReader& map_;
    bool is_part_;
    const SetContext& context_;
    ArtworkFinder& finder_;
    Set& set_;
    Faults& faults_;
    const PartTemplate* part_ = nullptr;
};

void check_pocket(const Set& set, const PartTemplate& outer, Faults& faults) {
    if (outer.pockets.empty())
        faults.add("not-here", set.goes_in.mark, in_quotes(*set.goes_in) + " has no pocket, so nothing goes in it", "a part with a pocket");
    else if (!set.pocket.empty()) {
        const Lookup pockets = lookup_of("a pocket", outer.file, outer.pockets);
        if (std::find(pockets.known.begin(), pockets.known.end(), set.pocket) == pockets.known.end())
            tell_unknown_name("unknown-name", set.goes_in.mark, set.pocket, pockets, faults);
    }
}

}  // namespace

void read_part_keys(MapReader& map, bool is_part, const SetContext& context, ArtworkFinder& finder, Set& set, Faults& faults) {
    PartKeys(map, is_part, context, finder, set, faults).read();
}

void forbid_part_keys(MapReader& map) {
    for (const char* key : {"part", "faces", "copies", "goes-in", "holds", "goes-on"})
        map.forbid(key, "only a set with 'role: part' has it", "remove it, or write 'role: part'");
}

void check_goes_in(const std::vector<Set>& sets, const Pipeline& pipeline, Faults& faults) {
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
        else if (const PartTemplate* part = template_of(*outer, pipeline)) check_pocket(set, *part, faults);
        auto next = outer;
        for (std::size_t steps = 0; next != sets.end() && next->name != set.name && steps < sets.size(); ++steps)
            next = find(*next->goes_in);
        if (next != sets.end() && next->name == set.name)
            faults.add("goes-in-circle", set.goes_in.mark, in_quotes(set.name) + " would go in itself", "a larger part");
    }
}

void check_goes_on(const std::vector<Set>& sets, const JournalTemplate& journal, const Choices& choices, Faults& faults) {
    Lookup grounds = lookup_of("the page or a piece of the journal", "", journal.pieces);
    grounds.known.insert(grounds.known.begin(), page_use);
    for (const Set& set : sets) {
        if (set.goes_on->empty()) continue;
        if (std::find(grounds.known.begin(), grounds.known.end(), *set.goes_on) == grounds.known.end()) {
            tell_unknown_name("unknown-name", set.goes_on.mark, *set.goes_on, grounds, faults);
            continue;
        }
        const auto choice = choices.find(*set.goes_on);
        if (choice != choices.end() && *choice->second == "none")
            faults.add("not-here", set.goes_on.mark, "the kit's choices leave " + in_quotes(*set.goes_on) + " out", "a piece that is there");
    }
}

}  // namespace qw::kit
