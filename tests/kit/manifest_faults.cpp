// SPDX-License-Identifier: GPL-3.0-or-later
// A table of manifests with one fault each: what is told, and where.
#include "kit/example.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

namespace {

/// The sound manifest with `from` made `to`, and what is told then.
struct Broken {
    const char* from;
    const char* to;
    const char* told;
    const char* mend;  ///< part of what to do; empty: not compared
};

void check_all(const std::vector<Broken>& table) {
    ExampleKit kit;
    kit.put("art/pockets/p.png");
    for (const Broken& row : table) {
        INFO(row.from << "  ->  " << row.to);
        const auto notes = kit.faults(with(sound_manifest, row.from, row.to));
        CHECK(told(notes) == row.told);
        if (*row.mend && !notes.empty()) CHECK_THAT(notes.front().mend, Catch::Contains(row.mend));
    }
}

}  // namespace

TEST_CASE("the sound manifest has no fault") {
    ExampleKit kit;
    CHECK(kit.faults(sound_manifest).empty());
}

TEST_CASE("a syntax error is told alone, with its line") {
    check_all({
        {"title: Sea", "title: Sea: a book", "syntax 2:11", "quote"},
        {"title: Sea", "title: \"Sea", "syntax 2:8", "close"},
        {"title: Sea", "title: 'It's'", "syntax 2:12", "quote"},
        {"title: Sea", "title: 'Sea", "syntax 2:8", "close"},
        {"title: Sea", "title: 'It''s \"Sea\" \\'", "", ""},
        {"title: Sea", "title: \"It's \\\"Sea\\\" \\\\\"", "", ""},
        {"art/*.png", "[\"art/1.png]", "syntax 9:13", "close"},
        {"copy-100\n", "\"copy-100", "syntax 11:12", "close"},
        {"title: Sea", "\"title: Sea", "syntax 2:1", "close"},
        {"title: Sea", "title: @sea", "syntax 2:8", "quote"},
        {"title: Sea", "title: %sea", "syntax 2:8", "quote"},
        {"art/*.png", "[art/?.png, art/1.png]", "syntax 9:17", "quote it: 'art/?.png'"},
        {"title: Sea", "title: - Sea", "syntax 2:8", "line of its own"},
        {"title: Sea", " title: Sea", "syntax 2:7", "same column"},
        {"title: Sea", "title Sea", "syntax 3:8", "space after every colon"},
        {"title: Sea", "title:Sea", "syntax 3:8", "space after every colon"},
        {"[letter, a4]", "[letter, a4", "syntax 5:9", "close it"},
        {"  pages:\n", "  pages: {\n", "syntax 7:10", "close it"},
        {"    role", "\trole", "syntax 8:2", "spaces"},
        {"    sides", "   sides", "syntax 10:4", "same column"},
        {"[letter, a4]", "letter, a4]: x", "syntax 5:20", ""},
        {"kit: sea\n", "kit: sea\nkit: sea\ntitle: a: b\n", "syntax 3:9", "quote"},  // the double key waits its turn
    });
}

TEST_CASE("a pattern that begins with an unquoted star is told as such") {
    check_all({
        {"art/*.png", "*.png", "unquoted-star 9:12", "quote it: '*.png'"},
        {"art/*.png", "[art/1.png, *2.png]", "unquoted-star 9:24", "quote it: '*2.png'"},
        {"files: art/*.png", "files:\n      - *.png", "unquoted-star 10:9", "quote it: '*.png'"},
        {"art/*.png", "*", "unquoted-star 9:12", "quote it: '*'"},
        {"art/*.png", "**.png", "unquoted-star 9:12", "quote it: '**.png'"},
        {"art/*.png", "*/1.png", "unquoted-star 9:12", "quote it: '*/1.png'"},
        {"art/*.png", "*pages", "alias 9:12", "write the value out"},
        {"art/*.png", "'*.png'", "empty-glob 9:12", ""},  // quoted, it is a pattern; the kit's own folder has no PNG
    });
}

