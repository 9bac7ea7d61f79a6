// SPDX-License-Identifier: GPL-3.0-or-later
// The needle's way in a journal template: what a path may be, and what is told of one that cannot be sewn.
#include "base/fault.h"
#include "kit/example.h"
#include "kit/small_pipeline.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace qw;
using namespace qw::test;

TEST_CASE("faults in a stitch path and its thread") {
    check_broken({
        {j_yaml, "2, 1, 3, 2]", "2, 1, 3, ▸4]", "bad-path"},
        {j_yaml, "2, 1, 3, 2]", "2, ▸0, 3, 2]", "bad-path"},
        {j_yaml, "2, 1, 3, 2]", "2, ▸-1, 3, 2]", "bad-path"},
        {j_yaml, "2, 1, 3, 2]", "2, 1, ▸1, 2]", "bad-path"},
        {j_yaml, "2, 1, 3, 2]", "2, ▸2, ▸2, 3]", "bad-path"},
        {j_yaml, "path: [2, 1, 3, 2]", "path: ▸[2, 1, 3]", "bad-path", "add the station"},
        {j_yaml, "path: [2, 1, 3, 2]", "path: ▸[2]", "bad-path"},
        {j_yaml, "path: [2, 1, 3, 2]", "path: ▸[]", "bad-path"},
        {j_yaml, "path: [2, 1, 3, 2]", "path: ▸[2, 1, ▸9]", "bad-path"},  // both are told
        {j_yaml, "path: [2, 1, 3, 2]", "path: ▸[1, 2, 3], begins: outside, goes-on: true", "bad-path"},
        {j_yaml, "path: [2, 1, 3, 2]", "path: [2, 1, 3, 2], ▸goes-on: true", "bad-path"},
        {j_yaml, "path: [2, 1, 3, 2]", "path: [2, 1, 3, 2], ▸begins: inside, goes-on: true", "bad-path"},
        {j_yaml, "2, 1, 3, 2]", "2, 1, ▸1.5, 2]", "wrong-type"},
        {j_yaml, "2, 1, 3, 2]", "2, 1, ▸hed, 2]", "unknown-word", "write 'head'"},
        {j_yaml, "path: [2, 1, 3, 2]", "path: ▸2", "wrong-type"},
        {j_yaml, "path: [2, 1, 3, 2]", "begins: ▸outsid, path: [2, 1, 3, 2]", "unknown-word", "write 'outside'"},
        {j_yaml, "path: [2, 1, 3, 2]", "goes-on: ▸on, path: [2, 1, 3, 2]", "unknown-word"},
        {j_yaml, "path: [2, 1, 3, 2]", "▸paths: [2, 1, 3, 2]", "unknown-key", "write 'path'"},
        {j_yaml, "{ signatures: n, rows: 1,", "▸{ signatures: n,", "missing-key"},
        {j_yaml, "spine: [edge, edge * 2, page_height - edge] }\nsewing: { signatures: n, rows: 1, path: [2, 1, 3,",
         "spine: [edge, page_height - edge] }\nsewing: { signatures: n, rows: 1, path: [2, 1, ▸3,", "bad-path"},
        {j_yaml, "spine: [edge, edge * 2, page_height - edge]", "spine: [edge, ▸'', page_height - edge]", "bad-formula"},  // and the path is right
        {j_yaml, "thread: cord", "thread: ▸cort", "unknown-name", "write 'cord'"},
        {j_yaml, "thread: cord", "thread: ▸tape", "unknown-name"},  // a piece
        {j_yaml, "thread: cord", "thread: ▸band", "not-here"},      // may be left out
        {j_yaml, "thread: cord }\ncut-lengths:\n  cord: { title: C,",
         "thread: ▸cord }\ncut-lengths:\n  cord: { or: { glued: { title: Glued } }, title: C,", "not-here"},
    });
}

