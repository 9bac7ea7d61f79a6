// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "base/words.h"
#include "materials/lines.h"

#include <algorithm>

namespace qw::materials {

namespace {

const kit::Material& needed(const kit::Pipeline& pipeline, const std::string& name, const journal::Measures& measures) {
    if (const kit::Material* material = material_of(pipeline, name)) return *material;
    std::vector<std::string> known;
    for (const kit::Material& one : pipeline.materials) known.push_back(one.name);
    const std::optional<std::string> nearest = nearest_word(name, known);
    throw Fault(FaultKind::not_understood, FaultNote{"unknown-material", {measures.journal->file, 0, 0}, "there is no material '" + name + "'",
                                                     listed(known), nearest ? "write '" + *nearest + "'" : ""});
}

/// "2 of 378 mm, 1 of 323 mm, 1079 mm together"
std::string amount(const std::vector<const journal::CutLength*>& lengths, UnitSystem system) {
    std::string text;
    Length total;
    int pieces = 0;
    for (const journal::CutLength* one : lengths) {
        const Length length = system == UnitSystem::metric ? one->length.metric : one->length.us;
        text += (text.empty() ? "" : ", ") + std::to_string(one->count) + " of " + show(length, system);
        total += length * one->count;
        pieces += one->count;
    }
    return pieces > 1 ? text + ", " + show(total, system) + " together" : text;
}

std::string use_text(const std::vector<const journal::CutLength*>& lengths) {
    std::string text;
    for (const journal::CutLength* one : lengths) {
        text += (text.empty() ? "" : "; ") + one->of->title;
        if (!one->of->use.empty()) text += ": " + one->of->use;
    }
    return text;
}

/// Materials are grouped by their own names: what glues says so (pva-glue, glue-stick, hinge-tape).
bool glues(const std::string& name) {
    return name.find("glue") != std::string::npos || name.find("paste") != std::string::npos || name.find("tape") != std::string::npos;
}

std::string item_amount(const journal::Item& item, UnitSystem system) {
    const std::string count = std::to_string(item.count);
    return item.of->size ? count + " of " + show(item.of->size->in(system), system) : count;
}

}  // namespace

const kit::Material* material_of(const kit::Pipeline& pipeline, const std::string& name) {
    const auto found = std::find_if(pipeline.materials.begin(), pipeline.materials.end(), [&](const kit::Material& m) { return m.name == name; });
    return found == pipeline.materials.end() ? nullptr : &*found;
}

std::vector<Line> length_lines(const kit::Pipeline& pipeline, const journal::Measures& measures) {
    std::vector<std::pair<std::string, std::vector<const journal::CutLength*>>> by_material;
    for (const journal::CutLength& length : measures.lengths) {
        auto found = std::find_if(by_material.begin(), by_material.end(), [&](const auto& one) { return one.first == length.of->material; });
        if (found == by_material.end()) found = by_material.insert(by_material.end(), {length.of->material, {}});
        found->second.push_back(&length);
    }
    std::vector<Line> lines;
    for (const auto& [name, lengths] : by_material)
        lines.push_back({glues(name) ? Line::Group::glueing : Line::Group::sewing, name, needed(pipeline, name, measures).title,
                         amount(lengths, UnitSystem::metric), amount(lengths, UnitSystem::us), use_text(lengths)});
    return lines;
}

std::vector<Line> item_lines(const kit::Pipeline& pipeline, const journal::Measures& measures) {
    std::vector<Line> lines;
    for (const journal::Item& item : measures.items) {
        const std::string& name = item.of->name;
        const kit::Material* material = material_of(pipeline, name);
        lines.push_back({glues(name) ? Line::Group::glueing : Line::Group::other, name, material ? material->title : item.of->title,
                         item_amount(item, UnitSystem::metric), item_amount(item, UnitSystem::us), item.of->use});
    }
    return lines;
}

}  // namespace qw::materials
