// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/print_check_sheet.h"

#include "base/words.h"
#include "compose/fractions.h"
#include "compose/scales.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <iterator>

namespace qw::compose {

namespace {

/// Distances from the paper's edge: common margins of printers, from narrow to a deep foot (printers.yaml).
constexpr std::array<kit::BothLengths, 4> frames{{{Length::mm(3), Length::inches(0.125)},
                                                  {Length::mm(6.35), Length::inches(0.25)},
                                                  {Length::mm(12.7), Length::inches(0.5)},
                                                  {Length::mm(17), Length::inches(0.6875)}}};

const Length cross_inset = Length::mm(11);   ///< from the column's corners to the crosses' centres
const Length pin_square = Length::mm(1);
const Length gauge_column = Length::mm(15.5);  ///< kept free for the gauge at the right

/// Squares around a cross of the back: a pin that comes out beside the arms is read by counting them.
void pin_squares(Canvas& canvas, Point centre) {
    const int count = static_cast<int>(register_reach / pin_square + 0.5);
    for (int i = -count; i <= count; ++i) {
        if (i == 0) continue;  // the arms are there
        const Length at = pin_square * i;
        canvas.line({centre.x + at, centre.y - register_reach}, {centre.x + at, centre.y + register_reach}, weight::hair);
        canvas.line({centre.x - register_reach, centre.y + at}, {centre.x + register_reach, centre.y + at}, weight::hair);
    }
}

/// What the front shows beside the gauge; a small paper has no room for all of it.
struct Contents {
    int rulers = 2;
    bool margins = true, grey = true;
};

class PrintCheckSheet {
public:
    /// `apart` is added between the sections, so that they fill a longer sheet.
    PrintCheckSheet(const SheetContext& context, const PrintCheck& check, const Contents& contents, Length apart)
        : check_(check), contents_(contents), apart_(apart), words_(passages_of(context.pipeline, "print-check")), ruler_(context.paper.ruler),
          sheet_(context, words_.line("title"), words_.line("subtitle", texts::Model().text("kit", context.manifest.title).text("paper", context.paper.title)),
                 PrintAt::with_the_pages) {}

    Document compose() {
        front();
        if (both_sides()) {
            back();
            reload_pages(sheet_, check_.turned, check_.files, words_, pin_on_back() ? std::vector<std::string>() : words_.paragraphs("pin", pin()));
        }
        Document document = std::move(sheet_).finish();
        document.duplex = check_.turned;
        return document;
    }

    /// What is left between the last section but one and the last when nothing is added; known after the composing.
    Length spare() const { return spare_; }

private:
    bool both_sides() const { return check_.turned != Duplex::simplex; }
    Canvas& canvas() { return sheet_.canvas(); }
    Size paper() const { return sheet_.context().paper.size.as_portrait(); }
    Rect column() const {
        const Rect all = sheet_.content();
        return {all.left, all.bottom + Length::mm(4), all.right - gauge_column, column_top_};
    }
    Length own(const kit::BothLengths& length) const { return length.in(ruler_); }
    std::string shown(Length length) const { return real_fractions(show(length, ruler_)); }

    void front() {
        column_top_ = sheet_.top();
        nested_frames();
        crosses(std::nullopt);
        gauge();
        scale();
        rulers();
        if (contents_.margins) margins();
        if (contents_.grey) grey();
        spare_ = sheet_.top() - (both_sides() ? column().bottom + cross_inset * 2 : column().bottom);
        if (both_sides()) sides("sides", column().bottom + cross_inset * 2);
    }

    void back() {
        sheet_.new_page(words_.line("title-back"));
        nested_frames();
        crosses(check_.turned);
        // Mirrored, the crosses stand where the front has its text.
        sides("back", column().top - cross_inset * 2 - Length::mm(12));
        if (!pin_on_back()) return;
        sheet_.down(Length::mm(5));
        section("pin", pin());
    }

