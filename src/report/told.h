// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "report/audit_report.h"

#include <string>
#include <vector>

namespace qw::report {

/// One place where a fault was found.
struct ToldPlace {
    std::string shown;                ///< "art/pages/05.png"; empty: the subject as a whole
    std::string measured;             ///< there
    std::vector<std::size_t> sheets;  ///< indices of the sheets that show it, in their order
    bool whole_file = false;          ///< the finding is about a PDF and no page of it
};

/// Findings that differ in place and measure only: told once, with all their places.
struct Told {
    Finding finding;                  ///< the first of them
    std::vector<ToldPlace> places;
    bool one_measure = true;          ///< `measured` is the same at all places
};

/// What is told under one heading: a set of sheets, or what concerns no sheet.
struct ToldSection {
    std::string title;
    std::vector<Told> told;           ///< worst first
};

/// Every finding once; the section with the worst finding first, sets in the order of their sheets.
std::vector<ToldSection> told_by_sheet(const AuditReport& report);

/// For each sheet the numbers of what is told about it or its artwork, counted from 1 through all sections in order.
/// Findings about a PDF as a whole are not repeated for each page.
std::vector<std::vector<std::size_t>> told_of_sheets(const AuditReport& report, const std::vector<ToldSection>& sections);

/// "Journal pages" for the set "journal-pages"; the file where the set is not known.
std::string set_title(const SheetRow& row);
/// "Letter, borderless"; "A4" for a sheet that serves every print; empty where nothing is known.
std::string edition_title(const SheetRow& row);
/// "Journal pages, page 5, Letter, borderless".
std::string sheet_title(const SheetRow& row);

}  // namespace qw::report
