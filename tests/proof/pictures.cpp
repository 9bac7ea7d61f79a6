// SPDX-License-Identifier: GPL-3.0-or-later
// Coordinates: ISO 32000-1 8.3; clipping: 8.5.4; images: 8.9; forms: 8.10; appearances: 12.5.5.
#include "base/digest.h"
#include "proof/written_pdf.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::proof;
using namespace qw::proof::sample;

namespace {

Rect points(double left, double bottom, double right, double top) {
    return {Length::points(left), Length::points(bottom), Length::points(right), Length::points(top)};
}

/// The pictures of a page whose resources have one as /I.
std::vector<PlacedPicture> painted(const std::string& content) {
    WrittenPdf pdf;
    const int picture = small_picture(pdf);
    return only_page(one_page(pdf, content, "/XObject << /I " + ref(picture) + " >>")).pictures;
}

std::optional<Rect> clip_of(const std::string& content) {
    const auto pictures = painted(content + " /I Do");
    REQUIRE(pictures.size() == 1);
    return pictures.front().clip;
}

PlacedPicture inline_of(const std::string& dictionary, const std::string& data, const std::string& resources = "") {
    const PageFacts page = only_page(one_page("q 10 0 0 20 1 2 cm BI " + dictionary + " ID " + data + " EI Q 0 0 5 5 re f", resources));
    REQUIRE(page.pictures.size() == 1);
    CHECK(page.pictures.front().place == Matrix{10, 0, 0, 20, 1, 2});
    CHECK(page.has_paths);
    return page.pictures.front();
}

}  // namespace

TEST_CASE("A picture is told with its stream, its samples and its place") {
    const auto pictures = painted("q 144 0 0 72 10 20 cm /I Do Q");
    REQUIRE(pictures.size() == 1);
    const PlacedPicture& picture = pictures.front();
    CHECK(picture.stream_sha256 == sha256_of(small_picture_data));
    CHECK(picture.filter == "");
    CHECK(picture.width == 2);
    CHECK(picture.height == 2);
    CHECK(picture.bits == 8);
    CHECK(picture.colour_space == "DeviceRGB");
    CHECK_FALSE(picture.soft_mask);
    CHECK(picture.place == Matrix{144, 0, 0, 72, 10, 20});
    CHECK_FALSE(picture.clip);
}

TEST_CASE("The matrices of cm multiply in front, and Q takes them back") {
    const auto pictures = painted("q 2 0 0 3 10 20 cm q 0 1 -1 0 5 7 cm /I Do Q /I Do Q /I Do Q /I Do");
    REQUIRE(pictures.size() == 4);
    CHECK(pictures[0].place == Matrix{0, 3, -2, 0, 20, 41});
    CHECK(pictures[1].place == Matrix{2, 0, 0, 3, 10, 20});
    CHECK(pictures[2].place == Matrix{});
    CHECK(pictures[3].place == Matrix{});
}

TEST_CASE("A raw stream is hashed as it stands, whatever its filters") {
    WrittenPdf pdf;
    const std::string data = "<80ff00ff>>";
    const int picture = pdf.stream("/Subtype /Image /Width 2 /Height 1 /BitsPerComponent 4 /ColorSpace [/Indexed /DeviceRGB 15 " +
                                       ref(pdf.stream("", std::string(48, '\x40'))) +
                                       "] /Filter [/ASCIIHexDecode /RunLengthDecode] /SMask " + ref(pdf.stream("/Subtype /Image", "x")),
                                   data);
    const auto pictures = only_page(one_page(pdf, "/I Do", "/XObject << /I " + ref(picture) + " >>")).pictures;
    REQUIRE(pictures.size() == 1);
    CHECK(pictures[0].stream_sha256 == sha256_of(data));
    CHECK(pictures[0].filter == "ASCIIHexDecode+RunLengthDecode");
    CHECK(pictures[0].colour_space == "Indexed");
    CHECK(pictures[0].bits == 4);
    CHECK(pictures[0].soft_mask);
}

TEST_CASE("A stencil has one bit and no colour space") {
    WrittenPdf pdf;
    const int stencil = pdf.stream("/Subtype /Image /Width 8 /Height 1 /ImageMask true", "\x55");
    const auto pictures = only_page(one_page(pdf, "/I Do", "/XObject << /I " + ref(stencil) + " >>")).pictures;
    REQUIRE(pictures.size() == 1);
    CHECK(pictures[0].bits == 1);
    CHECK(pictures[0].colour_space == "");
}

