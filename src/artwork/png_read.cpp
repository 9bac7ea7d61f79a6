// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/png_read.h"

#include "artwork/bytes.h"
#include "artwork/damage.h"
#include "artwork/done.h"
#include "artwork/png_ancillary.h"
#include "artwork/png_pixels.h"
#include "base/words.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstring>
#include <isa-l/crc.h>

namespace qw::artwork {

namespace {

constexpr std::size_t signature_bytes = 8;
constexpr std::uint32_t longest_chunk = 0x7FFFFFFF;  // PNG specification, 5.3
// Enough for any writer that exists; beyond it the list of extents would grow larger than the picture.
constexpr std::size_t most_extents = std::size_t{1} << 17;
constexpr std::size_t portion_bytes = std::size_t{128} << 10;

struct Chunk {
    std::string name;
    std::uint32_t length = 0;
    std::uint64_t at = 0;  ///< offset of the chunk in the file
    std::string told() const { return "the chunk " + name + " at byte " + std::to_string(at); }
    bool must_be_understood() const { return name[0] >= 'A' && name[0] <= 'Z'; }
};

class PngFile {
public:
    PngFile(Reader& reader, const Limits& limits, Facts& facts, Rows& rows)
        : reader_(reader), limits_(limits), facts_(facts), rows_(rows), portion_(portion_bytes) {}
    void read();

private:
    Chunk next_chunk();
    void take(const Chunk& chunk);
    void take_header(const Chunk& chunk);
    void take_palette(const Chunk& chunk);
    void take_transparency(const Chunk& chunk);
    void take_data(const Chunk& chunk);
    void take_end(const Chunk& chunk);
    void begin_pixels();
    void tell_passage();
    void flush();
    void data(std::span<const std::byte> piece);
    template <typename Use>
    void body(const Chunk& chunk, Use use);
    std::vector<std::byte> whole_body(const Chunk& chunk);
    void skip(const Chunk& chunk);

    Reader& reader_;
    const Limits& limits_;
    Facts& facts_;
    Rows& rows_;

    std::optional<PngHeader> header_;
    PngAncillary ancillary_;
    PngPaint paint_;
    std::optional<PngFinish> finish_;
    std::optional<PngPixels> pixels_;
    bool data_over_ = false, ended_ = false;

