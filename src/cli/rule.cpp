// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "base/words.h"
#include "cli/common.h"
#include "kit/read.h"

#include <nlohmann/json.hpp>

#include <cstdio>

namespace qw::cli {

namespace {

std::string limit_of(const kit::CheckSetting& rule) {
    if (!rule.limit) return "none";
    char text[48];
    std::snprintf(text, sizeof text, "%g", *rule.limit);
    return text + (rule.unit.empty() ? "" : " " + rule.unit);
}

std::string as_text(const kit::CheckSetting& rule) {
    return rule.rule + " (" + name_of(rule.level) + ")\n  checks: " + rule.checks + "\n  why:    " + rule.why + "\n  limit:  " + limit_of(rule) +
           "\n  source: " + rule.source + "\n";
}

nlohmann::ordered_json as_json(const kit::CheckSetting& rule) {
    nlohmann::ordered_json json{{"rule", rule.rule}, {"level", name_of(rule.level)}, {"checks", rule.checks}, {"why", rule.why}};
    if (rule.limit) json["limit"] = *rule.limit;
    else json["limit"] = nullptr;
    json["unit"] = rule.unit;
    json["source"] = rule.source;
    return json;
}

int tell(Session& session, const std::string& name, bool all) {
    const kit::Pipeline pipeline = kit::read_pipeline(*session.disk, session.pipeline());
    std::vector<std::string> names;
    std::string text;
    auto json = nlohmann::ordered_json::array();
    for (const kit::CheckSetting& rule : pipeline.checks) {
        names.push_back(rule.rule);
        if (!all && rule.rule != name) continue;
        text += (text.empty() ? "" : "\n") + as_text(rule);
        json.push_back(as_json(rule));
    }
    if (json.empty()) {
        const auto near = nearest_word(name, names);
        throw Fault(FaultKind::not_understood, {"unknown-rule", {}, "there is no rule '" + name + "'", "", near ? "did you mean '" + *near + "'?" : "`quirewright rule --all` lists them"});
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
