// SPDX-License-Identifier: GPL-3.0-or-later
#include "materials/heap.h"

#include "base/fault.h"
#include "base/words.h"

#include <algorithm>

namespace qw::materials {

bool Heap::all_optional() const {
    return std::all_of(parts_.begin(), parts_.end(), [](const Part& part) { return part.of->optional; });
}

std::string Heap::use() const {
    const bool one_grain = std::all_of(parts_.begin(), parts_.end(), [&](const Part& part) { return part.grain == parts_.front().grain; });
    std::string text;
    for (const Part& part : parts_) {
        const bool alone = parts_.size() == 1;
        std::string head = alone && part.title == title_ ? std::string() : text.empty() ? part.title : inside_sentence(part.title);
        if (part.of->optional && !all_optional()) head += " (optional)";
        text = joined(text, "; ", joined(head, ": ", part.use));
        if (!one_grain) text = joined(text, ", ", grain_text(part.grain));
    }
    const std::string grain = one_grain ? grain_text(parts_.front().grain) : std::string();
    return parts_.size() == 1 ? joined(text, ", ", grain) : joined(text, "; ", grain.empty() ? grain : grain + " of each");
}

Line Heap::line(const BothTexts& tail) const {
    Line line{group_, name_, title_, {}, {}, use(), all_optional(), {}};
    for (const Part& part : parts_) {
        line.metric = joined(line.metric, ", ", part.amount.metric);
        line.us = joined(line.us, ", ", part.amount.us);
        for (OtherWay way : part.instead) {
            if (parts_.size() > 1) way.stands_for = inside_sentence(part.title);
            line.instead.push_back(std::move(way));
        }
    }
    line.metric += tail.metric;
    line.us += tail.us;
    return line;
}

std::string grain_text(const std::string& grain) { return grain == "height" || grain == "width" ? "grain along the " + grain : std::string(); }

const kit::Material* material_of(const kit::Pipeline& pipeline, const std::string& name) {
    const auto found = std::find_if(pipeline.materials.begin(), pipeline.materials.end(), [&](const kit::Material& m) { return m.name == name; });
    return found == pipeline.materials.end() ? nullptr : &*found;
}

const kit::Material& needed_material(const kit::Pipeline& pipeline, const std::string& name, const journal::Measures& measures, const SourceMark& mark) {
    if (const kit::Material* material = material_of(pipeline, name)) return *material;
    std::vector<std::string> known;
    for (const kit::Material& one : pipeline.materials) known.push_back(one.name);
    const std::optional<std::string> nearest = nearest_word(name, known);
    const SourceMark where = mark.file.empty() ? SourceMark{measures.journal->file, 0, 0} : mark;
    throw Fault(FaultKind::not_understood, FaultNote{"unknown-material", where, "there is no material '" + name + "'", listed(known),
                                                     nearest ? "write '" + *nearest + "'" : ""});
}

namespace {

/// What the kit chose in place of an item, as the template that leaves the choice has it; null when there is no choice.
const kit::Alternative* chosen_way(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const journal::Measures& measures, const std::string& name) {
    const auto& replaced = measures.journal->replaced;
    const auto choice = manifest.choices.find(name);
    const auto journal = pipeline.journals.find(measures.journal->name);
    if (std::find(replaced.begin(), replaced.end(), name) == replaced.end() || choice == manifest.choices.end() || journal == pipeline.journals.end())
        return nullptr;
    for (const kit::ItemTemplate& item : journal->second.items)
        for (const kit::Alternative& other : item.instead)
            if (item.name == name && other.name == *choice->second) return &other;
    return nullptr;
}

}  // namespace

const kit::Material* material_of(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const journal::Measures& measures,
                                 const journal::Item& item) {
    const kit::Alternative* other = chosen_way(manifest, pipeline, measures, item.of->name);
    return other ? &needed_material(pipeline, other->material, measures, item.of->mark) : material_of(pipeline, item.of->name);
}

namespace {

/// `as_chosen`: the measures when a way is chosen.
template <typename AsChosen>
std::vector<OtherWay> ways_of(const kit::Pipeline& pipeline, const journal::Measures& measures, const kit::Choosable& thing, const SourceMark& mark,
                              const AmountOf& amount, AsChosen as_chosen) {
    std::vector<OtherWay> ways;
    for (const kit::Alternative& other : thing.instead) {
        OtherWay way{other.name, other.title, {}, {}, {}, other.use};
        if (!other.material.empty()) {
            const kit::Material& material = needed_material(pipeline, other.material, measures, mark);
            if (way.title.empty()) way.title = material.title;
            const BothTexts texts = as_chosen(other, [&](const journal::Measures& otherwise) { return amount(material, otherwise); });
            way.metric = texts.metric;
            way.us = texts.us;
        }
        ways.push_back(std::move(way));
    }
    return ways;
}

}  // namespace

std::vector<OtherWay> other_ways(const kit::Pipeline& pipeline, const journal::Measures& measures, const std::string& name, const kit::Choosable& thing,
                                 const SourceMark& mark, const AmountOf& amount) {
    return ways_of(pipeline, measures, thing, mark, amount, [&](const kit::Alternative& other, const auto& told) {
        const kit::JournalTemplate otherwise = kit::chosen(*measures.journal, {{name, {other.name, mark}}});
        return told(journal::compute(otherwise, measures.conditions));
    });
}

std::vector<OtherWay> other_ways_of_part(const kit::Pipeline& pipeline, const journal::Measures& measures, const kit::Choosable& thing, const SourceMark& mark,
                                         const AmountOf& amount) {
    return ways_of(pipeline, measures, thing, mark, amount, [&](const kit::Alternative&, const auto& told) { return told(measures); });
}

}  // namespace qw::materials
