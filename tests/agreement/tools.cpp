// SPDX-License-Identifier: GPL-3.0-or-later
#include "agreement/tools.h"

#include "support/shell.h"

#include <nlohmann/json.hpp>

#include <cstdio>
#include <cstdlib>
#include <iterator>
#include <map>
#include <sstream>

namespace qw::agreement {

namespace {

test::Said said(const std::string& command, const Path& pdf) { return test::run("LC_ALL=C " + command + " " + test::quoted(pdf.string()), "/"); }

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

std::vector<std::string> words_of(const std::string& line) {
    std::istringstream in(line);
    return {std::istream_iterator<std::string>(in), {}};
}

std::vector<double> numbers_in(const std::string& text) {
    std::istringstream in(text);
    return {std::istream_iterator<double>(in), {}};
}

/// Lines of a table under a rule of dashes.
std::vector<std::string> rows_of(const std::string& text) {
    std::vector<std::string> rows;
    bool table = false;
    for (const std::string& line : lines_of(text)) {
        if (table && !line.empty()) rows.push_back(line);
        table = table || line.starts_with("-----");
    }
    return rows;
}

/// The colour spaces of pdfimages' list (its manual) by their names in a file.
std::string family_of(const std::string& colour) {
    static const std::map<std::string, std::string> families{{"gray", "grey"},     {"rgb", "rgb"}, {"cmyk", "cmyk"},      {"icc", "icc"},
                                                             {"index", "indexed"}, {"lab", "lab"}, {"sep", "separation"}, {"devn", "devicen"}};
    const auto found = families.find(colour);
    return found == families.end() ? colour : found->second;
}

void tell_page_line(const std::string& line, Info& info) {
    int page = 0, used = 0;
    if (std::sscanf(line.c_str(), "Page %d %n", &page, &used) != 1 || page < 1) return;
    if (info.of_pages.size() < static_cast<std::size_t>(page)) info.of_pages.resize(static_cast<std::size_t>(page));
    Info::Page& of = info.of_pages[static_cast<std::size_t>(page) - 1];
    const std::string rest = line.substr(static_cast<std::size_t>(used));
    const std::size_t colon = rest.find(':');
    if (colon == std::string::npos) return;
    const std::string name = rest.substr(0, colon), value = rest.substr(colon + 1);
    if (name == "rot") of.rotate = std::stoi(value);
    if (name == "MediaBox") of.media = numbers_in(value);
    if (name == "CropBox") of.crop = numbers_in(value);
    if (name == "BleedBox") of.bleed = numbers_in(value);
    if (name == "TrimBox") of.trim = numbers_in(value);
}

}  // namespace

Info info_of(const Path& pdf) {
    Info info;
    const test::Said answer = said("pdfinfo -box -f 1 -l 100000", pdf);
    info.opened = answer.status == 0;
    for (const std::string& line : lines_of(answer.text)) {
        const auto words = words_of(line);
        if (words.size() < 2) continue;
        if (words[0] == "Pages:") info.pages = std::stoi(words[1]);
        if (words[0] == "Encrypted:") info.encrypted = words[1] == "yes";
        if (words[0] == "JavaScript:") info.scripts = words[1] == "yes";
        if (words[0] == "PDF" && words[1] == "version:") info.version = words.at(2);
        if (words[0] == "Page") tell_page_line(line, info);
    }
    return info;
}

std::set<std::string> fonts_of(const Path& pdf) {
    std::set<std::string> fonts;
    for (const std::string& row : rows_of(said("pdffonts", pdf).text)) {
        // A name, type and encoding of several words, then emb, sub, uni, and the object's two numbers or "[none]".
        auto words = words_of(row);
        if (!words.empty() && words.back() == "[none]") words.push_back("");
        if (words.size() < 8) continue;
        std::string name = words[0] == "[none]" ? "" : words[0];
        const std::string embedded = words[words.size() - 5], subset = words[words.size() - 4];
        if (subset == "yes" && name.size() > 7) name.erase(0, 7);
        fonts.insert(name + " " + embedded + " " + subset);
    }
    return fonts;
}

Pictures pictures_of(const Path& pdf) {
    Pictures pictures;
    for (const std::string& row : rows_of(said("pdfimages -list", pdf).text)) {
        const auto words = words_of(row);
        if (words.size() < 10) continue;
        const std::string size = words[0] + " " + words[3] + " x " + words[4];
        if (words[2] == "smask") pictures.soft_masks.insert(std::stoi(words[0]));
        else if (words[2] == "stencil" || words[8] == "jpx") pictures.painted.insert(size);
        else if (words[2] == "image") pictures.painted.insert(size + ", " + family_of(words[5]) + ", " + words[7]);
    }
    return pictures;
}

int checked(const Path& pdf) { return said("qpdf --check", pdf).status; }

std::optional<Structure> structure_of(const Path& pdf) {
    const test::Said answer = said("qpdf --no-warn --json --json-key=encrypt --json-key=attachments --json-key=pages", pdf);
    const auto json = nlohmann::json::parse(answer.text, nullptr, false);
    if (json.is_discarded() || (answer.status != 0 && answer.status != 3)) return std::nullopt;
    return Structure{json["encrypt"]["encrypted"], !json["attachments"].empty(), json["pages"].size()};
}

Shown shown_of(const Path& pdf) {
    // One line for each.
    const std::string of = " trailer/Root/ViewerPreferences/";
    const test::Said answer = test::run("mutool show " + test::quoted(pdf.string()) + " trailer/Root/Pages/Count" + of + "PrintScaling" + of +
                                            "Duplex" + of + "PickTrayByPDFSize trailer/Root/OpenAction/S 2>/dev/null",
                                        "/");
    const auto lines = lines_of(answer.text);
    Shown shown;
    shown.opened = answer.status == 0 && lines.size() == 5;
    if (!shown.opened) return shown;
    const auto plain = [](const std::string& value) { return value == "null" ? "" : value; };
    shown.pages = std::atoi(lines[0].c_str());
    shown.print_scaling = plain(lines[1]);
    shown.duplex = plain(lines[2]);
    shown.tray = plain(lines[3]);
    shown.opens_with_script = lines[4] == "/JavaScript";
    return shown;
}

}  // namespace qw::agreement
