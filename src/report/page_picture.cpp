// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/page_picture.h"

#include "base/unit_system.h"
#include "report/html.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace qw::report {

namespace {

constexpr double room_mm = 1.5;  // round a picture with lines, so that none is cut off at the edge

std::string number(double value) {
    char text[32];
    std::snprintf(text, sizeof text, "%.2f", value);
    std::string plain = text;
    plain.erase(plain.find_last_not_of('0') + 1);
    if (plain.back() == '.') plain.pop_back();
    return plain == "-0" ? "0" : plain;
}

/// Millimetres from the sheet's upper left corner, as SVG counts.
struct Box {
    double x = 0, y = 0, width = 0, height = 0;
};

Box box_of(const Rect& r, const Size& sheet) { return {r.left.in_mm(), (sheet.height - r.top).in_mm(), r.width().in_mm(), r.height().in_mm()}; }

std::string four(const Box& b) { return number(b.x) + " " + number(b.y) + " " + number(b.width) + " " + number(b.height); }

std::string attributes(const Box& b) {
    return " x=\"" + number(b.x) + "\" y=\"" + number(b.y) + "\" width=\"" + number(b.width) + "\" height=\"" + number(b.height) + "\"";
}

std::string outline(const Box& b) { return "M" + number(b.x) + " " + number(b.y) + "h" + number(b.width) + "v" + number(b.height) + "h" + number(-b.width) + "z"; }

/// A dark line on a light one, so that it is seen on any artwork.
std::string line(const char* kind, const std::optional<Rect>& at, const Size& sheet) {
    if (!at || at->empty()) return "";
    const std::string path = outline(box_of(*at, sheet));
    return "<path class=\"under\" d=\"" + path + "\"/><path class=\"line " + kind + "\" d=\"" + path + "\"/>";
}

std::string opened(const Box& view, const std::string& label) {
    const std::string told = label.empty() ? "aria-hidden=\"true\" focusable=\"false\"" : "role=\"img\" aria-label=\"" + escaped(label) + "\"";
    return "<svg " + told + " viewBox=\"" + four(view) + "\">";
}

Box with_room(const SheetGeometry& at, const Size& sheet) {
    Rect all = Rect::of(sheet);
    if (at.artwork) all = {min(all.left, at.artwork->left), min(all.bottom, at.artwork->bottom), max(all.right, at.artwork->right), max(all.top, at.artwork->top)};
    return box_of(all.inset(Length::mm(-room_mm)), sheet);
}

std::string cut_away(const SheetGeometry& at, const Size& sheet) {
    if (!at.artwork || !at.visible || at.visible->holds(*at.artwork)) return "";
    const std::string edge = outline(box_of(*at.artwork, sheet));
    return "<path class=\"lost\" d=\"" + edge + outline(box_of(*at.visible, sheet)) + "\"/><path class=\"line artwork\" d=\"" + edge + "\"/>";
}

std::string sample(const char* kind) {
    return std::string("<svg aria-hidden=\"true\" focusable=\"false\" class=\"sample\" viewBox=\"0 0 36 12\"><path class=\"line ") + kind +
           "\" d=\"M1 6h34\"/></svg>";
}

std::string listed(const std::vector<std::string>& parts) {
    std::string text;
    for (std::size_t i = 0; i < parts.size(); ++i) text += (i == 0 ? "" : i + 1 == parts.size() ? " and " : ", ") + parts[i];
    return text;
}

std::string lost_in_words(const SheetGeometry& at) {
    if (!at.artwork || !at.visible) return "";
    const std::array<std::pair<const char*, Length>, 4> sides{{{"left", at.visible->left - at.artwork->left},
                                                               {"right", at.artwork->right - at.visible->right},
                                                               {"top", at.artwork->top - at.visible->top},
                                                               {"bottom", at.visible->bottom - at.artwork->bottom}}};
    std::vector<std::string> parts;
    for (const auto& [name, length] : sides)
        if (length > Length::mm(0.05)) parts.push_back(show_metric(length) + " " + name);
    return parts.empty() ? "Nothing of the artwork is cut away." : "Of the artwork is cut away: " + listed(parts) + ".";
}

std::string ink_in_words(const SheetGeometry& at) {
    if (!at.ink || !at.trim) return "";
    const Length nearest = std::min({at.ink->left - at.trim->left, at.trim->right - at.ink->right, at.trim->top - at.ink->top, at.ink->bottom - at.trim->bottom});
    // A page is looked at with 72 pixels an inch; less than one of them is no distance.
    return nearest < Length::points(1) ? "Ink reaches the trim." : "Ink keeps " + show_metric(Length::mm(std::round(nearest.in_mm() * 10) / 10)) + " from the trim.";
}

}  // namespace

