// SPDX-License-Identifier: GPL-3.0-or-later
#include "pdf/draw.h"

#include "pdf/fixtures.h"
#include "pdf/judges.h"
#include "support/fault_disk.h"

#include <catch2/catch.hpp>

#include <regex>
#include <sstream>

using namespace qw;
using namespace qw::literals;
using namespace qw::test;

namespace {

const Size letter{8.5_in, 11_in};
const std::string measures = "Boards 5 ⅝ × 8 ¾ in, 153 × 216 mm; ¼ ½ ⅛ ⅜ ⅞ ¹³⁄₁₆";

compose::Document with_lines(const std::vector<compose::Text>& lines) {
    compose::Document document = one_page(letter);
    for (const compose::Text& text : lines) document.pages[0].items.emplace_back(text);
    return document;
}

/// The rows of pdffonts: name, type, encoding, embedded, subset, unicode …
std::vector<std::string> font_rows(const Path& pdf) {
    std::istringstream rows(must_run("pdffonts " + quoted(pdf)));
    std::vector<std::string> found;
    int heading = 2;
    for (std::string row; std::getline(rows, row);)
        if (heading-- <= 0) found.push_back(row);
    return found;
}

}  // namespace

TEST_CASE("text is embedded, subset and can be taken out again, fractions and all") {
    const auto disk = real_disk();
    const TestFolder folder;
    compose::Document document = with_lines({line(measures, {1_in, 9_in}, 12_pt), line("Äpfel, naïve façade, Fjord", {1_in, 8_in}, 12_pt, type::Cut::strong),
                                             line("after the maker's instructions", {1_in, 7_in}, 12_pt, type::Cut::italic),
                                             line("Measurements №1", {1_in, 10_in}, 30_pt, type::Cut::title)});
    document.pages.push_back(with_lines({line("Second page: 9 sheets, ₅ ⁄ ⅝", {1_in, 9_in}, 12_pt)}).pages[0]);
    document.pages.push_back(with_lines({line("Third: zigzag", {1_in, 9_in}, 12_pt, type::Cut::strong)}).pages[0]);
    pdf::draw(*disk, folder / "a.pdf", document, drawing_fonts());
    check_sound(folder / "a.pdf");
    const std::vector<std::string> rows = font_rows(folder / "a.pdf");
    CHECK(rows.size() == 4);
    for (const std::string& row : rows) {
        INFO(row);
        CHECK(std::regex_search(row, std::regex("^[A-Z]{6}\\+(Lato|Vollkorn)-\\w+ +CID TrueType +Identity-H +yes yes yes ")));
    }
    const std::string words = must_run("pdftotext -enc UTF-8 " + quoted(folder / "a.pdf") + " -");
    for (const char* expected : {measures.c_str(), "Äpfel, naïve façade, Fjord", "after the maker's instructions", "Measurements №1",
                                 "Second page: 9 sheets, ₅ ⁄ ⅝", "Third: zigzag"}) {
        INFO(words);
        CHECK(contains(words, expected));
    }
    for (int page = 1; page <= 3; ++page) check_alike(folder / "a.pdf", page, folder.path());
    // A subset: the four whole files have above two megabytes.
    CHECK(std::filesystem::file_size(folder / "a.pdf") < 150'000);
}

TEST_CASE("a line ends where its width says, from every anchor", "[many]") {
    const auto disk = real_disk();
    const TestFolder folder;
    const Length size = 40_pt;
    // Glyphs whose widths are neighbours by number and less than a unit apart are among these.
    const std::string words = "HIKLMN OPR mn H";
    using Anchor = compose::Text::Anchor;
    for (const auto& [anchor, at] : {std::pair{Anchor::start, 1_in}, std::pair{Anchor::middle, 4_in}, std::pair{Anchor::end, 7_in}}) {
        compose::Text text = line(words, {at, 5_in}, size);
        text.anchor = anchor;
        const Path out = folder / ("a" + std::to_string(static_cast<int>(anchor)) + ".pdf");
        pdf::draw(*disk, out, with_lines({text}), drawing_fonts());
        const double width = drawing_fonts().width(type::Cut::text, size, words).in_points();
        const double start = at.in_points() - (anchor == Anchor::start ? 0 : anchor == Anchor::middle ? width / 2 : width);
        // Both H stand in their advance by the same bearing.
        const double bearing = 0.0935 * size.in_points();
        for (const Pixels& pixels : rendered(out, 1, 144, folder.path())) {
            const PixelBox box = dark_box(pixels);
            CHECK(box.left / 2.0 == Approx(start + bearing).margin(0.75));
            CHECK(box.right / 2.0 == Approx(start + width - bearing).margin(0.75));
            CHECK(box.bottom / 2.0 == Approx(792 - 360).margin(1));
        }
    }
}

TEST_CASE("the widths in the file are the fonts' own, to the half unit") {
    const auto disk = real_disk();
    const TestFolder folder;
    const std::string words = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ¼½¾⅛⅜⅝⅞";
    pdf::draw(*disk, folder / "a.pdf", with_lines({line(words, {1_in, 5_in}, 8_pt)}), drawing_fonts());
    // pdftotext's boxes come from the widths: the line's box is as wide as the line.
    const std::string boxes = must_run("pdftotext -bbox " + quoted(folder / "a.pdf") + " -");
    std::smatch found;
    REQUIRE(std::regex_search(boxes, found, std::regex("xMin=\"([0-9.]+)\" yMin=\"[0-9.]+\" xMax=\"([0-9.]+)\"")));
    const double width = std::stod(found[2]) - std::stod(found[1]);
    CHECK(width == Approx(drawing_fonts().width(type::Cut::text, 8_pt, words).in_points()).margin(0.00002));
}

TEST_CASE("turned text runs up the page from its anchor") {
    const auto disk = real_disk();
    const TestFolder folder;
    compose::Text text = line("HHHHHH", {4_in, 2_in}, 36_pt);
    text.turn = 90;
    text.anchor = compose::Text::Anchor::middle;
    text.at.y = 5_in;
    pdf::draw(*disk, folder / "a.pdf", with_lines({text}), drawing_fonts());
    const double width = drawing_fonts().width(type::Cut::text, 36_pt, "HHHHHH").in_points();
    const double cap = drawing_fonts().cap_height(type::Cut::text, 36_pt).in_points();
    for (const Pixels& pixels : rendered(folder / "a.pdf", 1, 72, folder.path())) {
        const PixelBox box = dark_box(pixels);
        CHECK(box.right == Approx(4 * 72).margin(1));
        CHECK(box.left == Approx(4 * 72 - cap).margin(1));
        CHECK((box.top + box.bottom) / 2.0 == Approx(792 - 5 * 72).margin(1));
        CHECK(box.bottom - box.top == Approx(width).margin(9));
    }
    compose::Text slanted = line("Slanted", {2_in, 2_in}, 20_pt);
    slanted.turn = 30;
    pdf::draw(*disk, folder / "b.pdf", with_lines({slanted}), drawing_fonts());
    CHECK(contains(file_text(folder / "b.pdf"), "0.8660254 0.5 -0.5 0.8660254 144 144 Tm"));
    check_alike(folder / "b.pdf", 1, folder.path());
}

TEST_CASE("grey text is grey") {
    const auto disk = real_disk();
    const TestFolder folder;
    compose::Text pale = line("HHHH", {1_in, 5_in}, 60_pt);
    pale.grey = 0.75;
    pdf::draw(*disk, folder / "a.pdf", with_lines({pale, line("HHHH", {1_in, 8_in}, 60_pt)}), drawing_fonts());
    for (const Pixels& pixels : rendered(folder / "a.pdf", 1, 72, folder.path())) CHECK(dark_box(pixels).bottom == Approx(792 - 8 * 72).margin(1));
    CHECK(contains(file_text(folder / "a.pdf"), "0.75 g\n"));
}

TEST_CASE("a character without a glyph is a fault, not an empty box") {
    const auto disk = real_disk();
    const TestFolder folder;
    for (const char* words : {"漢", "two\nlines", "\U0001F9F5", "bad \xFF byte"}) {
        const FaultNote note = refusal([&] { pdf::draw(*disk, folder / "a.pdf", with_lines({line(words, {1_in, 5_in}, 12_pt)}), drawing_fonts()); },
                                       FaultKind::not_carried_out);
        CHECK(note.code == "no-glyph");
        CHECK_FALSE(disk->stat(folder / "a.pdf"));
    }
}
