// SPDX-License-Identifier: GPL-3.0-or-later
#include <png.h>

#include <algorithm>
#include <array>
#include <fstream>
#include <map>
#include <stdexcept>

#include "leaf.h"
#include "pictures.h"

namespace art {
namespace {

using Bytes = std::vector<std::uint8_t>;

struct Packing {
    int filters;
    int strategy;
};

// Tried in turn, smallest wins. Flat drawings pack best without or with one fixed filter.
constexpr std::array<Packing, 4> kPackings{
    {{PNG_FILTER_NONE, 0}, {PNG_FILTER_UP, 0}, {PNG_FILTER_SUB, 0}, {PNG_FILTER_PAETH, 0}}};

struct Sheet {
    const Pixels& pixels;
    int colour_type;
    std::vector<png_color> palette;
};

void append(png_structp png, png_bytep data, png_size_t size) {
    auto* out = static_cast<Bytes*>(png_get_io_ptr(png));
    out->insert(out->end(), data, data + size);
}

[[noreturn]] void refuse(png_structp, png_const_charp text) { throw std::runtime_error(text); }

Bytes encode(const Sheet& sheet, const Packing& packing) {
    Bytes out;
    png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, nullptr, refuse, nullptr);
    png_infop info = png_create_info_struct(png);
    png_set_write_fn(png, &out, append, [](png_structp) {});
    const auto width = static_cast<png_uint_32>(sheet.pixels.width);
    const auto height = static_cast<png_uint_32>(sheet.pixels.height);
    png_set_IHDR(png, info, width, height, 8, sheet.colour_type, PNG_INTERLACE_NONE, PNG_COMPRESSION_TYPE_DEFAULT,
                 PNG_FILTER_TYPE_DEFAULT);
    if (!sheet.palette.empty()) png_set_PLTE(png, info, sheet.palette.data(), static_cast<int>(sheet.palette.size()));
    png_set_pHYs(png, info, kPixelsPerMetre, kPixelsPerMetre, PNG_RESOLUTION_METER);
    png_set_compression_level(png, 9);
    png_set_compression_mem_level(png, 9);
    png_set_compression_strategy(png, packing.strategy);
    png_set_filter(png, PNG_FILTER_TYPE_BASE, packing.filters);
    png_write_info(png, info);
    const std::size_t stride = width * static_cast<std::size_t>(sheet.pixels.channels);
    for (png_uint_32 y = 0; y < height; ++y) png_write_row(png, sheet.pixels.bytes.data() + y * stride);
    png_write_end(png, info);
    png_destroy_write_struct(&png, &info);
    return out;
}

void save(const std::string& path, const Sheet& sheet) {
    Bytes best;
    for (const Packing& packing : kPackings) {
        Bytes tried = encode(sheet, packing);
        if (best.empty() || tried.size() < best.size()) best.swap(tried);
    }
    std::ofstream file(path, std::ios::binary);
    file.write(reinterpret_cast<const char*>(best.data()), static_cast<std::streamsize>(best.size()));
    file.close();
    if (!file) throw std::runtime_error("cannot write " + path);
}

struct Shade {
    std::array<int, 3> rgb;
    long count;
};

using Shades = std::vector<Shade>;

Shades shades_of(const Pixels& pixels) {
    std::vector<long> counts(1u << 24);
    for (std::size_t i = 0; i < pixels.bytes.size(); i += 3)
        ++counts[(pixels.bytes[i] << 16u) | (pixels.bytes[i + 1] << 8u) | pixels.bytes[i + 2]];
    Shades shades;
    for (unsigned v = 0; v < counts.size(); ++v)
        if (counts[v] > 0)
            shades.push_back(
                {{static_cast<int>(v >> 16), static_cast<int>(v >> 8 & 255), static_cast<int>(v & 255)}, counts[v]});
    std::stable_sort(shades.begin(), shades.end(), [](const Shade& a, const Shade& b) { return a.count > b.count; });
    return shades;
}

int widest(const Shades& s, int& spread) {
    int axis = 0;
    spread = -1;
    for (int a = 0; a < 3; ++a) {
        const auto k = static_cast<std::size_t>(a);
        const auto [low, high] = std::minmax_element(
            s.begin(), s.end(), [k](const Shade& x, const Shade& y) { return x.rgb[k] < y.rgb[k]; });
        if (high->rgb[k] - low->rgb[k] > spread) spread = high->rgb[k] - low->rgb[k], axis = a;
    }
    return axis;
}

// Median cut over the shades that antialiasing made: cut the widest group until all are used.
std::vector<Shades> cut(const Shades& all, std::size_t groups) {
    std::vector<Shades> out{all};
    while (out.size() < groups) {
        std::size_t chosen = 0;
        int best = 0, axis = 0;
        for (std::size_t i = 0; i < out.size(); ++i) {
            int spread = 0;
            const int a = widest(out[i], spread);
            if (spread > best) best = spread, chosen = i, axis = a;
        }
        if (best == 0) break;
        Shades& group = out[chosen];
        const auto k = static_cast<std::size_t>(axis);
        std::stable_sort(group.begin(), group.end(),
                         [k](const Shade& x, const Shade& y) { return x.rgb[k] < y.rgb[k]; });
        const int middle = (group.front().rgb[k] + group.back().rgb[k] + 1) / 2;
        const auto split = std::find_if(group.begin(), group.end(), [&](const Shade& s) { return s.rgb[k] >= middle; });
        Shades upper(split, group.end());
        group.erase(split, group.end());
        out.push_back(std::move(upper));
    }
    return out;
}

png_color mean_of(const Shades& group) {
    std::array<double, 3> sum{};
    double weight = 0;
    for (const Shade& s : group) {
        for (std::size_t k = 0; k < 3; ++k) sum[k] += static_cast<double>(s.rgb[k] * s.count);
        weight += static_cast<double>(s.count);
    }
    const auto level = [&](std::size_t k) { return static_cast<png_byte>(sum[k] / weight + 0.5); };
    return {level(0), level(1), level(2)};
}

constexpr std::size_t kExact = 48;  // the flat tones stay exactly what they are

}  // namespace

