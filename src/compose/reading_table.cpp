// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/reading_table.h"

#include "compose/fractions.h"
#include "compose/piece_table.h"
#include "compose/print_readings.h"
#include "compose/ruled_table.h"
#include "compose/size_table.h"

#include <algorithm>

namespace qw::compose {

namespace {

const Length percent_width = Length::mm(15), scale_width = Length::mm(11), reading_gap = Length::mm(4), most_reading_gap = Length::mm(13);
const Length room_for_notes = Length::mm(11);

class ReadingTable {
public:
    ReadingTable(Sheet& sheet, const std::vector<SizeColumn>& columns, const texts::Passages& words, const std::string& page_title)
        : sheet_(sheet), words_(words), page_title_(page_title), paper_(sheet.context().paper) {
        for (const Print print : sheet.context().manifest.prints) {
            std::vector<const SizeColumn*> sizes;
            for (const SizeColumn& column : columns)
                if (column.print == print) sizes.push_back(&column);
            if (!sizes.empty()) prints_.push_back(sizes);
        }
    }

    void draw(const std::vector<std::string>& introduction) {
        const std::size_t beside = prints_beside();
        for (std::size_t from = 0; from < prints_.size(); from += beside)
            table(from, std::min(prints_.size(), from + beside), from == 0 ? introduction : std::vector<std::string>{});
        if (marked_) note_below(sheet_, words_.line("measure-alike"), page_title_);
        if (left_out_) note_below(sheet_, words_.line("measure-left-out"), page_title_);
    }

private:
    UnitSystem own() const { return paper_.ruler; }
    UnitSystem other() const { return own() == UnitSystem::metric ? UnitSystem::us : UnitSystem::metric; }

    std::string figure(Length length, UnitSystem system) const {
        return real_fractions(show(round_to_step(length, ruler_mark(system), Rounding::nearest), system));
    }
    std::string bare(Length length) const {
        const std::string shown = figure(length, own());
        return shown.substr(0, shown.rfind(' '));
    }

    /// Of one size, by the buyer's per cent; sizes of all prints go by the same ones.
    Length gauge(const SizeColumn& column) const { return gauge_length(paper_) * (column.percent / 100); }

    template <typename Value>
    bool like_a_neighbour(const std::vector<const SizeColumn*>& sizes, std::size_t i, Value value) const {
        const auto alike = [&](std::size_t k) { return read_alike(value(*sizes[i]), value(*sizes[k]), own()); };
        return (i > 0 && alike(i - 1)) || (i + 1 < sizes.size() && alike(i + 1));
    }
    template <typename Value>
    std::string marked(const std::vector<const SizeColumn*>& sizes, std::size_t i, Value value) {
        const bool mark = like_a_neighbour(sizes, i, value);
        marked_ = marked_ || mark;
        return bare(value(*sizes[i])) + (mark ? words_.line("measure-mark") : "");
    }

    std::string page(const std::vector<const SizeColumn*>& sizes, std::size_t i) {
        if (has_errors(sizes[i]->measures.findings)) {
            left_out_ = true;
            return "–";
        }
        const std::string width = marked(sizes, i, [](const SizeColumn& c) { return c.measures.conditions.page.width; });
        return width + " × " + marked(sizes, i, [](const SizeColumn& c) { return c.measures.conditions.page.height; });
    }

    Length widest_reading(UnitSystem system, const Setting& setting) const {
        Length widest = Length::mm(12);
        for (const SizeColumn* column : prints_.front()) widest = max(widest, sheet_.canvas().width(setting, figure(gauge(*column), system)));
        return widest;
    }
    Length widest_page() {
        Length widest = Length::mm(20);
        for (const auto& sizes : prints_)
            for (std::size_t i = 0; i < sizes.size(); ++i) widest = max(widest, sheet_.canvas().width(setting::table_figure, page(sizes, i)));
        return widest;
    }

