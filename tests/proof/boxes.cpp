// SPDX-License-Identifier: GPL-3.0-or-later
// Boxes: ISO 32000-1 14.11.2; inheritance: 7.7.3.4; page objects: table 30.
#include "proof/written_pdf.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::proof;
using namespace qw::proof::sample;

namespace {

Rect points(double left, double bottom, double right, double top) {
    return {Length::points(left), Length::points(bottom), Length::points(right), Length::points(top)};
}

/// Two levels of nodes above two pages; the entries go to the root, to the inner node and to the first page.
FileFacts nested(const std::string& root_entries, const std::string& node_entries, const std::string& page_entries) {
    WrittenPdf pdf;
    const int root = pdf.add(), node = pdf.add();
    const int first = pdf.add("<< /Type /Page /Parent " + ref(node) + " " + page_entries + " >>");
    const int second = pdf.add("<< /Type /Page /Parent " + ref(root) + " >>");
    pdf.set(node, "<< /Type /Pages /Count 1 /Parent " + ref(root) + " /Kids [" + ref(first) + "] " + node_entries + " >>");
    pdf.set(root, "<< /Type /Pages /Count 2 /Kids [" + ref(node) + " " + ref(second) + "] " + root_entries + " >>");
    return inspected(pdf.bytes(pdf.add("<< /Type /Catalog /Pages " + ref(root) + " >>")));
}

std::string damage_of(const std::string& page_entries) { return inspected(one_page("", "", page_entries)).damage; }

}  // namespace

TEST_CASE("A page without boxes of its own has those of the nodes above it") {
    const FileFacts facts = nested("/MediaBox [0 0 792 612] /Rotate 90", "/CropBox [10 20 300 400]", "");
    CHECK(facts.damage == "");
    REQUIRE(facts.pages.size() == 2);
    CHECK(facts.pages[0].media == points(0, 0, 792, 612));
    CHECK(facts.pages[0].crop == points(10, 20, 300, 400));
    CHECK(facts.pages[0].rotate == 90);
    CHECK(facts.pages[1].crop == points(0, 0, 792, 612));
}

TEST_CASE("The nearest node decides, and the page before all") {
    const FileFacts facts = nested("/MediaBox [0 0 792 612] /Rotate 90", "/MediaBox [0 0 500 500] /Rotate 180",
                                   "/MediaBox [0 0 300 200] /Rotate 270");
    REQUIRE(facts.pages.size() == 2);
    CHECK(facts.pages[0].media == points(0, 0, 300, 200));
    CHECK(facts.pages[0].rotate == 270);
    CHECK(facts.pages[1].rotate == 90);
}

TEST_CASE("Resources are handed down") {
    WrittenPdf pdf;
    const int picture = small_picture(pdf), root = pdf.add(), contents = pdf.stream("", "/I Do");
    const int page = pdf.add("<< /Type /Page /Parent " + ref(root) + " /Contents " + ref(contents) + " >>");
    pdf.set(root, "<< /Type /Pages /Count 1 /Kids [" + ref(page) + "] /MediaBox [0 0 9 9] /Resources << /XObject << /I " +
                      ref(picture) + " >> >> >>");
    CHECK(only_page(pdf.bytes(pdf.add("<< /Type /Catalog /Pages " + ref(root) + " >>"))).pictures.size() == 1);
}

TEST_CASE("CropBox defaults to MediaBox, BleedBox and TrimBox to CropBox") {
    const PageFacts plain = only_page(one_page("", "", "/MediaBox [0 0 200 100]"));
    CHECK(plain.crop == plain.media);
    CHECK(plain.bleed == plain.media);
    CHECK(plain.trim == plain.media);
    CHECK_FALSE(plain.has_trim);
    CHECK_FALSE(plain.has_bleed);
    const PageFacts cropped = only_page(one_page("", "", "/MediaBox [0 0 200 100] /CropBox [10 10 90 90]"));
    CHECK(cropped.bleed == points(10, 10, 90, 90));
    CHECK(cropped.trim == points(10, 10, 90, 90));
    const PageFacts all = only_page(one_page("", "", "/MediaBox [0 0 200 100] /BleedBox [1 2 198 97] /TrimBox [5 6 190.5 91.25]"));
    CHECK(all.has_trim);
    CHECK(all.has_bleed);
    CHECK(all.bleed == points(1, 2, 198, 97));
    CHECK(all.trim == points(5, 6, 190.5, 91.25));
    CHECK(all.crop == all.media);
}

