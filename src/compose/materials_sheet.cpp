// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/materials_sheet.h"

#include "compose/fractions.h"
#include "compose/materials_columns.h"
#include "materials/amounts.h"

#include <algorithm>
#include <array>
#include <cctype>

namespace qw::compose {

namespace {

using Group = materials::Line::Group;
constexpr std::array<std::pair<Group, const char*>, 5> material_groups{{{Group::paper, "group-paper"}, {Group::board, "group-board"},
                                                               {Group::sewing, "group-sewing"}, {Group::glueing, "group-glueing"},
                                                               {Group::other, "group-other"}}};

const Length group_width = Length::mm(26), tick_width = Length::mm(7), amount_width = Length::mm(70), gutter = Length::mm(5);
const Length above_row = Length::mm(0.6), below_row = Length::mm(1.0), heading_height = Length::mm(7);
/// Narrower sheets have the amounts below the titles and the groups' names above their rows.
const Length wide_enough = Length::mm(150);

constexpr Setting other_way{type::Cut::strong, setting::body.size, setting::body.leading};

/// What stands beside a tick box: at the left what it is, at the right how much of it.
struct MaterialRow {
    bool tick = true;
    StackedWords what, amount;
};

/// "1.2 m" and "1 3/8 yd" are not parted at a line's end.
std::string amount_words(const std::string& plain) {
    std::string text = plain;
    for (const std::string unit : {" m", " yd"})
        for (std::size_t at = text.find(unit, 1); at != std::string::npos; at = text.find(unit, at + 1)) {
            const std::size_t end = at + unit.size();
            const bool whole_word = end == text.size() || !std::isalnum(static_cast<unsigned char>(text[end]));
            if (whole_word && std::isdigit(static_cast<unsigned char>(text[at - 1]))) text.replace(at, 1, "\u00a0");
        }
    return real_fractions(text);
}

void add_words(StackedWords& stack, const std::string& words, const Setting& setting) {
    if (!words.empty()) stack.push_back({words, setting});
}

class MaterialsSheet {
public:
    MaterialsSheet(const SheetContext& context, const materials::List& list)
        : list_(list), words_(passages_of(context.pipeline, "materials")), metric_(context.paper.ruler == UnitSystem::metric),
          wide_(SheetMargins::content(context.paper.size.as_portrait()).width() >= wide_enough),
          title_(words_.line(wide_ ? "title" : "short-title")), model_(texts::Model().text("kit", context.manifest.title).text("paper", context.paper.title)),
          sheet_(context, title_, words_.line(wide_ ? "subtitle" : "short-subtitle", model_), PrintAt::full_size) {}

    Document compose() {
        for (const auto& [group, name] : material_groups) materials(group, words_.line(name));
        rule(weight::line);
        thicknesses();
        tools();
        cautions();
        return std::move(sheet_).finish();
    }

private:
    Rect area() const { return sheet_.content(); }
    const type::Fonts& fonts() const { return sheet_.context().fonts; }
    void rule(Length weight, Length indent = {}) { sheet_.canvas().line({area().left + indent, sheet_.top()}, {area().right, sheet_.top()}, weight); }

    Length indent() const { return wide_ ? group_width : Length(); }
    Length what_left() const { return area().left + indent() + tick_width; }
    Length amount_left() const { return wide_ ? area().right - amount_width : what_left(); }
    Length what_width() const { return wide_ ? amount_left() - gutter - what_left() : area().right - what_left(); }
    Length amount_width_here() const { return wide_ ? amount_width : what_width(); }

    std::string amount(const std::string& metric, const std::string& us, bool own) const { return amount_words(own == metric_ ? metric : us); }
    /// The other system's only where it says something else.
    StackedWords amounts(const std::string& metric, const std::string& us, const Setting& large) const {
        StackedWords stack;
        add_words(stack, amount(metric, us, true), large);
        if (metric != us) add_words(stack, amount(metric, us, false), setting::small);
        return stack;
    }

    MaterialRow row_of(const materials::Line& line) const {
        MaterialRow row;
        add_words(row.what, line.optional ? words_.line("optional", texts::Model().text("title", line.title)) : line.title, setting::label);
        add_words(row.what, line.use, setting::small);
        row.amount = amounts(line.metric, line.us, setting::table_figure);
        return row;
    }
    MaterialRow row_of(const materials::OtherWay& way) const {
        MaterialRow row;
        row.tick = !way.metric.empty();
        texts::Model model;
        model.text("title", materials::inside_sentence(way.title)).text("thing", way.stands_for).truth("for-one", !way.stands_for.empty());
        add_words(row.what, words_.line("or", model), other_way);
        add_words(row.what, way.use, setting::small);
        row.amount = amounts(way.metric, way.us, other_way);
        return row;
    }

