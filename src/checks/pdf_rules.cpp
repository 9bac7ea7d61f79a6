// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/pdf_rules.h"

namespace qw::checks {

void check_pdf(const Rules& rules, const SeenPdf& seen, Findings& findings) {
    rules.tried("file-damaged");
    if (seen.facts->damage.empty()) return;
    rules.say(findings, {"file-damaged", Level::error, seen.path, 0, 0, seen.facts->damage, "a whole PDF", "The finished file cannot be read without repair", "Release the kit again"});
}

void check_editions(const Rules&, const std::vector<SeenPdf>&, Findings&) {}

}  // namespace qw::checks
