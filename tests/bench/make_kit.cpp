// SPDX-License-Identifier: GPL-3.0-or-later
// Makes a kit to measure speed with: FACES pages of 3300 x 2550 pixels (letter at 300 ppi), RGB PNG without alpha,
// about 8.4 MB each, like scanned and painted artwork: slow gradients, shapes and fine grain.
// usage: bench_make_kit FOLDER FACES   (36 journal faces at the most, the rest are full sheets and extras)
#include <png.h>

#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

namespace {

constexpr int width = 3300, height = 2550;

std::uint32_t next(std::uint32_t& state) {
    state ^= state << 13;
    state ^= state >> 17;
    return state ^= state << 5;
}

void write_page(const std::string& path, std::uint32_t seed) {
    std::FILE* file = std::fopen(path.c_str(), "wb");
    if (!file) std::exit((std::perror(path.c_str()), 3));
    png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, nullptr, nullptr, nullptr);
    png_infop info = png_create_info_struct(png);
    if (setjmp(png_jmpbuf(png))) std::exit(3);
    png_init_io(png, file);
    png_set_compression_level(png, 3);
    png_set_filter(png, PNG_FILTER_TYPE_BASE, PNG_FILTER_SUB | PNG_FILTER_UP);
    png_set_IHDR(png, info, width, height, 8, PNG_COLOR_TYPE_RGB, PNG_INTERLACE_NONE, PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
    png_set_pHYs(png, info, 11811, 11811, PNG_RESOLUTION_METER);
    png_write_info(png, info);
    std::vector<png_byte> row(width * 3);
    std::uint32_t noise = seed * 2654435761u + 1;
    const double cx = 600 + (seed * 977) % 2100, cy = 500 + (seed * 613) % 1500, r = 300 + (seed * 131) % 400;
    std::vector<double> across(width);
    for (int x = 0; x < width; ++x) across[static_cast<std::size_t>(x)] = 200 + 30 * std::sin(x * 0.002 + seed);
    for (int y = 0; y < height; ++y) {
        const double down = 20 * std::cos(y * 0.003 - seed);
        for (int x = 0; x < width; ++x) {
            const double wash = across[static_cast<std::size_t>(x)] + down;
            const bool disc = (x - cx) * (x - cx) + (y - cy) * (y - cy) < r * r, line = (y % 120) < 2;
            const std::uint32_t grain = next(noise);
            for (int c = 0; c < 3; ++c) {
                const double base = disc ? wash * (0.5 + 0.15 * c) : line ? wash * 0.7 : wash;
                row[static_cast<std::size_t>(x * 3 + c)] = static_cast<png_byte>(base + (grain >> (8 * c) & 3));
            }
        }
        png_write_row(png, row.data());
    }
    png_write_end(png, nullptr);
    png_destroy_write_struct(&png, &info);
    std::fclose(file);
}

std::string set(const std::string& name, const std::string& role, const std::string& more) {
    return "  " + name + ":\n    role: " + role + "\n    files: \"art/" + name + "/*.png\"\n    place: cover\n    bleed: 0 mm\n    stock: copy-100\n" + more;
}

}  // namespace

int main(int argc, char** argv) {
    if (argc != 3) return std::fprintf(stderr, "usage: bench_make_kit FOLDER FACES\n"), 2;
    const std::filesystem::path folder = argv[1];
    const int faces = std::atoi(argv[2]), pages = std::min(faces, 36), covers = std::min(faces - pages, 4), extras = faces - pages - covers;
    std::uint32_t seed = 0;
    for (const auto& [name, count] : {std::pair<std::string, int>{"pages", pages}, {"covers", covers}, {"extras", extras}}) {
        std::filesystem::create_directories(folder / "art" / name);
        for (int i = 1; i <= count; ++i) write_page((folder / "art" / name / (std::to_string(i) + ".png")).string(), ++seed);
    }
    std::ofstream yaml(folder / "kit.yaml");
    yaml << "kit: bench-kit\ntitle: Bench Kit\nversion: 1.0.0\njournal: soft-spine\npapers: [letter, a4]\nprints: [borderless]\n"
            "board-stock: greyboard-1mm\nsets:\n"
         << set("pages", "journal-page", "    sides: duplex\n");
    if (covers) yaml << set("covers", "full-sheet", "");
    if (extras) yaml << set("extras", "extra", "");
}
