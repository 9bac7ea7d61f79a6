// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/jpeg_files.h"

#include <csetjmp>
#include <cstdio>
#include <cstdlib>
#include <memory>
#include <stdexcept>

#include <jpeglib.h>

namespace qw::artwork::test {

namespace {

[[noreturn]] void cannot_write(j_common_ptr) { throw std::logic_error("libjpeg cannot write the test's file"); }

std::vector<std::uint8_t> row_of(const JpegWish& wish, const Pixels& pixels, std::uint32_t y) {
    std::vector<std::uint8_t> row;
    for (std::uint32_t x = 0; x < pixels.width; ++x) {
        const std::uint8_t* p = &pixels.rgb[(std::size_t{y} * pixels.width + x) * 3];
        if (wish.colour == JpegWish::Colour::grey) {
            row.push_back(p[1]);
        } else if (wish.colour == JpegWish::Colour::cmyk || wish.colour == JpegWish::Colour::ycck) {
            for (int c = 0; c < 3; ++c) row.push_back(wish.inverted ? p[c] : static_cast<std::uint8_t>(255 - p[c]));
            row.push_back(wish.inverted ? static_cast<std::uint8_t>(255 - wish.black) : wish.black);
        } else {
            row.insert(row.end(), p, p + 3);
        }
    }
    return row;
}

void settings(jpeg_compress_struct& jpeg, const JpegWish& wish) {
    using Colour = JpegWish::Colour;
    const bool cmyk = wish.colour == Colour::cmyk || wish.colour == Colour::ycck;
    jpeg.input_components = wish.colour == Colour::grey ? 1 : cmyk ? 4 : 3;
    jpeg.in_color_space = wish.colour == Colour::grey ? JCS_GRAYSCALE : cmyk ? JCS_CMYK : JCS_RGB;
    jpeg_set_defaults(&jpeg);
    if (wish.colour == Colour::rgb) jpeg_set_colorspace(&jpeg, JCS_RGB);
    if (wish.colour == Colour::cmyk) jpeg_set_colorspace(&jpeg, JCS_CMYK);
    if (wish.colour == Colour::ycck) jpeg_set_colorspace(&jpeg, JCS_YCCK);
    jpeg_set_quality(&jpeg, wish.quality, TRUE);
    if (wish.colour == Colour::ycc) {
        jpeg.comp_info[0].h_samp_factor = wish.across;
        jpeg.comp_info[0].v_samp_factor = wish.down;
    }
    if (!wish.adobe_marker) jpeg.write_Adobe_marker = FALSE;
    if (wish.progressive) jpeg_simple_progression(&jpeg);
    jpeg.arith_code = wish.arithmetic;
    jpeg.restart_in_rows = wish.restart_rows;
    if (wish.more) wish.more(jpeg);
}

}  // namespace

Bytes write_jpeg(const JpegWish& wish, const Pixels& pixels) {
    jpeg_compress_struct jpeg{};
    jpeg_error_mgr errors{};
    jpeg.err = jpeg_std_error(&errors);
    errors.error_exit = cannot_write;
    unsigned char* out = nullptr;
    unsigned long size = 0;
    jpeg_create_compress(&jpeg);
    jpeg_mem_dest(&jpeg, &out, &size);
    jpeg.image_width = pixels.width;
    jpeg.image_height = pixels.height;
    settings(jpeg, wish);
    jpeg_start_compress(&jpeg, TRUE);
    if (!wish.exif.empty()) {
        const Bytes body = bytes_of(std::string_view("Exif\0\0", 6)) + wish.exif;
        jpeg_write_marker(&jpeg, JPEG_APP0 + 1, reinterpret_cast<const JOCTET*>(body.data()), static_cast<unsigned>(body.size()));
    }
    if (!wish.icc.empty()) jpeg_write_icc_profile(&jpeg, reinterpret_cast<const JOCTET*>(wish.icc.data()), static_cast<unsigned>(wish.icc.size()));
    for (std::uint32_t y = 0; y < pixels.height; ++y) {
        std::vector<std::uint8_t> row = row_of(wish, pixels, y);
        JSAMPROW pointer = row.data();
        jpeg_write_scanlines(&jpeg, &pointer, 1);
    }
    jpeg_finish_compress(&jpeg);
    jpeg_destroy_compress(&jpeg);
    const std::unique_ptr<unsigned char, void (*)(void*)> owned(out, std::free);
    const auto* bytes = reinterpret_cast<const std::byte*>(out);
    return Bytes(bytes, bytes + size);
}

Pixels drawing(std::uint32_t width, std::uint32_t height, std::uint32_t margin) {
    Pixels pixels{width, height, std::vector<std::uint8_t>(std::size_t{width} * height * 3, 255)};
    for (std::uint32_t y = margin; y + margin < height; ++y) {
        for (std::uint32_t x = margin; x + margin < width; ++x) {
            std::uint8_t* p = &pixels.rgb[(std::size_t{y} * width + x) * 3];
            const bool edge = x == margin || y == margin || x + margin + 1 == width || y + margin + 1 == height;
            const bool leaf = (x / 9 + y / 7) % 2 == 0;
            p[0] = edge ? 20 : leaf ? static_cast<std::uint8_t>(90 + x % 100) : 240;
            p[1] = edge ? 40 : leaf ? static_cast<std::uint8_t>(140 + y % 60) : 225;
            p[2] = edge ? 60 : leaf ? 70 : static_cast<std::uint8_t>(180 + (x + y) % 40);
        }
    }
    return pixels;
}

namespace {

struct Judge {
    jpeg_decompress_struct jpeg{};
    jpeg_error_mgr errors{};
    std::jmp_buf back{};
    const Bytes* file = nullptr;
    std::vector<std::uint8_t>* samples = nullptr;
    bool luma = false, cmyk = false;
};

void refuse(j_common_ptr jpeg) { std::longjmp(static_cast<Judge*>(jpeg->client_data)->back, 1); }
void refuse_warnings(j_common_ptr jpeg, int level) {
    if (level < 0) refuse(jpeg);
}

void decode_all(Judge& judge) {
    jpeg_decompress_struct& jpeg = judge.jpeg;
    jpeg_create_decompress(&jpeg);
    jpeg.client_data = &judge;
    jpeg_mem_src(&jpeg, reinterpret_cast<const unsigned char*>(judge.file->data()), judge.file->size());
    jpeg_read_header(&jpeg, TRUE);
    if ((jpeg.num_components > 3) != judge.cmyk || std::uint64_t{jpeg.image_width} * jpeg.image_height > 4000000) refuse(reinterpret_cast<j_common_ptr>(&jpeg));
    if (judge.luma) jpeg.out_color_space = JCS_GRAYSCALE;
    if (judge.cmyk) jpeg.out_color_space = JCS_CMYK;
    jpeg_start_decompress(&jpeg);
    const std::size_t row_bytes = std::size_t{jpeg.output_width} * static_cast<unsigned>(jpeg.output_components);
    judge.samples->resize(row_bytes * jpeg.output_height);
    while (jpeg.output_scanline < jpeg.output_height) {
        JSAMPROW row = judge.samples->data() + jpeg.output_scanline * row_bytes;
        jpeg_read_scanlines(&jpeg, &row, 1);
    }
    jpeg_finish_decompress(&jpeg);
}

bool guarded(Judge& judge) {
    if (setjmp(judge.back) != 0) return false;
    decode_all(judge);
    return true;
}

std::unique_ptr<Judge> judge_of(const Bytes& file, std::vector<std::uint8_t>& samples) {
    auto judge = std::make_unique<Judge>();
    judge->jpeg.err = jpeg_std_error(&judge->errors);
    judge->jpeg.client_data = judge.get();
    judge->errors.error_exit = refuse;
    judge->errors.emit_message = refuse_warnings;
    judge->file = &file;
    judge->samples = &samples;
    return judge;
}

std::optional<Pixels> decode(const Bytes& file, bool luma) {
    std::vector<std::uint8_t> samples;
    const auto judge = judge_of(file, samples);
    judge->luma = luma;
    const bool fine = guarded(*judge);
    std::optional<Pixels> pixels;
    if (fine) {
        pixels = Pixels{judge->jpeg.output_width, judge->jpeg.output_height, {}};
        if (judge->jpeg.output_components == 3) pixels->rgb = std::move(samples);
        else
            for (const std::uint8_t sample : samples) pixels->rgb.insert(pixels->rgb.end(), 3, sample);
    }
    jpeg_destroy_decompress(&judge->jpeg);
    return pixels;
}

}  // namespace

std::optional<Pixels> decode_jpeg(const Bytes& file) { return decode(file, false); }
std::optional<Pixels> decode_luma(const Bytes& file) { return decode(file, true); }

std::optional<std::vector<std::uint8_t>> decode_cmyk(const Bytes& file) {
    std::vector<std::uint8_t> samples;
    const auto judge = judge_of(file, samples);
    judge->cmyk = true;
    const bool fine = guarded(*judge), inverted = judge->jpeg.saw_Adobe_marker;
    jpeg_destroy_decompress(&judge->jpeg);
    if (!fine) return std::nullopt;
    for (std::uint8_t& sample : samples) sample = inverted ? static_cast<std::uint8_t>(255 - sample) : sample;
    return samples;
}

Bytes with_segment(const Bytes& file, std::uint8_t marker, const Bytes& body) {
    const std::size_t length = body.size() + 2;
    const Bytes head{std::byte{0xFF}, static_cast<std::byte>(marker), static_cast<std::byte>(length >> 8), static_cast<std::byte>(length)};
    return Bytes(file.begin(), file.begin() + 2) + head + body + Bytes(file.begin() + 2, file.end());
}

Bytes tiff(bool little_endian, int orientation, std::uint32_t x, std::uint32_t y, int unit) {
    Bytes bytes;
    const auto put = [&](std::uint32_t value, int size) {
        for (int i = 0; i < size; ++i) bytes.push_back(static_cast<std::byte>(value >> 8 * (little_endian ? i : size - 1 - i)));
    };
    bytes = bytes_of(little_endian ? "II" : "MM");
    put(42, 2);
    put(8, 4);
    put(4, 2);
    const auto entry = [&](std::uint32_t tag, std::uint32_t type, std::uint32_t value) {
        put(tag, 2);
        put(type, 2);
        put(1, 4);
        put(value, type == 3 ? 2 : 4);
        if (type == 3) put(0, 2);
    };
    const std::uint32_t values = 8 + 2 + 4 * 12 + 4;
    entry(0x0112, 3, static_cast<std::uint32_t>(orientation));
    entry(0x011A, 5, values);
    entry(0x011B, 5, values + 8);
    entry(0x0128, 3, static_cast<std::uint32_t>(unit));
    put(0, 4);
    for (const std::uint32_t value : {x, 1u, y * 10, 10u}) put(value, 4);
    return bytes;
}

}  // namespace qw::artwork::test
