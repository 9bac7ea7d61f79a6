// SPDX-License-Identifier: GPL-3.0-or-later
// The clean kit: a few plain pictures whose every edge, motif and colour is known, on one paper in both prints.
#include "corpus/cases.h"

#include "support/shell.h"

#include <cmath>
#include <stdexcept>

namespace qw::corpus {

namespace fs = std::filesystem;

namespace {

constexpr const char* manifest = R"(kit: corpus
title: Corpus
version: 1.0.0
date: 2026-09-01
journal: wrapped-booklet
papers: [letter]
prints: [borderless, bordered]
rights: { made-by: the corpus, allowed-by: own work }
sets:
  pages:
    role: journal-page
    files: art/pages/*.png
    sides: duplex
    drawn-at: 303 x 221.9 mm
    bleed: 3 mm
    safe-area: 6 mm
    stock: copy-100
  covers:
    role: full-sheet
    files: art/covers/*.png
    place: cover
    stock: card-160
    print-at: 100 %
rules:
  artwork-ppi: { limit: 140, reason: small pictures make quick tests }
  artwork-ppi-low: { limit: 120, reason: small pictures make quick tests }
)";

std::uint32_t pixels(double mm) { return static_cast<std::uint32_t>(std::lround(mm / 25.4 * Work::face_ppi)); }

/// A tinted ground with a lattice in the middle of each half: nothing near edges and fold. No two are alike.
Painting page(int number) {
    Painting painting{pixels(303), pixels(221.9), {}};
    painting.rgb.resize(std::size_t{painting.width} * painting.height * 3);
    const auto shade = static_cast<std::uint8_t>(214 - 3 * number);
    painting.fill(0, 0, painting.width, painting.height, shade, 222, 226);
    for (const double left : {50.0, 190.0})
        for (int i = 0; i < 4 + number; ++i) {
            const std::uint32_t x = pixels(left + 8 * i), y = pixels(70 + 9 * ((i * number) % 7));
            painting.fill(x, y, x + pixels(5), y + pixels(30), 96, static_cast<std::uint8_t>(110 + 6 * number), 122);
        }
    return painting;
}

Painting cover() {
    Painting painting{pixels(297), pixels(215.9), {}};
    painting.rgb.resize(std::size_t{painting.width} * painting.height * 3);
    painting.fill(0, 0, painting.width, painting.height, 196, 214, 220);
    painting.fill(pixels(120), pixels(80), pixels(180), pixels(130), 104, 120, 130);
    return painting;
}

void run(const std::string& arguments, const Path& folder) {
    const test::Said said = test::run(test::quoted(QW_PROGRAM) + " " + arguments + " 2>&1", folder);
    if (said.status != 0) throw std::runtime_error("the clean kit: " + arguments + "\n" + said.text);
}

}  // namespace

void make_clean(const Path& folder) {
    fs::create_directories(folder / "seed/kit");
    fs::create_directories(folder / "seed/out");
    const Work seed(folder / "seed", folder);
    seed.write(seed.kit() / "kit.yaml", manifest);
    for (int number = 1; number <= 4; ++number) seed.paint(seed.face(number), page(number));
    seed.paint(seed.kit() / "art/covers/1.png", cover());
    run("release kit --out out", folder);
    run("audit kit --out out", folder);  // what it finds out is kept for every copy
    run("audit out/corpus/1.0.0", folder);
}

std::vector<ForeignPacker> foreign_packers() {
    return {{"zip", "zip -qr foreign.zip 'My Kit'"},
            {"zip, as a stream", "zip -qr - 'My Kit' | cat >foreign.zip"},
            {"Python", "python3 -m zipfile -c foreign.zip 'My Kit'"},
            {"bsdtar", "bsdtar --format zip -cf foreign.zip 'My Kit'"}};
}

void pack_foreign(const Work& work, const ForeignPacker& packer) {
    const Path kit = work.folder() / "My Kit";
    work.write(kit / "Page 1.pdf", work.read(work.release() / "letter/borderless/pages.pdf"));
    work.write(kit / "For your covers/Cover (1).pdf", work.read(work.release() / "letter/borderless/covers.pdf"));
    work.write(kit / "Read me.txt", "Print, fold and sew.\n");
    const test::Said said = test::run(packer.command + " 2>&1", work.folder());
    if (said.status != 0) throw std::runtime_error(packer.name + ": " + said.text);
    work.write(work.zip(), work.read(work.folder() / "foreign.zip"));
}

}  // namespace qw::corpus
