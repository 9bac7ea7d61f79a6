// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/callouts.h"

#include <algorithm>
#include <utility>

namespace qw::compose {

namespace {

const Length callout_row = Length::mm(5.6), callout_foot = Length::mm(2.6), word_space = Length::mm(1.2);

/// Which way the words of each callout run, and in which row they stand.
struct Layout {
    std::vector<bool> to_left;
    std::vector<std::size_t> row;
    std::size_t rows = 0;
    int against = 0;             ///< how many run towards the middle of the room
};

class Callouts {
public:
    Callouts(Canvas& canvas, std::vector<Callout> callouts, const Rect& room) : canvas_(canvas), all_(std::move(callouts)), room_(room) {
        std::stable_sort(all_.begin(), all_.end(), [](const Callout& a, const Callout& b) { return a.dot.x < b.dot.x; });
        for (const Callout& c : all_) widths_.push_back(callout_foot + width_of_words_and_figure(canvas_, c.words, c.figure));
    }

    /// The fewest rows, then the fewest words that run towards the middle.
    std::optional<Layout> best() const {
        std::optional<Layout> best;
        for (const auto& to_left : directions())
            if (const auto layout = rows_for(to_left); layout && (!best || std::pair(layout->rows, layout->against) < std::pair(best->rows, best->against)))
                best = layout;
        return best;
    }

    void draw(const Layout& layout) {
        const Length cap = canvas_.fonts().cap_height(setting::table_figure.cut, setting::table_figure.size);
        for (std::size_t i = 0; i < all_.size(); ++i) {
            const Callout& c = all_[i];
            const Length y = room_.top - callout_row * (static_cast<double>(layout.row[i]) + 0.5);
            const Length way = layout.to_left[i] ? -callout_foot : callout_foot;
            canvas_.circle(c.dot, Length::mm(0.5), std::nullopt, 0);
            canvas_.line(c.dot, {c.dot.x, y}, weight::hair);
            canvas_.line({c.dot.x, y}, {c.dot.x + way * 0.7, y}, weight::hair);
            draw_words_and_figure(canvas_, {layout.to_left[i] ? c.dot.x - widths_[i] : c.dot.x + way, y - cap / 2}, c.words, c.figure);
        }
    }

private:
    /// All ways; of many callouts only those that part them into a left and a right half.
    std::vector<std::vector<bool>> directions() const {
        constexpr std::size_t few = 9;
        std::vector<std::vector<bool>> all;
        const std::size_t n = all_.size(), count = n <= few ? std::size_t{1} << n : n + 1;
        for (std::size_t k = 0; k < count; ++k) {
            std::vector<bool> to_left(n);
            for (std::size_t i = 0; i < n; ++i) to_left[i] = n <= few ? (k >> i & 1) != 0 : i < k;
            all.push_back(std::move(to_left));
        }
        return all;
    }

    struct Extent {
        Length left, right;
        bool meets(const Extent& o) const { return left < o.right && o.left < right; }
        bool holds(Length x) const { return left < x && x < right; }
    };
    Extent extent(std::size_t i, bool to_left) const {
        const Length x = all_[i].dot.x;
        return to_left ? Extent{x - widths_[i] - word_space, x} : Extent{x, x + widths_[i] + word_space};
    }

    /// Each callout as high as it may be: below every one whose leader would meet its words. Nothing when two would each
    /// have to be below the other, or when words leave the room.
    std::optional<Layout> rows_for(const std::vector<bool>& to_left) const {
        const std::size_t n = all_.size();
        std::vector<Extent> extents;
        Layout layout{to_left, std::vector<std::size_t>(n), 0, 0};
        for (std::size_t i = 0; i < n; ++i) {
            extents.push_back(extent(i, to_left[i]));
            if (extents[i].left < room_.left - word_space || extents[i].right > room_.right + word_space) return std::nullopt;
            layout.against += to_left[i] == (all_[i].dot.x > room_.centre().x);
        }
        std::vector<bool> placed(n);
        for (std::size_t left = n; left > 0; --left) {
            const auto above_all = [&](std::size_t i) {  // of those that are left, none has to be higher
                for (std::size_t j = 0; j < n; ++j)
                    if (j != i && !placed[j] && extents[i].holds(all_[j].dot.x)) return false;
                return true;
            };
            std::size_t i = 0;
            while (i < n && (placed[i] || !above_all(i))) ++i;
            if (i == n) return std::nullopt;
            placed[i] = true;
            for (std::size_t j = 0; j < n; ++j)
                if (j != i && placed[j] && (extents[i].holds(all_[j].dot.x) || extents[i].meets(extents[j])))
                    layout.row[i] = std::max(layout.row[i], layout.row[j] + 1);
            layout.rows = std::max(layout.rows, layout.row[i] + 1);
        }
        return layout;
    }

    Canvas& canvas_;
    std::vector<Callout> all_;   ///< by their dots, from the left
    Rect room_;
    std::vector<Length> widths_;
};

}  // namespace

Length width_of_words_and_figure(const Canvas& canvas, const std::string& words, const std::string& figure) {
    const Length between = words.empty() || figure.empty() ? Length() : word_space;
    return canvas.width(setting::other, words) + between + canvas.width(setting::table_figure, figure);
}

Length draw_words_and_figure(Canvas& canvas, Point at, const std::string& words, const std::string& figure) {
    canvas.words(at, words, setting::other);
    const Length all = width_of_words_and_figure(canvas, words, figure);
    canvas.words({at.x + all - canvas.width(setting::table_figure, figure), at.y}, figure, setting::table_figure);
    return all;
}

std::optional<Length> draw_callouts(Canvas& canvas, std::vector<Callout> callouts, const Rect& room) {
    Callouts placed(canvas, std::move(callouts), room);
    const auto layout = placed.best();
    if (!layout) return std::nullopt;
    placed.draw(*layout);
    return callout_row * static_cast<double>(layout->rows);
}

}  // namespace qw::compose
