// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/duplex_files.h"

#include <catch2/catch.hpp>

using namespace qw;

namespace {

release::PlannedFile planned(const std::string& set, const std::string& paper, std::optional<Print> print, std::size_t pages, compose::Duplex duplex) {
    release::PlannedFile file;
    file.set = set;
    file.paper.name = paper;
    file.print = print;
    file.document.duplex = duplex;
    file.document.pages.resize(pages);
    return file;
}

}  // namespace

TEST_CASE("the print check tells the duplex sets of its paper, by print only where prints differ") {
    using enum compose::Duplex;
    const std::vector<release::PlannedFile> files{
        planned("journal-pages", "letter", Print::borderless, 24, flip_short_edge), planned("journal-pages", "letter", Print::bordered, 24, flip_short_edge),
        planned("journal-pages", "a4", Print::borderless, 24, flip_short_edge),     planned("covers", "letter", Print::borderless, 4, simplex),
        planned("tags", "letter", Print::borderless, 2, flip_long_edge),            planned("tags", "letter", Print::bordered, 4, flip_long_edge),
        planned("cards", "letter", Print::borderless, 2, flip_long_edge),           planned("cards", "letter", Print::bordered, 2, flip_short_edge),
        planned("print-check", "letter", std::nullopt, 3, flip_short_edge)};
    Paper letter;
    letter.name = "letter";
    const auto told = release::duplex_files(files, letter);
    REQUIRE(told.size() == 5);
    const auto is = [&](std::size_t i, const std::string& title, int pages, compose::Duplex turned) {
        return told[i].title == title && told[i].pages == pages && told[i].turned == turned;
    };
    CHECK(is(0, "Journal pages", 24, flip_short_edge));
    CHECK(is(1, "Tags, borderless", 2, flip_long_edge));
    CHECK(is(2, "Tags, bordered", 4, flip_long_edge));
    CHECK(is(3, "Cards, borderless", 2, flip_long_edge));
    CHECK(is(4, "Cards, bordered", 2, flip_short_edge));
}
