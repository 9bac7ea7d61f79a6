// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/edition.h"
#include "checks/rules.h"
#include "texts/pasted.h"

#include <string>
#include <vector>

namespace qw::checks {

/// A paper or board as a text may tell it.
struct StockTold {
    std::string title;
    double grammage = 0, most = 0; ///< g/m²; `most` of what may be bought in a range of weights, else 0
    std::string weight;            ///< "160 g/m² (59 lb cover; on the shelf: 65 lb)"
};

/// A size that is right for a thing; where it depends on print and ruler, each is one. `most` is larger than `least`
/// where a text may say it in several ways, as of a closed book.
struct SizeTold {
    Size least, most;
};

/// A thing of the kit, under every name that a text may have for it. A number about it is right when it is one of those
/// that the kit has for it; what is not counted has no counts.
struct ThingTold {
    std::string title;                  ///< "pockets"
    std::vector<std::string> phrases;   ///< lower case, singular, words parted by blanks: "trifold pocket", "pocket"
    std::vector<std::string> loose = {};  ///< names that other things have too: "knife"; a list that has one lacks nothing
    std::vector<int> counts = {};       ///< 0 alone: the kit has none
    std::vector<SizeTold> sizes = {};
    std::vector<StockTold> stocks = {};
    bool to_buy = false, needed = false;  ///< a tool or material: the pipeline has it; the kit's list has it
    bool must = false;                  ///< no kit can be made without it
    bool cautioned = false;             ///< the list has cautions that it calls for
};

/// All that a listing text can say wrongly about a kit. From one model; nothing is typed in.
struct KitTold {
    std::string version;
    std::vector<ThingTold> things;
    std::vector<StockTold> stocks;      ///< all papers and boards of the kit, for a grammage that names no thing
    std::vector<std::string> papers;    ///< lower case: "a4"
    std::vector<std::string> prints;    ///< "borderless", "bordered"
};

/// A pasted text against the kit: what each number and name in it says, and what the kit says. A number that cannot be
/// tied to a thing is left alone; a wrong one is told once, however often it stands. `file` is the text's name.
void check_claims(const Rules& rules, const KitTold& kit, const texts::Pasted& text, const std::string& file, Findings& findings);

}  // namespace qw::checks
