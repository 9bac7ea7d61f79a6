// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"
#include "kit/faults.h"
#include "kit/manifest.h"
#include "kit/node.h"

#include <string>
#include <vector>

namespace qw::kit {

/// Finds the files that a manifest names, and lets none lie outside the kit, by whatever links.
class ArtworkFinder {
public:
    /// `folder` is the kit's, resolved.
    ArtworkFinder(Disk& disk, Path folder) : disk_(disk), folder_(std::move(folder)) {}

    /// The files of one pattern or a list of them: patterns in the order written, files of a pattern in natural order.
    /// Wildcards stand in the last part of a path only. Every fault is told; a file that is named twice is one.
    std::vector<ArtworkFile> find(const Node& patterns, Faults& faults);

private:
    /// "art/pages" and "*.png".
    struct Pattern {
        std::vector<std::string> folders;
        std::string name, text;
        SourceMark mark;
    };
    bool check(const Pattern& pattern, Faults& faults) const;
    void find_one(const Pattern& pattern, Faults& faults, std::vector<ArtworkFile>& found);
    /// The folder of a pattern, resolved; nothing, and told, when it is missing or leads out of the kit.
    std::optional<Path> folder_of(const Pattern& pattern, Faults& faults);
    void add(const Pattern& pattern, const Path& in, const std::string& name, Faults& faults, std::vector<ArtworkFile>& found);
    void tell_nothing_found(const Pattern& pattern, const std::vector<std::string>& names, Faults& faults) const;
    bool inside(const Path& real) const;

    Disk& disk_;
    Path folder_;
};

}  // namespace qw::kit