TEST_CASE("Boxes take effect only inside MediaBox, and their corners come in any order") {
    const PageFacts page = only_page(one_page("", "", "/MediaBox [200 0 0 100] /CropBox [-50 -50 150 500] /TrimBox [20 90 10 30]"));
    CHECK(page.media == points(0, 0, 200, 100));
    CHECK(page.crop == points(0, 0, 150, 100));
    CHECK(page.trim == points(10, 30, 20, 90));
}

TEST_CASE("Boxes may be indirect objects and real numbers in any form") {
    WrittenPdf pdf;
    const int half = pdf.add(".5"), box = pdf.add("[ -.5 " + ref(half) + " +100. 00050.25 ]");
    CHECK(only_page(one_page(pdf, "", "", "/MediaBox " + ref(box))).media == points(-0.5, 0.5, 100, 50.25));
}

TEST_CASE("Rotate is told as 0, 90, 180 or 270") {
    const auto turned = [](const std::string& value) { return only_page(one_page("", "", "/MediaBox [0 0 9 9] /Rotate " + value)).rotate; };
    CHECK(turned("0") == 0);
    CHECK(turned("90") == 90);
    CHECK(turned("-90") == 270);
    CHECK(turned("450") == 90);
    CHECK(turned("360") == 0);
    CHECK(turned("180.0") == 180);
}

TEST_CASE("UserUnit stands beside the boxes and is not multiplied into them") {
    const PageFacts page = only_page(one_page("", "", "/MediaBox [0 0 306 396] /UserUnit 2"));
    CHECK(page.user_unit == 2);
    CHECK(page.media == points(0, 0, 306, 396));
    CHECK(only_page(one_page("")).user_unit == 1);
}

TEST_CASE("Unusable page attributes are damage, with the page told") {
    CHECK(damage_of("/CropBox [0 0 1 1]") == "page 1: there is no MediaBox");
    CHECK(damage_of("/MediaBox [0 0 100]") == "page 1: MediaBox is no rectangle");
    CHECK(damage_of("/MediaBox [0 0 0 100]") == "page 1: MediaBox is no rectangle");
    CHECK(damage_of("/MediaBox [0 0 (a) 100]") == "page 1: MediaBox is no rectangle");
    CHECK(damage_of("/MediaBox [0 0 9 9] /TrimBox 7") == "page 1: TrimBox is no rectangle");
    CHECK(damage_of("/MediaBox [0 0 9 9] /CropBox [20 20 30 30]") == "page 1: CropBox lies outside MediaBox");
    CHECK(damage_of("/MediaBox [0 0 9 9] /Rotate 45") == "page 1: Rotate is no multiple of 90");
    CHECK(damage_of("/MediaBox [0 0 9 9] /Rotate 1e9") != "");
    CHECK(damage_of("/MediaBox [0 0 9 9] /UserUnit 0") == "page 1: UserUnit is no positive number");
    CHECK(damage_of("/MediaBox [0 0 99999999999999999999 9]") != "");
}

TEST_CASE("A page tree that does not hold what it says is damage") {
    WrittenPdf pdf;
    const int root = pdf.add();
    const int page = pdf.add("<< /Type /Page /MediaBox [0 0 9 9] /Parent " + ref(root) + " >>");
    const int catalog = pdf.add("<< /Type /Catalog /Pages " + ref(root) + " >>");
    const auto damage_with = [&](const std::string& body) {
        pdf.set(root, body);
        return inspected(pdf.bytes(catalog)).damage;
    };
    CHECK(damage_with("<< /Type /Pages /Count 1 /Kids [" + ref(page) + "] >>") == "");
    CHECK(damage_with("<< /Type /Pages /Count 2 /Kids [" + ref(page) + "] >>") ==
          "the page tree holds 1 pages and says another number");
    CHECK(damage_with("<< /Type /Pages /Count 2 /Kids [" + ref(page) + " 99 0 R] >>") ==
          "the page tree holds something that is no page");
    CHECK(damage_with("<< /Type /Pages /Count 1 /Kids [" + ref(root) + "] >>") == "the page tree holds the same node twice");
    CHECK(damage_with("<< /Type /Pages /Count 1 >>") == "it has no page tree");
    CHECK(damage_with("<< /Type /Pages /Count 0 /Kids [] >>") == "");
}
