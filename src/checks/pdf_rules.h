// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/edition.h"
#include "checks/finished_rules.h"
#include "checks/rules.h"
#include "proof/file_facts.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::checks {

/// A finished PDF as it is seen, whoever made it. What is not known of it is empty; the rules then say only what can be
/// known.
struct SeenPdf {
    std::string path;                        ///< inside the bundle
    const proof::FileFacts* facts = nullptr; ///< never null
    std::vector<RenderedPage> rendered;      ///< those pages that were rendered, ascending
    std::string role;                        ///< as release.json has it: "journal-page", "measurements" …
    std::optional<Paper> paper;              ///< that it is for
    std::optional<Print> print;
    std::optional<Margins> margins;          ///< that the printer leaves white on a sheet in portrait
    std::optional<bool> both_sides;          ///< it is to be printed on both
    std::vector<std::string> cautions;       ///< that it has to give, if it is the list of materials; as far as they are known
    bool planned = false;                    ///< it is held against its plan as well (finished_rules.h), which tells more exactly

    /// Known for what it is in a release of ours: it then has to keep what this program promises.
    bool ours() const { return paper.has_value() || !role.empty(); }
};

/// A finished PDF by itself, without its plan: what is true of any file that home printers and phones must open and print
/// as it is.
void check_pdf(const Rules& rules, const SeenPdf& seen, Findings& findings);

/// The PDFs of one release together: what holds between papers, prints and sets.
void check_editions(const Rules& rules, const std::vector<SeenPdf>& all, Findings& findings);

}  // namespace qw::checks
