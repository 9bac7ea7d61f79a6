// SPDX-License-Identifier: GPL-3.0-or-later
// The readers of numbers, lengths and sizes that values.h declares.
#include "base/unit_system.h"
#include "base/words.h"
#include "kit/values.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace qw::kit {

namespace {

std::string trimmed(const std::string& text) {
    const std::size_t first = text.find_first_not_of(" \t"), last = text.find_last_not_of(" \t");
    return first == std::string::npos ? "" : text.substr(first, last - first + 1);
}

std::optional<double> number_in(const std::string& text) {
    double value = 0;
    const bool begins_well = !text.empty() && (text[0] == '-' || text[0] == '.' || (text[0] >= '0' && text[0] <= '9'));
    if (!begins_well || text.size() > 40) return std::nullopt;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || end != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
    return value;
}

/// The number and the unit of "5 5/8 in", as far as they can be told apart.
struct Parts {
    std::string number, unit;
};

Parts parts_of(const std::string& text) {
    const std::size_t end = text.find_first_not_of("+-0123456789./, \t");
    if (end == std::string::npos) return {trimmed(text), ""};
    return {trimmed(text.substr(0, end)), trimmed(text.substr(end))};
}

std::string plain(double value) {
    char text[40];
    const auto end = std::to_chars(text, text + sizeof text, value).ptr;
    return std::string(text, end);
}

std::vector<std::string> names_of(const std::vector<Unit>& units) {
    std::vector<std::string> names;
    for (const Unit& unit : units) names.push_back(unit.name);
    return names;
}

/// What people write for the four units of length that are read.
std::optional<std::string> unit_meant(const std::string& written) {
    static const std::pair<const char*, const char*> meant[] = {
        {"\"", "in"},          {"″", "in"},           {"''", "in"},          {"inch", "in"},        {"inches", "in"}, {"ins", "in"},
        {"millimetre", "mm"},  {"millimetres", "mm"}, {"millimeter", "mm"},  {"millimeters", "mm"}, {"MM", "mm"},     {"centimetre", "cm"},
        {"centimetres", "cm"}, {"centimeter", "cm"},  {"centimeters", "cm"}, {"CM", "cm"},          {"point", "pt"},  {"points", "pt"},
        {"pts", "pt"},         {"IN", "in"},          {"PT", "pt"}};
    for (const auto& [word, unit] : meant)
        if (written == word) return unit;
    if (written.size() < 3) return std::nullopt;  // "px" is one letter from "pt", and another thing
    return nearest_word(written, {"mm", "cm", "in", "pt"});
}

void tell_length(const std::string& text, const SourceMark& where, const std::string& example, Faults& faults) {
    const std::string expected = "a length with its unit, such as " + example;
    const Parts parts = parts_of(text);
    const bool unit_known = parts.unit == "mm" || parts.unit == "cm" || parts.unit == "in" || parts.unit == "pt";
    if (parts.number.empty()) {
        faults.add("bad-length", where, in_quotes(text) + " is no length", expected);
    } else if (parts.unit.empty() && parts.number.find(',') == std::string::npos) {
        faults.add("bare-number", where, in_quotes(text) + " has no unit", expected, "write '" + text + " mm' if millimetres are meant");
    } else if (!parts.unit.empty() && !unit_known) {
        const auto meant = unit_meant(parts.unit);
        faults.add("unknown-unit", where, in_quotes(parts.unit) + " is no unit of length", "mm, cm, in or pt",
                   meant ? "write '" + parts.number + " " + *meant + "'" : "");
    } else {
        const bool comma = parts.number.find(',') != std::string::npos;
        faults.add("bad-length", where, in_quotes(text) + " is no length", expected, comma ? "write a point in place of the comma" : "");
    }
}

}  // namespace

Reader<double> number_value(double least, double most) {
    return [least, most](const Node& node, Faults& faults) -> std::optional<double> {
        const std::string expected = "a number from " + plain(least) + " to " + plain(most);
        const std::string* text = scalar_text(node, faults, expected);
        if (!text) return std::nullopt;
        const auto number = node.quoted ? std::nullopt : number_in(*text);
        if (!number)
            faults.add("wrong-type", node.mark, in_quotes(*text) + " is no number", expected,
                       node.quoted && number_in(*text) ? "remove the quotes" : "");
        else if (*number < least || *number > most) faults.add("out-of-range", node.mark, in_quotes(*text) + " is out of range", expected);
        else return number;
        return std::nullopt;
    };
}

