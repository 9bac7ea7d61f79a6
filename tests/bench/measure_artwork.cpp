// SPDX-License-Identifier: GPL-3.0-or-later
// bench_measure_artwork FILE…: how long `look` takes (reading, hashing, decoding, measuring ink) beside reading and
// decoding the same files with libpng and libjpeg-turbo alone, one core, best of several rounds, in the same run.
#include "artwork/facts.h"
#include "bench/plain_decoders.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <string>

namespace {

constexpr int rounds = 7;

template <typename Work>
double milliseconds(Work work) {
    const auto begin = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begin).count();
}

}  // namespace

int main(int count, char** names) {
    const auto disk = qw::real_disk();
    double ours = 0, reference = 0;
    for (int i = 1; i < count; ++i) {
        const std::string path = names[i];
        const qw::artwork::Facts facts = qw::artwork::look(*disk, path);
        if (!facts.damage.empty()) {
            std::fprintf(stderr, "%s: %s\n", path.c_str(), facts.damage.c_str());
            return 1;
        }
        double look = 1e12, decode = 1e12;
        for (int round = 0; round < rounds; ++round) {
            look = std::min(look, milliseconds([&] { qw::artwork::look(*disk, path); }));
            decode = std::min(decode, milliseconds([&] { facts.kind == qw::artwork::Kind::png ? bench::decode_png(path) : bench::decode_jpeg(path); }));
        }
        std::printf("%8.2f ms look %8.2f ms decode  %.2f  %s\n", look, decode, look / decode, path.c_str());
        ours += look;
        reference += decode;
    }
    if (count > 1) std::printf("%8.2f ms look %8.2f ms decode  %.2f  all\n", ours, reference, ours / reference);
    return count > 1 ? 0 : 2;
}
