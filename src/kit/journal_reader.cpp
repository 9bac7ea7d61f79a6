// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/journal_reader.h"

#include "kit/data_file.h"
#include "kit/map_reader.h"
#include "kit/values.h"

#include <algorithm>
#include <map>

namespace qw::kit {

const std::vector<std::string>& given_names() {
    static const std::vector<std::string> names{
        "page_width",   "page_height",   "cover_sheet_width", "cover_sheet_height", "sheets", "full_sheets",
        "page_caliper", "cover_caliper", "board_caliper",     "print_scale",        "pi",     "min",
        "max",          "ceil",          "floor",             "sqrt",               "abs"};
    return names;
}

namespace {

constexpr std::size_t longest_formula = 500;

const LengthRange length_range{Length::mm(-5000), Length::mm(5000), "-5000 mm to 5000 mm"};
const LengthRange step_range{Length::mm(0.01), Length::mm(100), "0.01 mm to 100 mm"};

std::optional<Formula> formula_value(const Node& node, Faults& faults) {
    const std::string* text = scalar_text(node, faults, "a formula such as page_width + fore_edge_square");
    if (!text) return std::nullopt;
    const bool plain = std::all_of(text->begin(), text->end(), [](char c) { return c >= 0x20 && c < 0x7f; });
    if (text->find_first_not_of(' ') != std::string::npos && plain && text->size() <= longest_formula) return Formula{"", *text, node.mark};
    faults.add("bad-formula", node.mark, in_quotes(*text) + " is no formula",
               "names, plain numbers, + - * / and functions, in one line of at most 500 characters");
    return std::nullopt;
}

/// `{ metric: 4.5 mm, us: 1/8 in }`, asked for in a map that may hold more.
void read_both(MapReader& map, const LengthRange& range, BothLengths& into) {
    map.required("metric", into.metric, length_value(range));
    map.required("us", into.us, length_value(range));
}

std::optional<BothLengths> both_value(const Node& node, Faults& faults) {
    if (!is_map(node, faults, "{ metric: 3 mm, us: 1/8 in }")) return std::nullopt;
    BothLengths both;
    MapReader map(node, faults, "the length");
    read_both(map, step_range, both);
    map.done();
    return both;
}

std::optional<RoundingRule> rounding_value(const Node& node, Faults& faults) {
    if (!is_map(node, faults, "{ metric: 0.5 mm, us: 1/16 in, way: up }")) return std::nullopt;
    RoundingRule rule;
    MapReader map(node, faults, "the rounding");
    read_both(map, step_range, rule.step);
    map.required("way", rule.way, word_value<Rounding>({{"up", Rounding::up}, {"down", Rounding::down}, {"nearest", Rounding::nearest}}));
    map.done();
    return rule;
}

Reader<std::string> one_of(std::vector<std::string> words) {
    std::vector<std::pair<std::string, std::string>> pairs;
    for (std::string& word : words) pairs.emplace_back(word, word);
    return word_value<std::string>(std::move(pairs));
}

class JournalReader {
public:
    JournalReader(const Node& root, const std::string& file, const JournalContext& context, Faults& faults)
        : map_(root, faults, "the template"), context_(context), faults_(faults) {
        journal_.file = file;
    }

    JournalTemplate read() {
        check_format(map_);
        read_head();
        if (map_.has("lengths"))
            read_entries(map_, "lengths", "the length", faults_, [&](const Entry& e, MapReader& m) { read_length_entry(e, m); });
        if (map_.has("numbers"))
            read_entries(map_, "numbers", "the number", faults_, [&](const Entry& e, MapReader& m) { read_number_entry(e, m); });
        read_values();
        read_entries(map_, "pieces", "the piece", faults_, [&](const Entry& e, MapReader& m) { read_piece(e, m); });
        read_stations();
        if (map_.has("cut-lengths"))
            read_entries(map_, "cut-lengths", "the length", faults_, [&](const Entry& e, MapReader& m) { read_cut_length(e, m); });
        if (map_.has("items")) read_entries(map_, "items", "the item", faults_, [&](const Entry& e, MapReader& m) { read_item(e, m); });
        read_thickness();
        if (map_.has("checks")) read_entries(map_, "checks", "the check", faults_, [&](const Entry& e, MapReader& m) { read_check(e, m); });
        map_.required("tools", journal_.tools,
                      list_value<std::string>(name_value({"a tool", "pipeline/materials.yaml", context_.tools}), "[steel-ruler, awl]"));
        for (const char* key : {"lengths", "numbers", "cut-lengths", "items", "checks"})
            if (!map_.has(key)) map_.optional(key);  // so that it is among the keys that are known
        map_.done();
        return std::move(journal_);
    }

private:
    void read_head() {
        if (const Node* name = map_.required("journal")) {
            const auto written = plain_name_value(*name, faults_);
            journal_.name = written.value_or("");
            const std::string expected = "pipeline/journals/" + journal_.name + ".yaml";
            if (written && journal_.file != expected)
                faults_.add("bad-name", name->mark, in_quotes(journal_.name) + " is not the name of the file",
                            "the file's name without '.yaml'");
        }
        map_.required("title", journal_.title, text_value);
        map_.required("picture", journal_.picture, one_of({"opened-cover", "wrapped-cover"}));
    }

