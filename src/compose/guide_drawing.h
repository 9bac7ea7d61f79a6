// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/sheet.h"
#include "journal/measures.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace qw::compose {

/// The room that all ink of a page takes, text and outlines; nothing on an empty page.
std::optional<Rect> ink_box(const Page& page, const type::Fonts& fonts);

/// A step's drawing (`cover`, `corner`, `stitch`, `stations`), with its own size.
struct StepDrawing {
    Size size;                       ///< as it comes out
    std::function<void(Canvas&, Point top_left)> draw;
    std::vector<std::string> texts;  ///< all that is written in it
};

/// Whether there is something to draw, had it room enough.
bool has_step_drawing(const SheetContext& context, const std::string& drawing, const journal::Measures& measures);

/// As large as `liked` lets it be in a column of that width, or up to `most` high when it needs that. Nothing when there
/// is nothing to draw, or no room for it. The measures must outlive what is returned.
/// Words: pipeline/texts/drawings.mustache.
std::optional<StepDrawing> step_drawing(const SheetContext& context, const std::string& drawing, const journal::Measures& measures, Length width,
                                        Length liked, Length most);

}  // namespace qw::compose