    Scratch portion_;  ///< short IDAT chunks are put together: inflating in small portions is slow
    std::size_t in_portion_ = 0;
    Sha256 payload_;
};

void PngFile::read() {
    std::array<std::byte, signature_bytes> signature;
    reader_.fill(signature);
    while (!ended_) take(next_chunk());
}

Chunk PngFile::next_chunk() {
    Chunk chunk;
    chunk.at = reader_.at();
    std::array<std::byte, 8> head;
    if (!reader_.fill(head)) damaged("it is cut off after " + std::to_string(reader_.at()) + " bytes: the end mark (IEND) is missing");
    chunk.length = big32(head, 0);
    for (std::size_t i = 4; i < 8; ++i) {
        const auto letter = static_cast<char>(head[i]);
        if (!((letter >= 'A' && letter <= 'Z') || (letter >= 'a' && letter <= 'z')))
            damaged("at byte " + std::to_string(chunk.at) + " no chunk begins where one must");
        chunk.name += letter;
    }
    if (chunk.length > longest_chunk) damaged(chunk.told() + " says that it is longer than PNG allows");
    return chunk;
}

/// Reads a chunk's body in pieces and compares its check sum (PNG specification, 5.3: over name and body).
template <typename Use>
void PngFile::body(const Chunk& chunk, Use use) {
    const auto cut_off = [&] { damaged("it is cut off in " + chunk.told()); };
    std::uint32_t sum = crc32_gzip_refl(0, reinterpret_cast<const unsigned char*>(chunk.name.data()), chunk.name.size());
    std::uint32_t left = chunk.length;
    while (left > 0) {
        const auto piece = reader_.some(left);
        if (piece.empty()) cut_off();
        sum = crc32_gzip_refl(sum, reinterpret_cast<const unsigned char*>(piece.data()), piece.size());
        left -= static_cast<std::uint32_t>(piece.size());
        use(piece);
    }
    std::array<std::byte, 4> stored;
    if (!reader_.fill(stored)) cut_off();
    if (big32(stored, 0) != sum) damaged(chunk.told() + " does not match its check sum (CRC)");
}

std::vector<std::byte> PngFile::whole_body(const Chunk& chunk) {
    std::vector<std::byte> bytes;
    body(chunk, [&](std::span<const std::byte> piece) { bytes.insert(bytes.end(), piece.begin(), piece.end()); });
    return bytes;
}

void PngFile::skip(const Chunk& chunk) {
    body(chunk, [](std::span<const std::byte>) {});
}

void PngFile::take(const Chunk& chunk) {
    if (!header_ && chunk.name != "IHDR") damaged("it does not begin with its header (IHDR)");
    if (pixels_ && chunk.name != "IDAT") data_over_ = true;
    if (chunk.name == "IHDR") return take_header(chunk);
    if (chunk.name == "PLTE") return take_palette(chunk);
    if (chunk.name == "tRNS") return take_transparency(chunk);
    if (chunk.name == "IDAT") return take_data(chunk);
    if (chunk.name == "IEND") return take_end(chunk);
    if (chunk.must_be_understood()) damaged(chunk.told() + " is none that PNG has, and cannot be left out");
    if (!pixels_ && chunk.length <= PngAncillary::longest(chunk.name)) return ancillary_.take(chunk.name, whole_body(chunk));
    if (!pixels_ && chunk.name == "iCCP") damaged("its colour profile is larger than 4 MiB");
    skip(chunk);
}

void PngFile::take_header(const Chunk& chunk) {
    if (header_) damaged("it has two headers (IHDR)");
    if (chunk.length != 13) damaged("its header (IHDR) has " + std::to_string(chunk.length) + " bytes instead of 13");
    header_ = read_header(whole_body(chunk));
    check_size(*header_, limits_, reader_.size());
    facts_.kind = Kind::png;
    facts_.width = header_->width;
    facts_.height = header_->height;
    facts_.turn = 1;
    facts_.bits = header_->bits;
    facts_.interlaced = header_->interlaced;
    facts_.colour = header_->type == PngHeader::palette ? Colour::palette
                    : header_->type == PngHeader::grey || header_->type == PngHeader::grey_alpha ? Colour::grey
                                                                                                : Colour::rgb;
}

void PngFile::take_palette(const Chunk& chunk) {
    if (!paint_.palette.empty()) damaged("it has two palettes (PLTE)");
    if (pixels_) damaged("its palette (PLTE) comes after its pixels");
    if (header_->type == PngHeader::grey || header_->type == PngHeader::grey_alpha) damaged("it is grey and has a palette (PLTE)");
    const std::uint32_t most = header_->type == PngHeader::palette ? 3u << header_->bits : 768u;
    if (chunk.length == 0 || chunk.length % 3 != 0 || chunk.length > most)
        damaged("its palette (PLTE) has " + std::to_string(chunk.length) + " bytes, which is no number of colours that it can have");
    paint_.palette = whole_body(chunk);
}

void PngFile::take_transparency(const Chunk& chunk) {
    if (pixels_) damaged("its transparency (tRNS) comes after its pixels");
    if (!paint_.transparency.empty()) damaged("it tells its transparency (tRNS) twice");
    const std::uint32_t most = header_->type == PngHeader::grey      ? 2
                               : header_->type == PngHeader::rgb     ? 6
                               : header_->type == PngHeader::palette ? static_cast<std::uint32_t>(paint_.palette.size() / 3)
                                                                     : 0;
    const bool exact = header_->type != PngHeader::palette;
    if (chunk.length == 0 || chunk.length > most || (exact && chunk.length != most))
        damaged("its transparency (tRNS) has " + std::to_string(chunk.length) + " bytes, which does not fit its colours");
    paint_.transparency = whole_body(chunk);
}

void PngFile::begin_pixels() {
    const bool indexed = header_->type == PngHeader::palette;
    if (indexed && paint_.palette.empty()) damaged("its palette (PLTE) is missing");
    if (!indexed) paint_.palette.clear();  // a mere suggestion for screens with few colours
    paint_.convert = ancillary_.other_than_srgb(facts_.colour == Colour::grey ? Model::grey : Model::rgb);
    facts_.density = ancillary_.density();
    facts_.profile = ancillary_.says_colours();
    facts_.profile_is_srgb = facts_.profile && !paint_.convert;
    if (paint_.convert) tell_conversion(*paint_.convert, facts_);
    facts_.alpha = header_->alpha() || !paint_.transparency.empty();
    facts_.palette = paint_.palette;
    tell_passage();
    finish_.emplace(*header_, paint_);
    rows_.begin(finish_->form());
    pixels_.emplace(*header_, *finish_, rows_);
}

void PngFile::tell_passage() {
    std::vector<std::string> reasons;
    if (header_->interlaced) reasons.push_back("it is interlaced");
    if (header_->bits == 16) reasons.push_back("it has 16 bits a sample");
    if (header_->alpha()) reasons.push_back("it has an alpha channel");
    if (!paint_.transparency.empty()) reasons.push_back("it names transparent colours");
    if (paint_.convert) reasons.push_back("its colours are not sRGB");
    facts_.passage = reasons.empty() ? Passage::through : Passage::recoded;
    facts_.why_recoded = listed(reasons, "and");
}

void PngFile::take_data(const Chunk& chunk) {
    if (data_over_) damaged(chunk.told() + " is apart from the others");
    if (!pixels_) begin_pixels();
    if (facts_.passage == Passage::through && facts_.payload.size() == most_extents) {
        facts_.passage = Passage::recoded;
        facts_.why_recoded = "its data are cut into too many pieces";
        facts_.payload.clear();
    }
    if (facts_.passage == Passage::through && chunk.length > 0) facts_.payload.push_back({reader_.at(), chunk.length});
    body(chunk, [this](std::span<const std::byte> piece) { data(piece); });
}

void PngFile::data(std::span<const std::byte> piece) {
    while (!piece.empty()) {
        const std::size_t n = std::min(piece.size(), portion_.size() - in_portion_);
        std::memcpy(portion_.data() + in_portion_, piece.data(), n);
        in_portion_ += n;
        piece = piece.subspan(n);
        if (in_portion_ == portion_.size()) flush();
    }
}

void PngFile::flush() {
    const auto bytes = portion_.bytes().first(in_portion_);
    if (facts_.passage == Passage::through) payload_.add(bytes);
    pixels_->add(bytes);
    in_portion_ = 0;
}

void PngFile::take_end(const Chunk& chunk) {
    if (chunk.length != 0) damaged("its end mark (IEND) is not empty");
    skip(chunk);
    if (!pixels_) damaged("it has no pixels (IDAT)");
    flush();
    pixels_->end();
    if (facts_.passage == Passage::through) facts_.payload_sha256 = payload_.hex();
    ended_ = true;
}

}  // namespace

void read_png(Reader& reader, const Limits& limits, Facts& facts, Rows& rows) { PngFile(reader, limits, facts, rows).read(); }

}  // namespace qw::artwork
