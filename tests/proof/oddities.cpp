// SPDX-License-Identifier: GPL-3.0-or-later
// What ISO 19005-2 (PDF/A-2) forbids in a file's structure, and what ISO 32000-1 knows that a printer stumbles over: one file
// that has it, and one that is as near to it as a lawful file comes.
#include "proof/written_pdf.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace qw;
using namespace qw::proof;
using namespace qw::proof::sample;

namespace {

std::vector<OddityKind> kinds(const std::string& bytes) {
    std::vector<OddityKind> kinds;
    for (const Oddity& odd : inspected(bytes).oddities)
        if (odd.kind != OddityKind::no_id) kinds.push_back(odd.kind);  // the fixtures have none
    return kinds;
}

using Kinds = std::vector<OddityKind>;

std::string catalog(const std::string& entries, const std::string& trailer = "") {
    WrittenPdf pdf;
    return with_catalog(pdf, entries, trailer);
}

std::string page(const std::string& entries) { return one_page("", "", "/MediaBox [0 0 200 100] " + entries); }

std::string state(const std::string& entries) { return one_page("/G gs", "/ExtGState << /G << " + entries + " >> >>"); }

/// A picture with these entries beside size and samples; it is not painted, being there is enough.
std::string picture(const std::string& entries, const std::string& space = "/DeviceRGB", int bits = 8) {
    WrittenPdf pdf;
    const int image = pdf.stream(
        "/Type /XObject /Subtype /Image /Width 2 /Height 2 /BitsPerComponent " + std::to_string(bits) + " /ColorSpace " + space + " " + entries,
        std::string(48, 'x'));
    return one_page(pdf, "", "/XObject << /I " + ref(image) + " >>");
}

std::string form(const std::string& entries) {
    WrittenPdf pdf;
    const int xobject = pdf.stream("/Type /XObject " + entries + " /BBox [0 0 9 9]", "");
    return one_page(pdf, "", "/XObject << /F " + ref(xobject) + " >>");
}

std::string layer(const std::string& setting) {
    WrittenPdf pdf;
    const int group = pdf.add("<< /Type /OCG /Name (Night) >>");
    std::string written = setting;
    for (std::size_t at; (at = written.find("OCG")) != std::string::npos;) written.replace(at, 3, ref(group));
    return with_catalog(pdf, "/OCProperties << /OCGs [" + ref(group) + "] /D << " + written + " >> >>");
}

std::string information(const std::string& entries, const std::string& xmp = "") {
    WrittenPdf pdf;
    const int info = pdf.add("<< " + entries + " >>");
    const int metadata = xmp.empty() ? 0 : pdf.stream("/Type /Metadata /Subtype /XML", xmp);
    return with_catalog(pdf, metadata ? "/Metadata " + ref(metadata) : "", "/Info " + ref(info));
}

std::string titled(const std::string& title) {
    return "<x:xmpmeta><rdf:Description><dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">" + title + "</rdf:li></rdf:Alt></dc:title></rdf:Description></x:xmpmeta>";
}

}  // namespace

TEST_CASE("bytes before the header and after the end are odd, one line end is not") {
    const std::string plain = one_page("");
    CHECK(kinds(plain).empty());
    CHECK(kinds(plain.substr(0, plain.rfind("%%EOF") + 5)).empty());
    CHECK(kinds(plain.substr(0, plain.rfind("%%EOF") + 5) + "\r\n").empty());
    CHECK(kinds(plain.substr(0, plain.rfind("%%EOF") + 5) + "\n ") == Kinds{OddityKind::after_end});
    CHECK(kinds(plain + "a note") == Kinds{OddityKind::after_end});
    const auto late = inspected("mail\n" + plain).oddities;
    CHECK(std::any_of(late.begin(), late.end(), [](const Oddity& odd) { return odd.kind == OddityKind::header_late; }));
}

TEST_CASE("a trailer without an ID is odd") {
    const auto has = [](const std::string& bytes) {
        const Oddities found = inspected(bytes).oddities;
        return std::any_of(found.begin(), found.end(), [](const Oddity& odd) { return odd.kind == OddityKind::no_id; });
    };
    CHECK(has(catalog("")));
    CHECK_FALSE(has(catalog("", "/ID [<00> <01>]")));
}

