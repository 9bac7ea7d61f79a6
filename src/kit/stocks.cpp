// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/manifest.h"
#include "kit/shared_data.h"
#include "kit/values.h"

namespace qw::kit {

namespace {

QuantityForm grammage_form() { return {{{"g/m2", 1}, {"g/m²", 1}}, 20, 3000, "80 g/m2", "20 g/m2 to 3000 g/m2"}; }
QuantityForm bulk_form() { return {{{"cm3/g", 1}, {"cm³/g", 1}}, 0.5, 3, "1.25 cm3/g", "0.5 cm3/g to 3 cm3/g"}; }

/// Exactly one of caliper and bulk; ISO 534: thickness = bulk × grammage.
void read_caliper(MapReader& map, const Entry& entry, Stock& stock, Faults& faults) {
    double bulk = 0;
    const bool given = map.optional("caliper", stock.caliper, length_value({Length::mm(0.02), Length::mm(10), "0.02 mm to 10 mm"}));
    const bool bulky = map.optional("bulk", bulk, quantity_value(bulk_form()));
    if (bulky && !given) stock.caliper = Length::mm(bulk * stock.grammage / 1000);
    if (entry.value.kind != Node::Kind::map || map.has("caliper") != map.has("bulk")) return;
    if (map.has("bulk")) faults.add("not-here", map.mark_of("bulk"), "caliper and bulk are both given", "one of them", "remove one");
    else
        faults.add("missing-key", entry.value.mark, in_quotes(entry.key) + " has neither a caliper nor a bulk",
                   "'caliper: 0.1 mm' or 'bulk: 1.25 cm3/g'", "add one");
}

void read_grade(MapReader& map, Stock& stock) {
    if (stock.kind == Stock::Kind::board) map.forbid("grade", "boards have no basis weight", "remove it");
    else
        map.required("grade", stock.grade,
                     word_value<std::string>({{"bond", "bond"}, {"text", "text"}, {"cover", "cover"}, {"index", "index"}}));
}

/// `usual`: what a manifest that names no stock gets, by role, and for the boards.
void read_usual(MapReader& root, Pipeline& into, Faults& faults) {
    const Node* usual = root.required("usual");
    if (!usual || !is_map(*usual, faults, "{ journal-page: copy-100, … }")) return;
    Lookup papers{"a paper", "this file", {}}, boards{"a board", "this file", {}};
    for (const Stock& stock : into.stocks) (stock.kind == Stock::Kind::paper ? papers : boards).known.push_back(stock.name);
    MapReader map(*usual, faults, "'usual'");
    for (const Role role : {Role::journal_page, Role::full_sheet, Role::part, Role::extra})
        map.required(name_of(role), into.usual[name_of(role)], sourced(name_value(papers)));
    map.required("board-stock", into.usual["board-stock"], sourced(name_value(boards)));
    map.done();
}

}  // namespace

void read_stocks(DataFolder& folder, Pipeline& into) {
    const auto root = folder.tree("stocks.yaml");
    if (!root) return;
    Faults& faults = folder.faults();
    MapReader map(*root, faults, "the file");
    check_format(map);
    read_entries(map, "stocks", "the stock", faults, [&](const Entry& entry, MapReader& reader) {
        Stock stock;
        stock.name = entry.key;
        reader.required("title", stock.title, text_value);
        reader.required("kind", stock.kind, word_value<Stock::Kind>({{"paper", Stock::Kind::paper}, {"board", Stock::Kind::board}}));
        reader.required("grammage", stock.grammage, quantity_value(grammage_form()));
        read_caliper(reader, entry, stock, faults);
        read_grade(reader, stock);
        need_origin(reader, entry, faults);
        into.stocks.push_back(stock);
    });
    read_usual(map, into, faults);
    map.done();
}

}  // namespace qw::kit
