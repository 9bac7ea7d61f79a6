// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compose/sheet.h"

#include <functional>
#include <string>
#include <vector>

namespace qw::compose {

/// Something as wide as its column and so high, that is drawn in one piece: a line of text, a thing with its figures,
/// a drawing. What is drawn lies between its top and its foot.
struct FlowRow {
    Length height;
    std::function<void(Canvas&, Point top_left)> draw;  ///< none: white
    bool with_next = false;    ///< no page may begin between this and the next one
};

/// Rows below each other. Made first and placed when their height is known, so that what belongs together is not torn.
class Flow {
public:
    explicit Flow(const type::Fonts& fonts) : fonts_(fonts) {}

    const std::vector<FlowRow>& rows() const { return rows_; }
    bool empty() const { return rows_.empty(); }
    Length height() const;

    void space(Length height);
    void row(FlowRow row) { rows_.push_back(std::move(row)); }
    /// A wrapped paragraph, a row for each line; its first two lines stay together.
    void paragraph(const std::string& words, const Setting& setting, Length width);
    /// All rows of another flow, moved to the right; each is drawn over with `decorate` when there is one.
    void append(const Flow& other, Length indent = {}, const std::function<void(Canvas&, Point, Length height)>& decorate = {});
    /// Two flows beside each other as one row.
    void beside(Flow left, Flow right, Length right_from);
    /// The last row stays with what comes next.
    void keep_with_next();

    void draw(Canvas& canvas, Point top_left) const;

private:
    const type::Fonts& fonts_;
    std::vector<FlowRow> rows_;
};

/// Places flows down the pages of a sheet.
class FlowPages {
public:
    FlowPages(Sheet& sheet, std::string further_title);

    /// What a page that has only its title gives.
    Length whole_page() const { return whole_page_; }
    Length left_over() const { return sheet_.left_over(); }
    bool at_top() const { return at_top_; }
    void new_page() { new_page(further_title_); }
    /// In one piece on this page or the next one.
    void keep(const Flow& flow);
    /// From here on, over as many pages as it takes, torn between rows only; pages that go on with it have their own title.
    void run(const Flow& flow, const std::string& title);

private:
    void new_page(const std::string& title);
    void place(const FlowRow& row);

    Sheet& sheet_;
    std::string further_title_;
    Length whole_page_;
    bool at_top_ = false;      ///< nothing stands on this page but its title
};

}  // namespace qw::compose
