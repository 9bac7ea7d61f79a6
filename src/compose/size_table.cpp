// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/size_table.h"

#include "compose/piece_table.h"

#include <algorithm>
#include <cstdio>
#include <map>

namespace qw::compose {

namespace {

const Length label_width = Length::mm(24), least_gap = Length::mm(3.5), most_gap = Length::mm(18);
const Length head_height = Length::mm(10), band_gap = Length::mm(4.5);
const Length least_row = Length::mm(7.8), most_row = Length::mm(9.4);

/// A thing that changes with the size: a column of the table.
struct Thing {
    std::string name, count, title;
    Length width;                     ///< of its widest figure
};

/// Sizes that are shown in one row: one, or neighbours that fail for the same reasons.
struct Row {
    std::vector<std::size_t> sizes;
    std::vector<std::string> why_not;  ///< empty: the size is shown
};

class SizeTable {
public:
    SizeTable(Sheet& sheet, const std::vector<SizeColumn>& columns, const RowTitles& titles, const texts::Passages& words, const std::string& continued)
        : sheet_(sheet), columns_(columns), words_(words), continued_(continued), area_(sheet.content()) {
        for (const SizeColumn& column : columns_) values_.push_back(rows_of(column.measures, titles));
        gather_rows();
        gather_things();
    }

    void draw() {
        const auto bands = balanced_bands();
        choose_row_height(bands.size());
        for (const auto& [from, to] : bands) {
            if (sheet_.left_over() < band_height() - band_gap) sheet_.new_page(continued_);
            band(from, to);
        }
        notes();
    }

private:
    UnitSystem ruler() const { return columns_.front().measures.ruler; }
    UnitSystem other() const { return ruler() == UnitSystem::metric ? UnitSystem::us : UnitSystem::metric; }

    void gather_rows() {
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            const auto why_not = reasons(columns_[i].measures.findings, true);
            if (!rows_.empty() && !why_not.empty() && rows_.back().why_not == why_not) rows_.back().sizes.push_back(i);
            else rows_.push_back({{i}, why_not});
        }
    }

    const MeasureRow* value(std::size_t size, const std::string& name) const {
        const auto found = std::find_if(values_[size].begin(), values_[size].end(), [&](const MeasureRow& r) { return r.name == name; });
        return found == values_[size].end() ? nullptr : &*found;
    }

    void gather_things() {
        for (const MeasureRow& row : values_.front()) {
            if (row.kind == MeasureRow::Kind::item) continue;  // bought-in things are the same at every size
            Thing thing{row.name, row.count, row.title, Length::mm(15)};
            for (const Row& shown : rows_)
                if (shown.why_not.empty())
                    if (const MeasureRow* v = value(shown.sizes.front(), row.name))
                        thing.width = max(thing.width, max(sheet_.canvas().width(setting::table_figure, v->figures(ruler())),
                                                           sheet_.canvas().width(setting::other, v->in(other()))));
            things_.push_back(thing);
        }
    }

    /// As many things as fit beside the label, up to `most`.
    std::size_t band_end(std::size_t from, std::size_t most) const {
        Length used = label_width;
        std::size_t to = from;
        while (to < things_.size() && to - from < most && (to == from || used + least_gap + things_[to].width <= area_.width())) {
            used += (to == from ? Length() : least_gap) + things_[to].width;
            ++to;
        }
        return to;
    }

    std::vector<std::pair<std::size_t, std::size_t>> bands_of(std::size_t most) const {
        std::vector<std::pair<std::size_t, std::size_t>> bands;
        for (std::size_t from = 0; from < things_.size(); from = bands.back().second) bands.emplace_back(from, band_end(from, most));
        return bands;
    }
    /// No more bands than are needed, and none of them much shorter than another.
    std::vector<std::pair<std::size_t, std::size_t>> balanced_bands() const {
        auto fewest = bands_of(things_.size());
        if (fewest.empty()) return fewest;
        auto balanced = bands_of((things_.size() + fewest.size() - 1) / fewest.size());
        return balanced.size() == fewest.size() ? balanced : fewest;
    }

    Length gap(std::size_t from, std::size_t to) const {
        Length used = label_width;
        for (std::size_t i = from; i < to; ++i) used += things_[i].width;
        return to - from < 2 ? least_gap : min(most_gap, (area_.width() - used) / static_cast<double>(to - from - 1));
    }

    Length row_height_of(const Row& row) const {
        if (row.why_not.empty()) return row_height_;
        Length height = Length::mm(3);
        for (const std::string& why : row.why_not) height += setting::small.leading * static_cast<double>(explained(why).size());
        return max(row_height_, height);
    }
    std::vector<std::string> explained(const std::string& why) const {
        return wrapped(sheet_.context().fonts, setting::small, area_.width() - label_width, why);
    }
    Length band_height() const {
        Length height = head_height + band_gap;
        for (const Row& row : rows_) height += row_height_of(row);
        return height;
    }
    /// As roomy as lets all bands stand on this page.
    void choose_row_height(std::size_t bands) {
        for (row_height_ = most_row; row_height_ > least_row; row_height_ -= Length::mm(0.05))
            if (band_height() * static_cast<double>(bands) - band_gap <= sheet_.left_over()) return;
    }
    // The figure and the one for the other ruler keep together; what is left is around them.
    Length first_line() const { return second_line() - Length::mm(3.25); }
    Length second_line() const { return row_height_ * 0.5 + Length::mm(3); }

