// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/rules.h"

#include "base/fault.h"
#include "base/words.h"

namespace qw::checks {

namespace {

std::optional<Level> level_of(const std::string& name) {
    if (name == "note") return Level::note;
    if (name == "warning") return Level::warning;
    if (name == "error") return Level::error;
    return std::nullopt;  // "off"; the manifest's reader lets nothing else through
}

}  // namespace

Rules::Rules(const std::vector<kit::CheckSetting>& settings, const std::vector<kit::Override>& overrides) {
    std::vector<std::string> names;
    for (const kit::CheckSetting& setting : settings) {
        rules_[setting.rule] = {&setting, setting.level, setting.limit, ""};
        names.push_back(setting.rule);
    }
    for (const kit::Override& other : overrides) {
        const auto found = rules_.find(other.rule);
        if (found == rules_.end() && other.rule.starts_with("journal-")) continue;  // a check of the journal's template, which the manifest's reader knows
        if (found == rules_.end()) {
            const auto near = nearest_word(other.rule, names);
            throw Fault(FaultKind::not_understood, {"unknown-rule", other.mark, "there is no rule '" + other.rule + "'", "a rule of pipeline/checks.yaml",
                                                    near ? "did you mean '" + *near + "'?" : "`quirewright rule --all` lists them"});
        }
        if (other.level) found->second.level = level_of(*other.level);
        if (other.limit) found->second.limit = other.limit;
        found->second.reason = other.reason;
    }
}

const Rules::InForce& Rules::rule(const std::string& name) const {
    const auto found = rules_.find(name);
    if (found == rules_.end()) {
        throw Fault(FaultKind::not_understood, {"unknown-rule",
                                                {"pipeline/checks.yaml", 0, 0},
                                                "the rule '" + name + "' is not set",
                                                "an entry with level, checks, why and source",
                                                "add it"});
    }
    return found->second;
}

double Rules::limit(const std::string& name) const {
    const InForce& in_force = rule(name);
    if (!in_force.limit) {
        throw Fault(FaultKind::not_understood, {"missing-limit", in_force.setting->mark, "the rule '" + name + "' has no limit", "limit: a number", "add it"});
    }
    return *in_force.limit;
}

double Rules::with(const std::string& name, const std::string& number) const {
    const kit::CheckSetting& setting = *rule(name).setting;
    const auto found = setting.with.find(number);
    if (found == setting.with.end()) {
        throw Fault(FaultKind::not_understood, {"missing-number", setting.mark, "the rule '" + name + "' measures with '" + number + "', which is not set",
                                                "with: { " + number + ": { is: a number, unit: … } }", "add it"});
    }
    return found->second.is;
}

void Rules::say(Findings& findings, Finding finding) const {
    const InForce& in_force = rule(finding.rule);
    if (!in_force.level) return;
    finding.level = *in_force.level;
    findings.push_back(std::move(finding));
}

void Rules::tried(const std::string& name, std::size_t times) const {
    rule(name);
    const std::lock_guard lock(mutex_);
    tried_[name] += times;
}

std::vector<Rules::Tried> Rules::what_was_tried() const {
    std::vector<Tried> list;
    for (const auto& [name, times] : tried_) {
        const InForce& in_force = rule(name);
        list.push_back({name, times, in_force.setting->checks, in_force.reason, !in_force.level});
    }
    return list;
}

std::vector<Rules::Untried> Rules::what_was_not_tried() const {
    std::vector<Untried> list;
    for (const auto& [name, in_force] : rules_)
        if (!tried_.contains(name)) list.push_back({name, in_force.setting->checks, !in_force.level, in_force.reason});
    return list;
}

}  // namespace qw::checks
