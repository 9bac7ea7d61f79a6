// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/piece_table.h"

#include "compose/fractions.h"
#include "compose/ruled_table.h"

#include <algorithm>

namespace qw::compose {

namespace {

const Length count_width = Length::mm(8), least_label = Length::mm(34), good_label = Length::mm(60), most_label = Length::mm(82), column_gap = Length::mm(3.5);
const Length above_note = Length::mm(1);
const Length least_figure = Length::mm(30);  // for the head above it

class PieceTable {
public:
    PieceTable(Sheet& sheet, const std::vector<SizeColumn>& columns, PieceRows which, const RowTitles& titles, const texts::Passages& words,
               const std::string& continued)
        : sheet_(sheet), columns_(columns), which_(which), words_(words), continued_(continued), area_(sheet.content()) {
        for (const SizeColumn& column : columns_) rows_.push_back(rows_of(column.measures, titles));
    }

    void draw(const std::string& heading, const std::vector<std::string>& introduction) {
        if (std::none_of(rows_.front().begin(), rows_.front().end(), [&](const MeasureRow& r) { return shown(r); })) return;
        const std::size_t beside = prints_beside();
        for (std::size_t from = 0; from < columns_.size(); from += beside) {
            RuledTable part = table(from, std::min(columns_.size(), from + beside));
            if (from == 0) part.introduce(heading, introduction, setting::body);
            else sheet_.down(Length::mm(2));
            part.draw(continued_);
        }
    }

private:
    bool shown(const MeasureRow& row) const {
        return row.kind != MeasureRow::Kind::page && (row.kind == MeasureRow::Kind::figure) == (which_ == PieceRows::to_know);
    }

    UnitSystem ruler() const { return columns_.front().measures.ruler; }
    UnitSystem other() const { return ruler() == UnitSystem::metric ? UnitSystem::us : UnitSystem::metric; }
    bool counts() const { return which_ == PieceRows::to_make; }
    Length beside_labels(std::size_t prints) const {
        return area_.width() - (counts() ? count_width + column_gap : Length()) - column_gap * static_cast<double>(prints);
    }

    Length width_of(const MeasureRow& row) const {
        return max(sheet_.canvas().width(setting::figure, row.in(ruler())), sheet_.canvas().width(setting::other, row.in(other())));
    }

    /// What the widest figure takes.
    Length figure_width() const {
        Length widest = least_figure;
        for (const auto& rows : rows_)
            for (const MeasureRow& row : rows)
                if (shown(row) && row.kind != MeasureRow::Kind::stations) widest = max(widest, width_of(row));
        return widest;
    }

    /// A row of many holes may wrap, but has what the titles leave.
    Length figure_width(std::size_t prints) const {
        Length widest = figure_width();
        const Length most = max(widest, (beside_labels(prints) - good_label) / static_cast<double>(prints));
        for (const auto& rows : rows_)
            for (const MeasureRow& row : rows)
                if (shown(row)) widest = max(widest, min(most, width_of(row)));
        return widest + Length::mm(0.1);
    }

    /// As many prints beside each other as leave room for the titles; at least one.
    std::size_t prints_beside() const {
        std::size_t prints = columns_.size();
        while (prints > 1 && beside_labels(prints) - figure_width() * static_cast<double>(prints) < least_label) --prints;
        return prints;
    }

    RuledTable table(std::size_t from, std::size_t to) const {
        const std::size_t prints = to - from;
        const Length room = beside_labels(prints), figures = figure_width(prints) * static_cast<double>(prints);
        // Without the words on what a thing is for, the figures have the room: many holes then stand in fewer lines.
        const Length label = from > 0 ? least_label : max(least_label, min(most_label, room - figures));
        std::vector<Length> widths{label};
        widths.resize(1 + prints, (room - label) / static_cast<double>(prints));
        if (counts()) widths.insert(widths.begin(), count_width);
        RuledTable table(sheet_, widths, column_gap);
        table.airy(Length::mm(1.0), Length::mm(1.3));
        table.head(head(from, to));
        MeasureRow::Kind before = MeasureRow::Kind::page;
        for (const MeasureRow& row : rows_.at(from)) {
            if (!shown(row)) continue;
            std::vector<TableCell> cells{TableCell(row.title, setting::label).add(told_before(from, row) ? "" : row.use, setting::small)};
            if (counts()) cells.insert(cells.begin(), TableCell(row.count, setting::label));
            for (std::size_t i = from; i < to; ++i) cells.push_back(cell(i, row.name));
            table.row(cells, row.kind == before ? weight::hair : weight::line);
            before = row.kind;
        }
        return table;
    }

