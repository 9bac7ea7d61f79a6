// SPDX-License-Identifier: GPL-3.0-or-later
#include "record/release_record.h"

#include "base/digest.h"
#include "base/fault.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <clocale>
#include <functional>
#include <locale>

using namespace qw;
using namespace qw::record;

namespace {

ReleaseRecord sample() {
    ReleaseRecord record{"tidewater-almanac", "1.0.0", "quirewright 0.1.0", {}, {}, {}};
    record.inputs = {{"pipeline/papers.yaml", sha256_of("papers")},
                     {"kit/kit.yaml", sha256_of("kit")},
                     {"system/fonts/Lato-Regular.ttf", sha256_of("font")},
                     {"kit/art/page-01.png", sha256_of("art"), "flattened on white and packed again"}};
    record.files = {{"letter/borderless/journal-pages.pdf", "tidewater-almanac-1.0.0.zip", 8'000'000'000, sha256_of("pages"), "journal-page",
                     "na_letter_8.5x11in", "borderless", 24},
                    {"contents.txt", "tidewater-almanac-1.0.0.zip", 412, sha256_of("contents"), "contents", {}, {}, 0},
                    {"a4/measurements.pdf", "tidewater-almanac-1.0.0.zip", 51234, sha256_of("m"), "measurements", "iso_a4_210x297mm", {}, 2}};
    record.bundles = {{"tidewater-almanac-1.0.0.zip", 123456789, sha256_of("zip"), 3}};
    return record;
}

/// The exception's text when the record is refused as damaged, "" when it is read.
std::string refusal(const std::string& text) {
    try {
        read_release_record(text, "dist/release.json");
    } catch (const Fault& fault) {
        CHECK(fault.kind() == FaultKind::not_carried_out);
        CHECK(fault.notes().front().code == "damaged-record");
        CHECK(fault.notes().front().where.file == "dist/release.json");
        return fault.what();
    }
    return "";
}

std::string with(const std::string& part, const std::string& other) {
    std::string text = to_json(sample());
    const std::size_t at = text.find(part);
    REQUIRE(at != std::string::npos);
    return text.replace(at, part.size(), other);
}

}  // namespace

TEST_CASE("a record is written as its page says") {
    ReleaseRecord record{"mini",   "2.1.0",
                         "tool 1", {{"kit/kit.yaml", std::string(64, 'a')}, {"kit/art/1.png", std::string(64, 'd'), "passed through"}},
                         {},       {{"mini-2.1.0.zip", 7, std::string(64, 'b'), 1}}};
    record.files = {{"a4/guide.pdf", "mini-2.1.0.zip", 5, std::string(64, 'c'), "guide", "iso_a4_210x297mm", {}, 3}};
    const std::string a(64, 'a'), b(64, 'b'), c(64, 'c'), d(64, 'd');
    CHECK(to_json(record) ==
          "{\n"
          "  \"format\": 1,\n"
          "  \"kit\": \"mini\",\n"
          "  \"version\": \"2.1.0\",\n"
          "  \"tool\": \"tool 1\",\n"
          "  \"inputs\": [\n"
          "    {\n"
          "      \"path\": \"kit/art/1.png\",\n"
          "      \"sha256\": \"" + d + "\",\n"
          "      \"done\": \"passed through\"\n"
          "    },\n"
          "    {\n"
          "      \"path\": \"kit/kit.yaml\",\n"
          "      \"sha256\": \"" + a + "\"\n"
          "    }\n"
          "  ],\n"
          "  \"files\": [\n"
          "    {\n"
          "      \"path\": \"a4/guide.pdf\",\n"
          "      \"bundle\": \"mini-2.1.0.zip\",\n"
          "      \"bytes\": 5,\n"
          "      \"sha256\": \"" + c + "\",\n"
          "      \"role\": \"guide\",\n"
          "      \"paper\": \"iso_a4_210x297mm\",\n"
          "      \"print\": null,\n"
          "      \"pages\": 3\n"
          "    }\n"
          "  ],\n"
          "  \"bundles\": [\n"
          "    {\n"
          "      \"path\": \"mini-2.1.0.zip\",\n"
          "      \"bytes\": 7,\n"
          "      \"sha256\": \"" + b + "\",\n"
          "      \"entries\": 1\n"
          "    }\n"
          "  ]\n"
          "}\n");
}

