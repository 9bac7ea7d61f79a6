// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/finding.h"
#include "kit/manifest.h"
#include "kit/pipeline.h"

#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

namespace qw::checks {

/// The rules as they are in force for one kit: levels and limits from checks.yaml, then what the kit sets otherwise.
class Rules {
public:
    /// Throws Fault (not_understood) for an override that names no rule, with the nearest one.
    Rules(const std::vector<kit::CheckSetting>& settings, const std::vector<kit::Override>& overrides);

    /// The limit in the rule's unit. Throws Fault when checks.yaml gives the rule none.
    double limit(const std::string& rule) const;
    /// A number that the rule measures with, in its unit. Throws Fault when checks.yaml gives the rule none of that name.
    double with(const std::string& rule, const std::string& number) const;
    /// Gives the finding its level and adds it; a rule that is off says nothing. Throws Fault when checks.yaml does
    /// not know the rule.
    void say(Findings& findings, Finding finding) const;
    /// Notes that a rule was tried on one more thing, for the report's list of what was checked.
    void tried(const std::string& rule, std::size_t times = 1) const;

    struct Tried {
        std::string rule;
        std::size_t times = 0;
        std::string checks;  ///< the rule's sentence
        std::string reason;  ///< why this kit sets it otherwise; empty: it does not
        bool off = false;    ///< the kit has switched it off: it was tried, and what it found is not told
    };
    /// All rules that were tried, by name.
    std::vector<Tried> what_was_tried() const;
    struct Untried {
        std::string rule;
        std::string checks;  ///< the rule's sentence
        bool off = false;    ///< the kit has switched it off
        std::string reason;  ///< why the kit sets it otherwise; empty: it does not
    };
    /// The other rules, by name: there was nothing that they ask about.
    std::vector<Untried> what_was_not_tried() const;

private:
    struct InForce {
        const kit::CheckSetting* setting = nullptr;
        std::optional<Level> level;
        std::optional<double> limit;
        std::string reason;
    };
    const InForce& rule(const std::string& name) const;
    std::map<std::string, InForce> rules_;
    mutable std::mutex mutex_;  // files are judged by several jobs at once
    mutable std::map<std::string, std::size_t> tried_;
};

}  // namespace qw::checks
