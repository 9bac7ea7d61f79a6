// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/journal_path_reader.h"

#include "kit/journal_values.h"

#include <algorithm>

namespace qw::kit {

namespace {

/// A station, or a word for an edge that the thread goes round.
struct PathPart {
    int station = 0;  ///< any number that was written; 0 with a word
    Around around = Around::nothing;
    SourceMark mark;
    bool is_word() const { return around != Around::nothing; }
};
using StitchPath = std::vector<PathPart>;

std::string word_of(Around around) { return around == Around::spine ? "spine" : around == Around::head ? "head" : "tail"; }

std::optional<PathPart> part_value(const Node& node, Faults& faults) {
    static const auto edge = word_value<Around>({{"spine", Around::spine}, {"head", Around::head}, {"tail", Around::tail}});
    if (node.kind == Node::Kind::text && !node.text.empty() && node.text[0] >= 'a' && node.text[0] <= 'z') {
        const auto around = edge(node, faults);
        return around ? std::optional(PathPart{0, *around, node.mark}) : std::nullopt;
    }
    const auto station = whole_number_value(-999, 999)(node, faults);
    return station ? std::optional(PathPart{*station, Around::nothing, node.mark}) : std::nullopt;
}

/// The parts of a path with their places; nothing when one of them could not be read, which is told.
std::optional<StitchPath> path_value(const Node& node, Faults& faults) {
    if (!is_list(node, faults, "[2, 1, 3, 2]")) return std::nullopt;
    StitchPath path;
    for (const Node& item : node.items)
        if (const auto part = part_value(item, faults)) path.push_back(*part);
    return path.size() == node.items.size() ? std::optional(path) : std::nullopt;
}

class PathChecker {
public:
    PathChecker(const StitchPath& path, const StationTemplate& stations, Faults& faults)
        : path_(path), faults_(faults), count_(stations.spine.empty() ? stations.page.size() : std::min(stations.page.size(), stations.spine.size())),
          of_spine_(count_ < stations.page.size()) {}

    void check() {
        for (std::size_t i = 0; i < path_.size(); ++i) path_[i].is_word() ? check_word(i) : check_station(i);
    }

private:
    bool is_station(std::size_t i) const { return i < path_.size() && !path_[i].is_word(); }
    void tell(std::size_t i, const std::string& what, const std::string& expected) { faults_.add("bad-path", path_[i].mark, what, expected); }

    void check_station(std::size_t i) {
        const int station = path_[i].station;
        const std::string expected = count_ == 0 ? "stations, under 'stations: { page: … }'"
                                                 : "1 to " + std::to_string(count_) + (of_spine_ ? ", as many as the spine has" : ", counted from the head");
        if (station < 1 || static_cast<std::size_t>(station) > count_) tell(i, "there is no station " + std::to_string(station), expected);
        else if (i > 0 && is_station(i - 1) && station == path_[i - 1].station)
            tell(i, "the thread stays at station " + std::to_string(station),
                 "another station than the one before, or 'spine', 'head' or 'tail' between the two when it goes round that edge");
    }

    void check_word(std::size_t i) {
        const std::string word = in_quotes(word_of(path_[i].around));
        if (i == 0 || !is_station(i - 1) || !is_station(i + 1))
            return tell(i, word + " does not stand between two stations",
                        "a station before and after it, the same one: the thread goes round the edge and comes back");
        const int station = path_[i - 1].station;
        if (station != path_[i + 1].station)
            return tell(i, word + " stands between station " + std::to_string(station) + " and station " + std::to_string(path_[i + 1].station),
                        "the same station before and after it: the thread goes round the edge and comes back");
        const int at_edge = path_[i].around == Around::tail ? static_cast<int>(count_) : 1;
        if (path_[i].around != Around::spine && station != at_edge && count_ > 0)
            tell(i, "the thread goes round the " + word_of(path_[i].around) + " from station " + std::to_string(station),
                 "station " + std::to_string(at_edge) + " before and after " + word + ", the one that is next to it");
    }

