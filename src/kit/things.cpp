// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/shared_data.h"
#include "kit/values.h"

namespace qw::kit {

void read_things(DataFolder& folder, Pipeline& into) {
    const auto root = folder.tree("things.yaml");
    if (!root) return;
    Faults& faults = folder.faults();
    MapReader map(*root, faults, "the file");
    check_format(map);
    read_entries(map, "things", "the thing", faults, [&](const Entry& entry, MapReader& reader) {
        Thing thing;
        thing.name = entry.key;
        reader.required("title", thing.title, text_value);
        reader.required("size", thing.size, size_value);
        reader.required("thickness", thing.thickness, length_value({Length::mm(0.02), Length::mm(50), "0.02 mm to 50 mm"}));
        std::string why;
        reader.optional("why", why, prose_value);
        reader.optional("source", thing.source, prose_value);
        if (thing.source.empty()) thing.source = why;
        need_origin(reader, entry, faults);
        into.things.push_back(std::move(thing));
    });
    map.done();
}

}  // namespace qw::kit
