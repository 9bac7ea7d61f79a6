// SPDX-License-Identifier: GPL-3.0-or-later
#include <cstdio>  // jpeglib.h needs FILE

#include <jpeglib.h>

#include <cstdlib>
#include <fstream>
#include <stdexcept>

#include "pictures.h"

namespace art {
namespace {

[[noreturn]] void refuse(j_common_ptr) { throw std::runtime_error("the JPEG cannot be encoded"); }

void describe(jpeg_compress_struct& job, const Pixels& pixels, int quality, bool halved) {
    job.image_width = static_cast<JDIMENSION>(pixels.width);
    job.image_height = static_cast<JDIMENSION>(pixels.height);
    job.input_components = 3;
    job.in_color_space = JCS_RGB;
    jpeg_set_defaults(&job);
    jpeg_set_quality(&job, quality, TRUE);
    job.optimize_coding = TRUE;
    job.density_unit = 1;  // per inch
    job.X_density = job.Y_density = 300;
    job.comp_info[0].h_samp_factor = job.comp_info[0].v_samp_factor = halved ? 2 : 1;
}

}  // namespace

void write_jpeg(const std::string& path, const Pixels& pixels, int quality, bool halved) {
    jpeg_error_mgr errors;
    jpeg_compress_struct job;
    job.err = jpeg_std_error(&errors);
    errors.error_exit = refuse;
    jpeg_create_compress(&job);
    unsigned char* data = nullptr;
    unsigned long size = 0;
    jpeg_mem_dest(&job, &data, &size);
    describe(job, pixels, quality, halved);
    jpeg_start_compress(&job, TRUE);
    while (job.next_scanline < job.image_height) {
        auto* row =
            const_cast<JSAMPLE*>(pixels.bytes.data() + job.next_scanline * static_cast<std::size_t>(pixels.width) * 3);
        jpeg_write_scanlines(&job, &row, 1);
    }
    jpeg_finish_compress(&job);
    jpeg_destroy_compress(&job);
    std::ofstream file(path, std::ios::binary);
    file.write(reinterpret_cast<const char*>(data), static_cast<std::streamsize>(size));
    file.close();
    std::free(data);
    if (!file) throw std::runtime_error("cannot write " + path);
}

}  // namespace art