    void nested_frames() {
        for (const auto& frame : frames) canvas().frame(Rect::of(paper()).inset(own(frame)), weight::hair);
    }

    /// In the corners of the front's column, far apart so that a turned back shows.
    void crosses(std::optional<Duplex> back_turned) {
        if (!both_sides()) return;
        const Rect at = column().inset(cross_inset);
        for (const Point front : {Point{at.left, at.bottom}, Point{at.right, at.bottom}, Point{at.left, at.top}, Point{at.right, at.top}})
            cross(back_turned ? behind(front, paper(), *back_turned) : front, back_turned);
    }
    void cross(Point at, std::optional<Duplex> back_turned) {
        register_cross(canvas(), at, back_turned);
        if (back_turned) pin_squares(canvas(), at);
    }

    void gauge() {
        const Length length = gauge_length(sheet_.context().paper), x = sheet_.content().right - Length::mm(7);
        const Rect room = column();
        const Length low = room.bottom + (room.height() - length) / 2;
        gauge_up(canvas(), {x, low}, length);
        const auto model = texts::Model().text("gauge", shown(length));
        canvas().words({x + Length::mm(5.2), low + length / 2}, words_.line("gauge", model), setting::figure, Canvas::Anchor::middle, 90);
    }

    /// Heading and paragraphs between the crosses' columns.
    void section(const std::string& name, const texts::Model& model) {
        const Rect room = column();
        const Length left = room.left + cross_inset * 2 + Length::mm(2), width = room.width() - (cross_inset * 2 + Length::mm(2)) * 2;
        Length y = sheet_.top() - canvas().fonts().cap_height(setting::heading.cut, setting::heading.size);
        canvas().words({left, y}, words_.line(name + "-heading"), setting::heading);
        y -= Length::mm(1.5);
        for (const std::string& paragraph : words_.paragraphs(name, model))
            y -= canvas().paragraph({left, y}, width, real_fractions(paragraph), setting::body) + Length::mm(1);
        sheet_.down(sheet_.top() - y);
    }

    void scale() {
        section("scale", texts::Model().text("gauge", shown(gauge_length(sheet_.context().paper))));
        sheet_.down(Length::mm(3));
        readings();
    }

    /// What the gauge measures above, the printed size below.
    void readings() {
        const Rect room = column();
        const Length label = Length::mm(27);
        const std::size_t shown_sizes = std::min(check_.percents.size(), static_cast<std::size_t>((room.width() - label) / Length::mm(10.5)));
        if (shown_sizes == 0) return;
        const Length step = (room.width() - label) / static_cast<double>(shown_sizes);
        const Length high = sheet_.top() - Length::mm(4.5), low = high - Length::mm(6);
        canvas().line({room.left, sheet_.top()}, {room.right, sheet_.top()}, weight::line);
        canvas().line({room.left, high - Length::mm(1.8)}, {room.right, high - Length::mm(1.8)}, weight::hair);
        canvas().line({room.left, low - Length::mm(1.8)}, {room.right, low - Length::mm(1.8)}, weight::line);
        canvas().words({room.left, high}, words_.line("reading", texts::Model().text("unit", ruler_ == UnitSystem::metric ? "mm" : "in")), setting::small);
        canvas().words({room.left, low}, words_.line("printed-at"), setting::small);
        for (std::size_t i = 0; i < shown_sizes; ++i) {
            const Length x = room.left + label + step * (static_cast<double>(i) + 0.5);
            std::string reading = show(gauge_reading(sheet_.context().paper, check_.percents[i]), ruler_);
            reading.resize(reading.rfind(' '));
            char percent[16];
            std::snprintf(percent, sizeof percent, "%g %%", check_.percents[i]);
            canvas().words({x, high}, real_fractions(reading), setting::small_strong, Canvas::Anchor::middle);
            canvas().words({x, low}, percent, setting::small, Canvas::Anchor::middle);
        }
        sheet_.down(sheet_.top() - low + Length::mm(1.8));
    }

