// SPDX-License-Identifier: GPL-3.0-or-later
// Artwork comes out of the finished PDFs as it went in.
#include "program/program.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

TEST_CASE("a JPEG comes out of the PDF as the same file", "[passage]") {
    for (const char* edition : {"letter/borderless", "a4/bordered"}) {
        TestFolder folder;
        REQUIRE(run("pdfimages -all " + quoted((release_of("tidewater-almanac") / edition / "full-sheets.pdf").string()) + " out", folder.path()).status == 0);
        for (int i = 1; i <= 5; ++i) {
            const Path artwork = source_folder / ("kits/tidewater-almanac/art/covers/cover-" + std::to_string(i) + ".jpg");
            CHECK(read(folder / ("out-00" + std::to_string(i - 1) + ".jpg")) == read(artwork));
        }
    }
}

TEST_CASE("a PNG comes out of the PDF with the same pixels", "[passage]") {
    TestFolder folder;
    // Pages 4 and 8 are palette pictures, the others RGB.
    REQUIRE(
        run("pdfimages -all -l 8 " + quoted((release_of("tidewater-almanac") / "a4/borderless/journal-pages.pdf").string()) + " out", folder.path())
            .status == 0);
    for (const int i : {1, 4, 6, 8}) {
        const std::string artwork = "0" + std::to_string(i) + ".png", out = "out-00" + std::to_string(i - 1) + ".png";
        const Said apart = run(
            "compare -metric AE " + quoted((source_folder / "kits/tidewater-almanac/art/pages" / artwork).string()) + " " + out + " null:",
            folder.path());
        INFO(artwork << " " << apart.text);
        CHECK(apart.text == "0");
    }
}

TEST_CASE("a PDF page stays vector drawing and text, its resources copied once", "[passage]") {
    const Path pdf = release_of("lamplight-mini") / "letter/borderless/journal-pages.pdf";
    CHECK(run("pdfimages -list " + quoted(pdf.string()) + " | tail -n +3", "/").text.empty());
    const std::string artwork = quoted((source_folder / "kits/lamplight-mini/art/pages.pdf").string());
    const auto words = [](const std::string& file) { return run("pdftotext " + file + " - | tr -s ' \\n\\f' '\\n' | sort | uniq -c", "/").text; };
    CHECK(words(quoted(pdf.string())) == words(artwork));
    const auto fonts = [](const std::string& file) { return run("pdffonts " + file + " | tail -n +3 | awk '{print $1}' | sed 's/^......+//' | sort", "/").text; };
    CHECK(fonts(quoted(pdf.string())) == fonts(artwork));
    CHECK(std::filesystem::file_size(pdf) < std::filesystem::file_size(source_folder / "kits/lamplight-mini/art/pages.pdf") * 3 / 2);
}
