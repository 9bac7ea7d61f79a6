// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/sheet.h"

#include "base/fault.h"
#include "base/words.h"

#include <utility>

namespace qw::compose {

namespace {
const Length beside_title = Length::mm(8);
}

texts::Passages passages_of(const kit::Pipeline& pipeline, const std::string& name) {
    const std::string file = name + ".mustache", shown = "pipeline/texts/" + file;
    const auto found = pipeline.texts.find(file);
    if (found == pipeline.texts.end())
        throw Fault(FaultKind::not_understood, {"missing-file", {shown, 0, 0}, "there is no " + shown, "", "add the file"});
    return texts::Passages::read(found->second, shown);
}

Sheet::Sheet(const SheetContext& context, std::string title, std::string subtitle, PrintAt print_at)
    : context_(context), words_(passages_of(context.pipeline, "sheets")), title_(std::move(title)), print_at_(print_at) {
    pages_.emplace_back(context_.paper.size.as_portrait(), context_.fonts);
    top_ = content().top;
    title_block(title_, subtitle, setting::title);
}

void Sheet::title_block(const std::string& title, const std::string& subtitle, const Setting& wanted) {
    const Rect area = content();
    const bool too_wide = canvas().width(wanted, title) > area.width();
    const Setting& setting = too_wide ? setting::heading : wanted;
    const Length cap = context_.fonts.cap_height(setting.cut, setting.size);
    canvas().words_within({area.left, top_ - cap}, area.width(), title, setting);
    // Beside the title where there is room for it whole, else below the rule.
    const Length beside = area.width() - canvas().width(setting, title) - beside_title;
    const bool below = !subtitle.empty() && canvas().width(setting::subtitle, subtitle) > beside;
    if (!below && !subtitle.empty()) canvas().words({area.right, top_ - cap}, subtitle, setting::subtitle, Canvas::Anchor::end);
    top_ -= cap + cap * 0.6;
    rule_ = top_;
    canvas().line({area.left, top_}, {area.right, top_}, weight::heavy);
    top_ -= cap * 0.7;
    if (below) down(canvas().paragraph({area.left, top_}, area.width(), subtitle, setting::small) + Length::mm(2));
}

void Sheet::new_page(const std::string& title) {
    pages_.emplace_back(context_.paper.size.as_portrait(), context_.fonts);
    top_ = content().top;
    // Small paper has room for the kit's title beside the sheet's, or in the foot alone.
    const bool beside = canvas().width(setting::further_title, title) + canvas().width(setting::subtitle, context_.manifest.title) + beside_title <
                        content().width();
    title_block(title, beside || !SheetMargins::narrow(context_.paper.size.as_portrait()) ? context_.manifest.title : "", setting::further_title);
}

void Sheet::heading(const std::string& words) {
    const Rect area = content();
    const Length cap = context_.fonts.cap_height(setting::heading.cut, setting::heading.size);
    top_ -= cap;
    canvas().words({area.left, top_}, words, setting::heading);
    top_ -= Length::mm(2.2);
    canvas().line({area.left, top_}, {area.right, top_}, weight::line);
}

std::string Sheet::prints() const {
    std::vector<std::string> names;
    for (const Print print : context_.manifest.prints) names.push_back(words_.line(name_of(print)));
    return listed(names, words_.line("and"));
}

texts::Model Sheet::foot_model(std::size_t page) const {
    texts::Model model;
    model.text("kit", context_.manifest.title).text("version", context_.manifest.version).text("paper", context_.paper.title);
    model.text("prints", prints()).text("sheet", title_);
    model.text("page", std::to_string(page + 1)).text("pages", std::to_string(pages_.size()));
    return model;
}

void Sheet::foot(Canvas& canvas, std::size_t page) const {
    const texts::Model model = foot_model(page);
    const Rect area = SheetMargins::text(canvas.size());
    const Length apart = Length::mm(4), low = area.bottom + Length::mm(1.2);
    const std::string how = words_.line(print_at_ == PrintAt::full_size ? "foot-full-size" : "foot-with-pages");
    const bool stacked = SheetMargins::narrow(canvas.size());
    const Length high = stacked ? low + apart * 3 : low + apart, room = stacked ? area.width() : area.width() / 2 - Length::mm(3);
    canvas.line({area.left, high + apart}, {area.right, high + apart}, weight::hair);
    canvas.words_within({area.left, high}, room, words_.line("foot-kit", model), setting::small_strong);
    canvas.words_within({area.left, high - apart}, room, words_.line("foot-paper", model), setting::small);
    if (stacked) {
        canvas.words_within({area.left, high - apart * 2}, room, words_.line("foot-sheet", model), setting::small_strong);
        canvas.words_within({area.left, low}, room, how, setting::small);
    } else {
        canvas.words_within({area.right, high}, room, words_.line("foot-sheet", model), setting::small_strong, Canvas::Anchor::end);
        canvas.words_within({area.right, low}, room, how, setting::small, Canvas::Anchor::end);
    }
}

Document Sheet::finish() && {
    Document document;
    document.title = context_.manifest.title + ": " + title_;
    document.subject = context_.manifest.title + " " + context_.manifest.version + ", " + context_.paper.title;
    document.date = context_.date;
    for (std::size_t i = 0; i < pages_.size(); ++i) {
        foot(pages_[i], i);
        document.pages.push_back(std::move(pages_[i]).finish());
    }
    return document;
}

}  // namespace qw::compose
