// SPDX-License-Identifier: GPL-3.0-or-later
#include "type/fonts.h"

#include "base/fault.h"
#include "support/fault_disk.h"
#include "type/characters.h"
#include "type/face.h"
#include "type/installed.h"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <thread>

using namespace qw;
using test::TestFolder;
using type::Cut;
using type::Fonts;

namespace {

const Fonts& fonts() {
    static const Fonts found = Fonts::find();
    return found;
}

constexpr Length em = Length::points(1000);  // makes an advance of n/1000 em n points wide

double advance(Cut cut, const std::string& utf8) { return fonts().width(cut, em, utf8).in_points(); }

/// Another font configuration for as long as it lives.
struct OtherConfiguration {
    explicit OtherConfiguration(const Path& file) { ::setenv("FONTCONFIG_FILE", file.c_str(), 1); }
    ~OtherConfiguration() { ::unsetenv("FONTCONFIG_FILE"); }
};

Path configuration(const TestFolder& folder, const std::string& inside) {
    const Path file = folder / "fonts.conf";
    std::ofstream(file) << "<?xml version=\"1.0\"?><fontconfig>" << inside << "</fontconfig>";
    return file;
}

}  // namespace

TEST_CASE("the cuts are the very faces, not substitutes") {
    CHECK(fonts().name(Cut::text) == "Lato-Regular");
    CHECK(fonts().name(Cut::strong) == "Lato-Bold");
    CHECK(fonts().name(Cut::italic) == "Lato-Italic");
    CHECK(fonts().name(Cut::title) == "Vollkorn-SemiBold");
    for (const Cut cut : type::all_cuts) CHECK(std::filesystem::is_regular_file(fonts().file(cut)));
}

TEST_CASE("figures of the cuts that numbers are set in are tabular") {
    // Not the italic: the six of Lato Italic is narrower than its other figures.
    for (const Cut cut : {Cut::text, Cut::strong}) {
        const double zero = advance(cut, "0");
        CHECK(zero > 400);
        for (const char digit : std::string("123456789")) CHECK(advance(cut, std::string(1, digit)) == zero);
    }
}

TEST_CASE("fractions have glyphs with usable advances") {
    const std::vector<std::string> characters = {
        "¼", "½", "¾", "⅛", "⅜", "⅝", "⅞", "\u2044",
        "⁰", "¹", "²", "³", "⁴", "⁵", "⁶", "⁷", "⁸", "⁹",
        "₀", "₁", "₂", "₃", "₄", "₅", "₆", "₇", "₈", "₉"};
    for (const Cut cut : {Cut::text, Cut::strong, Cut::italic}) {
        for (const std::string& character : characters) {
            INFO(character);
            CHECK(fonts().missing(cut, character).empty());
            CHECK(advance(cut, character) > 100);
            CHECK(advance(cut, character) < 1000);
        }
    }
}

TEST_CASE("superior and inferior figures are equally wide, so that fractions line up in columns") {
    for (const Cut cut : {Cut::text, Cut::strong, Cut::italic}) {
        for (const char* figure : {"¹", "²", "³", "⁴", "⁵", "⁶", "⁷", "⁸", "⁹", "₀", "₁", "₂", "₃", "₄", "₅", "₆", "₇", "₈", "₉"}) {
            INFO(figure);
            CHECK(advance(cut, figure) == advance(cut, "⁰"));
        }
    }
}

TEST_CASE("what sheets say can be set in every cut") {
    for (const Cut cut : type::all_cuts)
        CHECK(fonts().missing(cut, "Ab Zz 0 9 .,:;!?()[]/+-=%&@# \u00a0'\" ‘’“” – — … × ° µ • ± § © é ä ö ü ß ñ ç").empty());
}

TEST_CASE("what is missing is told once and in order") {
    CHECK(fonts().missing(Cut::text, "a\u6f22b\u5b57\u6f22") == std::vector<std::string>{"\u6f22", "\u5b57"});
    CHECK(fonts().missing(Cut::text, "\U0001F9F5") == std::vector<std::string>{"\U0001F9F5"});
    CHECK(fonts().missing(Cut::text, "two\nlines") == std::vector<std::string>{"\n"});
}

TEST_CASE("a line is as wide as its characters, at any size") {
    const std::string line = "Board 5 ⅝ × 8 ¾ in";
    double sum = 0;
    for (const std::uint32_t character : type::characters_of(line)) sum += advance(Cut::text, type::utf8_of(character));
    CHECK(advance(Cut::text, line) == Approx(sum).epsilon(1e-9));
    CHECK(fonts().width(Cut::text, Length::points(10), line).in_points() == Approx(sum / 100).margin(1e-4));
    CHECK(fonts().width(Cut::text, Length::points(10), "") == Length());
    // No kerning: the pair that every kerned font closes up keeps both advances.
    CHECK(advance(Cut::text, "AV") == advance(Cut::text, "A") + advance(Cut::text, "V"));
}

