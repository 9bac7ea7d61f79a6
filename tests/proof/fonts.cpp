// SPDX-License-Identifier: GPL-3.0-or-later
// Fonts: ISO 32000-1 9.6 to 9.9; subset tags: 9.6.4; the font programs of a descriptor: table 126.
#include "proof/written_pdf.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::proof;
using namespace qw::proof::sample;

namespace {

std::string told(const std::vector<FontFact>& fonts) {
    std::string text;
    for (const auto& font : fonts)
        text += font.name + (font.embedded ? " embedded" : "") + (font.subset ? " subset" : "") + "; ";
    return text;
}

std::string fonts_of(WrittenPdf& pdf, const std::string& resources) { return told(only_page(one_page(pdf, "", resources)).fonts); }

}  // namespace

TEST_CASE("A font is embedded when its descriptor has a program of any kind") {
    WrittenPdf pdf;
    const int program = pdf.stream("", "font");
    CHECK(fonts_of(pdf, "/Font << /A << /Subtype /Type1 /BaseFont /Helvetica >> >>") == "Helvetica; ");
    for (const std::string key : {"/FontFile", "/FontFile2", "/FontFile3"})
        CHECK(fonts_of(pdf, "/Font << /A << /Subtype /TrueType /BaseFont /ABCDEF+Lato-Bold /FontDescriptor << " + key + " " +
                                ref(program) + " >> >> >>") == "Lato-Bold embedded subset; ");
    CHECK(fonts_of(pdf, "/Font << /A << /Subtype /TrueType /BaseFont /Lato /FontDescriptor << /FontFile2 99 0 R >> >> >>") == "Lato; ");
    CHECK(fonts_of(pdf, "/Font << /A << /Subtype /Type1 /BaseFont /ABCDE+X >> /B << /Subtype /Type1 /BaseFont /abcdef+X >> >>") ==
          "ABCDE+X; abcdef+X; ");
}

TEST_CASE("A composite font's program is that of its descendant; a drawn font is in the file") {
    WrittenPdf pdf;
    const int program = pdf.stream("", "font");
    CHECK(fonts_of(pdf, "/Font << /A << /Subtype /Type0 /BaseFont /AAAAAA+Vollkorn /DescendantFonts [<< /FontDescriptor << /FontFile2 " +
                            ref(program) + " >> >>] >> >>") == "Vollkorn embedded subset; ");
    CHECK(fonts_of(pdf, "/Font << /A << /Subtype /Type0 /BaseFont /Vollkorn /DescendantFonts [<< >>] >> >>") == "Vollkorn; ");
    CHECK(fonts_of(pdf, "/Font << /A << /Subtype /Type3 >> >>") == " embedded; ");
}

TEST_CASE("Fonts are found wherever resources lead, each once") {
    WrittenPdf pdf;
    const auto font = [](const std::string& name) { return "<< /Subtype /Type1 /BaseFont /" + name + " >>"; };
    const auto resources = [&](const std::string& name) { return "/Resources << /Font << /X " + font(name) + " >> >>"; };
    const int inner = pdf.stream("/Subtype /Form /BBox [0 0 1 1] " + resources("Inner"), "");
    const int form = pdf.add();
    pdf.set(form, stream_body("/Subtype /Form /BBox [0 0 1 1] /Resources << /Font << /A " + font("Outer") + " /B " + font("Own") +
                                  " >> /XObject << /Self " + ref(form) + " /In " + ref(inner) + " >> >>", ""));
    const int tile = pdf.stream("/PatternType 1 " + resources("Tile"), "");
    const int mask = pdf.stream("/Subtype /Form " + resources("Mask"), "");
    CHECK(fonts_of(pdf, "/Font << /A " + font("Own") + " /B << /Subtype /Type3 /BaseFont /Drawn " + resources("Glyphs") +
                            " >> >> /XObject << /F " + ref(form) + " >> /Pattern << /P " + ref(tile) +
                            " >> /ExtGState << /G << /Font [" + ref(pdf.add(font("State"))) + " 9] /SMask << /G " + ref(mask) +
                            " >> >> >>") == "Own; Drawn embedded; Glyphs; Outer; Inner; Tile; State; Mask; ");
}

TEST_CASE("Fonts of annotations are told") {
    WrittenPdf pdf;
    const int form = pdf.stream("/Subtype /Form /BBox [0 0 1 1] /Resources << /Font << /X << /Subtype /Type1 /BaseFont /Courier >> >> >>",
                                "BT /X 9 Tf (note) Tj ET");
    const PageFacts page = only_page(one_page(pdf, "", "", "/MediaBox [0 0 9 9] /Annots [<< /Subtype /FreeText /Rect [0 0 5 5] /AP << /N " +
                                                               ref(form) + " >> >>]"));
    CHECK(told(page.fonts) == "Courier; ");
    CHECK(page.has_text);
}
