// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace qw::report {

/// How the report looks: on a phone, on a desk and on paper. Text before colour; nothing is told by colour alone.
extern const char* const report_style;

}  // namespace qw::report