TEST_CASE("what YAML allows and manifests do not") {
    check_all({
        {"title: Sea", "title: &t Sea", "anchor 2:8", ""},
        {"title: Sea", "title: !!str Sea", "tag 2:8", ""},
        {"title: Sea", "title: !sea Sea", "tag 2:8", ""},
        {"title: Sea", "title: ! Sea", "tag 2:8", ""},
        {"[letter, a4]", "![letter, a4]", "tag 5:9", ""},
        {"title: Sea", "title: Sea\ntitle: Seas", "duplicate-key 3:1", ""},
        {"  pages:", "  pages: { role: extra, files: art/1.png }\n  pages:", "duplicate-key 8:3", ""},
        {"    role: journal-page", "    role: journal-page\n    role: extra", "duplicate-key 9:5", ""},
        {"    role: journal-page", "    <<: { role: extra }\n    role: journal-page", "merge-key 8:5", ""},
        {"title: Sea", "title: Sea\n[a]: b", "key-not-text 3:1", ""},
        {"title: Sea", "title: Sea\n? { a: b }\n: c", "key-not-text 3:3", ""},
        {"stock: copy-100\n", "stock: copy-100\n---\nkit: x\n", "second-document 12:1", "---"},
        {"stock: copy-100\n", "stock: copy-100\n--- [\n", "second-document 12:1", ""},
    });
    ExampleKit kit;
    CHECK(told(kit.faults(with(with(sound_manifest, "title: Sea", "title: &t Sea"), "kit: sea", "date: 2026-09-01\nkit: sea") + "    print-at: *t\n")) ==
          "anchor 3:8\nalias 13:15");
    CHECK(kit.faults("---\n" + sound_manifest + "...\n").empty());
    CHECK(kit.faults("%YAML 1.2\n---\n" + sound_manifest).empty());
}

TEST_CASE("keys: unknown, missing, empty") {
    check_all({
        {"title: Sea\n", "", "missing-key 1:1", "add it"},
        {"title: Sea", "titel: Sea", "unknown-key 2:1", "write 'title'"},  // one fault, not a missing title as well
        {"title: Sea", "title:", "missing-value 2:1", ""},
        {"title: Sea", "title: ~", "missing-value 2:1", ""},
        {"title: Sea", "title: ''", "missing-value 2:8", ""},
        {"title: Sea", "title: '  '", "missing-value 2:8", ""},
        {"title: Sea", "title: Sea\nprise: 3", "unknown-key 3:1", ""},
        {"title: Sea", "title: Sea\nstock: copy-80", "unknown-key 3:1", "belongs to a set"},
        {"    sides", "    sids", "unknown-key 10:5", "write 'sides'"},
        {"    role: journal-page\n", "", "missing-key 8:5", "add it"},
        {"    files: art/*.png\n", "", "missing-key 8:5", "add it"},
        {"    files", "    fiels", "unknown-key 9:5", "write 'files'"},
        {"    files: art/*.png", "    files:", "missing-value 9:5", ""},
        {"    stock: copy-100", "    safe_area: 6 mm", "unknown-key 11:5", "write 'safe-area'"},
        {"papers: [letter, a4]", "papers:\n  -\n  - a4", "missing-value 6:3", ""},
        {"papers: [letter, a4]", "papers: []", "empty-list 5:9", ""},
        {"art/*.png", "[]", "empty-list 9:12", ""},
    });
    ExampleKit kit;
    CHECK(told(kit.faults(sound_manifest.substr(0, sound_manifest.find("sets:")))) == "missing-key 1:1");
    CHECK(told(kit.faults(sound_manifest.substr(0, sound_manifest.find("sets:")) + "sets: {}\n")) == "empty-list 6:7");
    CHECK(told(kit.faults(sound_manifest.substr(0, sound_manifest.find("  pages:")) + "  pages:\n")) == "missing-value 7:3");
}

