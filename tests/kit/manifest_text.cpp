// SPDX-License-Identifier: GPL-3.0-or-later
// What a manifest is as a file: encodings, line ends, sizes, and files made to do harm.
#include "base/digest.h"
#include "kit/example.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <sys/stat.h>

using namespace qw;
using namespace qw::test;

namespace {

std::string with_crlf(const std::string& text) {
    std::string out;
    for (const char c : text) out += c == '\n' ? std::string("\r\n") : std::string(1, c);
    return out;
}

}  // namespace

TEST_CASE("bytes that are not UTF-8 are refused with line and column before anything is read") {
    ExampleKit kit;
    CHECK(told(kit.faults(with(sound_manifest, "Sea", "S\xe9"))) == "bad-utf8 2:9");
    CHECK(told(kit.faults(with(sound_manifest, "Sea", "\xc3\xa9t\xc3\xa9 S\xe9"))) == "bad-utf8 2:13");
    CHECK(told(kit.faults(with(sound_manifest, "copy-100\n", "copy-100 # \xff\n"))) == "bad-utf8 11:23");
    CHECK(told(kit.faults(std::string("\xff\xfek\0i\0", 6))) == "bad-utf8 1:1");  // UTF-16
    CHECK(told(kit.faults(std::string("k\0i\0t\0", 6))) == "control-character 1:2");
    CHECK(told(kit.faults(with(sound_manifest, "Sea", "Sea\x04"))) == "control-character 2:11");  // the library's own end of file
    CHECK(told(kit.faults(with(sound_manifest, "\n", "\r"))) == "control-character 1:9");
}

TEST_CASE("a byte-order mark and CR LF change nothing") {
    ExampleKit kit;
    CHECK(kit.faults("\xef\xbb\xbf" + sound_manifest).empty());
    CHECK(kit.faults(with_crlf(sound_manifest)).empty());
    CHECK(kit.read(with_crlf(sound_manifest)).title == "Sea");
    CHECK(told(kit.faults("\xef\xbb\xbf" + with(sound_manifest, "kit: sea", "kit: Sea"))) == "bad-name 1:6");
    CHECK(told(kit.faults(with_crlf(with(sound_manifest, "duplex", "duplx")))) == "unknown-word 10:12");
}

TEST_CASE("columns count characters, not bytes") {
    ExampleKit kit;
    // "é" has two bytes, "—" three, "🜚" four.
    CHECK(told(kit.faults(with(sound_manifest, "[letter, a4]", "[a4, é—🜚, letterr]"))) == "unknown-name 5:14\nunknown-name 5:19");
    CHECK(told(kit.faults(with(sound_manifest, "title: Sea", "titlé: Sea"))) == "unknown-key 2:1");
    CHECK(told(kit.faults(with(sound_manifest, "title: Sea", "title: été: 2"))) == "syntax 2:11");
}

TEST_CASE("an alias bomb is refused at once and never swells") {
    ExampleKit kit;
    std::string bomb = "a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n";
    for (int i = 1; i < 12; ++i) {
        const std::string before = "*a" + std::to_string(i - 1);
        bomb += "a" + std::to_string(i) + ": &a" + std::to_string(i) + " [" + before;
        for (int k = 1; k < 10; ++k) bomb += ", " + before;
        bomb += "]\n";
    }
    const auto began = std::chrono::steady_clock::now();
    const auto notes = kit.faults(sound_manifest + bomb);
    CHECK(std::chrono::steady_clock::now() - began < std::chrono::seconds(2));
    CHECK(std::count_if(notes.begin(), notes.end(), [](const FaultNote& note) { return note.code == "alias"; }) == 110);
    CHECK(std::count_if(notes.begin(), notes.end(), [](const FaultNote& note) { return note.code == "anchor"; }) == 12);
}

