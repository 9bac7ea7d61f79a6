// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/finding.h"
#include "parts/net.h"

#include <string>
#include <vector>

namespace qw::parts {

/// A length in a finding: "1.5 mm", and for inch papers "1/16 in (1.5 mm)", because what paper takes is finer than rulers.
std::string told(Length length, UnitSystem system);
/// What is missing, rounded up to 0.01 mm, so that mending by it suffices.
std::string told_missing(Length length, UnitSystem system);

/// The system in which two lengths can be told apart: metric for those that an inch ruler shows alike.
UnitSystem apart_in(UnitSystem system, Length measured, Length limit);

/// "'Left'", "'Left' and 'Right'".
std::string title_of(const Net& net, std::size_t panel);
std::string titles_of(const Net& net, const std::vector<std::size_t>& panels);

/// A finding of this level at an entry of the template; `at` may be null, as for nets without a template.
Finding told_at(const Net& net, const SourceMark* at, std::string rule, std::string message, std::string mend);
const SourceMark* fold_mark(const Net& net, std::size_t fold);
const SourceMark* glue_mark(const Net& net, std::size_t glue);
const SourceMark* face_mark(const Net& net, std::size_t face);
const SourceMark* part_mark(const Net& net);
/// By its name: pockets are handed about without their index.
const SourceMark* pocket_mark(const Net& net, const Pocket& pocket);

}  // namespace qw::parts
