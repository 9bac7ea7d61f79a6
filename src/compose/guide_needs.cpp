// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/guide_needs.h"

#include "base/fault.h"
#include "base/words.h"
#include "materials/heap.h"

#include <algorithm>
#include <functional>
#include <map>
#include <set>

namespace qw::compose {

namespace {

class NeedsFinder {
public:
    NeedsFinder(const SheetContext& context, const journal::Measures& measures) : context_(context), measures_(measures) {}

    StepNeeds needs(const std::vector<std::string>& tools, const std::function<bool(const std::string&)>& used, const SourceMark& mark) {
        needs_ = {};
        mark_ = mark;
        for (const std::string& tool : tools) add_tool(tool);
        for (const journal::Piece& piece : measures_.pieces)
            if (used(piece.of->name)) add_thing(*piece.of, materials::material_of(context_.pipeline, piece.of->material));
        for (const journal::CutLength& length : measures_.lengths)
            if (used(length.of->name)) add_thing(*length.of, materials::material_of(context_.pipeline, length.of->material));
        for (const journal::Item& item : measures_.items)
            if (used(item.of->name)) add_thing(*item.of, materials::material_of(context_.manifest, context_.pipeline, measures_, item));
        return needs_;
    }

private:
    void add_tool(const std::string& name) {
        const kit::Tool& tool = guide_tool(context_, name, mark_);
        if (std::find(needs_.tools.begin(), needs_.tools.end(), &tool) == needs_.tools.end()) needs_.tools.push_back(&tool);
        add_cautions(tool.cautions);
    }

    void add_thing(const kit::Choosable& thing, const kit::Material* material) {
        for (const std::string& tool : thing.tools) add_tool(tool);
        if (material) add_cautions(material->cautions);
        for (const kit::Alternative& other : thing.instead) {
            for (const std::string& tool : other.tools) add_cautions(guide_tool(context_, tool, mark_).cautions);
            if (const kit::Material* way = materials::material_of(context_.pipeline, other.material)) add_cautions(way->cautions);
        }
    }

    void add_cautions(const std::vector<std::string>& names) { needs_.cautions.insert(needs_.cautions.end(), names.begin(), names.end()); }

    const SheetContext& context_;
    const journal::Measures& measures_;
    StepNeeds needs_;
    SourceMark mark_;
};

void refuse_unknown_caution(const std::vector<kit::Caution>& known, const std::vector<std::string>& called) {
    for (const std::string& name : called)
        if (std::none_of(known.begin(), known.end(), [&](const kit::Caution& caution) { return caution.name == name; }))
            throw Fault(FaultKind::not_understood, FaultNote{"unknown-caution", {"pipeline/materials.yaml", 0, 0}, "there is no caution '" + name + "'", "",
                                                             "write it under 'cautions'"});
}

}  // namespace

const kit::Tool& guide_tool(const SheetContext& context, const std::string& name, const SourceMark& mark) {
    std::vector<std::string> known;
    for (const kit::Tool& tool : context.pipeline.tools) {
        if (tool.name == name) return tool;
        known.push_back(tool.name);
    }
    const auto nearest = nearest_word(name, known);
    throw Fault(FaultKind::not_understood, FaultNote{"unknown-tool", mark, "there is no tool '" + name + "'", listed(known),
                                                     nearest ? "write '" + *nearest + "'" : ""});
}

std::vector<StepNeeds> needs_of_steps(const SheetContext& context, const journal::Measures& measures) {
    NeedsFinder finder(context, measures);
    std::vector<StepNeeds> all;
    for (const kit::StepTemplate* step : measures.steps) {
        const auto used = [&](const std::string& name) { return std::find(step->uses.begin(), step->uses.end(), name) != step->uses.end(); };
        all.push_back(finder.needs(step->tools, used, {measures.journal->file, step->mark.line, step->mark.column}));
    }
    return all;
}

StepNeeds needs_of_journal(const SheetContext& context, const journal::Measures& measures) {
    return NeedsFinder(context, measures).needs(measures.journal->tools, [](const std::string&) { return true; }, {measures.journal->file, 0, 0});
}

Care care_of(const SheetContext& context, const journal::Measures& measures) {
    const std::vector<kit::Caution>& known = context.pipeline.cautions;
    std::map<std::string, int> first_step;
    Care care;
    for (const StepNeeds& needs : needs_of_steps(context, measures)) {
        refuse_unknown_caution(known, needs.cautions);
        const std::set<std::string> called(needs.cautions.begin(), needs.cautions.end());
        const int number = static_cast<int>(care.steps.size()) + 1;
        StepCare step;
        std::set<int> before;
        for (const kit::Caution& caution : known) {
            if (caution.always || !called.contains(caution.name)) continue;
            const auto [place, is_first] = first_step.emplace(caution.name, number);
            if (is_first) step.cautions.push_back(caution.text);
            else before.insert(place->second);
        }
        step.as_in.assign(before.begin(), before.end());
        care.steps.push_back(std::move(step));
    }
    const StepNeeds all = needs_of_journal(context, measures);
    refuse_unknown_caution(known, all.cautions);
    const std::set<std::string> called(all.cautions.begin(), all.cautions.end());
    for (const kit::Caution& caution : known)
        if (caution.always || (called.contains(caution.name) && !first_step.contains(caution.name))) care.first.push_back(caution.text);
    return care;
}

}  // namespace qw::compose
