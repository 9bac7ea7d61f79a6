// SPDX-License-Identifier: GPL-3.0-or-later
// What is wrong with a PNG, put together chunk by chunk (PNG specification, clauses 5 and 11).
#include "artwork/judge.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::artwork;
using namespace qw::artwork::test;
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

namespace {

/// Two rows of two grey pixels, filter 0.
Bytes grey_rows() { return bytes_of(std::string_view("\0\x10\x20\0\x30\x40", 6)); }
Bytes idat() { return chunk("IDAT", packed(grey_rows())); }
Bytes iend() { return chunk("IEND", ""); }
Bytes good() { return signature() + ihdr(2, 2, 8, 0) + idat() + iend(); }
std::string damage_of(const Bytes& file, const Limits& limits = {}) { return look_at(file, limits).damage; }
Bytes with(const Bytes& between) { return signature() + ihdr(2, 2, 8, 0) + between + idat() + iend(); }
Bytes with_data(const Bytes& data) { return signature() + ihdr(2, 2, 8, 0) + chunk("IDAT", data) + iend(); }
Bytes first(const Bytes& bytes, std::size_t n) { return {bytes.begin(), bytes.begin() + static_cast<std::ptrdiff_t>(n)}; }
Bytes from(const Bytes& bytes, std::size_t n) { return {bytes.begin() + static_cast<std::ptrdiff_t>(n), bytes.end()}; }

}  // namespace

TEST_CASE("a sound little PNG is taken, and so is anything behind its end", "[artwork][png]") {
    CHECK(damage_of(good()) == "");
    const Bytes longer = good() + bytes_of("anything at all");
    const Facts facts = look_at(longer);
    CHECK(facts.damage == "");
    CHECK(facts.bytes == longer.size());
    CHECK(facts.sha256 == sha256_of(longer));
    CHECK(damage_of(with(chunk("tEXt", "Title") + chunk("vpAg", "?"))) == "");
    CHECK(damage_of(signature() + ihdr(2, 2, 8, 0) + chunk("IDAT", "") + idat() + chunk("IDAT", "") + iend()) == "");
}

TEST_CASE("damage leaves only size and digest", "[artwork][png]") {
    Bytes file = good();
    file.resize(file.size() - 1);
    const Facts facts = look_at(file);
    CHECK(facts.damage != "");
    CHECK(facts.bytes == file.size());
    CHECK(facts.sha256 == sha256_of(file));
    CHECK(facts.width == 0);
    CHECK(facts.payload.empty());
    CHECK(facts.ink.map.darkest.empty());
}

TEST_CASE("files that are something else are called by their name", "[artwork]") {
    CHECK(damage_of({}) == "it is empty");
    CHECK(damage_of(bytes_of("%PDF-1.7")) == "it is a PDF, not a PNG or JPEG");
    CHECK(damage_of(bytes_of("hello")) == "it is neither a PNG nor a JPEG");
    CHECK_THAT(damage_of(bytes_of("\x89PNG\n\x1a\n")), Contains("transfer"));
    CHECK_THAT(damage_of(bytes_of("\x89PN")), StartsWith("it is cut off"));
}

TEST_CASE("headers that no PNG has are refused", "[artwork][png]") {
    const auto header = [&](const Bytes& chunk) { return damage_of(signature() + chunk + idat() + iend()); };
    CHECK_THAT(header(ihdr(0, 2, 8, 0)), Contains("0 x 2 pixels"));
    CHECK_THAT(header(ihdr(2, 0x80000000, 8, 0)), Contains("no PNG can have"));
    for (const auto& [type, bits] : {std::pair{1, 8}, {5, 8}, {7, 8}, {0, 3}, {0, 0}, {2, 4}, {3, 16}, {4, 4}, {6, 2}})
        CHECK_THAT(header(ihdr(2, 2, bits, type)), Contains("colour type " + std::to_string(type)));
    CHECK_THAT(header(ihdr(2, 2, 8, 0, 2)), Contains("interlace"));
    CHECK_THAT(header(chunk("IHDR", "short")), Contains("5 bytes instead of 13"));
    CHECK_THAT(header({}), Contains("does not begin with its header"));
    CHECK_THAT(damage_of(with(ihdr(2, 2, 8, 0))), Contains("two headers"));
}

