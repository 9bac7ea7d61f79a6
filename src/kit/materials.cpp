// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/shared_data.h"
#include "kit/values.h"

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
        into.tools.push_back(read_thing<Tool>(entry, reader, cautions));
        std::string why;
        reader.optional("why", why, prose_value);
    });
    read_entries(map, "materials", "the material", faults, [&](const Entry& entry, MapReader& reader) {
        Material material = read_thing<Material>(entry, reader, cautions);
        reader.required("group", material.group, group_value());
        read_allowance(entry, reader, material, faults);
        into.materials.push_back(std::move(material));
    });
    map.done();
}

}  // namespace qw::kit
