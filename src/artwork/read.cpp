// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/read.h"

#include "artwork/damage.h"
#include "artwork/jpeg_read.h"
#include "artwork/png_read.h"

#include <string_view>

namespace qw::artwork {

namespace {

using namespace std::string_view_literals;

constexpr std::string_view png_signature = "\x89PNG\r\n\x1a\n"sv;
constexpr std::string_view jpeg_start = "\xff\xd8\xff"sv;

/// What people may have taken for a PNG or JPEG.
struct Other {
    std::string_view start, name;
};
constexpr Other others[] = {{"%PDF"sv, "a PDF"},
                            {"GIF8"sv, "a GIF"},
                            {"8BPS"sv, "a layered picture (PSD)"},
                            {"II*\0"sv, "a TIFF"},
                            {"MM\0*"sv, "a TIFF"},
                            {"RIFF"sv, "a WebP or another RIFF file"},
                            {"BM"sv, "a BMP"},
                            {"<svg"sv, "an SVG"},
                            {"<?xml"sv, "an SVG or another XML file"},
                            {"\0\0\0\x0cJXL"sv, "a JPEG XL"},
                            {"\0\0\0\x0cjP"sv, "a JPEG 2000"},
                            {"version https://git-lfs"sv, "a pointer to a file that was not fetched"}};

[[noreturn]] void refuse(std::string_view start) {
    if (start.empty()) damaged("it is empty");
    if (start.substr(0, 4) == png_signature.substr(0, 4)) damaged("its first bytes are not quite those of a PNG, as after a transfer that treats it as text");
    if (jpeg_start.starts_with(start) || png_signature.starts_with(start)) damaged("it is cut off after " + std::to_string(start.size()) + " bytes");
    for (const Other& other : others)
        if (start.starts_with(other.start)) damaged("it is " + std::string(other.name) + ", not a PNG or JPEG");
    damaged("it is neither a PNG nor a JPEG");
}

}  // namespace

void read_picture(Reader& reader, const Limits& limits, Purpose purpose, Facts& facts, Rows& rows) {
    const auto first = reader.peek(32);
    const std::string_view start(reinterpret_cast<const char*>(first.data()), first.size());
    if (reader.size() > limits.bytes)
        damaged("it has " + std::to_string(reader.size()) + " bytes, more than the " + std::to_string(limits.bytes) + " that artwork may have");
    if (start.starts_with(png_signature)) return read_png(reader, limits, facts, rows);
    if (start.starts_with(jpeg_start)) return read_jpeg(reader, limits, purpose, facts, rows);
    refuse(start);
}

}  // namespace qw::artwork
