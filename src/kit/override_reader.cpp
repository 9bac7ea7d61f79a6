// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/override_reader.h"

#include "kit/map_reader.h"
#include "kit/values.h"

#include <algorithm>

namespace qw::kit {

namespace {

constexpr double most_limit = 1e9;

std::optional<double> limit_in(const CheckSetting& rule, const Node& node, Faults& faults) {
    if (rule.unit == "mm") {
        const auto length = length_value({Length(), Length::mm(1000), "0 mm to 1000 mm"})(node, faults);
        return length ? std::optional(length->in_mm()) : std::nullopt;
    }
    QuantityForm form;
    if (!rule.unit.empty()) form.units.push_back({rule.unit, 1});
    form.most = most_limit;
    form.example = rule.unit.empty() ? "3" : "200 " + rule.unit;
    form.range = "0 or more";
    form.bare = true;
    return quantity_value(form)(node, faults);
}

void read_limit(MapReader& map, const CheckSetting& rule, Override& into, Faults& faults) {
    if (!rule.limit) {
        map.forbid("limit", "the rule has no limit", "remove it; 'level' can be set");
        return;
    }
    const Node* node = map.optional("limit");
    if (node) into.limit = limit_in(rule, *node, faults);
}

/// `rule` is null for a journal's own check.
Override read_override(const Entry& entry, const CheckSetting* rule, Faults& faults) {
    Override into;
    into.rule = entry.key;
    into.mark = entry.mark;
    MapReader map(entry.value, faults, "the rule '" + entry.key + "'");
    if (rule) read_limit(map, *rule, into, faults);
    else map.forbid("limit", "the limit is a formula of the template", "remove it; 'level' can be set");
    std::string level;
    if (map.optional("level", level,
                     word_value<std::string>({{"note", "note"}, {"warning", "warning"}, {"error", "error"}, {"off", "off"}})))
        into.level = level;
    map.required("reason", into.reason, prose_value);
    if (entry.value.kind == Node::Kind::map && !map.has("limit") && !map.has("level"))
        faults.add("missing-key", entry.value.mark,
                   "the rule '" + entry.key + "' is given " + (rule ? "neither a limit nor a level" : "no level"),
                   rule ? "'limit: …' or 'level: …'" : "'level: …'", "add one, or remove the rule");
    map.done();
    return into;
}

const std::string of_a_journal = "journal-";

Lookup rules_of(const RuleSources& sources) {
    Lookup lookup{"a rule", "pipeline/checks.yaml", {}};
    for (const CheckSetting& rule : sources.pipeline.checks) lookup.known.push_back(rule.rule);
    if (!sources.journal || sources.journal->checks.empty()) return lookup;
    lookup.place += " or " + sources.journal->file;
    for (const CheckTemplate& check : sources.journal->checks) lookup.known.push_back(of_a_journal + check.name);
    return lookup;
}

/// A check of the kit's journal, or perhaps one when the journal is not known.
bool of_the_journal(const std::string& rule, const JournalTemplate* journal) {
    if (!rule.starts_with(of_a_journal)) return false;
    if (!journal) return true;
    const auto meant = [&](const CheckTemplate& check) { return of_a_journal + check.name == rule; };
    return std::any_of(journal->checks.begin(), journal->checks.end(), meant);
}

}  // namespace

std::vector<Override> read_overrides(const Node& node, const RuleSources& sources, Faults& faults) {
    std::vector<Override> overrides;
    const Lookup known = rules_of(sources);
    if (!is_map(node, faults, "artwork-ppi: { limit: 200 ppi, reason: … }")) return overrides;
    for (const Entry& entry : node.entries) {
        const CheckSetting* rule = sources.pipeline.check(entry.key);
        if (rule || of_the_journal(entry.key, sources.journal)) overrides.push_back(read_override(entry, rule, faults));
        else tell_unknown_name("unknown-name", entry.mark, entry.key, known, faults);
    }
    return overrides;
}

}  // namespace qw::kit
