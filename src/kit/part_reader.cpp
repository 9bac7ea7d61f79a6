// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/part_reader.h"

#include "kit/data_file.h"
#include "kit/journal_values.h"
#include "kit/part_names.h"
#include "kit/part_net_reader.h"
#include "kit/part_values.h"

namespace qw::kit {

namespace {

const LengthRange part_length_range{Length::mm(-5000), Length::mm(5000), "-5000 mm to 5000 mm"};

class PartReader {
public:
    PartReader(const Node& root, const std::string& file, const PartContext& context, Faults& faults)
        : map_(root, faults, "the template"), faults_(faults), names_(faults) {
        part_.file = file;
        for (const Tool& tool : context.tools) tools_.known.push_back(tool.name);
        for (const Material& material : context.materials) materials_.known.push_back(material.name);
    }

    PartTemplate read() {
        check_format(map_);
        read_head();
        read_optional_entries(map_, "lengths", "the length", faults_, [&](const Entry& e, MapReader& m) { read_length_entry(e, m); });
        read_optional_entries(map_, "numbers", "the number", faults_, [&](const Entry& e, MapReader& m) { read_number_entry(e, m); });
        read_values();
        read_optional_entries(map_, "cut-lengths", "the length", faults_, [&](const Entry& e, MapReader& m) { read_cut_length(e, m); });
        read_optional_entries(map_, "items", "the item", faults_, [&](const Entry& e, MapReader& m) { read_item(e, m); });
        read_net(map_, part_, tools_, faults_);
        map_.required("tools", part_.tools, tools_value());
        read_steps();
        map_.done();
        return std::move(part_);
    }

private:
    Reader<std::vector<std::string>> tools_value() const { return list_value<std::string>(name_value(tools_), "[scissors, bone-folder]"); }

    void read_head() {
        part_.mark = map_.mark_of("part");
        if (const Node* name = map_.required("part")) {
            const auto written = plain_name_value(*name, faults_);
            part_.name = written.value_or("");
            if (written && part_.file != "pipeline/parts/" + part_.name + ".yaml")
                faults_.add("bad-name", name->mark, in_quotes(part_.name) + " is not the name of the file", "the file's name without '.yaml'");
        }
        map_.required("title", part_.title, text_value);
    }

    void read_length_entry(const Entry& entry, MapReader& map) {
        NamedLength length;
        length.name = entry.key;
        length.mark = entry.mark;
        length.printed = true;
        names_.add(entry.key, entry.mark);
        read_pair(map, part_length_range, length.value, faults_);
        map.optional("is", length.printed, word_value<bool>({{"printed", true}, {"fixed", false}}));
        map.required("why", length.why, prose_value);
        map.optional("published", length.published, prose_value);
        part_.lengths.push_back(std::move(length));
    }

    void read_number_entry(const Entry& entry, MapReader& map) {
        NamedNumber number;
        number.name = entry.key;
        number.mark = entry.mark;
        names_.add(entry.key, entry.mark);
        map.required("value", number.value, number_value(-1e6, 1e6));
        map.required("why", number.why, prose_value);
        map.optional("published", number.published, prose_value);
        part_.numbers.push_back(std::move(number));
    }

    void read_values() {
        const Node* values = map_.optional("values");
        if (!values || !is_map(*values, faults_, "hole-height: height - hole_down")) return;
        for (const Entry& entry : values->entries) {
            if (check_plain_name(entry.key, entry.mark, faults_)) names_.add(entry.key, entry.mark);
            auto formula = formula_value(entry.value, faults_);
            if (!formula) continue;
            formula->name = entry.key;
            part_.values.push_back(std::move(*formula));
        }
    }

    void read_cut_length(const Entry& entry, MapReader& map) {
        LengthTemplate length;
        length.name = entry.key;
        length.mark = entry.mark;
        map.required("title", length.title, text_value);
        map.required("count", length.count, formula_value);
        map.required("length", length.length, formula_value);
        map.optional("rounding", length.rounding, rounding_value);
        map.required("material", length.material, name_value(materials_));
        read_common(map, length, length.use);
        part_.cut_lengths.push_back(std::move(length));
    }

    void read_item(const Entry& entry, MapReader& map) {
        ItemTemplate item;
        item.name = entry.key;
        item.mark = entry.mark;
        map.required("title", item.title, text_value);
        map.required("count", item.count, formula_value);
        map.optional("size", item.size, pair_value);
        read_common(map, item, item.use);
        part_.items.push_back(std::move(item));
    }

    void read_common(MapReader& map, Choosable& thing, std::string& use) {
        map.optional("use", use, text_value);
        map.optional("tools", thing.tools, tools_value());
        // A kit's choices name things of its journal.
        for (const char* key : {"optional", "or"}) map.forbid(key, "a kit chooses among things of its journal only", "remove it");
    }

    void read_steps() {
        if (!map_.has("steps")) map_.required("steps");
        std::vector<std::pair<std::string, std::string>> drawings{{"flat", "flat"}, {"closed", "closed"}};
        for (std::size_t fold = 1; fold <= part_.folds.size(); ++fold) {
            const std::string name = "fold-" + std::to_string(fold);
            drawings.emplace_back(name, name);
        }
        read_list_of_maps(map_, "steps", "step", "- { title: Cut it out, text: … }", faults_, [&](const Node& node, MapReader& map) {
            StepTemplate step;
            step.mark = node.mark;
            map.required("title", step.title, text_value);
            map.required("text", step.text, prose_value);
            map.optional("tools", step.tools, tools_value());
            map.optional("drawing", step.drawing, word_value<std::string>(drawings));
            part_.steps.push_back(std::move(step));
        });
    }

    MapReader map_;
    Faults& faults_;
    PartNames names_;
    Lookup tools_{"a tool", "pipeline/materials.yaml", {}}, materials_{"a material", "pipeline/materials.yaml", {}};
    PartTemplate part_;
};

}  // namespace

PartTemplate read_part(const Node& root, const std::string& file, const PartContext& context, Faults& faults) {
    return PartReader(root, file, context, faults).read();
}

}  // namespace qw::kit