TEST_CASE("what the catalog does by itself is odd") {
    CHECK(kinds(catalog("/OpenAction << /S /Launch /F (a.exe) >>")) == Kinds{OddityKind::action});
    CHECK(kinds(catalog("/OpenAction << /S /GoTo /D [0 /Fit] /Next << /S /SubmitForm >> >>")) == Kinds{OddityKind::action});
    CHECK(kinds(catalog("/OpenAction << /S /GoTo /D [0 /Fit] >>")).empty());
    CHECK(kinds(catalog("/OpenAction [0 /Fit]")).empty());
    CHECK(kinds(catalog("/AA << /WC << /S /Sound >> >>")) == Kinds{OddityKind::action});
    CHECK(kinds(catalog("/AcroForm << /Fields [<< /T (a) >>] >>")) == Kinds{OddityKind::form_fields});
    CHECK(kinds(catalog("/AcroForm << /Fields [] >>")).empty());
    CHECK(kinds(catalog("/PageMode /FullScreen")) == Kinds{OddityKind::opening});
    CHECK(kinds(catalog("/PageMode /UseNone /ViewerPreferences << /HideToolbar false /DisplayDocTitle true >>")).empty());
    CHECK(kinds(catalog("/ViewerPreferences << /HideMenubar true >>")) == Kinds{OddityKind::opening});
    CHECK(kinds(catalog("/ViewerPreferences << /PrintPageRange [1 2] >>")) == Kinds{OddityKind::print_range});
    CHECK(kinds(catalog("/ViewerPreferences << /NumCopies 2 >>")) == Kinds{OddityKind::print_range});
    CHECK(kinds(catalog("/ViewerPreferences << /NumCopies 1 >>")).empty());
}

TEST_CASE("a layer that is off is odd, one that is on is not") {
    CHECK(kinds(layer("/OFF [OCG]")) == Kinds{OddityKind::layer_off});
    CHECK(kinds(layer("/BaseState /OFF")) == Kinds{OddityKind::layer_off});
    CHECK(kinds(layer("/BaseState /OFF /ON [OCG]")).empty());
    CHECK(kinds(layer("/ON [OCG]")).empty());
    CHECK(inspected(layer("/OFF [OCG]")).oddities.back().detail == "Night");
}

TEST_CASE("links lead out, notes lie over the page, hidden ones are missing in print") {
    CHECK(kinds(page("/Annots [<< /Subtype /Link /Rect [0 0 9 9] /A << /S /URI /URI (https://example.org/) >> >>]")) == Kinds{OddityKind::link_out});
    CHECK(kinds(page("/Annots [<< /Subtype /Link /Rect [0 0 9 9] /A << /S /GoTo /D [0 /Fit] >> >>]")).empty());
    CHECK(kinds(page("/Annots [<< /Subtype /Stamp /Rect [0 0 9 9] /F 4 >>]")) == Kinds{OddityKind::annotation});
    for (const char* flags : {"", "/F 0", "/F 6", "/F 5", "/F 36"})
        CHECK(kinds(page("/Annots [<< /Subtype /Stamp /Rect [0 0 9 9] " + std::string(flags) + " >>]")) == Kinds{OddityKind::annotation_hidden});
}

TEST_CASE("pictures that are smoothed, have another in their place, a rare depth or a foreign colour are odd") {
    CHECK(kinds(picture("")).empty());
    CHECK(kinds(picture("/Interpolate true")) == Kinds{OddityKind::interpolated});
    CHECK(kinds(picture("/Interpolate false")).empty());
    CHECK(kinds(picture("/Alternates [<< /Image null >>]")) == Kinds{OddityKind::alternates});
    CHECK(kinds(picture("", "/DeviceRGB", 16)) == Kinds{OddityKind::depth});
    CHECK(kinds(picture("", "/DeviceRGB", 4)).empty());
    CHECK(kinds(picture("", "/DeviceCMYK")) == Kinds{OddityKind::foreign_colour});
    CHECK(kinds(picture("", "[/Indexed /DeviceCMYK 0 <00000000>]")) == Kinds{OddityKind::foreign_colour});
    CHECK(kinds(picture("", "[/Indexed /DeviceRGB 0 <000000>]")).empty());
    CHECK(kinds(picture("", "/DeviceGray")).empty());
    CHECK(kinds(picture("/Intent /Glossy")) == Kinds{OddityKind::intent});
    CHECK(kinds(picture("/Intent /Perceptual")).empty());
    CHECK(kinds(picture("/Filter /LZWDecode")) == Kinds{OddityKind::filter});
    CHECK(kinds(picture("/Filter /JPXDecode")) == Kinds{OddityKind::rare_filter});
    CHECK(kinds(picture("/Filter /DCTDecode")).empty());
    WrittenPdf pdf;
    const int mask = pdf.stream("/Subtype /Image /Width 2 /Height 2 /BitsPerComponent 8 /ColorSpace /DeviceGray", "xxxx");
    const int image = pdf.stream("/Subtype /Image /Width 2 /Height 2 /BitsPerComponent 8 /ColorSpace /DeviceRGB /SMask " + ref(mask), small_picture_data);
    CHECK(kinds(one_page(pdf, "", "/XObject << /I " + ref(image) + " >>")) == Kinds{OddityKind::transparency});
}

