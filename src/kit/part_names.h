// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/source.h"
#include "kit/faults.h"

#include <map>
#include <string>
#include <vector>

namespace qw::kit {

/// Names that every formula of a part knows: what was printed on what, what goes in, pi, and the functions.
const std::vector<std::string>& names_given_to_parts();

/// The lengths, numbers and values of one part: each once, and none that is given.
class PartNames {
public:
    explicit PartNames(Faults& faults) : faults_(faults) {}
    void add(const std::string& name, const SourceMark& mark);

private:
    Faults& faults_;
    std::map<std::string, SourceMark> known_;
};

}  // namespace qw::kit
