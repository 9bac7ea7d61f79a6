// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/flat_cover.h"

#include "base/fault.h"
#include "compose/named_figure.h"

#include <algorithm>
#include <cmath>

namespace qw::compose {

namespace {

using journal::Measures;

[[noreturn]] void refuse(const Measures& m, const std::string& what, const std::string& expected) {
    throw Fault(FaultKind::not_understood, {"picture-cannot-be-drawn", {m.journal->file, 0, 0}, what, expected, "change 'picture' or the pieces"});
}

Size needed(const Measures& m, const std::string& name) {
    const journal::Piece* piece = m.piece(name);
    if (!piece) refuse(m, "the picture '" + m.journal->picture + "' needs a piece '" + name + "'", "a piece '" + name + "'");
    return {piece->width.rounded, piece->height.rounded};
}

/// What is drawn is as long as its figure says, or the parts would not add up to the whole.
Length as_shown(const Measures& m, const std::string& name) { return named_length_as_shown(m, name, m.ruler); }

std::optional<Size> if_there(const Measures& m, const std::string& name) {
    return m.piece(name) ? std::optional(needed(m, name)) : std::nullopt;
}

FlatCover opened(const Measures& m) {
    FlatCover flat;
    const Size board = needed(m, "board");
    const Size strip = if_there(m, "spine").value_or(Size{{}, board.height});
    flat.gap = as_shown(m, "hinge-gap");
    flat.size = {board.width * 2 + flat.gap * 2 + strip.width, max(board.height, strip.height)};
    const Length right = flat.size.width - board.width;
    flat.boards = {Rect::at({{}, {}}, board), Rect::at({right, {}}, board)};
    const Rect spine = Rect::centred(strip, Rect::of(flat.size));
    if (strip.width > Length()) flat.spine = spine;
    else flat.fold = flat.size.width / 2;
    if (const auto tape = if_there(m, "hinge-tape"))
        flat.tape = Rect::centred({tape->width, min(tape->height, flat.size.height)}, Rect::of(flat.size));
    return flat;
}

FlatCover folded_round(const Measures& m) {
    FlatCover flat;
    flat.size = needed(m, "cover-paper");
    const Size board = needed(m, "board");
    flat.paper = Rect::of(flat.size);
    flat.fold = flat.size.width / 2;
    const Length inset = as_shown(m, "board-inset"), low = (flat.size.height - board.height) / 2;
    flat.boards = {Rect::at({inset, low}, board), Rect::at({flat.size.width - inset - board.width, low}, board)};
    flat.gap = max({}, *flat.fold - flat.boards.front().right);  // what is left: boards and insets are measured from the edges
    return flat;
}

FlatCover cased(const Measures& m) {
    FlatCover flat;
    const Size board = needed(m, "board"), spine = needed(m, "spine"), cloth = needed(m, "spine-cloth");
    const auto paper = if_there(m, "cover-paper");
    flat.turn_in = as_shown(m, "turn-in");
    flat.gap = as_shown(m, m.named.count("joint") ? "joint" : "hinge-gap");
    const Length beside = paper ? flat.turn_in : Length(), boards = board.width * 2 + flat.gap * 2 + spine.width;
    flat.size = {boards + beside * 2, max(max(board.height, spine.height), max(cloth.height, paper.value_or(Size{}).height))};
    const Rect whole = Rect::of(flat.size);
    const Length low = (flat.size.height - board.height) / 2;
    flat.boards = {Rect::at({beside, low}, board), Rect::at({flat.size.width - beside - board.width, low}, board)};
    flat.spine = Rect::centred(spine, whole);
    flat.cloth = Rect::centred(cloth, whole);
    if (paper) {
        const Length paper_low = (flat.size.height - paper->height) / 2;
        flat.turned_in = {Rect::at({{}, paper_low}, *paper), Rect::at({flat.size.width - paper->width, paper_low}, *paper)};
    }
    return flat;
}

FlatCover soft(const Measures& m) {
    FlatCover flat;
    flat.size = needed(m, "soft-cover");
    flat.paper = Rect::of(flat.size);
    const Length spine = as_shown(m, "spine-width");
    if (spine > Length()) flat.panel = Rect::centred({spine, flat.size.height}, *flat.paper);
    else flat.fold = flat.size.width / 2;
    return flat;
}

/// The leaves stand between the boards at a slant that shows each of them; guards join them at the boards' height.
FlatCover pleated(const Measures& m) {
    FlatCover flat;
    const Size board = needed(m, "board");
    const Length page = m.conditions.page.width, square = max({}, (board.width - page) / 2);
    constexpr double run = 0.25, rise = 0.968245836551854;  // of a leaf: along the boards and away from them; run² + rise² = 1
    Zigzag z;
    z.sheets = std::max(m.conditions.sheets, 1);
    z.drawn = std::min(z.sheets, 2);
    const Length begin = board.width - square, step = page * run;
    for (int i = 0; i <= z.drawn * 2; ++i) z.leaves.push_back({begin + step * i, i % 2 == 1 ? page * rise : Length()});
    const Length end = z.leaves.back().x;
    flat.size = {end - square + board.width, board.height};
    flat.boards = {Rect::of(board), Rect::at({end - square, {}}, board)};
    z.guard = if_there(m, "guard").value_or(Size{}).width;
    z.low = max({}, (board.height - m.conditions.page.height) / 2);
    z.high = board.height - z.low;
    flat.zigzag = z;
    return flat;
}

/// One row in the middle, or several about it.
std::vector<Length> rows_of_holes(const Measures& m, Length middle) {
    const int rows = m.sewing ? std::max(m.sewing->rows, 1) : 1;
    const Length gap = rows > 1 ? m.sewing->row_gap.rounded : Length();
    std::vector<Length> all;
    for (int i = 0; i < rows; ++i) all.push_back(middle + gap * (i - (rows - 1) / 2.0));
    return all;
}

}  // namespace

FlatCover flat_cover(const Measures& m) {
    FlatCover flat;
    const std::string& picture = m.journal->picture;
    if (picture == "opened-cover") flat = opened(m);
    else if (picture == "wrapped-cover") flat = folded_round(m);
    else if (picture == "case-cover") flat = cased(m);
    else if (picture == "soft-cover") flat = soft(m);
    else if (picture == "concertina") flat = pleated(m);
    else refuse(m, "'" + picture + "' is no picture that can be drawn", "opened-cover, wrapped-cover, case-cover, soft-cover or concertina");
    for (const journal::Shown& station : m.spine_stations) flat.stations.push_back(station.rounded);
    flat.rows = rows_of_holes(m, flat.size.width / 2);
    return flat;
}

}  // namespace qw::compose