TEST_CASE("heights are those of the letters") {
    for (const Cut cut : type::all_cuts) {
        CHECK(fonts().cap_height(cut, em).in_points() > 600);
        CHECK(fonts().cap_height(cut, em).in_points() < 800);
        CHECK(fonts().descent(cut, em).in_points() > 150);
        CHECK(fonts().descent(cut, em).in_points() < 350);
    }
}

TEST_CASE("the same widths from several threads") {
    const std::string line = "12 sheets, ⅜ in";
    const Length alone = fonts().width(Cut::strong, Length::points(12), line);
    std::vector<Length> seen(4);
    std::vector<std::thread> threads;
    for (Length& width : seen)
        threads.emplace_back([&] {
            for (int i = 0; i < 1000; ++i) width = fonts().width(Cut::strong, Length::points(12), line);
        });
    for (std::thread& thread : threads) thread.join();
    for (const Length width : seen) CHECK(width == alone);
}

TEST_CASE("a missing family names each package, once for every face") {
    const TestFolder folder;
    const OtherConfiguration other(configuration(folder, ""));
    try {
        Fonts::find();
        FAIL("a machine without fonts was accepted");
    } catch (const Fault& fault) {
        CHECK(fault.kind() == FaultKind::not_carried_out);
        REQUIRE(fault.notes().size() == 4);
        CHECK(fault.notes()[0].code == "font-missing");
        CHECK(fault.notes()[0].mend == "install the Debian package fonts-lato");
        CHECK(fault.notes()[3].mend == "install the Debian package fonts-vollkorn");
    }
}

TEST_CASE("a family that only resembles the wanted one is not taken") {
    const TestFolder folder;
    std::filesystem::copy_file(fonts().file(Cut::strong), folder / "Lato-Bold.ttf");
    const OtherConfiguration other(configuration(folder, "<dir>" + folder.path().string() + "</dir>"));
    CHECK(type::installed_files({{"Lato", "Bold", "fonts-lato"}}) == std::vector<Path>{folder / "Lato-Bold.ttf"});
    CHECK_THROWS_AS(type::installed_files({{"Lato", "Regular", "fonts-lato"}}), Fault);
    // Also called family "Lato Black", style "Regular": the file must not pass for Lato Regular.
    std::filesystem::copy_file(fonts().file(Cut::strong).parent_path() / "Lato-Black.ttf", folder / "Lato-Black.ttf");
    CHECK_THROWS_AS(type::installed_files({{"Lato", "Regular", "fonts-lato"}}), Fault);
    CHECK_THROWS_AS(type::installed_files({{"Lat", "Bold", "fonts-lato"}}), Fault);
}

TEST_CASE("a file that is no TrueType font is refused by name") {
    const TestFolder folder;
    const Path file = folder / "broken.ttf";
    std::ofstream(file) << "not a font";
    try {
        type::read_face(file);
        FAIL("a broken font was accepted");
    } catch (const Fault& fault) {
        CHECK(fault.notes()[0].where.file == file.string());
        CHECK(fault.notes()[0].code == "font-unusable");
    }
}

TEST_CASE("UTF-8 falls apart into characters, and bad bytes into the replacement character") {
    CHECK(type::characters_of("aé⅝\U0001F9F5") == std::vector<std::uint32_t>{'a', 0xE9, 0x215D, 0x1F9F5});
    // RFC 3629 sections 3 and 10: overlong forms, surrogates, values above U+10FFFF, cut-off sequences.
    CHECK(type::characters_of("\xC0\xAF") == std::vector<std::uint32_t>{0xFFFD, 0xFFFD});
    CHECK(type::characters_of("\xED\xA0\x80").front() == 0xFFFD);
    CHECK(type::characters_of("\xF4\x90\x80\x80").front() == 0xFFFD);
    CHECK(type::characters_of("a\xE2\x85") == std::vector<std::uint32_t>{'a', 0xFFFD, 0xFFFD});
    CHECK(type::characters_of("\xE2z") == std::vector<std::uint32_t>{0xFFFD, 'z'});
    for (const std::uint32_t c : {0x24u, 0xA2u, 0x20ACu, 0x10348u}) CHECK(type::characters_of(type::utf8_of(c)) == std::vector{c});
}