std::size_t Pictures::number_of(const std::vector<std::byte>& jpeg) {
    const std::string_view bytes(reinterpret_cast<const char*>(jpeg.data()), jpeg.size());
    const auto [found, is_new] = numbers_.emplace(bytes, jpegs_.size());
    if (is_new) jpegs_.push_back(bytes);
    return found->second;
}

/// The picture in its place on the sheet, without frame; artwork that stands in for its page is cut as the page is.
std::string Pictures::shown(const SheetRow& row) {
    if (row.picture.empty()) return "";
    const Size& sheet = *row.geometry.sheet;
    const std::string use = "<use href=\"#picture-" + std::to_string(number_of(row.picture)) + "\"";
    if (!row.picture_is_artwork || !row.geometry.artwork) return use + attributes(box_of(Rect::of(sheet), sheet)) + "/>";
    const Box seen = box_of(row.geometry.visible.value_or(*row.geometry.artwork), sheet);
    return "<svg" + attributes(seen) + " viewBox=\"" + four(seen) + "\">" + use + attributes(box_of(*row.geometry.artwork, sheet)) + "/></svg>";
}

std::string Pictures::plain(const SheetRow& row) {
    if (!row.geometry.sheet) return "";
    const Rect sheet = Rect::of(*row.geometry.sheet);
    return opened(box_of(sheet, *row.geometry.sheet), "") + "<path class=\"paper\" d=\"" + outline(box_of(sheet, *row.geometry.sheet)) + "\"/>" +
           shown(row) + "<path class=\"line frame\" d=\"" + outline(box_of(sheet, *row.geometry.sheet)) + "\"/></svg>";
}

std::string Pictures::with_lines(const SheetRow& row, const std::string& label) {
    const SheetGeometry& at = row.geometry;
    if (!at.sheet) return "";
    const Size& sheet = *at.sheet;
    const std::string paper = outline(box_of(Rect::of(sheet), sheet));
    std::string svg = opened(with_room(at, sheet), label) + "<path class=\"paper\" d=\"" + paper + "\"/>" + shown(row) + cut_away(at, sheet) +
                      "<path class=\"line sheet\" d=\"" + paper + "\"/>";
    if (at.trim && *at.trim != Rect::of(sheet)) svg += line("trim", at.trim, sheet);
    svg += line("margins", at.printable, sheet) + line("safe", at.safe, sheet) + line("inked", at.ink, sheet);
    return svg + "</svg>";
}

std::string Pictures::misprinted(const SheetRow& row, const std::string& label) {
    if (row.misprint.empty() || !row.geometry.sheet) return "";
    const Box sheet = box_of(Rect::of(*row.geometry.sheet), *row.geometry.sheet);
    return opened(sheet, label) + "<path class=\"paper\" d=\"" + outline(sheet) + "\"/><use href=\"#picture-" +
           std::to_string(number_of(row.misprint)) + "\"" + attributes(sheet) + "/><path class=\"line sheet\" d=\"" + outline(sheet) + "\"/></svg>";
}

std::string Pictures::symbols() const {
    if (jpegs_.empty()) return "";
    std::string svg =
        "<svg class=\"store\" aria-hidden=\"true\" focusable=\"false\" width=\"0\" height=\"0\"><defs>\n"
        "<pattern id=\"hatch\" patternUnits=\"userSpaceOnUse\" width=\"3\" height=\"3\" patternTransform=\"rotate(45)\"><path d=\"M1.5 "
        "0v3\"/></pattern>\n";
    for (std::size_t i = 0; i < jpegs_.size(); ++i) {
        svg += "<symbol id=\"picture-" + std::to_string(i) +
               "\" viewBox=\"0 0 1 1\" preserveAspectRatio=\"none\"><image width=\"1\" height=\"1\" preserveAspectRatio=\"none\" "
               "href=\"data:image/jpeg;base64," +
               base64(std::as_bytes(std::span(jpegs_[i]))) + "\"/></symbol>\n";
    }
    return svg + "</defs></svg>\n";
}

std::string key_to_lines() {
    return "<ul class=\"key\" aria-label=\"Lines in the pictures\">\n"
           "<li>" +
           sample("sheet") + " Sheet’s edge</li>\n<li>" + sample("trim") + " Trim, where it is not the edge</li>\n<li>" + sample("safe") +
           " Safe area</li>\n<li>" + sample("margins") + " Printer’s margins</li>\n<li>" + sample("inked") +
           " Box round all ink</li>\n<li><svg aria-hidden=\"true\" focusable=\"false\" class=\"sample\" viewBox=\"0 0 36 12\">"
           "<path class=\"lost\" d=\"M1 1h34v10h-34z\"/><path class=\"line artwork\" d=\"M1 1h34v10h-34z\"/></svg> Artwork that is cut "
           "away</li>\n</ul>\n";
}

std::string lines_in_words(const SheetGeometry& at) {
    const std::string lost = lost_in_words(at), ink = ink_in_words(at);
    return lost + (lost.empty() || ink.empty() ? "" : " ") + ink;
}

}  // namespace qw::report
