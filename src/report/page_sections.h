// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "report/page_picture.h"
#include "report/told.h"

#include <string>
#include <vector>

namespace qw::report {

/// The sections of the report's page, as HTML; empty where there is nothing to show. What the sheets are called in links:
/// `seen-N` in the contact sheets, `sheet-N` in the table, N counted from 0; `finding-N`, counted from 1.
std::string findings_section(const AuditReport& report, const std::vector<ToldSection>& sections, Pictures& pictures);
std::string contact_sheets(const AuditReport& report, const std::vector<std::vector<std::size_t>>& told, Pictures& pictures);
std::string sheet_table(const AuditReport& report, const std::vector<std::vector<std::size_t>>& told);
std::string checked_section(const AuditReport& report);

/// The page's style sheet.
extern const char* const page_style;

}  // namespace qw::report
