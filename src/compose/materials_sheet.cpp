// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/materials_sheet.h"

#include "compose/fractions.h"

#include <array>

namespace qw::compose {

namespace {

using Group = materials::Line::Group;
constexpr std::array<std::pair<Group, const char*>, 5> groups{{{Group::paper, "group-paper"}, {Group::board, "group-board"},
                                                               {Group::sewing, "group-sewing"}, {Group::glueing, "group-glueing"},
                                                               {Group::other, "group-other"}}};

const Length group_width = Length::mm(26), tick_width = Length::mm(7), amount_width = Length::mm(70), gutter = Length::mm(5);
const Length first_line = Length::mm(4.8);

class MaterialsSheet {
public:
    MaterialsSheet(const SheetContext& context, const materials::List& list)
        : list_(list), words_(passages_of(context.pipeline, "materials")), metric_(context.paper.ruler == UnitSystem::metric),
          sheet_(context, words_.line("title"), words_.line("subtitle", texts::Model().text("kit", context.manifest.title).text("paper", context.paper.title)),
                 PrintAt::full_size) {}

    Document compose() && {
        for (const auto& [group, name] : groups) materials(group, words_.line(name));
        rule(weight::line);
        tools();
        cautions();
        return std::move(sheet_).finish();
    }

private:
    Rect area() const { return sheet_.content(); }
    Canvas& canvas() { return sheet_.canvas(); }
    Length title_left() const { return area().left + group_width + tick_width; }
    Length amount_left() const { return area().right - amount_width; }
    void rule(Length weight) { canvas().line({area().left, sheet_.top()}, {area().right, sheet_.top()}, weight); }

    void need(Length height) {
        if (sheet_.left_over() < height) sheet_.new_page(words_.line("title"));
    }

    void materials(Group group, const std::string& name) {
        bool first = true;
        for (const materials::Line& line : list_.lines) {
            if (line.group != group) continue;
            need(height_of(line));
            if (first) {
                rule(weight::line);
                canvas().words({area().left, sheet_.top() - first_line}, name, setting::heading);
            } else {
                canvas().line({area().left + group_width, sheet_.top()}, {area().right, sheet_.top()}, weight::hair);
            }
            first = false;
            material(line);
        }
    }

    std::vector<std::string> lines_of(const std::string& words, const Setting& setting, Length width) const {
        return wrapped(sheet_.context().fonts, setting, width, words);
    }
    Length title_width() const { return amount_left() - gutter - title_left(); }
    std::string own(const materials::Line& line) const { return real_fractions(metric_ ? line.metric : line.us); }
    std::string other(const materials::Line& line) const { return real_fractions(metric_ ? line.us : line.metric); }

    /// Both sides of a row are a strong line or two and small ones below them.
    Length side_height(const std::string& strong, const Setting& setting, const std::string& small, Length width) const {
        return setting.leading * static_cast<double>(lines_of(strong, setting, width).size()) +
               setting::small.leading * static_cast<double>(lines_of(small, setting::small, width).size());
    }
    Length height_of(const materials::Line& line) const {
        return max(side_height(line.title, setting::label, line.use, title_width()),
                   side_height(own(line), setting::table_figure, other(line), amount_width)) + Length::mm(1.6);
    }

    void side(Length x, Length width, const std::string& strong, const Setting& setting, const std::string& small) {
        Length y = sheet_.top() - Length::mm(0.6);
        y -= canvas().paragraph({x, y}, width, strong, setting);
        canvas().paragraph({x, y}, width, small, setting::small);
    }

    void material(const materials::Line& line) {
        tick(area().left + group_width, sheet_.top());
        side(title_left(), title_width(), line.title, setting::label, line.use);
        side(amount_left(), amount_width, own(line), setting::table_figure, other(line));
        sheet_.down(height_of(line));
    }

    /// A box to tick off, beside the first line of what begins at `top`.
    void tick(Length x, Length top) {
        const Length size = Length::mm(3);
        canvas().frame(Rect::at({x, top - first_line + Length::mm(0.1)}, {size, size}), weight::line);
    }

    void tools() {
        constexpr std::size_t columns = 3;
        const Length row = Length::mm(9.5);
        const std::size_t rows = (list_.tools.size() + columns - 1) / columns;
        sheet_.down(Length::mm(7));
        need(row * static_cast<double>(rows) + Length::mm(10));
        sheet_.heading(words_.line("tools"));
        sheet_.down(Length::mm(1));
        const Length width = area().width() / static_cast<double>(columns);
        for (std::size_t i = 0; i < list_.tools.size(); ++i) {
            const Length x = area().left + width * static_cast<double>(i / rows), top = sheet_.top() - row * static_cast<double>(i % rows);
            tick(x, top);
            canvas().words_within({x + tick_width, top - first_line}, width - tick_width - gutter / 2, list_.tools[i].title, setting::label);
            canvas().words_within({x + tick_width, top - first_line - Length::mm(3.8)}, width - tick_width - gutter / 2, list_.tools[i].use, setting::small);
        }
        sheet_.down(row * static_cast<double>(rows));
    }

    Length caution_height(const kit::Caution& caution, Length width) const {
        return setting::body.leading * static_cast<double>(lines_of(caution.text, setting::body, width).size()) + Length::mm(2.5);
    }

    /// Two columns that are filled one after the other, balanced.
    void cautions() {
        const Length width = (area().width() - gutter * 2) / 2;
        Length all;
        for (const kit::Caution& caution : list_.cautions) all += caution_height(caution, width);
        sheet_.down(Length::mm(5));
        need(all / 2 + Length::mm(28));
        sheet_.heading(words_.line("cautions"));
        sheet_.down(Length::mm(2));
        Length y = sheet_.top(), x = area().left;
        for (const kit::Caution& caution : list_.cautions) {
            if (x == area().left && sheet_.top() - y >= all / 2) y = sheet_.top(), x = area().left + width + gutter * 2;
            canvas().paragraph({x, y}, width, caution.text, setting::body);
            y -= caution_height(caution, width);
        }
    }

    const materials::List& list_;
    texts::Passages words_;
    bool metric_;
    Sheet sheet_;
};

}  // namespace

Document materials_sheet(const SheetContext& context, const materials::List& list) {
    return MaterialsSheet(context, list).compose();
}

}  // namespace qw::compose
