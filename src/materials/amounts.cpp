// SPDX-License-Identifier: GPL-3.0-or-later
#include "materials/amounts.h"

#include <cmath>
#include <cstdio>

namespace qw::materials {

namespace {

std::string plain_number(double value) {
    char text[32];
    std::snprintf(text, sizeof text, "%g", value);
    return text;
}

/// "1 3/8 yd"
std::string yards_text(Length length, Length yard) {
    std::string number = show_us(Length::inches(length / yard));
    return number.substr(0, number.rfind(' ')) + " yd";
}

}  // namespace

std::string shop_length(Length needed, UnitSystem system) {
    const Length metre = Length::mm(1000), yard = Length::inches(36);
    if (system == UnitSystem::metric) {
        const Length length = round_to_step(needed, needed < metre ? Length::mm(50) : Length::mm(100), Rounding::up);
        return length < metre ? plain_number(length.in_mm() / 10) + " cm" : plain_number(length / metre) + " m";
    }
    const Length length = round_to_step(needed, needed < yard ? Length::inches(1) : yard / 8, Rounding::up);
    return length < yard ? show_us(length) : yards_text(length, yard);
}

std::string to_buy(Length needed, double allowance, UnitSystem system, std::optional<Length> width) {
    const std::string wide = width ? ", " + show(*width, system) + " wide" : std::string();
    return "buy " + shop_length(needed * (1 + allowance), system) + wide + " (" + plain_number(std::round(allowance * 1000) / 10) + " % more)";
}

std::string to_buy(int needed, double allowance) {
    constexpr double nothing = 1e-9;  // a tenth of 30 is 3, not what binary fractions make of it
    const int spare = static_cast<int>(std::ceil(needed * allowance - nothing));
    return spare > 0 ? "buy " + std::to_string(needed + spare) + " (" + std::to_string(spare) + " to spare)" : std::string();
}

double area_of(const journal::Piece& piece, UnitSystem system) {
    const bool metric = system == UnitSystem::metric;
    return piece.count * (metric ? piece.width.metric : piece.width.us).in_mm() * (metric ? piece.height.metric : piece.height.us).in_mm();
}

std::string area_text(double square_mm, UnitSystem system) {
    constexpr double square_cm = 100, square_inch = 25.4 * 25.4, nothing = 1e-6;
    const double area = square_mm / (system == UnitSystem::metric ? square_cm : square_inch);
    return std::to_string(std::lround(std::ceil(area - nothing))) + (system == UnitSystem::metric ? " cm²" : " sq in");
}

std::string pieces_text(const journal::Piece& piece, UnitSystem system) { return std::to_string(piece.count) + " of " + piece.text(system); }

std::string strips_text(Length length, Length sheet, Length overlap, UnitSystem system, bool strip) {
    if (length <= sheet + snap_to_step || sheet <= overlap) return {};
    // Each strip after the first reaches further by a sheet less the overlap.
    const int strips = static_cast<int>(std::ceil((length - overlap - snap_to_step) / (sheet - overlap)));
    return "in " + std::to_string(strips) + (strip ? " strips" : " parts") + " that overlap " + show(overlap, system);
}

Length strip_overlap(const journal::Measures& measures, UnitSystem system) {
    for (const char* name : {"strip-overlap", "tape-overlap"})
        for (const kit::NamedLength& length : measures.journal->lengths)
            if (length.name == name) return length.value.in(system) * (length.printed ? measures.conditions.scale : 1);
    return system == UnitSystem::metric ? Length::mm(20) : Length::inches(0.75);
}

Length strip_sheet(const journal::Conditions& conditions) {
    const auto longer = [](Size size) { return max(size.width, size.height); };
    const Length paper = longer(conditions.paper.size);
    return conditions.full_sheets > 0 ? min(paper, longer(conditions.cover_sheet)) : paper;
}

std::string inside_sentence(std::string title) {
    const bool capital = !title.empty() && title[0] >= 'A' && title[0] <= 'Z';
    const bool word = title.size() > 1 && ((title[1] >= 'a' && title[1] <= 'z') || title[1] == ' ');
    if (capital && word) title[0] = static_cast<char>(title[0] - 'A' + 'a');
    return title;
}

std::string joined(const std::string& first, const std::string& between, const std::string& second) {
    return first.empty() || second.empty() ? first + second : first + between + second;
}

}  // namespace qw::materials
