// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/journal_work_reader.h"

#include "kit/journal_names.h"
#include "kit/journal_values.h"

#include <algorithm>

namespace qw::kit {

namespace {

using StitchPath = std::vector<Sourced<int>>;

/// The numbers of a path with their places; nothing when one of them was no whole number, which is told.
std::optional<StitchPath> path_value(const Node& node, Faults& faults) {
    if (!is_list(node, faults, "[2, 1, 3, 2]")) return std::nullopt;
    StitchPath path;
    for (const Node& item : node.items)
        if (const auto station = whole_number_value(-999, 999)(item, faults)) path.push_back({*station, item.mark});
    return path.size() == node.items.size() ? std::optional(path) : std::nullopt;
}

void check_stations_of(const StitchPath& path, const StationTemplate& stations, Faults& faults) {
    const std::size_t page = stations.page.size();
    const std::size_t count = stations.spine.empty() ? page : std::min(page, stations.spine.size());
    const std::string expected =
        count == 0 ? "stations, under 'stations: { page: … }'"
                   : "1 to " + std::to_string(count) + (count < page ? ", as many as the spine has" : ", counted from the head");
    for (std::size_t i = 0; i < path.size(); ++i) {
        const int station = *path[i];
        if (station < 1 || static_cast<std::size_t>(station) > count)
            faults.add("bad-path", path[i].mark, "there is no station " + std::to_string(station), expected);
        else if (i > 0 && station == *path[i - 1])
            faults.add("bad-path", path[i].mark, "the thread stays at station " + std::to_string(station),
                       "another station than the one before");
    }
}

/// Each station of a path is a way through the fold, from one side to the other. After an even number of them the
/// thread is on the side where it began: there its ends are tied, or it climbs to the next signature.
void check_ends(const StitchPath& path, const SewingTemplate& sewing, const SourceMark& where, MapReader& map, Faults& faults) {
    if (path.size() < 2)
        faults.add("bad-path", where, "the path has fewer than two stations",
                   "the stations in the order in which the needle passes them");
    else if (path.size() % 2 != 0)
        faults.add("bad-path", where, "the thread ends on the other side of the fold than where it began",
                   sewing.goes_on ? "an even number of stations, so that it can climb to the next signature on the spine"
                                  : "an even number of stations, so that its ends can be tied",
                   "add the station where it comes back");
    if (sewing.goes_on && sewing.begins_inside)
        faults.add("bad-path", map.has("begins") ? map.mark_of("begins") : map.mark_of("goes-on"),
                   "a thread that goes on to the next signature climbs on the spine, and so begins there", "'begins: outside'");
}

void read_path(MapReader& map, SewingTemplate& sewing, const StationTemplate& stations, Faults& faults) {
    const bool begins_known =
        map.optional("begins", sewing.begins_inside, word_value<bool>({{"inside", true}, {"outside", false}})) || !map.has("begins");
    const bool goes_on_known = map.optional("goes-on", sewing.goes_on, yes_no_value) || !map.has("goes-on");
    const Node* node = map.required("path");
    const auto path = node ? path_value(*node, faults) : std::nullopt;
    if (!path) return;
    for (const Sourced<int>& station : *path) sewing.path.push_back(*station);
    check_stations_of(*path, stations, faults);
    if (begins_known && goes_on_known) check_ends(*path, sewing, node->mark, map, faults);
}

/// Without its thread a journal is not sewn, and formulas that use stitch_path have no meaning.
void read_thread(MapReader& map, SewingTemplate& sewing, const JournalTemplate& journal, Faults& faults) {
    Lookup lengths{"a cut length", "this template", {}};
    for (const LengthTemplate& length : journal.cut_lengths) lengths.known.push_back(length.name);
    Sourced<std::string> thread;
    if (!map.required("thread", thread, sourced(name_value(lengths)))) return;
    sewing.thread = *thread;
    const auto length = std::find_if(journal.cut_lengths.begin(), journal.cut_lengths.end(),
                                     [&](const LengthTemplate& one) { return one.name == *thread; });
    const auto nothing_bought = [](const Alternative& other) { return other.material.empty(); };
    if (length->optional || std::any_of(length->instead.begin(), length->instead.end(), nothing_bought))
        faults.add("not-here", thread.mark, in_quotes(*thread) + " cannot be the thread: a kit may do without it",
                   "a cut length that is there whatever is chosen");
}

Lookup uses_of(const JournalTemplate& journal) {
    Lookup uses{"what this template measures or takes", "", {}};
    const auto all = [&](const auto& things) {
        for (const auto& thing : things) uses.known.push_back(thing.name);
    };
    all(journal.pieces);
    all(journal.cut_lengths);
    all(journal.items);
    all(journal.figures);
    uses.known.push_back(page_use);
    if (!journal.stations.page.empty()) uses.known.push_back(page_stations_use);
    if (!journal.stations.spine.empty()) uses.known.push_back(spine_stations_use);
    return uses;
}

void check_drawing(const StepTemplate& step, const JournalTemplate& journal, MapReader& map, Faults& faults) {
    if (step.drawing == "stitch" && !journal.sewing)
        faults.add("not-here", map.mark_of("drawing"), "no stitch can be drawn of a journal without 'sewing'", "another drawing",
                   "remove it, or add 'sewing'");
    if (step.drawing == "stations" && journal.stations.page.empty())
        faults.add("not-here", map.mark_of("drawing"), "no stations can be drawn of a journal that has none on its pages",
                   "another drawing", "remove it, or add 'stations: { page: … }'");
    if (step.drawing == "cover" && journal.picture == "none")
        faults.add("not-here", map.mark_of("drawing"), "no cover can be drawn of a journal with 'picture: none'", "another drawing",
                   "remove it, or take a picture");
}

}  // namespace

void read_stations(MapReader& root, JournalTemplate& journal, Faults& faults) {
    const Node* stations = root.optional("stations");
    if (!stations || !is_map(*stations, faults, "{ page: [ station_inset, page_height / 2 ], spine: [ … ] }")) return;
    MapReader map(*stations, faults, "'stations'");
    map.optional("page", journal.stations.page, formulas_value);
    map.optional("spine", journal.stations.spine, formulas_value);
    map.optional("use", journal.stations.use, text_value);
    map.done();
}

void read_sewing(MapReader& root, JournalTemplate& journal, Faults& faults) {
    const Node* node = root.optional("sewing");
    if (!node || !is_map(*node, faults, "{ signatures: 1, rows: 1, path: [2, 1, 3, 2], thread: sewing-thread }")) return;
    SewingTemplate sewing;
    sewing.mark = root.mark_of("sewing");
    MapReader map(*node, faults, "'sewing'");
    map.required("signatures", sewing.signatures, formula_value);
    map.required("rows", sewing.rows, formula_value);
    map.optional("row-gap", sewing.row_gap, formula_value);
    read_path(map, sewing, journal.stations, faults);
    read_thread(map, sewing, journal, faults);
    map.done();
    journal.sewing = std::move(sewing);
}

void read_steps(MapReader& root, JournalTemplate& journal, const Reader<std::vector<std::string>>& tools, Faults& faults) {
    const Node* node = root.required("steps");
    if (!node || !is_list(*node, faults, "- { title: Cut the boards, text: … }")) return;
    if (node->items.empty()) faults.add("empty-list", node->mark, "the guide has no steps", "at least one step");
    const auto uses = list_value<std::string>(name_value(uses_of(journal)), "[board, page-stations]");
    for (const Node& item : node->items) {
        StepTemplate step;
        step.mark = item.mark;
        MapReader map(item, faults, "step " + std::to_string(journal.steps.size() + 1));
        map.required("title", step.title, text_value);
        map.required("text", step.text, prose_value);
        map.optional("when", step.when, formula_value);
        map.optional("uses", step.uses, uses);
        map.optional("tools", step.tools, tools);
        if (map.optional("drawing", step.drawing, one_of({"cover", "corner", "stitch", "stations"})))
            check_drawing(step, journal, map, faults);
        map.done();
        journal.steps.push_back(std::move(step));
    }
}

}  // namespace qw::kit
