// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/gauges_sheet.h"

#include "compose/cautions_of.h"
#include "compose/fractions.h"
#include "compose/gauge_cards.h"
#include "compose/gauge_line.h"
#include "compose/jig_strip.h"
#include "compose/print_check_sheet.h"

#include <algorithm>
#include <sstream>

namespace qw::compose {

namespace {

std::vector<std::string> words_of(const std::string& line) {
    std::istringstream in(line);
    std::vector<std::string> words;
    for (std::string word; in >> word;) words.push_back(word);
    return words;
}

class GaugesSheet {
public:
    GaugesSheet(const SheetContext& context, const journal::Measures& measures)
        : m_(measures), words_(passages_of(context.pipeline, "gauges")),
          sheet_(context, words_.line("title"), words_.line("subtitle", texts::Model().text("kit", context.manifest.title).text("paper", context.paper.title)),
                 PrintAt::full_size) {}

    Document compose() {
        gauge_line();
        const auto gauge = texts::Model().text("gauge", real_fractions(show(gauge_length(sheet_.context().paper), m_.ruler)));
        for (const std::string& paragraph : words_.paragraphs("how-to", gauge)) say(paragraph, setting::body);
        for (const std::string& caution : cautions_of(sheet_.context().pipeline, {"craft-knife"})) say(caution, setting::remark);
        angle();
        steps();
        rows();
        return std::move(sheet_).finish();
    }

private:
    /// Left of the line that is measured, which stands on every page.
    Rect column() const {
        const Rect area = sheet_.content();
        return {area.left, area.bottom, area.right - gauge_room - Length::mm(2), area.top};
    }
    void gauge_line() {
        const Rect area = sheet_.content();
        draw_gauge(sheet_.canvas(), {area.left, area.bottom, area.right, sheet_.top()}, sheet_.context().paper);
    }
    void need(Length height) {
        if (sheet_.left_over() >= height) return;
        sheet_.new_page(words_.line("title"));
        gauge_line();
    }
    void say(const std::string& words, const Setting& set) {
        need(set.leading * 3);
        sheet_.down(sheet_.canvas().paragraph({column().left, sheet_.top()}, column().width(), words, set) + Length::mm(1.6));
    }
    Length lines(const std::string& words) const {
        return setting::body.leading * static_cast<double>(wrapped(sheet_.context().fonts, setting::body, column().width(), words).size()) + Length::mm(4);
    }
    /// A heading and a sentence above a gauge that is `height` high.
    void begin(const std::string& name, Length height, const texts::Model& model = {}) {
        const std::string sentence = words_.line(name, model);
        need(Length::mm(14) + lines(sentence) + height);
        sheet_.down(Length::mm(4));
        const Length cap = sheet_.context().fonts.cap_height(setting::heading.cut, setting::heading.size);
        sheet_.canvas().words({column().left, sheet_.top() - cap}, words_.line(name + "-heading"), setting::heading);
        sheet_.down(cap + Length::mm(1.6));
        say(sentence, setting::body);
        sheet_.down(Length::mm(1.4));
    }

    void angle() {
        const auto turn_in = gauge_lengths(m_, {"turn-in"}, words_), corner = gauge_lengths(m_, {"corner-cut"}, words_);
        if (turn_in.empty()) return;
        const Length leg = min(Length::mm(45), column().width() - turn_in[0].length), height = leg + turn_in[0].length;
        begin("angle", height, texts::Model().truth("corner", !corner.empty()));
        draw_angle_gauge(sheet_.canvas(), {column().left, sheet_.top()}, leg, turn_in[0], corner.empty() ? nullptr : &corner[0], words_);
        sheet_.down(height + Length::mm(2));
    }

