// SPDX-License-Identifier: GPL-3.0-or-later
#include "pdf/draw.h"

#include "pdf/fixtures.h"
#include "pdf/judges.h"
#include "support/fault_disk.h"
#include "support/sanitized.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::literals;
using namespace qw::test;

namespace {

const Rect letter = Rect::of({8.5_in, 11_in});

/// A document that shows `page` of a source on letter paper.
compose::Document showing(const Path& source, int page, const Matrix& place, const Rect& clip = letter) {
    compose::Document document = one_page(letter.size());
    document.pages[0].items.push_back(face(source, page, place, clip));
    return document;
}

void draw_sound(Disk& disk, const Path& to, const compose::Document& document) {
    pdf::draw(disk, to, document, drawing_fonts());
    check_sound(to);
}

const char* const drawing_begun = "q 0.2 0.4 0.8 rg 120 150 200 100 re f 0 0 0 RG 6 w 130 ";
const char* const drawing_ended = "420 m 320 420 l 320 500 l S /Half gs 0.9 0.1 0.1 rg 220 200 150 150 re f /Mark Do Q";

/// Two pages. Resources and MediaBox stand in the page tree's root; the first page is cropped away from the origin and
/// turned by a quarter, and its program is in two pieces that break between two operands.
std::string inheriting_pdf() {
    return pdf_of({
        {1, "<< /Type /Catalog /Pages 2 0 R >>"},
        {2, "<< /Type /Pages /Kids [3 0 R] /Count 2 /MediaBox [0 0 500 600] /Resources 5 0 R >>"},
        {3, "<< /Type /Pages /Parent 2 0 R /Kids [4 0 R 9 0 R] /Count 2 /Rotate 90 >>"},
        {4, "<< /Type /Page /Parent 3 0 R /CropBox [100 130 420 560] /Contents [6 0 R 7 0 R] >>"},
        {5, "<< /ExtGState << /Half << /ca 0.5 /BM /Multiply >> >> /XObject << /Mark 8 0 R >> >>"},
        {6, stream_object(drawing_begun)},
        {7, stream_object(drawing_ended)},
        {8, stream_object("0 0.6 0 rg 140 460 60 60 re f", "/Type /XObject /Subtype /Form /BBox [0 0 500 600] /Metadata 10 0 R")},
        {9, "<< /Type /Page /Parent 3 0 R /Rotate 0 /Contents 7 0 R /MediaBox [400 0 0 600] >>"},
        {10, stream_object("<x/>", "/Type /Metadata /Subtype /XML")},
    });
}

std::string unpacked(const Path& pdf, const TestFolder& folder) {
    must_run("qpdf --qdf --object-streams=disable " + quoted(pdf) + " " + quoted(folder / "qdf.pdf"));
    return file_text(folder / "qdf.pdf");
}

int count_of(const std::string& text, const std::string& part) {
    int count = 0;
    for (std::size_t at = text.find(part); at != text.npos; at = text.find(part, at + part.size())) ++count;
    return count;
}

/// The part of a rendered page that begins at a pixel.
Pixels cut_out(const Pixels& page, std::uint32_t left, std::uint32_t top, std::uint32_t width, std::uint32_t height) {
    Pixels part{width, height, {}};
    for (std::uint32_t y = top; y < top + height; ++y) part.rgb.insert(part.rgb.end(), page.at(left, y), page.at(left, y) + 3 * width);
    return part;
}

/// Text and vector drawing on two pages with embedded fonts, as a drawing program exports them.
void make_text_pdf(const Path& file) {
    must_run("gs -q -dNOPAUSE -dBATCH -sDEVICE=pdfwrite -dEmbedAllFonts=true -dPDFSETTINGS=/prepress -o " + quoted(file) +
             " -c '/Times-Roman findfont 40 scalefont setfont 60 600 moveto (Lamplight keeper) show 0 0.4 0.6 setrgbcolor "
             "60 300 moveto 200 500 400 100 550 300 curveto 5 setlinewidth stroke showpage "
             "/Times-Roman findfont 40 scalefont setfont 60 600 moveto (Keeper second page) show showpage'");
}

}  // namespace