TEST_CASE("a path may turn round the spine, the head and the tail") {
    const auto sewing = *changed_journal(path_as_it_is,
                                         "path: [2, spine, 2, 1, spine, 1, head, 1, 2, 3, tail, 3], begins: front, inset: edge, through: edge * 2")
                             .sewing;
    CHECK(sewing.path == std::vector<int>{2, 2, 1, 1, 1, 2, 3, 3});
    using kit::Around;
    CHECK(sewing.around == std::vector<Around>{Around::spine, Around::nothing, Around::spine, Around::head, Around::nothing, Around::nothing,
                                               Around::tail, Around::nothing});
    CHECK(sewing.after(3) == Around::head);
    CHECK(sewing.after(99) == Around::nothing);
    CHECK_FALSE(sewing.begins_inside);
    CHECK(sewing.from_the_side());
    CHECK(sewing.inset.text == "edge");
    CHECK(sewing.through.text == "edge * 2");
    CHECK(changed_journal(path_as_it_is, "path: [2, spine, 2, 1], inset: edge").sewing->begins_inside);  // at the back
    const auto folded = *changed_journal(path_as_it_is, "path: [1, head, 1, 2, 3, tail, 3, 2]").sewing;
    CHECK_FALSE(folded.from_the_side());
    CHECK(folded.inset.text.empty());
}

TEST_CASE("turns that cannot be sewn are refused with what is right") {
    check_broken({
        {j_yaml, "path: [2, 1, 3, 2]", "inset: edge, path: ▸[▸spine, 2, 1]", "bad-path"},
        {j_yaml, "path: [2, 1, 3, 2]", "inset: edge, path: [2, 1, 3, ▸spine]", "bad-path"},
        {j_yaml, "path: [2, 1, 3, 2]", "inset: edge, path: [2, ▸spine, ▸spine, 2]", "bad-path"},
        {j_yaml, "path: [2, 1, 3, 2]", "inset: edge, path: ▸[2, ▸spine, 1]", "bad-path"},
        {j_yaml, "path: [2, 1, 3, 2]", "path: ▸[2, ▸head, 2]", "bad-path"},
        {j_yaml, "path: [2, 1, 3, 2]", "path: ▸[1, ▸tail, 1]", "bad-path"},
        {j_yaml, "path: [2, 1, 3, 2]", "path: ▸[1, head, 1]", "bad-path"},  // through, round, through: the other side
        {j_yaml, "path: [2, 1, 3, 2]", "path: ▸[2, spine, 2, 3]", "bad-path", "add 'inset'"},
        {j_yaml, "path: [2, 1, 3, 2]", "path: [2, 1, 3, 2], ▸inset: edge", "not-here", "remove it"},
        {j_yaml, "path: [2, 1, 3, 2]", "path: [1, head, 1, 2], ▸inset: edge", "not-here"},
        {j_yaml, "path: [2, 1, 3, 2]", "path: [1, head, 1, 2], begins: outside, ▸goes-on: true", "bad-path"},
        {j_yaml, "path: [2, 1, 3, 2]", "inset: edge, path: [2, spine, 2, 1], ▸begins: inside", "bad-path"},
        {j_yaml, "path: [2, 1, 3, 2]", "path: [2, 1, 3, 2], ▸begins: front", "bad-path"},
        {j_yaml, "path: [2, 1, 3, 2]", "path: [2, 1, 3, 2], begins: ▸fromt", "unknown-word", "write 'front'"},
        {j_yaml, "path: [2, 1, 3, 2]", "inset: edge, path: [▸5, spine, ▸5, 1]", "bad-path"},
    });
    SmallPipeline pipeline;
    pipeline.put(j_yaml, with(pipeline.text(j_yaml), path_as_it_is, "path: [2, head, 2, 1]"));
    const auto notes = pipeline.faults();
    REQUIRE(notes.size() == 1);
    CHECK_THAT(notes[0].what, Catch::Contains("round the head from station 2"));
    CHECK_THAT(notes[0].expected, Catch::Contains("station 1 before and after 'head'"));
}

TEST_CASE("a path without stations is told at each of its numbers") {
    SmallPipeline pipeline;
    pipeline.put(j_yaml, with(with(pipeline.text(j_yaml), "page: [edge, edge * 2, edge * 3], ", ""), ", page-stations", ""));
    const auto notes = pipeline.faults();
    REQUIRE(notes.size() == 4);
    CHECK(notes[0].code == "bad-path");
    CHECK_THAT(notes[0].expected, Catch::Contains("page: …"));
}
