// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/guide_sheet.h"

#include "compose/guide_content.h"
#include "compose/guide_drawing.h"
#include "compose/guide_layout.h"

#include <algorithm>

namespace qw::compose {

namespace {

class GuideSheet {
public:
    GuideSheet(const SheetContext& context, const std::vector<SizeColumn>& full)
        : context_(context), words_(passages_of(context.pipeline, "guide")), content_(guide_content(context, full, words_)), full_(full),
          sheet_(context, words_.line("title"), words_.line("subtitle", subtitle()), PrintAt::full_size),
          layout_(context.fonts, words_, content_, sheet_.content()), pages_(sheet_, words_.line("title")) {}

    Document compose() {
        pages_.run(layout_.front(journal().title, sheet_.left_over()), words_.line("title"));
        // The first step begins a page, unless what comes before it was short.
        if (pages_.left_over() < pages_.whole_page() * 0.4) pages_.new_page();
        for (std::size_t i = 0; i < content_.steps.size(); ++i) step(i);
        return std::move(sheet_).finish();
    }

private:
    const kit::JournalTemplate& journal() const { return *full_.front().measures.journal; }
    texts::Model subtitle() const {
        return texts::Model().text("kit", context_.manifest.title).text("journal", journal().title).text("paper", context_.paper.title);
    }

    void step(std::size_t i) {
        const std::string& kind = content_.steps[i].drawing;
        std::vector<Flow> ways;
        // Here as large as it may be, or smaller before it leaves this page half empty.
        for (const double part : {1.0, 0.75, 0.55}) {
            ways.push_back(layout_.whole(i, figure(kind, part)));
            const Flow here = pages_.at_top() ? ways.back() : layout_.parted(ways.back());
            if (here.height() <= pages_.left_over()) return pages_.keep(here);
        }
        for (const Flow& way : ways)
            if (way.height() <= pages_.whole_page()) return pages_.new_page(), pages_.keep(way);
        if (pages_.left_over() < pages_.whole_page() * 0.4) pages_.new_page();
        const Flow over_pages = layout_.torn(i, figure(kind, 1));
        pages_.run(pages_.at_top() ? over_pages : layout_.parted(over_pages), words_.line("continued", texts::Model().text("step", std::to_string(i + 1))));
    }

    StepFigure figure(const std::string& kind, double part) const {
        StepFigure figure{Flow(context_.fonts), {}};
        const Length text = layout_.grid().text;
        if (const auto drawing = drawing_of(kind, drawn(), part)) {
            figure.width = drawing->size.width;
            figure.flow.row({drawing->size.height, drawing->draw, true});
            if (!figures_differ(kind, *drawing)) return figure;
            figure.flow.space(Length::mm(1.5));
            figure.flow.keep_with_next();
            figure.flow.paragraph(words_.line("drawn-for", texts::Model().text("print", words_.line(name_of(drawn().print)))), setting::small, text);
        } else if (has_step_drawing(context_, kind, drawn().measures)) {
            figure.flow.paragraph(words_.line("no-room"), setting::small, text);
        }
        return figure;
    }

    /// The print that drawings have the figures of: one that can be shown.
    const SizeColumn& drawn() const {
        const auto shown = std::find_if(full_.begin(), full_.end(), [](const SizeColumn& c) { return !has_errors(c.measures.findings); });
        return shown == full_.end() ? full_.front() : *shown;
    }
    std::optional<StepDrawing> drawing_of(const std::string& kind, const SizeColumn& column, double part) const {
        const Length liked = Length::mm(kind == "stations" || kind == "corner" ? 60 : 82) * part;
        return step_drawing(context_, kind, column.measures, layout_.grid().all(), liked, pages_.whole_page() * 0.8);
    }
    bool figures_differ(const std::string& kind, const StepDrawing& drawing) const {
        return std::any_of(full_.begin(), full_.end(), [&](const SizeColumn& other) {
            if (&other == &drawn() || has_errors(other.measures.findings)) return false;
            const auto same = drawing_of(kind, other, 1);
            return !same || figures_in(same->texts) != figures_in(drawing.texts);
        });
    }
    /// The scale is another when it is drawn in another room.
    static std::vector<std::string> figures_in(const std::vector<std::string>& texts) {
        std::vector<std::string> figures;
        std::copy_if(texts.begin(), texts.end(), std::back_inserter(figures),
                     [](const std::string& text) { return text.ends_with(" mm") || text.ends_with(" in"); });
        std::sort(figures.begin(), figures.end());
        figures.erase(std::unique(figures.begin(), figures.end()), figures.end());
        return figures;
    }

    const SheetContext& context_;
    texts::Passages words_;
    GuideContent content_;
    const std::vector<SizeColumn>& full_;
    Sheet sheet_;
    GuideLayout layout_;
    FlowPages pages_;
};

}  // namespace

Document guide_sheet(const SheetContext& context, const std::vector<SizeColumn>& full) {
    return GuideSheet(context, full).compose();
}

}  // namespace qw::compose