    void rulers() {
        const Rect room = column();
        const UnitSystem systems[] = {ruler_, ruler_ == UnitSystem::metric ? UnitSystem::us : UnitSystem::metric};
        for (int i = 0; i < contents_.rulers; ++i) {
            const Length numbered = systems[i] == UnitSystem::metric ? Length::mm(10) : Length::inches(1);
            const int fitting = static_cast<int>((room.width() - Length::mm(1.6)) / numbered);
            sheet_.down(Length::mm(15));
            ruler_across(canvas(), {room.left + Length::mm(1.2), sheet_.top()}, systems[i], std::min(fitting, systems[i] == UnitSystem::metric ? 15 : 6));
        }
        sheet_.down(Length::mm(9));
    }

    void margins() {
        std::vector<std::string> distances;
        for (const auto& frame : frames) distances.push_back(show(own(frame), ruler_));
        sheet_.down(apart_);
        const Length top = sheet_.top();
        section("margins", texts::Model().text("distances", listed(distances, words_.line("and"))));
        frame_names(top);
        sheet_.down(Length::mm(6));
    }

    /// A leader from each frame's left side to its distance.
    void frame_names(Length top) {
        const Rect room = column();
        const Length half_cap = canvas().fonts().cap_height(setting::small_strong.cut, setting::small_strong.size) / 2;
        for (std::size_t i = 0; i < frames.size(); ++i) {
            const Length y = top - Length::mm(3) - Length::mm(6) * static_cast<double>(i), x = own(frames[i]);
            canvas().circle({x, y}, Length::mm(0.5), std::nullopt, 0);
            canvas().line({x, y}, {room.left, y}, weight::hair);
            canvas().words({room.left + Length::mm(1.2), y - half_cap}, shown(x), setting::small_strong);
        }
    }

    void grey() {
        sheet_.down(apart_);
        section("grey", {});
        grey_strip(canvas(), {column().left, sheet_.top()}, column().width());
        sheet_.down(Length::mm(12));
    }

    void sides(const std::string& name, Length top) {
        sheet_.down(sheet_.top() - top);
        const bool short_edge = check_.turned == Duplex::flip_short_edge;
        section(name, texts::Model().text("edge", words_.line(short_edge ? "short-edge" : "long-edge")).text("step", shown_step()));
    }
    /// Metric as the crosses' marks.
    texts::Model pin() const {
        const Length shift = sheet_.context().pipeline.part_rules.back_shift;
        return texts::Model().text("square", show_metric(pin_square)).text("step", shown_step()).text("shift", show_metric(shift)).truth("bleed", shift > Length());
    }
    /// Small papers have no room for it beside the crosses.
    bool pin_on_back() const { return !SheetMargins::narrow(paper()); }
    /// The crosses' marks are metric on every paper: no inch ruler divides so finely.
    std::string shown_step() const { return show_metric(register_step); }

    const PrintCheck& check_;
    Contents contents_;
    Length apart_, spare_;
    texts::Passages words_;
    UnitSystem ruler_;
    Sheet sheet_;
    Length column_top_;
};

}  // namespace

Document print_check_sheet(const SheetContext& context, const PrintCheck& check) {
    constexpr Contents from_most_to_least[] = {{2, true, true}, {2, true, false}, {1, true, false}, {1, false, false}, {0, false, false}};
    Length spare;
    for (const Contents& contents : from_most_to_least) {
        PrintCheckSheet tight(context, check, contents, {});
        tight.compose();
        spare = tight.spare();
        if (spare < Length() && &contents != std::end(from_most_to_least) - 1) continue;
        const int gaps = 1 + contents.margins + contents.grey;  // before margins, greys and the last section
        return PrintCheckSheet(context, check, contents, max({}, spare / gaps - Length::mm(1))).compose();
    }
    return {};
}

}  // namespace qw::compose