TEST_CASE("too many pixels are refused before any memory is taken", "[artwork][png]") {
    // 131071 × 131071 RGBA of 16 bits would be 128 GiB.
    CHECK_THAT(damage_of(signature() + ihdr(131071, 131071, 16, 6) + idat() + iend()), Contains("more than the 200000000"));
    Limits limits;
    limits.pixels = 3;
    CHECK_THAT(damage_of(good(), limits), Contains("2 x 2 pixels, more than the 3"));
    limits.pixels = 4;
    CHECK(damage_of(good(), limits) == "");
    limits.bytes = good().size() - 1;
    CHECK_THAT(damage_of(good(), limits), Contains("bytes, more than the"));
    // Within the limit, but no file so short unpacks to so much: deflate makes at most 1032 bytes of one (RFC 1951).
    CHECK_THAT(damage_of(signature() + ihdr(14000, 14000, 8, 2) + idat() + iend()), Contains("can hold"));
}

TEST_CASE("an IDAT that unpacks to far more than the header says stops early", "[artwork][png]") {
    const Bytes bomb = packed(Bytes(64 << 20), 9);
    CHECK(damage_of(with_data(bomb)) == "its compressed data hold more than its header says");
}

TEST_CASE("every check sum counts, and is told with name and place", "[artwork][png]") {
    const Bytes file = with(chunk("pHYs", std::string_view("\0\0\x2e\x23\0\0\x2e\x23\1", 9)) + chunk("tEXt", "Title"));
    REQUIRE(damage_of(file) == "");
    for (const Found& found : chunks_of(file)) {
        Bytes bad = file;
        bad[found.at + found.length] ^= std::byte{1};
        CHECK(damage_of(bad) == "the chunk " + found.name + " at byte " + std::to_string(found.at - 8) + " does not match its check sum (CRC)");
    }
}

TEST_CASE("what is cut off is told with its place", "[artwork][png]") {
    const Bytes file = good();
    const auto chunks = chunks_of(file);
    CHECK(damage_of(first(file, file.size() - 12)) == "it is cut off after " + std::to_string(file.size() - 12) + " bytes: the end mark (IEND) is missing");
    CHECK(damage_of(first(file, chunks[1].at + 3)) == "it is cut off in the chunk IDAT at byte " + std::to_string(chunks[1].at - 8));
}

TEST_CASE("chunks that are out of place, doubled or unknown are told", "[artwork][png]") {
    const Bytes head = signature() + ihdr(2, 2, 8, 0);
    const Bytes data = packed(grey_rows());
    CHECK_THAT(damage_of(head + iend()), Contains("no pixels"));
    CHECK_THAT(damage_of(head + chunk("IDAT", first(data, 5)) + chunk("tEXt", "x") + chunk("IDAT", from(data, 5)) + iend()), Contains("apart from the others"));
    CHECK_THAT(damage_of(with(chunk("NEWX", ""))), Contains("NEWX"));
    CHECK_THAT(damage_of(with(chunk("PLTE", "abc"))), Contains("grey and has a palette"));
    CHECK_THAT(damage_of(with(Bytes(20))), Contains("no chunk begins"));
    CHECK_THAT(damage_of(head + idat() + chunk("IEND", "x")), Contains("not empty"));
    CHECK_THAT(damage_of(with(chunk("tRNS", "abc"))), Contains("does not fit its colours"));
    CHECK_THAT(damage_of(with(chunk("tRNS", std::string_view("\0\1", 2)) + chunk("tRNS", std::string_view("\0\1", 2)))), Contains("twice"));
}

