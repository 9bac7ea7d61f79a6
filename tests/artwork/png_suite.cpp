// SPDX-License-Identifier: GPL-3.0-or-later
// PngSuite, judged by libpng. What of it reaches paper: tests/pdf/artwork_kinds.cpp.
#include "artwork/ink_rows.h"
#include "artwork/judge.h"
#include "support/png_suite.h"

#include <catch2/catch.hpp>

#include <set>

using namespace qw::artwork;
using namespace qw::artwork::test;

namespace {

/// The file without the chunks of a name, as a paint program writes it that says nothing of them.
Bytes without(const Bytes& file, const std::set<std::string>& names) {
    Bytes kept = signature();
    for (const Found& found : chunks_of(file))
        if (!names.contains(found.name))
            kept = kept + Bytes(file.begin() + static_cast<std::ptrdiff_t>(found.at - 8), file.begin() + static_cast<std::ptrdiff_t>(found.at + found.length + 4));
    return kept;
}

bool has(const Bytes& file, const std::string& name) {
    for (const Found& found : chunks_of(file))
        if (found.name == name) return true;
    return false;
}

}  // namespace

TEST_CASE("each picture of PngSuite is what its name says, and has the ink of libpng's pixels", "[artwork][png][suite]") {
    std::size_t judged = 0;
    for (const auto& picture : qw::test::png_suite()) {
        if (picture.damaged()) continue;
        CAPTURE(picture.name);
        const Bytes file = without(picture.bytes, {"gAMA"});  // with it they are other colours, which libpng hands out as they are
        const Facts facts = look_at(file);
        REQUIRE(facts.damage == "");
        CHECK(look_at(picture.bytes).damage == "");
        CHECK(facts.interlaced == picture.interlaced());
        CHECK(facts.bits == picture.bits());
        const int type = picture.colour_type();
        CHECK(facts.colour == (type == 3 ? Colour::palette : type % 4 == 0 ? Colour::grey : Colour::rgb));
        CHECK(facts.alpha == (type >= 4 || has(file, "tRNS")));
        const bool through = !picture.interlaced() && !facts.alpha && picture.bits() <= 8;
        CHECK((facts.passage == Passage::through) == through);
        const auto decoded = decode_png(file);
        REQUIRE(decoded);
        require_same(facts.ink, plain_ink(on_paper(*decoded), cell_for(facts.width, facts.height)));
        ++judged;
    }
    CHECK(judged >= 160);
}

TEST_CASE("the damaged pictures of PngSuite are damage, to us and to libpng", "[artwork][png][suite]") {
    std::size_t judged = 0;
    for (const auto& picture : qw::test::png_suite()) {
        if (!picture.damaged()) continue;
        CAPTURE(picture.name);
        CHECK_FALSE(decode_png(picture.bytes));
        CHECK(look_at(picture.bytes).damage != "");
        ++judged;
    }
    CHECK(judged >= 14);
}

TEST_CASE("a gamma of 0.45 is that of sRGB; the others of PngSuite are converted", "[artwork][png][suite][colour]") {
    std::size_t judged = 0;
    for (const auto& picture : qw::test::png_suite()) {
        if (picture.damaged() || !has(picture.bytes, "gAMA")) continue;
        CAPTURE(picture.name);
        const Facts facts = look_at(picture.bytes);
        CHECK(facts.converted_from.empty() == picture.name.starts_with("g04"));
        CHECK(facts.profile_is_srgb == false);
        ++judged;
    }
    CHECK(judged > 100);
}
