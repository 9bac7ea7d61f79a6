// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/reload_drawing.h"

#include <algorithm>
#include <cstdlib>

namespace qw::compose {

namespace {

const Length printer_height = Length::mm(6), below_picture = Length::mm(2), between_pictures = Length::mm(6), between_sections = Length::mm(6);
const Length number_column = Length::mm(7), going_in_height = Length::mm(56);

/// Filled or open, pointing up or down, with its shaft; as tall as `height`.
void big_arrow(Canvas& canvas, Point middle, Length height, bool up, bool seen) {
    const double way = up ? 1 : -1;
    const Length tip = middle.y + height * (0.5 * way), foot = middle.y - height * (0.5 * way), neck = tip - Length::mm(4) * way;
    const Length half = Length::mm(2.2);
    const std::vector<Point> head{{middle.x, tip}, {middle.x - half, neck}, {middle.x + half, neck}};
    const std::vector<Length> dots{Length::mm(0.6), Length::mm(0.8)};
    if (seen) {
        canvas.line({middle.x, foot}, {middle.x, neck}, weight::heavy);
        canvas.polygon(head, 0);
        return;
    }
    canvas.line({middle.x, foot}, {middle.x, neck}, weight::line, dots);
    for (std::size_t i = 0; i < 3; ++i) canvas.line(head[i], head[(i + 1) % 3], weight::line, dots);
}

class ReloadPages {
public:
    ReloadPages(Sheet& sheet, Duplex turned, const std::vector<DuplexFile>& files, const texts::Passages& words, const std::vector<std::string>& pin)
        : sheet_(sheet), turned_(turned), files_(files), words_(words), pin_(pin), flow_(sheet.context().fonts), width_(sheet.content().width()) {}

    void compose() {
        const std::string title = words_.line("title-reload");
        sheet_.new_page(title);
        paragraphs("reload");
        heading("one-sheet-heading");
        one_sheet();
        pictures();
        heading("all-sheets-heading");
        paragraphs("all-sheets");
        table();
        if (!pin_.empty()) {
            heading("pin-heading");
            for (const std::string& words : pin_) flow_.paragraph(words, setting::body, width_);
        }
        FlowPages(sheet_, title).run(flow_, title);
    }

private:
    std::string edge(Duplex turned) const { return words_.line(turned == Duplex::flip_short_edge ? "short-edge" : "long-edge"); }

    void paragraphs(const std::string& name) {
        for (const std::string& words : words_.paragraphs(name)) {
            flow_.paragraph(words, setting::body, width_);
            flow_.space(Length::mm(1.2));
        }
    }
    void heading(const std::string& name) {
        flow_.space(between_sections);
        flow_.paragraph(words_.line(name), setting::heading, width_);
        flow_.keep_with_next();
        flow_.space(Length::mm(1));
        flow_.keep_with_next();
    }

    void one_sheet() {
        const auto steps = words_.paragraphs("one-sheet", texts::Model().text("edge", edge(turned_)));
        for (std::size_t i = 0; i < steps.size(); ++i) {
            Flow number(sheet_.context().fonts), step(sheet_.context().fonts);
            number.paragraph(std::to_string(i + 1), setting::label, number_column);
            step.paragraph(steps[i], setting::body, width_ - number_column);
            flow_.beside(number, step, number_column);
            flow_.space(Length::mm(1));
        }
    }

    /// The first time, then the second time for each way of turning over; on narrow papers as small as they get.
    void pictures() {
        flow_.space(Length::mm(3));
        const Length column = (width_ - between_pictures * 2) / 3;
        const std::pair<Duplex, const char*> all[] = {
            {Duplex::simplex, "goes-in-first"}, {Duplex::flip_short_edge, "goes-in-short"}, {Duplex::flip_long_edge, "goes-in-long"}};
        std::vector<Flow> captions;
        Length tallest;
        for (const auto& [turned, name] : all) {
            Flow& caption = captions.emplace_back(sheet_.context().fonts);
            caption.paragraph(words_.line(std::string(name) + "-title"), setting::label, column);
            caption.paragraph(words_.line(name), setting::small, column);
            tallest = max(tallest, caption.height());
        }
        const Size paper = sheet_.context().paper.size;
        flow_.row({going_in_height + below_picture + tallest, [=, this](Canvas& canvas, Point at) {
                       for (std::size_t i = 0; i < 3; ++i) {
                           const Length x = at.x + (column + between_pictures) * static_cast<double>(i);
                           draw_sheet_going_in(canvas, {x, at.y - going_in_height, x + column, at.y}, paper, all[i].first, words_);
                           captions[i].draw(canvas, {x, at.y - going_in_height - below_picture});
                       }
                   }, false});
    }

