// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/journal_parts_reader.h"

#include "base/words.h"
#include "kit/data_file.h"
#include "kit/journal_values.h"

#include <algorithm>

namespace qw::kit {

JournalPartsReader::JournalPartsReader(JournalTemplate& journal, JournalNames& names, const JournalContext& context, Faults& faults)
    : journal_(journal), names_(names), faults_(faults), materials_(context.materials) {
    tool_names_ = {"a tool", "pipeline/materials.yaml", {}};
    material_names_ = {"a material", "pipeline/materials.yaml", {}};
    for (const Tool& tool : context.tools) tool_names_.known.push_back(tool.name);
    for (const Material& material : context.materials) material_names_.known.push_back(material.name);
}

void JournalPartsReader::read(MapReader& root) {
    read_entries(root, "pieces", "the piece", faults_, [&](const Entry& e, MapReader& m) { read_piece(e, m); });
    read_optional_entries(root, "cut-lengths", "the length", faults_, [&](const Entry& e, MapReader& m) { read_cut_length(e, m); });
    read_optional_entries(root, "items", "the item", faults_, [&](const Entry& e, MapReader& m) { read_item(e, m); });
    read_optional_entries(root, "figures", "the figure", faults_, [&](const Entry& e, MapReader& m) { read_figure(e, m); });
    check_glue();
}

Reader<std::vector<std::string>> JournalPartsReader::tools_value() const {
    return list_value<std::string>(name_value(tool_names_), "[steel-ruler, awl]");
}

void JournalPartsReader::read_piece(const Entry& entry, MapReader& map) {
    PieceTemplate piece;
    piece.name = entry.key;
    piece.mark = entry.mark;
    names_.thing(entry.key, entry.mark);
    map.required("title", piece.title, text_value);
    map.required("count", piece.count, formula_value);
    map.required("width", piece.width, formula_value);
    map.required("height", piece.height, formula_value);
    map.optional("rounding", piece.rounding, rounding_value);
    const bool stock_known = map.required("stock", piece.stock, one_of({"board", "spine", "page", "cover", "bought"}));
    if (!stock_known) map.optional("material");
    else if (piece.stock == "bought") map.required("material", piece.material, name_value(material_names_));
    else map.forbid("material", "the piece is cut from a stock of the kit", "remove it, or write 'stock: bought'");
    piece.grain = "any";
    map.optional("grain", piece.grain, one_of({"height", "width", "any"}));
    Sourced<std::string> glue;
    if (map.optional("glue", glue, sourced<std::string>(text_value))) glues_.push_back(glue);
    piece.glue = *glue;
    map.optional("use", piece.use, text_value);
    read_choosable(map, piece);
    journal_.pieces.push_back(std::move(piece));
}

void JournalPartsReader::read_cut_length(const Entry& entry, MapReader& map) {
    LengthTemplate length;
    length.name = entry.key;
    length.mark = entry.mark;
    names_.thing(entry.key, entry.mark);
    map.required("title", length.title, text_value);
    map.required("count", length.count, formula_value);
    map.required("length", length.length, formula_value);
    map.optional("rounding", length.rounding, rounding_value);
    map.required("material", length.material, name_value(material_names_));
    map.optional("use", length.use, text_value);
    read_choosable(map, length);
    journal_.cut_lengths.push_back(std::move(length));
}

void JournalPartsReader::read_item(const Entry& entry, MapReader& map) {
    ItemTemplate item;
    item.name = entry.key;
    item.mark = entry.mark;
    names_.thing(entry.key, entry.mark);
    check_is_bought(entry);
    map.required("title", item.title, text_value);
    map.required("count", item.count, formula_value);
    map.optional("size", item.size, both_value);
    map.optional("use", item.use, text_value);
    read_choosable(map, item);
    journal_.items.push_back(std::move(item));
}

/// What to ask for in a shop and what to take care of is told there; without it the list would lack the cautions.
void JournalPartsReader::check_is_bought(const Entry& entry) {
    if (std::find(material_names_.known.begin(), material_names_.known.end(), entry.key) != material_names_.known.end()) return;
    const auto near = nearest_word(entry.key, material_names_.known);
    faults_.add("item-without-material", entry.mark,
                "the item " + in_quotes(entry.key) + " has no entry in " + material_names_.place +
                    ", so that nothing says what to buy and what to take care of",
                "a key of 'materials' there",
                (near ? "write " + in_quotes(*near) + ", or add " : std::string("add ")) + in_quotes(entry.key) +
                    " there, with its title, use, group and cautions");
}

void JournalPartsReader::read_figure(const Entry& entry, MapReader& map) {
    FigureTemplate figure;
    figure.name = entry.key;
    figure.mark = entry.mark;
    names_.thing(entry.key, entry.mark);
    map.required("title", figure.title, text_value);
    map.required("value", figure.value, formula_value);
    map.optional("is", figure.number, word_value<bool>({{"length", false}, {"number", true}}));
    map.optional("rounding", figure.rounding, rounding_value);
    map.optional("use", figure.use, text_value);
    journal_.figures.push_back(std::move(figure));
}

void JournalPartsReader::read_choosable(MapReader& map, Choosable& thing) {
    map.optional("optional", thing.optional, yes_no_value);
    map.optional("tools", thing.tools, tools_value());
    if (const Node* thickness = map.optional("thickness")) thing.thickness = both_value(*thickness, faults_);
    if (const Node* instead = map.optional("or")) read_instead(*instead, thing, map.has("thickness"));
}

void JournalPartsReader::read_instead(const Node& node, Choosable& thing, bool has_thickness) {
    if (!is_map(node, faults_, "bare-holes: { title: Bare holes, tools: [awl] }")) return;
    if (node.entries.empty()) faults_.add("empty-list", node.mark, "nothing is given that may stand in", "a name, and below it its keys");
    for (const Entry& entry : node.entries) {
        check_plain_name(entry.key, entry.mark, faults_);
        if (entry.key == "none")
            faults_.add("reserved-name", entry.mark, "'none' is how a kit leaves something out", "another name",
                        "write 'optional: true' if it may be left out");
        MapReader map(entry.value, faults_, "'" + entry.key + "'");
        thing.instead.push_back(read_alternative(entry, map));
        if (map.has("thickness")) check_thickness(thing.instead.back(), map.mark_of("thickness"), has_thickness);
        map.done();
    }
}

Alternative JournalPartsReader::read_alternative(const Entry& entry, MapReader& map) const {
    Alternative other;
    other.name = entry.key;
    map.optional("material", other.material, name_value(material_names_));
    if (map.has("material")) map.optional("title", other.title, text_value);
    else map.required("title", other.title, text_value);
    map.optional("tools", other.tools, tools_value());
    map.optional("use", other.use, text_value);
    if (const Node* thickness = map.optional("thickness")) other.thickness = both_value(*thickness, faults_);
    const auto material = std::find_if(materials_.begin(), materials_.end(), [&](const Material& m) { return m.name == other.material; });
    if (other.title.empty() && material != materials_.end()) other.title = material->title;
    return other;
}

/// Formulas are given one name for whatever is chosen, so that there must be something to give without a choice.
void JournalPartsReader::check_thickness(const Alternative& other, const SourceMark& where, bool thing_has_one) {
    if (!thing_has_one)
        faults_.add("not-here", where, in_quotes(other.name) + " has a thickness, and what it stands in for has none", "'thickness: { metric: …, us: … }' of both",
                    "add 'thickness' to the thing itself");
    else if (other.material.empty())
        faults_.add("not-here", where, "where nothing is bought, nothing is thick: formulas are given 0", "", "remove it, or add 'material'");
}

void JournalPartsReader::check_glue() {
    Lookup items{"an item", "this template", {}};
    for (const ItemTemplate& item : journal_.items) items.known.push_back(item.name);
    for (const Sourced<std::string>& glue : glues_)
        if (std::find(items.known.begin(), items.known.end(), *glue) == items.known.end())
            tell_unknown_name("unknown-name", glue.mark, *glue, items, faults_);
}

}  // namespace qw::kit
