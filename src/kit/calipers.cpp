// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/calipers.h"

#include "kit/node_kind.h"

namespace qw::kit {

namespace {

const LengthRange caliper_range{Length::mm(0.02), Length::mm(10), "0.02 mm to 10 mm"};

/// "cm3/g" stands in no length, so that what is written tells which of the two is meant.
bool says_bulk(const Node& node) { return node.kind == Node::Kind::text && node.text.find("/g") != std::string::npos; }

std::optional<Length> caliper_of_stock(const Stock& stock, const Node& node, Faults& faults) {
    if (!says_bulk(node)) return caliper_value()(node, faults);
    const auto bulk = bulk_value()(node, faults);
    if (!bulk) return std::nullopt;
    const Length caliper = caliper_of(*bulk, stock.grammage);
    if (caliper >= caliper_range.least && caliper <= caliper_range.most) return caliper;
    faults.add("out-of-range", node.mark, in_quotes(node.text) + " makes a sheet of " + in_quotes(stock.name) + " too thin or too thick",
               caliper_range.words);
    return std::nullopt;
}

}  // namespace

Reader<Length> caliper_value() { return length_value(caliper_range); }

Reader<double> bulk_value() {
    return quantity_value({{{"cm3/g", 1}, {"cm³/g", 1}}, 0.5, 3, "1.25 cm3/g", "0.5 cm3/g to 3 cm3/g"});
}

Length caliper_of(double bulk, double grammage) { return Length::mm(bulk * grammage / 1000); }

std::map<std::string, Length> read_calipers(const Node& node, const Pipeline& pipeline, Faults& faults) {
    std::map<std::string, Length> calipers;
    if (!is_map(node, faults, "card-160: 0.2 mm")) return calipers;
    Lookup stocks{"a stock", "pipeline/stocks.yaml", {}};
    for (const Stock& stock : pipeline.stocks) stocks.known.push_back(stock.name);
    for (const Entry& entry : node.entries) {
        const Stock* stock = pipeline.stock(entry.key);
        if (!stock) tell_unknown_name("unknown-name", entry.mark, entry.key, stocks, faults);
        else if (const auto caliper = caliper_of_stock(*stock, entry.value, faults)) calipers[entry.key] = *caliper;
    }
    return calipers;
}

}  // namespace qw::kit
