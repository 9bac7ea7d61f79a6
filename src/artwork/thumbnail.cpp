// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/thumbnail.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <memory>
#include <new>

#include <jpeglib.h>

namespace qw::artwork {

namespace {

struct Small {
    std::uint32_t width = 0, height = 0;
    std::vector<std::uint8_t> rgb;
};

Small averaged(std::span<const std::uint8_t> rgb, std::uint32_t width, std::uint32_t height, std::uint32_t longest) {
    const double factor = std::min(1.0, static_cast<double>(longest) / std::max(width, height));
    Small small{std::max(1u, static_cast<std::uint32_t>(width * factor)), std::max(1u, static_cast<std::uint32_t>(height * factor)), {}};
    small.rgb.resize(std::size_t{small.width} * small.height * 3);
    for (std::uint32_t y = 0; y < small.height; ++y) {
        const std::uint32_t y0 = static_cast<std::uint32_t>(std::uint64_t{y} * height / small.height),
                            y1 = std::max(y0 + 1, static_cast<std::uint32_t>(std::uint64_t{y + 1} * height / small.height));
        for (std::uint32_t x = 0; x < small.width; ++x) {
            const std::uint32_t x0 = static_cast<std::uint32_t>(std::uint64_t{x} * width / small.width),
                                x1 = std::max(x0 + 1, static_cast<std::uint32_t>(std::uint64_t{x + 1} * width / small.width));
            std::uint64_t sum[3] = {0, 0, 0};
            for (std::uint32_t sy = y0; sy < y1; ++sy)
                for (std::uint32_t sx = x0; sx < x1; ++sx)
                    for (std::size_t c = 0; c < 3; ++c) sum[c] += rgb[(std::size_t{sy} * width + sx) * 3 + c];
            const std::uint64_t n = std::uint64_t{y1 - y0} * (x1 - x0);
            for (std::size_t c = 0; c < 3; ++c) small.rgb[(std::size_t{y} * small.width + x) * 3 + c] = static_cast<std::uint8_t>((sum[c] + n / 2) / n);
        }
    }
    return small;
}

}  // namespace

std::vector<std::byte> thumbnail(std::span<const std::uint8_t> rgb, std::uint32_t width, std::uint32_t height, std::uint32_t longest) {
    Small small = averaged(rgb, width, height, longest);
    jpeg_compress_struct jpeg{};
    jpeg_error_mgr errors{};
    jpeg.err = jpeg_std_error(&errors);
    // Compressing valid samples into memory fails only for want of memory.
    errors.error_exit = [](j_common_ptr) { throw std::bad_alloc(); };
    unsigned char* out = nullptr;
    unsigned long size = 0;
    jpeg_create_compress(&jpeg);
    jpeg_mem_dest(&jpeg, &out, &size);
    jpeg.image_width = small.width;
    jpeg.image_height = small.height;
    jpeg.input_components = 3;
    jpeg.in_color_space = JCS_RGB;
    jpeg_set_defaults(&jpeg);
    jpeg_set_quality(&jpeg, 82, TRUE);
    jpeg_start_compress(&jpeg, TRUE);
    while (jpeg.next_scanline < jpeg.image_height) {
        JSAMPROW row = small.rgb.data() + std::size_t{jpeg.next_scanline} * small.width * 3;
        jpeg_write_scanlines(&jpeg, &row, 1);
    }
    jpeg_finish_compress(&jpeg);
    jpeg_destroy_compress(&jpeg);
    const std::unique_ptr<unsigned char, void (*)(void*)> owned(out, std::free);
    const auto* bytes = reinterpret_cast<const std::byte*>(out);
    return std::vector<std::byte>(bytes, bytes + size);
}

}  // namespace qw::artwork
