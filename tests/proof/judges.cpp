// SPDX-License-Identifier: GPL-3.0-or-later
// Tools that others wrote say the same of files that others and we wrote.
#include "base/digest.h"
#include "proof/render.h"
#include "proof/written_pdf.h"
#include "support/shell.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <regex>
#include <set>
#include <sstream>

using namespace qw;
using namespace qw::proof;
using namespace qw::proof::sample;
using test::run;
using test::TestFolder;

namespace {

FileFacts looked_at(const Path& path) {
    const auto disk = real_disk();
    return inspect(*disk, path);
}

std::string said(const std::string& command, const TestFolder& folder) {
    const auto answer = run(command, folder.path());
    INFO(command << "\n" << answer.text);
    REQUIRE(answer.status == 0);
    return answer.text;
}

/// The matches refer to `text`, which must outlive them.
std::vector<std::smatch> matches(const std::string& text, const std::string& pattern) {
    const std::regex expression(pattern);
    return {std::sregex_iterator(text.begin(), text.end(), expression), std::sregex_iterator()};
}

void check_box(const std::string& info, const std::string& name, const Rect& box) {
    const auto found = matches(info, name + ": +(-?[0-9.]+) +(-?[0-9.]+) +(-?[0-9.]+) +(-?[0-9.]+)");
    REQUIRE(found.size() == 1);
    CAPTURE(name);
    CHECK(std::stod(found[0][1]) == Approx(box.left.in_points()).margin(0.006));
    CHECK(std::stod(found[0][2]) == Approx(box.bottom.in_points()).margin(0.006));
    CHECK(std::stod(found[0][3]) == Approx(box.right.in_points()).margin(0.006));
    CHECK(std::stod(found[0][4]) == Approx(box.top.in_points()).margin(0.006));
}

/// "name embedded subset" of every font, as pdffonts and as we say it.
std::set<std::string> fonts_said(const std::string& listed) {
    std::set<std::string> fonts;
    for (const auto& line : matches(listed, "\n([^ \n]+) .* (yes|no) +(yes|no) +(yes|no) +[0-9]+ +[0-9]+")) {
        std::string name = line[1];
        if (line[3] == "yes") name.erase(0, 7);
        fonts.insert(name + " " + line[2].str() + " " + line[3].str());
    }
    return fonts;
}

std::set<std::string> fonts_told(const FileFacts& facts) {
    std::set<std::string> fonts;
    for (const auto& page : facts.pages)
        for (const auto& font : page.fonts)
            fonts.insert(font.name + (font.embedded ? " yes" : " no") + (font.subset ? " yes" : " no"));
    return fonts;
}

/// "page width height bits" of every picture.
std::vector<std::string> pictures_said(const std::string& listed) {
    std::vector<std::string> pictures;
    for (const auto& line : matches(listed, "\n +([0-9]+) +[0-9]+ image +([0-9]+) +([0-9]+) +[a-z]+ +[0-9]+ +([0-9]+) "))
        pictures.push_back(line[1].str() + " " + line[2].str() + " " + line[3].str() + " " + line[4].str());
    return pictures;
}

std::vector<std::string> pictures_told(const FileFacts& facts) {
    std::vector<std::string> pictures;
    for (std::size_t i = 0; i < facts.pages.size(); ++i)
        for (const auto& picture : facts.pages[i].pictures)
            pictures.push_back(std::to_string(i + 1) + " " + std::to_string(picture.width) + " " +
                               std::to_string(picture.height) + " " + std::to_string(picture.bits));
    return pictures;
}

/// Two pages with text in two fonts, an area and a picture that is turned.
const std::string postscript = R"(%!PS
<< /PageSize [500 400] >> setpagedevice
/Helvetica findfont 14 scalefont setfont 72 300 moveto (Board 5 5/8 in) show
0.5 setgray 20 20 200 50 rectfill
gsave 300 100 translate 90 rotate 200 100 scale 64 64 8 [64 0 0 -64 0 64]
{ currentfile 128 string readhexstring pop } image
)";

std::string postscript_text() {
    std::string text = postscript;
    for (int i = 0; i < 64 * 64; ++i) {
        static const char digits[] = "0123456789abcdef";
        const int value = (i * 37 + i / 64 * 11) % 256;
        text += digits[value / 16];
        text += digits[value % 16];
        if (i % 32 == 31) text += '\n';
    }
    return text + "grestore showpage\n/Times-Roman findfont 20 scalefont setfont 72 300 moveto (Spine) show showpage\n";
}

void check_with_judges(const TestFolder& folder, const std::string& name) {
    CAPTURE(name);
    said("qpdf --check " + name, folder);
    const FileFacts facts = looked_at(folder / name);
    CHECK(facts.damage == "");
    CHECK(fonts_told(facts) == fonts_said(said("pdffonts " + name, folder)));
    CHECK(pictures_told(facts) == pictures_said(said("pdfimages -list " + name, folder)));
    const std::string info = said("pdfinfo " + name, folder);
    CHECK_THAT(info, Catch::Contains("PDF version:     " + facts.version));
    CHECK_THAT(info, Catch::Contains("Pages:           " + std::to_string(facts.pages.size())));
}

