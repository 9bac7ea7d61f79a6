// SPDX-License-Identifier: GPL-3.0-or-later
#include "pdf/judges.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <sys/wait.h>

namespace qw::test {

Outcome run(const std::string& command) {
    Outcome outcome;
    FILE* pipe = ::popen(("LC_ALL=C TZ=UTC; export LC_ALL TZ; " + command + " 2>&1").c_str(), "r");
    REQUIRE(pipe);
    std::array<char, 4096> chunk;
    while (const std::size_t count = std::fread(chunk.data(), 1, chunk.size(), pipe)) outcome.output.append(chunk.data(), count);
    const int status = ::pclose(pipe);
    outcome.status = WIFEXITED(status) ? WEXITSTATUS(status) : 255;
    return outcome;
}

std::string must_run(const std::string& command) {
    const Outcome outcome = run(command);
    INFO(command << "\n" << outcome.output);
    REQUIRE(outcome.status == 0);
    return outcome.output;
}

std::string quoted(const Path& path) { return "'" + path.string() + "'"; }

bool contains(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

void check_sound(const Path& pdf) {
    const Outcome outcome = run("qpdf --check " + quoted(pdf));
    INFO(outcome.output);
    CHECK(outcome.status == 0);
    CHECK(contains(outcome.output, "No syntax or stream encoding errors found"));
}

Pixels read_ppm(const Path& file) {
    std::ifstream in(file, std::ios::binary);
    std::string kind;
    Pixels pixels;
    int most = 0;
    const auto next = [&](auto& value) {
        in >> std::ws;
        while (in.peek() == '#') in.ignore(1000, '\n') >> std::ws;
        in >> value;
    };
    next(kind);
    next(pixels.width);
    next(pixels.height);
    INFO(file);
    REQUIRE((kind == "P4" || kind == "P5" || kind == "P6"));
    if (kind != "P4") {
        next(most);
        REQUIRE(most == 255);
    }
    in.get();
    const std::size_t samples = kind == "P6" ? 3 : 1;
    const std::size_t row_bytes = kind == "P4" ? (pixels.width + 7) / 8 : pixels.width * samples;
    std::vector<char> row(row_bytes);
    for (std::uint32_t y = 0; y < pixels.height; ++y) {
        in.read(row.data(), static_cast<std::streamsize>(row_bytes));
        REQUIRE(in.gcount() == static_cast<std::streamsize>(row_bytes));
        for (std::size_t i = 0; i < std::size_t{3} * pixels.width; ++i) {
            const std::size_t x = i / 3;
            const int bit = row[x / 8] >> (7 - x % 8) & 1;  // P4: 1 is black
            pixels.rgb.push_back(static_cast<std::uint8_t>(kind == "P4" ? 255 * (1 - bit) : row[samples == 3 ? i : x]));
        }
    }
    return pixels;
}

std::vector<Pixels> rendered(const Path& pdf, int page, int dpi, const Path& folder) {
    const std::string number = std::to_string(page), resolution = std::to_string(dpi);
    const Path poppler = folder / "poppler", ghostscript = folder / "gs.ppm", mutool = folder / "mutool.ppm";
    must_run("pdftoppm -singlefile -r " + resolution + " -f " + number + " -l " + number + " " + quoted(pdf) + " " + quoted(poppler));
    must_run("gs -q -dNOPAUSE -dBATCH -dSAFER -sDEVICE=ppmraw -dTextAlphaBits=4 -dGraphicsAlphaBits=4 -r" + resolution + " -dFirstPage=" +
             number + " -dLastPage=" + number + " -o " + quoted(ghostscript) + " " + quoted(pdf));
    must_run("mutool draw -q -F ppm -r " + resolution + " -o " + quoted(mutool) + " " + quoted(pdf) + " " + number);
    return {read_ppm(poppler.string() + ".ppm"), read_ppm(ghostscript), read_ppm(mutool)};
}

double mean_difference(const Pixels& a, const Pixels& b) {
    // A renderer may round the last row or column of a page up or down.
    REQUIRE(std::max(a.width, b.width) - std::min(a.width, b.width) <= 1);
    REQUIRE(std::max(a.height, b.height) - std::min(a.height, b.height) <= 1);
    const std::uint32_t width = std::min(a.width, b.width), height = std::min(a.height, b.height);
    double sum = 0;
    for (std::uint32_t y = 0; y < height; ++y)
        for (std::uint32_t x = 0; x < width; ++x)
            for (int c = 0; c < 3; ++c) sum += std::abs(a.at(x, y)[c] - b.at(x, y)[c]);
    return sum / (3.0 * width * height);
}

Pixels check_alike(const Path& pdf, int page, const Path& folder, int dpi) {
    const std::vector<Pixels> all = rendered(pdf, page, dpi, folder);
    CHECK(mean_difference(all[0], all[1]) <= 3);
    CHECK(mean_difference(all[0], all[2]) <= 3);
    return all[0];
}

PixelBox dark_box(const Pixels& pixels) {
    PixelBox box{pixels.width, pixels.height, 0, 0};
    for (std::uint32_t y = 0; y < pixels.height; ++y)
        for (std::uint32_t x = 0; x < pixels.width; ++x) {
            const std::uint8_t* p = pixels.at(x, y);
            if (p[0] + p[1] + p[2] >= 3 * 128) continue;
            box = {std::min(box.left, x), std::min(box.top, y), std::max(box.right, x + 1), std::max(box.bottom, y + 1)};
        }
    return box;
}

}  // namespace qw::test
