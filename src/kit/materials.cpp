// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/shared_data.h"
#include "kit/values.h"

#include <algorithm>

namespace qw::kit {

namespace {

/// What tools and materials have in common.
template <typename Thing>
Thing read_thing(const Entry& entry, MapReader& reader, const Lookup& cautions) {
    Thing thing;
    thing.name = entry.key;
    reader.required("title", thing.title, text_value);
    reader.required("use", thing.use, text_value);
    reader.optional("cautions", thing.cautions, list_value<std::string>(name_value(cautions), "[sharp-blades]"));
    return thing;
}

Reader<Material::Group> group_value() {
    using Group = Material::Group;
    return word_value<Group>({{"paper", Group::paper},
                              {"board", Group::board},
                              {"sewing", Group::sewing},
                              {"glueing", Group::glueing},
                              {"other", Group::other}});
}

/// What a tool with a reach does not reach is done with another one, which may stand further down.
using StandIns = std::vector<Sourced<std::string>>;

void read_reach(MapReader& reader, Tool& tool, StandIns& stand_ins) {
    Length reach;
    const bool known = reader.optional("reach", reach, length_value({Length::mm(1), Length::mm(500), "1 mm to 500 mm"}));
    if (known) tool.reach = reach;
    if (!reader.has("reach")) return reader.forbid("instead", "the tool has no 'reach'", "remove it, or say how far the tool reaches");
    Sourced<std::string> instead;
    if (!reader.required("instead", instead, sourced<std::string>(text_value))) return;
    tool.instead = *instead;
    stand_ins.push_back(instead);
}

/// The stand-in reaches everything, or there would be no end to it.
void check_stand_ins(const StandIns& stand_ins, const std::vector<Tool>& tools, Faults& faults) {
    Lookup whole{"a tool that reaches everywhere", "this file", {}};
    for (const Tool& tool : tools)
        if (!tool.reach) whole.known.push_back(tool.name);
    for (const Sourced<std::string>& one : stand_ins)
        if (std::find(whole.known.begin(), whole.known.end(), *one) == whole.known.end())
            tell_unknown_name("unknown-name", one.mark, *one, whole, faults);
}

/// The list tells buyers to buy so much more, so somebody has to say why.
void read_allowance(const Entry& entry, MapReader& reader, Material& material, Faults& faults) {
    reader.optional("allowance", material.allowance, quantity_value({{{"%", 0.01}}, 0, 1, "10 %", "0 % to 100 %"}));
    if (reader.has("allowance")) return need_origin(reader, entry, faults);
    std::string text;
    reader.optional("source", text, prose_value);
    reader.optional("why", text, prose_value);
}

}  // namespace

void read_materials(DataFolder& folder, Pipeline& into) {
    const auto root = folder.tree("materials.yaml");
    if (!root) return;
    Faults& faults = folder.faults();
    MapReader map(*root, faults, "the file");
    check_format(map);
    Lookup cautions{"a caution", "this file", {}};
    StandIns stand_ins;
    read_entries(map, "cautions", "the caution", faults, [&](const Entry& entry, MapReader& reader) {
        Caution caution;
        caution.name = entry.key;
        reader.required("text", caution.text, prose_value);
        reader.optional("always", caution.always, yes_no_value);
        need_origin(reader, entry, faults);
        cautions.known.push_back(entry.key);
        into.cautions.push_back(caution);
    });
    read_entries(map, "tools", "the tool", faults, [&](const Entry& entry, MapReader& reader) {
        Tool tool = read_thing<Tool>(entry, reader, cautions);
        read_reach(reader, tool, stand_ins);
        std::string why;
        if (reader.has("reach")) need_origin(reader, entry, faults);
        else reader.optional("why", why, prose_value);
        into.tools.push_back(std::move(tool));
    });
    check_stand_ins(stand_ins, into.tools, faults);
    read_entries(map, "materials", "the material", faults, [&](const Entry& entry, MapReader& reader) {
        Material material = read_thing<Material>(entry, reader, cautions);
        reader.required("group", material.group, group_value());
        read_allowance(entry, reader, material, faults);
        into.materials.push_back(std::move(material));
    });
    map.done();
}

}  // namespace qw::kit
