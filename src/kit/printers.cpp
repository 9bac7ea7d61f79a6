// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/shared_data.h"
#include "kit/values.h"

namespace qw::kit {

namespace {

/// IPP margins have no sign and are given in 1/100 mm (PWG 5100.7); 50 mm is more than any printer leaves.
constexpr int most_margin = 5000;

Reader<Length> margin_value() {
    return [](const Node& node, Faults& faults) -> std::optional<Length> {
        const auto value = whole_number_value(0, most_margin)(node, faults);
        return value ? std::optional(Length::hundredths_mm(*value)) : std::nullopt;
    };
}

std::optional<Margins> margins_value(const Node& node, Faults& faults) {
    if (!is_map(node, faults, "{ left: 300, bottom: 300, right: 300, top: 300 }")) return std::nullopt;
    Margins margins;
    MapReader map(node, faults, "the margins");
    map.required("left", margins.left, margin_value());
    map.required("bottom", margins.bottom, margin_value());
    map.required("right", margins.right, margin_value());
    map.required("top", margins.top, margin_value());
    map.done();
    return margins;
}

/// No driver is known that takes off more than 3 mm a side; ten times that is a slip of the pen.
Reader<Length> beyond_value() { return length_value({Length(), Length::mm(60), "0 mm to 60 mm"}); }

void read_enlargement(MapReader& map, Size& enlargement, Faults& faults) {
    const std::string key = "borderless-enlargement";
    const Node* node = map.required(key);
    if (!node || !is_map(*node, faults, "{ width: 15.552 pt, height: 14.112 pt, source: … }")) return;
    MapReader reader(*node, faults, "'" + key + "'");
    reader.required("width", enlargement.width, beyond_value());
    reader.required("height", enlargement.height, beyond_value());
    need_origin(reader, {key, map.mark_of(key), *node}, faults);
    reader.done();
}

}  // namespace

void read_printers(DataFolder& folder, Pipeline& into) {
    const auto root = folder.tree("printers.yaml");
    if (!root) return;
    Faults& faults = folder.faults();
    MapReader map(*root, faults, "the file");
    check_format(map);
    Lookup printers{"a printer", "this file", {}};
    read_entries(map, "printers", "the printer", faults, [&](const Entry& entry, MapReader& reader) {
        Printer printer;
        printer.name = entry.key;
        reader.required("title", printer.title, text_value);
        reader.required("single", printer.single, margins_value);
        reader.required("duplex", printer.duplex, margins_value);
        need_origin(reader, entry, faults);
        printers.known.push_back(entry.key);
        into.printers.push_back(printer);
    });
    read_enlargement(map, into.borderless_enlargement, faults);
    map.required("usual", into.usual["printer"], sourced(name_value(printers)));
    map.done();
}

}  // namespace qw::kit
