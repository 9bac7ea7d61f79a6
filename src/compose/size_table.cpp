// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/size_table.h"

#include "compose/fractions.h"
#include "compose/piece_table.h"
#include "compose/print_readings.h"
#include "compose/ruled_table.h"
#include "compose/size_rows.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <sstream>

namespace qw::compose {

namespace {

const Length usual_label = Length::mm(22), usual_gap = Length::mm(3.5), small_gap = Length::mm(2.5), most_gap = Length::mm(16), least_thing = Length::mm(14);
const Length least_air = Length::mm(0.7), most_air = Length::mm(2.1), figures_apart = Length::mm(0.35), between_bands = Length::mm(6);
/// A page with fewer sizes on it, each with all bands, is no help in finding one.
constexpr std::size_t fewest_rows = 3;

/// Neighbours among rows or columns.
struct Span {
    std::size_t from = 0, to = 0;
};

/// A thing that changes with the size: a column of the table.
struct Thing {
    std::string name, count, title;
    Length width;                     ///< of its widest figure
};

class SizeTable {
public:
    SizeTable(Sheet& sheet, const std::vector<SizeColumn>& columns, const RowTitles& titles, const texts::Passages& words)
        : sheet_(sheet), columns_(columns), words_(words), area_(sheet.content()), by_the_line_(rows_tell_the_line(sheet.context().paper)),
          least_gap_(by_the_line_ ? small_gap : usual_gap) {
        for (const SizeColumn& column : columns_) values_.push_back(rows_of(column.measures, titles));
        rows_ = size_rows(columns_);
        label_width_ = by_the_line_ ? widest_label() : usual_label;
        gather_things();
        bands_ = balanced_bands();
        for (const Span& band : bands_) tables_.push_back(table(band));
        notes_ = size_notes(columns_, rows_, words_);
    }

    void draw() {
        const std::size_t pages = pages_with_all_bands();
        for (std::size_t n = 0; n < pages; ++n) {
            const Span rows = rows_of_page(n, pages);
            sheet_.new_page(title(rows));
            whole(rows);
        }
        if (pages == 0) band_by_band();
        for (const std::string& note : notes_) note_below(sheet_, note, title({0, rows_.size()}));
    }

private:
    UnitSystem ruler() const { return columns_.front().measures.ruler; }
    UnitSystem other() const { return ruler() == UnitSystem::metric ? UnitSystem::us : UnitSystem::metric; }

    const MeasureRow* value(std::size_t size, const std::string& name) const {
        const auto found = std::find_if(values_[size].begin(), values_[size].end(), [&](const MeasureRow& r) { return r.name == name; });
        return found == values_[size].end() ? nullptr : &*found;
    }

    void gather_things() {
        for (const MeasureRow& row : values_.front()) {
            if (row.kind == MeasureRow::Kind::item) continue;  // bought-in things are the same at every size
            if (row.kind == MeasureRow::Kind::figure && !changes(row.name)) continue;
            Thing thing{row.name, row.count, row.title, max(least_thing, longest_word(row))};
            for (const SizeRow& shown : rows_)
                if (shown.why_not.empty())
                    if (const MeasureRow* v = value(shown.sizes.front(), row.name))
                        thing.width = max(thing.width, max(sheet_.canvas().width(setting::table_figure, v->figures(ruler())),
                                                           sheet_.canvas().width(setting::other, v->in(other()))));
            // More holes than the sheet is wide for are set in two lines.
            thing.width = min(thing.width, area_.width() - label_width_ - least_gap_);
            things_.push_back(thing);
        }
        // On small paper, what has a band to itself must not part those that share one.
        const auto may_share = [&](const Thing& t) { return t.width <= (area_.width() - label_width_) * 0.6; };
        if (by_the_line_) std::stable_partition(things_.begin(), things_.end(), may_share);
    }

    Length widest_label() const {
        Length widest;
        const auto take = [&](const TableCell& cell) {
            for (const TableCell::Part& part : cell.parts) widest = max(widest, sheet_.canvas().width(part.setting, part.words));
        };
        take(head_of_labels());
        for (const SizeRow& row : rows_) take(label(row));
        return widest + Length::mm(0.1);
    }

    /// A title is wrapped, but not inside a word.
    Length longest_word(const MeasureRow& row) const {
        std::istringstream words(row.title);
        Length longest;
        for (std::string word; words >> word;) {
            if (longest == Length() && !row.count.empty()) word = row.count + " " + word;
            longest = max(longest, sheet_.canvas().width(setting::small_strong, word));
        }
        return longest + Length::mm(0.1);
    }

    /// What is the same at all sizes stands with full size only.
    bool changes(const std::string& name) const {
        const MeasureRow* first = nullptr;
        for (const SizeRow& row : rows_) {
            const MeasureRow* v = row.why_not.empty() ? value(row.sizes.front(), name) : nullptr;
            if (v && first && v->in(ruler()) != first->in(ruler())) return true;
            if (v) first = v;
        }
        return false;
    }

