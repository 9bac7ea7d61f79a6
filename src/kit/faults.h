// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/fault.h"

#include <string>
#include <string_view>
#include <vector>

namespace qw::kit {

/// Collects what is wrong with a file, so that a reader can go on and all faults are told in one run.
class Faults {
public:
    void add(std::string code, const SourceMark& where, std::string what, std::string expected = "", std::string mend = "");
    /// Takes over the notes of a fault that was thrown, if it is of the kind not_understood; throws it again if not.
    void add(const Fault& fault);
    /// Takes over all that another one collected.
    void add(const Faults& others);
    bool none() const { return notes_.empty(); }
    /// Throws Fault (not_understood) with all of them, in the order of the files' lines; does nothing when there are none.
    void throw_if_any() const;

private:
    std::vector<FaultNote> notes_;
};

/// Text from a file as a message may show it: in quotes, control characters and bytes that are not UTF-8 as \xHH,
/// at most 60 characters.
std::string in_quotes(std::string_view text);

}  // namespace qw::kit
