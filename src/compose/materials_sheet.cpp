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

    Document compose() {
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
                if (&line != &list_.lines.front()) rule(weight::line);
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
    /// Empty where both systems say the same.
    std::string other(const materials::Line& line) const { return line.us == line.metric ? "" : real_fractions(metric_ ? line.us : line.metric); }

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

    static constexpr std::size_t tool_columns = 2;
    std::size_t tool_rows() const { return (list_.tools.size() + tool_columns - 1) / tool_columns; }
    Length tool_width() const { return area().width() / static_cast<double>(tool_columns); }
    Length tool_room() const { return tool_width() - tick_width - gutter / 2; }
    Length tool_height(const kit::Tool& tool) const { return side_height(tool.title, setting::label, tool.use, tool_room()) + Length::mm(1.4); }
    /// Tools are read down the columns; a row is as high as its highest.
    Length tool_row_height(std::size_t row) const {
        Length height;
        for (std::size_t i = row; i < list_.tools.size(); i += tool_rows()) height = max(height, tool_height(list_.tools[i]));
        return height;
    }
    Length tools_height() const {
        Length height = Length::mm(16);
        for (std::size_t row = 0; row < tool_rows(); ++row) height += tool_row_height(row);
        return height;
    }

    /// A heading below what is there, or a page of its own when `height` does not fit.
    void begin(const std::string& title, Length height) {
        if (sheet_.left_over() < height) return sheet_.new_page(title);
        sheet_.down(Length::mm(7));
        sheet_.heading(title);
        sheet_.down(Length::mm(2));
    }

    void tools() {
        begin(words_.line("tools"), tools_height());
        for (std::size_t row = 0; row < tool_rows(); ++row) {
            for (std::size_t i = row; i < list_.tools.size(); i += tool_rows()) {
                const Length x = area().left + tool_width() * static_cast<double>(i / tool_rows());
                tick(x, sheet_.top());
                side(x + tick_width, tool_room(), list_.tools[i].title, setting::label, list_.tools[i].use);
            }
            sheet_.down(tool_row_height(row));
        }
    }

    Length caution_width() const { return (area().width() - gutter * 2) / 2; }
    Length caution_height(const kit::Caution& caution, const Setting& set) const {
        return set.leading * static_cast<double>(lines_of(caution.text, set, caution_width()).size()) + Length::mm(3);
    }
    /// The first column takes cautions until it holds half of all; the second takes the rest.
    std::size_t first_in_second_column(const Setting& set) const {
        Length all, taken;
        for (const kit::Caution& caution : list_.cautions) all += caution_height(caution, set);
        std::size_t i = 0;
        while (i < list_.cautions.size() && taken + caution_height(list_.cautions[i], set) / 2 < all / 2)
            taken += caution_height(list_.cautions[i++], set);
        return i;
    }
    Length cautions_height(const Setting& set) const {
        const std::size_t second = first_in_second_column(set);
        Length columns[2];
        for (std::size_t i = 0; i < list_.cautions.size(); ++i) columns[i < second ? 0 : 1] += caution_height(list_.cautions[i], set);
        return max(columns[0], columns[1]) + Length::mm(18);
    }

    /// Below the tools where there is room, else larger on a page of their own.
    void cautions() {
        const bool own_page = sheet_.left_over() < cautions_height(setting::body);
        const Setting& set = own_page ? setting::subtitle : setting::body;
        begin(words_.line("cautions"), own_page ? area().height() * 2 : Length());
        const std::size_t second = first_in_second_column(set);
        Length y = sheet_.top();
        for (std::size_t i = 0; i < list_.cautions.size(); ++i) {
            if (i == second) y = sheet_.top();
            canvas().paragraph({area().left + (i < second ? Length() : caution_width() + gutter * 2), y}, caution_width(), list_.cautions[i].text, set);
            y -= caution_height(list_.cautions[i], set);
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