    /// A name that formulas will know: used once, and not one that is given.
    void define(const std::string& name, const SourceMark& mark) {
        std::string in_formula = name;
        std::replace(in_formula.begin(), in_formula.end(), '-', '_');
        const auto& given = given_names();
        if (std::find(given.begin(), given.end(), in_formula) != given.end()) {
            faults_.add("reserved-name", mark, in_quotes(name) + " is given to every formula and cannot be defined", "another name");
            return;
        }
        const auto [before, is_new] = defined_.emplace(in_formula, mark);
        if (!is_new)
            faults_.add("duplicate-name", mark,
                        in_quotes(name) + " is defined a second time; the first is in line " + std::to_string(before->second.line),
                        "each name once");
    }

    void read_length_entry(const Entry& entry, MapReader& map) {
        NamedLength length;
        length.name = entry.key;
        length.mark = entry.mark;
        define(entry.key, entry.mark);
        read_both(map, length_range, length.value);
        map.required("is", length.printed, word_value<bool>({{"printed", true}, {"fixed", false}}));
        map.required("why", length.why, prose_value);
        journal_.lengths.push_back(length);
    }

    void read_number_entry(const Entry& entry, MapReader& map) {
        NamedNumber number;
        number.name = entry.key;
        number.mark = entry.mark;
        define(entry.key, entry.mark);
        map.required("value", number.value, number_value(-1e6, 1e6));
        map.required("why", number.why, prose_value);
        journal_.numbers.push_back(number);
    }

    void read_values() {
        const Node* values = map_.optional("values");
        if (!values || !is_map(*values, faults_, "board-width: page_width + fore_edge_square")) return;
        for (const Entry& entry : values->entries) {
            if (check_plain_name(entry.key, entry.mark, faults_)) define(entry.key, entry.mark);
            auto formula = formula_value(entry.value, faults_);
            if (!formula) continue;
            formula->name = entry.key;
            journal_.values.push_back(*formula);
        }
    }

    void read_piece(const Entry& entry, MapReader& map) {
        PieceTemplate piece;
        piece.name = entry.key;
        piece.mark = entry.mark;
        map.required("title", piece.title, text_value);
        map.required("count", piece.count, formula_value);
        map.required("width", piece.width, formula_value);
        map.required("height", piece.height, formula_value);
        map.optional("rounding", piece.rounding, rounding_value);
        map.required("stock", piece.stock, one_of({"board", "page", "cover", "tape"}));
        piece.grain = "any";
        map.optional("grain", piece.grain, one_of({"height", "width", "any"}));
        map.optional("use", piece.use, text_value);
        journal_.pieces.push_back(piece);
    }

    void read_stations() {
        const Node* stations = map_.optional("stations");
        if (!stations || !is_map(*stations, faults_, "{ page: [ station_inset, page_height / 2 ], spine: [ … ] }")) return;
        const std::string example = "[ station_inset, page_height / 2 ]";
        const auto formulas = [&](const Node& node, Faults& faults) -> std::optional<std::vector<Formula>> {
            if (!is_list(node, faults, example)) return std::nullopt;
            std::vector<Formula> list;
            for (const Node& item : node.items)
                if (auto formula = formula_value(item, faults)) list.push_back(std::move(*formula));
            return list;
        };
        MapReader map(*stations, faults_, "'stations'");
        map.optional("page", journal_.stations.page, formulas);
        map.optional("spine", journal_.stations.spine, formulas);
        map.optional("use", journal_.stations.use, text_value);
        map.done();
    }

    void read_cut_length(const Entry& entry, MapReader& map) {
        LengthTemplate length;
        length.name = entry.key;
        map.required("title", length.title, text_value);
        map.required("count", length.count, formula_value);
        map.required("length", length.length, formula_value);
        map.optional("rounding", length.rounding, rounding_value);
        map.required("material", length.material, name_value({"a material", "pipeline/materials.yaml", context_.materials}));
        map.optional("use", length.use, text_value);
        journal_.cut_lengths.push_back(length);
    }

    void read_item(const Entry& entry, MapReader& map) {
        ItemTemplate item;
        item.name = entry.key;
        map.required("title", item.title, text_value);
        map.required("count", item.count, formula_value);
        map.optional("size", item.size, both_value);
        map.optional("use", item.use, text_value);
        journal_.items.push_back(item);
    }

    void read_thickness() {
        map_.required("bulk", journal_.bulk, formula_value);
        const Node* creep = map_.required("creep");
        if (!creep || !is_map(*creep, faults_, "{ least: …, most: … }")) return;
        MapReader map(*creep, faults_, "'creep'");
        map.required("least", journal_.creep_least, formula_value);
        map.required("most", journal_.creep_most, formula_value);
        map.done();
    }

    void read_check(const Entry& entry, MapReader& map) {
        CheckTemplate check;
        check.name = entry.key;
        check.mark = entry.mark;
        map.required("holds", check.holds, formula_value);
        map.required("measured", check.measured, formula_value);
        map.required("limit", check.limit, formula_value);
        map.required("level", check.level, one_of({"error", "warning", "note"}));
        map.required("message", check.message, prose_value);
        map.required("mend", check.mend, prose_value);
        journal_.checks.push_back(check);
    }

    MapReader map_;
    const JournalContext& context_;
    Faults& faults_;
    JournalTemplate journal_;
    std::map<std::string, SourceMark> defined_;
};

}  // namespace

JournalTemplate read_journal(const Node& root, const std::string& file, const JournalContext& context, Faults& faults) {
    return JournalReader(root, file, context, faults).read();
}

}  // namespace qw::kit
