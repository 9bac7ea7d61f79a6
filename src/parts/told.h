// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "parts/folding.h"

#include <string>
#include <vector>

namespace qw::parts {

/// The sizes of a part as printed, for `measure` and its like.
struct ToldPart {
    struct OfPanel {
        std::string name, title;
        Size size;                     ///< of the rectangle around it
    };
    struct OfPocket {
        std::string name, title;
        PocketRoom room;
    };
    std::string set;                   ///< the kit's set
    std::string part, title;           ///< of the template
    int count = 0;
    double scale = 1;                  ///< print scale of the set
    Size flat, folded;
    Length thickness;                  ///< of the closed part, empty
    std::vector<OfPanel> panels;
    std::vector<OfPocket> pockets;
};

ToldPart told(const Net& net, const Folded& folded, const std::string& set, int count);

}  // namespace qw::parts