TEST_CASE("values of the wrong type") {
    check_all({
        {"title: Sea", "title: [Sea]", "wrong-type 2:8", ""},
        {"title: Sea", "title: { en: Sea }", "wrong-type 2:8", ""},
        {"title: Sea", "title: |\n  Sea\n  and land\n", "control-character 2:8", ""},
        {"title: Sea", "title: \"Sea\\u0007\"", "control-character 2:8", ""},
        {"papers: [letter, a4]", "papers: a4", "wrong-type 5:9", ""},
        {"papers: [letter, a4]", "papers: [[a4]]", "wrong-type 5:10", ""},
        {"files: art/*.png", "files: { a: b }", "wrong-type 9:12", ""},
        {"files: art/*.png", "files: [art/1.png, [art/2.png]]", "wrong-type 9:24", ""},
        {"sides: duplex", "sides: [duplex]", "wrong-type 10:12", ""},
        {"title: Sea", "title: Sea\nrules: [artwork-ppi]", "wrong-type 3:8", ""},
        {"title: Sea", "title: Sea\nrules: { artwork-ppi: 200 }", "wrong-type 3:23", ""},
    });
    ExampleKit kit;
    CHECK(told(kit.faults("just words\n")) == "wrong-type 1:1");
    CHECK(told(kit.faults("- a\n- b\n")) == "wrong-type 1:1");
    CHECK(told(kit.faults("")) == "empty-file 1:1");
    CHECK(told(kit.faults("# nothing\n")) == "empty-file 1:1");
    CHECK(told(kit.faults(with(sound_manifest, "  pages:\n", "  - pages:\n"))).substr(0, 10) == "wrong-type");
}

TEST_CASE("words and names: the nearest is told") {
    check_all({
        {"journal-page", "journal-pages", "unknown-word 8:11", "write 'journal-page'"},
        {"duplex", "duplx", "unknown-word 10:12", "write 'duplex'"},
        {"duplex", "both", "unknown-word 10:12", ""},
        {"stock: copy-100", "place: as-draw", "unknown-word 11:12", "write 'as-drawn'"},
        {"copy-100", "copy-1000", "unknown-name 11:12", "write 'copy-100'"},
        {"copy-100", "greyboard-1mm", "unknown-name 11:12", ""},  // a board is no paper
        {"[letter, a4]", "[leter, a4]", "unknown-name 5:10", "write 'letter'"},
        {"[letter, a4]", "[letter, A4]", "unknown-name 5:18", "write 'a4'"},
        {"[letter, a4]", "[letter, letter]", "duplicate-value 5:18", "remove"},
        {"[letter, a4]", "[letter, na_letter_8.5x11in]", "duplicate-value 5:18", "remove"},
        {"soft-spine", "softspine", "unknown-name 4:10", "write 'soft-spine'"},
        {"title: Sea", "title: Sea\nprints: [borderles]", "unknown-word 3:10", "write 'borderless'"},
        {"title: Sea", "title: Sea\nprints: [bordered, bordered]", "duplicate-value 3:20", ""},
        {"title: Sea", "title: Sea\nprinter: most-home-printer", "unknown-name 3:10", "write 'most-home-printers'"},
        {"title: Sea", "title: Sea\nshop: small-file", "unknown-name 3:7", "write 'small-files'"},
        {"title: Sea", "title: Sea\nboard-stock: greybord-1mm", "unknown-name 3:14", "write 'greyboard-1mm'"},
        {"title: Sea", "title: Sea\nboard-stock: copy-80", "unknown-name 3:14", ""},
        {"title: Sea", "title: Sea\nborders: trim", "unknown-word 3:10", ""},
        {"title: Sea", "title: Sea\nrules: { artwork-pip: { limit: 200, reason: soft } }", "unknown-name 3:10", "write 'artwork-ppi'"},
    });
}

