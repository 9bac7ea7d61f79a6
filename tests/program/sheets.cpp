// SPDX-License-Identifier: GPL-3.0-or-later
// What a buyer reads on the finished measurements sheet, taken out of the PDF by pdftotext, is what `measure --json` says,
// in every column of every size.
#include "program/program.h"

#include "base/unit_system.h"
#include "compose/fractions.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <regex>

using namespace qw;
using namespace qw::test;

namespace {

using Cells = std::vector<std::string>;

/// Cells of one row of the size tables, own ruler ("own") and the other, in the order of the tables.
struct SizeRow {
    Cells own, other;
};
/// By print and percentage.
using SizeRows = std::map<std::pair<std::string, int>, SizeRow>;

Cells cells_of(const std::string& line) {
    static const std::regex gap(" {2,}");
    Cells cells(std::sregex_token_iterator(line.begin(), line.end(), gap, -1), {});
    cells.erase(cells.begin());  // "95 %" or "scale 0.950"
    return cells;
}

void append(Cells& to, const Cells& more) { to.insert(to.end(), more.begin(), more.end()); }

SizeRows rows_of(const std::string& text) {
    static const std::regex percent_line(R"(^\s*(\d+) %  .*)"), scale_line(R"(^\s*scale \d.*)"), title(R"(^(Borderless|Bordered), \d+ (to \d+ )?%  .*)");
    SizeRows rows;
    std::string print;
    SizeRow* row = nullptr;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        if (line.starts_with('\f')) print.clear();  // a new page, which says of which print its sizes are
        line.erase(0, line.find_first_not_of(" \f"));
        std::smatch m;
        if (print.empty() && std::regex_match(line, m, title)) print = m[1] == "Borderless" ? "borderless" : "bordered";
        if (print.empty()) row = nullptr;
        else if (std::regex_match(line, m, percent_line)) {
            row = &rows[{print, std::stoi(m[1])}];
            append(row->own, cells_of(line));
        } else if (row && std::regex_match(line, scale_line)) {
            append(row->other, cells_of(line));
        }
    }
    std::erase_if(rows, [](const auto& one) { return one.second.other.empty(); });  // explained, not shown
    return rows;
}

std::string without_unit(const std::string& text) { return text.substr(0, text.rfind(' ')); }

/// "1 3/8 · 4 1/4 · 7 1/8" in millimetres.
std::vector<double> stations_in(const std::string& cell, const std::string& unit) {
    static const std::regex dot(" · ");
    std::vector<double> mm;
    for (auto it = std::sregex_token_iterator(cell.begin(), cell.end(), dot, -1); it != std::sregex_token_iterator(); ++it) {
        const auto length = read_length(it->str() + " " + unit);
        INFO(cell);
        REQUIRE(length);
        mm.push_back(length->in_mm());
    }
    return mm;
}

void compare(const SizeRow& row, const nlohmann::json& measured, const std::string& own, const std::string& other, const std::string& unit) {
    Cells own_expected, other_expected;
    for (const auto& piece : measured["pieces"]) {
        own_expected.push_back(without_unit(piece["shown"][own]));
        other_expected.push_back(piece["shown"][other]);
    }
    const std::size_t pieces = own_expected.size(), lengths = measured["lengths"].size();
    const std::size_t always = 1 + pieces + 2 + lengths;  // figures that are not the same at every size come after these
    REQUIRE(row.own.size() >= always);
    REQUIRE(row.other.size() >= always);
    for (std::size_t i = always; i < row.own.size(); ++i)
        CHECK(std::any_of(measured["figures"].begin(), measured["figures"].end(),
                          [&](const auto& figure) { return row.own[i] == without_unit(figure["shown"][own]); }));
    for (std::size_t i = 0; i < pieces; ++i) {
        CHECK(row.own[1 + i] == own_expected[i]);
        CHECK(row.other[1 + i] == other_expected[i]);
    }
    const char* lines[] = {"page", "spine"};
    for (std::size_t i = 0; i < 2; ++i) {
        const auto stations = stations_in(row.own[1 + pieces + i], unit);
        const auto& expected = measured["stations_mm"][lines[i]];
        REQUIRE(stations.size() == expected.size());
        for (std::size_t k = 0; k < stations.size(); ++k) CHECK(stations[k] == Approx(expected[k].get<double>()).margin(1e-4));
    }
    for (std::size_t i = 0; i < lengths; ++i) {
        CHECK(row.own[3 + pieces + i] == without_unit(measured["lengths"][i]["shown"][own]));
        CHECK(row.other[3 + pieces + i] == measured["lengths"][i]["shown"][other].get<std::string>());
    }
}

}  // namespace

TEST_CASE("the measurements sheet says in every column what measure says", "[sheets]") {
    for (const std::string& kit : demo_kits) {
        for (const std::string paper : {"letter", "a4"}) {
            const Said said = run("pdftotext -layout " + quoted((release_of(kit) / paper / "measurements.pdf").string()) + " -", "/");
            REQUIRE(said.status == 0);
            const std::string text = compose::plain_fractions(said.text);
            CHECK(text.find("…") == std::string::npos);  // nothing on a sheet that is cut from is shortened
            const SizeRows rows = rows_of(text);
            const std::string own = paper == "a4" ? "metric" : "us", other = paper == "a4" ? "us" : "metric", unit = paper == "a4" ? "mm" : "in";
            const std::string first_page = text.substr(0, text.find("Measure your print"));
            int compared = 0;
            for (const std::string print : {"borderless", "bordered"}) {
                for (int percent = 103; percent >= 30; percent -= percent > 90 ? 1 : 5) {
                    INFO(kit << " " << paper << " " << print << " " << percent);
                    const nlohmann::json measured = quirewright_json("measure " + quoted((source_folder / "kits" / kit).string()) + " --paper " +
                                                                     paper + " --print " + print + " --scale " + std::to_string(percent) + " --json");
                    bool fails = false;
                    for (const auto& finding : measured["findings"]) fails = fails || finding["level"] == "error";
                    const auto row = rows.find({print, percent});
                    if (fails) {
                        CHECK(row == rows.end());
                        continue;
                    }
                    REQUIRE(row != rows.end());
                    compare(row->second, measured, own, other, unit);
                    ++compared;
                    if (percent != 100) continue;
                    for (const auto& piece : measured["pieces"]) {
                        CHECK(first_page.find("  " + piece["shown"][own].get<std::string>()) != std::string::npos);
                        CHECK(first_page.find("  " + piece["shown"][other].get<std::string>()) != std::string::npos);
                    }
                    for (const auto& length : measured["lengths"]) CHECK(first_page.find("  " + length["shown"][own].get<std::string>()) != std::string::npos);
                }
            }
            CHECK(compared >= 26);
            CHECK(rows.size() == static_cast<std::size_t>(compared));
        }
    }
}
