// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/ink_map.h"
#include "checks/rules.h"

#include <string>
#include <vector>

namespace qw::checks {

/// One picture of a kit, for what is asked of all together.
struct PictureSeen {
    std::string set, shown, sha256;
    std::uint32_t width = 0, height = 0;     ///< as it is seen
    const Ink* ink = nullptr;
    std::string pixels = {};                 ///< digest of the decoded samples (artwork/facts.h); empty: not known
};
/// The same pixels twice, or nearly; a picture of another size than the rest of its set.
void check_pictures_together(const Rules& rules, const std::vector<PictureSeen>& all, Findings& findings);

}  // namespace qw::checks
