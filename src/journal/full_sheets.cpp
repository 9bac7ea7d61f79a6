// SPDX-License-Identifier: GPL-3.0-or-later
#include "journal/full_sheets.h"

#include "journal/cutting_plan.h"

#include <algorithm>

namespace qw::journal {

namespace {

std::vector<CutPiece> cover_pieces(const Measures& measures) {
    std::vector<CutPiece> pieces;
    for (const Piece& piece : measures.pieces)
        if (piece.of->stock == "cover" && piece.count > 0)
            pieces.push_back({piece.of->name, piece.of->title, {piece.width.rounded, piece.height.rounded}, piece.count, piece.of->grain});
    return pieces;
}

bool may_be_cut(const CutPiece& piece) { return piece.size.width > Length() && piece.size.height > Length(); }

std::string count_of(int sheets) { return std::to_string(sheets) + (sheets == 1 ? " full sheet" : " full sheets"); }

}  // namespace

std::optional<FullSheets> full_sheets(const Measures& measures) {
    const Conditions& c = measures.conditions;
    const auto pieces = cover_pieces(measures);
    const Size sheet = c.cover_sheet.as_portrait();
    if (c.full_sheets <= 0 || pieces.empty() || sheet.width <= Length() || !std::all_of(pieces.begin(), pieces.end(), may_be_cut)) return std::nullopt;
    kit::Board printed;
    printed.name = printed.title = "full sheet";
    printed.size = sheet;
    printed.grain = "height";
    const CuttingPlan plan = cutting_plan(pieces, {{printed, std::nullopt}});
    if (!plan.not_cut.empty()) return std::nullopt;
    return FullSheets{static_cast<int>(plan.boards.size()), c.full_sheets, plan.exact};
}

std::string print_again(const FullSheets& sheets) {
    const int more = sheets.needed - sheets.in_kit;
    if (more <= 0) return {};
    if (sheets.in_kit == 1) return "print it " + (more == 1 ? std::string("twice") : std::to_string(sheets.needed) + " times");
    if (more == 1) return "print one of them twice";
    if (more < sheets.in_kit) return "print " + std::to_string(more) + " of them twice";
    return more == sheets.in_kit ? "print each of them twice" : "print them more than once, " + std::to_string(sheets.needed) + " in all";
}

std::optional<Finding> too_few_full_sheets(const Measures& measures) {
    const auto sheets = full_sheets(measures);
    if (!sheets || sheets->needed <= sheets->in_kit) return std::nullopt;
    std::string mend = print_again(*sheets) + ".";
    mend[0] = static_cast<char>(mend[0] - 'a' + 'A');
    return Finding{"full-sheets-enough", Level::note, {}, 0, 0, count_of(sheets->needed), count_of(sheets->in_kit),
                   "The journal is cut from " + count_of(sheets->needed) + ", and the kit has " +
                       (sheets->in_kit == 1 ? "one." : std::to_string(sheets->in_kit) + " different ones."),
                   mend};
}

}  // namespace qw::journal