    /// Where prints have tables of their own, what a thing is for is said in the first.
    bool told_before(std::size_t from, const MeasureRow& row) const {
        const auto same = [&](const MeasureRow& r) { return r.name == row.name && r.use == row.use; };
        return from > 0 && std::any_of(rows_.front().begin(), rows_.front().end(), same);
    }

    std::vector<TableCell> head(std::size_t from, std::size_t to) const {
        std::vector<TableCell> cells{TableCell("", setting::small).over(counts() ? 2 : 1)};
        for (std::size_t i = from; i < to; ++i) {
            texts::Model model;
            model.text("print", words_.line(name_of(columns_[i].print))).text("size", columns_[i].label).text("page", rows_[i].front().in(ruler()));
            cells.push_back(TableCell(words_.line("column-head", model), setting::label).add(words_.line("column-page", model), setting::small));
        }
        return cells;
    }

    TableCell cell(std::size_t i, const std::string& name) const {
        const auto& rows = rows_[i];
        const auto row = std::find_if(rows.begin(), rows.end(), [&](const MeasureRow& r) { return r.name == name; });
        if (row == rows.end() || has_errors(columns_[i].measures.findings)) return {"–", setting::figure};
        const bool one_for_both = row->in(other()) == row->in(ruler());  // a plain number
        return TableCell(row->in(ruler()), setting::figure).add(one_for_both ? "" : row->in(other()), setting::other);
    }

    Sheet& sheet_;
    const std::vector<SizeColumn>& columns_;
    PieceRows which_;
    const texts::Passages& words_;
    const std::string& continued_;
    Rect area_;
    std::vector<std::vector<MeasureRow>> rows_;
};

}  // namespace

std::vector<Reason> reasons_by_rule(const Findings& findings, bool errors) {
    std::vector<Reason> all;
    for (const Finding& finding : findings) {
        if ((finding.level == Level::error) != errors) continue;
        const std::string sentence = real_fractions(finding.message + (finding.mend.empty() ? "" : " " + finding.mend));
        if (std::none_of(all.begin(), all.end(), [&](const Reason& r) { return r.sentence == sentence; })) all.push_back({finding.rule, sentence});
    }
    return all;
}

std::vector<std::string> reasons(const Findings& findings, bool errors) {
    std::vector<std::string> sentences;
    for (const Reason& reason : reasons_by_rule(findings, errors)) sentences.push_back(reason.sentence);
    return sentences;
}

Length height_of_note(const Sheet& sheet, const std::string& words) {
    const auto lines = wrapped(sheet.context().fonts, setting::remark, sheet.content().width(), words);
    return above_note + setting::remark.leading * static_cast<double>(lines.size());
}

void note_below(Sheet& sheet, const std::string& words, const std::string& continued) {
    if (sheet.left_over() < height_of_note(sheet, words)) sheet.new_page(continued);
    sheet.down(above_note);
    sheet.down(sheet.canvas().paragraph({sheet.content().left, sheet.top()}, sheet.content().width(), words, setting::remark));
}

void draw_piece_table(Sheet& sheet, const std::vector<SizeColumn>& columns, PieceRows rows, const std::string& heading,
                      const std::vector<std::string>& introduction, const RowTitles& titles, const texts::Passages& words, const std::string& continued) {
    if (!columns.empty()) PieceTable(sheet, columns, rows, titles, words, continued).draw(heading, introduction);
}

void draw_reasons(Sheet& sheet, const std::vector<SizeColumn>& columns, const texts::Passages& words, const std::string& continued) {
    for (const SizeColumn& column : columns)
        for (const bool errors : {true, false})
            for (const std::string& reason : reasons(column.measures.findings, errors)) {
                const auto model = texts::Model().text("print", words.line(name_of(column.print))).text("size", column.label).text("reason", reason);
                note_below(sheet, words.line("note-on-size", model), continued);
            }
}

}  // namespace qw::compose
