// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/png_files.h"

#include <cstring>
#include <png.h>
#include <stdexcept>
#include <zlib.h>

namespace qw::artwork::test {

namespace {

void into_bytes(png_structp png, png_bytep from, std::size_t n) {
    auto& file = *static_cast<Bytes*>(png_get_io_ptr(png));
    const auto* bytes = reinterpret_cast<const std::byte*>(from);
    file.insert(file.end(), bytes, bytes + n);
}

/// Shapes of full, faint and no colour, with soft edges and noise, so that all filters and levels are used.
std::uint32_t sample_at(const PngWish& wish, std::uint32_t x, std::uint32_t y, int channel) {
    const std::uint32_t full = (1u << wish.bits) - 1;
    if (wish.blank) return full;
    if (x < wish.width / 8 || y < wish.height / 7) return channel == 3 || (wish.type == 4 && channel == 1) ? (y % 2 ? 0 : full) : full;
    const std::uint32_t noise = ((x * 2654435761u) ^ (y * 40503u) ^ (static_cast<std::uint32_t>(channel) * 977u)) >> 7;
    const std::uint32_t slope = (x * 5 + y * 3 * static_cast<std::uint32_t>(channel + 1)) * (full / 97 + 1);
    const bool flat = (x / 5 + y / 4) % 3 == 0;
    return flat ? (slope / 7 * 7) % (full + 1) : (slope + noise % (full / 8 + 2)) % (full + 1);
}

int channels_of(int type) { return type == 0 || type == 3 ? 1 : type == 4 ? 2 : type == 2 ? 3 : 4; }

std::vector<std::uint8_t> row_of(const PngWish& wish, std::uint32_t y) {
    const int channels = channels_of(wish.type);
    std::vector<std::uint8_t> row((std::size_t{wish.width} * static_cast<unsigned>(channels * wish.bits) + 7) / 8, 0);
    std::size_t bit = 0;
    for (std::uint32_t x = 0; x < wish.width; ++x) {
        for (int c = 0; c < channels; ++c, bit += static_cast<unsigned>(wish.bits)) {
            std::uint32_t value = sample_at(wish, x, y, c);
            if (wish.palette_colours) value %= static_cast<unsigned>(wish.palette_colours);
            if (wish.bits == 16) {
                row[bit / 8] = static_cast<std::uint8_t>(value >> 8);
                row[bit / 8 + 1] = static_cast<std::uint8_t>(value);
            } else {
                row[bit / 8] = static_cast<std::uint8_t>(row[bit / 8] | value << (8 - static_cast<unsigned>(wish.bits) - bit % 8));
            }
        }
    }
    return row;
}

void set_palette(png_structp png, png_infop info, const PngWish& wish) {
    const int colours = wish.palette_colours ? wish.palette_colours : 1 << wish.bits;
    std::vector<png_color> palette(static_cast<std::size_t>(colours));
    for (int i = 0; i < colours; ++i) {
        const auto level = [&](int factor) { return static_cast<png_byte>(255 - i * factor * 255 / colours % 256); };
        palette[static_cast<std::size_t>(i)] = {level(1), level(3), level(2)};
    }
    if (wish.blank) palette.back() = {255, 255, 255};
    png_set_PLTE(png, info, palette.data(), colours);
    if (!wish.transparency) return;
    std::vector<png_byte> alpha(static_cast<std::size_t>((colours + 1) / 2));
    for (std::size_t i = 0; i < alpha.size(); ++i) alpha[i] = static_cast<png_byte>(i * 83 % 256);
    png_set_tRNS(png, info, alpha.data(), static_cast<int>(alpha.size()), nullptr);
}

void set_key(png_structp png, png_infop info, const PngWish& wish) {
    const std::uint32_t x = wish.width / 2, y = wish.height / 2;
    png_color_16 key{};
    key.gray = static_cast<png_uint_16>(sample_at(wish, x, y, 0));
    key.red = key.gray;
    key.green = static_cast<png_uint_16>(sample_at(wish, x, y, 1));
    key.blue = static_cast<png_uint_16>(sample_at(wish, x, y, 2));
    png_set_tRNS(png, info, nullptr, 0, &key);
}

}  // namespace

Bytes write_png(const PngWish& wish) {
    Bytes file;
    png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, nullptr, nullptr, nullptr);
    png_infop info = png_create_info_struct(png);
    std::vector<std::vector<std::uint8_t>> rows;
    for (std::uint32_t y = 0; y < wish.height; ++y) rows.push_back(row_of(wish, y));
    std::vector<png_bytep> pointers;
    for (auto& row : rows) pointers.push_back(row.data());
    png_set_write_fn(png, &file, into_bytes, nullptr);
    png_set_IHDR(png, info, wish.width, wish.height, wish.bits, wish.type, wish.interlaced ? PNG_INTERLACE_ADAM7 : PNG_INTERLACE_NONE, 0, 0);
    png_set_filter(png, 0, wish.filters);
    png_set_compression_buffer_size(png, wish.idat_bytes);
    if (wish.type == 3) set_palette(png, info, wish);
    if (wish.transparency && wish.type != 3) set_key(png, info, wish);
    if (wish.more) wish.more(png, info);
    png_write_info(png, info);
    png_write_image(png, pointers.data());
    png_write_end(png, info);
    png_destroy_write_struct(&png, &info);
    return file;
}