TEST_CASE("Forms are entered with their matrix, their box and their own resources") {
    WrittenPdf pdf;
    const int picture = small_picture(pdf);
    const int inner = pdf.stream("/Subtype /Form /BBox [0 0 1000 1000] /Matrix [1 0 0 1 5 6] /Resources << /XObject << /Z " +
                                     ref(picture) + " >> >>",
                                 "q 3 0 0 4 0 0 cm /Z Do");
    const int outer = pdf.stream("/Subtype /Form /BBox [0 0 50 60] /Matrix [0 1 -1 0 100 0] /Resources << /XObject << /I " +
                                     ref(inner) + " >> >>",
                                 "/I Do");
    const auto pictures = only_page(one_page(pdf, "q 2 0 0 2 10 20 cm /F Do Q /F Do",
                                             "/XObject << /F " + ref(outer) + " /Z 1 0 R >>")).pictures;
    REQUIRE(pictures.size() == 2);
    // (x, y) -> inner (3x+5, 4y+6) -> outer (100-Y, X) -> page (2X+10, 2Y+20)
    CHECK(pictures[0].place == Matrix{0, 6, -8, 0, 198, 30});
    CHECK(pictures[0].clip == points(90, 30, 198, 120));
    CHECK(pictures[1].place == Matrix{0, 3, -4, 0, 94, 5});
    CHECK(pictures[1].clip == points(40, 5, 94, 50));  // the outer box cut by the inner one, which begins at (5, 6)
}

TEST_CASE("What a form leaves open does not reach the page, and a form cannot take the page's states") {
    WrittenPdf pdf;
    const int picture = small_picture(pdf);
    const int form = pdf.stream("/Subtype /Form /BBox [0 0 9 9]", "Q Q Q q q 7 0 0 7 0 0 cm 0 0 1 1 re W");
    const auto pictures = only_page(one_page(pdf, "q 2 0 0 2 0 0 cm q /F Do n /I Do Q /I Do Q /I Do",
                                             "/XObject << /F " + ref(form) + " /I " + ref(picture) + " >>")).pictures;
    REQUIRE(pictures.size() == 3);
    CHECK(pictures[0].place == Matrix{2, 0, 0, 2, 0, 0});
    CHECK_FALSE(pictures[0].clip);
    CHECK(pictures[1].place == Matrix{2, 0, 0, 2, 0, 0});
    CHECK(pictures[2].place == Matrix{});
}

TEST_CASE("A form without resources paints from those of the page") {
    WrittenPdf pdf;
    const int picture = small_picture(pdf);
    const int form = pdf.stream("/Subtype /Form /BBox [0 0 9 9]", "/I Do");
    CHECK(only_page(one_page(pdf, "/F Do", "/XObject << /F " + ref(form) + " /I " + ref(picture) + " >>")).pictures.size() == 1);
}

TEST_CASE("Clips narrow to what all of them leave") {
    CHECK_FALSE(clip_of(""));
    CHECK_FALSE(clip_of("10 10 50 50 re n"));
    CHECK(clip_of("10 20 50 60 re W n") == points(10, 20, 60, 80));
    CHECK(clip_of("10 20 50 60 re W* n 30 0 100 40 re W n") == points(30, 20, 60, 40));
    CHECK_FALSE(clip_of("q 10 20 50 60 re W n Q"));
    CHECK(clip_of("0 0 10 10 re W n 20 20 5 5 re W n")->empty());
}

TEST_CASE("A clip counts from the painting that ends its path, in the matrix in which it was drawn") {
    CHECK(clip_of("10 20 50 60 re W f") == points(10, 20, 60, 80));
    CHECK(clip_of("2 0 0 2 5 5 cm 10 20 50 60 re W n") == points(25, 45, 125, 165));
    CHECK(clip_of("0 1 -1 0 200 0 cm 10 20 50 60 re W n") == points(120, 10, 180, 60));
    CHECK(clip_of("60 80 -50 -60 re W n") == points(10, 20, 60, 80));
    CHECK(clip_of("10 20 m 60 20 l 60 80 l 10 80 l h W n 1 0 0 1 99 99 cm") == points(10, 20, 60, 80));
}

