// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/piece_table.h"

#include "compose/fractions.h"

#include <algorithm>

namespace qw::compose {

namespace {

const Length count_width = Length::mm(10), label_width = Length::mm(80), column_gap = Length::mm(4);
const Length row_height = Length::mm(9.8), head_height = Length::mm(18), use_leading = Length::points(10.5);
// Where the lines of a row stand, below its upper rule.
const Length first_line = Length::mm(4.8), second_line = Length::mm(8.7);

class PieceTable {
public:
    PieceTable(Sheet& sheet, const std::vector<SizeColumn>& columns, const RowTitles& titles, const texts::Passages& words, const std::string& how_to)
        : sheet_(sheet), columns_(columns), words_(words), how_to_(how_to), area_(sheet.content()) {
        for (const SizeColumn& column : columns_) rows_.push_back(rows_of(column.measures, titles));
    }

    void draw() {
        head();
        MeasureRow::Kind before = rows_.front().front().kind;
        for (const MeasureRow& row : rows_.front()) {
            if (row.kind == MeasureRow::Kind::page) continue;
            rule(row.kind == before ? weight::hair : weight::line);
            before = row.kind;
            draw(row);
        }
        rule(weight::line);
        for (const SizeColumn& column : columns_) explain(column);
    }

private:
    Length column_width() const { return (area_.width() - label_width) / static_cast<double>(columns_.size()); }
    Length column_left(std::size_t i) const { return area_.left + label_width + column_width() * static_cast<double>(i); }
    UnitSystem ruler() const { return columns_.front().measures.ruler; }
    UnitSystem other() const { return ruler() == UnitSystem::metric ? UnitSystem::us : UnitSystem::metric; }

    void rule(Length weight) { sheet_.canvas().line({area_.left, sheet_.top()}, {area_.right, sheet_.top()}, weight); }

    Length label_room() const { return label_width - count_width - column_gap; }

    /// What the sheet is for at the left, the prints at the right, on the rule that begins the rows.
    void head() {
        sheet_.canvas().paragraph({area_.left, sheet_.top()}, label_width - column_gap * 3, how_to_, setting::body);
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            const SizeColumn& column = columns_[i];
            texts::Model model;
            model.text("print", words_.line(name_of(column.print))).text("size", column.label);
            model.text("page", rows_[i].front().in(ruler()));
            const Length x = column_left(i), width = column_width() - column_gap;
            sheet_.canvas().words_within({x, sheet_.top() - head_height + Length::mm(6)}, width, words_.line("column-head", model), setting::label);
            sheet_.canvas().words_within({x, sheet_.top() - head_height + Length::mm(2)}, width, words_.line("column-page", model), setting::small);
        }
        sheet_.down(head_height);
    }

    void draw(const MeasureRow& row) {
        Canvas& canvas = sheet_.canvas();
        const Length y1 = sheet_.top() - first_line, y2 = sheet_.top() - second_line, x = area_.left + count_width;
        canvas.words({area_.left, y1}, row.count, setting::label);
        canvas.words_within({x, y1}, label_room(), row.title, setting::label);
        const auto use = wrapped(canvas.fonts(), setting::small, label_room(), row.use);
        for (std::size_t n = 0; n < use.size(); ++n) canvas.words({x, y2 - use_leading * static_cast<double>(n)}, use[n], setting::small);
        for (std::size_t i = 0; i < columns_.size(); ++i) cell(i, row.name, y1, y2);
        sheet_.down(row_height + use_leading * static_cast<double>(std::max<std::size_t>(use.size(), 1) - 1));
    }

    void cell(std::size_t i, const std::string& name, Length y1, Length y2) {
        const auto& rows = rows_[i];
        const auto row = std::find_if(rows.begin(), rows.end(), [&](const MeasureRow& r) { return r.name == name; });
        const bool shown = row != rows.end() && !has_errors(columns_[i].measures.findings);
        sheet_.canvas().words({column_left(i), y1}, shown ? row->in(ruler()) : "–", setting::figure);
        if (shown) sheet_.canvas().words({column_left(i), y2}, row->in(other()), setting::other);
    }

    void explain(const SizeColumn& column) {
        for (const bool errors : {true, false})
            for (const std::string& reason : reasons(column.measures.findings, errors)) {
                const auto model = texts::Model().text("print", words_.line(name_of(column.print))).text("size", column.label).text("reason", reason);
                sheet_.down(Length::mm(1));
                sheet_.down(sheet_.canvas().paragraph({area_.left, sheet_.top()}, area_.width(), words_.line("note-on-size", model), setting::remark));
            }
    }

    Sheet& sheet_;
    const std::vector<SizeColumn>& columns_;
    const texts::Passages& words_;
    const std::string& how_to_;
    Rect area_;
    std::vector<std::vector<MeasureRow>> rows_;
};

}  // namespace

std::vector<std::string> reasons(const Findings& findings, bool errors) {
    std::vector<std::string> sentences;
    for (const Finding& finding : findings) {
        if ((finding.level == Level::error) != errors) continue;
        const std::string sentence = real_fractions(finding.message + (finding.mend.empty() ? "" : " " + finding.mend));
        if (std::find(sentences.begin(), sentences.end(), sentence) == sentences.end()) sentences.push_back(sentence);
    }
    return sentences;
}

void draw_piece_table(Sheet& sheet, const std::vector<SizeColumn>& columns, const RowTitles& titles, const texts::Passages& words,
                      const std::string& how_to) {
    if (!columns.empty()) PieceTable(sheet, columns, titles, words, how_to).draw();
}

}  // namespace qw::compose
