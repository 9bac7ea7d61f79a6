// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/shared_data.h"
#include "kit/values.h"

namespace qw::kit {

void read_checks(DataFolder& folder, Pipeline& into) {
    const auto root = folder.tree("checks.yaml");
    if (!root) return;
    Faults& faults = folder.faults();
    MapReader map(*root, faults, "the file");
    check_format(map);
    read_entries(map, "checks", "the rule", faults, [&](const Entry& entry, MapReader& reader) {
        CheckSetting rule;
        rule.rule = entry.key;
        rule.mark = entry.mark;
        reader.required("level", rule.level,
                        word_value<Level>({{"error", Level::error}, {"warning", Level::warning}, {"note", Level::note}}));
        reader.optional("limit", rule.limit, number_value(0, 1e9));
        if (reader.has("limit")) reader.optional("unit", rule.unit, text_value);
        else reader.forbid("unit", "there is no limit", "add a limit, or remove it");
        read_optional_entries(reader, "with", "the number", faults, [&](const Entry& number, MapReader& of_number) {
            CheckNumber one;
            of_number.required("is", one.is, number_value(0, 1e9));
            of_number.optional("unit", one.unit, text_value);
            rule.with[number.key] = one;
        });
        reader.required("checks", rule.checks, prose_value);
        reader.required("why", rule.why, prose_value);
        reader.required("source", rule.source, prose_value);
        into.checks.push_back(rule);
    });
    map.done();
}

}  // namespace qw::kit
