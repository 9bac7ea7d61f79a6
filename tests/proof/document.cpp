// SPDX-License-Identifier: GPL-3.0-or-later
// Catalog: ISO 32000-1 table 28; viewer preferences: table 150; output intents: table 365; actions: 12.6.
#include "base/digest.h"
#include "proof/written_pdf.h"
#include "support/shell.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::proof;
using namespace qw::proof::sample;

namespace {

FileFacts with(const std::string& entries) {
    WrittenPdf pdf;
    const FileFacts facts = inspected(with_catalog(pdf, entries));
    CHECK(facts.damage == "");
    return facts;
}

std::string title_of(const std::string& written) {
    WrittenPdf pdf;
    const int info = pdf.add("<< /Title " + written + " >>");
    return inspected(with_catalog(pdf, "", "/Info " + ref(info))).title;
}

}  // namespace

TEST_CASE("The digest and the size are the file's") {
    const std::string bytes = one_page("");
    const FileFacts facts = inspected(bytes);
    CHECK(facts.bytes == bytes.size());
    CHECK(facts.sha256 == sha256_of(bytes));
}

TEST_CASE("A plain file has none of the extras") {
    const FileFacts facts = with("");
    CHECK(facts.title == "");
    CHECK(facts.print_scaling == "");
    CHECK(facts.duplex == "");
    CHECK_FALSE(facts.pick_tray_by_pdf_size);
    CHECK(facts.output_intent == "");
    CHECK_FALSE(facts.output_profile);
    CHECK_FALSE(facts.encrypted);
    CHECK_FALSE(facts.scripts);
    CHECK_FALSE(facts.layers);
    CHECK_FALSE(facts.attachments);
}

TEST_CASE("The later of the header's and the catalog's version holds") {
    CHECK(with("").version == "1.7");
    CHECK(with("/Version /2.0").version == "2.0");
    CHECK(with("/Version /1.4").version == "1.7");
    CHECK(with("/Version /nonsense").version == "1.7");
    CHECK(with("/Version /1.10").version == "1.10");
}

TEST_CASE("The title comes in UTF-8 from every encoding of text strings (ISO 32000-1 7.9.2.2, annex D.2)") {
    CHECK(title_of("(Tidewater)") == "Tidewater");
    CHECK(title_of("(A \\200 B \\201 C \\344)") == "A \u2022 B \u2020 C \u00e4");
    CHECK(title_of("<FEFF00E400E92022D83DDE00>") == "\u00e4\u00e9\u2022\U0001F600");
    CHECK(title_of("/Name") == "");
    CHECK(title_of("<EFBBBFC3A4>") == "\u00e4");
    CHECK(title_of("<EFBBBFFFC3A4C3>") == "\ufffd\u00e4\ufffd");
}

TEST_CASE("Viewer preferences are read by name") {
    const FileFacts facts = with("/ViewerPreferences << /PrintScaling /None /Duplex /DuplexFlipShortEdge /PickTrayByPDFSize true >>");
    CHECK(facts.print_scaling == "None");
    CHECK(facts.duplex == "DuplexFlipShortEdge");
    CHECK(facts.pick_tray_by_pdf_size == true);
    CHECK(with("/ViewerPreferences << /PickTrayByPDFSize false >>").pick_tray_by_pdf_size == false);
    CHECK_FALSE(with("/ViewerPreferences << /PickTrayByPDFSize /true /Duplex (Simplex) >>").pick_tray_by_pdf_size);
    CHECK(with("/ViewerPreferences << /Duplex (Simplex) >>").duplex == "");
}

TEST_CASE("The output intent and its profile") {
    WrittenPdf pdf;
    const int profile = pdf.stream("/N 3", "profile");
    const FileFacts facts = inspected(with_catalog(pdf, "/OutputIntents [<< /S /GTS_PDFA1 /OutputConditionIdentifier (sRGB IEC61966-2.1) /DestOutputProfile " +
                                                            ref(profile) + " >>]"));
    CHECK(facts.output_intent == "sRGB IEC61966-2.1");
    CHECK(facts.output_profile);
    const FileFacts bare = with("/OutputIntents [<< /OutputConditionIdentifier (Custom) >>]");
    CHECK(bare.output_intent == "Custom");
    CHECK_FALSE(bare.output_profile);
}

