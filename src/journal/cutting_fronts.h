// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "journal/cutting_layout.h"

#include <cstdint>
#include <vector>

namespace qw::journal::cutting {

/// A selection of the pieces, so many of each sort, as one number: mixed radix, the first sort counts units. A part of
/// a selection plus the rest of it is the selection, also as numbers; 0 is nothing.
class Selections {
public:
    explicit Selections(const std::vector<Sort>& sorts);
    /// How many selections there are; too many to go through when it is more than `most`.
    static constexpr std::size_t most = 1024;
    std::size_t count() const { return count_; }
    bool few() const { return count_ <= most; }
    std::size_t all() const { return count_ - 1; }
    std::size_t one_of(std::size_t sort) const { return unit_[sort]; }
    std::size_t how_many(std::size_t selection, std::size_t sort) const { return selection / unit_[sort] % base_[sort]; }
    std::size_t sorts() const { return unit_.size(); }
    /// Calls `see` with every part of a selection, from nothing to the selection itself, in rising order.
    template <typename See> void parts_of(std::size_t selection, See&& see) const {
        std::vector<std::size_t> taken(unit_.size());
        std::size_t part = 0;
        for (std::size_t sort = 0;;) {
            if (sort == 0) see(part);
            for (; sort < unit_.size() && taken[sort] == how_many(selection, sort); ++sort) part -= taken[sort] * unit_[sort], taken[sort] = 0;
            if (sort == unit_.size()) return;
            ++taken[sort];
            part += unit_[sort];
            sort = 0;
        }
    }

private:
    std::vector<std::size_t> unit_, base_;
    std::size_t count_ = 1;
};

/// One way to put a selection's pieces into a rectangle as small as can be: two smaller ways beside or on each other.
struct Block {
    Length width, height;
    std::uint16_t cuts = 0;
    bool atop = false;                 ///< the second lies on the first; else it stands at its right
    std::uint16_t first = 0;           ///< selection; 0: the block is one piece
    std::uint32_t first_way = 0, second_way = 0;
    Size size() const { return {width, height}; }
};

/// Of each selection every size that is not beaten by one that is no wider and no higher: together all that through-cuts
/// can do. Only sizes that fit on a board are kept. Ascending in width, descending in height. Needs few selections.
class Fronts {
public:
    using Front = std::vector<Block>;
    Fronts(const std::vector<Sort>& sorts, const std::vector<HeldBoard>& boards);

    const Selections& selections() const { return selections_; }
    const Front& of(std::size_t selection) const { return fronts_[selection]; }

    struct Fit {
        std::uint32_t way = 0;
        double remainder = 0;          ///< area of the largest part that one cut takes off the board
    };
    /// The way that fits on a board and leaves the largest remainder.
    std::optional<Fit> fit(std::size_t selection, const HeldBoard& board) const;
    Layout laid_out(std::size_t selection, std::uint32_t way, const HeldBoard& board) const;

private:
    void one_piece(std::size_t selection);
    void join(std::size_t selection);
    void lay(Layout& layout, std::size_t part, std::size_t selection, std::uint32_t way) const;
    bool fits_somewhere(const Block& block) const;
    void merge(Front& into, Front& joined) const;
    std::size_t sort_of_one(std::size_t selection) const;
    double area(std::size_t selection) const;

    const std::vector<Sort>& sorts_;
    std::vector<HeldBoard> boards_;
    Selections selections_;
    std::vector<Front> fronts_;
};

}  // namespace qw::journal::cutting