    /// As many things as fit beside the label, up to `most`.
    std::size_t band_end(std::size_t from, std::size_t most) const {
        Length used = label_width_;
        std::size_t to = from;
        while (to < things_.size() && to - from < most && (to == from || used + least_gap_ + things_[to].width <= area_.width())) {
            used += least_gap_ + things_[to].width;
            ++to;
        }
        return to;
    }

    std::vector<Span> bands_of(std::size_t most) const {
        std::vector<Span> bands;
        for (std::size_t from = 0; from < things_.size(); from = bands.back().to) bands.push_back({from, band_end(from, most)});
        return bands;
    }
    /// No more bands than are needed, and none of them much shorter than another.
    std::vector<Span> balanced_bands() const {
        auto fewest = bands_of(things_.size());
        if (fewest.empty()) return fewest;
        auto balanced = bands_of((things_.size() + fewest.size() - 1) / fewest.size());
        return balanced.size() == fewest.size() ? balanced : fewest;
    }

    /// What is left over stands between the columns.
    Length gap(std::size_t from, std::size_t to) const {
        Length used = label_width_;
        for (std::size_t i = from; i < to; ++i) used += things_[i].width;
        return min(most_gap, (area_.width() - used) / static_cast<double>(to - from));
    }

    /// The columns of one band.
    RuledTable table(const Span& band) const {
        std::vector<Length> widths{label_width_};
        for (std::size_t i = band.from; i < band.to; ++i) widths.push_back(things_[i].width);
        RuledTable table(sheet_, widths, gap(band.from, band.to), figures_apart);
        table.airy(least_air, most_air);
        table.head(head(band.from, band.to));
        for (std::size_t i = 0; i < rows_.size(); ++i) table.row(cells(rows_[i], band.from, band.to), step_changes(i) ? weight::line : weight::hair);
        return table;
    }

    /// Of all bands on one page.
    Length least_height(const Span& rows) const {
        Length height = between_bands * static_cast<double>(bands_.size() - 1);
        for (const RuledTable& band : tables_) {
            height += band.head_height();
            for (std::size_t i = rows.from; i < rows.to; ++i) height += band.row_height(i);
        }
        return height;
    }

    /// How many pages it takes to show some sizes on each, with all that is to be known of them, and the notes below the
    /// last, or else on a page of their own; 0 when a page would hold too few sizes.
    std::size_t pages_with_all_bands() const {
        for (const Length below_last : {notes_height(), Length()})
            for (std::size_t pages = 1; pages == 1 || pages * fewest_rows <= rows_.size(); ++pages)
                if (fit_on(pages, below_last)) return pages;
        return 0;
    }

    /// The last page, which has the notes, has the fewest.
    Span rows_of_page(std::size_t page, std::size_t pages) const {
        const auto before = [&](std::size_t n) { return (rows_.size() * n + pages - 1) / pages; };
        return {before(page), before(page + 1)};
    }

    bool fit_on(std::size_t pages, Length below_last) const {
        const Length room = room_of_further_page(sheet_.context(), title({0, rows_.size()}));
        for (std::size_t n = 0; n < pages; ++n)
            if (least_height(rows_of_page(n, pages)) + (n + 1 == pages ? below_last : Length()) > room) return false;
        return true;
    }

    /// As roomy as lets all bands stand on the page.
    void whole(const Span& rows) {
        const double lines = static_cast<double>((rows.to - rows.from) * bands_.size());
        const Length below = rows.to == rows_.size() ? notes_height() + Length::mm(0.1) : Length();
        const Length spare = sheet_.left_over() - least_height(rows) - below;
        const Length air = max(least_air, min(most_air, least_air + spare / (2 * lines)));
        for (RuledTable& band : tables_) {
            if (&band != &tables_.front()) sheet_.down(between_bands);
            band.draw_rows(rows.from, rows.to, air);
        }
    }

    void band_by_band() {
        const Span rows{0, rows_.size()};
        for (RuledTable& band : tables_) {
            sheet_.new_page(title(rows));
            if (&band == &tables_.back()) band.keep_free(notes_height());
            band.draw(title(rows));
        }
    }

    std::string title(const Span& rows) const {
        const std::string &first = columns_[rows_[rows.from].sizes.front()].label, &last = columns_[rows_[rows.to - 1].sizes.back()].label;
        return words_.line("sizes-" + name_of(columns_.front().print), texts::Model().text("sizes", first == last ? first : size_range(words_, first, last)));
    }

    /// Where sizes begin to follow each other in other steps, a stronger line helps to find the row.
    bool step_changes(std::size_t row) const {
        std::vector<const SizeColumn*> sizes;
        for (const SizeColumn& column : columns_) sizes.push_back(&column);
        return steps_change(sizes, rows_[row].sizes.front());
    }

