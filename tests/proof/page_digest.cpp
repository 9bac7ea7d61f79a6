// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/page_digest.h"

#include "base/fault.h"
#include "proof/written_pdf.h"
#include "support/shell.h"

#include <catch2/catch.hpp>

#include <set>

using namespace qw;
using namespace qw::proof;
using namespace qw::proof::sample;

namespace {

std::vector<std::string> digests(const std::string& bytes) {
    TextDisk disk(bytes);
    return page_digests(disk, "a.pdf");
}

/// What one page of the sample is made of.
struct Sample {
    std::string content = "q 50 0 0 50 9 9 cm /Im Do Q BT /F 9 Tf (a) Tj ET";
    std::string boxes = "/MediaBox [0 0 200 100] /TrimBox [9 9 191 91]", more;
    std::string picture = small_picture_data, glyphs = "0 0 9 9 re f", other = "(not named)";
};

/// The page alone, or between two others that share its resources.
std::string file_of(const Sample& of, bool among_others) {
    WrittenPdf pdf;
    if (among_others) pdf.add("<< /Other /Numbers >>");
    const int picture = pdf.stream("/Type /XObject /Subtype /Image /Width 2 /Height 2 /BitsPerComponent 8 /ColorSpace /DeviceRGB", of.picture);
    const int glyph = pdf.stream("", of.glyphs), other = pdf.stream("/Subtype /Form /BBox [0 0 1 1] /Resources << >>", of.other);
    const int font = pdf.add(
        "<< /Type /Font /Subtype /Type3 /FontMatrix [1 0 0 1 0 0] /FontBBox [0 0 9 9] /FirstChar 97 /LastChar 97 /Widths [9] /Encoding << "
        "/Differences [97 /a] >> /CharProcs << /a " +
        ref(glyph) + " >> >>");
    const int tree = pdf.add(), parts = pdf.add("<< /XObject << /Im " + ref(picture) + " /Imp " + ref(other) + " >> /Font << /F " + ref(font) + " >> >>");
    const std::string begin = "<< /Type /Page /Parent " + ref(tree) + " /Resources " + ref(parts) + " ";
    const auto page = [&](const std::string& boxes, const std::string& content) {
        return pdf.add(begin + boxes + " /Contents " + ref(pdf.stream("", content)) + " >>");
    };
    std::string kids;
    if (among_others) kids += ref(page("/MediaBox [0 0 50 50]", "/Imp Do")) + " ";
    kids += ref(page(of.boxes + " " + of.more, of.content));
    if (among_others) kids += " " + ref(page("/MediaBox [0 0 60 60]", "0 0 5 5 re f"));
    pdf.set(tree, "<< /Type /Pages /Kids [" + kids + "] /Count " + (among_others ? "3" : "1") + " >>");
    return pdf.bytes(pdf.add("<< /Type /Catalog /Pages " + ref(tree) + " >>"));
}

std::string digest(const Sample& of) { return digests(file_of(of, false)).at(0); }

}  // namespace

TEST_CASE("The same page has the same digest in a file with other pages") {
    const Sample page;
    const auto alone = digests(file_of(page, false)), among = digests(file_of(page, true));
    REQUIRE(alone.size() == 1);
    REQUIRE(among.size() == 3);
    CHECK(alone[0].size() == 64);
    CHECK(alone[0] == among[1]);
    CHECK(among[0] != among[1]);
    CHECK(among[2] != among[1]);
}

TEST_CASE("A resource that the page does not name does not count") {
    Sample changed;
    changed.other = "(changed)";
    CHECK(digest(changed) == digest({}));
    changed.content += " /Imp Do";
    CHECK(digest(changed) != digest({}));
}

