// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/journal_work_reader.h"

#include "kit/journal_names.h"
#include "kit/journal_path_reader.h"
#include "kit/journal_step_text.h"
#include "kit/journal_values.h"

#include <algorithm>

namespace qw::kit {

namespace {

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
    map.optional("through", sewing.through, formula_value);
    read_path(map, sewing, journal.stations, faults);
    read_thread(map, sewing, journal, faults);
    map.done();
    journal.sewing = std::move(sewing);
}

void read_steps(MapReader& root, JournalTemplate& journal, const Reader<std::vector<std::string>>& tools, const SourceText* source, Faults& faults) {
    const Node* node = root.required("steps");
    if (!node || !is_list(*node, faults, "- { title: Cut the boards, text: … }")) return;
    if (node->items.empty()) faults.add("empty-list", node->mark, "the guide has no steps", "at least one step");
    const auto uses = list_value<std::string>(name_value(uses_of(journal)), "[board, page-stations]");
    for (const Node& item : node->items) {
        StepTemplate step;
        step.mark = item.mark;
        MapReader map(item, faults, "step " + std::to_string(journal.steps.size() + 1));
        map.required("title", step.title, text_value);
        if (const Node* text = map.required("text"))
            if (auto read = prose_value(*text, faults)) {
                step.text = std::move(*read);
                check_step_text(*text, journal, source, faults);
            }
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
