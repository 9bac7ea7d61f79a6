// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "materials/amounts.h"
#include "materials/list.h"

#include <functional>
#include <vector>

namespace qw::materials {

/// Things that are bought as one and make one line: all lengths of a material, all boards of a stock.
class Heap {
public:
    struct Part {
        std::string title;            ///< the thing's own
        const kit::Choosable* of = nullptr;
        BothTexts amount;
        std::string use, grain;       ///< grain as of pieces: "height", "width", "any" or empty
        std::vector<OtherWay> instead;
    };

    Heap(Line::Group group, std::string name, std::string title) : group_(group), name_(std::move(name)), title_(std::move(title)) {}

    const std::string& name() const { return name_; }
    bool empty() const { return parts_.empty(); }
    std::size_t size() const { return parts_.size(); }
    void add(Part part) { parts_.push_back(std::move(part)); }

    /// `tail` says what follows from all parts together.
    Line line(const BothTexts& tail = {}) const;

private:
    bool all_optional() const;
    std::string use() const;

    Line::Group group_;
    std::string name_, title_;
    std::vector<Part> parts_;
};

/// "grain along the height", or nothing where it does not matter.
std::string grain_text(const std::string& grain);

/// A material of the pipeline, or null.
const kit::Material* material_of(const kit::Pipeline& pipeline, const std::string& name);
/// A material that has to be there. Throws Fault (not_understood) at the mark, or at the journal's file if that is empty.
const kit::Material& needed_material(const kit::Pipeline& pipeline, const std::string& name, const journal::Measures& measures, const SourceMark& mark);
/// What an item is, or null: the material of its name, or of the alternative that the kit chose in its place.
const kit::Material* material_of(const kit::Manifest& manifest, const kit::Pipeline& pipeline, const journal::Measures& measures,
                                 const journal::Item& item);

/// What may stand in for a thing of that name. `amount` tells how much of a material that is, from the measures as they
/// are when it is chosen: a band needs no tails where a ribbon does.
using AmountOf = std::function<BothTexts(const kit::Material&, const journal::Measures&)>;
std::vector<OtherWay> other_ways(const kit::Pipeline& pipeline, const journal::Measures& measures, const std::string& name, const kit::Choosable& thing,
                                 const SourceMark& mark, const AmountOf& amount);

/// The same for a thing of a part, whose amounts do not follow from the journal.
std::vector<OtherWay> other_ways_of_part(const kit::Pipeline& pipeline, const journal::Measures& measures, const kit::Choosable& thing, const SourceMark& mark,
                                         const AmountOf& amount);

}  // namespace qw::materials
