// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/own_page_table.h"

#include "base/words.h"
#include "compose/fractions.h"
#include "compose/ruled_table.h"

#include <algorithm>

namespace qw::compose {

namespace {

/// What one field says, in either unit system.
struct OwnPageText {
    std::string metric, us;
    friend bool operator==(const OwnPageText&, const OwnPageText&) = default;
};

struct OwnPageLine {
    std::string title, rounding;
    std::vector<OwnPageText> fields;   ///< width and height, or a length alone
    friend bool operator==(const OwnPageLine&, const OwnPageLine&) = default;
};

struct OwnPageTable {
    std::vector<Print> prints;
    std::vector<OwnPageLine> lines;
};

class OwnPageTables {
public:
    OwnPageTables(Sheet& sheet, const texts::Passages& words) : sheet_(sheet), words_(words), ruler_(sheet.context().paper.ruler) {}

    void add(const std::vector<SizeColumn>& columns, Print print) {
        std::vector<SizeColumn> own;
        std::copy_if(columns.begin(), columns.end(), std::back_inserter(own), [&](const SizeColumn& c) { return c.print == print; });
        const auto rows = from_own_page(own);
        if (std::none_of(rows.begin(), rows.end(), [](const OwnPageRow& r) { return r.width || r.height; })) return;
        std::vector<OwnPageLine> lines;
        for (const OwnPageRow& row : rows) lines.push_back(line_of(row));
        const auto same = std::find_if(tables_.begin(), tables_.end(), [&](const OwnPageTable& t) { return t.lines == lines; });
        if (same != tables_.end()) same->prints.push_back(print);
        else tables_.push_back({{print}, lines});
    }

    void draw() {
        for (const OwnPageTable& table : tables_) draw(table, &table == &tables_.front());
    }

private:
    OwnPageLine line_of(const OwnPageRow& row) const {
        OwnPageLine line{row.title, rounding_of(row), {text_of(row.width, row)}};
        if (row.is_piece) line.fields.push_back(text_of(row.height, row));
        return line;
    }

    std::string rounding_of(const OwnPageRow& row) const {
        const auto model = texts::Model().text("step", real_fractions(show(row.rounding.step.in(ruler_), ruler_)));
        return words_.line("own-page-round-" + way_of(row), model);
    }
    static std::string way_of(const OwnPageRow& row) {
        return row.rounding.way == Rounding::up ? "up" : row.rounding.way == Rounding::down ? "down" : "nearest";
    }

    OwnPageText text_of(const std::optional<PageForm>& form, const OwnPageRow& row) const {
        if (!form) return {words_.line("own-page-next-" + way_of(row)), ""};
        return {words_of(*form, row, UnitSystem::metric), words_of(*form, row, UnitSystem::us)};
    }

    /// "page width + 4.5 mm"; what has nothing to do with the page is rounded as in the size tables.
    std::string words_of(const PageForm& form, const OwnPageRow& row, UnitSystem system) const {
        const Length plus = form.plus.in(system);
        if (form.times == 0) return real_fractions(show(round_to_step(plus, row.rounding.step.in(system), row.rounding.way), system));
        const std::string amount = real_fractions(show(abs(plus), system));
        const auto model = texts::Model().text("side", words_.line(form.side == PageForm::Side::width ? "own-page-width" : "own-page-height"));
        const std::string side = words_.line(form.times == 2 ? "own-page-twice" : form.times == 1 ? "own-page-once" : "own-page-half", model);
        if (abs(plus) <= form_tolerance) return side;
        return words_.line(plus < Length() ? "own-page-less" : "own-page-more", texts::Model().text("side", side).text("length", amount));
    }

    std::string names_of(const std::vector<Print>& prints) const {
        std::vector<std::string> names;
        for (const Print print : prints) names.push_back(names.empty() ? words_.line(name_of(print)) : in_sentence(words_.line(name_of(print))));
        return listed(names, words_.line("and"));
    }

    std::vector<std::string> introduction() const {
        auto sentences = words_.paragraphs("own-page");
        if (tables_.size() > 1) sentences.push_back(names_of(tables_.front().prints) + ":");
        return sentences;
    }

    void draw(const OwnPageTable& of, bool first) {
        const Length gap = Length::mm(4), label = min(Length::mm(46), sheet_.content().width() * 0.3);
        const Length field = (sheet_.content().width() - label - gap * 2) / 2;
        RuledTable table(sheet_, {label, field, field}, gap);
        const std::string title = words_.line("own-page-title");
        sheet_.down(Length::mm(6));
        // A second table says only for which prints it is.
        table.introduce(first ? title : names_of(of.prints), first ? introduction() : std::vector<std::string>{});
        table.head({TableCell("", setting::small), TableCell(words_.line("own-page-width-head"), setting::small_strong),
                    TableCell(words_.line("own-page-height-head"), setting::small_strong)});
        for (const OwnPageLine& line : of.lines) {
            std::vector<TableCell> cells{TableCell(line.title, setting::label).add(line.rounding, setting::small)};
            for (const OwnPageText& text : line.fields) cells.push_back(cell(text));
            if (line.fields.size() == 1) cells.back().over(2);
            table.row(cells);
        }
        table.draw(title);
    }

    /// What only refers to another row is no figure.
    TableCell cell(const OwnPageText& text) const {
        if (text.us.empty()) return {text.metric, setting::body};
        const bool metric = ruler_ == UnitSystem::metric;
        return TableCell(metric ? text.metric : text.us, setting::table_figure).add(metric ? text.us : text.metric, setting::other);
    }

    Sheet& sheet_;
    const texts::Passages& words_;
    UnitSystem ruler_;
    std::vector<OwnPageTable> tables_;
};

}  // namespace

void draw_own_page_tables(Sheet& sheet, const std::vector<SizeColumn>& columns, const texts::Passages& words) {
    OwnPageTables tables(sheet, words);
    for (const Print print : sheet.context().manifest.prints) tables.add(columns, print);
    tables.draw();
}

}  // namespace qw::compose
