// SPDX-License-Identifier: GPL-3.0-or-later
// Pages of PDF artwork on a sheet, from what inspecting the file says of them to the rendered sheet: turned, cropped,
// scaled, with transparency and layers. Held against the same page rendered by itself.
#include "compose/placement.h"
#include "pdf/fixtures.h"
#include "pdf/judges.h"
#include "proof/file_facts.h"
#include "support/fault_disk.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::literals;
using namespace qw::test;

namespace {

const Paper letter_paper{"na_letter_8.5x11in", "letter", "Letter", {8.5_in, 11_in}, UnitSystem::us};

/// One page, cropped away from the origin; `entries` are further ones of the page.
std::string page_pdf(const std::string& entries, const std::string& content, const std::string& resources = "", const std::map<int, std::string>& more = {},
                     const std::string& catalog = "") {
    std::map<int, std::string> objects{
        {1, "<< /Type /Catalog /Pages 2 0 R " + catalog + " >>"},
        {2, "<< /Type /Pages /Kids [3 0 R] /Count 1 >>"},
        {3, "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 500 600] /CropBox [100 130 400 480] /Contents 4 0 R /Resources << " + resources + " >> " +
                entries + " >>"},
        {4, stream_object(content)}};
    objects.insert(more.begin(), more.end());
    return pdf_of(objects);
}

/// Not the same turned or mirrored in any way; reaches beyond the crop.
const std::string drawing_of_page =
    "0.9 0.8 0.5 rg 60 90 400 440 re f 0.2 0.4 0.8 rg 120 150 200 60 re f 0.8 0.1 0.1 rg 120 300 60 140 re f 0 G 6 w 130 420 m 390 200 l S";

/// The sheet as the program makes it of the file's first page, at its own size.
Path sheet_with(Disk& disk, const TestFolder& folder, const std::string& source) {
    write_text(folder / "source.pdf", source);
    const proof::FileFacts facts = proof::inspect(disk, folder / "source.pdf");
    CHECK(facts.damage == "");
    const proof::PageFacts& page = facts.pages.at(0);
    kit::Set set;
    set.name = "pages";
    const compose::Face face{"source.pdf", compose::PdfArtwork{folder / "source.pdf", 1, page.crop, page.rotate, page.user_unit}};
    const auto made = compose::artwork_document({}, set, {letter_paper, Print::borderless, {}}, {face}, Date{2026, 9, 1});
    pdf::draw(disk, folder / "sheet.pdf", made.document, drawing_fonts());
    check_sound(folder / "sheet.pdf");
    return folder / "sheet.pdf";
}

/// The middle of poppler's rendering.
Pixels middle(const Pixels& page, std::uint32_t width, std::uint32_t height) {
    const std::uint32_t left = (page.width - width) / 2, top = (page.height - height) / 2;
    Pixels part{width, height, {}};
    for (std::uint32_t y = top; y < top + height; ++y) part.rgb.insert(part.rgb.end(), page.at(left, y), page.at(left, y) + std::size_t{3} * width);
    return part;
}

/// The page of the source alone; poppler passes over UserUnit.
Pixels alone(const TestFolder& folder, int dpi) {
    must_run("pdftoppm -cropbox -singlefile -r " + std::to_string(dpi) + " " + quoted(folder / "source.pdf") + " " + quoted(folder / "alone"));
    return read_ppm(folder / "alone.ppm");
}

/// The sheet shows in its middle what the page shows, and nothing around it.
void check_as_alone(const Path& sheet, const TestFolder& folder, int unit = 1) {
    const Pixels wanted = alone(folder, 72 * unit);
    must_run("pdftoppm -singlefile -r 72 " + quoted(sheet) + " " + quoted(folder / "sheet"));
    const Pixels seen = read_ppm(folder / "sheet.ppm");
    CHECK(mean_difference(middle(seen, wanted.width, wanted.height), wanted) < 0.5);
    const auto darkness = [](const Pixels& pixels) {
        double sum = 0;
        for (const std::uint8_t sample : pixels.rgb) sum += 255 - sample;
        return sum;
    };
    CHECK(darkness(wanted) > 1e6);
    CHECK(darkness(seen) == Approx(darkness(wanted)).epsilon(0.005));
}

}  // namespace

TEST_CASE("a page of a PDF lies on the sheet as it is shown: by its Rotate, its CropBox and its UserUnit", "[many]") {
    const auto disk = real_disk();
    for (const int rotate : {0, 90, 180, 270})
        for (const int unit : {1, 2}) {
            CAPTURE(rotate, unit);
            const TestFolder folder;
            const Path sheet = sheet_with(*disk, folder, page_pdf("/Rotate " + std::to_string(rotate) + " /UserUnit " + std::to_string(unit), drawing_of_page));
            check_as_alone(sheet, folder, unit);
            if (unit == 1) check_alike(sheet, 1, folder.path(), 72);
        }
}