TEST_CASE("names, versions and dates") {
    check_all({
        {"kit: sea", "kit: Sea Kit", "bad-name 1:6", "write 'sea-kit'"},
        {"kit: sea", "kit: -sea", "bad-name 1:6", "write 'sea'"},
        {"kit: sea", "kit: ../sea", "bad-name 1:6", ""},
        {"kit: sea", "kit: nul", "bad-name 1:6", ""},
        {"kit: sea", "kit: lpt1", "bad-name 1:6", ""},
        {"  pages:", "  Pages:", "bad-name 7:3", "write 'pages'"},
        {"  pages:", "  my pages:", "bad-name 7:3", "write 'my-pages'"},
        {"  pages:", "  con:", "bad-name 7:3", ""},
        {"1.0.0", "1.0", "bad-version 3:10", "write '1.0.0'"},
        {"1.0.0", "1", "bad-version 3:10", "write '1.0.0'"},
        {"1.0.0", "v1.0.0", "bad-version 3:10", "write '1.0.0'"},
        {"1.0.0", "01.0.0", "bad-version 3:10", ""},
        {"1.0.0", "1.0.0+5", "bad-version 3:10", "leave out"},
        {"1.0.0", "1.0.0-RC1", "bad-version 3:10", ""},
        {"1.0.0", "1.0.0-", "bad-version 3:10", ""},
        {"1.0.0", "1.0.0-beta.01", "bad-version 3:10", ""},
        {"1.0.0", "1.0.0/../x", "bad-version 3:10", ""},
        {"title: Sea", "title: Sea\ndate: 1.9.2026", "bad-date 3:7", ""},
        {"title: Sea", "title: Sea\ndate: 2026-02-30", "bad-date 3:7", ""},
        {"title: Sea", "title: Sea\ndate: 1979-12-31", "bad-date 3:7", ""},
        {"title: Sea", "title: Sea\ndate: 2108-01-01", "bad-date 3:7", ""},
    });
    ExampleKit kit;
    CHECK(told(kit.faults(with(sound_manifest, "Sea", std::string(201, 'a')))) == "too-long 2:8");
    CHECK(told(kit.faults(with(sound_manifest, "sea", std::string(65, 'a')))) == "bad-name 1:6");
}

TEST_CASE("lengths carry a unit that is known") {
    check_all({
        {"stock: copy-100", "bleed: 3", "bare-number 11:12", "write '3 mm'"},
        {"stock: copy-100", "bleed: 3.5", "bare-number 11:12", ""},
        {"stock: copy-100", "bleed: 1/8", "bare-number 11:12", ""},
        {"stock: copy-100", "bleed: 3 px", "unknown-unit 11:12", ""},
        {"stock: copy-100", "bleed: 3 inches", "unknown-unit 11:12", "write '3 in'"},
        {"stock: copy-100", "bleed: '1/8\"'", "unknown-unit 11:12", "write '1/8 in'"},
        {"stock: copy-100", "bleed: 3 MM", "unknown-unit 11:12", "write '3 mm'"},
        {"stock: copy-100", "bleed: 3,5 mm", "bad-length 11:12", "point"},
        {"stock: copy-100", "bleed: three mm", "bad-length 11:12", ""},
        {"stock: copy-100", "bleed: 1/0 in", "bad-length 11:12", ""},
        {"stock: copy-100", "bleed: -3 mm", "out-of-range 11:12", ""},
        {"stock: copy-100", "bleed: 3 cm", "out-of-range 11:12", ""},
        {"stock: copy-100", "safe-area: [6 mm]", "wrong-type 11:16", ""},
        {"stock: copy-100", "drawn-at: 303 mm", "bad-size 11:15", ""},
        {"stock: copy-100", "drawn-at: 303 x 221.9", "bare-number 11:15", ""},
        {"stock: copy-100", "drawn-at: 303 x 221.9 px", "unknown-unit 11:15", ""},
        {"stock: copy-100", "drawn-at: 303 x", "bad-length 11:15", ""},
        {"stock: copy-100", "drawn-at: x 221.9 mm", "bad-length 11:15", ""},
        {"stock: copy-100", "drawn-at: 1 x 221.9 mm", "out-of-range 11:15", ""},
        {"stock: copy-100", "drawn-at: 6 x 6 cm\n    bleed: 20 mm\n    safe-area: 20 mm", "out-of-range 11:5", ""},
        {"stock: copy-100", "print-at: 100", "bare-number 11:15", "write '100 %'"},
        {"stock: copy-100", "print-at: 100 pct", "unknown-unit 11:15", ""},
        {"stock: copy-100", "print-at: 29 %", "out-of-range 11:15", ""},
        {"stock: copy-100", "print-at: 104 %", "out-of-range 11:15", ""},
        {"stock: copy-100", "print-at: full", "bad-quantity 11:15", ""},
    });
}

