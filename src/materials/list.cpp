// SPDX-License-Identifier: GPL-3.0-or-later
#include "materials/list.h"

#include "base/fault.h"
#include "base/words.h"
#include "materials/lines.h"

#include <algorithm>
#include <set>

namespace qw::materials {

namespace {

void append(std::vector<Line>& lines, std::vector<Line> more) {
    lines.insert(lines.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

const kit::Tool& tool_of(const kit::Pipeline& pipeline, const std::string& name, const journal::Measures& measures) {
    std::vector<std::string> known;
    for (const kit::Tool& tool : pipeline.tools) {
        if (tool.name == name) return tool;
        known.push_back(tool.name);
    }
    const std::optional<std::string> nearest = nearest_word(name, known);
    throw Fault(FaultKind::not_understood, FaultNote{"unknown-tool", {measures.journal->file, 0, 0}, "there is no tool '" + name + "'", listed(known),
                                                     nearest ? "write '" + *nearest + "'" : ""});
}

/// Each once, in the order of the template.
std::vector<kit::Tool> tools_of(const kit::Pipeline& pipeline, const journal::Measures& measures) {
    std::vector<kit::Tool> tools;
    for (const std::string& name : measures.journal->tools)
        if (std::none_of(tools.begin(), tools.end(), [&](const kit::Tool& t) { return t.name == name; }))
            tools.push_back(tool_of(pipeline, name, measures));
    return tools;
}

/// Those that are called for and those that always stand, each once, in the order of the data. A tool or material that
/// calls for one that is not there is a fault: a caution must not be lost.
std::vector<kit::Caution> cautions_of(const kit::Pipeline& pipeline, const List& list) {
    std::set<std::string> called;
    for (const kit::Tool& tool : list.tools) called.insert(tool.cautions.begin(), tool.cautions.end());
    for (const Line& line : list.lines)
        if (const kit::Material* material = material_of(pipeline, line.name)) called.insert(material->cautions.begin(), material->cautions.end());
    std::vector<kit::Caution> cautions;
    for (const kit::Caution& caution : pipeline.cautions)
        if (called.erase(caution.name) > 0 || caution.always) cautions.push_back(caution);
    if (!called.empty())
        throw Fault(FaultKind::not_understood, FaultNote{"unknown-caution", {"pipeline/materials.yaml", 0, 0},
                                                         "there is no caution '" + *called.begin() + "'", {}, "write it under 'cautions'"});
    return cautions;
}

}  // namespace

List count(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const journal::Measures& measures, const SheetsOfSets& counted) {
    List list;
    append(list.lines, paper_lines(manifest, pipeline, measures, counted));
    append(list.lines, piece_lines(pipeline, measures));
    append(list.lines, length_lines(pipeline, measures));
    append(list.lines, item_lines(pipeline, measures));
    std::stable_sort(list.lines.begin(), list.lines.end(), [](const Line& a, const Line& b) { return a.group < b.group; });
    list.tools = tools_of(pipeline, measures);
    list.cautions = cautions_of(pipeline, list);
    return list;
}

}  // namespace qw::materials
