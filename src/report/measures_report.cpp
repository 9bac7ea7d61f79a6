// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/measures_report.h"

#include "base/words.h"
#include "journal/full_sheets.h"
#include "report/finding_json.h"

#include <cmath>
#include <cstdio>

namespace qw::report {

namespace {

using Json = nlohmann::ordered_json;

/// Millimetres as a number of at most six decimals, so that 9 in reads 228.6 and not 228.59999999999999.
double number(Length value) { return std::round(value.in_mm() * 1e6) / 1e6; }

Length own(const journal::Shown& shown) { return shown.rounded; }

Json shown_texts(const std::string& metric, const std::string& us) {
    Json json;
    json["metric"] = metric;
    json["us"] = us;
    return json;
}

Json piece_json(const journal::Piece& piece) {
    Json json;
    json["name"] = piece.of->name;
    json["count"] = piece.count;
    json["width_mm"] = number(own(piece.width));
    json["height_mm"] = number(own(piece.height));
    json["exact"] = {{"width_mm", number(piece.width.exact)}, {"height_mm", number(piece.height.exact)}};
    json["shown"] = shown_texts(piece.text(UnitSystem::metric), piece.text(UnitSystem::us));
    return json;
}

Json length_json(const journal::CutLength& length) {
    Json json;
    json["name"] = length.of->name;
    json["count"] = length.count;
    json["length_mm"] = number(own(length.length));
    json["shown"] = shown_texts(show_metric(length.length.metric), show_us(length.length.us));
    return json;
}

Json figure_json(const journal::ToldFigure& figure) {
    Json json;
    json["name"] = figure.of->name;
    if (figure.is_length) json["length_mm"] = number(own(figure.length));
    else json["number"] = figure.number;
    json["shown"] = shown_texts(figure.text(UnitSystem::metric), figure.text(UnitSystem::us));
    return json;
}

Json sewing_json(const journal::Sewing& sewing) {
    Json json;
    json["signatures"] = sewing.signatures;
    json["rows"] = sewing.rows;
    json["row_gap_mm"] = number(own(sewing.row_gap));
    json["path"] = sewing.of->path;
    json["path_mm"] = number(sewing.path);
    return json;
}

Json stations_json(const std::vector<journal::Shown>& stations) {
    Json json = Json::array();
    for (const journal::Shown& station : stations) json.push_back(number(own(station)));
    return json;
}

/// Printed things are measured with a ruler, to the nearest 0.5 mm or 1/16 in; nothing is cut from these numbers.
std::string ruled(Size size, UnitSystem system) {
    const Length step = system == UnitSystem::metric ? Length::mm(0.5) : Length::inches(1.0 / 16);
    return show(round_to_step(size.width, step, Rounding::nearest), round_to_step(size.height, step, Rounding::nearest), system);
}

Json size_json(Size size) {
    return {{"width_mm", number(size.width)},
            {"height_mm", number(size.height)},
            {"shown", shown_texts(ruled(size, UnitSystem::metric), ruled(size, UnitSystem::us))}};
}

Json part_json(const parts::ToldPart& part) {
    Json json;
    json["set"] = part.set;
    json["part"] = part.part;
    json["count"] = part.count;
    json["scale"] = std::round(part.scale * 1e6) / 1e6;
    json["flat"] = size_json(part.flat);
    json["folded"] = size_json(part.folded);
    json["folded"]["thickness_mm"] = number(part.thickness);
    json["panels"] = Json::array();
    for (const auto& panel : part.panels) {
        Json one = size_json(panel.size);
        one["name"] = panel.name;
        json["panels"].push_back(one);
    }
    json["pockets"] = Json::array();
    for (const auto& pocket : part.pockets) {
        Json one;
        one["name"] = pocket.name;
        one["width_mm"] = number(pocket.room.width);
        one["depth_mm"] = number(pocket.room.depth);
        one["shown"] = shown_texts(ruled({pocket.room.width, pocket.room.depth}, UnitSystem::metric), ruled({pocket.room.width, pocket.room.depth}, UnitSystem::us));
        json["pockets"].push_back(one);
    }
    return json;
}

void add_row(std::string& text, const std::string& name, const std::string& count, const std::string& first, const std::string& second) {
    char row[256];
    std::snprintf(row, sizeof row, "  %-22s %3s   %-22s %s\n", name.c_str(), count.c_str(), first.c_str(), second.c_str());
    text += row;
}

}  // namespace

std::string to_json(const journal::Measures& m, const std::string& kit, const std::vector<parts::ToldPart>& parts) {
    Json json;
    json["kit"] = kit;
    json["journal"] = m.journal->name;
    json["paper"] = m.conditions.paper.name;
    json["print"] = name_of(m.conditions.print);
    json["scale"] = std::round(m.conditions.scale * 1e6) / 1e6;
    json["page"] = {{"width_mm", number(m.conditions.page.width)}, {"height_mm", number(m.conditions.page.height)}};
    json["pieces"] = Json::array();
    for (const journal::Piece& piece : m.pieces) json["pieces"].push_back(piece_json(piece));
    json["stations_mm"] = {{"spine", stations_json(m.spine_stations)}, {"page", stations_json(m.page_stations)}};
    json["lengths"] = Json::array();
    for (const journal::CutLength& length : m.lengths) json["lengths"].push_back(length_json(length));
    json["figures"] = Json::array();
    for (const journal::ToldFigure& figure : m.figures) json["figures"].push_back(figure_json(figure));
    if (m.sewing) json["sewing"] = sewing_json(*m.sewing);
    json["parts"] = Json::array();
    for (const parts::ToldPart& part : parts) json["parts"].push_back(part_json(part));
    if (const auto sheets = journal::full_sheets(m)) json["full_sheets"] = {{"needed", sheets->needed}, {"in_kit", sheets->in_kit}};
    json["bulk_mm"] = number(m.bulk);
    json["creep_mm"] = {{"least", number(m.creep_least)}, {"most", number(m.creep_most)}};
    json["findings"] = Json::array();
    for (const Finding& finding : m.findings) json["findings"].push_back(finding_json(finding));
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string to_text(const journal::Measures& m, const std::string& kit, const std::vector<parts::ToldPart>& parts) {
    const UnitSystem first = m.ruler, second = first == UnitSystem::metric ? UnitSystem::us : UnitSystem::metric;
    const auto value = [](const journal::Shown& shown, UnitSystem system) {
        return show(system == UnitSystem::metric ? shown.metric : shown.us, system);
    };
    char head[256];
    std::snprintf(head, sizeof head, "%s, %s, %s %s, print scale %.4f\n", kit.c_str(), m.journal->title.c_str(),
                  m.conditions.paper.title.c_str(), name_of(m.conditions.print).c_str(), m.conditions.scale);
    std::string text = head;
    text += "page " + show(m.conditions.page.width, m.conditions.page.height, first) + "\n\npieces\n";
    for (const journal::Piece& piece : m.pieces) add_row(text, piece.of->title, std::to_string(piece.count), piece.text(first), piece.text(second));
    text += "\nstations, from the head\n";
    for (const journal::Shown& station : m.spine_stations) add_row(text, "on the spine", "", value(station, first), value(station, second));
    for (const journal::Shown& station : m.page_stations) add_row(text, "on the page", "", value(station, first), value(station, second));
    text += "\nlengths\n";
    for (const journal::CutLength& length : m.lengths)
        add_row(text, length.of->title, std::to_string(length.count), value(length.length, first), value(length.length, second));
    if (!m.figures.empty()) text += "\nfigures\n";
    for (const journal::ToldFigure& figure : m.figures) {
        const std::string own_text = figure.text(first), other = figure.text(second);
        add_row(text, figure.of->title, "", own_text, own_text == other ? "" : other);
    }
    if (!parts.empty()) text += "\nparts, as printed\n";
    for (const parts::ToldPart& part : parts) {
        add_row(text, spaced_name(part.set) + ", flat", std::to_string(part.count), ruled(part.flat, first), ruled(part.flat, second));
        add_row(text, "  folded", "", ruled(part.folded, first), ruled(part.folded, second));
        for (const auto& pocket : part.pockets)
            add_row(text, "  room: " + pocket.title, "", ruled({pocket.room.width, pocket.room.depth}, first),
                    ruled({pocket.room.width, pocket.room.depth}, second));
    }
    if (const auto sheets = journal::full_sheets(m))
        text += "\nfull sheets needed: " + std::to_string(sheets->needed) + " (kit has " + std::to_string(sheets->in_kit) + ")\n";
    char tail[200];
    std::snprintf(tail, sizeof tail, "\nbulk %.1f mm, creep %.2f to %.2f mm\n", m.bulk.in_mm(), m.creep_least.in_mm(), m.creep_most.in_mm());
    text += tail;
    for (const Finding& f : m.findings) {
        text += "\n" + name_of(f.level) + "  " + f.rule + "\n  " + f.message;
        if (!f.measured.empty()) text += "\n  measured " + f.measured + ", limit " + f.limit;
        text += "\n  " + f.mend + "\n";
    }
    return text;
}

std::string faults_json(const Fault& fault) {
    Json json;
    json["faults"] = Json::array();
    for (const FaultNote& note : fault.notes()) {
        Json one;
        one["code"] = note.code;
        one["file"] = note.where.file;
        one["line"] = note.where.line;
        one["column"] = note.where.column;
        one["what"] = note.what;
        one["expected"] = note.expected;
        one["mend"] = note.mend;
        json["faults"].push_back(one);
    }
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace qw::report
