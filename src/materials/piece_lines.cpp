// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "materials/heap.h"
#include "materials/lines.h"

namespace qw::materials {

namespace {

/// How long and how wide a piece is off the roll: along its grain, or along its longer side where that is not told.
struct OffTheRoll {
    Length length, width;
    OffTheRoll(const journal::Piece& piece, UnitSystem system) {
        const bool metric = system == UnitSystem::metric;
        const Length across = metric ? piece.width.metric : piece.width.us, along = metric ? piece.height.metric : piece.height.us;
        const bool upright = piece.of->grain == "height" || (piece.of->grain != "width" && along >= across);
        length = upright ? along : across;
        width = upright ? across : along;
    }
};

/// At least three times as long as wide: nobody minds that it is pasted up from shorter ones.
bool is_strip(const OffTheRoll& piece) { return max(piece.length, piece.width) >= min(piece.length, piece.width) * 3; }

/// "1 of 38 x 452 mm, in 2 strips that overlap 20 mm", from a sheet that is so long.
BothTexts from_sheets(const journal::Piece& piece, const journal::Measures& measures, Length sheet) {
    BothTexts texts;
    for (const UnitSystem system : both_systems) {
        const OffTheRoll sides(piece, system);
        texts.in(system) = joined(pieces_text(piece, system), ", ",
                                  strips_text(max(sides.length, sides.width), sheet, strip_overlap(measures, system), system, is_strip(sides)));
    }
    return texts;
}

BothTexts as_pieces(const journal::Piece& piece) { return {pieces_text(piece, UnitSystem::metric), pieces_text(piece, UnitSystem::us)}; }

/// "1 of 38 x 452 mm; buy 0.5 m, 38 mm wide (10 % more)"
BothTexts from_material(const journal::Piece& piece, const journal::Measures& measures, const kit::Material& material) {
    const bool by_length = material.group != Line::Group::paper && material.group != Line::Group::board;
    // Broad pieces of bought paper are cut from larger sheets than the kit is printed on.
    const bool from_strips = material.group == Line::Group::paper && is_strip(OffTheRoll(piece, UnitSystem::metric));
    BothTexts texts = from_strips ? from_sheets(piece, measures, strip_sheet(measures.conditions)) : as_pieces(piece);
    if (material.allowance <= 0) return texts;
    for (const UnitSystem system : both_systems) {
        const OffTheRoll roll(piece, system);
        texts.in(system) += "; " + (by_length ? to_buy(roll.length * piece.count, material.allowance, system, roll.width) : to_buy(piece.count, material.allowance));
    }
    return texts;
}

class PieceLines {
public:
    PieceLines(const kit::Pipeline& pipeline, const journal::Measures& measures) : pipeline_(pipeline), measures_(measures) {}

    std::vector<Line> all() {
        const journal::Conditions& c = measures_.conditions;
        const Length paper = max(c.paper.size.width, c.paper.size.height);
        for (const journal::Piece& piece : measures_.pieces) {
            const std::string& stock = piece.of->stock;
            if (stock == "bought") bought(piece);
            else if (stock == "page") paper_piece(piece, c.page_stock, paper);
            else if (stock == "cover" && c.full_sheets == 0) paper_piece(piece, c.cover_stock, paper);
            else if (stock == "cover") printed_piece(piece);
            else if (stock != "board" && stock != "spine") unknown_stock(piece);
        }
        return std::move(lines_);
    }

private:
    void add(Line::Group group, const std::string& name, const std::string& title, const journal::Piece& piece, const BothTexts& amount, const std::string& use) {
        Heap heap(group, name, title);
        heap.add({piece.of->title, piece.of, amount, use, piece.of->grain,
                  other_ways(pipeline_, measures_, piece.of->name, *piece.of, piece.of->mark,
                             [&](const kit::Material& material, const journal::Measures& otherwise) {
                                 const journal::Piece* other = otherwise.piece(piece.of->name);
                                 return from_material(other ? *other : piece, otherwise, material);
                             })});
        lines_.push_back(heap.line());
    }

    void bought(const journal::Piece& piece) {
        const kit::Material& material = needed_material(pipeline_, piece.of->material, measures_, piece.of->mark);
        add(material.group, material.name, material.title, piece, from_material(piece, measures_, material), piece.of->use);
    }

    void paper_piece(const journal::Piece& piece, const kit::Stock& stock, Length sheet) {
        BothTexts amount = from_sheets(piece, measures_, sheet);
        for (const UnitSystem system : both_systems) amount.in(system) += ", " + weight_text(stock, pipeline_);
        add(Line::Group::paper, piece.of->name, piece.of->title, piece, amount, piece.of->use);
    }

    /// The printed sheets are on the list; a piece of them is told when it may be left out or replaced, or is too long.
    void printed_piece(const journal::Piece& piece) {
        const Size sheet = measures_.conditions.cover_sheet;
        BothTexts amount = from_sheets(piece, measures_, max(sheet.width, sheet.height));
        const BothTexts pieces = as_pieces(piece);
        const bool whole = amount.metric == pieces.metric && amount.us == pieces.us;
        if (whole && !piece.of->optional && piece.of->instead.empty()) return;
        for (const UnitSystem system : both_systems) amount.in(system) += ", from the full sheets";
        add(Line::Group::paper, piece.of->name, piece.of->title, piece, amount, piece.of->use);
    }

    [[noreturn]] void unknown_stock(const journal::Piece& piece) const {
        throw Fault(FaultKind::not_understood, FaultNote{"unknown-stock", piece.of->mark, "no piece is cut from '" + piece.of->stock + "'",
                                                         "board, spine, page, cover or bought", ""});
    }

    const kit::Pipeline& pipeline_;
    const journal::Measures& measures_;
    std::vector<Line> lines_;
};

}  // namespace

std::vector<Line> piece_lines(const kit::Pipeline& pipeline, const journal::Measures& measures) { return PieceLines(pipeline, measures).all(); }

}  // namespace qw::materials
