// SPDX-License-Identifier: GPL-3.0-or-later
// Pictures that are clipped to a shape: what lies outside it is the white of the page, what lies inside is the picture.
#include "pdf/draw.h"

#include "pdf/fixtures.h"
#include "pdf/judges.h"
#include "support/fault_disk.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace qw;
using namespace qw::literals;
using namespace qw::test;

namespace {

const Size sheet{8_in, 6_in};
const Rect seen = Rect::at({1_in, 1_in}, {6_in, 4_in});

/// A triangle with a square hole, and a second ring that overlaps it: the nonzero rule joins both.
const compose::Shape pointed = {{{1.5_in, 1.5_in}, {6.5_in, 1.5_in}, {4_in, 4.5_in}},
                                {{3.5_in, 2_in}, {3.5_in, 3_in}, {4.5_in, 3_in}, {4.5_in, 2_in}},
                                {{1.5_in, 1.5_in}, {2.5_in, 1.5_in}, {2.5_in, 4_in}, {1.5_in, 4_in}}};

/// Winding number by the crossings of a ray to the right.
bool inside(const compose::Shape& shape, double x, double y) {
    int turns = 0;
    for (const auto& ring : shape)
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point a = ring[i], b = ring[(i + 1) % ring.size()];
            const double ax = a.x.in_inches(), ay = a.y.in_inches(), bx = b.x.in_inches(), by = b.y.in_inches();
            if ((ay <= y) == (by <= y)) continue;
            if (ax + (y - ay) / (by - ay) * (bx - ax) > x) turns += ay <= y ? 1 : -1;
        }
    return turns != 0;
}

/// Farther than `by` from every edge, so that no renderer's way with edges matters.
bool clear_of_edges(const compose::Shape& shape, double x, double y, double by) {
    const bool in = inside(shape, x, y);
    for (int k = 0; k < 8; ++k)
        if (inside(shape, x + by * std::cos(k * 0.785398), y + by * std::sin(k * 0.785398)) != in) return false;
    return true;
}

/// No sample is white, so that picture and page can be told apart everywhere.
PngPlan never_white() {
    PngPlan plan = colourful(300, 200);
    for (std::string& row : plan.rows)
        for (char& c : row) c = static_cast<char>(static_cast<unsigned char>(c) / 2);
    return plan;
}

/// The picture on the whole page of pixels, unclipped.
Pixels without_shape(Disk& disk, const TestFolder& folder, const Path& picture, int dpi) {
    compose::Document document = one_page(sheet);
    place_picture(disk, document, 0, picture, seen);
    pdf::draw(disk, folder / "whole.pdf", document, drawing_fonts());
    must_run("pdftoppm -singlefile -r " + std::to_string(dpi) + " " + quoted(folder / "whole.pdf") + " " + quoted(folder / "whole"));
    return read_ppm(folder / "whole.ppm");
}

int count_of_images(const Path& pdf) {
    int count = 0;
    std::string text = must_run("qpdf --qdf --object-streams=disable " + quoted(pdf) + " -");
    for (std::size_t at = text.find("/Subtype /Image"); at != text.npos; at = text.find("/Subtype /Image", at + 1)) ++count;
    return count;
}

}  // namespace