void write_png(const std::string& path, const Pixels& pixels) {
    save(path, {pixels, pixels.channels == 4 ? PNG_COLOR_TYPE_RGBA : PNG_COLOR_TYPE_RGB, {}});
}

void write_grey_png(const std::string& path, const Pixels& pixels) {
    Pixels grey{pixels.width, pixels.height, 1, {}};
    grey.bytes.reserve(pixels.bytes.size() / 3);
    for (std::size_t i = 0; i < pixels.bytes.size(); i += 3) {
        const int sum = 2126 * pixels.bytes[i] + 7152 * pixels.bytes[i + 1] + 722 * pixels.bytes[i + 2];
        grey.bytes.push_back(static_cast<std::uint8_t>((sum + 5000) / 10000));
    }
    save(path, {grey, PNG_COLOR_TYPE_GRAY, {}});
}

void write_palette_png(const std::string& path, const Pixels& pixels) {
    const Shades shades = shades_of(pixels);
    const std::size_t exact = std::min(kExact, shades.size());
    std::vector<png_color> palette;
    std::map<std::array<int, 3>, std::uint8_t> index;
    const auto add = [&](const Shades& group) {
        for (const Shade& s : group) index[s.rgb] = static_cast<std::uint8_t>(palette.size());
        palette.push_back(mean_of(group));
    };
    for (std::size_t i = 0; i < exact; ++i) add({shades[i]});
    if (shades.size() > exact)
        for (const Shades& group : cut({shades.begin() + exact, shades.end()}, 256 - exact)) add(group);
    Pixels indexed{pixels.width, pixels.height, 1, {}};
    indexed.bytes.reserve(pixels.bytes.size() / 3);
    for (std::size_t i = 0; i < pixels.bytes.size(); i += 3)
        indexed.bytes.push_back(index.at({pixels.bytes[i], pixels.bytes[i + 1], pixels.bytes[i + 2]}));
    save(path, {indexed, PNG_COLOR_TYPE_PALETTE, palette});
}

}  // namespace art
