// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/fault.h"
#include "journal/measures.h"
#include "parts/told.h"

#include <string>
#include <vector>

namespace qw::report {

/// The numbers of the measurements sheet for one size, in the form that `measure --json` promises.
std::string to_json(const journal::Measures& measures, const std::string& kit, const std::vector<parts::ToldPart>& parts = {});
/// The same for a terminal, own ruler first.
std::string to_text(const journal::Measures& measures, const std::string& kit, const std::vector<parts::ToldPart>& parts = {});

/// {"faults":[…]} as every command prints them with --json.
std::string faults_json(const Fault& fault);

}  // namespace qw::report
