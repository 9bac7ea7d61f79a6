// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/cover_dimensions.h"

#include "compose/fractions.h"

namespace qw::compose {

namespace {

class Collected {
public:
    Collected(const FlatCover& flat, const journal::Measures& measures, const texts::Passages& words) : flat_(flat), measures_(measures), words_(words) {}

    CoverDimensions collect() {
        if (!flat_.boards.empty()) boards();
        if (flat_.panel) panel();
        if (!flat_.zigzag) whole();
        heights();
        gaps();
        if (flat_.spine) spine();
        if (flat_.tape) tape();
        cloth_and_papers();
        if (flat_.zigzag) guards();
        if (flat_.rows.size() > 1) rows();
        return std::move(all_);
    }

private:
    std::string shown(Length value) const { return real_fractions(show(value, measures_.ruler)); }
    std::string title(const std::string& piece) const { return measures_.piece(piece)->of->title; }
    std::string size_of(const std::string& piece) const { return real_fractions(measures_.piece(piece)->text(measures_.ruler)); }
    std::string width_of(const std::string& piece) const { return words_.line("width-of", texts::Model().text("piece", title(piece))); }
    Length above(double part) const { return flat_.size.height * part; }
    void remark(Point spot, const std::string& words, const std::string& figure) { all_.remarks.push_back({spot, words, figure}); }

    void boards() {
        for (const Rect& board : flat_.boards) {
            const bool first = &board == &flat_.boards.front();
            Remark instead;
            if (first) instead = {{board.left + board.width() * 0.3, above(0.2)}, width_of("board"), shown(board.width())};
            all_.across.push_back({board.left, board.right, board.top, shown(board.width()), instead});
        }
    }

    void panel() {
        const Rect& p = *flat_.panel;
        // What is left of the cover beside the spine, half a step more exact than the cover where that is needed.
        const std::string side = shown(p.left);
        all_.across.push_back({{}, p.left, flat_.size.height, side, {{p.left / 2, above(0.2)}, words_.line("panel"), side}});
        all_.across.push_back({p.right, flat_.size.width, flat_.size.height, side, {}});
        remark({p.left + p.width() * 0.2, above(0.06)}, words_.line("spine-panel"), shown(p.width()));
    }

    void whole() {
        const Length from = flat_.turned_in.empty() ? Length() : flat_.boards.front().left;
        const Length to = flat_.turned_in.empty() ? flat_.size.width : flat_.boards.back().right;
        const Length off = flat_.boards.empty() || flat_.paper ? flat_.size.height : flat_.boards.front().top;
        all_.whole.push_back({from, to, off, shown(to - from), {}});
    }

    void heights() {
        if (!flat_.boards.empty()) {
            const Rect& board = flat_.boards.front();
            all_.up.push_back({board.bottom, board.top, board.left, shown(board.height()), {}});
        }
        if (flat_.paper && (flat_.boards.empty() || flat_.boards.front().height() != flat_.size.height))
            all_.up.push_back({{}, flat_.size.height, {}, shown(flat_.size.height), {}});
    }

    void gaps() {
        if (flat_.boards.empty() || flat_.gap <= Length()) return;
        const Length x = flat_.boards.front().right + flat_.gap / 2;
        const std::string name = measures_.journal->picture == "case-cover" && measures_.named.count("joint") ? "joint" : "hinge-gap";
        // Beside a fold it is what is left, and nobody measures it.
        if (flat_.fold && flat_.paper) remark({x, above(0.06)}, words_.line("left-beside-fold"), "");
        else remark({x, above(0.06)}, words_.line(name), shown(flat_.gap));
        const Length inset = flat_.boards.front().left;
        if (flat_.paper && inset > Length())
            remark({inset / 2, above(0.06)}, words_.line("beyond-board", texts::Model().text("piece", title("cover-paper"))), shown(inset));
    }

    void spine() {
        const Rect& s = *flat_.spine;
        // Beside the middle, where the holes are.
        remark({s.left + s.width() * 0.25, s.bottom + above(0.06)}, width_of("spine"), shown(s.width()));
    }

    void tape() {
        const Rect& t = *flat_.tape;
        const Length grip = t.right - flat_.boards.back().left;
        remark({t.right - max(grip, {}) / 2, above(0.06)}, width_of("hinge-tape"), shown(t.width()));
    }

    void cloth_and_papers() {
        if (flat_.cloth) {
            const Length grip = flat_.cloth->right - flat_.boards.back().left;
            remark({flat_.cloth->right - max(grip, {}) * 0.6, above(0.2)}, title("spine-cloth"), size_of("spine-cloth"));
        }
        if (flat_.turned_in.empty()) return;
        const Rect& paper = flat_.turned_in.back();
        remark({paper.left + paper.width() * 0.6, above(0.25)}, title("cover-paper"), size_of("cover-paper"));
        if (flat_.turn_in > Length()) remark({flat_.turn_in / 2, above(0.25)}, words_.line("turn-in"), shown(flat_.turn_in));
    }

    void guards() {
        const Zigzag& z = *flat_.zigzag;
        if (z.guard > Length()) remark({z.leaves.back().x + z.guard / 4, z.low + above(0.1)}, title("guard"), size_of("guard"));
    }

    void rows() {
        const Length apart = flat_.rows[1] - flat_.rows[0];
        const Length low = flat_.stations.empty() ? above(0.1) : flat_.size.height - flat_.stations.back();
        const auto model = texts::Model().text("count", std::to_string(flat_.rows.size()));
        remark({flat_.rows.back(), low}, words_.line("rows", model), shown(apart));
    }

    const FlatCover& flat_;
    const journal::Measures& measures_;
    const texts::Passages& words_;
    CoverDimensions all_;
};

}  // namespace

CoverDimensions cover_dimensions(const FlatCover& flat, const journal::Measures& measures, const texts::Passages& words) {
    return Collected(flat, measures, words).collect();
}

}  // namespace qw::compose
