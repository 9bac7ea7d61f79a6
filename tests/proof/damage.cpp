// SPDX-License-Identifier: GPL-3.0-or-later
// Files that are cut off, changed or made to do harm, and a disk that fails.
#include "base/digest.h"
#include "base/fault.h"
#include "base/words.h"
#include "proof/render.h"
#include "proof/written_pdf.h"

#include <catch2/catch.hpp>
#include <random>

using namespace qw;
using namespace qw::proof;
using namespace qw::proof::sample;

namespace {

/// A file with something of everything; `rows` make its picture larger.
std::string rich(std::size_t rows = 1) {
    WrittenPdf pdf;
    const int picture = pdf.stream("/Subtype /Image /Width 4 /BitsPerComponent 8 /ColorSpace /DeviceGray /Height " +
                                       std::to_string(rows),
                                   std::string(4 * rows, 'x'));
    const int info = pdf.add("<< /Title (Rich) >>");
    const int form = pdf.stream("/Subtype /Form /BBox [0 0 90 90] /Resources << /XObject << /I " + ref(picture) + " >> >>",
                                "q 50 0 0 50 0 0 cm /I Do Q");
    const int root = pdf.add(), layer = pdf.add("<< /Type /OCG /Name (ink) >>");
    const std::string resources = " /Resources << /XObject << /F " + ref(form) + " /I " + ref(picture) +
                                  " >> /Font << /T << /Type /Font /Subtype /Type1 /BaseFont /Helvetica >> >> >> ";
    std::string kids;
    for (const std::string content : {"q 2 0 0 2 1 1 cm 0 0 50 50 re W n /F Do Q BT /T 12 Tf 10 10 Td (Rich) Tj ET",
                                      "BI /W 2 /H 2 /BPC 8 /CS /G ID abcd EI 0 0 9 9 re f /I Do"}) {
        const int contents = pdf.stream("", content);
        kids += ref(pdf.add("<< /Type /Page /Parent " + ref(root) + resources + "/Contents " + ref(contents) +
                            " /Annots [<< /Subtype /Stamp /Rect [1 1 9 9] /AP << /N " + ref(form) + " >> >>] >>")) + " ";
    }
    pdf.set(root, "<< /Type /Pages /Count 2 /MediaBox [0 0 200 100] /Kids [" + kids + "] >>");
    const int catalog = pdf.add("<< /Type /Catalog /Pages " + ref(root) + " /OCProperties << /OCGs [" + ref(layer) +
                                "] /D << >> >> /ViewerPreferences << /Duplex /Simplex >> >>");
    return pdf.bytes(catalog, "/Info " + ref(info));
}

void never_crashes(const std::string& bytes) {
    const FileFacts facts = inspected(bytes);
    CHECK(facts.bytes == bytes.size());
    CHECK(facts.sha256 == sha256_of(bytes));
    CHECK_FALSE(bad_utf8_at(facts.damage + facts.title));
}

/// A page whose content makes the named damage.
std::string content_damage(const std::string& content, const std::string& resources = "") {
    return inspected(one_page(content, resources)).damage;
}

}  // namespace

TEST_CASE("The file with everything has no damage") {
    const FileFacts facts = inspected(rich());
    CHECK(facts.damage == "");
    REQUIRE(facts.pages.size() == 2);
    CHECK(facts.pages[0].pictures.size() == 2);
    CHECK(facts.pages[1].pictures.size() == 3);
}

TEST_CASE("A file cut off anywhere is told as damaged") {
    const std::string whole = rich();
    for (std::size_t size = 0; size < whole.size(); size += 97) {
        CAPTURE(size);
        never_crashes(whole.substr(0, size));
        CHECK(inspected(whole.substr(0, size)).damage != "");
    }
    CHECK(inspected(whole.substr(0, whole.size() - 2)).damage == "its end is missing: there is no %%EOF");
    CHECK(inspected(whole.substr(0, whole.size() - 1)).damage == "");
}

TEST_CASE("poppler bears a file cut off anywhere") {
    const test::TestFolder folder;
    const std::string whole = rich();
    for (std::size_t size = 0; size < whole.size(); size += 97) {
        CAPTURE(size);
        put(folder / "cut.pdf", whole.substr(0, size));
        Renderer renderer(folder / "cut.pdf");
        CHECK((renderer.pages() == 0) == (renderer.damage() != ""));
        for (int page = 1; page <= renderer.pages(); ++page) {
            try {
                CHECK_FALSE(renderer.page(page, 36).rgb.empty());
            } catch (const Fault& fault) {
                CHECK(fault.kind() == FaultKind::not_understood);
            }
        }
    }
}