/// A portable pixmap (P6) as pixels.
Pixels pixmap(const Path& path) {
    const auto disk = real_disk();
    const std::string bytes = read_text(*disk, path, 100'000'000);
    std::istringstream head(bytes);
    std::string kind;
    Pixels pixels;
    int most = 0;
    head >> kind >> pixels.width >> pixels.height >> most;
    REQUIRE(kind == "P6");
    const auto start = static_cast<std::size_t>(head.tellg()) + 1;
    pixels.rgb.assign(bytes.begin() + static_cast<std::ptrdiff_t>(start), bytes.end());
    REQUIRE(pixels.rgb.size() == std::size_t{pixels.width} * pixels.height * 3);
    return pixels;
}

}  // namespace

TEST_CASE("pdfinfo tells the same boxes and turn") {
    const TestFolder folder;
    WrittenPdf pdf;
    const int root = pdf.add();
    const int page = pdf.add("<< /Type /Page /Parent " + ref(root) + " /BleedBox [18 18 790 600] /TrimBox [30.5 40.25 700 500] >>");
    pdf.set(root, "<< /Type /Pages /Count 1 /MediaBox [0 0 792 612] /CropBox [-9 9 795 610] /Rotate -90 /Kids [" + ref(page) + "] >>");
    put(folder / "a.pdf", pdf.bytes(pdf.add("<< /Type /Catalog /Pages " + ref(root) + " >>")));
    const FileFacts facts = looked_at(folder / "a.pdf");
    REQUIRE(facts.pages.size() == 1);
    const std::string info = said("pdfinfo -box a.pdf", folder);
    check_box(info, "MediaBox", facts.pages[0].media);
    check_box(info, "CropBox", facts.pages[0].crop);
    check_box(info, "BleedBox", facts.pages[0].bleed);
    check_box(info, "TrimBox", facts.pages[0].trim);
    CHECK_THAT(info, Catch::Contains("Page rot:        " + std::to_string(facts.pages[0].rotate)));
}

TEST_CASE("pdffonts, pdfimages and pdfinfo agree on files of Ghostscript, cairo and qpdf") {
    const TestFolder folder;
    put(folder / "a.ps", postscript_text());
    said("gs -q -dNOPAUSE -dBATCH -sDEVICE=pdfwrite -o bare.pdf a.ps", folder);
    said("gs -q -dNOPAUSE -dBATCH -dPDFSETTINGS=/prepress -sDEVICE=pdfwrite -o full.pdf a.ps", folder);
    said("pdftocairo -pdf full.pdf cairo.pdf", folder);
    said("qpdf --object-streams=generate --linearize full.pdf packed.pdf", folder);
    for (const std::string name : {"bare.pdf", "full.pdf", "cairo.pdf", "packed.pdf"}) check_with_judges(folder, name);
    const FileFacts bare = looked_at(folder / "bare.pdf"), full = looked_at(folder / "full.pdf");
    REQUIRE(full.pages.size() == 2);
    CHECK_FALSE(bare.pages.at(0).fonts.at(0).embedded);
    CHECK(full.pages[0].fonts.at(0).embedded);
    CHECK(full.pages[0].has_text);
    CHECK(full.pages[0].has_paths);
    CHECK(full.pages[0].pictures.size() == 1);
    CHECK(full.pages[1].has_text);
    CHECK_FALSE(full.pages[1].has_paths);
}

TEST_CASE("A PNG that img2pdf passes through is found by its own bytes") {
    const TestFolder folder;
    put(folder / "a.pdf", one_page("1 0 0 rg 20 20 100 50 re f"));
    said("pdftoppm -r 144 -png -singlefile a.pdf a && img2pdf --pagesize A4^T a.png -o i.pdf", folder);
    check_with_judges(folder, "i.pdf");
    const FileFacts facts = looked_at(folder / "i.pdf");
    REQUIRE(facts.pages.size() == 1);
    REQUIRE(facts.pages[0].pictures.size() == 1);
    const PlacedPicture& picture = facts.pages[0].pictures[0];
    CHECK(picture.width == 400);
    CHECK(picture.height == 200);
    CHECK_FALSE(facts.pages[0].has_paths);
    CHECK_FALSE(facts.pages[0].has_text);
    // A PNG's picture data is what its IDAT chunks hold (PNG, third edition, 11.2.3), chunk after chunk.
    const auto disk = real_disk();
    const std::string png = read_text(*disk, folder / "a.png", 1'000'000);
    std::string data;
    for (std::size_t at = 8; at + 8 < png.size();) {
        std::size_t length = 0;
        for (std::size_t i = 0; i < 4; ++i) length = length << 8 | static_cast<unsigned char>(png[at + i]);
        if (png.compare(at + 4, 4, "IDAT") == 0) data += png.substr(at + 8, length);
        at += length + 12;
    }
    CHECK(picture.stream_sha256 == sha256_of(data));
    CHECK(picture.filter == "FlateDecode");
}

