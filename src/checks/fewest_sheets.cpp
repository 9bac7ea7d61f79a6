// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/fewest_sheets.h"

#include <algorithm>
#include <bit>
#include <cstdint>
#include <optional>

namespace qw::checks {

namespace {

/// A set of risks.
class Risks {
public:
    explicit Risks(std::size_t count) : words_((count + 63) / 64) {}
    void add(std::size_t risk) { words_[risk / 64] |= std::uint64_t{1} << risk % 64; }
    bool has(std::size_t risk) const { return words_[risk / 64] >> risk % 64 & 1; }
    bool none() const {
        return std::all_of(words_.begin(), words_.end(), [](std::uint64_t word) { return word == 0; });
    }
    Risks without(const Risks& other) const {
        Risks left = *this;
        for (std::size_t i = 0; i < words_.size(); ++i) left.words_[i] &= ~other.words_[i];
        return left;
    }
    void join(const Risks& other) {
        for (std::size_t i = 0; i < words_.size(); ++i) words_[i] |= other.words_[i];
    }
    std::size_t shared_with(const Risks& other) const {
        std::size_t count = 0;
        for (std::size_t i = 0; i < words_.size(); ++i) count += static_cast<std::size_t>(std::popcount(words_[i] & other.words_[i]));
        return count;
    }
    bool inside(const Risks& other) const { return without(other).none(); }

private:
    std::vector<std::uint64_t> words_;
};

struct Sheet {
    std::size_t index = 0;
    Risks risks;
};

/// A sheet that shows nothing more than an earlier one is in no answer that is sought: the earlier one does as well.
std::vector<Sheet> worth_printing(const std::vector<Shows>& all, std::size_t risks) {
    std::vector<Sheet> kept;
    for (std::size_t i = 0; i < all.size(); ++i) {
        Sheet sheet{i, Risks(risks)};
        for (const std::size_t risk : all[i]) sheet.risks.add(risk);
        if (!sheet.risks.none() && std::none_of(kept.begin(), kept.end(), [&](const Sheet& earlier) { return sheet.risks.inside(earlier.risks); }))
            kept.push_back(std::move(sheet));
    }
    return kept;
}

class Search {
public:
    Search(std::vector<Sheet> sheets, std::size_t risks) : sheets_(std::move(sheets)), risks_(risks) {}

    std::vector<std::size_t> answer() const {
        Risks open(risks_);
        for (const Sheet& sheet : sheets_) open.join(sheet.risks);
        std::size_t most = greedy(open);
        while (most > 0 && can(open, 0, most - 1)) --most;
        return earliest(open, most);
    }

private:
    std::size_t greedy(Risks open) const {
        std::size_t count = 0;
        for (; !open.none(); ++count) {
            const Sheet* best = &sheets_.front();
            for (const Sheet& sheet : sheets_)
                if (sheet.risks.shared_with(open) > best->risks.shared_with(open)) best = &sheet;
            open = open.without(best->risks);
        }
        return count;
    }

    /// Whether `most` of the sheets from `first` on show all that is open. Branches on the risk that fewest sheets show.
    bool can(const Risks& open, std::size_t first, std::size_t most) const {
        if (open.none()) return true;
        if (most == 0) return false;
        std::size_t largest = 0;
        for (std::size_t i = first; i < sheets_.size(); ++i) largest = std::max(largest, sheets_[i].risks.shared_with(open));
        if (largest == 0) return false;
        std::optional<std::size_t> rarest;
        std::size_t fewest = sheets_.size() + 1, left = 0;
        for (std::size_t risk = 0; risk < risks_; ++risk) {
            if (!open.has(risk)) continue;
            ++left;
            const auto showing = static_cast<std::size_t>(std::count_if(sheets_.begin() + static_cast<std::ptrdiff_t>(first), sheets_.end(),
                                                                        [&](const Sheet& sheet) { return sheet.risks.has(risk); }));
            if (showing < fewest) fewest = showing, rarest = risk;
        }
        if (left > largest * most) return false;
        for (std::size_t i = first; i < sheets_.size(); ++i)
            if (sheets_[i].risks.has(*rarest) && can(open.without(sheets_[i].risks), first, most - 1)) return true;
        return false;
    }

    /// `most` is known to suffice: takes each sheet after which the rest can still be shown by later ones.
    std::vector<std::size_t> earliest(Risks open, std::size_t most) const {
        std::vector<std::size_t> chosen;
        for (std::size_t i = 0; i < sheets_.size() && !open.none(); ++i) {
            Risks rest = open.without(sheets_[i].risks);
            if (!can(rest, i + 1, most - chosen.size() - 1)) continue;
            chosen.push_back(sheets_[i].index);
            open = std::move(rest);
        }
        return chosen;
    }

    std::vector<Sheet> sheets_;
    std::size_t risks_;
};

}  // namespace

std::vector<std::size_t> fewest_sheets(const std::vector<Shows>& sheets, std::size_t risks) { return Search(worth_printing(sheets, risks), risks).answer(); }

std::vector<std::size_t> unshown(const std::vector<Shows>& sheets, std::size_t risks) {
    std::vector<std::size_t> missing;
    for (std::size_t risk = 0; risk < risks; ++risk)
        if (std::none_of(sheets.begin(), sheets.end(),
                         [&](const Shows& shows) { return std::find(shows.begin(), shows.end(), risk) != shows.end(); }))
            missing.push_back(risk);
    return missing;
}

}  // namespace qw::checks
