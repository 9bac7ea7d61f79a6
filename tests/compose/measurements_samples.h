// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/measurements_sheet.h"
#include "compose/sample_kit.h"

#include <functional>
#include <string>
#include <vector>

/// Measurements sheets for tests, and what is read on them. Its names are those of other tests, too.
namespace qw::measurements_test {

/// What the planner shows: every size from 103 to 90 %, then every fifth.
const std::vector<double>& planned();


struct Sheets {
    kit::Manifest manifest;
    Paper paper;
    std::vector<compose::SizeColumn> columns;
    compose::Document document;
};

Sheets made(const std::string& journal, const Paper& paper, const std::vector<double>& percents,
            const std::function<void(std::vector<compose::SizeColumn>&)>& change = {});
void for_every_journal(const std::function<void(const Sheets&)>& look);

bool contains(const std::vector<std::string>& texts, const std::string& wanted);
std::vector<std::string> texts_of(const compose::Page& page);
/// Lines joined by spaces, so that a wrapped sentence can be found.
std::string words_of(const std::vector<std::string>& texts);
std::string all_words(const compose::Document& document);
/// Texts of the pages whose title tells sizes of a print, "Borderless" or "Bordered".
std::vector<std::string> size_pages(const compose::Document& document, const std::string& print);

UnitSystem other_than(UnitSystem own);
std::string name_in_title(Print print);

}  // namespace qw::measurements_test