TEST_CASE("a unit that is only near another is not proposed") {
    ExampleKit kit;
    CHECK(kit.faults(with(sound_manifest, "stock: copy-100", "bleed: 3 px")).at(0).mend.empty());
}

TEST_CASE("what belongs to one role only") {
    check_all({
        {"sides: duplex", "sides: single\n    last-back: blank", "not-here 11:5", "duplex"},
        {"stock: copy-100", "last-back: black", "unknown-word 11:16", "write 'blank'"},
        {"stock: copy-100", "part: trifold-pocket", "not-here 11:5", "role: part"},
        {"stock: copy-100", "faces: { outside: art/1.png }", "not-here 11:5", "role: part"},
        {"stock: copy-100", "goes-in: pages", "not-here 11:5", "role: part"},
    });
}

TEST_CASE("rules that a kit sets otherwise") {
    check_all({
        {"title: Sea", "title: Sea\nrules: { artwork-ppi: { limit: 200 ppi } }", "missing-key 3:23", ""},
        {"title: Sea", "title: Sea\nrules: { artwork-ppi: { limit: 200 ppi, reason: '' } }", "missing-value 3:49", ""},
        {"title: Sea", "title: Sea\nrules: { artwork-ppi: { reason: soft } }", "missing-key 3:23", ""},
        {"title: Sea", "title: Sea\nrules: { artwork-ppi: { limit: many, reason: soft } }", "bad-quantity 3:32", ""},
        {"title: Sea", "title: Sea\nrules: { artwork-ppi: { limit: 200 dpi, reason: soft } }", "unknown-unit 3:32", "ppi"},
        {"title: Sea", "title: Sea\nrules: { artwork-safe-area: { limit: 3, reason: soft } }", "bare-number 3:38", "3 mm"},
        {"title: Sea", "title: Sea\nrules: { odd-faces: { limit: 3, reason: soft } }", "not-here 3:23", ""},
        {"title: Sea", "title: Sea\nrules: { odd-faces: { level: fatal, reason: soft } }", "unknown-word 3:30", ""},
        {"title: Sea", "title: Sea\nrules: { odd-faces: { level: note, reasons: soft } }", "unknown-key 3:36", "write 'reason'"},
    });
}

TEST_CASE("ten faults are told in one run, in the order of their lines") {
    ExampleKit kit;
    const auto notes = kit.faults(
        "kit: My Kit\n"              // 1 bad-name
        "titel: Sea\n"               // 2 unknown-key
        "version: 1.0\n"             // 3 bad-version
        "journal: soft-spin\n"       // 4 unknown-name
        "papers: [letter, a5]\n"     // 5 unknown-name
        "date: soon\n"               // 6 bad-date
        "sets:\n"
        "  pages:\n"
        "    role: journal-page\n"
        "    files: art/*.gif\n"     // 10 empty-glob
        "    sides: douplex\n"       // 11 unknown-word
        "    bleed: 3\n"             // 12 bare-number
        "    drawn-at: 303 x 221.9 px\n"  // 13 unknown-unit
        "    stock: copy-100\n");
    CHECK(told(notes) ==
          "bad-name 1:6\nunknown-key 2:1\nbad-version 3:10\nunknown-name 4:10\nunknown-name 5:18\nbad-date 6:7\n"
          "empty-glob 10:12\nunknown-word 11:12\nbare-number 12:12\nunknown-unit 13:15");
    CHECK(notes.size() == 10);
}
