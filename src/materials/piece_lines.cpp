// SPDX-License-Identifier: GPL-3.0-or-later
#include "materials/lines.h"

#include <cmath>

namespace qw::materials {

namespace {

std::string counted(const journal::Piece& piece, UnitSystem system) { return std::to_string(piece.count) + " of " + piece.text(system); }

/// What the pieces cover, in the sizes that are cut; without waste. Rounded up, because it is what has to be there.
std::string area_text(double square_mm, UnitSystem system) {
    constexpr double square_cm = 100, square_inch = 25.4 * 25.4, nothing = 1e-6;
    const double area = square_mm / (system == UnitSystem::metric ? square_cm : square_inch);
    return std::to_string(std::lround(std::ceil(area - nothing))) + (system == UnitSystem::metric ? " cm²" : " sq in") + " together";
}

/// All board in one line, for it is bought as one thing.
struct Boards {
    std::string metric, us, use;
    double metric_area = 0, us_area = 0;

    void add(const journal::Piece& piece) {
        const std::string part = metric.empty() ? "" : ", ";
        metric += part + counted(piece, UnitSystem::metric);
        us += part + counted(piece, UnitSystem::us);
        use += (use.empty() ? "" : "; ") + piece.of->title + (piece.of->use.empty() ? "" : ": " + piece.of->use);
        metric_area += piece.count * piece.width.metric.in_mm() * piece.height.metric.in_mm();
        us_area += piece.count * piece.width.us.in_mm() * piece.height.us.in_mm();
    }
};

Line paper_line(const journal::Piece& piece, const kit::Stock& stock) {
    const std::string weight = ", " + weight_text(stock);
    return {Line::Group::paper, piece.of->name, piece.of->title, counted(piece, UnitSystem::metric) + weight,
            counted(piece, UnitSystem::us) + weight, piece.of->use};
}

Line tape_line(const journal::Piece& piece, const kit::Pipeline& pipeline) {
    const kit::Material* material = material_of(pipeline, piece.of->name);
    return {Line::Group::glueing, piece.of->name, material ? material->title : piece.of->title, counted(piece, UnitSystem::metric),
            counted(piece, UnitSystem::us), piece.of->use};
}

}  // namespace

std::vector<Line> piece_lines(const kit::Pipeline& pipeline, const journal::Measures& measures) {
    const journal::Conditions& c = measures.conditions;
    Boards boards;
    std::vector<Line> others;
    for (const journal::Piece& piece : measures.pieces) {
        const std::string& stock = piece.of->stock;
        if (stock == "board") boards.add(piece);
        else if (stock == "tape") others.push_back(tape_line(piece, pipeline));
        else if (stock == "page") others.push_back(paper_line(piece, c.page_stock));
        else if (c.full_sheets == 0) others.push_back(paper_line(piece, c.cover_stock));  // else cut from the printed full sheets
    }
    std::vector<Line> lines;
    if (!boards.metric.empty())
        lines.push_back({Line::Group::board, c.board_stock.name, c.board_stock.title,
                         boards.metric + ", " + area_text(boards.metric_area, UnitSystem::metric),
                         boards.us + ", " + area_text(boards.us_area, UnitSystem::us), boards.use});
    lines.insert(lines.end(), others.begin(), others.end());
    return lines;
}

}  // namespace qw::materials
