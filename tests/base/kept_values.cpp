// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/kept_values.h"

#include <catch2/catch.hpp>

using namespace qw;

namespace {

Ink ink_with_map() {
    Ink ink;
    ink.box = {1, 2, 30, 40};
    ink.coverage = 0.123456789012345;
    ink.map.cell = 4;
    ink.map.columns = 3;
    ink.map.rows = 2;
    ink.map.mean = {0, 1, 2, 253, 254, 255};
    return ink;
}

std::optional<Ink> ink_of(const std::string& bytes) { return kept::find<Ink>(bytes, kept::ink_from); }

}  // namespace

TEST_CASE("ink comes back as it was kept, with and without its darkest cells") {
    Ink ink = ink_with_map();
    for (const std::vector<std::uint8_t>& darkest : {std::vector<std::uint8_t>{}, std::vector<std::uint8_t>{9, 8, 7, 6, 5, 4}}) {
        ink.map.darkest = darkest;
        const auto back = ink_of(kept::bytes_of(kept::packed(ink)));
        REQUIRE(back);
        CHECK(back->box == ink.box);
        CHECK(back->coverage == ink.coverage);
        CHECK(back->map.cell == 4);
        CHECK(back->map.mean == ink.map.mean);
        CHECK(back->map.darkest == darkest);
    }
}

TEST_CASE("a kept value that is none, of another shape, or whose map has too few cells is not known") {
    CHECK_FALSE(kept::find<Ink>(std::nullopt, kept::ink_from));
    CHECK_FALSE(ink_of(""));
    CHECK_FALSE(ink_of("not MessagePack"));
    CHECK_FALSE(ink_of(kept::bytes_of(nlohmann::json{1, 2, 3})));
    Ink ink = ink_with_map();
    ink.map.mean.pop_back();
    CHECK_FALSE(ink_of(kept::bytes_of(kept::packed(ink))));
    const std::string whole = kept::bytes_of(kept::packed(ink_with_map()));
    for (std::size_t length = 0; length < whole.size(); ++length) REQUIRE_FALSE(ink_of(whole.substr(0, length)));
}

TEST_CASE("bytes, text and sizes come back as they were kept") {
    const std::string text("any \0 \xff bytes", 12);
    const auto round = [](const nlohmann::json& json) { return nlohmann::json::from_msgpack(kept::bytes_of(json)); };
    CHECK(kept::text_from(round(kept::packed(text))) == text);
    CHECK(kept::bytes_from(round(kept::packed(std::vector<std::byte>{std::byte{0}, std::byte{200}}))) == std::vector<std::byte>{std::byte{0}, std::byte{200}});
    const Size size{Length::mm(215.9), Length::points(792)};
    CHECK(kept::size_from(round(kept::packed(size))) == size);
}