TEST_CASE("depth, number of values and size are limited") {
    ExampleKit kit;
    const auto deep = [](int levels) {
        return "x: " + std::string(static_cast<std::size_t>(levels), '[') + std::string(static_cast<std::size_t>(levels), ']') + "\n";
    };
    CHECK(told(kit.faults(sound_manifest + deep(23))) == "unknown-key 12:1");
    CHECK(told(kit.faults(sound_manifest + deep(24))) == "too-deep 12:27");
    CHECK(told(kit.faults(sound_manifest + "x: " + std::string(100'000, '[') + "\n")).substr(0, 8) == "too-deep");
    CHECK(told(kit.faults(sound_manifest + "x: " + std::string(100'000, '{') + "\n")).substr(0, 8) == "too-deep");

    std::string many = sound_manifest + "x: [a";
    for (int i = 0; i < 20'000; ++i) many += ",a";
    CHECK(told(kit.faults(many + "]\n")).substr(0, 15) == "too-many-values");

    const std::size_t mebibyte = std::size_t{1} << 20;
    const std::string comment(mebibyte - sound_manifest.size() - 1, 'c');
    CHECK(kit.faults(sound_manifest + "#" + comment).empty());
    CHECK(told(kit.faults(sound_manifest + "#" + comment + "c")) == "too-large 0:0");
}

TEST_CASE("a mebibyte of anything is read or refused within seconds") {
    ExampleKit kit;
    for (const std::string piece : {"a: b\n", "- ",  "-\n", "? ", "[a, ", "{a: ",    "\"", "'",       "a ", "  a:\n",
                                    "!",      "&a ", "*a ", "#",  "|\n ", "a: &b\n", ": ", "- - -\n", "\n", "\xc3\xa9"}) {
        std::string text = "x: ";
        while (text.size() + piece.size() <= (std::size_t{1} << 20)) text += piece;
        INFO(piece);
        const auto began = std::chrono::steady_clock::now();
        CHECK_FALSE(kit.faults(text).empty());
        CHECK(std::chrono::steady_clock::now() - began < std::chrono::seconds(20));
    }
}

TEST_CASE("every beginning of a manifest, and every one with a byte changed, is read or refused with a line") {
    ExampleKit kit;
    const std::string whole = sound_manifest +
                              "calipers: { copy-80: 1.3 cm3/g }\nchoices: { closing-band: none }\nrules: { artwork-ppi: { limit: 200 ppi, reason: "
                              "\"a 'soft' one\" } } # é\n";
    REQUIRE(kit.faults(whole).empty());
    const auto check = [&](const std::string& text) {
        for (const FaultNote& note : kit.faults(text)) {
            INFO(text);
            CHECK(note.where.file == "kit.yaml");
            CHECK(note.where.line >= 1);
            CHECK(note.where.column >= 1);
        }
    };
    for (std::size_t i = 0; i < whole.size(); ++i) check(whole.substr(0, i));
    for (std::size_t i = 0; i < whole.size(); ++i)
        for (const char c : {'\0', '\n', '\t', ' ', ':', '-', '[', '{', '}', ',', '*', '&', '!', '|', '"', '\'', '#', '%', '@', '\xff'}) {
            std::string changed = whole;
            changed[i] = c;
            check(changed);
        }
}

TEST_CASE("a kit without a manifest, and what is no kit") {
    ExampleKit kit;
    const auto disk = real_disk();
    std::vector<kit::InputFile> inputs;
    const auto told_of = [&](const Path& folder) -> std::string {
        try {
            kit::read_manifest(*disk, folder, kit.pipeline(), inputs);
        } catch (const Fault& fault) {
            CHECK(fault.kind() == FaultKind::not_understood);
            return fault.notes().front().code;
        }
        return "";
    };
    CHECK(told_of(kit / "") == "missing-file");
    CHECK(told_of(kit / "nowhere") == "no-kit");
    CHECK(told_of(kit / "art/1.png") == "no-kit");
    std::filesystem::create_directory(kit / "kit.yaml");
    CHECK(told_of(kit / "") == "not-a-file");
    std::filesystem::remove(kit / "kit.yaml");
    REQUIRE(::mkfifo((kit / "kit.yaml").c_str(), 0600) == 0);  // reading it would wait for ever
    CHECK(told_of(kit / "") == "not-a-file");
    CHECK(inputs.empty());
}

TEST_CASE("the manifest's digest goes to the inputs") {
    ExampleKit kit;
    kit.put("kit.yaml", sound_manifest);
    const auto disk = real_disk();
    std::vector<kit::InputFile> inputs;
    kit::read_manifest(*disk, kit / "", kit.pipeline(), inputs);
    REQUIRE(inputs.size() == 1);
    CHECK(inputs[0].shown == "kit/kit.yaml");
    CHECK(inputs[0].sha256 == sha256_of(sound_manifest));
}
