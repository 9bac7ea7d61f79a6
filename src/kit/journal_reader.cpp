// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/journal_reader.h"

#include "base/words.h"
#include "kit/data_file.h"
#include "kit/journal_names.h"
#include "kit/journal_parts_reader.h"
#include "kit/journal_picture.h"
#include "kit/journal_values.h"
#include "kit/journal_work_reader.h"

#include <algorithm>
#include <iterator>

namespace qw::kit {

namespace {

const LengthRange length_range{Length::mm(-5000), Length::mm(5000), "-5000 mm to 5000 mm"};

const std::vector<std::string> journal_keys{"format",      "journal", "title",   "picture", "lengths", "numbers", "values", "pieces", "stations", "sewing",
                                            "cut-lengths", "items",   "figures", "bulk",    "creep",   "checks",  "tools",  "steps"};

/// The tree with each misspelt key told and written as it was meant, so that what stands below it is read and nothing else
/// is told to be missing because of it.
Node with_known_keys(Node root, Faults& faults) {
    const auto stands = [&](const std::string& key) {
        return std::any_of(root.entries.begin(), root.entries.end(), [&](const Entry& entry) { return entry.key == key; });
    };
    for (Entry& entry : root.entries) {
        if (std::find(journal_keys.begin(), journal_keys.end(), entry.key) != journal_keys.end()) continue;
        std::vector<std::string> free;
        std::copy_if(journal_keys.begin(), journal_keys.end(), std::back_inserter(free), [&](const std::string& key) { return !stands(key); });
        const auto near = nearest_word(entry.key, free);
        if (!near) continue;  // the reader of the map tells it
        faults.add("unknown-key", entry.mark, "the template has no key " + in_quotes(entry.key), listed(journal_keys), "write '" + *near + "'");
        entry.key = *near;
    }
    return root;
}

class JournalReader {
public:
    JournalReader(const Node& root, const std::string& file, const JournalContext& context, Faults& faults)
        : root_(with_known_keys(root, faults)), map_(root_, faults, "the template"), faults_(faults), names_(faults), parts_(journal_, names_, context, faults) {
        journal_.file = file;
        // A tree was made of these bytes, so that they are a text.
        if (!context.bytes.empty()) source_.emplace(context.bytes, file);
    }

    JournalTemplate read() {
        check_format(map_);
        read_head();
        read_optional_entries(map_, "lengths", "the length", faults_, [&](const Entry& e, MapReader& m) { read_length_entry(e, m); });
        read_optional_entries(map_, "numbers", "the number", faults_, [&](const Entry& e, MapReader& m) { read_number_entry(e, m); });
        read_values();
        parts_.read(map_);
        read_stations(map_, journal_, faults_);
        if (!journal_.pieces.empty()) check_picture(journal_, map_.mark_of("picture"), faults_);
        read_sewing(map_, journal_, faults_);
        read_thickness();
        read_optional_entries(map_, "checks", "the check", faults_, [&](const Entry& e, MapReader& m) { read_check(e, m); });
        map_.required("tools", journal_.tools, parts_.tools_value());
        read_steps(map_, journal_, parts_.tools_value(), source_ ? &*source_ : nullptr, faults_);
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
        map_.required("picture", journal_.picture, one_of(picture_names()));
    }

    void read_length_entry(const Entry& entry, MapReader& map) {
        NamedLength length;
        length.name = entry.key;
        length.mark = entry.mark;
        names_.value(entry.key, entry.mark);
        if (read_both(map, length_range, length.value)) check_pair(entry.value, length.value, faults_);
        map.required("is", length.printed, word_value<bool>({{"printed", true}, {"fixed", false}}));
        map.required("why", length.why, prose_value);
        map.optional("published", length.published, prose_value);
        journal_.lengths.push_back(length);
    }

    void read_number_entry(const Entry& entry, MapReader& map) {
        NamedNumber number;
        number.name = entry.key;
        number.mark = entry.mark;
        names_.value(entry.key, entry.mark);
        map.required("value", number.value, number_value(-1e6, 1e6));
        map.required("why", number.why, prose_value);
        map.optional("published", number.published, prose_value);
        journal_.numbers.push_back(number);
    }

    void read_values() {
        const Node* values = map_.optional("values");
        if (!values || !is_map(*values, faults_, "board-width: page_width + fore_edge_square")) return;
        for (const Entry& entry : values->entries) {
            if (check_plain_name(entry.key, entry.mark, faults_)) names_.value(entry.key, entry.mark);
            auto formula = formula_value(entry.value, faults_);
            if (!formula) continue;
            formula->name = entry.key;
            journal_.values.push_back(*formula);
        }
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
        if (entry.key == "check" || entry.key == "stations-on-page")
            faults_.add("reserved-name", entry.mark, "'journal-" + entry.key + "' is a rule of pipeline/checks.yaml", "another name");
        map.required("holds", check.holds, formula_value);
        map.required("measured", check.measured, formula_value);
        map.required("limit", check.limit, formula_value);
        map.required("level", check.level, one_of({"error", "warning", "note"}));
        map.required("message", check.message, prose_value);
        map.required("mend", check.mend, prose_value);
        journal_.checks.push_back(check);
    }

    const Node root_;
    std::optional<SourceText> source_;
    MapReader map_;
    Faults& faults_;
    JournalTemplate journal_;
    JournalNames names_;
    JournalPartsReader parts_;
};

}  // namespace

JournalTemplate read_journal(const Node& root, const std::string& file, const JournalContext& context, Faults& faults) {
    return JournalReader(root, file, context, faults).read();
}

}  // namespace qw::kit
