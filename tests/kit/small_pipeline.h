// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/fault.h"
#include "kit/read.h"
#include "support/fault_disk.h"

#include <string>
#include <vector>

namespace qw::test {

/// A pipeline of few entries a file, in a folder of its own. Its journal `j` and its part `t` have one
/// thing of each kind.
class SmallPipeline {
public:
    SmallPipeline();
    void put(const std::string& name, const std::string& text);
    std::string text(const std::string& name) const;
    Path path(const std::string& name) const { return folder_ / name; }
    kit::Pipeline read() const;
    /// What reading it told; empty when nothing was wrong.
    std::vector<FaultNote> faults() const;
    /// "code file line:column", one a line.
    std::string told() const;

private:
    TestFolder folder_;
};

/// A file of the small pipeline in which `from` is made `to`. In `to`, ▸ stands where each fault is told, and is taken
/// out before the file is read.
struct BrokenData {
    const char* file;
    const char* from;
    const char* to;
    const char* code;       ///< of each of the faults
    const char* mend = "";  ///< part of what the first one says is to be done; empty: not compared
};

/// Checks that each row tells what it says, and nothing else.
void check_broken(const std::vector<BrokenData>& table);

inline constexpr const char* j_yaml = "journals/j.yaml";
/// The way of the needle in that journal, as it is written there.
inline const std::string path_as_it_is = "path: [2, 1, 3, 2]";
/// The small journal with a word of it changed.
kit::JournalTemplate changed_journal(const std::string& from, const std::string& to);

}  // namespace qw::test
