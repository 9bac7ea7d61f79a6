// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/parts_sheet.h"

#include "compose/fold_drawing.h"
#include "compose/guide_layout.h"
#include "compose/parts_words.h"

#include <algorithm>
#include <charconv>

namespace qw::compose {

namespace {

const Length state_height = Length::mm(62), state_gap = Length::mm(5), state_caption = Length::mm(6), above_states = Length::mm(4);
const Length step_picture_height = Length::mm(66);

/// The state that a step's drawing is of; nothing when it has none.
std::optional<std::size_t> state_of(const std::string& drawing, const parts::Folded& folded) {
    const std::size_t last = folded.states.size() - 1;
    if (drawing == "flat") return 0;
    if (drawing == "closed") return last;
    if (!drawing.starts_with("fold-")) return std::nullopt;
    std::size_t number = 0;
    std::from_chars(drawing.data() + 5, drawing.data() + drawing.size(), number);
    return std::min(number, last);
}

class PartsSheet {
public:
    PartsSheet(const SheetContext& context, const std::vector<PartOfKit>& parts)
        : context_(context),
          parts_(parts),
          words_(passages_of(context.pipeline, "parts")),
          labels_(passages_of(context.pipeline, "part-labels")),
          writer_(context, words_),
          sheet_(context, words_.line("title"),
                 words_.line("subtitle", texts::Model().text("kit", context.manifest.title).text("paper", context.paper.title)), PrintAt::full_size),
          pages_(sheet_, words_.line("title")) {}

    Document compose() {
        for (const PartOfKit& part : parts_) set(part);
        return std::move(sheet_).finish();
    }

private:
    void set(const PartOfKit& part) {
        if (&part != &parts_.front()) pages_.new_page();
        const GuideContent content = writer_.content(part);
        const GuideLayout layout(context_.fonts, words_, content, sheet_.content());
        const std::string title = writer_.title(part);
        pages_.run(layout.front(title, sheet_.left_over()), title);
        pages_.keep(states(part, layout.grid()));
        for (std::size_t i = 0; i < content.steps.size(); ++i) {
            // What was drawn for the step before need not be drawn again.
            const bool again = i > 0 && content.steps[i].drawing == content.steps[i - 1].drawing;
            step(part, layout, again ? "" : content.steps[i].drawing, i);
        }
    }

    /// Flat, half folded and closed, all to one scale.
    Flow states(const PartOfKit& part, const GuideGrid& grid) const {
        const parts::Net& net = *part.prints.front().net;
        const parts::Folded& folded = *part.prints.front().folded;
        const std::size_t last = folded.states.size() - 1;
        std::vector<std::pair<std::size_t, std::string>> all{{0, words_.line("flat")}};
        if (last >= 2) all.emplace_back((last + 1) / 2, words_.line("half-folded"));
        if (last >= 1) all.emplace_back(last, words_.line("closed"));
        const Length width = (grid.all() - state_gap * 2) / 3;
        double scale = 1;
        for (const auto& one : all)
            scale = std::min(scale, fold_scale(context_.fonts, {width, state_height}, net, folded, one.first, view(net, one.first), labels_));
        Flow flow(context_.fonts);
        flow.space(above_states);
        flow.row({state_height + state_caption, [=, this, &net, &folded, from = grid.numeral](Canvas& canvas, Point at) {
                      Length x = at.x + from;
                      for (const auto& [state, caption] : all) {
                          draw_fold(canvas, {x, at.y - state_height, x + width, at.y}, net, folded, state, view(net, state), labels_, scale);
                          canvas.words({x + width / 2, at.y - state_height - Length::mm(4.2)}, caption, setting::label, Canvas::Anchor::middle);
                          x += width + state_gap;
                      }
                  }, false});
        return flow;
    }
    /// How it lies, not what comes next.
    static FoldView view(const parts::Net& net, std::size_t state) { return {usual_view(net, state).from_behind, false}; }

    void step(const PartOfKit& part, const GuideLayout& layout, const std::string& drawing, std::size_t i) {
        std::vector<Flow> ways;
        for (const double share : {1.0, 0.8, 0.6}) {
            ways.push_back(layout.whole(i, figure(part, layout, drawing, share)));
            const Flow here = pages_.at_top() ? ways.back() : layout.parted(ways.back());
            if (here.height() <= pages_.left_over()) return pages_.keep(here);
        }
        for (const Flow& way : ways)
            if (way.height() <= pages_.whole_page()) return pages_.new_page(), pages_.keep(way);
        const Flow over_pages = layout.torn(i, figure(part, layout, drawing, 0.6));
        pages_.run(pages_.at_top() ? over_pages : layout.parted(over_pages), words_.line("continued", texts::Model().text("step", std::to_string(i + 1))));
    }

    StepFigure figure(const PartOfKit& part, const GuideLayout& layout, const std::string& drawing, double share) const {
        StepFigure figure{Flow(context_.fonts), layout.grid().text};
        const parts::Net& net = *part.prints.front().net;
        const parts::Folded& folded = *part.prints.front().folded;
        const auto state = state_of(drawing, folded);
        if (!state) return figure;
        const Size size{min(layout.grid().text, Length::mm(110)), step_picture_height * share};
        figure.flow.row({size.height, [=, this, &net, &folded](Canvas& canvas, Point at) {
                             draw_fold(canvas, {at.x, at.y - size.height, at.x + size.width, at.y}, net, folded, *state, usual_view(net, *state), labels_, 1);
                         }, false});
        return figure;
    }

    const SheetContext& context_;
    const std::vector<PartOfKit>& parts_;
    texts::Passages words_, labels_;
    PartsWriter writer_;
    Sheet sheet_;
    FlowPages pages_;
};

}  // namespace

std::optional<Document> parts_sheet(const SheetContext& context, const std::vector<PartOfKit>& parts) {
    if (parts.empty()) return std::nullopt;
    return PartsSheet(context, parts).compose();
}

}  // namespace qw::compose
