// SPDX-License-Identifier: GPL-3.0-or-later
// Small PNG files of each kind, cut off at every length and with every byte changed. libpng is the judge.
#include "artwork/ink_rows.h"
#include "artwork/judge.h"

#include <catch2/catch.hpp>
#include <zlib.h>

using namespace qw;
using namespace qw::artwork;
using namespace qw::artwork::test;

namespace {

std::vector<Bytes> small_files() {
    std::vector<Bytes> files;
    const auto add = [&](int type, int bits, bool interlaced, bool transparency) {
        PngWish wish;
        wish.width = 11;
        wish.height = 9;
        wish.type = type;
        wish.bits = bits;
        wish.interlaced = interlaced;
        wish.transparency = transparency;
        wish.idat_bytes = 64;
        files.push_back(write_png(wish));
    };
    for (const int bits : {1, 2, 4, 8, 16}) add(0, bits, bits == 2, bits == 4);
    for (const int bits : {1, 2, 4, 8}) add(3, bits, bits == 4, bits == 8);
    for (const int bits : {8, 16}) {
        add(2, bits, false, bits == 16);
        add(2, bits, true, bits == 8);
        add(4, bits, bits == 16, false);
        add(6, bits, bits == 8, false);
    }
    return files;
}

/// What zlib says against the file's compressed data; empty: nothing.
std::string zlib_refuses(const Bytes& file) {
    Bytes data;
    for (const Found& found : chunks_of(file)) {
        const auto body = file.begin() + static_cast<std::ptrdiff_t>(found.at);
        if (found.name == "IDAT") data.insert(data.end(), body, body + static_cast<std::ptrdiff_t>(found.length));
    }
    Bytes plain(1 << 16);
    z_stream stream{};
    inflateInit(&stream);
    stream.next_in = reinterpret_cast<Bytef*>(data.data());
    stream.avail_in = static_cast<uInt>(data.size());
    stream.next_out = reinterpret_cast<Bytef*>(plain.data());
    stream.avail_out = static_cast<uInt>(plain.size());
    inflate(&stream, Z_FINISH);
    const std::string message = stream.msg ? stream.msg : "";
    inflateEnd(&stream);
    return message;
}

/// Undamaged means: libpng reads it too, and sees what we measured. The one exception that is known: ISA-L takes a
/// distance code that leaves bit patterns unused (artwork/inflate.h), which zlib refuses; it may only be one that does
/// not matter for the pixels of the file as it was.
bool agree(const Bytes& file, const Facts& as_it_was) {
    const Facts facts = look_at(file);
    CHECK(facts.sha256 == sha256_of(file));
    if (!facts.damage.empty()) return false;
    if (const auto decoded = decode_png(file)) {
        require_same(facts.ink, plain_ink(on_paper(*decoded), cell_for(facts.width, facts.height)));
        return true;
    }
    CHECK(zlib_refuses(file) == "invalid distances set");
    require_same(facts.ink, as_it_was.ink);
    return true;
}

}  // namespace

TEST_CASE("a PNG cut off anywhere is damaged", "[artwork][png][fuzz]") {
    for (const Bytes& file : small_files()) {
        REQUIRE(look_at(file).damage == "");
        for (std::size_t length = 0; length < file.size(); ++length) {
            CAPTURE(length, file.size());
            CHECK(look_at(Bytes(file.begin(), file.begin() + static_cast<std::ptrdiff_t>(length))).damage != "");
        }
    }
}

TEST_CASE("a PNG with a changed byte is damaged or as libpng sees it", "[artwork][png][fuzz]") {
    for (const Bytes& file : small_files()) {
        const Facts facts = look_at(file);
        for (std::size_t at = 0; at < file.size(); ++at) {
            CAPTURE(at, file.size());
            Bytes changed = file;
            changed[at] ^= static_cast<std::byte>(1u << at % 8);
            agree(changed, facts);
            changed[at] = ~file[at];
            agree(changed, facts);
        }
    }
}

TEST_CASE("a PNG with a changed byte under a mended check sum is damaged or as libpng sees it", "[artwork][png][fuzz]") {
    std::size_t taken = 0;
    for (const Bytes& file : small_files()) {
        const Facts facts = look_at(file);
        for (const Found& found : chunks_of(file)) {
            for (std::size_t at = found.at; at < found.at + found.length; ++at) {
                for (const unsigned flip : {1u, 0x10u, 0x80u, 0xFFu}) {
                    CAPTURE(found.name, at, flip);
                    Bytes changed = file;
                    changed[at] ^= static_cast<std::byte>(flip);
                    mend_sum(changed, found);
                    taken += agree(changed, facts);
                }
            }
        }
    }
    CHECK(taken > 100);  // palettes and transparency may be anything, so not all of this is refused
}
