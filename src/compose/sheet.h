// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/canvas.h"
#include "kit/manifest.h"
#include "kit/pipeline.h"
#include "texts/passages.h"

#include <string>
#include <vector>

namespace qw::compose {

/// What every generated sheet is made for. Refers to values that outlive the composing.
struct SheetContext {
    const kit::Manifest& manifest;
    const kit::Pipeline& pipeline;
    const Paper& paper;
    const type::Fonts& fonts;
    Date date;
};

/// The passages of pipeline/texts/NAME.mustache. Throws Fault (not_understood) when the file is missing or broken.
texts::Passages passages_of(const kit::Pipeline& pipeline, const std::string& name);

/// The room that every printer leaves on a sheet: 20 mm at the sides and the top, and a foot whose lowest ink is
/// more than 17 mm from the edge (the deepest unprinted foot among the printers' data is 48 pt, 16.93 mm). On papers
/// smaller than that is meant for, sides are 12.7 mm (the widest unprinted side is 6.35 mm) and the top is 15 mm (the widest is 12.7 mm), and
/// what stands in the foot stands in four lines instead of two times two.
struct SheetMargins {
    static constexpr Length foot = Length::mm(18);
    static constexpr bool narrow(Size paper) { return paper.width < Length::mm(160); }
    static constexpr Length side(Size paper) { return narrow(paper) ? Length::mm(12.7) : Length::mm(20); }
    static constexpr Length top(Size paper) { return narrow(paper) ? Length::mm(15) : Length::mm(20); }
    static constexpr Length foot_height(Size paper) { return narrow(paper) ? Length::mm(17.5) : Length::mm(9.5); }  ///< lines and the rule above them
    static constexpr Rect text(Size paper) { return {side(paper), foot, paper.width - side(paper), paper.height - top(paper)}; }
    static constexpr Rect content(Size paper) {
        return {side(paper), foot + foot_height(paper) + Length::mm(4.5), paper.width - side(paper), paper.height - top(paper)};
    }
};

/// Which words stand in the foot beside kit, version, paper and prints.
enum class PrintAt { full_size, with_the_pages };

/// A generated sheet of one or several portrait pages: titles at the head, content from the top down, and in the foot
/// of every page what the sheet is, so that a photographed page can be told.
class Sheet {
public:
    Sheet(const SheetContext& context, std::string title, std::string subtitle, PrintAt print_at);

    const SheetContext& context() const { return context_; }
    Canvas& canvas() { return pages_.back(); }
    Rect content() const { return SheetMargins::content(context_.paper.size.as_portrait()); }

    /// The cursor: the top of what comes next on the current page.
    Length top() const { return top_; }
    /// The rule below the current page's title.
    Length rule() const { return rule_; }
    Length left_over() const { return top_ - content().bottom; }
    void down(Length by) { top_ -= by; }
    /// A new page with a smaller title; the cursor stands below it.
    void new_page(const std::string& title);
    /// A section's heading at the cursor, with a rule below it.
    void heading(const std::string& words);

    Document finish() &&;

private:
    void title_block(const std::string& title, const std::string& subtitle, const Setting& setting);
    void foot(Canvas& canvas, std::size_t page) const;
    texts::Model foot_model(std::size_t page) const;
    std::string prints() const;

    SheetContext context_;
    texts::Passages words_;
    std::string title_;
    PrintAt print_at_;
    std::vector<Canvas> pages_;
    Length top_, rule_;
};

}  // namespace qw::compose
