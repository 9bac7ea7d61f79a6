// SPDX-License-Identifier: GPL-3.0-or-later
#include "materials/heap.h"
#include "materials/lines.h"

#include <algorithm>
#include <map>

namespace qw::materials {

namespace {

Length cut(const journal::CutLength& length, UnitSystem system) {
    return system == UnitSystem::metric ? length.length.metric : length.length.us;
}

/// "2 of 378 mm"
BothTexts lengths_of(const journal::CutLength& length) {
    BothTexts texts;
    for (const UnitSystem system : both_systems) texts.in(system) = std::to_string(length.count) + " of " + show(cut(length, system), system);
    return texts;
}

/// What is bought for lengths of one material: "; buy 1.2 m (10 % more)", or what they come to.
BothTexts together(const std::vector<const journal::CutLength*>& lengths, const kit::Material& material) {
    BothTexts texts;
    for (const UnitSystem system : both_systems) {
        Length total;
        int pieces = 0;
        for (const journal::CutLength* one : lengths) total += cut(*one, system) * one->count, pieces += one->count;
        if (material.allowance > 0) texts.in(system) = "; " + to_buy(total, material.allowance, system);
        else if (pieces > 1) texts.in(system) = ", " + show(total, system) + " together";
    }
    return texts;
}

/// Of one length alone, as its alternatives are told.
BothTexts amount_of(const journal::Measures& measures, const journal::CutLength& length, const kit::Material& material) {
    BothTexts texts = lengths_of(length);
    for (const UnitSystem system : both_systems) {
        if (material.group == Line::Group::paper)
            texts.in(system) = joined(texts.in(system), ", ", strips_text(cut(length, system), strip_sheet(measures.conditions), strip_overlap(measures, system), system));
        else texts.in(system) += together({&length}, material).in(system);
    }
    return texts;
}

/// The lengths of one material, in the order of the template.
struct OfMaterial {
    const kit::Material* material = nullptr;
    std::vector<const journal::CutLength*> lengths;
};

std::vector<OfMaterial> by_material(const kit::Pipeline& pipeline, const journal::Measures& measures) {
    std::vector<OfMaterial> all;
    for (const journal::CutLength& length : measures.lengths) {
        if (length.of->material.empty()) continue;  // done in a way for which nothing is bought
        const kit::Material& material = needed_material(pipeline, length.of->material, measures, length.of->mark);
        auto found = std::find_if(all.begin(), all.end(), [&](const OfMaterial& one) { return one.material == &material; });
        if (found == all.end()) found = all.insert(all.end(), {&material, {}});
        found->lengths.push_back(&length);
    }
    return all;
}

/// Glued faces by the item that glues them, in mm² as each ruler cuts.
struct Areas {
    double metric = 0, us = 0;
};

std::map<std::string, Areas> glued_areas(const journal::Measures& measures) {
    std::map<std::string, Areas> areas;
    for (const journal::Piece& piece : measures.pieces) {
        if (piece.of->glue.empty()) continue;
        areas[piece.of->glue].metric += area_of(piece, UnitSystem::metric);
        areas[piece.of->glue].us += area_of(piece, UnitSystem::us);
    }
    return areas;
}

/// "3 of 3 mm; buy 4 (1 to spare)", "1, for 930 cm²"
BothTexts item_amount(const journal::Item& item, double allowance, const Areas& glued) {
    BothTexts texts;
    for (const UnitSystem system : both_systems) {
        std::string& text = texts.in(system);
        text = std::to_string(item.count);
        if (item.of->size) text += " of " + show(item.of->size->in(system), system);
        const double area = system == UnitSystem::metric ? glued.metric : glued.us;
        if (area > 0) text += ", for " + area_text(area, system);
        text = joined(text, "; ", to_buy(item.count, allowance));
    }
    return texts;
}

}  // namespace

std::vector<Line> length_lines(const kit::Pipeline& pipeline, const journal::Measures& measures) {
    std::vector<Line> lines;
    for (const auto& [material, lengths] : by_material(pipeline, measures)) {
        Heap heap(material->group, material->name, material->title);
        for (const journal::CutLength* length : lengths) {
            const auto amount = [length](const kit::Material& other, const journal::Measures& otherwise) {
                const journal::CutLength* as_cut = otherwise.length(length->of->name);
                return amount_of(otherwise, as_cut ? *as_cut : *length, other);
            };
            BothTexts own = material->group == Line::Group::paper ? amount(*material, measures) : lengths_of(*length);
            heap.add({length->of->title, length->of, std::move(own), length->of->use, "",
                      other_ways(pipeline, measures, length->of->name, *length->of, length->of->mark, amount)});
        }
        lines.push_back(heap.line(material->group == Line::Group::paper ? BothTexts() : together(lengths, *material)));
    }
    return lines;
}

std::vector<Line> item_lines(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const journal::Measures& measures) {
    const std::map<std::string, Areas> areas = glued_areas(measures);
    std::vector<Line> lines;
    for (const journal::Item& item : measures.items) {
        const std::string& name = item.of->name;
        const kit::Material* material = material_of(manifest, pipeline, measures, item);
        const auto glued = areas.find(name);
        const auto amount = [&](double allowance) { return item_amount(item, allowance, glued == areas.end() ? Areas() : glued->second); };
        // The material's title says what it is; the thing's own would say it again.
        const std::string title = material ? material->title : item.of->title;
        Heap heap(material ? material->group : Line::Group::other, name, title);
        heap.add({title, item.of, amount(material ? material->allowance : 0), item.of->use, "",
                  other_ways(pipeline, measures, name, *item.of, item.of->mark,
                             [&](const kit::Material& other, const journal::Measures&) { return amount(other.allowance); })});
        lines.push_back(heap.line());
    }
    return lines;
}

}  // namespace qw::materials