    const StitchPath& path_;
    Faults& faults_;
    const std::size_t count_;
    const bool of_spine_;
};

/// Each station of a path is a way through, from one side to the other, and so is each turn. After an even number of
/// them the thread is on the side where it began: there its ends are tied, or it climbs to the next signature.
void check_ends(const StitchPath& path, const SewingTemplate& sewing, const SourceMark& where, MapReader& map, Faults& faults) {
    const bool turns = std::any_of(path.begin(), path.end(), [](const PathPart& part) { return part.is_word(); });
    if (path.size() < 2)
        faults.add("bad-path", where, "the path has fewer than two stations", "the stations in the order in which the needle passes them");
    else if (path.size() % 2 != 0)
        faults.add("bad-path", where, "the thread ends on the other side than where it began",
                   std::string(turns ? "an even number of stations and turns together" : "an even number of stations") +
                       (sewing.goes_on ? ", so that it can climb to the next signature on the spine" : ", so that its ends can be tied"),
                   "add the station where it comes back");
    if (sewing.goes_on && turns)
        faults.add("bad-path", map.mark_of("goes-on"), "a thread that goes on to the next signature lies in its folds, and turns round no edge",
                   "'goes-on: false', or a path without 'spine', 'head' and 'tail'");
    else if (sewing.goes_on && sewing.begins_inside)
        faults.add("bad-path", map.has("begins") ? map.mark_of("begins") : map.mark_of("goes-on"),
                   "a thread that goes on to the next signature climbs on the spine, and so begins there", "'begins: outside'");
}

/// A fold has an inside and an outside, a block that is sewn from the side a back and a front.
bool read_begins(MapReader& map, SewingTemplate& sewing, bool round_spine, Faults& faults) {
    std::string begins;
    if (!map.optional("begins", begins, one_of({"inside", "outside", "back", "front"}))) return !map.has("begins");
    sewing.begins_inside = begins == "inside" || begins == "back";
    const bool of_block = begins == "back" || begins == "front";
    if (of_block == round_spine) return true;
    faults.add("bad-path", map.mark_of("begins"),
               of_block ? "a thread that does not go round the spine lies in a fold, which has no " + begins
                        : "a block that is sewn round its spine has no fold, and so no " + begins,
               of_block ? "'begins: inside' or 'begins: outside'" : "'begins: back' or 'begins: front'");
    return true;
}

void read_inset(MapReader& map, SewingTemplate& sewing, bool round_spine, const SourceMark& path, Faults& faults) {
    if (!round_spine) return map.forbid("inset", "the path does not go round the spine", "remove it, or write 'spine' into the path");
    if (!map.has("inset"))
        faults.add("bad-path", path, "the thread goes round the spine, and nothing says how far that is",
                   "'inset: …' beside the path: from the row of holes to the spine's edge", "add 'inset'");
    map.optional("inset", sewing.inset, formula_value);
}

}  // namespace

void read_path(MapReader& map, SewingTemplate& sewing, const StationTemplate& stations, Faults& faults) {
    const Node* node = map.required("path");
    const auto path = node ? path_value(*node, faults) : std::nullopt;
    if (!path) {
        for (const char* key : {"begins", "goes-on", "inset"}) map.optional(key);
        return;
    }
    for (std::size_t i = 0; i < path->size(); ++i)
        if (const PathPart& part = (*path)[i]; !part.is_word()) {
            sewing.path.push_back(part.station);
            sewing.around.push_back(i + 1 < path->size() ? (*path)[i + 1].around : Around::nothing);
        }
    if (std::none_of(path->begin(), path->end(), [](const PathPart& part) { return part.is_word(); })) sewing.around.clear();
    // As written: a word at a wrong place is told there, and not once more.
    const bool round_spine = std::any_of(path->begin(), path->end(), [](const PathPart& part) { return part.around == Around::spine; });
    const bool begins_known = read_begins(map, sewing, round_spine, faults);
    const bool goes_on_known = map.optional("goes-on", sewing.goes_on, yes_no_value) || !map.has("goes-on");
    read_inset(map, sewing, round_spine, node->mark, faults);
    PathChecker(*path, stations, faults).check();
    if (begins_known && goes_on_known) check_ends(*path, sewing, node->mark, map, faults);
}

}  // namespace qw::kit
