// SPDX-License-Identifier: GPL-3.0-or-later
#include "journal/cutting_layout.h"

#include <algorithm>

namespace qw::journal::cutting {

namespace {

/// Walks a layout from the board down and writes what it finds.
class LayoutWriter {
public:
    LayoutWriter(const Layout& layout, const std::vector<CutPiece>& pieces, PieceNumbers& numbers)
        : layout_(layout), pieces_(pieces), numbers_(numbers) {}

    CutBoard write() {
        made_.board = layout_.board.board;
        made_.grain = "any";
        part(0);
        std::stable_sort(made_.left_over.begin(), made_.left_over.end(), [](const Rect& a, const Rect& b) { return area_of(a.size()) > area_of(b.size()); });
        made_.used = covered_ / layout_.board.area();
        return std::move(made_);
    }

private:
    /// The held board's lower left corner is the board's own; a held board that is turned is mirrored at the diagonal.
    Rect seen(const Rect& r) const { return layout_.board.turned ? Rect{r.bottom, r.left, r.top, r.right} : r; }

    void part(std::size_t index) {
        const Layout::Part& p = layout_.parts[index];
        if (p.sort) return piece(p);
        if (p.first == 0) {
            if (!p.rect.empty()) made_.left_over.push_back(seen(p.rect));
            return;
        }
        made_.cuts.push_back({seen(p.rect), p.across != layout_.board.turned, p.at});
        part(p.first);
        part(p.second);
    }

    void piece(const Layout::Part& p) {
        const std::size_t number = numbers_.next(*p.sort);
        const CutPiece& piece = pieces_[number];
        const bool has_grain = piece.grain == "height" || piece.grain == "width";
        const Rect at = seen(p.rect);
        const bool turned = has_grain ? (piece.grain == "width") != layout_.board.turned : at.size() != piece.size;
        if (has_grain) made_.grain = layout_.board.turned ? "width" : "height";
        made_.pieces.push_back({number, at, turned});
        covered_ += area_of(p.rect.size());
    }

    const Layout& layout_;
    const std::vector<CutPiece>& pieces_;
    PieceNumbers& numbers_;
    CutBoard made_;
    double covered_ = 0;
};

}  // namespace

std::size_t Layout::cut(std::size_t part, bool across, Length at) {
    const Rect whole = parts[part].rect;
    if (at == (across ? whole.top : whole.right)) return part;
    Rect first = whole, second = whole;
    (across ? first.top : first.right) = at;
    (across ? second.bottom : second.left) = at;
    parts[part].across = across;
    parts[part].at = at;
    parts[part].first = parts.size();
    parts[part].second = parts.size() + 1;
    parts.push_back({first, {}, false, {}, 0, 0});
    parts.push_back({second, {}, false, {}, 0, 0});
    return parts.size() - 2;
}

CutBoard cut_board_of(const Layout& layout, const std::vector<CutPiece>& pieces, PieceNumbers& numbers) {
    return LayoutWriter(layout, pieces, numbers).write();
}

}  // namespace qw::journal::cutting
