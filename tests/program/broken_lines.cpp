// SPDX-License-Identifier: GPL-3.0-or-later
#include "program/cut_sheet.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace qw::test::cutting {

namespace {

// Dashes as people see them: a few millimetres long, with gaps that are shorter than they are. Hatching is farther apart,
// and a cut line does not end.
const int longest_dash = static_cast<int>(pixels_of(2.8)), shortest_dash = static_cast<int>(pixels_of(1.7));
const int widest_gap = static_cast<int>(pixels_of(1.35)), shortest_line = static_cast<int>(pixels_of(8));

struct DashRow {
    int across, from, to;
};

/// Follows one row or column of pixels.
class DashFollower {
public:
    /// Dark pixels begin and end here.
    void begin(int along) { begin_ = along; }
    bool within() const { return begin_ >= 0; }
    void end(int along, int across, std::vector<DashRow>& found) {
        const int length = along - begin_;
        if (dashes_ + dots_ > 0 && begin_ - to_ > widest_gap) finish(across, found);
        if (length > longest_dash) finish(across, found);
        else {
            if (dashes_ + dots_ == 0) from_ = begin_;
            (length >= shortest_dash ? dashes_ : dots_) += 1;
            to_ = along;
        }
        begin_ = -1;
    }
    void finish(int across, std::vector<DashRow>& found) {
        if (dashes_ >= 2 && to_ - from_ >= shortest_line) found.push_back({across, from_, to_});
        dashes_ = dots_ = 0;
    }

private:
    int begin_ = -1, from_ = 0, to_ = 0, dashes_ = 0, dots_ = 0;
};

/// Rows of dashes side by side are one line; lines that go on after a crossing are one, too.
std::vector<BrokenLine> lines_from(std::vector<DashRow> rows, bool upright) {
    struct Thick {
        int first, last, from, to;
    };
    std::sort(rows.begin(), rows.end(), [](const DashRow& a, const DashRow& b) { return std::tie(a.across, a.from) < std::tie(b.across, b.from); });
    std::vector<Thick> thick;
    for (const DashRow& row : rows) {
        const auto beside = std::find_if(thick.begin(), thick.end(), [&](const Thick& t) {
            return row.across - t.last <= 1 && row.from < t.to + longest_dash && t.from < row.to + longest_dash;
        });
        if (beside == thick.end()) thick.push_back({row.across, row.across, row.from, row.to});
        else *beside = {beside->first, row.across, std::min(beside->from, row.from), std::max(beside->to, row.to)};
    }
    std::vector<BrokenLine> lines;
    for (const Thick& t : thick) lines.push_back({upright, (t.first + t.last + 1) / 2.0, t.from, t.to});
    return lines;
}

/// Lines end with a gap.
void extend_to_edge(BrokenLine& line, const Mask& piece) {
    const int across = static_cast<int>(line.at);
    const auto on_piece = [&](int along) { return (line.upright ? piece.at(across, along) : piece.at(along, across)) != 0; };
    const int most = longest_dash + widest_gap;
    for (int i = 0; i < most && on_piece(line.from - 1); ++i) --line.from;
    for (int i = 0; i < most && on_piece(line.to); ++i) ++line.to;
}

}  // namespace

std::vector<BrokenLine> broken_lines(const PrintedSheet& sheet, const Mask& piece) {
    const Extent& box = piece.box;
    std::vector<DashFollower> columns(static_cast<std::size_t>(box.width()));
    std::vector<DashRow> upright, level;
    for (int y = box.top; y < box.bottom; ++y) {
        DashFollower row;
        for (int x = box.left; x < box.right; ++x) {
            const bool dark = sheet.dark(x, y) && piece.at(x, y);
            DashFollower& column = columns[x - box.left];
            if (dark != column.within()) dark ? column.begin(y) : column.end(y, x, upright);
            if (dark != row.within()) dark ? row.begin(x) : row.end(x, y, level);
        }
        if (row.within()) row.end(box.right, y, level);
        row.finish(y, level);
    }
    for (int x = box.left; x < box.right; ++x) {
        if (columns[x - box.left].within()) columns[x - box.left].end(box.bottom, x, upright);
        columns[x - box.left].finish(x, upright);
    }
    std::vector<BrokenLine> lines = lines_from(std::move(upright), true);
    for (const BrokenLine& line : lines_from(std::move(level), false)) lines.push_back(line);
    for (BrokenLine& line : lines) extend_to_edge(line, piece);
    return lines;
}

}  // namespace qw::test::cutting