TEST_CASE("palettes must be there, fit and have the colours that are used", "[artwork][png]") {
    const auto file = [&](const Bytes& between, std::string_view row) {
        return signature() + ihdr(2, 1, 8, 3) + between + chunk("IDAT", packed(bytes_of(row))) + iend();
    };
    const std::string_view row("\0\0\1", 3);
    CHECK(damage_of(file(chunk("PLTE", "rgbRGB"), row)) == "");
    CHECK_THAT(damage_of(file({}, row)), Contains("PLTE) is missing"));
    CHECK_THAT(damage_of(file(chunk("PLTE", "rgbR"), row)), Contains("4 bytes"));
    CHECK_THAT(damage_of(file(chunk("PLTE", ""), row)), Contains("0 bytes"));
    CHECK_THAT(damage_of(file(chunk("PLTE", "rgb") + chunk("PLTE", "rgb"), row)), Contains("two palettes"));
    CHECK_THAT(damage_of(file(chunk("PLTE", Bytes(771)), row)), Contains("771 bytes"));
    CHECK_THAT(damage_of(file(chunk("tRNS", "a") + chunk("PLTE", "rgbRGB"), row)), Contains("tRNS"));
    CHECK_THAT(damage_of(file(chunk("PLTE", "rgbRGB") + chunk("tRNS", "abc"), row)), Contains("tRNS"));
    CHECK(damage_of(file(chunk("PLTE", "rgb"), row)) == "a pixel has colour number 1 of a palette with 1 colours");
    const Bytes two_bits = signature() + ihdr(3, 1, 2, 3) + chunk("PLTE", "rgbrgbrgb") + chunk("IDAT", packed(bytes_of(std::string_view("\0\x1b", 2)))) + iend();
    CHECK(damage_of(two_bits) == "");  // the unused last two bits hold 3, which is no pixel
}

TEST_CASE("compressed data must hold exactly the rows, and end as they must", "[artwork][png]") {
    const Bytes rows = grey_rows(), data = packed(rows);
    CHECK(damage_of(with_data(data)) == "");
    CHECK(damage_of(with_data(packed(first(rows, 3)))) == "its compressed data hold less than its header says");
    CHECK(damage_of(with_data(packed(first(rows, 5)))) == "its compressed data hold less than its header says");
    CHECK(damage_of(with_data(packed(rows + Bytes(1)))) == "its compressed data hold more than its header says");
    CHECK(damage_of(with_data(first(data, 4))) == "its compressed data end too early");
    for (std::size_t missing = 1; missing <= 4; ++missing)
        CHECK(damage_of(with_data(first(data, data.size() - missing))) == "the end and the check sum of its compressed data are missing");
    CHECK(damage_of(with_data(data + Bytes(1))) == "there are bytes behind the end of its compressed data");
    CHECK(damage_of(with_data(data + Bytes(40))) == "there are bytes behind the end of its compressed data");
    Bytes wrong = data;
    wrong.back() ^= std::byte{1};
    CHECK(damage_of(with_data(wrong)) == "its compressed data do not match their check sum");
    CHECK(damage_of(with_data({})) == "its compressed data end too early");
    CHECK_THAT(damage_of(with_data(bytes_of("not zlib"))), StartsWith("its compressed data"));
    Bytes filter = rows;
    filter[3] = std::byte{5};
    CHECK(damage_of(with_data(packed(filter))) == "row 2 has filter 5, which PNG does not have");
}

TEST_CASE("check sum and end may lie in chunks of one byte each", "[artwork][png]") {
    Bytes file = signature() + ihdr(2, 2, 8, 0);
    for (const std::byte byte : packed(grey_rows())) file = file + chunk("IDAT", Bytes{byte});
    const Facts facts = look_at(file + iend());
    CHECK(facts.damage == "");
    CHECK(facts.payload.size() == packed(grey_rows()).size());
}