TEST_CASE("a picture with a shape is white outside it and itself inside") {
    const auto disk = real_disk();
    const TestFolder folder;
    constexpr int dpi = 50;
    write_text(folder / "a.png", png(never_white()));
    compose::Document document = one_page(sheet);
    place_picture(*disk, document, 0, folder / "a.png", seen);
    std::get<compose::Picture>(document.pages[0].items[0]).shape = pointed;
    pdf::draw(*disk, folder / "a.pdf", document, drawing_fonts());
    check_sound(folder / "a.pdf");
    const Pixels whole = without_shape(*disk, folder, folder / "a.png", dpi);
    int white = 0, picture = 0, wrong = 0;
    for (const Pixels& page : rendered(folder / "a.pdf", 1, dpi, folder.path()))
        for (std::uint32_t y = 0; y < page.height; ++y)
            for (std::uint32_t x = 0; x < page.width; ++x) {
                const double at_x = (x + 0.5) / dpi, at_y = 6 - (y + 0.5) / dpi;
                if (!clear_of_edges(pointed, at_x, at_y, 0.03)) continue;
                const std::uint8_t *pixel = page.at(x, y), *expected = whole.at(x, y);
                if (inside(pointed, at_x, at_y)) {
                    ++picture;
                    // Renderers differ where they take a pixel of the picture from, not in what it is.
                    wrong += std::abs(pixel[0] - expected[0]) > 8 || pixel[0] > 128;
                } else {
                    ++white;
                    wrong += pixel[0] + pixel[1] + pixel[2] != 3 * 255;
                }
            }
    CHECK(wrong == 0);
    CHECK(picture > 3 * 15000);  // 6.5 square inches by 2500, less the edges, thrice
    CHECK(white > 3 * 80000);
}

TEST_CASE("a page of a PDF with a shape is cut by it as well") {
    const auto disk = real_disk();
    const TestFolder folder;
    write_text(folder / "face.pdf", pdf_of({{1, "<< /Type /Catalog /Pages 2 0 R >>"},
                                            {2, "<< /Type /Pages /Kids [3 0 R] /Count 1 >>"},
                                            {3, "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 576 432] /Contents 4 0 R >>"},
                                            {4, stream_object("0 0 0 rg 0 0 576 432 re f")}}));
    compose::Document document = one_page(sheet);
    compose::PdfFace shaped = face(folder / "face.pdf", 1, {}, Rect::of(sheet));
    shaped.shape = {{{1_in, 1_in}, {3_in, 1_in}, {3_in, 5_in}}};
    document.pages[0].items.push_back(shaped);
    pdf::draw(*disk, folder / "a.pdf", document, drawing_fonts());
    check_sound(folder / "a.pdf");
    for (const Pixels& page : rendered(folder / "a.pdf", 1, 100, folder.path())) {
        const PixelBox box = dark_box(page);
        CHECK(std::abs(static_cast<int>(box.left) - 100) <= 3);
        CHECK(std::abs(static_cast<int>(box.right) - 300) <= 1);
        CHECK(std::abs(static_cast<int>(box.top) - 100) <= 5);   // a point of the triangle
        CHECK(std::abs(static_cast<int>(box.bottom) - 500) <= 1);
        CHECK(page.at(150, 200)[0] == 255);                      // left of the slanted edge
        CHECK(page.at(250, 450)[0] == 0);
    }
}

TEST_CASE("a picture that is drawn in many shapes and on several pages is one object, and its clip does not outlast it") {
    const auto disk = real_disk();
    const TestFolder folder;
    write_text(folder / "a.png", png(never_white()));
    compose::Document document = one_page(sheet);
    place_picture(*disk, document, 0, folder / "a.png", seen);
    compose::Picture shaped = std::get<compose::Picture>(document.pages[0].items[0]);
    document.pages[0].items.clear();
    document.pages.push_back(document.pages[0]);
    for (compose::Page& page : document.pages)
        for (const double left : {1.0, 3.0, 5.0}) {
            shaped.shape = {{{Length::inches(left), 2_in}, {Length::inches(left + 1), 2_in}, {Length::inches(left + 1), 4_in}, {Length::inches(left), 4_in}}};
            page.items.push_back(shaped);
        }
    pdf::draw(*disk, folder / "a.pdf", document, drawing_fonts());
    check_sound(folder / "a.pdf");
    CHECK(count_of_images(folder / "a.pdf") == 1);
    for (const int number : {1, 2}) {
        const Pixels page = check_alike(folder / "a.pdf", number, folder.path());
        for (const std::uint32_t x : {150u, 350u, 550u}) CHECK(page.at(x, 300)[0] < 255);
        for (const std::uint32_t x : {50u, 250u, 450u, 650u}) CHECK(page.at(x, 300)[0] == 255);
    }
}
