// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/flat_cover.h"

#include "base/fault.h"

#include <algorithm>

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

std::optional<Size> if_there(const Measures& m, const std::string& name) {
    return m.piece(name) ? std::optional(needed(m, name)) : std::nullopt;
}

/// A named length as it is on this print; nothing when the template has none of that name.
Length named(const Measures& m, const std::string& name) {
    const auto& all = m.journal->lengths;
    const auto found = std::find_if(all.begin(), all.end(), [&](const kit::NamedLength& l) { return l.name == name; });
    if (found == all.end()) return {};
    return found->value.in(m.ruler) * (found->printed ? m.conditions.scale : 1);
}

FlatCover opened(const Measures& m) {
    FlatCover flat;
    const Size board = needed(m, "board");
    const Size strip = if_there(m, "spine").value_or(Size{{}, board.height});
    flat.gap = named(m, "hinge-gap");
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
    flat.gap = named(m, "hinge-gap");
    const Length inset = named(m, "board-inset"), low = (flat.size.height - board.height) / 2;
    flat.boards = {Rect::at({inset, low}, board), Rect::at({flat.size.width - inset - board.width, low}, board)};
    return flat;
}

}  // namespace

FlatCover flat_cover(const Measures& m) {
    FlatCover flat;
    if (m.journal->picture == "opened-cover") flat = opened(m);
    else if (m.journal->picture == "wrapped-cover") flat = folded_round(m);
    else refuse(m, "'" + m.journal->picture + "' is no picture that can be drawn", "opened-cover or wrapped-cover");
    for (const journal::Shown& station : m.spine_stations) flat.stations.push_back(station.rounded);
    return flat;
}

}  // namespace qw::compose
