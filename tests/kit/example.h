// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/fault.h"
#include "kit/read.h"
#include "support/fault_disk.h"

#include <memory>
#include <string>
#include <vector>

namespace qw::test {

/// Shared data made by hand, so that the tests of manifests stand whatever the project's own data says.
kit::Pipeline example_pipeline(const Path& folder);

/// A manifest without a fault, eleven lines; the tests of faults change a word of it.
extern const std::string sound_manifest;

/// A kit in a folder of its own with two pages (art/1.png, art/2.png), a hidden file and a folder beside them, and an
/// empty pipeline folder.
class ExampleKit {
public:
    ExampleKit();
    Path operator/(const std::string& name) const { return folder_ / ("kit/" + name); }
    const kit::Pipeline& pipeline() const { return pipeline_; }
    /// A small file, with its folders.
    void put(const std::string& name, const std::string& text = "x");
    /// Reads `manifest` as kit.yaml of this kit. Throws what reading throws.
    kit::Manifest read(const std::string& manifest);
    /// What reading it told; empty when nothing was wrong.
    std::vector<FaultNote> faults(const std::string& manifest);

private:
    TestFolder folder_;
    std::unique_ptr<Disk> disk_ = real_disk();
    kit::Pipeline pipeline_;
};

/// `text` with the first `from` made `to`; fails the test when there is none.
std::string with(const std::string& text, const std::string& from, const std::string& to);

/// "code line:column", one a line, as the tests compare them.
std::string told(const std::vector<FaultNote>& notes);

}  // namespace qw::test
