// SPDX-License-Identifier: GPL-3.0-or-later
#include "lettering.h"

#include <pango/pangocairo.h>

#include <memory>
#include <sstream>
#include <stdexcept>

namespace art {
namespace {

struct Drop {
    void operator()(PangoLayout* p) const { g_object_unref(p); }
};
using Layout = std::unique_ptr<PangoLayout, Drop>;

void unhinted(PangoContext* context) {
    cairo_font_options_t* options = cairo_font_options_create();
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
    pango_cairo_context_set_font_options(context, options);
    cairo_font_options_destroy(options);
    pango_cairo_context_set_resolution(context, 72);
    pango_context_set_round_glyph_positions(context, FALSE);
    // Not the language of whoever runs the program.
    pango_context_set_language(context, pango_language_from_string("en"));
    pango_context_set_base_dir(context, PANGO_DIRECTION_LTR);
}

Layout layout_of(Pen& pen, const std::string& text, const Type& type) {
    Layout layout(pango_cairo_create_layout(pen.context()));
    unhinted(pango_layout_get_context(layout.get()));
    PangoFontDescription* font = pango_font_description_from_string(type.font);
    pango_font_description_set_absolute_size(font, type.points * PANGO_SCALE);
    pango_layout_set_font_description(layout.get(), font);
    pango_font_description_free(font);
    PangoAttrList* attributes = pango_attr_list_new();
    const int spacing = static_cast<int>(type.spacing / 1000 * type.points * PANGO_SCALE);
    pango_attr_list_insert(attributes, pango_attr_letter_spacing_new(spacing));
    pango_attr_list_insert(attributes,
                           pango_attr_font_features_new(type.old_style ? "onum=1,pnum=1" : "lnum=1,tnum=1"));
    pango_layout_set_attributes(layout.get(), attributes);
    pango_attr_list_unref(attributes);
    pango_layout_set_text(layout.get(), text.c_str(), -1);
    pango_layout_context_changed(layout.get());
    return layout;
}

double width_of(PangoLayout* layout) {
    PangoRectangle logical;
    pango_layout_get_extents(layout, nullptr, &logical);
    return static_cast<double>(logical.width) / PANGO_SCALE * kPoint;
}

}  // namespace

void require_typefaces() {
    PangoFontMap* map = pango_cairo_font_map_get_default();
    for (const std::string name : {"Vollkorn", "Lato"}) {
        PangoFontFamily** families = nullptr;
        int count = 0;
        bool found = false;
        pango_font_map_list_families(map, &families, &count);
        for (int i = 0; i < count; ++i) found = found || name == pango_font_family_get_name(families[i]);
        g_free(families);
        if (!found) throw std::runtime_error("the typeface " + name + " is not installed");
    }
}

double width_of(Pen& pen, const std::string& text, const Type& type) {
    return width_of(layout_of(pen, text, type).get());
}

void put(Pen& pen, Point at, const std::string& text, const Type& type, Colour colour, Align align) {
    const Hold hold(pen);
    const Layout layout = layout_of(pen, text, type);
    // Spacing trails the last letter too: without it the line would not look centred.
    const double width = width_of(layout.get()) - type.spacing / 1000 * type.points * kPoint;
    const double back = align == Align::left ? 0 : align == Align::centre ? width / 2 : width;
    const double rise = static_cast<double>(pango_layout_get_baseline(layout.get())) / PANGO_SCALE;
    pen.shift({at.x - back, at.y - rise * kPoint}).grow(kPoint);
    cairo_move_to(pen.context(), 0, 0);
    cairo_set_source_rgb(pen.context(), colour.r, colour.g, colour.b);
    pango_cairo_show_layout(pen.context(), layout.get());
    cairo_new_path(pen.context());
}

double paragraph(Pen& pen, Point at, double width, const std::string& text, const Type& type, Colour colour,
                 double leading, Align align) {
    std::istringstream words(text);
    std::string word, line;
    double y = at.y;
    const double x = at.x + (align == Align::centre ? width / 2 : align == Align::right ? width : 0);
    const auto flush = [&] { put(pen, {x, y += leading * kPoint}, line, type, colour, align); };
    while (words >> word) {
        const std::string longer = line.empty() ? word : line + " " + word;
        if (!line.empty() && width_of(pen, longer, type) > width) {
            flush();
            line = word;
        } else {
            line = longer;
        }
    }
    flush();
    return y;
}

void put_on_arc(Pen& pen, Point centre, double radius, double degrees, const std::string& text, const Type& type,
                Colour colour) {
    const double per_degree = kPi * radius / 180;
    const double total = width_of(pen, text, type) - type.spacing / 1000 * type.points * kPoint;
    double before = 0;
    for (const char letter : text) {
        const std::string one(1, letter);
        const double wide = width_of(pen, one, type);
        const double inked = wide - type.spacing / 1000 * type.points * kPoint;
        const double angle = degrees + (before + inked / 2 - total / 2) / per_degree;
        const Hold hold(pen);
        pen.shift(centre).turn(angle);
        put(pen, {0, -radius}, one, type, colour, Align::centre);
        before += wide;
    }
}

}  // namespace art
