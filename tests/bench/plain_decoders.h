// SPDX-License-Identifier: GPL-3.0-or-later
// Decoding with libpng and libjpeg-turbo alone, which benchmarks measure beside.
#pragma once

#include <cstdio>
#include <cstdlib>
#include <memory>
#include <string>
#include <vector>

#include <jpeglib.h>
#include <png.h>

namespace bench {

using File = std::unique_ptr<std::FILE, int (*)(std::FILE*)>;

inline File opened(const std::string& path) {
    File file(std::fopen(path.c_str(), "rb"), std::fclose);
    if (!file) {
        std::fprintf(stderr, "cannot open %s\n", path.c_str());
        std::exit(3);
    }
    return file;
}

inline std::vector<unsigned char>& row_memory(std::size_t bytes) {
    static thread_local std::vector<unsigned char> memory;
    if (memory.size() < bytes) memory.resize(bytes);
    return memory;
}

// Both libraries end the program on an error, which is all that a benchmark needs.
inline void decode_png(const std::string& path) {
    const File file = opened(path);
    png_structp png = png_create_read_struct(PNG_LIBPNG_VER_STRING, nullptr, nullptr, nullptr);
    png_infop info = png_create_info_struct(png);
    png_init_io(png, file.get());
    png_read_info(png, info);
    const int passes = png_set_interlace_handling(png);
    png_read_update_info(png, info);
    const std::size_t row_bytes = png_get_rowbytes(png, info);
    const png_uint_32 height = png_get_image_height(png, info);
    auto& memory = row_memory(passes > 1 ? row_bytes * height : row_bytes);
    for (int pass = 0; pass < passes; ++pass)
        for (png_uint_32 y = 0; y < height; ++y) png_read_row(png, memory.data() + (passes > 1 ? y * row_bytes : 0), nullptr);
    png_read_end(png, nullptr);
    png_destroy_read_struct(&png, &info, nullptr);
}

inline void decode_jpeg(const std::string& path) {
    const File file = opened(path);
    jpeg_decompress_struct jpeg{};
    jpeg_error_mgr errors{};
    jpeg.err = jpeg_std_error(&errors);
    jpeg_create_decompress(&jpeg);
    jpeg_stdio_src(&jpeg, file.get());
    jpeg_read_header(&jpeg, TRUE);
    jpeg_start_decompress(&jpeg);
    auto& memory = row_memory(std::size_t{jpeg.output_width} * static_cast<unsigned>(jpeg.output_components));
    while (jpeg.output_scanline < jpeg.output_height) {
        JSAMPROW row = memory.data();
        jpeg_read_scanlines(&jpeg, &row, 1);
    }
    jpeg_finish_decompress(&jpeg);
    jpeg_destroy_decompress(&jpeg);
}

}  // namespace bench
