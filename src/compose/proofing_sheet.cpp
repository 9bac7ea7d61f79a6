// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/proofing_sheet.h"

#include "compose/cautions_of.h"
#include "compose/fractions.h"
#include "compose/materials_columns.h"

#include <algorithm>

namespace qw::compose {

namespace {

/// What is acted on: read at the printer and at the bench.
constexpr Setting acted_on{type::Cut::text, Length::points(12), Length::points(15.5)};
constexpr Setting acted_on_first{type::Cut::strong, Length::points(12), Length::points(15.5)};

const Length tick_width = Length::mm(7), left_column = Length::mm(50), gutter = Length::mm(7);
const Length above_sheet = Length::mm(3), below_task = Length::mm(1.6), blank_height = Length::mm(9), least_blank = Length::mm(30);

struct SetTask {
    std::string words, blank;      ///< `blank` is empty where nothing is measured
};

class CheckList {
public:
    CheckList(const SheetContext& context, const std::vector<ProofSheet>& sheets, const std::vector<std::string>& tools, std::size_t own_pages)
        : sheets_(sheets),
          tools_(tools),
          next_(static_cast<int>(own_pages)),
          words_(passages_of(context.pipeline, "proofing")),
          title_(words_.line("title")),
          sheet_(context, title_,
                 words_.line("subtitle", texts::Model().text("kit", context.manifest.title).text("version", context.manifest.version)),
                 PrintAt::full_size) {}

    Document compose() {
        introduction();
        for (std::size_t i = 0; i < sheets_.size(); ++i) proof(i);
        return std::move(sheet_).finish();
    }

private:
    Rect area() const { return sheet_.content(); }
    Canvas& canvas() { return sheet_.canvas(); }
    const type::Fonts& fonts() const { return sheet_.context().fonts; }
    bool narrow() const { return SheetMargins::narrow(sheet_.context().paper.size.as_portrait()); }

    void introduction() {
        texts::Model model;
        model.text("sheets", std::to_string(sheets_.size())).truth("one", sheets_.size() == 1);
        for (const std::string& paragraph : words_.paragraphs("introduction", model))
            sheet_.down(canvas().paragraph({area().left, sheet_.top()}, area().width(), paragraph, setting::body) + Length::mm(1.5));
        cautions();
        sheet_.down(Length::mm(7));
        by_whom();
    }

    /// Lines to write on: who printed it, on what, when.
    void by_whom() {
        const Length wide = area().width() / 3;
        Length x = area().left;
        for (const char* name : {"by", "printer", "date"}) {
            const std::string label = words_.line(name);
            canvas().words({x, sheet_.top()}, label, setting::label);
            const Length begin = x + canvas().width(setting::label, label) + Length::mm(2);
            canvas().line({begin, sheet_.top() - Length::mm(0.6)}, {x + wide - Length::mm(4), sheet_.top() - Length::mm(0.6)}, weight::hair);
            x += wide;
        }
        sheet_.down(Length::mm(5));
    }

    std::vector<SetTask> tasks_of(const ProofSheet& proof) const {
        std::vector<SetTask> tasks;
        for (const ProofTask& task : proof.tasks) {
            std::string blank;
            if (words_.has(task.name + "-blank")) blank = words_.line(task.name + "-blank", task.model);
            tasks.push_back({real_fractions(words_.line(task.name, task.model)), real_fractions(blank)});
        }
        return tasks;
    }

    StackedWords told(std::size_t index) {
        const ProofSheet& proof = sheets_[index];
        const bool both = proof.pages.size() > 1;
        texts::Model model;
        model.text("number", std::to_string(index + 1)).text("file", proof.file).text("paper", proof.paper).truth("both", both);
        model.text("stock", proof.stock.empty() ? words_.line("plain-stock") : proof.stock);
        model.text("from", std::to_string(proof.pages.front())).text("to", std::to_string(proof.pages.back()));
        model.text("first", std::to_string(next_ + 1)).text("last", std::to_string(next_ + static_cast<int>(proof.pages.size())));
        if (both) model.text("edge", words_.line(proof.turned == Duplex::flip_long_edge ? "long-edge" : "short-edge"));
        next_ += static_cast<int>(proof.pages.size());
        return {{words_.line("sheet", model), setting::heading}, {words_.line("pages", model), acted_on_first}, {words_.line("load", model), acted_on},
                {words_.line(both ? "both-sides" : "one-side", model), acted_on}, {words_.line("from", model), setting::small}};
    }

