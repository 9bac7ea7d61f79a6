// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/words.h"
#include "compose/fractions.h"
#include "compose/print_readings.h"
#include "compose/reading_table.h"
#include "compose/ruled_table.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace qw::compose {

namespace {

const Length between_sentences = Length::mm(1.9);

/// Causes that differ only in the printer: one sentence.
struct CauseSentence {
    const PrintCause* first = nullptr;
    std::vector<std::string> printers, on_both_sides;  ///< the latter only when they print both sides
};

class CauseTable {
public:
    CauseTable(Sheet& sheet, const texts::Passages& words, const std::string& page_title)
        : sheet_(sheet), words_(words), page_title_(page_title), paper_(sheet.context().paper) {}

    void draw() {
        const Length gap = Length::mm(5), reading = reading_width(), percent = Length::mm(30);
        const bool narrow = sheet_.content().width() < Length::mm(120);
        const auto model = texts::Model().text("gauge", real_fractions(show(gauge_length(paper_), ruler()))).text("paper", paper_.title);
        // On a narrow sheet the scale stands below the reading.
        const Length rest = sheet_.content().width() - reading - gap;
        RuledTable table(sheet_, narrow ? std::vector<Length>{reading, rest} : std::vector<Length>{reading, percent, rest - percent - gap}, gap,
                         between_sentences);
        table.airy(Length::mm(1.2), Length::mm(2.2));
        table.fill_pages();
        table.introduce(words_.line("cause-heading"), words_.paragraphs("cause", model));
        std::vector<TableCell> head{{words_.line("measure-gauge-head"), setting::small_strong}};
        if (!narrow) head.push_back({words_.line("size-head"), setting::small_strong});
        head.push_back({words_.line("cause-head"), setting::small_strong});
        table.head(head);
        for (const PrintReading& one : possible_readings(sheet_.context().pipeline, paper_)) {
            TableCell first = TableCell(range(one), setting::table_figure);
            std::vector<TableCell> cells{narrow ? first.add(percents(one), setting::small) : first};
            if (!narrow) cells.push_back({percents(one), setting::body});
            cells.push_back(causes(one));
            table.row(cells);
        }
        table.draw(page_title_);
    }

private:
    UnitSystem ruler() const { return paper_.ruler; }

    /// "187.5 to 188 mm", or one figure when a ruler shows no more.
    std::string range(const PrintReading& reading) const {
        const auto shown = [&](Length l) { return show(round_to_step(l, ruler_mark(ruler()), Rounding::nearest), ruler()); };
        const std::string least = shown(reading.least), most = shown(reading.most);
        if (least == most) return real_fractions(most);
        return words_.line("range", texts::Model().text("from", real_fractions(least.substr(0, least.rfind(' ')))).text("to", real_fractions(most)));
    }
    Length reading_width() const {
        Length widest = Length::mm(20);
        for (const PrintReading& one : possible_readings(sheet_.context().pipeline, paper_))
            widest = max(widest, sheet_.canvas().width(setting::table_figure, range(one)));
        return min(widest, sheet_.content().width() * 0.3);
    }

    std::string percents(const PrintReading& reading) const {
        const auto shown = [](double scale) {
            char text[24];
            std::snprintf(text, sizeof text, "%g", std::round(scale * 1000) / 10);
            return std::string(text);
        };
        const std::string least = shown(reading.least / gauge_length(paper_)), most = shown(reading.most / gauge_length(paper_));
        return (least == most ? most : words_.line("range", texts::Model().text("from", least).text("to", most))) + " %";
    }

    TableCell causes(const PrintReading& reading) const {
        TableCell cell;
        const auto sentences = sentences_of(reading);
        for (const CauseSentence& sentence : sentences) cell.add(words_of(sentence), setting::other);
        if (reading.asks_for_paper()) cell.add(words_.line("cause-ask-paper", texts::Model().text("papers", papers_of(reading))), setting::remark);
        else if (sentences.size() > 1) cell.add(words_.line("cause-all-possible"), setting::remark);
        return cell;
    }

    std::vector<CauseSentence> sentences_of(const PrintReading& reading) const {
        std::vector<CauseSentence> sentences;
        for (const PrintCause& cause : reading.causes) {
            auto same = std::find_if(sentences.begin(), sentences.end(), [&](const CauseSentence& s) {
                return s.first->kind == cause.kind && s.first->in_printer.name == cause.in_printer.name;
            });
            if (same == sentences.end()) same = sentences.insert(sentences.end(), {&cause, {}, {}});
            if (cause.printer) add_printer(*same, cause);
        }
        return sentences;
    }

    static bool has(const std::vector<std::string>& all, const std::string& one) { return std::find(all.begin(), all.end(), one) != all.end(); }

    void add_printer(CauseSentence& sentence, const PrintCause& cause) const {
        const std::string printer = real_fractions(in_sentence(cause.printer->title));
        if (has(sentence.printers, printer)) return;
        if (cause.sides == kit::Sides::single) {
            sentence.printers.push_back(printer);
            std::erase(sentence.on_both_sides, printer);
        } else if (!has(sentence.on_both_sides, printer)) {
            sentence.on_both_sides.push_back(printer);
        }
    }

    std::string words_of(const CauseSentence& sentence) const {
        auto model = texts::Model().text("paper", sentence.first->in_printer.title).text("printers", listed(sentence.printers, words_.line("or")));
        model.truth("single", !sentence.printers.empty()).truth("duplex", !sentence.on_both_sides.empty());
        model.text("duplex-printers", listed(sentence.on_both_sides, words_.line("or")));
        switch (sentence.first->kind) {
            case PrintCause::Kind::as_made: return words_.line("cause-as-made", model);
            case PrintCause::Kind::enlarged: return words_.line("cause-enlarged", model);
            case PrintCause::Kind::whole: return words_.line("cause-whole", model);
            case PrintCause::Kind::fitted: break;
        }
        return words_.line("cause-fitted", model);
    }

    std::string papers_of(const PrintReading& reading) const {
        std::vector<std::string> papers;
        for (const PrintCause& cause : reading.causes)
            if (std::find(papers.begin(), papers.end(), cause.in_printer.title) == papers.end()) papers.push_back(cause.in_printer.title);
        return listed(papers, words_.line("or"));
    }

    Sheet& sheet_;
    const texts::Passages& words_;
    const std::string& page_title_;
    const Paper& paper_;
};

}  // namespace

void draw_cause_table(Sheet& sheet, const texts::Passages& words, const std::string& page_title) { CauseTable(sheet, words, page_title).draw(); }

}  // namespace qw::compose
