// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "checks/rules.h"
#include "release/print_sizes.h"

#include <map>
#include <string>
#include <vector>

namespace qw::release {

/// What the journal's own checks say of the sizes that buyers choose for themselves, over all papers and prints: each check
/// that holds at full size is told once by the rule journal-sizes, with every size at which it does not. The sheets show no
/// size that does not hold, and explain it; the studio should know before buyers do. Sizes above 100 % count where the print
/// has no border: that is what drivers enlarge; who enlarges a bordered print meant to.
class SizesThatFail {
public:
    /// `rules` must outlive this.
    explicit SizesThatFail(const checks::Rules& rules);
    /// All sizes of one print of one paper, the largest first, 100 % among them.
    void add(const std::vector<compose::SizeColumn>& columns);
    /// In the order of the checks' names.
    void tell(Findings& findings) const;

private:
    struct Failed {
        Finding first;                       ///< of the size nearest to full size
        double from_full = 0;                ///< how far that is, in per cent
        std::vector<std::string> where;      ///< "US Letter, borderless: 55 to 30 %"
    };
    bool asked(const compose::SizeColumn& column) const;
    std::string sizes_that_fail(const std::vector<compose::SizeColumn>& columns, const std::string& check) const;

    const checks::Rules& rules_;
    const double smallest_;                  ///< per cent
    std::map<std::string, Failed> by_check_;
};

}  // namespace qw::release
