// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/document.h"
#include "compose/sheet.h"
#include "parts/folding.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::compose {

/// A set of parts of the kit, as its sheet for people shows it.
struct PartOfKit {
    std::string title;                ///< "Pockets": the set's name, and the part's title beside it
    const kit::Set* set = nullptr;
    int count = 0;
    /// At full size in each print of the paper, the kit's first print first.
    struct InPrint {
        Print print;
        const parts::Net* net = nullptr;
        const parts::Folded* folded = nullptr;
    };
    std::vector<InPrint> prints;
    std::vector<std::string> limits;  ///< sentences: "A card of 3 x 5 in goes in from 98 % on."
};

/// What the buyer makes of the parts: for each set its sizes flat and folded and the room of its pockets in both unit
/// systems, pictures of it flat, half folded and closed, the steps of its template with cautions where a tool is used
/// first. Nothing when the kit has no parts.
std::optional<Document> parts_sheet(const SheetContext& context, const std::vector<PartOfKit>& parts);

}  // namespace qw::compose