    Length height_of_row(const MaterialRow& row) const {
        const Length what = height_of(row.what, fonts(), what_width()), amount = height_of(row.amount, fonts(), amount_width_here());
        return (wide_ ? max(what, amount) : what + amount) + above_row + below_row;
    }
    void draw_row(const MaterialRow& row) {
        Length y = sheet_.top() - above_row;
        if (row.tick) draw_tick(sheet_.canvas(), {area().left + indent(), sheet_.top()});
        // On a narrow sheet the amount stands first below the title, before what it is for.
        StackedWords what = row.what;
        if (!wide_) what.insert(what.begin() + 1, row.amount.begin(), row.amount.end());
        draw(sheet_.canvas(), {what_left(), y}, what_width(), what);
        if (wide_) draw(sheet_.canvas(), {amount_left(), y}, amount_width_here(), row.amount);
        sheet_.down(height_of_row(row));
    }

    std::vector<MaterialRow> rows_of(const materials::Line& line) const {
        std::vector<MaterialRow> rows{row_of(line)};
        for (const materials::OtherWay& way : line.instead) rows.push_back(row_of(way));
        return rows;
    }

    void group_heading(const std::string& name, bool at_page_head) {
        if (!at_page_head) rule(weight::line);
        if (wide_) {
            sheet_.canvas().words({area().left, sheet_.top() - Length::mm(4.8)}, name, setting::heading);
        } else {
            sheet_.canvas().words({area().left, sheet_.top() - Length::mm(5.6)}, name, setting::heading);
            sheet_.down(heading_height);
        }
    }

    /// A line with all that may stand in for it stays together where a page can hold that.
    void materials(Group group, const std::string& name) {
        bool first = true;
        for (const materials::Line& line : list_.lines) {
            if (line.group != group) continue;
            const std::vector<MaterialRow> rows = rows_of(line);
            Length all = wide_ ? Length() : heading_height;
            for (const MaterialRow& row : rows) all += height_of_row(row);
            const bool turned = sheet_.left_over() < all;
            if (turned) sheet_.new_page(title_);
            if (first || turned) group_heading(name, turned || &line == &list_.lines.front());
            else rule(weight::hair, indent());
            first = false;
            for (const MaterialRow& row : rows) {
                if (sheet_.left_over() < height_of_row(row)) {
                    sheet_.new_page(title_);
                    group_heading(name, true);
                }
                draw_row(row);
            }
        }
    }

    void thicknesses() {
        if (list_.thicknesses.empty()) return;
        std::vector<texts::Model> stocks;
        for (const materials::Thickness& one : list_.thicknesses) {
            texts::Model stock;
            stock.text("title", one.title).truth("last", &one == &list_.thicknesses.back());
            stock.text("own", one.text(metric_ ? UnitSystem::metric : UnitSystem::us)).text("other", one.text(metric_ ? UnitSystem::us : UnitSystem::metric));
            stocks.push_back(stock);
        }
        const StackedWords note{{words_.line("thickness", texts::Model().list("stocks", stocks)), setting::small}};
        const Length above = Length::mm(2);
        if (sheet_.left_over() < height_of(note, fonts(), area().width()) + above) sheet_.new_page(title_);
        sheet_.down(above);
        sheet_.down(draw(sheet_.canvas(), {area().left, sheet_.top()}, area().width(), note));
    }

    void tools() {
        EntryColumns columns(sheet_, words_.line("tools"), {wide_ ? 2u : 1u, tick_width, gutter, Length::mm(1.4)});
        for (const materials::ToolLine& line : list_.tools) {
            StackedWords entry{{line.tool.title, setting::label}};
            add_words(entry, line.tool.use, setting::small);
            if (!line.only_for.empty()) add_words(entry, words_.line("only-for", texts::Model().text("things", line.only_for)), setting::remark);
            columns.add(std::move(entry));
        }
        columns.draw();
    }

    EntryColumns caution_columns(const Setting& setting) {
        EntryColumns columns(sheet_, words_.line("cautions"), {wide_ ? 2u : 1u, Length(), gutter * 2, Length::mm(3)});
        for (const kit::Caution& caution : list_.cautions) columns.add({{caution.text, setting}});
        return columns;
    }

    /// Below the tools where there is room, else larger on a page of their own.
    void cautions() {
        EntryColumns columns = caution_columns(setting::body);
        if (wide_ && !columns.fit_below()) caution_columns(setting::subtitle).draw();
        else columns.draw();
    }

    const materials::List& list_;
    texts::Passages words_;
    bool metric_, wide_;
    std::string title_;
    texts::Model model_;
    Sheet sheet_;
};

}  // namespace

Document materials_sheet(const SheetContext& context, const materials::List& list) {
    return MaterialsSheet(context, list).compose();
}

}  // namespace qw::compose
