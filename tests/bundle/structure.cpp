// SPDX-License-Identifier: GPL-3.0-or-later
#include "bundle/structure.h"

#include "bundle/kinds.h"
#include "bundle/sample.h"
#include "bundle/unicode.h"
#include "support/shell.h"

#include <catch2/catch.hpp>

#include <random>

using namespace qw;
using namespace qw::bundle;
using qw::test::TestFolder;
using sample::Odd;
using Where = StrayBytes::Where;

namespace {

Structure of(const std::string& bytes) {
    const TestFolder folder;
    sample::put(folder / "o.zip", bytes);
    return read_structure(*real_disk(), folder / "o.zip");
}

Structure of(const std::vector<Odd>& entries, const sample::Around& around = {}) { return of(sample::odd_zip(entries, around)); }

Odd ones() {
    Odd entry{"a", "text"};
    entry.all_ones = true;
    entry.extra = sample::little(1, 2) + sample::little(16, 2) + sample::little(4, 8) + sample::little(4, 8);
    return entry;
}

}  // namespace

TEST_CASE("fields of headers are read as they stand") {
    Odd odd{"caf\xc3\xa9.txt", "text", 0, 0x800};
    odd.time = 0x645c;  // 2024-02-29 12:34:56
    odd.date = 0x585d;
    odd.made_on = 3;
    odd.attributes = 0100644u << 16;
    odd.comment = "of an entry";
    const Structure zip = of({{"a", "first"}, odd}, {"", "", "of all", false});
    REQUIRE(zip.damage == "");
    REQUIRE(zip.entries.size() == 2);
    const EntryHeader& entry = zip.entries[1];
    CHECK(entry.name == "caf\xc3\xa9.txt");
    CHECK(entry.says_utf8());
    CHECK(entry.time == 0x645c);
    CHECK(entry.date == 0x585d);
    CHECK(entry.unix_type() == 0100000);
    CHECK(entry.size == 4);
    CHECK(entry.offset == 30 + 1 + 5);
    CHECK(entry.end == 30 + 1 + 5 + 30 + 9 + 4);
    CHECK(entry.comment == "of an entry");
    CHECK(entry.disagrees == "");
    CHECK(zip.comment == "of all");
    CHECK(zip.stray.empty());
    CHECK(zip.overlaps.empty());
}

TEST_CASE("the standard's check value is the CRC of a name in an extra field") {
    Odd odd{"123456789", "text"};
    odd.extra = sample::unicode_path("123456789", "neun");
    CHECK(odd.extra.substr(5, 4) == std::string("\x26\x39\xf4\xcb"));  // cbf43926
    CHECK(of({odd}).entries.at(0).called() == "neun");
    odd.extra[5] ^= 1;
    CHECK(of({odd}).entries.at(0).called() == "123456789");
}

TEST_CASE("bytes that belong to no entry are told with their place") {
    Odd gap{"a", "text"};
    gap.behind = "twelve bytes";
    const Structure zip = of({gap, {"b", "text"}}, {"before", "after all", "", false});
    REQUIRE(zip.stray.size() == 3);
    CHECK((zip.stray[0].where == Where::before && zip.stray[0].offset == 0 && zip.stray[0].bytes == 6));
    CHECK((zip.stray[1].where == Where::between && zip.stray[1].bytes == 12));
    CHECK((zip.stray[2].where == Where::after && zip.stray[2].bytes == 9));
    CHECK(zip.begin == 6);
    CHECK(zip.entries[0].offset == 6);
    CHECK(zip.entries[0].disagrees == "");
}

TEST_CASE("an end record inside a comment is not taken for the end") {
    const std::string inner = sample::odd_zip({{"x", "y"}});
    const Structure zip = of({{"a", "text"}}, {"", "", "a comment with " + inner.substr(inner.size() - 22), false});
    CHECK(zip.damage != "");  // the inner one ends with the file as well: readers differ, so it is none
    const Structure followed = of({{"a", "text"}}, {"", "", "a comment with " + inner.substr(inner.size() - 22) + "more", false});
    REQUIRE(followed.damage == "");
    CHECK(followed.entries.size() == 1);
}

TEST_CASE("ZIP64 is read") {
    const Structure zip = of({ones()});
    REQUIRE(zip.damage == "");
    CHECK(zip.entries[0].zip64);
    CHECK(zip.entries[0].size == 4);
    CHECK(zip.entries[0].packed == 4);
    CHECK(zip.entries[0].disagrees == "");
    // Its end record, from a stream that others packed.
    const TestFolder folder;
    REQUIRE(test::run("python3 -c \"import zipfile; z=zipfile.ZipFile('o.zip','w'); [z.writestr(str(i),'x') for i in range(65536)]; z.close()\"",
                      folder.path())
                .status == 0);
    const Structure large = read_structure(*real_disk(), folder / "o.zip");
    CHECK(large.damage == "");
    CHECK(large.zip64);
    CHECK(large.entries.size() == 65536);
    CHECK(large.stray.empty());
}

TEST_CASE("data descriptors of every form are held against the directory") {
    for (const bool marked : {true, false}) {
        const Odd streamed = sample::with_descriptor(sample::deflated("a", "some text"), marked);
        const Structure zip = of({streamed, {"b", "x"}});
        CHECK(zip.entries.at(0).disagrees == "");
        CHECK(zip.stray.empty());
        Odd lies = streamed;
        lies.behind.back() ^= 1;
        CHECK(of({lies, {"b", "x"}}).entries.at(0).disagrees == "data descriptor");
    }
}