TEST_CASE("a turned and cropped source page with inherited resources comes out as it looks by itself") {
    const auto disk = real_disk();
    const TestFolder folder;
    write_text(folder / "source.pdf", inheriting_pdf());
    // The crop is 320 x 430 points; turned clockwise it is 430 wide. Its upper left corner goes to 72, 720:
    // x' = y - 130 + 72, y' = 720 - (x - 100).
    draw_sound(*disk, folder / "a.pdf", showing(folder / "source.pdf", 1, {0, -1, 1, 0, 72 - 130, 720 + 100}));
    const Pixels ours = check_alike(folder / "a.pdf", 1, folder.path(), 72);
    must_run("pdftoppm -cropbox -singlefile -r 72 -f 1 -l 1 " + quoted(folder / "source.pdf") + " " + quoted(folder / "alone"));
    const Pixels alone = read_ppm(folder / "alone.ppm");
    REQUIRE(alone.width == 430);
    REQUIRE(alone.height == 320);
    CHECK(mean_difference(cut_out(ours, 72, 72, 430, 320), alone) < 0.5);
    // Nothing of the page outside its crop is drawn, and the drawing is really there.
    CHECK(mean_difference(cut_out(ours, 0, 72 + 321, 612, 300), Pixels{612, 300, std::vector<std::uint8_t>(612 * 300 * 3, 255)}) == 0);
    CHECK_FALSE(dark_box(alone).empty());
}

TEST_CASE("a form's box is what the page shows, its matrix the identity") {
    const auto disk = real_disk();
    const TestFolder folder;
    write_text(folder / "source.pdf", inheriting_pdf());
    compose::Document document = showing(folder / "source.pdf", 1, {});
    document.pages[0].items.push_back(face(folder / "source.pdf", 2, {}, letter));
    draw_sound(*disk, folder / "a.pdf", document);
    const std::string text = file_text(folder / "a.pdf");
    CHECK(contains(text, "/BBox[ 100 130 420 560]"));
    CHECK(contains(text, "/BBox[ 0 0 400 600]"));  // corners given the other way round
    CHECK_FALSE(contains(text, "/Matrix"));
    CHECK_FALSE(contains(text, "/Rotate"));
}

TEST_CASE("what pages of a source share is copied once, what no page shows is not") {
    const auto disk = real_disk();
    const TestFolder folder;
    write_text(folder / "source.pdf", inheriting_pdf());
    compose::Document document = showing(folder / "source.pdf", 1, {});
    document.pages.push_back(showing(folder / "source.pdf", 2, {}).pages[0]);
    document.pages.push_back(showing(folder / "source.pdf", 1, {}).pages[0]);
    draw_sound(*disk, folder / "a.pdf", document);
    const std::string text = unpacked(folder / "a.pdf", folder);
    CHECK(count_of(text, "/Half <<") == 1);
    CHECK(count_of(text, "140 460 60 60 re") == 1);
    CHECK(count_of(text, "/Subtype /Form") == 3);  // two pages and the mark on them
    CHECK_FALSE(contains(text, "/Metadata"));
    CHECK(count_of(text, "/Type /Page\n") == 3);
}

TEST_CASE("a source's text stays text in its own fonts") {
    const auto disk = real_disk();
    const TestFolder folder;
    make_text_pdf(folder / "source.pdf");
    compose::Document document = showing(folder / "source.pdf", 1, {0.5, 0, 0, 0.5, 100, 200});
    document.pages.push_back(showing(folder / "source.pdf", 2, {}).pages[0]);
    draw_sound(*disk, folder / "a.pdf", document);
    check_alike(folder / "a.pdf", 1, folder.path());
    check_alike(folder / "a.pdf", 2, folder.path());
    const std::string words = must_run("pdftotext " + quoted(folder / "a.pdf") + " -");
    CHECK(contains(words, "Lamplight keeper"));
    CHECK(contains(words, "Keeper second page"));
    const auto font_lines = [&](const char* name) { return count_of(must_run("pdffonts " + quoted(folder / name)), "\n"); };
    CHECK(font_lines("a.pdf") == font_lines("source.pdf"));
}

TEST_CASE("sources with object streams, linearized or updated, are read") {
    const auto disk = real_disk();
    const TestFolder folder;
    make_text_pdf(folder / "plain.pdf");
    must_run("qpdf --object-streams=generate " + quoted(folder / "plain.pdf") + " " + quoted(folder / "packed.pdf"));
    must_run("qpdf --linearize " + quoted(folder / "plain.pdf") + " " + quoted(folder / "linear.pdf"));
    draw_sound(*disk, folder / "reference.pdf", showing(folder / "plain.pdf", 1, {}));
    const Pixels reference = rendered(folder / "reference.pdf", 1, 50, folder.path())[0];
    for (const char* name : {"packed.pdf", "linear.pdf"}) {
        INFO(name);
        const Path out = folder / (std::string("out-") + name);
        draw_sound(*disk, out, showing(folder / name, 1, {}));
        CHECK(mean_difference(rendered(out, 1, 50, folder.path())[0], reference) == 0);
    }
}

