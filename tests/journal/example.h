// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/fault.h"
#include "journal/measures.h"

#include <catch2/catch.hpp>

#include <string>
#include <utility>
#include <vector>

namespace qw::example {

/// Small templates written in the tests, one formula a line, so that a fault's line tells which one it was.
class Template {
public:
    Template() {
        made.name = made.title = "example";
        made.file = "pipeline/journals/example.yaml";
    }
    Template& length(const std::string& name, Length metric, Length us, bool printed = false) {
        made.lengths.push_back({name, {metric, us}, printed, "example", "", mark()});
        return *this;
    }
    Template& number(const std::string& name, double value) {
        made.numbers.push_back({name, value, "example", "", mark()});
        return *this;
    }
    Template& value(const std::string& name, const std::string& text) {
        made.values.push_back(formula(text, name));
        return *this;
    }
    Template& piece(const std::string& name, const std::string& count, const std::string& width, const std::string& height,
                    Rounding way = Rounding::up) {
        kit::PieceTemplate piece;
        piece.name = piece.title = name;
        piece.count = formula(count);
        piece.width = formula(width);
        piece.height = formula(height);
        piece.rounding.way = way;
        piece.stock = "board";
        made.pieces.push_back(piece);
        return *this;
    }
    Template& check(const std::string& name, const std::string& holds, const std::string& measured = "", const std::string& limit = "",
                    const std::string& level = "error") {
        kit::CheckTemplate check;
        check.name = name;
        check.holds = formula(holds);
        check.measured = formula(measured);
        check.limit = formula(limit);
        check.level = level;
        check.message = "It has {measured} of {limit}, {difference} apart.";
        check.mend = "Do otherwise.";
        check.mark = mark();
        made.checks.push_back(check);
        return *this;
    }
    /// Stations on the page and the needle's way through them, one signature.
    Template& sewn(const std::vector<std::string>& stations, const std::vector<int>& path) {
        for (const std::string& station : stations) made.stations.page.push_back(formula(station));
        kit::SewingTemplate sewing;
        sewing.path = path;
        sewing.signatures = formula("1");
        sewing.rows = formula("1");
        sewing.mark = mark();
        made.sewing = sewing;
        return *this;
    }
    Template& figure(const std::string& name, const std::string& text, Rounding way = Rounding::down, bool number = true) {
        kit::FigureTemplate figure;
        figure.name = figure.title = name;
        figure.value = formula(text);
        figure.number = number;
        figure.rounding.way = way;
        made.figures.push_back(figure);
        return *this;
    }
    kit::Formula formula(const std::string& text, const std::string& name = "") { return {name, text, mark()}; }
    int line() const { return line_; }

    kit::JournalTemplate made;

private:
    SourceMark mark() { return {made.file, ++line_, 5}; }
    int line_ = 0;
};

inline Paper a4() { return {"iso_a4_210x297mm", "a4", "A4", {Length::mm(210), Length::mm(297)}, UnitSystem::metric}; }
inline Paper letter() { return {"na_letter_8.5x11in", "letter", "US letter", {Length::inches(8.5), Length::inches(11)}, UnitSystem::us}; }

/// Pages and full sheets of one paper, borderless, both at the same scale, with stocks that are invented.
inline journal::Conditions conditions(const Paper& paper, double scale = 1) {
    journal::Conditions c;
    c.paper = paper;
    c.scale = scale;
    c.page = {paper.size.height / 2 * scale, paper.size.width * scale};
    c.cover_sheet = paper.size * scale;
    c.sheets = 12;
    c.full_sheets = 5;
    c.page_stock = {"copy-100", "Paper", kit::Stock::Kind::paper, 100, Length::mm(0.12), "bond", false};
    c.cover_stock = {"copy-80", "Paper", kit::Stock::Kind::paper, 80, Length::mm(0.10), "bond", false};
    c.board_stock = {"greyboard-1mm", "Greyboard, 1 mm", kit::Stock::Kind::board, 615, Length::mm(1), "", false};
    c.spine_stock = c.board_stock;
    return c;
}

/// What `work` is refused with; fails the test when it is not refused.
template <typename Work>
std::vector<FaultNote> refused(Work&& work) {
    try {
        std::forward<Work>(work)();
    } catch (const Fault& fault) {
        CHECK(fault.kind() == FaultKind::not_understood);
        return fault.notes();
    }
    FAIL("was not refused");
    return {};
}

inline std::vector<FaultNote> refused(const Template& t, const journal::Conditions& c) {
    return refused([&] { journal::compute(t.made, c); });
}

}  // namespace qw::example