Reader<int> whole_number_value(int least, int most) {
    return [least, most](const Node& node, Faults& faults) -> std::optional<int> {
        const auto number = number_value(least, most)(node, faults);
        if (!number) return std::nullopt;
        if (*number == std::floor(*number)) return static_cast<int>(*number);
        faults.add("wrong-type", node.mark, in_quotes(node.text) + " is no whole number", "a whole number");
        return std::nullopt;
    };
}

Reader<double> quantity_value(QuantityForm form) {
    return [form](const Node& node, Faults& faults) -> std::optional<double> {
        const std::string expected = "a value such as " + form.example;
        const std::string* text = scalar_text(node, faults, expected);
        if (!text) return std::nullopt;
        const std::size_t end = std::min(text->find_first_not_of("-0123456789."), text->size());
        const auto number = number_in(text->substr(0, end));
        const std::string unit = trimmed(text->substr(end));
        const auto known = std::find_if(form.units.begin(), form.units.end(), [&](const Unit& u) { return u.name == unit; });
        if (!number) {
            faults.add("bad-quantity", node.mark, in_quotes(*text) + " is no number with a unit", expected);
        } else if (unit.empty() && !form.bare) {
            faults.add("bare-number", node.mark, in_quotes(*text) + " has no unit", expected,
                       "write '" + *text + " " + form.units.front().name + "'");
        } else if (!unit.empty() && known == form.units.end()) {
            const auto near = nearest_word(unit, names_of(form.units));
            faults.add("unknown-unit", node.mark, in_quotes(unit) + " is no unit that can stand here",
                       form.units.empty() ? "a number alone" : listed(names_of(form.units)), near ? "write '" + *near + "'" : "");
        } else {
            const double value = *number * (unit.empty() ? 1 : known->worth);
            if (value >= form.least && value <= form.most) return value;
            faults.add("out-of-range", node.mark, in_quotes(*text) + " is out of range", form.range);
        }
        return std::nullopt;
    };
}

Reader<Length> length_value(LengthRange range) {
    return [range](const Node& node, Faults& faults) -> std::optional<Length> {
        const std::string* text = scalar_text(node, faults, "a length with its unit, such as 3 mm or 1/8 in");
        if (!text) return std::nullopt;
        const auto length = read_length(*text);
        if (!length) tell_length(*text, node.mark, "3 mm or 1/8 in", faults);
        else if (*length < range.least || *length > range.most)
            faults.add("out-of-range", node.mark, in_quotes(*text) + " is out of range", range.words);
        else return length;
        return std::nullopt;
    };
}

std::optional<Size> size_value(const Node& node, Faults& faults) {
    const std::string example = "303 x 221.9 mm";
    const std::string* text = scalar_text(node, faults, "a width and a height, such as " + example);
    if (!text) return std::nullopt;
    const std::size_t times = text->find("×"), x = std::min(text->find('x'), text->find('X'));
    const std::size_t at = std::min(times, x), width_of_sign = at == times ? 2 : 1;
    if (at == std::string::npos) {
        faults.add("bad-size", node.mark, in_quotes(*text) + " is no width and height", "a size such as " + example);
        return std::nullopt;
    }
    const std::string second = trimmed(text->substr(at + width_of_sign));
    std::string first = trimmed(text->substr(0, at));
    if (parts_of(first).unit.empty() && !parts_of(second).unit.empty()) first += " " + parts_of(second).unit;
    const auto width = read_length(first), height = read_length(second);
    const Length least = Length::mm(10), most = Length::mm(5080);
    if (!height) tell_length(second, node.mark, "221.9 mm", faults);
    else if (!width) tell_length(first, node.mark, "303 mm", faults);
    else if (min(*width, *height) < least || max(*width, *height) > most)
        faults.add("out-of-range", node.mark, in_quotes(*text) + " is out of range", "10 mm to 5080 mm each way");
    else return Size{*width, *height};
    return std::nullopt;
}

}  // namespace qw::kit