TEST_CASE("small numbers of a source keep their digits") {
    const auto disk = real_disk();
    const TestFolder folder;
    write_text(folder / "source.pdf",
               pdf_of({{1, "<< /Type /Catalog /Pages 2 0 R >>"},
                       {2, "<< /Type /Pages /Kids [3 0 R] /Count 1 >>"},
                       {3, "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 300 300] /Contents 4 0 R /Resources << /XObject << /M 5 0 R >> >> >>"},
                       {4, stream_object("/M Do")},
                       {5, stream_object("0 0 400000 200000 re f",
                                         "/Type /XObject /Subtype /Form /BBox [0 0 500000 500000] "
                                         "/Matrix [0.00048828125 0 0 0.00048828125 0 0]")}}));
    draw_sound(*disk, folder / "a.pdf", showing(folder / "source.pdf", 1, {}));
    CHECK(contains(file_text(folder / "a.pdf"), "/Matrix[ 0.00048828125 0 0 0.00048828125 0 0]"));
    const PixelBox box = dark_box(check_alike(folder / "a.pdf", 1, folder.path(), 72));
    CHECK(box.right == Approx(400000.0 / 2048).margin(1));
}

TEST_CASE("a layer that is hidden in the source stays hidden") {
    const auto disk = real_disk();
    const TestFolder folder;
    const auto source = [](const std::string& settings) {
        return pdf_of({{1, "<< /Type /Catalog /Pages 2 0 R /OCProperties << /OCGs [6 0 R 7 0 R] /D " + settings + " >> >>"},
                       {2, "<< /Type /Pages /Kids [3 0 R] /Count 1 >>"},
                       {3, "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 300 300] /Contents 4 0 R /Resources << /Properties << /Guides 6 0 R /Ink 7 0 R >> >> >>"},
                       {4, stream_object("/OC /Guides BDC 50 50 50 50 re f EMC /OC /Ink BDC 150 150 50 50 re f EMC")},
                       {6, "<< /Type /OCG /Name (Guides) >>"},
                       {7, "<< /Type /OCG /Name (Ink) >>"}});
    };
    for (const char* settings : {"<< /OFF [6 0 R] /Order [6 0 R 7 0 R] >>", "<< /BaseState /OFF /ON [7 0 R] >>"}) {
        INFO(settings);
        write_text(folder / "source.pdf", source(settings));
        const Path out = folder / "a.pdf";
        draw_sound(*disk, out, showing(folder / "source.pdf", 1, {}));
        for (const Pixels& pixels : rendered(out, 1, 72, folder.path())) {
            const PixelBox box = dark_box(pixels);
            CHECK(box.left == Approx(150).margin(1));
            CHECK(box.right == Approx(200).margin(1));
        }
        disk->remove(out);
    }
    write_text(folder / "source.pdf", source("<< /AS [<< /Event /Print /Category [/Print] /OCGs [6 0 R 7 0 R] >>] >>"));
    draw_sound(*disk, folder / "b.pdf", showing(folder / "source.pdf", 1, {}));
    CHECK(contains(unpacked(folder / "b.pdf", folder), "/Event /Print"));
    CHECK(dark_box(rendered(folder / "b.pdf", 1, 72, folder.path())[0]).left == Approx(50).margin(1));
}

TEST_CASE("a page's transparency group goes along, isolated as a page is") {
    const auto disk = real_disk();
    const TestFolder folder;
    write_text(folder / "source.pdf",
               pdf_of({{1, "<< /Type /Catalog /Pages 2 0 R >>"},
                       {2, "<< /Type /Pages /Kids [3 0 R] /Count 1 >>"},
                       {3, "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 300 300] /Contents 4 0 R /Group << /S /Transparency /CS /DeviceRGB >> "
                           "/Resources << /ExtGState << /M << /BM /Multiply >> >> >> >>"},
                       {4, stream_object("/M gs 0.2 0.2 1 rg 0 0 300 300 re f")}}));
    compose::Document document = showing(folder / "source.pdf", 1, {});
    compose::Outline below;
    below.fill = 0.0;
    below.steps = {compose::Outline::Move{{0_in, 0_in}}, compose::Outline::Line{{2_in, 0_in}}, compose::Outline::Line{{2_in, 2_in}}, compose::Outline::Close{}};
    document.pages[0].items.insert(document.pages[0].items.begin(), below);
    draw_sound(*disk, folder / "a.pdf", document);
    CHECK(contains(unpacked(folder / "a.pdf", folder), "/I true"));
    // Blending stops at the group: what lies below the artwork does not darken it.
    for (const Pixels& pixels : rendered(folder / "a.pdf", 1, 72, folder.path())) CHECK(pixels.at(100, 792 - 20)[2] > 200);
}

