// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/gather_pages.h"

#include "base/fault.h"
#include "proof/page_digest.h"
#include "proof/written_pdf.h"
#include "support/shell.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::proof;
using namespace qw::proof::sample;

namespace {

/// Two files in a folder, and the pages of both gathered.
struct Folder {
    Folder() {
        WrittenPdf one, other;
        put(folder / "one.pdf",
            one_page(one, "q 50 0 0 50 9 9 cm /Im Do Q", "/XObject << /Im " + ref(small_picture(one)) + " >>", "/MediaBox [0 0 200 100] /Rotate 90"));
        put(folder / "other.pdf", one_page(other, "0 0 9 9 re f", "", "/MediaBox [0 0 300 100] /TrimBox [9 9 291 91]"));
    }
    void gather(const std::string& name) {
        write_file(*disk, folder / name, [&](Sink& sink) { gather_pages(*disk, {{folder / "other.pdf", 1}, {folder / "one.pdf", 1}}, {"Two pages", ""}, sink); });
    }
    std::vector<std::string> digests(const std::string& name) { return page_digests(*disk, folder / name); }
    test::TestFolder folder;
    std::unique_ptr<Disk> disk = real_disk();
};

}  // namespace

TEST_CASE("Taken pages keep their digests, and the file says how it is printed") {
    Folder at;
    at.gather("both.pdf");
    const auto both = at.digests("both.pdf");
    REQUIRE(both.size() == 2);
    CHECK(both[0] == at.digests("other.pdf")[0]);
    CHECK(both[1] == at.digests("one.pdf")[0]);
    const FileFacts facts = inspect(*at.disk, at.folder / "both.pdf");
    CHECK(facts.damage == "");
    CHECK(facts.title == "Two pages");
    CHECK(facts.print_scaling == "None");
    CHECK(facts.duplex == "");
    CHECK(facts.pick_tray_by_pdf_size == true);
    CHECK(test::run("qpdf --check both.pdf", at.folder.path()).status == 0);
}

TEST_CASE("The same pages give the same bytes") {
    Folder at;
    at.gather("first.pdf");
    at.gather("second.pdf");
    CHECK(read_text(*at.disk, at.folder / "first.pdf", 1 << 20) == read_text(*at.disk, at.folder / "second.pdf", 1 << 20));
}

TEST_CASE("A page that is not there is a fault, and no file is left") {
    Folder at;
    const auto ask = [&] { write_file(*at.disk, at.folder / "a.pdf", [&](Sink& sink) { gather_pages(*at.disk, {{at.folder / "one.pdf", 2}}, {"", ""}, sink); }); };
    CHECK_THROWS_AS(ask(), Fault);
    CHECK_FALSE(std::filesystem::exists(at.folder / "a.pdf"));
    CHECK_FALSE(std::filesystem::exists(at.folder / "a.pdf.part"));
}
