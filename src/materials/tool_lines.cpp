// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "base/words.h"
#include "materials/heap.h"
#include "materials/lines.h"
#include "parts/holes.h"

#include <algorithm>
#include <set>

namespace qw::materials {

namespace {

/// A tool by name, and why it is on the list.
struct ToolNeed {
    std::string name;
    bool always = false;
    std::vector<std::string> ways;  ///< the things and ways that need it, where it is not needed always
};

class ToolNeeds {
public:
    void always(const std::string& tool) { need(tool).always = true; }
    void for_way(const std::string& tool, const std::string& way) {
        std::vector<std::string>& ways = need(tool).ways;
        const std::string words = inside_sentence(way);
        if (std::find(ways.begin(), ways.end(), words) == ways.end()) ways.push_back(words);
    }
    /// A thing that the buyer may leave out or do otherwise needs its tools only when she does not.
    void add(const kit::Choosable& thing, const std::string& title, const kit::Pipeline& pipeline) {
        for (const std::string& tool : thing.tools) {
            if (in_every_way(tool, thing)) always(tool);
            else for_way(tool, title);
        }
        for (const kit::Alternative& other : thing.instead)
            for (const std::string& tool : other.tools)
                if (!in_every_way(tool, thing)) for_way(tool, title_of(other, pipeline));
    }
    bool known(const std::string& tool) const {
        return std::any_of(all_.begin(), all_.end(), [&](const ToolNeed& one) { return one.name == tool; });
    }
    const std::vector<ToolNeed>& all() const { return all_; }

private:
    static bool has(const std::vector<std::string>& tools, const std::string& tool) { return std::find(tools.begin(), tools.end(), tool) != tools.end(); }
    static bool in_every_way(const std::string& tool, const kit::Choosable& thing) {
        return !thing.optional && has(thing.tools, tool) &&
               std::all_of(thing.instead.begin(), thing.instead.end(), [&](const kit::Alternative& other) { return has(other.tools, tool); });
    }
    static std::string title_of(const kit::Alternative& other, const kit::Pipeline& pipeline) {
        const kit::Material* material = other.title.empty() ? material_of(pipeline, other.material) : nullptr;
        return material ? material->title : other.title;
    }
    ToolNeed& need(const std::string& tool) {
        auto found = std::find_if(all_.begin(), all_.end(), [&](const ToolNeed& one) { return one.name == tool; });
        if (found == all_.end()) found = all_.insert(all_.end(), {tool, false, {}});
        return *found;
    }
    std::vector<ToolNeed> all_;
};

/// What a buyer may do without in a step, by title.
std::vector<std::string> choosable_in(const kit::StepTemplate& step, const journal::Measures& measures) {
    std::vector<std::string> titles;
    const auto add = [&](const auto& counted) {
        for (const auto& one : counted)
            if ((one.of->optional || !one.of->instead.empty()) && std::find(step.uses.begin(), step.uses.end(), one.of->name) != step.uses.end())
                titles.push_back(one.of->title);
    };
    add(measures.pieces);
    add(measures.lengths);
    add(measures.items);
    return titles;
}

/// Tools that only steps name. A step that stands under a condition is there for something that may be left out.
void add_steps(ToolNeeds& needs, const journal::Measures& measures) {
    ToolNeeds of_steps;
    for (const kit::StepTemplate* step : measures.steps)
        for (const std::string& tool : step->tools) {
            if (needs.known(tool)) continue;
            const auto titles = step->when.text.empty() ? std::vector<std::string>() : choosable_in(*step, measures);
            if (titles.empty()) of_steps.always(tool);
            for (const std::string& title : titles) of_steps.for_way(tool, title);
        }
    for (const ToolNeed& need : of_steps.all()) {
        if (need.always) needs.always(need.name);
        for (const std::string& way : need.ways) needs.for_way(need.name, way);
    }
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

/// Everything that is bought, and what may be bought instead.
std::set<std::string> materials_in(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const journal::Measures& measures,
                                   const std::vector<PartsMade>& parts) {
    std::set<std::string> names;
    const auto add = [&](const std::string& material, const kit::Choosable& thing) {
        names.insert(material);
        for (const kit::Alternative& other : thing.instead) names.insert(other.material);
    };
    for (const journal::Piece& piece : measures.pieces) add(piece.of->material, *piece.of);
    for (const journal::CutLength& length : measures.lengths) add(length.of->material, *length.of);
    for (const journal::Item& item : measures.items) {
        const kit::Material* material = material_of(manifest, pipeline, measures, item);
        add(material ? material->name : "", *item.of);
    }
    for (const PartsMade& made : parts) {
        for (const parts::NeededLength& length : made.net->lengths) add(length.of->material, *length.of);
        for (const parts::NeededItem& item : made.net->items) add(item.of->name, *item.of);
    }
    return names;
}

/// A step names its punch as the template does; whether it reaches is known here.
bool makes_holes(const parts::Net& net, const std::string& tool) {
    return std::any_of(net.holes.begin(), net.holes.end(), [&](const parts::Hole& hole) { return hole.tool == tool; });
}

/// A set of parts is made whatever the buyer does with the journal.
void add_parts(ToolNeeds& needs, const kit::Pipeline& pipeline, const PartsMade& made) {
    for (const std::string& tool : made.net->part->tools) needs.always(tool);
    for (const parts::Hole& hole : made.net->holes)
        if (const std::string tool = parts::tool_for(*made.net, hole, pipeline); !tool.empty()) needs.always(tool);
    for (const parts::NeededLength& length : made.net->lengths) needs.add(*length.of, length.of->title, pipeline);
    for (const parts::NeededItem& item : made.net->items) needs.add(*item.of, item.of->title, pipeline);
    for (const kit::StepTemplate* step : made.net->steps)
        for (const std::string& tool : step->tools)
            if (!needs.known(tool) && !makes_holes(*made.net, tool)) needs.always(tool);
}

}  // namespace

std::vector<ToolLine> tool_lines(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const journal::Measures& measures,
                                 const std::vector<PartsMade>& parts) {
    ToolNeeds needs;
    for (const std::string& tool : measures.journal->tools) needs.always(tool);
    for (const journal::Piece& piece : measures.pieces) needs.add(*piece.of, piece.of->title, pipeline);
    for (const journal::CutLength& length : measures.lengths) needs.add(*length.of, length.of->title, pipeline);
    for (const journal::Item& item : measures.items) {
        const kit::Material* material = material_of(manifest, pipeline, measures, item);
        needs.add(*item.of, material ? material->title : item.of->title, pipeline);
    }
    add_steps(needs, measures);
    for (const PartsMade& made : parts) add_parts(needs, pipeline, made);
    std::vector<ToolLine> lines;
    for (const ToolNeed& need : needs.all())
        lines.push_back({tool_of(pipeline, need.name, measures), need.always ? std::string() : listed(need.ways)});
    return lines;
}

std::vector<kit::Caution> cautions_of(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const journal::Measures& measures,
                                      const std::vector<PartsMade>& parts, const std::vector<ToolLine>& tools) {
    std::set<std::string> called;
    for (const ToolLine& line : tools) called.insert(line.tool.cautions.begin(), line.tool.cautions.end());
    for (const std::string& name : materials_in(manifest, pipeline, measures, parts))
        if (const kit::Material* material = material_of(pipeline, name)) called.insert(material->cautions.begin(), material->cautions.end());
    std::vector<kit::Caution> cautions;
    for (const kit::Caution& caution : pipeline.cautions)
        if (called.erase(caution.name) > 0 || caution.always) cautions.push_back(caution);
    // A caution must not be lost.
    if (!called.empty())
        throw Fault(FaultKind::not_understood, FaultNote{"unknown-caution", {"pipeline/materials.yaml", 0, 0},
                                                         "there is no caution '" + *called.begin() + "'", {}, "write it under 'cautions'"});
    return cautions;
}

}  // namespace qw::materials
