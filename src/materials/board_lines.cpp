// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "base/words.h"
#include "materials/heap.h"
#include "materials/lines.h"

#include <algorithm>

namespace qw::materials {

namespace {

/// Pieces of one board stock.
struct OfStock {
    const kit::Stock* stock = nullptr;
    std::vector<const journal::Piece*> pieces;
};

/// The spine's board is a line of its own only where it is another board.
std::vector<OfStock> board_pieces(const journal::Measures& measures) {
    const journal::Conditions& c = measures.conditions;
    std::vector<OfStock> all;
    for (const journal::Piece& piece : measures.pieces) {
        if (piece.of->stock != "board" && piece.of->stock != "spine") continue;
        const kit::Stock& stock = piece.of->stock == "board" ? c.board_stock : c.spine_stock;
        auto found = std::find_if(all.begin(), all.end(), [&](const OfStock& one) { return one.stock->name == stock.name; });
        if (found == all.end()) found = all.insert(all.end(), {&stock, {}});
        found->pieces.push_back(&piece);
    }
    return all;
}

const kit::Board& board_of(const kit::Pipeline& pipeline, const std::string& name) {
    std::vector<std::string> known;
    for (const kit::Board& board : pipeline.boards) {
        if (board.name == name) return board;
        known.push_back(board.name);
    }
    throw Fault(FaultKind::not_understood, FaultNote{"unknown-board", {"pipeline/boards.yaml", 0, 0}, "there is no board '" + name + "'", listed(known), ""});
}

/// "2 sheets"
std::string sheets_of_board(const BoardsNeeded& need) {
    return std::to_string(need.count) + (need.count == 1 ? " sheet" : " sheets") + (need.exact ? "" : " (fewer may do)");
}

BothTexts area_together(const std::vector<const journal::Piece*>& pieces) {
    BothTexts texts;
    for (const UnitSystem system : both_systems) {
        double area = 0;
        int count = 0;
        for (const journal::Piece* piece : pieces) area += area_of(*piece, system), count += piece->count;
        texts.in(system) = ", " + area_text(area, system) + (count > 1 ? " together" : "");
    }
    return texts;
}

/// The first way stands in the line, the others may be bought instead.
void tell_boards(Line& line, const std::vector<BoardsNeeded>& ways, const kit::Pipeline& pipeline) {
    for (const BoardsNeeded& way : ways) {
        const kit::Board& board = board_of(pipeline, way.board);
        const std::string sheets = sheets_of_board(way);
        if (&way == &ways.front()) {
            const std::string from = "; " + sheets + ": " + inside_sentence(board.title);
            line.metric += from;
            line.us += from;
            line.use = joined(line.use, "; ", way.note);
        } else {
            line.instead.push_back({way.board, board.title, "", sheets, sheets, way.note});
        }
    }
}

Heap heap_of(const OfStock& one, const kit::Pipeline& pipeline, const journal::Measures& measures) {
    Heap heap(Line::Group::board, one.stock->name, one.stock->title);
    for (const journal::Piece* piece : one.pieces) {
        const BothTexts amount{pieces_text(*piece, UnitSystem::metric), pieces_text(*piece, UnitSystem::us)};
        heap.add({piece->of->title, piece->of, amount, piece->of->use, piece->of->grain,
                  other_ways(pipeline, measures, piece->of->name, *piece->of, piece->of->mark,
                             [&](const kit::Material&, const journal::Measures&) { return amount; })});
    }
    return heap;
}

}  // namespace

std::vector<Line> board_lines(const kit::Pipeline& pipeline, const journal::Measures& measures, const std::vector<BoardsNeeded>& boards) {
    std::vector<Line> lines;
    for (const OfStock& one : board_pieces(measures)) {
        std::vector<BoardsNeeded> ways;
        std::copy_if(boards.begin(), boards.end(), std::back_inserter(ways), [&](const BoardsNeeded& way) { return way.stock == one.stock->name; });
        Line line = heap_of(one, pipeline, measures).line(ways.empty() ? area_together(one.pieces) : BothTexts());
        tell_boards(line, ways, pipeline);
        lines.push_back(std::move(line));
    }
    return lines;
}

}  // namespace qw::materials
