// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/document_json.h"

#include <nlohmann/json.hpp>

#include <cmath>

namespace qw::compose {

namespace {

using Json = nlohmann::ordered_json;

/// To a ten-thousandth of a millimetre: the last digits of a Length are of no use to a reader.
double mm(Length length) { return std::round(length.in_mm() * 1e4) / 1e4; }

Json json(Point p) { return {mm(p.x), mm(p.y)}; }
Json json(Size s) { return {{"width", mm(s.width)}, {"height", mm(s.height)}}; }
Json json(const Rect& r) { return {{"left", mm(r.left)}, {"bottom", mm(r.bottom)}, {"right", mm(r.right)}, {"top", mm(r.top)}}; }
Json json(const Sides& s) { return {{"left", mm(s.left)}, {"bottom", mm(s.bottom)}, {"right", mm(s.right)}, {"top", mm(s.top)}}; }
Json json(const Matrix& m) { return {m.a, m.b, m.c, m.d, m.e, m.f}; }

const char* name_of(type::Cut cut) {
    switch (cut) {
        case type::Cut::strong: return "strong";
        case type::Cut::italic: return "italic";
        case type::Cut::title: return "title";
        default: return "text";
    }
}
const char* name_of(Text::Anchor anchor) {
    return anchor == Text::Anchor::start ? "start" : anchor == Text::Anchor::middle ? "middle" : "end";
}
const char* name_of(Duplex duplex) {
    return duplex == Duplex::simplex ? "simplex" : duplex == Duplex::flip_short_edge ? "flip-short-edge" : "flip-long-edge";
}

Json item(const Text& t) {
    return {{"text", t.words}, {"at", json(t.at)}, {"cut", name_of(t.cut)}, {"points", t.size.in_points()},
            {"anchor", name_of(t.anchor)}, {"turn", t.turn}, {"grey", t.grey}};
}

Json step(const Outline::Move& s) { return {"move", json(s.to)}; }
Json step(const Outline::Line& s) { return {"line", json(s.to)}; }
Json step(const Outline::Curve& s) { return {"curve", json(s.control1), json(s.control2), json(s.to)}; }
Json step(const Outline::Close&) { return Json::array({"close"}); }

Json item(const Outline& o) {
    Json steps = Json::array(), dash = Json::array();
    for (const auto& s : o.steps) steps.push_back(std::visit([](const auto& one) { return step(one); }, s));
    for (const Length d : o.dash) dash.push_back(d.in_points());
    Json all{{"outline", steps}};
    if (o.stroke) all["stroke"] = {{"points", o.stroke->in_points()}, {"grey", o.stroke_grey}, {"dash", dash}};
    if (o.fill) all["fill"] = *o.fill;
    return all;
}

/// Rectangular clips are the rule; shapes stand only where there are some.
Json with_shape(Json all, const Shape& shape) {
    for (const auto& ring : shape) {
        Json corners = Json::array();
        for (const Point p : ring) corners.push_back(json(p));
        all["shape"].push_back(corners);
    }
    return all;
}

Json item(const Picture& p) { return with_shape({{"picture", p.artwork}, {"place", json(p.place)}, {"clip", json(p.clip)}}, p.shape); }
Json item(const PdfFace& f) {
    return with_shape({{"pdf", f.file.generic_string()}, {"page", f.page}, {"place", json(f.place)}, {"clip", json(f.clip)}}, f.shape);
}

Json json(const Page& page) {
    Json items = Json::array();
    for (const Item& one : page.items) items.push_back(std::visit([](const auto& i) { return item(i); }, one));
    return {{"size", json(page.size)}, {"trim", json(page.trim)}, {"bleed", json(page.bleed)}, {"items", items}};
}

Json json(const Placement& p) {
    Json all;
    if (p.face) all["face"] = *p.face;
    all["sheet"] = json(p.sheet);
    all["print-scale"] = p.print_scale;
    all["scale"] = p.scale;
    all["picture"] = json(p.picture);
    all["artwork"] = json(p.artwork);
    all["visible"] = json(p.visible);
    all["lost"] = json(p.lost);
    all["white"] = json(p.white);
    all["ppi"] = {p.ppi_x, p.ppi_y};
    return all;
}

Json json(const Document& document) {
    Json artwork = Json::array(), pages = Json::array();
    for (const PlacedArtwork& art : document.artwork) artwork.push_back({{"file", art.file.generic_string()}, {"sha256", art.facts.sha256}});
    for (const Page& page : document.pages) pages.push_back(json(page));
    return {{"title", document.title}, {"subject", document.subject}, {"date", document.date.iso()},
            {"duplex", name_of(document.duplex)}, {"artwork", artwork}, {"pages", pages}};
}

}  // namespace

std::string to_json(const Document& document) { return json(document).dump(2) + "\n"; }

std::string to_json(const ArtworkDocument& document) {
    Json all = json(document.document);
    for (std::size_t i = 0; i < document.pages.size(); ++i) all["pages"][i]["plan"] = json(document.pages[i]);
    return all.dump(2) + "\n";
}

}  // namespace qw::compose
