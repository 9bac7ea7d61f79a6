// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/guide_content.h"

#include <string>
#include <vector>

namespace qw::compose {

/// Makes what stands beside the steps from the measures of every print at full size. Refers to what it is given.
class GuideThings {
public:
    GuideThings(const SheetContext& context, const std::vector<SizeColumn>& full, const texts::Passages& words);

    /// The thing that a step uses by this name; nothing when this size needs none of it. Throws Fault (not_understood)
    /// at the step for a name that the template does not have.
    std::vector<GuideThing> used(const std::string& name, const kit::StepTemplate& step) const;

    /// What is made: the cover's size, the page's, and how many sheets in how many signatures.
    std::vector<GuideThing> facts() const;

private:
    GuideThing measured(const MeasureRow& row) const;
    GuideThing told(const journal::ToldFigure& figure) const;
    std::vector<GuideSize> sizes(const std::string& row_name) const;
    std::vector<GuideSize> of_figure(const std::string& name) const;
    GuideSize size_of(const SizeColumn& column, const std::string& metric, const std::string& us) const;
    std::vector<std::string> remarks(const kit::Choosable& thing, const std::string& grain, bool bought, const kit::StepTemplate& step) const;
    std::string way(const kit::Alternative& other, const kit::StepTemplate& step) const;
    GuideThing cover() const;
    GuideThing sheets() const;
    /// A print that can be shown, else the first.
    const SizeColumn& first_shown() const;

    const SheetContext& context_;
    const std::vector<SizeColumn>& full_;
    const texts::Passages& words_;
    std::vector<std::vector<MeasureRow>> rows_;  ///< of each column
};

/// "12 sheets in 2 signatures" as groups of like signatures: {signatures, sheets in each}, the fuller ones first.
std::vector<std::pair<int, int>> signature_groups(int sheets, int signatures);

}  // namespace qw::compose