    void steps() {
        const auto lengths = gauge_lengths(m_, words_of(words_.line("steps-of")), words_);
        const auto across = static_cast<std::size_t>(column().width() / step_column);
        const std::size_t cards = (lengths.size() + across - 1) / across;
        for (std::size_t card = 0, from = 0; card < cards; ++card) {
            const std::size_t count = (lengths.size() - from + cards - card - 1) / (cards - card);
            const std::vector<GaugeLength> here(lengths.begin() + static_cast<std::ptrdiff_t>(from), lengths.begin() + static_cast<std::ptrdiff_t>(from + count));
            Canvas trial(sheet_.canvas().size(), sheet_.context().fonts);
            const Length height = draw_step_card(trial, {}, here).height;
            if (card == 0) begin("steps", height);
            else need(height);
            sheet_.down(draw_step_card(sheet_.canvas(), {column().left, sheet_.top()}, here).height + Length::mm(3));
            from += count;
        }
    }

    /// Where the rows of holes are, across the spine from its left side.
    void rows() {
        if (!m_.sewing || m_.sewing->rows < 2) return;
        const int count = m_.sewing->rows;
        const Length apart = m_.sewing->row_gap.rounded, between = apart * (count - 1);
        const Length width = max(between + Length::mm(8), m_.named_length("spine-width"));
        std::vector<Length> places;
        for (int i = 0; i < count; ++i) places.push_back(width / 2 - between / 2 + apart * i);
        std::vector<Length> avoid = places;
        avoid.push_back(width / 2);
        const auto parts = strip_parts(width, column().width(), avoid, min(apart / 2, Length::mm(4)));
        const auto model = texts::Model()
                               .text("rows", std::to_string(count))
                               .text("apart", figure(m_.sewing->row_gap, true))
                               .text("other", figure(m_.sewing->row_gap, false))
                               .truth("split", parts.size() > 1);
        begin("rows", row_strip_height, model);
        for (std::size_t i = 0; i < parts.size(); ++i) {
            need(row_strip_height);
            row_strip(parts, i, places, width / 2);
            sheet_.down(row_strip_height + Length::mm(3));
        }
    }
    std::string figure(const journal::Shown& shown, bool own) const {
        const bool metric = (m_.ruler == UnitSystem::metric) == own;
        return real_fractions(metric ? show_metric(shown.metric) : show_us(shown.us));
    }

    void row_strip(const std::vector<StripPart>& parts, std::size_t index, const std::vector<Length>& places, Length middle) {
        const StripPart& part = parts[index];
        const Length left = column().left, top = sheet_.top(), bottom = top - row_strip_height;
        Canvas& canvas = sheet_.canvas();
        canvas.frame({left, bottom, left + part.length(), top}, weight::heavy);
        const auto here = [&](Length place) { return place >= part.from && place <= part.to; };
        Length labelled = left - Length::mm(20);
        for (std::size_t row = 0; row < places.size(); ++row) {
            if (!here(places[row])) continue;
            const Length x = left + places[row] - part.from;
            canvas.line({x, top - Length::mm(7)}, {x, top}, weight::line);
            if (x - labelled < Length::mm(5)) continue;
            canvas.words({x, top - Length::mm(10.6)}, std::to_string(row + 1), setting::small_strong, Canvas::Anchor::middle);
            labelled = x;
        }
        if (here(middle)) {
            const Length x = left + middle - part.from, side = Length::mm(1.6);
            canvas.polygon({{x - side, bottom}, {x + side, bottom}, {x, bottom + side * 1.6}}, 0);
        }
        if (index > 0) match_mark(canvas, {left, bottom + Length::mm(5)}, 1, 0, index - 1);
        if (index + 1 < parts.size()) match_mark(canvas, {left + part.length(), bottom + Length::mm(5)}, -1, 0, index);
    }

    static constexpr Length row_strip_height = Length::mm(22);

    const journal::Measures& m_;
    texts::Passages words_;
    Sheet sheet_;
};

}  // namespace

Document gauges_sheet(const SheetContext& context, const journal::Measures& measures) { return GaugesSheet(context, measures).compose(); }

}  // namespace qw::compose
