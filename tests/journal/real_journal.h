// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "journal/example.h"

#include "base/disk.h"
#include "kit/read.h"

#include <functional>
#include <string>
#include <vector>

namespace qw::example {

/// A journal of pipeline/journals/ as it stands there.
inline const kit::JournalTemplate& real_journal(const std::string& name) {
    static const kit::Pipeline pipeline = kit::read_pipeline(*real_disk(), Path(QW_SOURCE_DIR) / "pipeline");
    return pipeline.journals.at(name);
}

/// "2 of 153 x 216 mm"
inline std::string cut_as(const journal::Measures& m, const std::string& piece, UnitSystem system) {
    REQUIRE(m.piece(piece));
    return std::to_string(m.piece(piece)->count) + " of " + m.piece(piece)->text(system);
}

/// Names of the checks that do not hold, "cover-paper-fits-sheet", in the template's order.
inline std::vector<std::string> failed(const journal::Measures& m) {
    std::vector<std::string> names;
    for (const Finding& f : m.findings) names.push_back(f.rule.substr(std::string("journal-").size()));
    return names;
}

inline std::string figure_text(const journal::Measures& m, const std::string& name, UnitSystem system) {
    REQUIRE(m.figure(name));
    return m.figure(name)->text(system);
}

/// The template with another value of one of its lengths, in both unit systems.
inline kit::JournalTemplate with_length(kit::JournalTemplate journal, const std::string& name, Length value) {
    for (kit::NamedLength& length : journal.lengths)
        if (length.name == name) {
            length.value = {value, value};
            return journal;
        }
    FAIL("no length " + name);
    return journal;
}

inline kit::JournalTemplate with_number(kit::JournalTemplate journal, const std::string& name, double value) {
    for (kit::NamedNumber& number : journal.numbers)
        if (number.name == name) {
            number.value = value;
            return journal;
        }
    FAIL("no number " + name);
    return journal;
}

/// The template as a kit gets it that chose `choice` for one thing: "none", or the name of an alternative.
inline kit::JournalTemplate with_choice(const kit::JournalTemplate& journal, const std::string& thing, const std::string& choice) {
    return kit::chosen(journal, {{thing, {choice, {}}}});
}

/// The conditions with another number of sheets, of another paper.
inline journal::Conditions with_pages(journal::Conditions c, int sheets, Length caliper) {
    c.sheets = sheets;
    c.page_stock.caliper = caliper;
    return c;
}

}  // namespace qw::example
