// SPDX-License-Identifier: GPL-3.0-or-later
// usage: bench_decode_and_render JOBS ARTWORK PDFS   (two folders)
// The least that an audit of a kit could cost: each PNG and JPEG decoded once by libpng and libjpeg-turbo, each page of each
// PDF rendered once by the library, and at the resolution, that the audit uses.
#include "bench/plain_decoders.h"
#include "engine/jobs.h"
#include "proof/render.h"
#include "release/page_look.h"

#include <algorithm>
#include <chrono>
#include <string>
#include <vector>

namespace {

std::vector<qw::Path> below(const char* folder, const std::vector<std::string>& extensions) {
    std::vector<qw::Path> files;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder))
        if (entry.is_regular_file() && std::count(extensions.begin(), extensions.end(), entry.path().extension())) files.push_back(entry.path());
    // The largest first, so that no job is left alone with it.
    std::sort(files.begin(), files.end(), [](const auto& a, const auto& b) { return std::filesystem::file_size(a) > std::filesystem::file_size(b); });
    return files;
}

template <typename Work>
double seconds(Work work) {
    const auto begin = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

}  // namespace

int main(int count, char** arguments) {
    if (count != 4) return std::fprintf(stderr, "usage: bench_decode_and_render JOBS ARTWORK PDFS\n"), 2;
    const qw::engine::Jobs jobs(static_cast<unsigned>(std::stoi(arguments[1])));
    const auto artwork = below(arguments[2], {".png", ".jpg"}), pdfs = below(arguments[3], {".pdf"});
    std::vector<int> pages(pdfs.size());
    const double decode = seconds([&] {
        jobs.for_each(artwork.size(), [&](std::size_t i) { artwork[i].extension() == ".png" ? bench::decode_png(artwork[i]) : bench::decode_jpeg(artwork[i]); });
    });
    const double render = seconds([&] {
        jobs.for_each(pdfs.size(), [&](std::size_t i) {
            qw::proof::Renderer renderer(pdfs[i]);
            for (int page = 1; page <= renderer.pages(); ++page) renderer.page(page, qw::release::proof_dpi);
            pages[i] = renderer.pages();
        });
    });
    int all = 0;
    for (const int one : pages) all += one;
    std::printf("%zu pictures decoded in %.2f s, %d pages rendered in %.2f s\n%.2f\n", artwork.size(), decode, all, render, decode + render);
}