TEST_CASE("A clip that is no upright rectangle counts with the box around it") {
    CHECK(clip_of("0 0 m 40 0 l 20 30 l h W n") == points(0, 0, 40, 30));
    CHECK(clip_of("0 0 10 10 re 40 40 10 10 re W n") == points(0, 0, 50, 50));
    CHECK(clip_of("0 0 m 0 50 80 50 80 0 c W n") == points(0, 0, 80, 50));
    CHECK(clip_of("0 0 m 10 60 20 0 v W n") == points(0, 0, 20, 60));
    CHECK(clip_of("0 0 m 10 -60 20 0 y W n") == points(0, -60, 20, 0));
    CHECK(clip_of(".5 .5 -.5 .5 0 0 cm 0 0 40 40 re W n") == points(-20, 0, 20, 40));
    CHECK(clip_of("0 0 10 10 re 90 90 m W n") == points(0, 0, 10, 10));
}

TEST_CASE("A picture on several pages is the same picture, and is read once") {
    WrittenPdf pdf;
    const std::string data(200'000, 'x');
    const int picture = pdf.stream("/Subtype /Image /Width 200 /Height 1000 /BitsPerComponent 8 /ColorSpace /DeviceGray", data);
    const int root = pdf.add();
    std::string kids;
    for (int i = 0; i < 5; ++i) {
        const int contents = pdf.stream("", "/I Do /I Do");
        kids += ref(pdf.add("<< /Type /Page /MediaBox [0 0 9 9] /Parent " + ref(root) + " /Contents " + ref(contents) +
                            " /Resources << /XObject << /I " + ref(picture) + " >> >> >>")) + " ";
    }
    pdf.set(root, "<< /Type /Pages /Count 5 /Kids [" + kids + "] >>");
    const std::string bytes = pdf.bytes(pdf.add("<< /Type /Catalog /Pages " + ref(root) + " >>"));
    TextDisk disk(bytes);
    const FileFacts facts = inspect(disk, "a.pdf");
    CHECK(facts.damage == "");
    REQUIRE(facts.pages.size() == 5);
    for (const PageFacts& page : facts.pages) {
        REQUIRE(page.pictures.size() == 2);
        CHECK(page.pictures[0].stream_sha256 == sha256_of(data));
        CHECK(page.pictures[1].stream_sha256 == sha256_of(data));
    }
    // Once for the file's digest, once for the picture's; the rest is structure, read in windows.
    CHECK(disk.bytes_read < 2 * bytes.size() + 200'000);
    CHECK(disk.longest_read <= 256 * 1024);
}

TEST_CASE("Inline images are pictures; their abbreviations are resolved") {
    const PlacedPicture rgb = inline_of("/W 2 /H 2 /BPC 8 /CS /RGB", small_picture_data);
    CHECK(rgb.stream_sha256 == sha256_of(small_picture_data));
    CHECK(rgb.colour_space == "DeviceRGB");
    CHECK(rgb.width == 2);
    CHECK(rgb.height == 2);
    CHECK(rgb.bits == 8);
    const PlacedPicture indexed = inline_of("/Width 4 /Height 1 /BPC 2 /CS [/I /RGB 3 <000000ff0000ffffff00ff00>] /F [/AHx]", "1b>");
    CHECK(indexed.colour_space == "Indexed");
    CHECK(indexed.filter == "ASCIIHexDecode");
    CHECK(indexed.stream_sha256 == sha256_of("1b>"));
    const PlacedPicture mask = inline_of("/W 8 /H 1 /IM true /D [1 0]", "\x55");
    CHECK(mask.bits == 1);
    CHECK(mask.colour_space == "");
    const PlacedPicture named = inline_of("/W 1 /H 1 /BPC 8 /CS /Mine /F /Fl", "zz", "/ColorSpace << /Mine [/CalGray << >>] >>");
    CHECK(named.colour_space == "CalGray");
    CHECK(named.filter == "FlateDecode");
}

TEST_CASE("The last byte of an inline image may be white space") {
    CHECK(inline_of("/W 3 /H 1 /BPC 8 /CS /G", "ab\n").stream_sha256 == sha256_of("ab\n"));
    CHECK(inline_of("/W 9 /H 1 /BPC 8 /CS /G /F /RL /L 3", "ab\n").stream_sha256 == sha256_of("ab\n"));
}

TEST_CASE("Text and paths are seen where they leave a mark") {
    const auto font = "/Font << /F << /Type /Font /Subtype /Type1 /BaseFont /Helvetica >> >>";
    const auto text = [&](const std::string& show) { return only_page(one_page("BT /F 9 Tf " + show + " ET", font)).has_text; };
    CHECK(text("(a) Tj"));
    CHECK(text("[ -3 (a) ] TJ"));
    CHECK(text("(a) '"));
    CHECK(text("1 2 (a) \""));
    CHECK(text("<41> Tj"));
    CHECK_FALSE(text("() Tj [ 3 () ] TJ"));
    CHECK_FALSE(text(""));
    const auto paths = [](const std::string& content) { return only_page(one_page(content)).has_paths; };
    for (const std::string paint : {"S", "s", "f", "F", "f*", "B", "B*", "b", "b*"}) {
        CAPTURE(paint);
        CHECK(paths("0 0 9 9 re " + paint));
        CHECK(paths("0 0 m 9 9 l " + paint));
        CHECK_FALSE(paths(paint));
        CHECK_FALSE(paths("0 0 m " + paint));
        CHECK_FALSE(paths("0 0 9 9 re n " + paint));
    }
    CHECK(only_page(one_page("/Sh sh", "/Shading << /Sh << /ShadingType 2 >> >>")).has_paths);
    CHECK_FALSE(paths("/Span << /ActualText (f) /N 3 >> BDC EMC % f\n (S) pop [ 0 1 ] 0 d"));
}

TEST_CASE("Contents in several streams are one content") {
    WrittenPdf pdf;
    const int picture = small_picture(pdf), root = pdf.add();
    const int first = pdf.stream("", "q 2 0 0 2 0 0"), second = pdf.stream("/Filter /ASCIIHexDecode", "636d202f4920446f>");
    const int page = pdf.add("<< /Type /Page /MediaBox [0 0 9 9] /Parent " + ref(root) + " /Contents [" + ref(first) + " " +
                             ref(second) + "] /Resources << /XObject << /I " + ref(picture) + " >> >> >>");
    pdf.set(root, "<< /Type /Pages /Count 1 /Kids [" + ref(page) + "] >>");
    const auto pictures = only_page(pdf.bytes(pdf.add("<< /Type /Catalog /Pages " + ref(root) + " >>"))).pictures;
    REQUIRE(pictures.size() == 1);
    CHECK(pictures[0].place == Matrix{2, 0, 0, 2, 0, 0});
}

TEST_CASE("What an annotation shows is part of the page, unless it is hidden") {
    WrittenPdf pdf;
    const int picture = small_picture(pdf);
    const int form = pdf.stream("/Subtype /Form /BBox [0 0 10 20] /Matrix [0 1 -1 0 0 0] /Resources << /XObject << /I " +
                                    ref(picture) + " >> >>",
                                "0 0 5 5 re f q 10 0 0 20 0 0 cm /I Do Q");
    const auto annotated = [&](const std::string& entries) {
        WrittenPdf copy = pdf;
        return only_page(one_page(copy, "q 9 0 0 9 0 0 cm", "", "/MediaBox [0 0 200 100] /Annots [<< /Subtype /Stamp " + entries +
                                                  " /Rect [100 50 140 60] >>]"));
    };
    const PageFacts shown = annotated("/AP << /N " + ref(form) + " >>");
    CHECK(shown.has_paths);
    REQUIRE(shown.pictures.size() == 1);
    // the box [0 0 10 20], turned, is [-20 0 0 10]; on the rectangle it is 2 times as wide and as high as it was
    CHECK(shown.pictures[0].place == Matrix{0, 10, -40, 0, 140, 50});
    CHECK(shown.pictures[0].clip == points(100, 50, 140, 60));
    CHECK(annotated("/AP << /N << /On " + ref(form) + " >> >> /AS /On").pictures.size() == 1);
    CHECK(annotated("/AP << /N << /On " + ref(form) + " >> >> /AS /Off").pictures.empty());
    CHECK(annotated("/F 2 /AP << /N " + ref(form) + " >>").pictures.empty());
    CHECK(annotated("").pictures.empty());
}