TEST_CASE("each way in which headers differ is told") {
    const auto disagrees = [](auto change) {
        Odd odd{"a", "text"};
        change(odd);
        return of({odd}).entries.at(0).disagrees;
    };
    CHECK(disagrees([](Odd& odd) { odd.local_name = "b"; }) == "name");
    CHECK(disagrees([](Odd& odd) { odd.local_size = 5; }) == "size");
    CHECK(disagrees([](Odd& odd) { odd.unknown_before = true; }) == "CRC");
    CHECK_THAT(disagrees([](Odd& odd) { odd.at = 1; }), Catch::StartsWith("place"));
    CHECK(disagrees([](Odd& odd) { odd.extra = sample::unicode_path("a", "../b"); }) == "name");
}

TEST_CASE("sizes and places at the edges of their fields do no harm") {
    for (const std::uint32_t value : {0u, 1u, 0x7fffffffu, 0x80000000u, 0xfffffffeu, 0xffffffffu})
        for (const std::size_t field : {4u, 6u, 8u, 10u, 12u, 16u, 20u}) {
            std::string zip = sample::odd_zip({{"a", "text"}, {"b", "text"}});
            zip.replace(zip.size() - 22 + field, field < 12 || field == 20 ? 2 : 4, sample::little(value, field < 12 || field == 20 ? 2 : 4));
            CHECK_NOTHROW(of(zip));
            for (const std::size_t in_header : {20u, 24u, 28u, 30u, 32u, 42u}) {
                std::string other = sample::odd_zip({{"a", "text"}, {"b", "text"}});
                other.replace(other.rfind("PK\1\2") + in_header, in_header < 26 || in_header == 42 ? 4 : 2,
                              sample::little(value, in_header < 26 || in_header == 42 ? 4 : 2));
                CHECK_NOTHROW(of(other));
            }
        }
}

TEST_CASE("names are compared as systems without capitals compare them") {
    CHECK(folded("\xc3\x89t\xc3\xa9") == folded("e\xcc\x81te\xcc\x81"));
    CHECK(folded("STRASSE") == folded("stra\xc3\x9f" "e"));
    CHECK(folded("a") != folded("b"));
    CHECK(is_composed("\xc3\xa9"));
    CHECK_FALSE(is_composed("e\xcc\x81"));
    CHECK_FALSE(is_composed("\xe9"));
    CHECK(length_in_utf16("a\xc3\xa9\xf0\x9f\x8c\x8a") == 4);
    CHECK(shown_name("a\n\xe9") == "a\\x0a\\xe9");
    CHECK(shown_name("caf\xc3\xa9") == "caf\xc3\xa9");
}

TEST_CASE("what a file is its first bytes tell before its name") {
    CHECK(program_in("a.txt", "#!/bin/sh\n") != "");
    CHECK(program_in("a.txt", "MZ is no program") == "");
    CHECK(program_in("run.BAT", "") != "");
    CHECK(archive_in("a.pdf", std::string("PK\3\4", 4)) != "");
    CHECK(archive_in("a.docx", std::string("PK\3\4", 4)) == "");
    CHECK(archive_in("a.tar.gz", "") != "");
    CHECK(archive_in("page.pdf", "%PDF-1.7") == "");
}

TEST_CASE("names that others give are judged as Windows and macOS take them") {
    for (const char* name : {"My Kit/Page 1.pdf", "My Kit/", "caf\xc3\xa9.pdf", "a & b (2).pdf", "../x"}) CHECK(fault_elsewhere(name) == "");
    for (const char* name : {"", "a//b", "a/./b", "a?", "nul", "a. ", "x/con.pdf", "a\\b", "tab\t"}) CHECK(fault_elsewhere(name) != "");
    CHECK(fault_elsewhere(std::string(255, 'x')) == "");
    CHECK(fault_elsewhere(std::string(256, 'x')) != "");
    for (const char* name : {"../x", "a/../x", "/x", "C:/x", "c:", "..\\x", "\\\\server\\x", "a\\..\\x"}) CHECK(escape_in_name(name) != "");
    for (const char* name : {"x", "..x/y..", "a/...", "cc:/x"}) CHECK(escape_in_name(name) == "");
}

TEST_CASE("a zip cut at any 64th of its length, or with seeded flips, is read or damaged, and never hangs") {
    const TestFolder folder;
    std::vector<Odd> entries{{"a", sample::noise(3000)}, sample::with_descriptor(sample::deflated("b", sample::noise(2000))), ones(), {"My Kit/", ""}};
    entries[3].made_on = 3;
    entries[0].extra = sample::unicode_path("a", "\xc3\xa4");
    const std::string whole = sample::odd_zip(entries, {"", "", "a comment", false});
    const auto disk = real_disk();
    const auto read = [&](const std::string& bytes) {
        sample::put(folder / "o.zip", bytes);
        return read_zip(*disk, folder / "o.zip");
    };
    for (std::size_t part = 0; part < 64; ++part) {
        INFO(part);
        CHECK(read(whole.substr(0, whole.size() * part / 64)).damage != "");
    }
    std::mt19937 random(20260901);
    for (int flip = 0; flip < 500; ++flip) {
        std::string spoilt = whole;
        // Half of them in the last 400 bytes, where the headers are.
        for (int times = 0; times < 1 + flip % 4; ++times) {
            const std::size_t at = flip % 2 == 0 ? random() % spoilt.size() : spoilt.size() - 1 - random() % 400;
            spoilt[at] = static_cast<char>(spoilt[at] ^ (1 << (random() % 8)));
        }
        const Content content = read(spoilt);
        CHECK(content.entries.size() <= content.structure.entries.size());
    }
}
