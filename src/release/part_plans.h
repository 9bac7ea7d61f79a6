// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/finding.h"
#include "journal/measures.h"
#include "parts/fit.h"
#include "parts/folding.h"
#include "parts/net.h"
#include "release/kit_sizes.h"
#include "release/read.h"

#include <string>
#include <vector>

namespace qw::release {

/// A set of parts in one edition at one print size.
struct SizedPart {
    const kit::Set* set = nullptr;
    const kit::PartTemplate* part = nullptr;
    Edition edition;
    double scale = 1;
    int count = 0;
    parts::Net net;
    parts::Folded folded;
};

/// All sets of parts of a kit in one edition, each sized for what goes in it. Points into the kit.
class SizedParts {
public:
    /// `percent` is the buyer's, 100 is full size.
    SizedParts(const ReadKit& kit, const SheetCounts& counts, const Paper& paper, Print print, double percent);

    const std::vector<SizedPart>& all() const { return all_; }  ///< in the order of the manifest
    const SizedPart* of(const std::string& set) const;

    /// What folding says, what does not go in or on; rules `part-…`, with the sets' names and this edition in words.
    /// `measures` is the journal in this edition and size.
    Findings findings(const journal::Measures& measures) const;

    /// Thickness of a filled part: its layers and what goes in it.
    Length filled(const SizedPart& part) const;

private:
    void size(const kit::Set& set);
    struct PutIn {
        std::string pocket;            ///< empty: any
        parts::Contents contents;
    };
    std::vector<PutIn> contents_of(const kit::Set& set) const;
    Length contents_thickness(const kit::Set& set) const;
    void check_contents(const SizedPart& part, Findings& findings) const;
    void check_carrier(const SizedPart& part, const journal::Measures& measures, Findings& findings) const;

    const ReadKit& kit_;
    const SheetCounts& counts_;
    Paper paper_;
    Print print_;
    double percent_;
    std::vector<SizedPart> all_;
};

}  // namespace qw::release
