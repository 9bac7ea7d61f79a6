// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/calipers.h"
#include "kit/manifest.h"
#include "kit/shared_data.h"
#include "kit/values.h"

#include <algorithm>
#include <array>

namespace qw::kit {

namespace {

QuantityForm grammage_form() { return {{{"g/m2", 1}, {"g/m²", 1}}, 20, 3000, "80 g/m2", "20 g/m2 to 3000 g/m2"}; }

/// Exactly one of caliper and bulk.
void read_caliper(MapReader& map, const Entry& entry, Stock& stock, Faults& faults) {
    double bulk = 0;
    const bool given = map.optional("caliper", stock.caliper, caliper_value());
    const bool bulky = map.optional("bulk", bulk, bulk_value());
    if (bulky && !given) stock.caliper = caliper_of(bulk, stock.grammage);
    if (entry.value.kind != Node::Kind::map || map.has("caliper") != map.has("bulk")) return;
    if (map.has("bulk")) faults.add("not-here", map.mark_of("bulk"), "caliper and bulk are both given", "one of them", "remove one");
    else
        faults.add("missing-key", entry.value.mark, in_quotes(entry.key) + " has neither a caliper nor a bulk",
                   "'caliper: 0.1 mm' or 'bulk: 1.25 cm3/g'", "add one");
}

constexpr std::array grades{"bond", "text", "cover", "index"};

Reader<std::string> grade_value() {
    std::vector<std::pair<std::string, std::string>> words;
    for (const char* grade : grades) words.emplace_back(grade, grade);
    return word_value<std::string>(words);
}

void read_kind(MapReader& map, Stock& stock) {
    if (!map.required("kind", stock.kind, word_value<Stock::Kind>({{"paper", Stock::Kind::paper}, {"board", Stock::Kind::board}}))) {
        map.optional("grade", stock.grade, grade_value());
        map.optional("printed", stock.printed, yes_no_value);
    } else if (stock.kind == Stock::Kind::board) {
        map.forbid("grade", "boards have no basis weight", "remove it");
        map.optional("printed", stock.printed, yes_no_value);
    } else {
        map.required("grade", stock.grade, grade_value());
        map.forbid("printed", "only boards come printed", "remove it");
    }
}

/// Whole pounds in ascending order, so that the nearest can be looked up.
std::optional<std::vector<int>> pounds_value(const Node& node, Faults& faults) {
    const std::string example = "[20, 24, 28, 32]";
    auto pounds = list_value<int>(whole_number_value(10, 500), example)(node, faults);
    if (pounds && !std::is_sorted(pounds->begin(), pounds->end()))
        faults.add("not-ascending", node.mark, "the weights are in no order", "the lightest first, such as " + example);
    return pounds;
}

/// `on-the-shelf`: the weights of each grade that shops sell, and who says so.
void read_shelf(MapReader& root, Pipeline& into, Faults& faults) {
    const Node* shelf = root.required("on-the-shelf");
    if (!shelf || !is_map(*shelf, faults, "bond: { pounds: [20, 24, 28, 32], source: … }")) return;
    MapReader map(*shelf, faults, "'on-the-shelf'");
    for (const std::string grade : grades) {
        const Node* node = map.required(grade);
        if (!node) continue;
        MapReader reader(*node, faults, "the grade '" + grade + "'");
        reader.required("pounds", into.sold_weights[grade], pounds_value);
        need_origin(reader, {grade, map.mark_of(grade), *node}, faults);
        reader.done();
    }
    map.done();
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
        read_kind(reader, stock);
        reader.required("grammage", stock.grammage, quantity_value(grammage_form()));
        read_caliper(reader, entry, stock, faults);
        need_origin(reader, entry, faults);
        into.stocks.push_back(stock);
    });
    read_usual(map, into, faults);
    read_shelf(map, into, faults);
    map.done();
}

}  // namespace qw::kit
