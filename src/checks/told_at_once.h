// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "bundle/unicode.h"
#include "checks/bundle_rules.h"

#include <string>

namespace qw::checks {

/// All that a rule finds in one bundle, told in one finding: the first places by name, and how many more there are.
class ToldAtOnce {
public:
    /// `asked`: of how many things.
    ToldAtOnce(const Rules& rules, const PackedBundle& bundle, const char* rule, std::size_t asked) : rules_(rules), bundle_(bundle), rule_(rule) {
        rules.tried(rule, asked);
    }
    void add(const std::string& measured) {
        if (++times_ <= shown_) measured_ += (measured_.empty() ? "" : "; ") + measured;
    }
    /// An entry of a zip, and why; an empty `fault` adds nothing.
    void add(const std::string& name, const std::string& fault) {
        if (!fault.empty()) add(bundle::shown_name(name) + " (" + fault + ")");
    }
    void say(const std::string& limit, const std::string& message, const std::string& mend, Findings& findings) const {
        if (times_ == 0) return;
        const std::string more = times_ > shown_ ? "; and " + std::to_string(times_ - shown_) + " more" : "";
        rules_.say(findings, {rule_, Level::error, bundle_.path, 0, 0, measured_ + more, limit, message, mend});
    }

private:
    static constexpr std::size_t shown_ = 3;
    const Rules& rules_;
    const PackedBundle& bundle_;
    const char* rule_;
    std::size_t times_ = 0;
    std::string measured_;
};

inline constexpr const char* pack_anew = "Pack the bundle anew from the files on your disk";

}  // namespace qw::checks