    void rule(Length weight) { sheet_.canvas().line({area_.left, sheet_.top()}, {area_.right, sheet_.top()}, weight); }

    void band(std::size_t from, std::size_t to) {
        head(from, to);
        for (const Row& row : rows_) {
            rule(&row == &rows_.front() ? weight::line : weight::hair);
            if (row.why_not.empty()) figures(row, from, to);
            else explanation(row);
            sheet_.down(row_height_of(row));
        }
        rule(weight::line);
        sheet_.down(band_gap);
    }

    void head(std::size_t from, std::size_t to) {
        Length x = area_.left + label_width;
        const Length y = sheet_.top() - head_height + Length::mm(5), unit_y = y - Length::mm(3.5);
        sheet_.canvas().words({area_.left, y}, words_.line("size-head"), setting::small_strong);
        for (std::size_t i = from; i < to; ++i) {
            const std::string title = (things_[i].count.empty() ? "" : things_[i].count + " ") + things_[i].title;
            const Length next = things_[i].width + gap(from, to);
            const Length room = min(next - Length::mm(2), area_.right - x);
            const auto lines = wrapped(sheet_.context().fonts, setting::small_strong, room, title);
            for (std::size_t n = 0; n < lines.size() && n < 2; ++n)
                sheet_.canvas().words({x, y + setting::small_strong.leading * static_cast<double>(std::min<std::size_t>(lines.size(), 2) - 1 - n)},
                                      lines[n], setting::small_strong);
            sheet_.canvas().words({x, unit_y}, words_.line(ruler() == UnitSystem::metric ? "unit-metric" : "unit-us"), setting::small);
            x += next;
        }
        sheet_.down(head_height);
    }

    void label(const Row& row) {
        const SizeColumn& first = columns_[row.sizes.front()];
        std::string words = first.label;
        if (row.sizes.size() > 1)
            words = words_.line("range", texts::Model().text("from", first.label).text("to", columns_[row.sizes.back()].label));
        sheet_.canvas().words({area_.left, sheet_.top() - first_line()}, words, row.sizes.size() > 1 ? setting::small_strong : setting::table_figure);
        if (row.sizes.size() > 1) return;
        char scale[16];
        std::snprintf(scale, sizeof scale, "%.3f", first.measures.conditions.scale);
        sheet_.canvas().words({area_.left, sheet_.top() - second_line()}, words_.line("size-scale", texts::Model().text("scale", scale)), setting::small);
    }

    void figures(const Row& row, std::size_t from, std::size_t to) {
        label(row);
        Length x = area_.left + label_width;
        for (std::size_t i = from; i < to; ++i) {
            const MeasureRow* v = value(row.sizes.front(), things_[i].name);
            sheet_.canvas().words({x, sheet_.top() - first_line()}, v ? v->figures(ruler()) : "–", setting::table_figure);
            if (v) sheet_.canvas().words({x, sheet_.top() - second_line()}, v->in(other()), setting::other);
            x += things_[i].width + gap(from, to);
        }
    }

    void explanation(const Row& row) {
        label(row);
        Length y = sheet_.top() - Length::mm(1.5);
        for (const std::string& why : row.why_not)
            y -= sheet_.canvas().paragraph({area_.left + label_width, y}, area_.width() - label_width, why, setting::small);
    }

    /// What accompanies sizes without keeping them from being shown, each said once with the sizes it holds for.
    void notes() {
        std::vector<std::pair<std::string, std::vector<std::string>>> said;
        for (const Row& row : rows_)
            if (row.why_not.empty())
                for (const std::string& reason : reasons(columns_[row.sizes.front()].measures.findings, false)) {
                    auto known = std::find_if(said.begin(), said.end(), [&](const auto& s) { return s.first == reason; });
                    if (known == said.end()) known = said.insert(said.end(), {reason, {}});
                    known->second.push_back(columns_[row.sizes.front()].label);
                }
        for (const auto& [reason, labels] : said) note(reason, labels);
    }

    void note(const std::string& reason, const std::vector<std::string>& labels) {
        std::string sizes;
        for (const std::string& label : labels) sizes += (sizes.empty() ? "" : ", ") + label;
        const auto model = texts::Model().text("print", words_.line(name_of(columns_.front().print))).text("size", sizes).text("reason", reason);
        const std::string words = words_.line("note-on-size", model);
        const Length height = setting::remark.leading * static_cast<double>(wrapped(sheet_.context().fonts, setting::remark, area_.width(), words).size());
        if (sheet_.left_over() < height) sheet_.new_page(continued_);
        sheet_.down(sheet_.canvas().paragraph({area_.left, sheet_.top()}, area_.width(), words, setting::remark) + Length::mm(1));
    }

    Sheet& sheet_;
    const std::vector<SizeColumn>& columns_;
    const texts::Passages& words_;
    const std::string& continued_;
    Rect area_;
    std::vector<std::vector<MeasureRow>> values_;
    std::vector<Row> rows_;
    std::vector<Thing> things_;
    Length row_height_ = most_row;
};

}  // namespace

void draw_size_table(Sheet& sheet, const std::vector<SizeColumn>& columns, const RowTitles& titles, const texts::Passages& words,
                     const std::string& continued) {
    if (!columns.empty()) SizeTable(sheet, columns, titles, words, continued).draw();
}

}  // namespace qw::compose