/// PoDoFo itself loses sixteen bytes whenever a password is wanted; they are not counted as a leak of ours.
using LibraryLosses = NoLeakCheck;

TEST_CASE("a source that cannot be used is refused by name and leaves no file") {
    const auto disk = real_disk();
    const TestFolder folder;
    make_text_pdf(folder / "good.pdf");
    const std::string good = file_text(folder / "good.pdf");
    must_run("qpdf --encrypt '' owner 128 --use-aes=y -- " + quoted(folder / "good.pdf") + " " + quoted(folder / "locked.pdf"));
    must_run("qpdf --encrypt user owner 256 -- " + quoted(folder / "good.pdf") + " " + quoted(folder / "secret.pdf"));
    write_text(folder / "cut.pdf", good.substr(0, good.size() / 2));
    write_text(folder / "other.pdf", "this is no PDF");
    write_text(folder / "empty.pdf", "");
    write_text(folder / "circle.pdf", pdf_of({{1, "<< /Type /Catalog /Pages 2 0 R >>"}, {2, "<< /Type /Pages /Kids [2 0 R] /Count 1 >>"}}));
    write_text(folder / "no-pages.pdf", pdf_of({{1, "<< /Type /Catalog >>"}}));
    write_text(folder / "no-size.pdf",
               pdf_of({{1, "<< /Type /Catalog /Pages 2 0 R >>"}, {2, "<< /Type /Pages /Kids [3 0 R] /Count 1 >>"}, {3, "<< /Type /Page >>"}}));
    for (const char* name : {"locked.pdf", "secret.pdf", "cut.pdf", "other.pdf", "empty.pdf", "circle.pdf", "no-pages.pdf", "no-size.pdf"}) {
        INFO(name);
        const LibraryLosses uncounted;
        const FaultNote note =
            refusal([&] { pdf::draw(*disk, folder / "a.pdf", showing(folder / name, 1, {}), drawing_fonts()); }, FaultKind::not_understood);
        CHECK(note.code == "pdf-artwork-unusable");
        CHECK(note.where.file == (folder / name).string());
        CHECK_FALSE(disk->stat(folder / "a.pdf"));
        CHECK(contains(note.what, "encrypted") == (std::string(name) == "locked.pdf" || std::string(name) == "secret.pdf"));
    }
    for (const int page : {0, 3, -1}) {
        const FaultNote note =
            refusal([&] { pdf::draw(*disk, folder / "a.pdf", showing(folder / "good.pdf", page, {}), drawing_fonts()); }, FaultKind::not_understood);
        CHECK(contains(note.what, "it has 2 pages"));
    }
    CHECK(refusal([&] { pdf::draw(*disk, folder / "a.pdf", showing(folder / "absent.pdf", 1, {}), drawing_fonts()); }, FaultKind::not_carried_out).code == "disk");
}

TEST_CASE("damage anywhere in a source ends in a fault or a file, never in a crash") {
    const auto disk = real_disk();
    const TestFolder folder;
    make_text_pdf(folder / "plain.pdf");
    must_run("qpdf --object-streams=generate " + quoted(folder / "plain.pdf") + " " + quoted(folder / "packed.pdf"));
    std::uint32_t state = 3;
    const auto next = [&] { return (state = state * 1664525 + 1013904223) >> 8; };
    int refused = 0;
    for (const char* name : {"plain.pdf", "packed.pdf"}) {
        const std::string good = file_text(folder / name);
        for (int i = 0; i < 150; ++i) {
            std::string bad = good;
            for (int k = 0; k < 4; ++k) bad[next() % bad.size()] = static_cast<char>(next());
            if (i % 3 == 0) bad.resize(next() % bad.size());
            write_text(folder / "bad.pdf", bad);
            try {
                pdf::draw(*disk, folder / "a.pdf", showing(folder / "bad.pdf", 2, {}), drawing_fonts());
                disk->remove(folder / "a.pdf");
            } catch (const Fault& fault) {
                CHECK(fault.kind() == FaultKind::not_understood);
                ++refused;
            }
            CHECK_FALSE(disk->stat(folder / "a.pdf"));
        }
    }
    CHECK(refused > 50);
}
