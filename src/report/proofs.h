// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "report/audit_report.h"

#include <nlohmann/json.hpp>

namespace qw::report {

/// Signed proofs for the three forms of a report. `proofs_text` and `proofs_section` are empty where nothing is signed.
nlohmann::ordered_json proofs_json(const std::vector<checks::SignedSheet>& proofs);
nlohmann::ordered_json proofing_json(const ProofingSet& set);
std::string proofs_text(const AuditReport& report);
std::string proofs_section(const AuditReport& report);

}  // namespace qw::report