TEST_CASE("a record comes back as it was written, sorted") {
    const ReleaseRecord read = read_release_record(to_json(sample()), "release.json");
    CHECK(read.kit == "tidewater-almanac");
    CHECK(read.version == "1.0.0");
    CHECK(read.tool == "quirewright 0.1.0");
    REQUIRE(read.inputs.size() == 4);
    CHECK(read.inputs[0].path == "kit/art/page-01.png");
    CHECK(read.inputs[0].done == "flattened on white and packed again");
    CHECK(read.inputs[1].path == "kit/kit.yaml");
    CHECK(read.inputs[1].sha256 == sha256_of("kit"));
    CHECK(read.inputs[1].done == "");
    CHECK(read.inputs[3].path == "system/fonts/Lato-Regular.ttf");
    REQUIRE(read.files.size() == 3);
    CHECK(read.files[0].path == "a4/measurements.pdf");
    CHECK(read.files[0].paper == "iso_a4_210x297mm");
    CHECK_FALSE(read.files[0].print);
    CHECK_FALSE(read.files[1].paper);
    CHECK(read.files[2].bytes == 8'000'000'000);
    CHECK(read.files[2].print == "borderless");
    CHECK(read.files[2].pages == 24);
    CHECK(read.files[2].role == "journal-page");
    REQUIRE(read.bundles.size() == 1);
    CHECK(read.bundles[0].entries == 3);
    CHECK(read.bundles[0].bytes == 123456789);
}

TEST_CASE("the order of the work does not show") {
    ReleaseRecord record = sample();
    record.bundles.push_back({"another.zip", 1, sha256_of("another"), 1});
    record.files.push_back({"contents.txt", "another.zip", 3, sha256_of("o"), "contents", {}, {}, 0});
    const std::string text = to_json(record);
    std::reverse(record.inputs.begin(), record.inputs.end());
    std::reverse(record.files.begin(), record.files.end());
    std::reverse(record.bundles.begin(), record.bundles.end());
    CHECK(to_json(record) == text);
}

TEST_CASE("the locale does not show") {
    const std::string text = to_json(sample());
    struct Grouped : std::numpunct<char> {
        char do_thousands_sep() const override { return '.'; }
        std::string do_grouping() const override { return "\3"; }
        char do_decimal_point() const override { return ','; }
    };
    const std::locale kept = std::locale::global(std::locale(std::locale::classic(), new Grouped));
    const std::string grouped = to_json(sample());
    const bool read = refusal(text).empty();
    std::locale::global(kept);
    CHECK(grouped == text);
    CHECK(read);
}

TEST_CASE("an empty record is a record") {
    const ReleaseRecord empty{"mini", "0.1.0", "tool 1", {}, {}, {}};
    CHECK(refusal(to_json(empty)) == "");
}

TEST_CASE("a record cut off at any length is refused") {
    const std::string whole = to_json(sample());
    for (std::size_t length = 0; length < whole.size(); ++length) {
        INFO(length);
        CHECK(refusal(whole.substr(0, length)) != "");
    }
}

TEST_CASE("a flipped bit is refused or is another record, written in the same way") {
    const std::string whole = to_json(sample());
    std::size_t refused = 0;
    for (std::size_t bit = 0; bit < whole.size() * 8; ++bit) {
        std::string flipped = whole;
        flipped[bit / 8] = static_cast<char>(flipped[bit / 8] ^ (1 << (bit % 8)));
        try {
            const ReleaseRecord record = read_release_record(flipped, "release.json");
            if (to_json(record) != flipped) FAIL("bit " << bit);
        } catch (const Fault&) {
            ++refused;
        }
    }
    CHECK(refused > whole.size() * 8 / 2);
}

TEST_CASE("what is no record is refused with the place") {
    CHECK_THAT(refusal("[]"), Catch::Contains("format"));
    CHECK_THAT(refusal("{}"), Catch::Contains("format"));
    CHECK_THAT(refusal("null"), Catch::Contains("format"));
    CHECK_THAT(refusal(std::string(100'000, '[')), Catch::Contains("no JSON"));
    CHECK_THAT(refusal(with("\"format\": 1", "\"format\": 2")), Catch::Contains("format 2"));
    CHECK_THAT(refusal(with("\"format\": 1", "\"format\": 0")), Catch::Contains("format 0"));
    CHECK_THAT(refusal(with("\"format\": 1", "\"format\": 1.0")), Catch::Contains("format"));
    CHECK_THAT(refusal(with("\"bytes\": 51234", "\"bytes\": -1")), Catch::Contains("files[0].bytes"));
    CHECK_THAT(refusal(with("\"bytes\": 51234", "\"bytes\": 1e3")), Catch::Contains("files[0].bytes"));
    CHECK_THAT(refusal(with("\"bytes\": 51234", "\"bytes\": \"51234\"")), Catch::Contains("files[0].bytes"));
    CHECK_THAT(refusal(with("\"pages\": 24", "\"pages\": 2147483648")), Catch::Contains("files[2].pages"));
    CHECK_THAT(refusal(with("\"print\": \"borderless\"", "\"print\": \"framed\"")), Catch::Contains("borderless nor bordered"));
    CHECK_THAT(refusal(with("\"kit/kit.yaml\"", "\"home/kit.yaml\"")), Catch::Contains("home/kit.yaml"));
    CHECK_THAT(refusal(with("\"kit/kit.yaml\"", "\"kit/../kit.yaml\"")), Catch::Contains("relative"));
    CHECK_THAT(refusal(with("\"a4/measurements.pdf\"", "\"/a4/measurements.pdf\"")), Catch::Contains("relative"));
    CHECK_THAT(refusal(with("\"role\": \"contents\"", "\"role\": \"\"")), Catch::Contains("role"));
    CHECK_THAT(refusal(with("\"bundle\": \"tidewater-almanac-1.0.0.zip\"", "\"bundle\": \"other.zip\"")), Catch::Contains("other.zip"));
    CHECK_THAT(refusal(with(sha256_of("kit"), "ABC")), Catch::Contains("SHA-256"));
    CHECK_THAT(refusal(with("\"tool\"", "\"extra\": 1,\n  \"tool\"")), Catch::Contains("members"));
}

TEST_CASE("a record that does not say what was done to its inputs is read") {
    const std::string digest(64, 'a'), zip(64, 'b');
    const std::string old = "{\n  \"format\": 1,\n  \"kit\": \"mini\",\n  \"version\": \"2.1.0\",\n  \"tool\": \"tool 1\",\n  \"inputs\": [\n    {\n"
                            "      \"path\": \"kit/art/1.png\",\n      \"sha256\": \"" + digest + "\"\n    }\n  ],\n  \"files\": [],\n  \"bundles\": [\n    {\n"
                            "      \"path\": \"mini-2.1.0.zip\",\n      \"bytes\": 7,\n      \"sha256\": \"" + zip + "\",\n      \"entries\": 1\n    }\n  ]\n}\n";
    CHECK(refusal(old) == "");
    const ReleaseRecord read = read_release_record(old, "release.json");
    REQUIRE(read.inputs.size() == 1);
    CHECK(read.inputs[0].sha256 == digest);
    CHECK(read.inputs[0].done == "");
    REQUIRE(read.bundles.size() == 1);
    CHECK(read_release_record(to_json(read), "release.json").inputs[0].path == "kit/art/1.png");
    CHECK(to_json(read) == old);

    CHECK_THAT(refusal(with("\"flattened on white and packed again\"", "\"\"")), Catch::Contains("changed after"));
    CHECK_THAT(refusal(with("\"flattened on white and packed again\"", "7")), Catch::Contains("inputs[0].done"));
    CHECK_THAT(refusal(with("\"done\"", "\"undone\"")), Catch::Contains("members"));
}

TEST_CASE("a record that was written by another hand is refused") {
    CHECK_THAT(refusal(to_json(sample()) + "\n"), Catch::Contains("changed after"));
    CHECK_THAT(refusal(with("\"format\": 1", "\"format\":  1")), Catch::Contains("changed after"));
    CHECK_THAT(refusal(with("\"kit\": \"tidewater-almanac\"", "\"kit\": \"other\",\n  \"kit\": \"tidewater-almanac\"")), Catch::Contains("changed after"));
}

TEST_CASE("nothing is written that could not be read") {
    const auto broken = [](const std::function<void(ReleaseRecord&)>& change) {
        ReleaseRecord record = sample();
        change(record);
        return record;
    };
    CHECK_THROWS_AS(to_json(broken([](ReleaseRecord& r) { r.kit = ""; })), Fault);
    CHECK_THROWS_AS(to_json(broken([](ReleaseRecord& r) { r.kit = "../up"; })), Fault);
    CHECK_THROWS_AS(to_json(broken([](ReleaseRecord& r) { r.tool = "\xff"; })), Fault);
    CHECK_THROWS_AS(to_json(broken([](ReleaseRecord& r) { r.inputs[0].path = "/root/kit.yaml"; })), Fault);
    CHECK_THROWS_AS(to_json(broken([](ReleaseRecord& r) { r.inputs[1].path = "kit/\xff"; })), Fault);
    CHECK_THROWS_AS(to_json(broken([](ReleaseRecord& r) { r.inputs[0].done = "turned\nover"; })), Fault);
    CHECK_THROWS_AS(to_json(broken([](ReleaseRecord& r) { r.inputs.push_back(r.inputs[0]); })), Fault);
    CHECK_THROWS_AS(to_json(broken([](ReleaseRecord& r) { r.files.push_back(r.files[0]); })), Fault);
    CHECK_THROWS_AS(to_json(broken([](ReleaseRecord& r) { r.files[0].pages = -1; })), Fault);
    CHECK_THROWS_AS(to_json(broken([](ReleaseRecord& r) { r.files[0].sha256.pop_back(); })), Fault);
    CHECK_THROWS_AS(to_json(broken([](ReleaseRecord& r) { r.files[0].paper = ""; })), Fault);
    CHECK_THROWS_AS(to_json(broken([](ReleaseRecord& r) { r.bundles.clear(); })), Fault);
    CHECK_THROWS_AS(to_json(broken([](ReleaseRecord& r) { r.bundles[0].entries = -1; })), Fault);
    CHECK_NOTHROW(to_json(sample()));
}
