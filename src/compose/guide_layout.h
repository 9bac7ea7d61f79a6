// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/guide_content.h"
#include "compose/guide_flow.h"

#include <string>
#include <vector>

namespace qw::compose {

/// The columns of the guide: numerals hang left of the text; figures stand beside it on large papers, below it on
/// small ones. A line of text is about as long as the eye follows easily, 60 characters.
struct GuideGrid {
    Length numeral, text, gap, side;
    bool wide = true;

    explicit GuideGrid(const Rect& area);
    Length side_from() const { return numeral + text + gap; }
    Length all() const { return text + gap + side; }  ///< right of the numerals
};

/// A step's drawing with what is said below it, and how wide it is; an empty flow when there is none.
struct StepFigure {
    Flow flow;
    Length width;
};

/// Lays out the words of a guide; where pages begin is not its business. Keeps references to what it is given.
class GuideLayout {
public:
    GuideLayout(const type::Fonts& fonts, const texts::Passages& words, const GuideContent& content, const Rect& area)
        : fonts_(fonts), words_(words), content_(content), grid_(area), area_(area) {}

    const GuideGrid& grid() const { return grid_; }

    /// What is made and what holds for all steps, with the facts beside it when all of it fits into `room`.
    Flow front(const std::string& journal, Length room) const;
    /// A step as it stands on one page: its things beside the text where the paper is wide; a figure that is no wider
    /// than the text below that, any other below both.
    Flow whole(std::size_t step, const StepFigure& figure) const;
    /// A step as it runs over pages: everything below each other.
    Flow torn(std::size_t step, const StepFigure& figure) const;
    /// White and a hair line before a step that does not begin a page.
    Flow parted(const Flow& step) const;

private:
    Flow flow() const { return Flow(fonts_); }
    Length first_line_of(const Setting& setting) const;
    void paragraphs(Flow& to, const std::vector<std::string>& texts, Length width) const;
    Flow overview() const;
    Flow care(const std::vector<std::string>& cautions, const std::string& as_before, Length width) const;
    void sizes(Flow& to, const GuideThing& thing, Length width) const;
    void remarks(Flow& to, const GuideThing& thing, Length width) const;
    Flow things_column(const std::vector<GuideThing>& all, const Setting& title) const;
    Flow things_below(const std::vector<GuideThing>& all) const;
    Flow title(std::size_t step) const;
    Flow body(const GuideStep& step, bool with_things) const;
    void append(Flow& to, const StepFigure& figure) const;

    const type::Fonts& fonts_;
    const texts::Passages& words_;
    const GuideContent& content_;
    GuideGrid grid_;
    Rect area_;
};

}  // namespace qw::compose
