// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/rules.h"
#include "kit/read.h"

#include <algorithm>

namespace qw::test {

/// The rules as pipeline/checks.yaml has them.
inline const kit::Pipeline& shared_data() {
    static const kit::Pipeline pipeline = kit::read_pipeline(*real_disk(), Path(QW_SOURCE_DIR) / "pipeline");
    return pipeline;
}

/// With nothing set otherwise.
inline const checks::Rules& rules() {
    static const checks::Rules in_force(shared_data().checks, {});
    return in_force;
}

inline std::size_t times(const Findings& findings, const std::string& rule) {
    return static_cast<std::size_t>(std::count_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.rule == rule; }));
}

}  // namespace qw::test