namespace {

struct Input {
    const Bytes* file;
    std::size_t at = 0;
    bool warned = false, in_pixels = false;
};

struct Refused {};

[[noreturn]] void refuse(png_structp, png_const_charp) { throw Refused{}; }
void warn(png_structp png, png_const_charp) {
    auto& input = *static_cast<Input*>(png_get_error_ptr(png));
    if (input.in_pixels) input.warned = true;
}
void from_bytes(png_structp png, png_bytep to, std::size_t n) {
    auto& input = *static_cast<Input*>(png_get_io_ptr(png));
    if (input.file->size() - input.at < n) throw Refused{};
    std::memcpy(to, input.file->data() + input.at, n);
    input.at += n;
}

std::optional<Decoded> decode(png_structp png, png_infop info, Input& input) {
    png_set_read_fn(png, &input, from_bytes);
    png_read_info(png, info);
    Decoded decoded;
    decoded.width = png_get_image_width(png, info);
    decoded.height = png_get_image_height(png, info);
    decoded.type = png_get_color_type(png, info);
    decoded.bits = png_get_bit_depth(png, info);
    if (std::uint64_t{decoded.width} * decoded.height > 4000000) return std::nullopt;
    png_set_expand_16(png);
    png_set_gray_to_rgb(png);
    png_set_add_alpha(png, 0xFFFF, PNG_FILLER_AFTER);
    png_set_swap(png);
    png_set_interlace_handling(png);
    png_read_update_info(png, info);
    decoded.rgba.resize(std::size_t{decoded.width} * decoded.height * 4);
    if (png_get_rowbytes(png, info) != std::size_t{decoded.width} * 8) throw std::logic_error("libpng did not expand");
    std::vector<png_bytep> rows;
    for (std::uint32_t y = 0; y < decoded.height; ++y) rows.push_back(reinterpret_cast<png_bytep>(&decoded.rgba[std::size_t{y} * decoded.width * 4]));
    input.in_pixels = true;
    png_read_image(png, rows.data());
    png_read_end(png, info);
    return input.warned ? std::nullopt : std::optional(std::move(decoded));
}

}  // namespace

std::optional<Decoded> decode_png(const Bytes& file) {
    Input input{&file};
    png_structp png = png_create_read_struct(PNG_LIBPNG_VER_STRING, &input, refuse, warn);
    png_infop info = png_create_info_struct(png);
    std::optional<Decoded> decoded;
    try {
        decoded = decode(png, info, input);
    } catch (const Refused&) {
        decoded.reset();
    }
    png_destroy_read_struct(&png, &info, nullptr);
    return decoded;
}

Bytes bytes_of(std::string_view text) {
    const auto bytes = std::as_bytes(std::span(text.data(), text.size()));
    return {bytes.begin(), bytes.end()};
}

Bytes operator+(Bytes a, const Bytes& b) {
    a.insert(a.end(), b.begin(), b.end());
    return a;
}

Bytes signature() { return bytes_of(std::string_view("\x89PNG\r\n\x1a\n", 8)); }

namespace {

Bytes number(std::uint32_t value) {
    Bytes bytes;
    for (int shift = 24; shift >= 0; shift -= 8) bytes.push_back(static_cast<std::byte>(value >> shift));
    return bytes;
}

std::uint32_t sum_of(const Bytes& bytes, std::size_t at, std::size_t length) {
    return static_cast<std::uint32_t>(crc32(0, reinterpret_cast<const Bytef*>(bytes.data() + at), static_cast<uInt>(length)));
}

}  // namespace

Bytes chunk(std::string_view name, const Bytes& body) {
    const Bytes covered = bytes_of(name) + body;
    return number(static_cast<std::uint32_t>(body.size())) + covered + number(sum_of(covered, 0, covered.size()));
}

Bytes chunk(std::string_view name, std::string_view body) { return chunk(name, bytes_of(body)); }

Bytes ihdr(std::uint32_t width, std::uint32_t height, int bits, int type, int interlace) {
    Bytes body = number(width) + number(height);
    for (const int value : {bits, type, 0, 0, interlace}) body.push_back(static_cast<std::byte>(value));
    return chunk("IHDR", body);
}

Bytes packed(const Bytes& plain, int level) {
    uLongf size = compressBound(plain.size());
    Bytes result(size);
    compress2(reinterpret_cast<Bytef*>(result.data()), &size, reinterpret_cast<const Bytef*>(plain.data()), plain.size(), level);
    result.resize(size);
    return result;
}

std::vector<Found> chunks_of(const Bytes& file) {
    std::vector<Found> found;
    for (std::size_t at = 8; at + 12 <= file.size();) {
        std::size_t length = 0;
        for (std::size_t i = 0; i < 4; ++i) length = length << 8 | std::to_integer<std::size_t>(file[at + i]);
        const auto* name = reinterpret_cast<const char*>(file.data() + at + 4);
        found.push_back({std::string(name, 4), at + 8, length});
        at += 12 + length;
    }
    return found;
}

void mend_sum(Bytes& file, const Found& chunk) {
    const Bytes sum = number(sum_of(file, chunk.at - 4, chunk.length + 4));
    std::copy(sum.begin(), sum.end(), file.begin() + static_cast<std::ptrdiff_t>(chunk.at + chunk.length));
}

}  // namespace qw::artwork::test