    std::vector<Length> widths(std::size_t prints, bool with_other) {
        std::vector<Length> all{percent_width, widest_reading(own(), setting::table_figure)};
        if (with_other) all.push_back(widest_reading(other(), setting::other));
        const Length page = widest_page();
        for (std::size_t i = 0; i < prints; ++i) all.insert(all.end(), {page, scale_width});
        return all;
    }
    Length spare(const std::vector<Length>& columns) const {
        Length left = sheet_.content().width();
        for (const Length width : columns) left -= width;
        return left;
    }
    bool fits(const std::vector<Length>& columns) const { return spare(columns) >= reading_gap * static_cast<double>(columns.size() - 1); }

    std::size_t prints_beside() {
        std::size_t prints = prints_.size();
        while (prints > 1 && !fits(widths(prints, true))) --prints;
        return prints;
    }

    void table(std::size_t from, std::size_t to, const std::vector<std::string>& introduction) {
        bool with_other = true;
        std::vector<Length> columns = widths(to - from, with_other);
        if (!fits(columns)) columns = widths(to - from, with_other = false);
        RuledTable table(sheet_, columns, min(most_reading_gap, spare(columns) / static_cast<double>(columns.size() - 1)));
        table.airy(Length::mm(0.8), Length::mm(1.9));
        table.introduce("", introduction);
        table.keep_free(room_for_notes);
        table.head(head(from, to, with_other));
        const auto& sizes = prints_.at(from);
        for (std::size_t i = 0; i < sizes.size(); ++i) table.row(row(from, to, i, with_other), steps_change(sizes, i) ? weight::line : weight::hair);
        table.draw(page_title_);
        sheet_.down(Length::mm(2));
    }

    std::vector<TableCell> head(std::size_t from, std::size_t to, bool with_other) const {
        const auto unit = [&](UnitSystem system) { return words_.line(system == UnitSystem::metric ? "unit-metric" : "unit-us"); };
        std::vector<TableCell> cells{{words_.line("size-head"), setting::small_strong},
                                     TableCell(words_.line("measure-gauge-head"), setting::small_strong).add(unit(own()), setting::small)};
        if (with_other) cells.push_back({unit(other()), setting::small});
        for (std::size_t p = from; p < to; ++p) {
            const auto model = texts::Model().text("print", words_.line(name_of(prints_[p].front()->print)));
            cells.push_back(TableCell(words_.line("measure-page-head", model), setting::small_strong).add(unit(own()), setting::small));
            cells.push_back({words_.line("measure-scale-head"), setting::small});
        }
        return cells;
    }

    std::vector<TableCell> row(std::size_t from, std::size_t to, std::size_t i, bool with_other) {
        const auto& sizes = prints_.at(from);
        std::vector<TableCell> cells{{sizes[i]->label, setting::table_figure},
                                     {marked(sizes, i, [this](const SizeColumn& c) { return gauge(c); }), setting::table_figure}};
        if (with_other) cells.push_back({figure(gauge(*sizes[i]), other()), setting::other});
        for (std::size_t p = from; p < to; ++p) {
            if (i >= prints_[p].size()) continue;
            cells.push_back({page(prints_[p], i), setting::table_figure});
            cells.push_back({scale_text(*prints_[p][i]), setting::small});
        }
        return cells;
    }

    Sheet& sheet_;
    const texts::Passages& words_;
    const std::string& page_title_;
    const Paper& paper_;
    std::vector<std::vector<const SizeColumn*>> prints_;  ///< the sizes of each print, in the order in which they are shown
    bool marked_ = false, left_out_ = false;
};

}  // namespace

void draw_reading_table(Sheet& sheet, const std::vector<SizeColumn>& columns, const std::vector<std::string>& introduction, const texts::Passages& words,
                        const std::string& page_title) {
    if (!columns.empty()) ReadingTable(sheet, columns, words, page_title).draw(introduction);
}

}  // namespace qw::compose