TEST_CASE("transparency of a page blends on the sheet as it does by itself", "[many]") {
    const auto disk = real_disk();
    // A page group; in it a group that knocks out, one that is not isolated, and a shape under a soft mask.
    const std::string group = "/Type /XObject /Subtype /Form /BBox [0 0 500 600] /Resources << /ExtGState << /Half 8 0 R >> >> /Group << /S /Transparency ";
    const std::map<int, std::string> more{
        {5, stream_object("/Half gs 1 0 0 rg 120 200 100 100 re f 0 0 1 rg 170 240 100 100 re f", group + "/K true /I true >>")},
        {6, stream_object("/Half gs 0 1 0 rg 240 180 100 160 re f", group + "/I false >>")},
        {7, stream_object("0 g 0 0 500 600 re f 0.7 g 150 360 100 80 re f",
                          "/Type /XObject /Subtype /Form /BBox [0 0 500 600] /Group << /S /Transparency /CS /DeviceGray >>")},
        {8, "<< /ca 0.5 /BM /Multiply >>"},
        {9, "<< /SMask << /S /Luminosity /G 7 0 R >> >>"}};
    const std::string resources = "/XObject << /Out 5 0 R /In 6 0 R >> /ExtGState << /Masked 9 0 R >>";
    const std::string content = drawing_of_page + " /Out Do /In Do q /Masked gs 0 0.3 0 rg 100 340 280 120 re f Q";
    for (const char* of_page : {"/Group << /S /Transparency /CS /DeviceRGB >>", "/Group << /S /Transparency /CS /DeviceRGB /I true /K false >>", ""}) {
        CAPTURE(of_page);
        const TestFolder folder;
        check_as_alone(sheet_with(*disk, folder, page_pdf(of_page, content, resources, more)), folder);
    }
}

TEST_CASE("layers show on the sheet as the default configuration has them, however they are asked for", "[many]") {
    // ISO 32000-1 8.11: content marked with a group, with a membership of groups, and a form and a picture with an OC entry.
    const auto disk = real_disk();
    const std::map<int, std::string> more{
        {5, "<< /Type /OCG /Name (Sketch) >>"},
        {6, "<< /Type /OCG /Name (Ink) >>"},
        {7, "<< /Type /OCMD /OCGs [5 0 R] /P /AllOff >>"},
        {8, "<< /Type /OCMD /OCGs [5 0 R 6 0 R] /P /AllOn >>"},
        {9, stream_object("0 0 1 rg 200 200 40 40 re f", "/Type /XObject /Subtype /Form /BBox [0 0 500 600] /OC 5 0 R")},
        {10, stream_object("abc", "/Type /XObject /Subtype /Image /Width 1 /Height 1 /BitsPerComponent 8 /ColorSpace /DeviceRGB /OC 6 0 R")}};
    const std::string resources = "/Properties << /Sketch 5 0 R /Ink 6 0 R /WhenHidden 7 0 R /WhenBoth 8 0 R >> /XObject << /Form 9 0 R /Picture 10 0 R >>";
    const std::string content = "0 g /OC /Sketch BDC 120 150 40 40 re f EMC /OC /Ink BDC 180 150 40 40 re f EMC /OC /WhenHidden BDC 240 150 40 40 re f EMC "
                                "/OC /WhenBoth BDC 300 150 40 40 re f EMC /Form Do q 60 0 0 60 260 260 cm /Picture Do Q";
    struct Configuration {
        const char* settings;
        bool sketch, ink;
    };
    for (const Configuration& c : {Configuration{"<< /OFF [5 0 R] >>", false, true}, Configuration{"<< /BaseState /OFF /ON [6 0 R] >>", false, true},
                                   Configuration{"<< /BaseState /ON /OFF [6 0 R] >>", true, false}, Configuration{"<< >>", true, true},
                                   Configuration{"<< /BaseState /OFF >>", false, false}}) {
        CAPTURE(c.settings);
        const TestFolder folder;
        const Path sheet = sheet_with(
            *disk, folder, page_pdf("", content, resources, more, std::string("/OCProperties << /OCGs [5 0 R 6 0 R] /D ") + c.settings + " >>"));
        // The crop's corner 100, 130 is 156 pt from the sheet's left and 221 pt from its foot.
        const auto shown = [](const Pixels& page, std::uint32_t x, std::uint32_t y) { return page.at(x - 100 + 156, 792 - (y - 130 + 221))[0] < 200; };
        const std::vector<Pixels> all = rendered(sheet, 1, 72, folder.path());
        for (const Pixels& page : all) {
            CHECK(shown(page, 140, 170) == c.sketch);
            CHECK(shown(page, 200, 170) == c.ink);
            CHECK(shown(page, 260, 170) == !c.sketch);
            CHECK(shown(page, 290, 290) == c.ink);
        }
        // Of Debian 12's renderers mutool passes over AllOn, and Ghostscript over a form's OC, in whatever file.
        CHECK(shown(all[0], 320, 170) == (c.sketch && c.ink));
        CHECK(shown(all[0], 220, 220) == c.sketch);
    }
}
