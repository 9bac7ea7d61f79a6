// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/proof_rules.h"

#include "checks/in_digits.h"

#include <cmath>

namespace qw::checks {

namespace {

std::string in_mm(Length length) { return in_digits(length.in_mm(), "%.2f mm"); }

Finding finding(const char* rule, const SignedSheet& sheet, std::string measured, std::string limit, std::string message, std::string mend) {
    const int page = sheet.pages.empty() ? 0 : sheet.pages.front();
    return {rule, Level::warning, sheet.file, page, 0, std::move(measured), std::move(limit), std::move(message), std::move(mend)};
}

void check_holds(const Rules& rules, const SignedSheet& sheet, Findings& findings) {
    rules.tried("proof-holds");
    if (sheet.holds()) return;
    const bool gone = sheet.state == SignedSheet::State::gone;
    rules.say(findings, finding("proof-holds", sheet, gone ? "not in the kit" : "another page", "the page that was signed on " + sheet.date,
                                gone ? "A sheet that " + sheet.printed_by + " signed is not in the kit any more"
                                     : "A sheet that " + sheet.printed_by + " signed has changed, so its signature no longer holds",
                                gone ? "See which sheets are to be printed now (--proofing)"
                                     : "Print " + sheet.pages_told() + " of " + sheet.file + " again, and sign it"));
}

void check_readings(const Rules& rules, const SignedSheet& sheet, Findings& findings) {
    rules.tried("proof-verdict");
    if (!sheet.good)
        rules.say(findings, finding("proof-verdict", sheet, "bad, " + sheet.printed_by + ", " + sheet.date, "good",
                                    "Who printed this sheet found it bad", "Mend it, print it again, and sign the new sheet"));
    if (sheet.gauge && sheet.drawn) {
        rules.tried("proof-gauge");
        const double off = (*sheet.gauge / *sheet.drawn - 1) * 100, limit = rules.limit("proof-gauge");
        if (std::abs(off) > limit + 1e-9)
            rules.say(findings, finding("proof-gauge", sheet, in_mm(*sheet.gauge), in_mm(*sheet.drawn) + " within " + in_digits(limit, "%g") + " %",
                                        "The signed sheet was not printed at its size", "Print it at 100 %, and sign the new sheet"));
    }
    if (sheet.right && sheet.up) {
        rules.tried("proof-offset");
        const double off = std::hypot(sheet.right->in_mm(), sheet.up->in_mm()), limit = rules.limit("proof-offset");
        if (off > limit + 1e-9)
            rules.say(findings, finding("proof-offset", sheet, in_digits(std::round(off * 100) / 100, "%g") + " mm", in_digits(limit, "%g") + " mm",
                                        "The back of the signed sheet lies beside its front",
                                        "Straighten the paper or set the printer, print it again, and sign the new sheet"));
    }
}

}  // namespace

std::string SignedSheet::pages_told() const {
    if (pages.empty()) return "";
    std::string text = (pages.size() == 1 ? "page " : "pages ") + std::to_string(pages.front());
    if (pages.size() > 1) text += " and " + std::to_string(pages.back());
    return text;
}

void check_proofs(const Rules& rules, const std::vector<SignedSheet>& sheets, Findings& findings) {
    for (const SignedSheet& sheet : sheets) {
        check_holds(rules, sheet, findings);
        if (sheet.holds()) check_readings(rules, sheet, findings);
    }
}

}  // namespace qw::checks