TEST_CASE("One changed picture, glyph, word, box or turn changes the digest") {
    std::set<std::string> all{digest({})};
    std::size_t count = 1;
    const auto changed = [&](auto change) {
        Sample page;
        change(page);
        all.insert(digest(page));
        CHECK(all.size() == ++count);
    };
    changed([](Sample& page) { page.picture[0] = '\x7f'; });
    changed([](Sample& page) { page.glyphs = "0 0 9 8 re f"; });
    changed([](Sample& page) { page.content[page.content.find("(a)") + 1] = 'b'; });
    changed([](Sample& page) { page.content = "q 50 0 0 50 9 8 cm /Im Do Q BT /F 9 Tf (a) Tj ET"; });
    changed([](Sample& page) { page.boxes = "/MediaBox [0 0 200 101] /TrimBox [9 9 191 91]"; });
    changed([](Sample& page) { page.boxes = "/MediaBox [0 0 200 100] /TrimBox [9 9 191 90]"; });
    changed([](Sample& page) { page.boxes = "/MediaBox [0 0 200 100] /TrimBox [9 9 191 91] /CropBox [1 0 200 100]"; });
    changed([](Sample& page) { page.more = "/Rotate 180"; });
    changed([](Sample& page) { page.more = "/UserUnit 2"; });
    changed([](Sample& page) { page.more = "/Group << /S /Transparency /CS /DeviceCMYK >>"; });
    changed([](Sample& page) { page.more = "/Annots [<< /Subtype /Stamp /Rect [0 0 9 9] /AP << /N 3 0 R >> >>]"; });
}

TEST_CASE("What says the same leaves the digest as it is") {
    Sample page;
    page.more = "/Rotate 360 /LastModified (D:20260101) /PieceInfo << /Mine << /LastModified (D:2026) >> >> /StructParents 3";
    CHECK(digest(page) == digest({}));
    page.boxes += " /CropBox [0 0 200 100]";
    CHECK(digest(page) == digest({}));
}

TEST_CASE("Resources that lead back to themselves end") {
    WrittenPdf pdf;
    const int form = pdf.add();
    pdf.set(form, stream_body("/Subtype /Form /BBox [0 0 9 9] /Resources << /XObject << /Again " + ref(form) + " >> >>", "/Again Do"));
    const auto found = digests(one_page(pdf, "/Loop Do", "/XObject << /Loop " + ref(form) + " >>"));
    REQUIRE(found.size() == 1);
    CHECK(found[0].size() == 64);
}

TEST_CASE("A page whose content cannot be decoded has no digest; the others have theirs") {
    WrittenPdf pdf;
    const int bad = pdf.stream("/Filter /FlateDecode", "no such data"), good = pdf.stream("", "0 0 9 9 re f"), tree = pdf.add();
    const auto page = [&](int content) { return ref(pdf.add("<< /Type /Page /Parent " + ref(tree) + " /MediaBox [0 0 9 9] /Contents " + ref(content) + " >>")); };
    const std::string kids = page(bad) + " " + page(good);
    pdf.set(tree, "<< /Type /Pages /Kids [" + kids + "] /Count 2 >>");
    const auto found = digests(pdf.bytes(pdf.add("<< /Type /Catalog /Pages " + ref(tree) + " >>")));
    REQUIRE(found.size() == 2);
    CHECK(found[0].empty());
    CHECK(found[1].size() == 64);
}

TEST_CASE("A file that is no PDF is a fault that names it") {
    TextDisk disk("not a PDF");
    try {
        page_digests(disk, "a.pdf");
        FAIL();
    } catch (const Fault& fault) {
        CHECK(fault.kind() == FaultKind::not_understood);
        CHECK(fault.notes().at(0).where.file == "a.pdf");
    }
}

TEST_CASE("Rewritten by qpdf with other numbers and in another order, pages keep their digests") {
    test::TestFolder folder;
    const Sample page;
    put(folder / "a.pdf", file_of(page, true));
    REQUIRE(test::run("qpdf --object-streams=generate --stream-data=preserve a.pdf --pages a.pdf 3,2,1 -- b.pdf", folder.path()).status == 0);
    const auto disk = real_disk();
    const auto before = page_digests(*disk, folder / "a.pdf"), after = page_digests(*disk, folder / "b.pdf");
    REQUIRE(after.size() == 3);
    CHECK(after == std::vector<std::string>(before.rbegin(), before.rend()));
}

TEST_CASE("A form without resources of its own paints with all that the page has") {
    const auto of = [](const std::string& fill) {
        WrittenPdf pdf;
        const int bare = pdf.stream("/Subtype /Form /BBox [0 0 9 9]", "/Inner Do"), inner = pdf.stream("/Subtype /Form /BBox [0 0 9 9] /Resources << >>", fill);
        return digests(one_page(pdf, "/Bare Do", "/XObject << /Bare " + ref(bare) + " /Inner " + ref(inner) + " >>")).at(0);
    };
    CHECK(of("0 0 5 5 re f") != of("0 0 5 6 re f"));
}
