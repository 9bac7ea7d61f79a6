// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/words.h"
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
            texts.in(system) = joined(texts.in(system), ", ",
                                      strips_text(cut(length, system), strip_sheet(measures.conditions), strip_overlap(measures, system), system));
        else texts.in(system) += together({&length}, material).in(system);
    }
    return texts;
}

/// Of the whole set, as the journal's own lengths are told.
journal::CutLength of_all(const parts::NeededLength& length, const PartsMade& made) {
    journal::CutLength all{length.of, length.count * made.count, {}};
    all.length.metric = length.metric;
    all.length.us = length.us;
    return all;
}

/// "Twine (tags)": which set it is for.
std::string title_in(const PartsMade& made, const std::string& title) { return title + " (" + spaced_name(made.set->name) + ")"; }

/// The lengths of one material: the journal's in the order of the template, then those of parts.
struct OfMaterial {
    const kit::Material* material = nullptr;
    std::vector<const journal::CutLength*> lengths;
    std::vector<std::pair<journal::CutLength, const PartsMade*>> of_parts;
};

OfMaterial& of_material(std::vector<OfMaterial>& all, const kit::Material& material) {
    auto found = std::find_if(all.begin(), all.end(), [&](const OfMaterial& one) { return one.material == &material; });
    if (found == all.end()) found = all.insert(all.end(), {&material, {}, {}});
    return *found;
}

std::vector<OfMaterial> by_material(const kit::Pipeline& pipeline, const journal::Measures& measures, const std::vector<PartsMade>& parts) {
    std::vector<OfMaterial> all;
    for (const journal::CutLength& length : measures.lengths) {
        if (length.of->material.empty()) continue;  // done in a way for which nothing is bought
        of_material(all, needed_material(pipeline, length.of->material, measures, length.of->mark)).lengths.push_back(&length);
    }
    for (const PartsMade& made : parts)
        for (const parts::NeededLength& length : made.net->lengths)
            if (!length.of->material.empty())
                of_material(all, needed_material(pipeline, length.of->material, measures, length.of->mark)).of_parts.emplace_back(of_all(length, made), &made);
    return all;
}

Line line_of(const kit::Pipeline& pipeline, const journal::Measures& measures, const OfMaterial& one) {
    const kit::Material& material = *one.material;
    const bool paper = material.group == Line::Group::paper;
    Heap heap(material.group, material.name, material.title);
    const auto own = [&](const journal::CutLength& length) { return paper ? amount_of(measures, length, material) : lengths_of(length); };
    std::vector<const journal::CutLength*> all = one.lengths;
    for (const journal::CutLength* length : one.lengths) {
        const auto amount = [length](const kit::Material& other, const journal::Measures& otherwise) {
            const journal::CutLength* as_cut = otherwise.length(length->of->name);
            return amount_of(otherwise, as_cut ? *as_cut : *length, other);
        };
        heap.add({length->of->title, length->of, own(*length), length->of->use, "",
                  other_ways(pipeline, measures, length->of->name, *length->of, length->of->mark, amount)});
    }
    for (const auto& [length, made] : one.of_parts) {
        const journal::CutLength& told = length;
        all.push_back(&told);
        heap.add({title_in(*made, length.of->title), length.of, own(length), length.of->use, "",
                  other_ways_of_part(pipeline, measures, *length.of, length.of->mark,
                                     [&told](const kit::Material& other, const journal::Measures& m) { return amount_of(m, told, other); })});
    }
    return heap.line(paper ? BothTexts() : together(all, material));
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

/// What an item of a set of parts glues, in mm²: each glued tab once, on all parts.
double glued_by(const PartsMade& made, const std::string& item) {
    double area = 0;
    for (const parts::Glue& glue : made.net->glue)
        if (glue.with == item) area += parts::area_mm2(made.net->panels[glue.tab].region) * made.count;
    return area;
}

/// "6; buy 7 (1 to spare)", or for what glues "for 35 cm²".
BothTexts part_item_amount(const PartsMade& made, const parts::NeededItem& item, double allowance) {
    const double area = glued_by(made, item.of->name);
    if (area > 0) return {"for " + area_text(area, UnitSystem::metric), "for " + area_text(area, UnitSystem::us)};
    return item_amount({item.of, item.count * made.count}, allowance, {});
}

void add_part_item(std::vector<Heap>& heaps, const kit::Pipeline& pipeline, const journal::Measures& measures, const PartsMade& made,
                   const parts::NeededItem& item) {
    const std::string& name = item.of->name;
    const kit::Material* material = material_of(pipeline, name);
    auto heap = std::find_if(heaps.begin(), heaps.end(), [&](const Heap& one) { return one.name() == name; });
    if (heap == heaps.end())
        heap = heaps.insert(heaps.end(), Heap(material ? material->group : Line::Group::other, name, material ? material->title : item.of->title));
    heap->add({title_in(made, item.of->title), item.of, part_item_amount(made, item, material ? material->allowance : 0), item.of->use, "",
               other_ways_of_part(pipeline, measures, *item.of, item.of->mark,
                                  [&](const kit::Material& other, const journal::Measures&) { return part_item_amount(made, item, other.allowance); })});
}

}  // namespace

std::vector<Line> length_lines(const kit::Pipeline& pipeline, const journal::Measures& measures, const std::vector<PartsMade>& parts) {
    std::vector<Line> lines;
    for (const OfMaterial& one : by_material(pipeline, measures, parts)) lines.push_back(line_of(pipeline, measures, one));
    return lines;
}

std::vector<Line> item_lines(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const journal::Measures& measures,
                             const std::vector<PartsMade>& parts) {
    const std::map<std::string, Areas> areas = glued_areas(measures);
    std::vector<Heap> heaps;
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
        heaps.push_back(std::move(heap));
    }
    for (const PartsMade& made : parts)
        for (const parts::NeededItem& item : made.net->items) add_part_item(heaps, pipeline, measures, made, item);
    std::vector<Line> lines;
    for (const Heap& heap : heaps) lines.push_back(heap.line());
    return lines;
}

}  // namespace qw::materials
