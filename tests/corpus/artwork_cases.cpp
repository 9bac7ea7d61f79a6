// SPDX-License-Identifier: GPL-3.0-or-later
// What is wrong with artwork as it is handed in.
#include "corpus/cases.h"

#include "artwork/jpeg_files.h"
#include "artwork/profiles.h"
#include "artwork/png_files.h"

#include <algorithm>
#include <cmath>

namespace qw::corpus {

namespace {

constexpr double mm = Work::face_ppi / 25.4;  // pixels

std::uint32_t px(double length) { return static_cast<std::uint32_t>(std::lround(length * mm)); }

std::string text_of(const artwork::test::Bytes& bytes) { return {reinterpret_cast<const char*>(bytes.data()), bytes.size()}; }

Change repainted(int face, const std::function<void(Painting&)>& change) {
    return [=](Work& work) { work.repaint(face, change); };
}

/// Every second pixel and so on: the same picture with fewer or more pixels.
Painting resized(const Painting& from, double factor) {
    Painting to{static_cast<std::uint32_t>(std::lround(from.width * factor)), static_cast<std::uint32_t>(std::lround(from.height * factor)), {}};
    to.rgb.resize(std::size_t{to.width} * to.height * 3);
    for (std::uint32_t y = 0; y < to.height; ++y)
        for (std::uint32_t x = 0; x < to.width; ++x)
            std::copy_n(const_cast<Painting&>(from).at(std::min(static_cast<std::uint32_t>(x / factor), from.width - 1),
                                                       std::min(static_cast<std::uint32_t>(y / factor), from.height - 1)),
                        3, to.at(x, y));
    return to;
}

Painting turned(const Painting& from) {
    Painting to{from.height, from.width, std::vector<std::uint8_t>(from.rgb.size())};
    for (std::uint32_t y = 0; y < to.height; ++y)
        for (std::uint32_t x = 0; x < to.width; ++x) std::copy_n(const_cast<Painting&>(from).at(y, x), 3, to.at(x, y));
    return to;
}

/// All faces at another density, their files saying so.
Change all_at(double ppi) {
    return [=](Work& work) {
        for (int face = 1; face <= 4; ++face) work.paint(work.face(face), resized(work.painting(face), ppi / Work::face_ppi), ppi);
    };
}

/// A picture that is handed in as it is, as the kit's only full sheet.
Change covered_by(const std::string& name, const std::string& bytes) {
    return [=](Work& work) {
        std::filesystem::remove(work.kit() / "art/covers/1.png");
        work.write(work.kit() / "art/covers" / name, bytes);
        work.manifest("art/covers/*.png", "art/covers/" + name);
        work.manifest("    place: cover\n", "    place: cover\n    safe-area: 6 mm\n    drawn-at: 297 x 215.9 mm\n");
    };
}

artwork::test::Pixels cover_pixels() {
    artwork::test::Pixels pixels{px(297), px(215.9), {}};
    pixels.rgb.assign(std::size_t{pixels.width} * pixels.height * 3, 0);
    for (std::size_t i = 0; i < pixels.rgb.size(); ++i) pixels.rgb[i] = static_cast<std::uint8_t>(190 + i % 3 * 12);
    return pixels;
}

std::string jpeg(artwork::test::JpegWish::Colour colour) {
    artwork::test::JpegWish wish;
    wish.colour = colour;
    if (colour == artwork::test::JpegWish::Colour::cmyk) wish.icc = artwork::test::plain_cmyk();
    return text_of(artwork::test::write_jpeg(wish, cover_pixels()));
}

std::string png(int type, int bits, bool interlaced = false) {
    artwork::test::PngWish wish;
    wish.width = px(297);
    wish.height = px(215.9);
    wish.type = type;
    wish.bits = bits;
    wish.interlaced = interlaced;
    wish.filters = 0x10;
    return text_of(artwork::test::write_png(wish));
}

Change changed_bytes(int face, const std::function<void(std::string&)>& change) {
    return [=](Work& work) {
        std::string bytes = work.read(work.face(face));
        change(bytes);
        work.write(work.face(face), bytes);
    };
}

Change manifest(const std::string& from, const std::string& to) {
    return [=](Work& work) { work.manifest(from, to); };
}

Change nothing() {
    return [](Work&) {};
}

/// Bars across the picture from one x to another, in mm from its left edge.
void bars(Painting& painting, double left, double right) {
    for (int i = 0; i < 24; ++i) painting.fill(px(left), px(10 + 8 * i), px(right), px(14 + 8 * i), 40, 60, 80);
}

}  // namespace

void add_artwork_cases(std::vector<Case>& cases) {
    const auto add = [&](const char* rule, Change defect, Change near, const char* no_near = "") {
        cases.push_back({rule, Subject::kit, std::move(defect), std::move(near), no_near});
    };
    using Colour = artwork::test::JpegWish::Colour;
    add("artwork-damaged", changed_bytes(2, [](std::string& bytes) { bytes.resize(bytes.size() * 3 / 4); }), nothing());
    add("artwork-damaged", changed_bytes(2, [](std::string& bytes) { bytes[bytes.size() / 2] ^= 8; }), nothing());
    add("artwork-damaged", covered_by("1.jpg", jpeg(Colour::ycc).substr(0, 4000)), covered_by("1.jpg", jpeg(Colour::ycc)));
    add("artwork-damaged", covered_by("1.pdf", plain_pdf(1, 842, 612, false).substr(0, 300)), covered_by("1.pdf", plain_pdf(1, 842, 612, false)));
    add("fonts-embedded", covered_by("1.pdf", plain_pdf(1, 842, 612, true)), covered_by("1.pdf", plain_pdf(1, 842, 612, false)));
    add("artwork-blank", repainted(4, [](Painting& face) { face.fill(0, 0, face.width, face.height, 255, 255, 255); }), repainted(4, [](Painting& face) {
            face.fill(0, 0, face.width, face.height, 255, 255, 255);
            face.fill(300, 300, 400, 400, 200, 200, 200);
        }));
    const auto square_alone = [](std::uint32_t side) {
        return repainted(4, [=](Painting& face) {
            face.fill(0, 0, face.width, face.height, 255, 255, 255);
            face.fill(300, 300, 300 + side, 300 + side, 96, 128, 122);
        });
    };
    const auto ground = [](std::uint8_t r, std::uint8_t g, std::uint8_t b) {
        return repainted(4, [=](Painting& face) {
            face.fill(0, 0, face.width, face.height, r, g, b);
            face.fill(px(60), px(60), px(100), px(100), 96, 128, 122);
        });
    };
    add("palette-outlier", ground(235, 150, 190), ground(214, 210, 200));
    add("artwork-nearly-blank", square_alone(29), square_alone(32));
    add("set-numbering", [](Work& work) { std::filesystem::rename(work.face(4), work.kit() / "art/pages/6.png"); },
        [](Work& work) { std::filesystem::rename(work.face(4), work.kit() / "art/pages/40.png"); });
    const auto extra = [](const std::string& file) {
        return [=](Work& work) {
            std::filesystem::create_directories(work.kit() / "art/extras");
            std::filesystem::copy_file(work.kit() / "art/covers/1.png", work.kit() / "art/extras/label.png");
            work.manifest(
                "rules:",
                "  extras: { role: extra, files: " + file +
                    ", place: contain, safe-area: 7 mm, stock: card-160 }\nrules:\n  artwork-twice: { level: off, reason: the label is the cover }");
        };
    };
    add("set-shares-file", extra("art/covers/1.png"), extra("art/extras/label.png"));
    add("artwork-size-known", [](Work& work) {
            for (int face = 1; face <= 4; ++face) work.paint(work.face(face), work.painting(face), 0);
            work.manifest("    drawn-at: 303 x 221.9 mm\n", "");
        }, [](Work& work) { work.manifest("    drawn-at: 303 x 221.9 mm\n", ""); });
    add(
        "artwork-density-tag", [](Work& work) { work.paint(work.face(2), work.painting(2), 72); },
        [](Work& work) { work.paint(work.face(2), work.painting(2), 151); });
    add("artwork-ppi-low", all_at(100), [](Work& work) {
            all_at(121)(work);
            work.manifest("artwork-ppi: { limit: 140,", "artwork-ppi: { level: off,");
        });
    add("artwork-ppi", all_at(138), all_at(141));
    add(
        "artwork-ppi-high", [](Work& work) { work.manifest("rules:", "rules:\n  artwork-ppi-high: { limit: 149, reason: the pictures are small }"); },
        [](Work& work) { work.manifest("rules:", "rules:\n  artwork-ppi-high: { limit: 165, reason: the pictures are small }"); });
    add("artwork-covers-paper", [](Work& work) { work.manifest("drawn-at: 303 x 221.9 mm\n    bleed: 3 mm", "drawn-at: 292 x 213.9 mm\n    bleed: 0 mm"); },
        [](Work& work) { work.manifest("drawn-at: 303 x 221.9 mm\n    bleed: 3 mm", "drawn-at: 297 x 217.5 mm\n    bleed: 0 mm"); });
    add("artwork-bleed", manifest("bleed: 3 mm", "bleed: 3.2 mm"), manifest("bleed: 3 mm", "bleed: 2.9 mm"));
    add("artwork-safe-area", manifest("safe-area: 6 mm", "safe-area: 2.9 mm"), nothing());
    add("misprint-safe-area", manifest("safe-area: 6 mm", "safe-area: 5.7 mm"), manifest("safe-area: 6 mm", "safe-area: 5.8 mm"));
    add("misprint-shift", manifest("safe-area: 6 mm", "safe-area: 4 mm"), manifest("safe-area: 6 mm", "safe-area: 5.8 mm"));
    add("artwork-recoded", covered_by("1.png", png(6, 8)), covered_by("1.png", png(2, 8)));
    add("artwork-depth", covered_by("1.png", png(2, 16)), covered_by("1.png", png(2, 8)));
    add("artwork-cmyk", covered_by("1.jpg", jpeg(Colour::cmyk)), covered_by("1.jpg", jpeg(Colour::ycc)));
    const auto rgb_with = [](const artwork::test::Bytes& profile) {
        artwork::test::JpegWish wish;
        wish.icc = profile;
        return covered_by("1.jpg", text_of(artwork::test::write_jpeg(wish, cover_pixels())));
    };
    add("artwork-gamut", rgb_with(artwork::test::wide_rgb()), rgb_with(artwork::test::srgb_version_2()));
    const auto densities = [](std::uint32_t down) {
        return changed_bytes(2, [=](std::string& bytes) {
            artwork::test::Bytes file(reinterpret_cast<const std::byte*>(bytes.data()), reinterpret_cast<const std::byte*>(bytes.data()) + bytes.size());
            for (const artwork::test::Found& found : artwork::test::chunks_of(file)) {
                if (found.name != "pHYs") continue;
                for (std::size_t i = 0; i < 4; ++i) file[found.at + 4 + i] = static_cast<std::byte>(down >> (24 - 8 * i));
                artwork::test::mend_sum(file, found);
            }
            bytes = text_of(file);
        });
    };
    add("artwork-square-pixels", densities(6100), densities(5920));
    add("artwork-extension", covered_by("1.png", jpeg(Colour::ycc)), covered_by("1.jpeg", jpeg(Colour::ycc)));
    add("artwork-white-edge", repainted(3, [](Painting& face) { face.fill(0, 0, px(2), face.height, 255, 255, 255); }),
        repainted(3, [](Painting& face) { face.fill(0, 0, 1, face.height, 255, 255, 255); }));
    add("artwork-motif-lost", repainted(3, [](Painting& face) { bars(face, 0, 11); }), repainted(3, [](Painting& face) { bars(face, 13, 24); }));
    add("artwork-motif-in-fold", repainted(3, [](Painting& face) { bars(face, 140, 163); }), repainted(3, [](Painting& face) { bars(face, 120, 147); }));
    // The corpus journal is pierced in the middle of its fold; a block of small squares stands there, or a hand's breadth away.
    const auto dots = [](double from_left) {
        return [=](Painting& face) {
            for (int y = 0; y < 10; ++y)
                for (int x = 0; x < 5; ++x) face.fill(px(from_left + 3 * x), px(96 + 3 * y), px(from_left + 3 * x + 1.5), px(97.5 + 3 * y), 40, 60, 80);
        };
    };
    add("artwork-motif-at-hole", repainted(3, dots(144)), repainted(3, dots(100)));
    const auto packed = [](int quality) {
        artwork::test::JpegWish wish;
        wish.quality = quality;
        return covered_by("1.jpg", text_of(artwork::test::write_jpeg(wish, cover_pixels())));
    };
    add("artwork-jpeg-quality", packed(69), packed(70));
    add(
        "artwork-twice", [](Work& work) { work.paint(work.face(3), work.painting(1)); },
        repainted(3, [](Painting& face) { face.fill(600, 600, 900, 800, 60, 70, 90); }));
    add("artwork-nearly-twice", [](Work& work) {
            Painting face = work.painting(1);
            face.fill(800, 500, 812, 512, 60, 70, 90);
            work.paint(work.face(3), face);
        }, [](Work& work) {
            Painting face = work.painting(1);
            face.fill(800, 500, 960, 660, 60, 70, 90);
            work.paint(work.face(3), face);
        });
    add("artwork-sizes-alike", [](Work& work) { work.paint(work.face(3), resized(work.painting(3), 1.02)); }, all_at(153));
    add(
        "artwork-stretched", [](Work& work) { work.manifest("drawn-at: 303 x 221.9 mm", "drawn-at: 303 x 225 mm"); },
        [](Work& work) { work.manifest("drawn-at: 303 x 221.9 mm", "drawn-at: 303 x 223 mm"); });
    const auto three_covers = [](bool across) {
        return [=](Work& work) {
            Painting cover{px(297), px(215.9), {}};
            cover.rgb.assign(std::size_t{cover.width} * cover.height * 3, 200);
            for (const int number : {2, 3}) {
                cover.fill(px(90), px(40) * static_cast<std::uint32_t>(number), px(150), px(60) * static_cast<std::uint32_t>(number), 90, 100, 120);
                work.paint(work.kit() / "art/covers" / (std::to_string(number) + ".png"), across && number == 3 ? turned(cover) : cover);
            }
        };
    };
    add("mixed-orientation", three_covers(true), three_covers(false));
    add("odd-faces", [](Work& work) { std::filesystem::remove(work.face(4)); }, [](Work& work) {
            std::filesystem::remove(work.face(4));
            work.manifest("    sides: duplex\n", "    sides: duplex\n    last-back: blank\n");
        });
    const auto shaded = [](double level) {
        return [=](Painting& face) {
            face.fill(0, 0, face.width, face.height, static_cast<std::uint8_t>(level), static_cast<std::uint8_t>(level),
                      static_cast<std::uint8_t>(level));
        };
    };
    add("ink-heavy", [=](Work& work) { work.repaint(2, shaded(255 * 0.18)); }, [=](Work& work) {
        work.repaint(2, shaded(255 * 0.22));
        work.manifest("rules:", "rules:\n  palette-outlier: { level: off, reason: one face is dark on purpose }");
    });
    add("ink-both-sides", [=](Work& work) {
            work.repaint(1, shaded(255 * 0.33));
            work.repaint(2, shaded(255 * 0.34));
        }, [=](Work& work) {
            work.repaint(1, shaded(255 * 0.36));
            work.repaint(2, shaded(255 * 0.37));
        });
    add(
        "folder-unused", [](Work& work) { work.paint(work.kit() / "art/drafts/5.png", resized(work.painting(4), 0.1)); },
        [](Work& work) { work.write(work.kit() / "art/drafts/notes.txt", "a draft\n"); });
    const auto deep = [](int folders) {
        return [=](Work& work) {
            Path below = work.kit() / "drafts";
            for (int i = 1; i < folders; ++i) below /= "drafts";
            work.write(below / "note.txt", "x");
        };
    };
    add("folder-looked-through", deep(17), deep(16));
    add("folder-litter", [](Work& work) { work.write(work.kit() / "art/pages/Thumbs.db", "x"); }, [](Work& work) { work.write(work.kit() / "art/notes.txt", "x"); });
    add("folder-names", [](Work& work) { work.write(work.kit() / "art/aux.txt", "x"); }, [](Work& work) { work.write(work.kit() / "art/auxiliary.txt", "x"); });
    add(
        "folder-case-twins",
        [](Work& work) {
            work.write(work.kit() / "art/Notes.txt", "x");
            work.write(work.kit() / "art/notes.txt", "x");
        },
        [](Work& work) {
            work.write(work.kit() / "art/notes-1.txt", "x");
            work.write(work.kit() / "art/notes-2.txt", "x");
        });
}

}  // namespace qw::corpus