    TableCell head_of_labels() const {
        TableCell cell(words_.line("size-head"), setting::small_strong);
        const std::string unit = words_.line(ruler() == UnitSystem::metric ? "unit-metric" : "unit-us");
        return by_the_line_ ? cell.add(words_.line("size-line-head", texts::Model().text("unit", unit)), setting::small) : cell;
    }

    std::vector<TableCell> head(std::size_t from, std::size_t to) const {
        std::vector<TableCell> cells{head_of_labels()};
        for (std::size_t i = from; i < to; ++i) {
            const std::string title = (things_[i].count.empty() ? "" : things_[i].count + " ") + things_[i].title;
            cells.push_back(TableCell(title, setting::small_strong).add(unit_of(things_[i]), setting::small));
        }
        return cells;
    }

    /// Figures that are plain numbers have none.
    std::string unit_of(const Thing& thing) const {
        for (const SizeRow& row : rows_)
            if (const MeasureRow* v = row.why_not.empty() ? value(row.sizes.front(), thing.name) : nullptr)
                return v->figures(ruler()) == v->in(ruler()) ? "" : words_.line(ruler() == UnitSystem::metric ? "unit-metric" : "unit-us");
        return "";
    }

    std::vector<TableCell> cells(const SizeRow& row, std::size_t from, std::size_t to) const {
        std::vector<TableCell> all{label(row)};
        if (!row.why_not.empty()) {
            TableCell why;
            for (const Reason& reason : row.why_not)
                why.add(reason_at(words_, reason, row.in_other_figures, columns_[row.sizes.front()].label), setting::small);
            all.push_back(why.over_the_rest());
            return all;
        }
        for (std::size_t i = from; i < to; ++i) {
            const MeasureRow* v = value(row.sizes.front(), things_[i].name);
            if (!v) all.push_back({"–", setting::table_figure});
            else all.push_back(TableCell(v->figures(ruler()), setting::table_figure).add(v->in(ruler()) == v->in(other()) ? "" : v->in(other()), setting::other));
        }
        return all;
    }

    TableCell label(const SizeRow& row) const {
        const SizeColumn& first = columns_[row.sizes.front()];
        if (row.sizes.size() > 1) return {size_range(words_, first.label, columns_[row.sizes.back()].label), setting::small_strong};
        if (!row.why_not.empty()) return {first.label, setting::small_strong};
        const std::string reading = real_fractions(show(gauge_reading(first.measures.conditions.paper, first.percent), ruler()));
        const auto model = texts::Model().text("scale", scale_text(first)).text("line", reading.substr(0, reading.rfind(' ')));
        return TableCell(first.label, setting::table_figure).add(words_.line(by_the_line_ ? "size-line" : "size-scale", model), setting::small);
    }

    Length notes_height() const {
        Length height;
        for (const std::string& note : notes_) height += height_of_note(sheet_, note);
        return height;
    }

    Sheet& sheet_;
    const std::vector<SizeColumn>& columns_;
    const texts::Passages& words_;
    Rect area_;
    bool by_the_line_;                  ///< rows tell what the gauge reads, too
    Length least_gap_, label_width_;
    std::vector<std::vector<MeasureRow>> values_;
    std::vector<SizeRow> rows_;
    std::vector<Thing> things_;
    std::vector<Span> bands_;
    std::vector<RuledTable> tables_;    ///< of each band, with all rows
    std::vector<std::string> notes_;
};

}  // namespace

std::string scale_text(const SizeColumn& column) {
    char scale[16];
    std::snprintf(scale, sizeof scale, "%.3f", column.measures.conditions.scale);
    return scale;
}

bool rows_tell_the_line(const Paper& paper) { return SheetMargins::narrow(paper.size.as_portrait()); }

std::vector<SizeColumn> told_apart(const std::vector<SizeColumn>& columns, const Paper& paper) {
    const auto reading = [&](double percent) { return gauge_length(paper) * (percent / 100); };
    const auto alike = [&](double a, double b) { return read_alike(reading(a), reading(b), paper.ruler); };
    std::vector<SizeColumn> apart;
    for (const SizeColumn& column : columns) {
        const bool full = column.percent == 100, first = apart.empty() || apart.back().print != column.print;
        if (full || first || (!alike(column.percent, 100) && !alike(column.percent, apart.back().percent))) apart.push_back(column);
    }
    return apart;
}

bool steps_change(const std::vector<const SizeColumn*>& sizes, std::size_t at) {
    if (at < 2) return false;
    const double before = sizes[at - 2]->percent - sizes[at - 1]->percent, after = sizes[at - 1]->percent - sizes[at]->percent;
    return std::abs(before - after) > 1e-9;
}

void draw_size_table(Sheet& sheet, const std::vector<SizeColumn>& columns, const RowTitles& titles, const texts::Passages& words) {
    if (!columns.empty()) SizeTable(sheet, columns, titles, words).draw();
}

}  // namespace qw::compose