    void table() {
        std::vector<DuplexFile> files = files_;
        if (files.empty()) files.push_back({words_.line("every-file"), 0, turned_});
        flow_.space(Length::mm(3));
        row({words_.line("file"), words_.line("fronts"), words_.line("backs-in-order"), words_.line("backs-from-last"), words_.line("turned-over")},
            setting::small_strong);
        for (const DuplexFile& file : files) {
            const bool known = file.pages > 0;
            row({file.title, known ? page_numbers(1, file.pages - 1) : "1, 3, 5 …", known ? page_numbers(2, file.pages) : "2, 4, 6 …",
                 known ? page_numbers(file.pages, 2) : "… 6, 4, 2", known ? edge(file.turned) : "–"}, setting::small);
        }
    }

    void row(const std::vector<std::string>& cells, const Setting& setting) {
        const double shares[] = {0.26, 0.18, 0.2, 0.2, 0.16};
        std::vector<Flow> columns;
        Length height;
        for (std::size_t i = 0; i < cells.size(); ++i) {
            Flow& column = columns.emplace_back(sheet_.context().fonts);
            column.paragraph(cells[i], setting, width_ * shares[i] - Length::mm(2));
            height = max(height, column.height());
        }
        const Length all = height + Length::mm(2), wide = width_;
        flow_.row({all, [=](Canvas& canvas, Point at) {
                       Length x = at.x;
                       for (std::size_t i = 0; i < columns.size(); ++i) {
                           columns[i].draw(canvas, {x, at.y - Length::mm(0.8)});
                           x += wide * shares[i];
                       }
                       canvas.line({at.x, at.y - all}, {at.x + wide, at.y - all}, weight::hair);
                   }, setting.cut == setting::small_strong.cut});
    }

    Sheet& sheet_;
    Duplex turned_;
    const std::vector<DuplexFile>& files_;
    const texts::Passages& words_;
    const std::vector<std::string>& pin_;
    Flow flow_;
    Length width_;
};

}  // namespace

void draw_sheet_going_in(Canvas& canvas, const Rect& into, Size paper, Duplex turned, const texts::Passages& words) {
    const Rect printer{into.left, into.top - printer_height, into.right, into.top};
    canvas.frame(printer, weight::heavy);
    const Length cap = canvas.fonts().cap_height(setting::small_strong.cut, setting::small_strong.size);
    canvas.words({printer.centre().x, printer.centre().y - cap / 2}, words.line("printer"), setting::small_strong, Canvas::Anchor::middle);
    const Size sheet = paper.as_portrait();
    const Rect room{into.left, into.bottom, into.right, printer.bottom};
    const double scale = std::min(room.width() / sheet.width, room.height() / sheet.height);
    const Size drawn = sheet * scale;
    const Rect at{room.centre().x - drawn.width / 2, room.top - drawn.height, room.centre().x + drawn.width / 2, room.top};
    canvas.frame(at, weight::line);
    const bool first = turned == Duplex::simplex, into_printer = turned != Duplex::flip_short_edge;
    big_arrow(canvas, {at.centre().x, at.centre().y + drawn.height * 0.08}, drawn.height * 0.6, into_printer, first);
    const Setting& small = canvas.width(setting::small, words.line("arrow-below")) <= drawn.width - Length::mm(2) ? setting::small : setting::other;
    canvas.words_within({at.centre().x, at.bottom + Length::mm(3)}, drawn.width - Length::mm(1), words.line(first ? "arrow-up" : "arrow-below"),
                        small, Canvas::Anchor::middle);
}

std::string page_numbers(int first, int last) {
    const int step = first <= last ? 2 : -2, count = std::abs(last - first) / 2 + 1;
    std::string numbers = std::to_string(first);
    for (int i = 1; i < std::min(count, count > 4 ? 3 : 4); ++i) numbers += ", " + std::to_string(first + step * i);
    if (count > 4) numbers += " … " + std::to_string(last);
    return numbers;
}

void reload_pages(Sheet& sheet, Duplex turned, const std::vector<DuplexFile>& files, const texts::Passages& words,
                  const std::vector<std::string>& pin) {
    ReloadPages(sheet, turned, files, words, pin).compose();
}

}  // namespace qw::compose
