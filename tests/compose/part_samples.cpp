// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/part_samples.h"

#include "compose/sheet.h"

#include <map>
#include <tuple>

namespace qw::test {

const SamplePart& sample_part(const std::string& name, UnitSystem system, double scale) {
    static std::map<std::tuple<std::string, UnitSystem, double>, SamplePart> all;
    auto& made = all[{name, system, scale}];
    if (made.net.panels.empty()) {
        parts::NetConditions conditions;
        conditions.system = system;
        conditions.scale = scale;
        conditions.caliper = Length::mm(0.2);
        made.net = parts::net_of(pipeline().parts.at(name), conditions);
        made.folded = parts::fold(made.net);
    }
    return made;
}

std::vector<std::string> part_names() {
    std::vector<std::string> names;
    for (const auto& [name, part] : pipeline().parts) names.push_back(name);
    return names;
}

const Edition& sample_edition(const std::string& name, Print print) {
    static std::map<std::pair<std::string, Print>, Edition> all;
    Edition& edition = all[{name, print}];
    edition = {paper(name), print, print == Print::bordered ? pipeline().printer("most-home-printers")->duplex : Margins{}};
    return edition;
}

double scale_of(const Edition& edition) { return fit_of(edition, true).scale; }

compose::Face sample_picture(std::uint32_t width, std::uint32_t height, const std::string& name) {
    artwork::Facts facts;
    facts.width = width;
    facts.height = height;
    return {name, compose::PlacedArtwork{name, facts}};
}

compose::PartArtwork sample_art(const parts::Net& net, std::size_t parts) {
    compose::PartArtwork art;
    art.parts = parts;
    for (std::size_t i = 0; i < net.faces.size(); ++i) {
        art.faces.push_back(sample_picture(2000 + 10 * static_cast<std::uint32_t>(i), 1500, net.faces[i].name + ".png"));
        art.of_parts[net.faces[i].name].assign(parts, i);
    }
    return art;
}

compose::PartDocument sample_sheets(const std::string& name, const Edition& edition, std::size_t count) {
    static const kit::Manifest manifest = sample_manifest("soft-spine");
    const SamplePart& part = sample_part(name, edition.paper.ruler, scale_of(edition));
    kit::Set set;
    set.name = "sample-parts";
    set.role = kit::Role::part;
    set.place = kit::Place::cover;
    return compose::part_document(manifest, set, edition, part.net, part.folded, sample_art(part.net, count), pipeline().part_rules, fonts(),
                                  part_labels(), {2026, 9, 1});
}

const texts::Passages& part_labels() {
    static const texts::Passages words = compose::passages_of(pipeline(), "part-labels");
    return words;
}

}  // namespace qw::test
