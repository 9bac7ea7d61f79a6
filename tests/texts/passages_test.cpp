// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "texts/passages.h"

#include <catch2/catch.hpp>

using namespace qw;
using texts::Model;
using texts::Passages;

TEST_CASE("a file of passages gives lines and paragraphs") {
    const auto p = Passages::read("passages 1\n\n[title]\nMeasure\n  twice\n\n[how-to]\nCut {{what}}\nthere.\n\n\nThen fold.\n[nothing]\n", "t");
    CHECK(p.line("title") == "Measure twice");
    CHECK(p.paragraphs("how-to", Model().text("what", "here")) == std::vector<std::string>{"Cut here there.", "Then fold."});
    CHECK(p.paragraphs("nothing").empty());
}

TEST_CASE("a passage's faults name the line of the file") {
    const auto p = Passages::read("passages 1\n[a]\nfine\n[b]\n\n{{missing}}\n", "texts/t.mustache");
    try {
        p.line("b");
        FAIL("rendered");
    } catch (const Fault& fault) {
        CHECK(fault.notes().at(0).where.line == 6);
        CHECK(fault.notes().at(0).where.file == "texts/t.mustache");
    }
    CHECK_THROWS_AS(p.line("c"), Fault);
}

TEST_CASE("a file that is no file of passages is refused with every fault") {
    try {
        Passages::read("passages 2\nwords\n[Title]\n[a]\n[a]\n", "t");
        FAIL("read");
    } catch (const Fault& fault) {
        std::vector<std::string> codes;
        for (const FaultNote& note : fault.notes()) codes.push_back(note.code);
        CHECK(codes == std::vector<std::string>{"unknown-format", "words-outside", "bad-name", "double-name"});
        CHECK(fault.notes()[3].where.line == 5);
    }
    CHECK_THROWS_AS(Passages::read("", "t"), Fault);
}