TEST_CASE("qpdf gives the same raw bytes of a picture") {
    const TestFolder folder;
    WrittenPdf pdf;
    const int picture = pdf.stream("/Subtype /Image /Width 3 /Height 1 /BitsPerComponent 8 /ColorSpace /DeviceGray /Filter /ASCIIHexDecode", "010203>");
    put(folder / "a.pdf", one_page(pdf, "/I Do", "/XObject << /I " + ref(picture) + " >>"));
    const std::string listed = said("qpdf --show-object=" + std::to_string(picture) + " --raw-stream-data a.pdf | sha256sum", folder);
    CHECK(looked_at(folder / "a.pdf").pages.at(0).pictures.at(0).stream_sha256 == listed.substr(0, 64));
}

TEST_CASE("mutool places the pictures of nested forms where we do") {
    const TestFolder folder;
    WrittenPdf pdf;
    const int picture = small_picture(pdf);
    const int inner = pdf.stream("/Type /XObject /Subtype /Form /BBox [0 0 500 500] /Matrix [.8 .6 -.6 .8 5 6] /Resources << /XObject << /I " +
                                     ref(picture) + " >> >>", "q 30 2 -3 40 0 0 cm /I Do Q /I Do");
    const int outer = pdf.stream("/Type /XObject /Subtype /Form /BBox [0 0 500 500] /Matrix [0 1 -1 0 150 0] /Resources << /XObject << /F " +
                                     ref(inner) + " >> >>", "q 1.5 0 .25 1 0 0 cm /F Do Q");
    const int stamp = pdf.stream("/Type /XObject /Subtype /Form /BBox [0 0 10 20] /Matrix [0 1 -1 0 3 4] /Resources << /XObject << /I " +
                                     ref(picture) + " >> >>", "10 0 0 20 0 0 cm /I Do");
    put(folder / "a.pdf",
        one_page(pdf, "q 2 0 0 -1 10 90 cm /F Do Q 5 0 0 5 0 0 cm /I Do", "/XObject << /F " + ref(outer) + " /I " + ref(picture) + " >>",
                 "/MediaBox [0 0 200 100] /Annots [<< /Type /Annot /Subtype /Stamp /F 4 /Rect [100 50 140 60] /AP << /N " + ref(stamp) + " >> >>]"));
    const std::string trace = said("mutool trace a.pdf", folder);
    INFO(trace);
    const auto seen = matches(trace, "<fill_image [^>]*transform=\"([^\"]*)\"");
    const FileFacts facts = looked_at(folder / "a.pdf");
    CHECK(facts.damage == "");
    REQUIRE(facts.pages.size() == 1);
    REQUIRE(facts.pages[0].pictures.size() == 4);
    REQUIRE(seen.size() == 4);
    for (std::size_t i = 0; i < 4; ++i) {
        CAPTURE(i);
        // Its pages and its pictures count downward: one flip before our matrix, one behind it.
        const Matrix flipped = Matrix{1, 0, 0, -1, 0, 100}.after(facts.pages[0].pictures[i].place.after({1, 0, 0, -1, 0, 1}));
        std::istringstream numbers(seen[i][1].str());
        for (const double ours : {flipped.a, flipped.b, flipped.c, flipped.d, flipped.e, flipped.f}) {
            double theirs = 0;
            REQUIRE(numbers >> theirs);
            CHECK(theirs == Approx(ours).margin(0.002));
        }
    }
}

TEST_CASE("mutool draws the same ink in the same place") {
    const TestFolder folder;
    put(folder / "a.pdf", one_page("0 g 10 20 50 30 re f .5 0 0 rg 100 60 m 150 60 l 125 85 l f", "",
                                   "/MediaBox [0 0 200 100] /CropBox [0 0 180 100] /Rotate 90"));
    said("mutool draw -q -r 144 -c rgb -o a.ppm a.pdf", folder);
    const Ink theirs = ink_of(pixmap(folder / "a.ppm"));
    Renderer renderer(folder / "a.pdf");
    const Ink ours = ink_of(renderer.page(1, 144));
    REQUIRE(ours.map.columns == theirs.map.columns);
    REQUIRE(ours.map.rows == theirs.map.rows);
    CHECK(ours.coverage == Approx(theirs.coverage).epsilon(0.01));
    for (const auto side : {&PixelBox::left, &PixelBox::top, &PixelBox::right, &PixelBox::bottom})
        CHECK(std::abs(static_cast<int>(ours.box.*side) - static_cast<int>(theirs.box.*side)) <= 1);
}
