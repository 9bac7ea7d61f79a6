// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/drawn_samples.h"

#include "compose/sample_kit.h"

#include <deque>

namespace qw::test {

namespace {

using namespace qw::literals;

kit::Formula formula(const std::string& text) { return {"", text, {"a journal of the tests", 1, 1}}; }

struct Maker {
    kit::JournalTemplate made;

    Maker(const std::string& picture) {
        made.name = made.title = made.picture = picture;
        made.file = "a journal of the tests";
        made.bulk = made.creep_least = made.creep_most = formula("sheets * page_caliper");
        number("signatures", 1);
    }
    Maker& length(const std::string& name, Length metric, Length us, bool printed = false) {
        made.lengths.push_back({name, {metric, us}, printed, "for the tests", "", {}});
        return *this;
    }
    Maker& number(const std::string& name, double value) {
        made.numbers.push_back({name, value, "for the tests", "", {}});
        return *this;
    }
    Maker& value(const std::string& name, const std::string& text) {
        made.values.push_back({name, text, {"a journal of the tests", 1, 1}});
        return *this;
    }
    Maker& piece(const std::string& name, const std::string& title, int count, const std::string& width, const std::string& height) {
        kit::PieceTemplate piece;
        piece.name = name;
        piece.title = title;
        piece.count = formula(std::to_string(count));
        piece.width = formula(width);
        piece.height = formula(height);
        piece.stock = "board";
        made.pieces.push_back(piece);
        return *this;
    }
    Maker& boards() {
        length("head-square", 3_mm, 0.125_in).length("fore-edge-square", 4.5_mm, 0.125_in);
        value("board-width", "page_width + fore_edge_square").value("board-height", "page_height + 2 * head_square");
        return piece("board", "Board", 2, "board_width", "board_height");
    }
    Maker& corner() {
        length("turn-in", 15_mm, 0.625_in).length("corner-edge", 0.5_mm, Length::inches(1.0 / 32));
        return value("corner-cut", "1.5 * board_caliper + corner_edge");
    }
    Maker& holes(bool on_spine) {
        length("station-inset", 37_mm, 1.375_in, true);
        for (const std::string at : {"station_inset", "page_height / 2", "page_height - station_inset"}) {
            made.stations.page.push_back(formula(at));
            if (on_spine) made.stations.spine.push_back(formula("head_square + " + at));
        }
        return *this;
    }
    Maker& sewn(std::vector<int> path, const std::string& signatures, const std::string& rows, bool goes_on) {
        kit::SewingTemplate sewing;
        sewing.path = std::move(path);
        sewing.begins_inside = !goes_on;
        sewing.goes_on = goes_on;
        sewing.signatures = formula(signatures);
        sewing.rows = formula(rows);
        sewing.row_gap = formula("row_gap");
        made.sewing = sewing;
        return length("row-gap", 4_mm, Length::inches(3.0 / 16));
    }
};

kit::JournalTemplate opened() {
    return Maker("opened-cover").boards().corner().holes(true).sewn({2, 1, 3, 2}, "2", "1", false).length("spine-width", 15_mm, 0.625_in)
        .length("hinge-gap", 1_mm, Length::inches(1.0 / 16)).length("liner-inset", 3_mm, 0.125_in).piece("spine", "Spine strip", 1, "spine_width", "board_height")
        .piece("hinge-tape", "Hinge tape", 1, "spine_width + 2 * hinge_gap + 0.14 * page_width", "2 * board_height").made;
}

kit::JournalTemplate wrapped() {
    return Maker("wrapped-cover").length("board-inset", 3_mm, 0.125_in).length("hinge-gap", 5_mm, 0.1875_in).length("head-square", {}, {}).holes(true)
        .sewn({2, 1, 3, 2}, "1", "1", false).piece("cover-paper", "Cover paper", 1, "2 * page_width", "page_height")
        .piece("board", "Board", 2, "page_width - hinge_gap - board_inset", "page_height - 2 * board_inset").made;
}

kit::JournalTemplate cased() {
    return Maker("case-cover")
        .boards()
        .corner()
        .length("joint", 7_mm, 0.25_in)
        .length("cloth-grip", 12_mm, 0.5_in)
        .value("spine-width", "sheets * page_caliper * 2 + 2 * board_caliper")
        .holes(false)
        .sewn({1, 2, 3, 1}, "4", "1", false)
        .piece("spine", "Spine piece", 1, "spine_width", "board_height")
        .piece("spine-cloth", "Spine cloth", 1, "spine_width + 2 * joint + 2 * cloth_grip", "board_height + 2 * turn_in")
        .piece("cover-paper", "Cover paper", 2, "board_width - cloth_grip + turn_in + 0.02 * page_width", "board_height + 2 * turn_in")
        .made;
}

kit::JournalTemplate soft() {
    return Maker("soft-cover").length("head-square", 2_mm, Length::inches(1.0 / 16)).holes(true).value("spine-width", "5 * row_gap + 0.05 * page_width")
        .sewn({1, 2, 3, 1}, "6", "6", false).piece("soft-cover", "Soft cover", 1, "2 * page_width + spine_width", "page_height + 2 * head_square").made;
}

kit::JournalTemplate concertina() {
    return Maker("concertina").boards().corner().length("guard-width", 20_mm, 0.75_in)
        .piece("guard", "Guard", 5, "guard_width", "page_height - 2 * head_square").made;
}

}  // namespace

const std::vector<std::string> all_pictures{"opened-cover", "wrapped-cover", "case-cover", "soft-cover", "concertina"};

kit::JournalTemplate drawn_journal(const std::string& picture) {
    if (picture == "opened-cover") return opened();
    if (picture == "wrapped-cover") return wrapped();
    if (picture == "case-cover") return cased();
    if (picture == "soft-cover") return soft();
    return concertina();
}

kit::JournalTemplate sewn_journal(int stations, std::vector<int> path, int signatures, int rows, bool goes_on) {
    kit::JournalTemplate made = soft();
    made.stations.page.clear();
    made.stations.spine.clear();
    for (int i = 1; i <= stations; ++i) {
        const std::string at = "page_height * " + std::to_string(i) + " / " + std::to_string(stations + 1);
        made.stations.page.push_back(formula(at));
        made.stations.spine.push_back(formula("head_square + " + at));
    }
    made.sewing->path = std::move(path);
    made.sewing->begins_inside = !goes_on;
    made.sewing->goes_on = goes_on;
    made.sewing->signatures = formula(std::to_string(signatures));
    made.sewing->rows = formula(std::to_string(rows));
    made.values[0].text = std::to_string(rows + 1) + " * row_gap";
    return made;
}

journal::Measures drawn_measures(const kit::JournalTemplate& journal, const Paper& paper, double percent) {
    journal::Conditions c;
    c.paper = paper;
    c.scale = percent / 100;
    const Size sheet = paper.size.as_landscape() * c.scale;
    c.page = {sheet.width / 2, sheet.height};
    c.cover_sheet = paper.size;
    c.sheets = 12;
    c.full_sheets = 5;
    c.page_stock = {"copy-100", "Copy paper", kit::Stock::Kind::paper, 100, 0.12_mm, "bond", false};
    c.cover_stock = {"copy-80", "Copy paper", kit::Stock::Kind::paper, 80, 0.1_mm, "bond", false};
    c.board_stock = {"greyboard-1mm", "Greyboard", kit::Stock::Kind::board, 630, 1_mm, "", false};
    c.spine_stock = c.board_stock;
    static std::deque<kit::JournalTemplate> kept;  // measures point into their template
    kept.push_back(journal);
    return journal::compute(kept.back(), c);
}

const kit::Pipeline& words_only() {
    static const kit::Pipeline made = [] {
        kit::Pipeline p = words_alone();
        p.cautions = {{"blades", "Cut away from yourself.", false}, {"points", "Pierce onto a mat, never towards a hand.", false}};
        p.tools = {{"awl", "Awl", "to pierce", {"points"}}, {"craft-knife", "Craft knife", "to cut", {"blades"}}};
        return p;
    }();
    return made;
}

}  // namespace qw::test
