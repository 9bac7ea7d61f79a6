// SPDX-License-Identifier: GPL-3.0-or-later
// Tools that others wrote judge what the room packs.
#include "bundle/zip.h"

#include "base/digest.h"
#include "bundle/sample.h"
#include "support/shell.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::bundle;
using qw::test::run;
using qw::test::Said;
using qw::test::TestFolder;

namespace {

void pack(const TestFolder& folder) {
    const auto disk = real_disk();
    std::vector<Entry> entries = sample::small(folder.path());
    sample::put(folder / "large", sample::noise(3'000'000));
    sample::put(folder / "check", "123456789");
    entries.push_back({"letter/large.pdf", folder / "large", true});
    entries.push_back({"check.txt", folder / "check", true});
    std::string contents;
    for (const Entry& entry : entries) contents += sha256_of(sample::get(entry.file)) + "  " + entry.name + "\n";
    sample::put(folder / "contents", contents);
    entries.push_back({"contents.txt", folder / "contents", false});
    write_zip(*disk, folder / "o.zip", entries, sample::date);
}

std::size_t count(const std::string& text, const std::string& part) {
    std::size_t n = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++n;
    return n;
}

}  // namespace

TEST_CASE("unzip and Python find no fault in a bundle") {
    const TestFolder folder;
    pack(folder);
    const Said unzip = run("unzip -t o.zip", folder.path());
    INFO(unzip.text);
    CHECK(unzip.status == 0);
    CHECK_THAT(unzip.text, Catch::Contains("No errors detected"));
    const Said python = run("python3 -m zipfile -t o.zip", folder.path());
    INFO(python.text);
    CHECK(python.status == 0);
    CHECK_THAT(python.text, Catch::Contains("Done testing") && !Catch::Contains("corrupted"));
}

TEST_CASE("sha256sum accepts what unzip takes out of a bundle") {
    const TestFolder folder;
    pack(folder);
    const Said out = run("mkdir out && cd out && unzip -q ../o.zip && sha256sum -c --strict contents.txt", folder.path());
    INFO(out.text);
    CHECK(out.status == 0);
    CHECK(count(out.text, ": OK") == 6);
}

TEST_CASE("zipinfo sees one date, one mode, and no fields of the machine") {
    const TestFolder folder;
    pack(folder);
    const Said seen = run("zipinfo -v o.zip", folder.path());
    REQUIRE(seen.status == 0);
    CHECK(count(seen.text, "2024 Feb 29 00:00:00") == 7);
    CHECK(count(seen.text, "Unix file attributes (100644 octal)") == 7);
    CHECK(count(seen.text, "length of extra field:                          0 bytes") == 7);
    CHECK(count(seen.text, "extended local header:                          no") == 7);
    CHECK(count(seen.text, "minimum software version required to extract:   1.0") == 4);
    CHECK(count(seen.text, "minimum software version required to extract:   2.0") == 3);
    CHECK(count(seen.text, "cbf43926") == 1);  // CRC-32 of "123456789", from memory
}
