// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/guide_layout.h"

#include <utility>

namespace qw::compose {

namespace {

// The titles' cut has old-style figures, whose 1 looks like an I.
constexpr Setting wide_numeral{type::Cut::text, Length::points(27), Length::points(30)};
constexpr Setting narrow_numeral{type::Cut::text, Length::points(18), Length::points(22)};
constexpr Setting made_title{type::Cut::title, Length::points(20), Length::points(25)};
constexpr Setting step_title{type::Cut::title, Length::points(15), Length::points(19)};

const Length below_title = Length::mm(1.2), between_paragraphs = Length::mm(1.8), before_tools = Length::mm(2.2), before_care = Length::mm(3);
const Length between_things = Length::mm(3.2), between_prints = Length::mm(0.9), before_drawing = Length::mm(5), above_step = Length::mm(6),
             rule_room = Length::mm(5);
const Length bar_width = Length::mm(0.7), bar_indent = Length::mm(3.5);

std::string counted_title(const GuideThing& thing) { return thing.count.empty() ? thing.title : thing.count + " " + thing.title; }

}  // namespace

GuideGrid::GuideGrid(const Rect& area) : wide(area.width() > Length::mm(150)) {
    numeral = Length::mm(wide ? 14 : 11);
    side = wide ? Length::mm(47) : Length();
    gap = wide ? Length::mm(8) : Length();
    text = area.width() - numeral - gap - side;
}

/// From the top of a paragraph to its first baseline.
Length GuideLayout::first_line_of(const Setting& setting) const { return (setting.leading + fonts_.cap_height(setting.cut, setting.size)) / 2; }

/// What is made and what holds for all steps, on wide papers with the facts beside it.
Flow GuideLayout::front(const std::string& journal, Length room) const {
    Flow made = flow(), rest = flow();
    made.paragraph(journal, made_title, grid_.text);
    made.space(below_title * 2);
    rest.paragraph(words_.line("read-first"), step_title, grid_.text);
    rest.keep_with_next();
    rest.space(below_title);
    rest.keep_with_next();
    paragraphs(rest, content_.introduction, grid_.text);
    rest.space(before_care);
    rest.append(care(content_.cautions, "", grid_.text));
    rest.space(above_step);
    rest.append(overview());

    Flow all = flow(), left = flow();
    if (grid_.wide && made.height() + rest.height() < room) {
        left.append(made, grid_.numeral);
        left.append(rest, grid_.numeral);
        all.beside(left, things_column(content_.facts, made_title), grid_.side_from());
        return all;
    }
    all.append(made, grid_.numeral);
    all.append(things_below(content_.facts), grid_.numeral);
    all.space(above_step);
    all.append(rest, grid_.numeral);
    return all;
}

void GuideLayout::paragraphs(Flow& to, const std::vector<std::string>& texts, Length width) const {
    for (std::size_t i = 0; i < texts.size(); ++i) {
        if (i > 0) to.space(between_paragraphs);
        to.paragraph(texts[i], setting::body, width);
    }
}

/// All steps at a glance.
Flow GuideLayout::overview() const {
    Flow list = flow();
    list.paragraph(words_.line("steps"), step_title, grid_.text);
    list.keep_with_next();
    list.space(below_title);
    list.keep_with_next();
    const Length number_width = Length::mm(7);
    for (std::size_t i = 0; i < content_.steps.size(); ++i) {
        Flow title = flow(), number = flow();
        number.paragraph(std::to_string(i + 1), setting::label, number_width);
        title.paragraph(content_.steps[i].title, setting::body, grid_.text - number_width);
        list.beside(number, title, number_width);
    }
    return list;
}

/// Cautions behind a bar, under their heading; then where the others stand.
Flow GuideLayout::care(const std::vector<std::string>& cautions, const std::string& as_before, Length width) const {
    Flow inner = flow();
    if (!cautions.empty()) {
        inner.paragraph(words_.line("take-care"), setting::label, width - bar_indent);
        inner.keep_with_next();
        paragraphs(inner, cautions, width - bar_indent);
        if (!as_before.empty()) inner.space(between_paragraphs);
    }
    if (!as_before.empty()) inner.paragraph(as_before, setting::label, width - bar_indent);
    Flow barred = flow();
    barred.append(inner, bar_indent, [](Canvas& canvas, Point at, Length height) {
        canvas.fill({at.x, at.y - height, at.x + bar_width, at.y}, 0);
    });
    return barred;
}

void GuideLayout::sizes(Flow& to, const GuideThing& thing, Length width) const {
    for (const GuideSize& size : thing.sizes) {
        if (&size != &thing.sizes.front()) to.space(between_prints);
        if (!size.print.empty()) to.paragraph(size.print, setting::small, width);
        to.keep_with_next();
        to.paragraph(size.own, setting::table_figure, width);
        if (size.other.empty()) continue;
        to.keep_with_next();
        to.paragraph(size.other, setting::other, width);
    }
}

void GuideLayout::remarks(Flow& to, const GuideThing& thing, Length width) const {
    for (const std::string& remark : thing.remarks) to.paragraph(remark, setting::small, width);
}

/// For the side column, on one line with a title in that setting.
Flow GuideLayout::things_column(const std::vector<GuideThing>& all, const Setting& title) const {
    Flow column = flow();
    column.space(first_line_of(title) - first_line_of(setting::label));
    for (const GuideThing& thing : all) {
        if (&thing != &all.front()) column.space(between_things);
        column.paragraph(counted_title(thing), setting::label, grid_.side);
        sizes(column, thing, grid_.side);
        remarks(column, thing, grid_.side);
    }
    return column;
}

/// Below the text: what it is at the left, its sizes at the right. What is very long stands in one column.
Flow GuideLayout::things_below(const std::vector<GuideThing>& all) const {
    const Length left_width = grid_.text * 0.45, right = grid_.text * 0.5;
    Flow rows = flow();
    for (const GuideThing& thing : all) {
        if (!rows.empty()) rows.space(between_things);
        Flow what = flow(), how_large = flow();
        what.paragraph(counted_title(thing), setting::label, left_width);
        remarks(what, thing, left_width);
        sizes(how_large, thing, right);
        if (max(what.height(), how_large.height()) < area_.height() / 2) {
            rows.beside(what, how_large, right);
            continue;
        }
        rows.paragraph(counted_title(thing), setting::label, grid_.text);
        sizes(rows, thing, grid_.text);
        remarks(rows, thing, grid_.text);
    }
    return rows;
}

Flow GuideLayout::body(const GuideStep& step, bool with_things) const {
    Flow text = flow();
    paragraphs(text, step.paragraphs, grid_.text);
    if (with_things && !step.things.empty()) {
        text.space(between_things);
        text.append(things_below(step.things));
    }
    if (!step.tools.empty()) {
        text.space(before_tools);
        text.paragraph(words_.line("tools", texts::Model().text("tools", step.tools)), setting::other, grid_.text);
    }
    if (!step.cautions.empty() || !step.as_before.empty()) {
        text.space(before_care);
        text.append(care(step.cautions, step.as_before, grid_.text));
    }
    return text;
}

/// The numeral hangs beside the title, their capitals on one line at the top.
Flow GuideLayout::title(std::size_t i) const {
    const Setting& numeral = grid_.wide ? wide_numeral : narrow_numeral;
    Flow title = flow();
    title.paragraph(content_.steps[i].title, step_title, grid_.text);
    title.space(below_title);
    Flow all = flow();
    const Length above = first_line_of(step_title) - fonts_.cap_height(step_title.cut, step_title.size);
    const Length down = above + fonts_.cap_height(numeral.cut, numeral.size);
    all.row({title.height(), [=, number = std::to_string(i + 1), indent = grid_.numeral](Canvas& canvas, Point at) {
                 canvas.words({at.x, at.y - down}, number, numeral);
                 title.draw(canvas, {at.x + indent, at.y});
             }, true});
    return all;
}

Flow GuideLayout::whole(std::size_t i, const StepFigure& figure) const {
    const GuideStep& step = content_.steps[i];
    const bool in_column = figure.width <= grid_.text;
    Flow left = title(i);
    left.append(body(step, !grid_.wide), grid_.numeral);
    if (in_column) append(left, figure);
    Flow all = flow();
    if (grid_.wide) all.beside(left, things_column(step.things, step_title), grid_.side_from());
    else all.append(left);
    if (!in_column) append(all, figure);
    return all;
}

Flow GuideLayout::torn(std::size_t i, const StepFigure& figure) const {
    Flow all = title(i);
    all.append(body(content_.steps[i], true), grid_.numeral);
    append(all, figure);
    return all;
}

void GuideLayout::append(Flow& to, const StepFigure& figure) const {
    if (figure.flow.empty()) return;
    to.space(before_drawing);
    to.append(figure.flow, grid_.numeral);
}

Flow GuideLayout::parted(const Flow& step) const {
    Flow all = flow();
    all.space(above_step);
    all.row({rule_room, [from = grid_.numeral, width = grid_.all()](Canvas& canvas, Point at) {
                 canvas.line({at.x + from, at.y}, {at.x + from + width, at.y}, weight::hair);
             }, true});
    all.append(step);
    return all;
}

}  // namespace qw::compose