TEST_CASE("graphics states that mix, bend or overprint are odd") {
    CHECK(kinds(state("/ca 0.5")) == Kinds{OddityKind::transparency});
    CHECK(kinds(state("/ca 1 /CA 1.0 /BM /Normal /SMask /None")).empty());
    CHECK(kinds(state("/BM /Multiply")) == Kinds{OddityKind::transparency});
    CHECK(kinds(state("/BM [/Screen /Normal]")) == Kinds{OddityKind::transparency});
    CHECK(kinds(state("/TR /Identity")) == Kinds{OddityKind::transfer});
    CHECK(kinds(state("/TR2 /Default")).empty());
    CHECK(kinds(state("/OP true")) == Kinds{OddityKind::overprint});
    CHECK(kinds(state("/OP false /op false /OPM 1")).empty());
    CHECK(kinds(state("/RI /Vivid")) == Kinds{OddityKind::intent});
}

TEST_CASE("content from elsewhere or for old printers is odd") {
    CHECK(kinds(form("/Subtype /Form")).empty());
    CHECK(kinds(form("/Subtype /PS")) == Kinds{OddityKind::foreign_content});
    CHECK(kinds(form("/Subtype /Form /Subtype2 /PS")) == Kinds{OddityKind::foreign_content});
    CHECK(kinds(form("/Subtype /Form /Ref << /F (other.pdf) /Page 0 >>")) == Kinds{OddityKind::foreign_content});
}

TEST_CASE("two titles, an author and a path of the machine are odd") {
    CHECK(kinds(information("/Title (Pages)", titled("Pages"))).empty());
    CHECK(kinds(information("/Title (Pages)", titled("Another"))) == Kinds{OddityKind::metadata_apart});
    CHECK(kinds(information("/Title (Pages) /Producer (Some program 1.0)")).empty());
    CHECK(kinds(information("/Author (A Person)")) == Kinds{OddityKind::metadata_private});
    CHECK(kinds(information("/Title (file:///C:/art/pages.pdf)")) == Kinds{OddityKind::metadata_private});
}

TEST_CASE("a profile for other inks and a box beyond the limits are odd") {
    const auto intent = [](int components) {
        WrittenPdf pdf;
        const int profile = pdf.stream("/N " + std::to_string(components), "profile");
        return with_catalog(pdf, "/OutputIntents [<< /S /GTS_PDFA1 /OutputConditionIdentifier (x) /DestOutputProfile " + ref(profile) + " >>]");
    };
    CHECK(kinds(intent(3)).empty());
    CHECK(kinds(intent(4)) == Kinds{OddityKind::profile});
    CHECK(kinds(one_page("", "", "/MediaBox [0 0 14400 3]")).empty());
    CHECK(kinds(one_page("", "", "/MediaBox [0 0 14401 100]")) == Kinds{OddityKind::tiny_or_huge_box});
    CHECK(kinds(one_page("", "", "/MediaBox [0 0 200 100] /TrimBox [0 0 2 50]")) == Kinds{OddityKind::tiny_or_huge_box});
}

TEST_CASE("an oddity is told once, with the first page that has it") {
    WrittenPdf pdf;
    const int image = pdf.stream("/Subtype /Image /Width 2 /Height 2 /BitsPerComponent 8 /ColorSpace /DeviceRGB /Interpolate true", small_picture_data);
    const Oddities found = inspected(one_page(pdf, "/I Do /I Do", "/XObject << /I " + ref(image) + " /J " + ref(image) + " >>")).oddities;
    CHECK(std::count_if(found.begin(), found.end(), [](const Oddity& odd) { return odd.kind == OddityKind::interpolated && odd.page == 1; }) == 1);
}
