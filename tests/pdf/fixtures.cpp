// SPDX-License-Identifier: GPL-3.0-or-later
#include "pdf/fixtures.h"

#include "pdf/judges.h"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <fstream>
#include <sstream>
#include <zlib.h>

namespace qw::test {

using namespace literals;

namespace {

std::string big_endian(std::uint32_t value) {
    return {static_cast<char>(value >> 24), static_cast<char>(value >> 16), static_cast<char>(value >> 8), static_cast<char>(value)};
}

std::string chunk(const std::string& type, const std::string& data) {
    const std::string body = type + data;
    const uLong sum = ::crc32(0, reinterpret_cast<const Bytef*>(body.data()), static_cast<uInt>(body.size()));
    return big_endian(static_cast<std::uint32_t>(data.size())) + body + big_endian(static_cast<std::uint32_t>(sum));
}

std::string packed(const std::string& data) {
    uLongf size = ::compressBound(data.size());
    std::string out(size, '\0');
    ::compress2(reinterpret_cast<Bytef*>(out.data()), &size, reinterpret_cast<const Bytef*>(data.data()), data.size(), 6);
    out.resize(size);
    return out;
}

/// Filter 1 takes the pixel to the left away, filter 2 the one above (ISO/IEC 15948 9.2).
std::string filtered(const PngPlan& plan, std::size_t at, std::size_t pixel_bytes) {
    const std::string& row = plan.rows[at];
    const int filter = static_cast<int>(at % 3);
    std::string out(1, static_cast<char>(filter));
    for (std::size_t i = 0; i < row.size(); ++i) {
        const char left = i >= pixel_bytes ? row[i - pixel_bytes] : '\0';
        const char above = at > 0 ? plan.rows[at - 1][i] : '\0';
        out += static_cast<char>(row[i] - (filter == 1 ? left : filter == 2 ? above : '\0'));
    }
    return out;
}

}  // namespace

const type::Fonts& drawing_fonts() {
    static const type::Fonts found = type::Fonts::find();
    return found;
}

std::string file_text(const Path& file) {
    std::ifstream in(file, std::ios::binary);
    REQUIRE(in);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

void write_text(const Path& file, const std::string& text) {
    std::ofstream out(file, std::ios::binary);
    out << text;
    REQUIRE(out.flush());
}

std::string png(const PngPlan& plan) {
    const std::size_t samples = plan.colour_type == 2 ? 3 : 1;
    const std::size_t pixel_bytes = std::max<std::size_t>(1, samples * static_cast<std::size_t>(plan.bits) / 8);
    std::string data;
    for (std::size_t i = 0; i < plan.rows.size(); ++i) data += filtered(plan, i, pixel_bytes);
    data = packed(data);
    std::string text = "\x89PNG\r\n\x1a\n";
    text += chunk("IHDR", big_endian(plan.width) + big_endian(plan.height) + static_cast<char>(plan.bits) + static_cast<char>(plan.colour_type) +
                              std::string(3, '\0'));
    if (!plan.palette.empty()) text += chunk("PLTE", plan.palette);
    const std::size_t part = data.size() / 3 + 1;
    for (std::size_t at = 0; at < data.size(); at += part) text += chunk("IDAT", data.substr(at, part));
    return text + chunk("IEND", "");
}

PngPlan colourful(std::uint32_t width, std::uint32_t height) {
    PngPlan plan{width, height, 8, 2, "", {}};
    for (std::uint32_t y = 0; y < height; ++y) {
        std::string row;
        for (std::uint32_t x = 0; x < width; ++x) {
            row += static_cast<char>(x * 255 / width);
            row += static_cast<char>(y * 255 / height);
            row += static_cast<char>((x / 16 + y / 16) % 2 ? 200 : 40);
        }
        plan.rows.push_back(row);
    }
    return plan;
}

PngPlan noisy(std::uint32_t width, std::uint32_t height) {
    PngPlan plan{width, height, 8, 2, "", {}};
    std::uint32_t state = 1;
    for (std::uint32_t y = 0; y < height; ++y) {
        std::string row(std::size_t{3} * width, '\0');
        for (char& c : row) c = static_cast<char>((state = state * 1664525 + 1013904223) >> 24);
        plan.rows.push_back(row);
    }
    return plan;
}

void make_jpeg(const Path& file, const std::string& device, int width, int height) {
    const std::string w = std::to_string(width), h = std::to_string(height);
    must_run("gs -q -dNOPAUSE -dBATCH -sDEVICE=" + device + " -dJPEGQ=92 -r72 -g" + w + "x" + h + " -o " + quoted(file) + " -c '" + w +
             " 100 div " + h + " 100 div scale 0.9 0.2 0.1 setrgbcolor 0 0 60 60 rectfill 0.1 0.3 0.8 setrgbcolor 70 70 25 0 360 arc fill "
             "0.2 0.7 0.2 setrgbcolor 60 0 40 40 rectfill showpage'");
}

std::string pdf_of(const std::map<int, std::string>& objects) {
    std::string text = "%PDF-1.7\n%\xE2\xE3\xCF\xD3\n";
    std::map<int, std::size_t> places;
    for (const auto& [number, body] : objects) {
        places[number] = text.size();
        text += std::to_string(number) + " 0 obj\n" + body + "\nendobj\n";
    }
    const int size = objects.rbegin()->first + 1;
    const std::size_t table = text.size();
    text += "xref\n0 " + std::to_string(size) + "\n0000000000 65535 f \n";
    for (int number = 1; number < size; ++number) {
        char entry[24];
        std::snprintf(entry, sizeof entry, places.contains(number) ? "%010zu 00000 n \n" : "%010zu 65535 f \n", places[number]);
        text += entry;
    }
    return text + "trailer\n<< /Size " + std::to_string(size) + " /Root 1 0 R >>\nstartxref\n" + std::to_string(table) + "\n%%EOF\n";
}

std::string stream_object(const std::string& data, const std::string& entries) {
    return "<< /Length " + std::to_string(data.size()) + " " + entries + " >>\nstream\n" + data + "\nendstream";
}

compose::Document one_page(Size paper) {
    compose::Document document;
    document.title = "Tidewater Almanac";
    document.subject = "tidewater-almanac 1.0.0";
    document.date = {2026, 9, 1};
    document.pages.push_back({paper, Rect::of(paper), Rect::of(paper), {}});
    return document;
}

compose::Document one_a4_page() { return one_page({210_mm, 297_mm}); }

void place_picture(Disk& disk, compose::Document& document, std::size_t page, const Path& file, const Rect& where) {
    document.artwork.push_back({file, artwork::look(disk, file)});
    REQUIRE(document.artwork.back().facts.damage == "");
    const Matrix place{where.width().in_points(), 0, 0, where.height().in_points(), where.left.in_points(), where.bottom.in_points()};
    document.pages.at(page).items.push_back(compose::Picture{document.artwork.size() - 1, place, where});
}

compose::PdfFace face(const Path& file, int page, const Matrix& place, const Rect& clip) { return {file, page, place, clip}; }

compose::Text line(const std::string& words, Point at, Length size, type::Cut cut) {
    compose::Text text;
    text.words = words;
    text.at = at;
    text.size = size;
    text.cut = cut;
    return text;
}

FaultNote refusal(const std::function<void()>& work, FaultKind kind) {
    try {
        work();
    } catch (const Fault& fault) {
        INFO(fault.what());
        CHECK(fault.kind() == kind);
        REQUIRE(fault.notes().size() == 1);
        return fault.notes()[0];
    }
    FAIL("nothing was refused");
    return {};
}

}  // namespace qw::test
