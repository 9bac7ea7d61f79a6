// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/guide_content.h"
#include "compose/parts_sheet.h"

#include <functional>
#include <map>
#include <string>

namespace qw::compose {

/// Writes what the sheet of parts says of each set, in the order of the sets: a caution stands where it applies first and
/// is pointed to from then on. Refers to what it is given. Words: pipeline/texts/parts.mustache.
class PartsWriter {
public:
    PartsWriter(const SheetContext& context, const texts::Passages& words) : context_(context), words_(words) {}

    /// "Pockets: Trifold pocket"
    std::string title(const PartOfKit& part) const;
    /// Throws Fault (not_understood), each at its step: a name that a step's text is not given, a tool or caution that is unknown.
    GuideContent content(const PartOfKit& part);

private:
    std::vector<GuideThing> facts(const PartOfKit& part) const;
    GuideThing measured(const std::string& name, const std::string& title, const PartOfKit& part, Rounding way,
                        const std::function<Size(const PartOfKit::InPrint&)>& size) const;
    texts::Model step_names(const PartOfKit& part) const;
    std::string length(const kit::NamedLength& length, const PartOfKit& part) const;
    GuideStep step(const PartOfKit& part, std::size_t number, const texts::Model& names);
    std::vector<std::string> first_cautions(const PartOfKit& part);
    /// Texts of those not told yet, which are then told at `place`.
    std::vector<std::string> told_first(const std::vector<std::string>& names, const std::string& place);

    const SheetContext& context_;
    const texts::Passages& words_;
    std::map<std::string, std::string> places_;  ///< of cautions that were told
};

}  // namespace qw::compose
