// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "base/words.h"
#include "cli/common.h"
#include "kit/read.h"

#include <nlohmann/json.hpp>

#include <cstdio>
#include <map>

namespace qw::cli {

namespace {

std::string limit_of(const kit::CheckSetting& rule) {
    if (!rule.limit) return "none";
    char text[48];
    std::snprintf(text, sizeof text, "%g", *rule.limit);
    return text + (rule.unit.empty() ? "" : " " + rule.unit);
}

std::string number_text(const kit::CheckNumber& number) {
    char text[48];
    std::snprintf(text, sizeof text, "%g", number.is);
    return text + (number.unit.empty() ? "" : " " + number.unit);
}

std::string as_text(const kit::CheckSetting& rule) {
    std::string with;
    for (const auto& [name, number] : rule.with) with += (with.empty() ? "\n  with:   " : "; ") + spaced_name(name) + " " + number_text(number);
    return rule.rule + " (" + name_of(rule.level) + ")\n  checks: " + rule.checks + "\n  why:    " + rule.why + "\n  limit:  " + limit_of(rule) + with +
           "\n  source: " + rule.source + "\n";
}

nlohmann::ordered_json as_json(const kit::CheckSetting& rule) {
    nlohmann::ordered_json json{{"rule", rule.rule}, {"level", name_of(rule.level)}, {"checks", rule.checks}, {"why", rule.why}};
    if (rule.limit) json["limit"] = *rule.limit;
    else json["limit"] = nullptr;
    json["unit"] = rule.unit;
    for (const auto& [name, number] : rule.with) json["with"][name] = {{"is", number.is}, {"unit", number.unit}};
    json["source"] = rule.source;
    return json;
}

/// A check of journal templates: several may have one of its name.
struct JournalRule {
    const kit::JournalTemplate* journal;
    const kit::CheckTemplate* check;
    std::string name() const { return "journal-" + check->name; }
};

std::vector<std::vector<JournalRule>> journal_rules(const kit::Pipeline& pipeline) {
    std::map<std::string, std::vector<JournalRule>> by_name;
    for (const auto& [name, journal] : pipeline.journals)
        for (const kit::CheckTemplate& check : journal.checks) by_name["journal-" + check.name].push_back({&journal, &check});
    std::vector<std::vector<JournalRule>> all;
    for (auto& [name, rules] : by_name) all.push_back(std::move(rules));
    return all;
}

const std::string of_templates = "A condition of journal templates, at every print size that the measurements sheet shows.";
const std::string for_buyers = "Its message stands on the buyers' sheets, with what to do about it.";

std::string place_of(const JournalRule& rule) { return rule.check->mark.file + ", line " + std::to_string(rule.check->mark.line); }

std::string as_text(const std::vector<JournalRule>& rules) {
    std::string text = rules.front().name() + "\n  checks: " + of_templates + "\n  why:    " + for_buyers + "\n";
    for (const JournalRule& rule : rules)
        text += "  " + rule.journal->title + " (" + rule.check->level + ")\n    holds:  " + rule.check->holds.text + "\n    says:   " + rule.check->message +
                "\n    mend:   " + rule.check->mend + "\n    source: " + place_of(rule) + "\n";
    return text;
}

nlohmann::ordered_json as_json(const std::vector<JournalRule>& rules) {
    nlohmann::ordered_json json{{"rule", rules.front().name()}, {"level", rules.front().check->level}, {"checks", of_templates}, {"why", for_buyers},
                                {"limit", nullptr}, {"unit", ""}, {"source", place_of(rules.front())}};
    for (const JournalRule& rule : rules)
        json["journals"].push_back({{"journal", rule.journal->name}, {"level", rule.check->level}, {"holds", rule.check->holds.text},
                                    {"message", rule.check->message}, {"mend", rule.check->mend}, {"source", place_of(rule)}});
    return json;
}

int tell(Session& session, const std::string& name, bool all) {
    const kit::Pipeline pipeline = kit::read_pipeline(*session.disk, session.pipeline());
    std::vector<std::string> names;
    std::string text;
    auto json = nlohmann::ordered_json::array();
    const auto add = [&](const std::string& rule, const auto& of) {
        names.push_back(rule);
        if (!all && rule != name) return;
        text += (text.empty() ? "" : "\n") + as_text(of);
        json.push_back(as_json(of));
    };
    for (const kit::CheckSetting& rule : pipeline.checks) add(rule.rule, rule);
    for (const auto& rules : journal_rules(pipeline)) add(rules.front().name(), rules);
    if (json.empty()) {
        const auto near = nearest_word(name, names);
        throw Fault(FaultKind::not_understood, {"unknown-rule",
                                                {},
                                                "there is no rule '" + name + "'",
                                                "",
                                                near ? "did you mean '" + *near + "'?" : "`quirewright rule --all` lists them"});
    }
    print(session.common.json ? (all ? json : json.front()).dump(2) + "\n" : text);
    return 0;
}

}  // namespace

void add_rule(CLI::App& app, Session& session) {
    auto* command = app.add_subcommand("rule", "Tell what a rule checks, why, its limit and the limit's source");
    auto name = std::make_shared<std::string>();
    auto all = std::make_shared<bool>(false);
    auto* one = command->add_option("NAME", *name, "A rule, as a report names it");
    auto* every = command->add_flag("--all", *all, "All rules");
    one->excludes(every);
    command->add_option("--pipeline", session.common.pipeline, "Folder with the shared templates and data")->type_name("FOLDER");
    command->add_flag("--json", session.common.json, "Print one JSON document on standard output");
    command->callback([&session, name, all] {
        if (name->empty() && !*all) throw CLI::RequiredError("NAME or --all");
        session.chosen = [&session, name, all] { return tell(session, *name, *all); };
    });
}

}  // namespace qw::cli
