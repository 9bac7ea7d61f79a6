// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/png_header.h"

#include "artwork/bytes.h"
#include "artwork/damage.h"

namespace qw::artwork {

namespace {

bool allowed(int type, int bits) {
    switch (type) {
        case PngHeader::grey: return bits == 1 || bits == 2 || bits == 4 || bits == 8 || bits == 16;
        case PngHeader::palette: return bits == 1 || bits == 2 || bits == 4 || bits == 8;
        case PngHeader::rgb:
        case PngHeader::grey_alpha:
        case PngHeader::rgb_alpha: return bits == 8 || bits == 16;
        default: return false;
    }
}

constexpr std::uint32_t largest_side = 0x7FFFFFFF;  // PNG specification, 11.2.1

// Deflate codes at most 258 bytes in 2 bits (RFC 1951, 3.2.5), so nothing unpacks to more than this.
constexpr std::uint64_t most_unpacked_per_byte = 1032;

std::uint32_t ceil_div(std::uint32_t value, std::uint32_t by) { return value / by + (value % by != 0); }

}  // namespace

int PngHeader::samples() const {
    switch (type) {
        case grey:
        case palette: return 1;
        case grey_alpha: return 2;
        case rgb: return 3;
        default: return 4;
    }
}

int PngHeader::step() const { return bits < 8 ? 1 : samples() * bits / 8; }

std::uint64_t PngHeader::row_bytes(std::uint32_t pixels) const {
    return (std::uint64_t{pixels} * static_cast<unsigned>(samples() * bits) + 7) / 8;
}

PngHeader read_header(std::span<const std::byte> ihdr) {
    if (ihdr.size() != 13) damaged("its header (IHDR) has " + std::to_string(ihdr.size()) + " bytes instead of 13");
    PngHeader header;
    header.width = big32(ihdr, 0);
    header.height = big32(ihdr, 4);
    header.bits = byte_at(ihdr, 8);
    const int type = byte_at(ihdr, 9);
    header.type = static_cast<PngHeader::Type>(type);
    header.interlaced = byte_at(ihdr, 12) == 1;
    if (header.width == 0 || header.height == 0 || header.width > largest_side || header.height > largest_side)
        damaged("its header says " + std::to_string(header.width) + " x " + std::to_string(header.height) + " pixels, which no PNG can have");
    if (!allowed(type, header.bits))
        damaged("its header names colour type " + std::to_string(type) + " with " + std::to_string(header.bits) + " bits, which PNG does not have");
    if (byte_at(ihdr, 10) != 0 || byte_at(ihdr, 11) != 0 || byte_at(ihdr, 12) > 1)
        damaged("its header names a compression, filter or interlace method that PNG does not have");
    return header;
}

std::vector<PngPass> passes_of(const PngHeader& header) {
    static constexpr PngPass adam7[7] = {{0, 0, 8, 8}, {4, 0, 8, 8}, {0, 4, 4, 8}, {2, 0, 4, 4},
                                         {0, 2, 2, 4}, {1, 0, 2, 2}, {0, 1, 1, 2}};
    if (!header.interlaced) return {{0, 0, 1, 1, header.width, header.height}};
    std::vector<PngPass> passes;
    for (PngPass pass : adam7) {
        if (header.width <= pass.first_x || header.height <= pass.first_y) continue;
        pass.width = ceil_div(header.width - pass.first_x, pass.step_x);
        pass.height = ceil_div(header.height - pass.first_y, pass.step_y);
        passes.push_back(pass);
    }
    return passes;
}

std::uint64_t unpacked_bytes(const PngHeader& header) {
    std::uint64_t bytes = 0;
    for (const PngPass& pass : passes_of(header)) bytes += (header.row_bytes(pass.width) + 1) * pass.height;
    return bytes;
}

void check_size(const PngHeader& header, const Limits& limits, std::uint64_t file_bytes) {
    const std::string said = "its header says " + std::to_string(header.width) + " x " + std::to_string(header.height) + " pixels";
    if (std::uint64_t{header.width} * header.height > limits.pixels)
        damaged(said + ", more than the " + std::to_string(limits.pixels) + " that artwork may have");
    if (unpacked_bytes(header) / most_unpacked_per_byte > file_bytes)
        damaged(said + ", more than a file of " + std::to_string(file_bytes) + " bytes can hold");
}

}  // namespace qw::artwork