    Length task_width() const { return (narrow() ? area().width() : area().width() - left_column - gutter) - tick_width; }
    Length height_of_task(const SetTask& task) const {
        return height_of({{task.words, acted_on}}, fonts(), task_width()) + (task.blank.empty() ? Length() : blank_height) + below_task;
    }

    /// At the left what goes into the printer, at the right what is looked at; a sheet is never parted by a page's end
    /// where it fits on one.
    void proof(std::size_t index) {
        const StackedWords left = told(index);
        const std::vector<SetTask> tasks = tasks_of(sheets_[index]);
        const Length left_width = narrow() ? area().width() : left_column;
        const Length left_height = height_of(left, fonts(), left_width) + Length::mm(3);
        Length right_height = Length::mm(7);
        for (const SetTask& task : tasks) right_height += height_of_task(task);
        const Length whole = narrow() ? left_height + right_height : max(left_height, right_height);
        if (whole + above_sheet > sheet_.left_over()) sheet_.new_page(title_);
        else canvas().line({area().left, sheet_.top()}, {area().right, sheet_.top()}, weight::line);
        sheet_.down(above_sheet);
        const Length top = sheet_.top(), x = narrow() ? area().left : area().left + left_column + gutter;
        compose::draw(canvas(), {area().left, top}, left_width, left);
        if (narrow()) sheet_.down(left_height);
        for (const SetTask& task : tasks) {
            if (height_of_task(task) + Length::mm(7) > sheet_.left_over()) sheet_.new_page(title_);
            draw_task({x, sheet_.top()}, task);
            sheet_.down(height_of_task(task));
        }
        verdict(x);
        sheet_.down(max(Length(), sheet_.top() - (top - whole)));
    }

    void draw_task(Point at, const SetTask& task) {
        draw_tick(canvas(), at);
        const Length height = canvas().paragraph({at.x + tick_width, at.y}, task_width(), task.words, acted_on);
        if (task.blank.empty()) return;
        const Length base = at.y - height - Length::mm(6);
        canvas().words_within({at.x + tick_width, base}, task_width() - least_blank, task.blank, setting::label);
        const Length begin = at.x + tick_width + min(canvas().width(setting::label, task.blank), task_width() - least_blank) + Length::mm(2.5);
        canvas().line({begin, base - Length::mm(0.6)}, {at.x + tick_width + task_width(), base - Length::mm(0.6)}, weight::line);
    }

    void verdict(Length x) {
        const Length base = sheet_.top() - Length::mm(4);
        canvas().words({x + tick_width, base}, words_.line("verdict"), acted_on_first);
        Length at = x + tick_width + task_width();
        for (const char* name : {"no", "yes"}) {
            at -= canvas().width(acted_on, words_.line(name));
            canvas().words({at, base}, words_.line(name), acted_on);
            at -= Length::mm(5);
            draw_tick(canvas(), {at, base + Length::mm(4.7) - Length::mm(0.1)});
            at -= Length::mm(6);
        }
        sheet_.down(Length::mm(7));
    }

    /// Before what they are about; nothing where nothing is cut.
    void cautions() {
        for (const std::string& text : cautions_of(sheet_.context().pipeline, tools_))
            sheet_.down(canvas().paragraph({area().left, sheet_.top()}, area().width(), words_.line("caution", texts::Model().text("caution", text)),
                                           setting::body) +
                        Length::mm(1.5));
    }

    const std::vector<ProofSheet>& sheets_;
    const std::vector<std::string>& tools_;
    int next_;                      ///< pages of the finished file before the next sheet
    texts::Passages words_;
    std::string title_;
    Sheet sheet_;
};

}  // namespace

Document proofing_sheet(const SheetContext& context, const std::vector<ProofSheet>& sheets, const std::vector<std::string>& tools) {
    // How many pages the list has is known once it is composed; numbers of another length may make it longer once more.
    std::size_t pages = 1;
    for (int attempt = 0; attempt < 3; ++attempt) {
        Document document = CheckList(context, sheets, tools, pages).compose();
        if (document.pages.size() == pages) return document;
        pages = document.pages.size();
    }
    return CheckList(context, sheets, tools, pages).compose();
}

}  // namespace qw::compose