TEST_CASE("Bytes changed at random are borne") {
    const std::string whole = rich();
    std::mt19937 random(20260901);
    for (int round = 0; round < 1500; ++round) {
        std::string changed = whole;
        for (unsigned i = 0; i < 1 + random() % 6; ++i) changed[random() % changed.size()] = static_cast<char>(random());
        CAPTURE(round);
        never_crashes(changed);
    }
}

TEST_CASE("What libqpdf can mend is damage all the same") {
    std::string bytes = rich();
    bytes.replace(bytes.rfind("startxref\n") + 10, 1, "9");
    const FileFacts facts = inspected(bytes);
    CHECK(facts.damage != "");
    CHECK(facts.pages.size() == 2);
    const std::string wrong_length = one_page("q Q");
    std::string longer = wrong_length;
    longer.replace(longer.find("/Length 3"), 9, "/Length 9");
    CHECK(inspected(longer).damage != "");
}

TEST_CASE("What is no PDF is damage") {
    CHECK(inspected("").damage != "");
    CHECK(inspected("a text").damage != "");
    CHECK(inspected(std::string(100'000, '\0')).damage != "");
}

TEST_CASE("Content that cannot be read is damage, with the page told") {
    CHECK(content_damage("/Nothing Do") == "page 1: content paints /Nothing, which the resources do not have");
    CHECK(content_damage("1 2 3 cm") == "page 1: an operator has too few numbers in front of it");
    CHECK(content_damage("9999999999 0 m") == "page 1: content has a number out of range");
    CHECK(content_damage("BI /W 1 ID x") == "page 1: an inline image has no end");
    CHECK(content_damage("BI /W 1") == "page 1: an inline image has no end");
    CHECK(content_damage("<zz> Tj") != "");
    CHECK(content_damage("(open") != "");
    CHECK(content_damage("1e5 0 0 1 0 0") == "");
    WrittenPdf pdf;
    const int broken = pdf.stream("/Filter /FlateDecode /Subtype /Form /BBox [0 0 1 1]", "no deflate data");
    CHECK(inspected(one_page(pdf, "/F Do", "/XObject << /F " + ref(broken) + " >>")).damage != "");
    const int unknown = pdf.stream("/Filter /Secret /Subtype /Form /BBox [0 0 1 1]", "x");
    CHECK(inspected(one_page(pdf, "/F Do", "/XObject << /F " + ref(unknown) + " >>")).damage ==
          "page 1: its content cannot be decoded");
}

TEST_CASE("A page that cannot be read does not hide the others") {
    WrittenPdf pdf;
    const int root = pdf.add();
    std::string kids;
    for (const std::string content : {"/Nothing Do", "0 0 9 9 re f"})
        kids += ref(pdf.add("<< /Type /Page /MediaBox [0 0 9 9] /Parent " + ref(root) + " /Contents " +
                            ref(pdf.stream("", content)) + " >>")) + " ";
    pdf.set(root, "<< /Type /Pages /Count 2 /Kids [" + kids + "] >>");
    const FileFacts facts = inspected(pdf.bytes(pdf.add("<< /Type /Catalog /Pages " + ref(root) + " >>")));
    CHECK_THAT(facts.damage, Catch::StartsWith("page 1: "));
    REQUIRE(facts.pages.size() == 2);
    CHECK(facts.pages[1].has_paths);
}

TEST_CASE("Forms that paint themselves or each other without end are stopped") {
    WrittenPdf pdf;
    const int self = pdf.add();
    pdf.set(self, stream_body("/Subtype /Form /BBox [0 0 1 1] /Resources << /XObject << /F " + ref(self) + " >> >>", "/F Do"));
    CHECK(inspected(one_page(pdf, "/F Do", "/XObject << /F " + ref(self) + " >>")).damage == "page 1: a form paints itself");
    int next = pdf.stream("/Subtype /Form /BBox [0 0 1 1]", "");
    for (int depth = 1; depth < 12; ++depth)
        next = pdf.stream("/Subtype /Form /BBox [0 0 1 1] /Resources << /XObject << /F " + ref(next) + " >> >>", "/F Do");
    const std::string twelve = "/XObject << /F " + ref(next) + " >>";
    const int deeper = pdf.stream("/Subtype /Form /BBox [0 0 1 1] /Resources << " + twelve + " >>", "/F Do");
    CHECK(inspected(one_page(pdf, "/F Do", twelve)).damage == "");
    CHECK(inspected(one_page(pdf, "/F Do", "/XObject << /F " + ref(deeper) + " >>")).damage == "page 1: forms are nested too deep");
}

TEST_CASE("Forms that multiply are stopped") {
    WrittenPdf pdf;
    const int picture = small_picture(pdf);
    std::string content, inner = "/F " + ref(picture);
    for (int i = 0; i < 100; ++i) content += "/F Do ";
    for (int depth = 0; depth < 8; ++depth)
        inner = "/F " + ref(pdf.stream("/Subtype /Form /BBox [0 0 1 1] /Resources << /XObject << " + inner + " >> >>", content));
    const FileFacts facts = inspected(one_page(pdf, content, "/XObject << " + inner + " >>"));
    CHECK(facts.damage == "page 1: it paints too many pictures");
    CHECK(facts.pages.at(0).pictures.size() == 200'000);
}

TEST_CASE("Content that unfolds without measure is stopped") {
    // A run of 128 copies of the byte 129 stands in two bytes 129, so each pass makes 64 times as much of them.
    const int passes = 4;
    std::string filters;
    for (int i = 0; i < passes; ++i) filters += "/RunLengthDecode ";
    WrittenPdf pdf;
    const int form = pdf.stream("/Subtype /Form /BBox [0 0 1 1] /Filter [" + filters + "]", std::string(2000, '\x81'));
    CHECK(inspected(one_page(pdf, "/F Do", "/XObject << /F " + ref(form) + " >>")).damage == "page 1: its content is too long");
}

TEST_CASE("States and matrices that grow without measure are stopped") {
    std::string states, matrices;
    for (int i = 0; i < 5000; ++i) states += "q ";
    for (int i = 0; i < 200; ++i) matrices += "9 0 0 999999999 0 0 cm ";
    for (int i = 0; i < 200; ++i) matrices += "999999999 0 0 999999999 0 0 cm ";
    CHECK(content_damage(states) == "page 1: q is nested too deep");
    CHECK(content_damage(matrices) == "page 1: the matrices grow beyond all numbers");
}

TEST_CASE("Coordinates that no length holds are brought back") {
    const auto bytes = one_page("999999999 0 0 999999999 0 0 cm -999999999 -9 999999999 999999999 re W n "
                                "BI /W 1 /H 1 /BPC 8 /CS /G ID x EI");
    const PageFacts page = only_page(bytes);
    REQUIRE(page.pictures.size() == 1);
    REQUIRE(page.pictures[0].clip);
    CHECK(page.pictures[0].clip->left == Length::points(-1e9));
    CHECK(page.pictures[0].clip->right == Length());
}

TEST_CASE("A page tree of a thousand levels is stopped") {
    WrittenPdf pdf;
    int node = pdf.add("<< /Type /Page /MediaBox [0 0 9 9] >>");
    for (int level = 0; level < 1000; ++level) node = pdf.add("<< /Type /Pages /Count 1 /Kids [" + ref(node) + "] >>");
    const FileFacts facts = inspected(pdf.bytes(pdf.add("<< /Type /Catalog /Pages " + ref(node) + " >>")));
    CHECK(facts.damage == "the page tree is deeper than 256 levels");
}

TEST_CASE("A disk that fails at any read is a fault, never damage") {
    const std::string bytes = rich(30'000);
    TextDisk whole(bytes);
    CHECK(inspect(whole, "a.pdf").damage == "");
    REQUIRE(whole.reads > 15);
    for (std::size_t at = 1; at <= whole.reads; ++at) {
        CAPTURE(at);
        TextDisk disk(bytes);
        disk.fail_at_read = at;
        CHECK_THROWS_AS(inspect(disk, "a.pdf"), Fault);
    }
}

TEST_CASE("A file that is not there is a fault") {
    const auto disk = real_disk();
    const test::TestFolder folder;
    CHECK_THROWS_AS(inspect(*disk, folder / "none.pdf"), Fault);
}
