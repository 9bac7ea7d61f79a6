// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/rights.h"

#include "kit/shared_data.h"
#include "kit/values.h"

namespace qw::kit {

std::string Rights::text() const {
    return "made by " + made_by + "; " + allowed_by + (since ? "; since " + since->iso() : "");
}

Rights read_rights(MapReader& map) {
    Rights rights;
    map.required("made-by", rights.made_by, text_value);
    map.required("allowed-by", rights.allowed_by, text_value);
    map.optional("since", rights.since, date_value);
    return rights;
}

std::optional<Rights> rights_value(const Node& node, Faults& faults) {
    if (!is_map(node, faults, "{ made-by: the studio, allowed-by: own work }")) return std::nullopt;
    MapReader map(node, faults, "the rights");
    Rights rights = read_rights(map);
    map.done();
    if (rights.made_by.empty() || rights.allowed_by.empty()) return std::nullopt;
    return rights;
}

std::map<std::string, Rights> read_font_rights(const Node& node, Faults& faults) {
    std::map<std::string, Rights> fonts;
    if (!is_map(node, faults, "Vollkorn-Bold: { made-by: F. Althausen, allowed-by: SIL Open Font License 1.1 }")) return fonts;
    for (const Entry& entry : node.entries)
        if (auto rights = rights_value(entry.value, faults)) fonts.emplace(entry.key, std::move(*rights));
    return fonts;
}

void read_fonts(DataFolder& folder, Pipeline& into) {
    const auto root = folder.tree("fonts.yaml");
    if (!root) return;
    Faults& faults = folder.faults();
    MapReader map(*root, faults, "the file");
    check_format(map);
    read_entries(map, "fonts", "the font", faults, [&](const Entry& entry, MapReader& reader) {
        FontData font;
        font.name = entry.key;
        reader.required("title", font.title, text_value);
        reader.required("cuts", font.cuts, list_value<std::string>(text_value, "[Lato-Regular, Lato-Bold]"));
        const Rights rights = read_rights(reader);
        font.made_by = rights.made_by;
        font.allowed_by = rights.allowed_by;
        need_origin(reader, entry, faults);
        into.fonts.push_back(std::move(font));
    });
    map.done();
}

}  // namespace qw::kit