TEST_CASE("Scripts are found where a viewer would run them") {
    const std::string script = "<< /S /JavaScript /JS (app.alert\\(1\\)) >>";
    CHECK(with("/Names << /JavaScript << /Names [(a) " + script + "] >> >>").scripts);
    CHECK(with("/Names << /JavaScript << /Kids [<< /Names [(a) " + script + "] >>] >> >>").scripts);
    CHECK(with("/OpenAction " + script).scripts);
    CHECK(with("/OpenAction << /S /GoTo /Next " + script + " >>").scripts);
    CHECK(with("/OpenAction << /S /GoTo /Next [<< /S /URI >> " + script + "] >>").scripts);
    CHECK(with("/AA << /WP " + script + " >>").scripts);
    CHECK_FALSE(with("/Names << /JavaScript << /Names [] >> >>").scripts);
    CHECK_FALSE(with("/OpenAction [0 /Fit] /AA << /WP << /S /GoTo >> >>").scripts);
    const auto on_page = [](const std::string& entries) {
        return inspected(one_page("", "", "/MediaBox [0 0 9 9] " + entries)).scripts;
    };
    CHECK(on_page("/AA << /O " + script + " >>"));
    CHECK(on_page("/Annots [<< /Subtype /Link /Rect [0 0 1 1] /A " + script + " >>]"));
    CHECK(on_page("/Annots [<< /Subtype /Widget /Rect [0 0 1 1] /AA << /E " + script + " >> >>]"));
    CHECK_FALSE(on_page("/Annots [<< /Subtype /Link /Rect [0 0 1 1] /A << /S /URI /URI (a) >> >>]"));
}

TEST_CASE("A chain of actions that bites its own tail ends") {
    WrittenPdf pdf;
    const int action = pdf.add();
    pdf.set(action, "<< /S /GoTo /Next [" + ref(action) + " " + ref(action) + "] >>");
    CHECK_FALSE(inspected(with_catalog(pdf, "/OpenAction " + ref(action))).scripts);
}

TEST_CASE("Layers count when there are any") {
    WrittenPdf pdf;
    const int layer = pdf.add("<< /Type /OCG /Name (ink) >>");
    CHECK(inspected(with_catalog(pdf, "/OCProperties << /OCGs [" + ref(layer) + "] /D << >> >>")).layers);
    CHECK_FALSE(with("/OCProperties << /OCGs [] /D << >> >>").layers);
}

TEST_CASE("Attachments hang in the name tree, on the catalog or on a page") {
    CHECK(with("/Names << /EmbeddedFiles << /Names [(a) << /Type /Filespec /F (a) >>] >> >>").attachments);
    CHECK(with("/AF [<< /Type /Filespec /F (a) >>]").attachments);
    CHECK(with("/Collection << /View /H >>").attachments);
    CHECK_FALSE(with("/Names << /EmbeddedFiles << /Names [] >> >>").attachments);
    CHECK(inspected(one_page("", "", "/MediaBox [0 0 9 9] /Annots [<< /Subtype /FileAttachment /Rect [0 0 1 1] >>]")).attachments);
}

TEST_CASE("An encrypted file that opens without a password is read; its streams are those that were encrypted") {
    const test::TestFolder folder;
    const auto disk = real_disk();
    WrittenPdf pdf;
    const int picture = small_picture(pdf), info = pdf.add("<< /Title (Secret) >>");
    const int pages = pdf.add(), contents = pdf.stream("", "/I Do");
    const int page = pdf.add("<< /Type /Page /Parent " + ref(pages) + " /MediaBox [0 0 9 9] /Contents " + ref(contents) +
                             " /Resources << /XObject << /I " + ref(picture) + " >> >> >>");
    pdf.set(pages, "<< /Type /Pages /Count 1 /Kids [" + ref(page) + "] >>");
    put(folder / "plain.pdf", pdf.bytes(pdf.add("<< /Type /Catalog /Pages " + ref(pages) + " >>"), "/Info " + ref(info)));
    for (const std::string way : {"40", "128", "128 --use-aes=y", "256"}) {
        CAPTURE(way);
        const std::string weak = way == "256" ? "" : "--allow-weak-crypto ";
        REQUIRE(test::run("qpdf " + weak + "--stream-data=preserve --encrypt '' owner " + way + " -- plain.pdf open.pdf", folder.path()).status == 0);
        const FileFacts open = inspect(*disk, folder / "open.pdf");
        CHECK(open.encrypted);
        CHECK(open.damage == "");
        CHECK(open.title == "Secret");
        REQUIRE(open.pages.size() == 1);
        REQUIRE(open.pages[0].pictures.size() == 1);
        CHECK(open.pages[0].pictures[0].stream_sha256 == sha256_of(small_picture_data));
        REQUIRE(test::run("qpdf " + weak + "--encrypt user owner " + way + " -- plain.pdf shut.pdf", folder.path()).status == 0);
        const FileFacts shut = inspect(*disk, folder / "shut.pdf");
        CHECK(shut.encrypted);
        CHECK_THAT(shut.damage, Catch::Contains("password"));
        CHECK(shut.pages.empty());
    }
}
