// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/sheet_picture.h"

#include "report/html.h"

#include <cstdio>

namespace qw::report {

namespace {

std::string number(double value) {
    char text[48];
    std::snprintf(text, sizeof text, "%.2f", value);
    return text;
}

/// SVG counts from the head.
std::string rectangle(const Rect& r, Size sheet) {
    return "x=\"" + number(r.left.in_mm()) + "\" y=\"" + number((sheet.height - r.top).in_mm()) + "\" width=\"" + number(r.width().in_mm()) + "\" height=\"" + number(r.height().in_mm()) + "\"";
}

std::string path(const Rect& r, Size sheet) {
    return "M" + number(r.left.in_mm()) + " " + number((sheet.height - r.top).in_mm()) + "h" + number(r.width().in_mm()) + "v" + number(r.height().in_mm()) + "h" + number(-r.width().in_mm()) + "z";
}

std::string line(const std::string& kind, const Rect& r, Size sheet) {
    return "<rect class=\"under\" " + rectangle(r, sheet) + "/><rect class=\"" + kind + "\" " + rectangle(r, sheet) + "/>";
}

std::string svg(const Rect& view, Size sheet, const std::string& label, const std::string& inside) {
    return "<svg role=\"img\" aria-label=\"" + escaped(label) + "\" viewBox=\"" + number(view.left.in_mm()) + " " + number((sheet.height - view.top).in_mm()) + " " + number(view.width().in_mm()) + " " +
           number(view.height().in_mm()) + "\">" + inside + "</svg>";
}

std::string shown(const std::string& name, Size sheet) {
    return "<use href=\"#" + name + "\" transform=\"scale(" + number(sheet.width.in_mm()) + " " + number(sheet.height.in_mm()) + ")\"/>";
}

std::string sample(const std::string& kind, const std::string& words) {
    return "<li><svg aria-hidden=\"true\" viewBox=\"0 0 28 14\"><rect class=\"" + kind + "\" x=\"2\" y=\"2\" width=\"24\" height=\"10\"/></svg> " + words + "</li>";
}

}  // namespace

std::string PictureStore::name_of(const std::vector<std::byte>& jpeg) {
    if (jpeg.empty()) return "";
    const auto [found, fresh] = names_.emplace(jpeg, "picture-" + std::to_string(names_.size() + 1));
    if (fresh) in_order_.push_back(&found->first);
    return found->second;
}

std::string PictureStore::definitions() const {
    std::string html = "<svg class=\"store\" aria-hidden=\"true\" focusable=\"false\" width=\"0\" height=\"0\"><defs>\n"
                       "<pattern id=\"lost\" width=\"4\" height=\"4\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\"><path d=\"M0 0h4v4h-4z\" fill=\"#fff\"/><path d=\"M0 0h1.2v4h-1.2z\" fill=\"#1c2530\"/></pattern>\n";
    for (std::size_t i = 0; i < in_order_.size(); ++i)
        html += "<image id=\"picture-" + std::to_string(i + 1) + "\" width=\"1\" height=\"1\" preserveAspectRatio=\"none\" href=\"data:image/jpeg;base64," + base64(*in_order_[i]) + "\"/>\n";
    return html + "</defs></svg>\n";
}

std::string page_picture(const std::string& name, Size sheet, const std::string& label) {
    const Rect page = Rect::of(sheet);
    return svg(page, sheet, label, shown(name, sheet) + "<rect class=\"edge\" " + rectangle(page, sheet) + "/>");
}

std::string marked_picture(const std::string& name, const SheetRow& row, const std::string& label) {
    const Rect page = Rect::of(row.sheet);
    Rect view = page;
    if (row.drawn) view = {min(page.left, row.drawn->left), min(page.bottom, row.drawn->bottom), max(page.right, row.drawn->right), max(page.top, row.drawn->top)};
    view = view.inset(Length::mm(-1));
    std::string inside;
    const Rect kept = row.trim.value_or(page);
    if (row.drawn && !kept.holds(*row.drawn, Length::mm(0.01))) inside += "<path fill=\"url(#lost)\" fill-rule=\"evenodd\" d=\"" + path(*row.drawn, row.sheet) + path(kept, row.sheet) + "\"/>";
    inside += shown(name, row.sheet) + "<rect class=\"edge\" " + rectangle(page, row.sheet) + "/>";
    if (row.trim) inside += line("trim", *row.trim, row.sheet);
    if (row.printable) inside += line("margins", *row.printable, row.sheet);
    if (row.safe && !row.safe->empty()) inside += line("safe", *row.safe, row.sheet);
    if (row.inked) inside += line("inked", *row.inked, row.sheet);
    return svg(view, row.sheet, label, inside);
}

std::string key_of_marks() {
    return "<ul class=\"key\" aria-label=\"What the lines on the pictures mean\">" + sample("trim", "trim, or the bordered picture") + sample("safe", "safe area") + sample("margins", "what the printer's margins leave") +
           sample("inked", "box around all ink") + "<li><svg aria-hidden=\"true\" viewBox=\"0 0 28 14\"><path d=\"M2 2h24v10h-24z\" fill=\"url(#lost)\"/></svg> artwork that is lost</li></ul>\n";
}

}  // namespace qw::report
