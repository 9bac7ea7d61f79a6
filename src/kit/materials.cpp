// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/shared_data.h"
#include "kit/values.h"

namespace qw::kit {

namespace {

/// What tools and materials have in common.
template <typename Thing>
void read_things(MapReader& root, const std::string& key, const std::string& subject, const Lookup& cautions, Faults& faults,
                 std::vector<Thing>& into) {
    read_entries(root, key, subject, faults, [&](const Entry& entry, MapReader& reader) {
        Thing thing;
        thing.name = entry.key;
        reader.required("title", thing.title, text_value);
        reader.required("use", thing.use, text_value);
        reader.optional("cautions", thing.cautions, list_value<std::string>(name_value(cautions), "[sharp-blades]"));
        std::string why;
        reader.optional("why", why, prose_value);
        into.push_back(thing);
    });
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
    read_things(map, "tools", "the tool", cautions, faults, into.tools);
    read_things(map, "materials", "the material", cautions, faults, into.materials);
    map.done();
}

}  // namespace qw::kit
