// SPDX-License-Identifier: GPL-3.0-or-later
// Parts as buyers make them: the released sheets are rendered at 600 dpi, cut out along the lines that are found in the
// pixels and folded along the broken ones. What comes of it is as large as `measure` says.
//
// Tolerance: 0.2 mm. Scissors follow a line that is 0.6 pt, 0.21 mm, wide, anywhere in it: half a line on each of two sides.
#include "program/folded_pixels.h"

#include <catch2/catch.hpp>
#include <zlib.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>

using namespace qw;
using namespace qw::test;

namespace qw::test::cutting {

namespace {

constexpr double tolerance = 0.2;
/// Millimetres: a set's usual bleed, and back-shift and over-fold of pipeline/part-sheets.yaml.
constexpr double bleed = 3, shift = 2;

long long whole_pixels(double mm) { return std::llround(pixels_of(mm)); }

struct PartFolding {
    std::string set;
    PanelNames names;
    std::vector<std::vector<std::string>> folds;             ///< in the order of the template
    std::vector<std::array<std::string, 3>> pockets;         ///< name, front, back
    std::size_t filled_after = 0;                            ///< folds
};

const PartFolding pockets{"pockets",
                          {{"outer", "middle", "inner"}, {"tab-outer", "strip-outer", "strip-middle", "strip-inner", "tab-inner"}},
                          {{"tab-outer"},
                           {"tab-inner"},
                           {"strip-outer", "strip-middle", "strip-inner", "tab-outer", "tab-inner"},
                           {"inner", "strip-inner", "tab-inner"},
                           {"outer", "strip-outer", "tab-outer"}},
                          {{"outer", "strip-outer", "outer"}, {"middle", "strip-middle", "middle"}, {"inner", "strip-inner", "inner"}},
                          3};
const PartFolding tags{"tags", {{"tag"}}, {}, {}, 0};
const PartFolding envelopes{"envelopes",
                            {{"closing"}, {"left", "front", "right"}, {"lower"}},
                            {{"left"}, {"right"}, {"lower"}, {"closing"}},
                            {{"inside", "lower", "front"}},
                            3};

std::string be32(std::uint32_t n) { return {static_cast<char>(n >> 24), static_cast<char>(n >> 16), static_cast<char>(n >> 8), static_cast<char>(n)}; }

std::string png_chunk(const std::string& kind, const std::string& data) {
    const std::string body = kind + data;
    return be32(static_cast<std::uint32_t>(data.size())) + body +
           be32(static_cast<std::uint32_t>(crc32(0, reinterpret_cast<const Bytef*>(body.data()), static_cast<uInt>(body.size()))));
}

/// A pale grey PNG: lines are found on it, and it is told from paper. Enough pixels for the size to pass the audit.
void pale_png(const Path& path, double width_mm, double height_mm) {
    const auto pixels = [](double mm) { return static_cast<std::uint32_t>(std::ceil(mm / 25.4 * 165)); };
    const std::uint32_t width = pixels(width_mm), height = pixels(height_mm);
    std::string rows;
    for (std::uint32_t y = 0; y < height; ++y) rows += std::string(1, '\0') + std::string(width, static_cast<char>(224));
    uLongf size = compressBound(static_cast<uLong>(rows.size()));
    std::string packed(size, '\0');
    REQUIRE(compress2(reinterpret_cast<Bytef*>(packed.data()), &size, reinterpret_cast<const Bytef*>(rows.data()), static_cast<uLong>(rows.size()), 1) == Z_OK);
    packed.resize(size);
    write(path, "\x89PNG\r\n\x1a\n" + png_chunk("IHDR", be32(width) + be32(height) + std::string("\x08\0\0\0\0", 5)) + png_chunk("IDAT", packed) + png_chunk("IEND", ""));
}

const std::string pocket_set = R"(
  pockets:
    role: part
    part: trifold-pocket
    faces: { outside: art/outside.png, strip: art/strip.png, inside: art/outside.png }
    stock: card-160
)";
const std::string other_sets = R"(
  tags:
    role: part
    part: plain-tag
    faces: { outside: art/tag.png, back: art/tag.png }
    stock: card-160
  envelopes:
    role: part
    part: envelope
    faces: { outside: art/front.png, flap: art/flap.png, back: art/lower.png, left: art/side.png, right: art/side.png }
    stock: card-160
)";

/// Parts of the demo's templates, on pale pictures of their panels' size and bleed.
Path pale_kit(const Path& folder, const std::string& paper, const std::string& print, const std::string& sets) {
    const Path kit = folder / "pale-parts";
    write(kit / "kit.yaml", "kit: pale-parts\ntitle: Pale Parts\nversion: 1.0.0\njournal: soft-spine\nprinter: most-home-printers\npapers: [" +
                                paper + "]\nprints: [" + print + "]\nsets:\n" +
                                "  journal-pages: { role: journal-page, files: 'art/page-*.png', drawn-at: 303 x 221.9 mm, stock: copy-100 }\n" +
                                sets);
    for (const char* page : {"page-1", "page-2"}) pale_png(kit / "art" / (page + std::string(".png")), 303, 221.9);
    const std::tuple<const char*, double, double> art[] = {{"outside", 257, 127}, {"strip", 257, 70},   {"tag", 81, 111},    {"front", 136.5, 98.5},
                                                           {"flap", 136.5, 51},   {"lower", 136.5, 68}, {"side", 28.5, 98.5}};
    for (const auto& [name, width, height] : art) pale_png(kit / "art" / (name + std::string(".png")), width, height);
    return kit;
}

/// Where the edition lies.
Path released_edition(const Path& kit, const std::string& paper, const std::string& print, const std::string& options = "") {
    const Path folder = kit.parent_path();
    const Said said = quirewright("release " + quoted(kit.string()) + " --out out " + options, folder);
    INFO(said.text);
    REQUIRE(said.status == 0);
    return folder / "out/pale-parts/1.0.0" / paper / print;
}

nlohmann::json measured_part(const nlohmann::json& measured, const std::string& set) {
    for (const auto& part : measured["parts"])
        if (part["set"] == set) return part;
    FAIL("no part of " + set);
    return {};
}

struct Compared {
    std::string what;
    double seen, said;
    double off() const { return seen - said; }
};

void compare(std::vector<Compared>& all, const std::string& what, Millimetres seen, double width, double height) {
    all.push_back({what + " width", seen.width, width});
    all.push_back({what + " height", seen.height, height});
}

/// Cut out and folded, beside what is said of it.
std::vector<Compared> cut_and_folded(const PartFolding& part, const PrintedSheet& sheet, const CutPiece& cut, const nlohmann::json& said) {
    std::vector<Compared> all;
    const Extent& box = cut.piece.box;
    FoldedPiece piece(cut.piece, broken_lines(sheet, cut.piece), part.names);
    compare(all, "flat", {mm_of(box.width()), mm_of(box.height())}, said["flat"]["width_mm"], said["flat"]["height_mm"]);
    for (const auto& panel : said["panels"]) {
        const std::string name = panel["name"];
        // A glue area is one piece with the flap that it is on: no fold parts them.
        const bool one_piece = part.set == envelopes.set && (name.starts_with("left") || name.starts_with("right"));
        if (!one_piece) compare(all, name, piece.panel_size(name), panel["width_mm"], panel["height_mm"]);
    }
    for (std::size_t i = 0; i < part.folds.size(); ++i) {
        piece.fold(part.folds[i]);
        if (i + 1 != part.filled_after) continue;
        REQUIRE(said["pockets"].size() == part.pockets.size());
        for (std::size_t p = 0; p < part.pockets.size(); ++p) {
            const auto& [name, front, back] = part.pockets[p];
            REQUIRE(said["pockets"][p]["name"] == name);
            compare(all, "pocket " + name, piece.room(front, back), said["pockets"][p]["width_mm"], said["pockets"][p]["depth_mm"]);
        }
    }
    compare(all, "folded", piece.size(), said["folded"]["width_mm"], said["folded"]["height_mm"]);
    return all;
}

void check_sizes(const std::vector<Compared>& all) {
    for (const Compared& one : all) {
        INFO(one.what << ": " << one.seen << " mm seen, " << one.said << " mm said");
        CHECK(std::abs(one.off()) <= tolerance);
    }
}

/// Squares of so many pixels, to look at a whole sheet in little time.
constexpr int cell = 4;

/// Squares no farther from the piece than `reach`, sideways and up and down.
std::vector<std::uint8_t> cells_near(const PrintedSheet& sheet, const Mask& piece, double reach_mm) {
    const int columns = (sheet.width + cell - 1) / cell, rows = (sheet.height + cell - 1) / cell, reach = static_cast<int>(std::ceil(pixels_of(reach_mm) / cell));
    std::vector<std::uint8_t> wide(static_cast<std::size_t>(columns) * rows), near(wide.size());
    for (const Run& run : blobs_of(piece).runs)
        std::fill(&wide[static_cast<std::size_t>(run.y / cell) * columns + std::max(0, run.from / cell - reach)],
                  &wide[static_cast<std::size_t>(run.y / cell) * columns + std::min(columns - 1, (run.to - 1) / cell + reach)] + 1, std::uint8_t{1});
    for (int y = 0; y < rows; ++y)
        for (int from = std::max(0, y - reach); from < std::min(rows, y + reach + 1); ++from)
            for (int x = 0; x < columns; ++x) near[static_cast<std::size_t>(y) * columns + x] |= wide[static_cast<std::size_t>(from) * columns + x];
    return near;
}

/// Around the piece is nothing but the bleed of its picture; lines and words are inside, or well away from it.
void check_surroundings(const PrintedSheet& sheet, const CutPiece& cut, double printed_bleed) {
    const std::vector<std::uint8_t> near = cells_near(sheet, cut.piece, printed_bleed);
    const int columns = (sheet.width + cell - 1) / cell;
    long long bleed_pixels = 0, picture_beyond = 0, dark_in_bleed = 0;
    for (int y = 0; y < sheet.height; ++y)
        for (int x = 0; x < sheet.width; ++x) {
            if (sheet.at(x, y) == 255 || cut.with_line.at(x, y)) continue;
            const bool is_near = near[static_cast<std::size_t>(y / cell) * columns + x / cell];
            if (is_near) (sheet.pale(x, y) ? bleed_pixels : dark_in_bleed) += 1;
            // A flat picture has one grey; smoothed words have all.
            else if (std::abs(sheet.at(x, y) - 224) <= 1 && sheet.at(std::max(0, x - 1), y) == sheet.at(x, y)) ++picture_beyond;
        }
    CHECK(bleed_pixels > whole_pixels(100) * whole_pixels(printed_bleed));
    CHECK(dark_in_bleed == 0);
    CHECK(picture_beyond < whole_pixels(0.5));  // here and there two pixels of a word are alike
}

Extent picture_on_back(const PrintedSheet& back) {
    Extent box{back.width, back.height, 0, 0};
    for (int y = 0; y < back.height; ++y)
        for (int x = 0; x < back.width; ++x) {
            if (back.at(x, y) == 255) continue;
            const int front_x = back.width - 1 - x;
            box = {std::min(box.left, front_x), std::min(box.top, y), std::max(box.right, front_x + 1), std::max(box.bottom, y + 1)};
        }
    return box;
}

/// In one column, as the front has it.
int foot_of_picture(const PrintedSheet& back, int front_x) {
    int y = back.height;
    while (y > 0 && back.at(back.width - 1 - front_x, y - 1) == 255) --y;
    return y;
}

/// How much of the given panels is bare when the back is printed so far off.
long long bare_pixels(const PrintedSheet& back, const Mask& panels, double right_mm, double down_mm) {
    const int right = static_cast<int>(pixels_of(right_mm)), down = static_cast<int>(pixels_of(down_mm));
    long long bare = 0;
    for (int y = panels.box.top; y < panels.box.bottom; ++y)
        for (int x = panels.box.left; x < panels.box.right; ++x)
            if (panels.at(x, y) && !back.pale(back.width - 1 - (x + right), y + down)) ++bare;
    return bare;
}

void check_margins(const Extent& picture, const Extent& panels, double around, double below) {
    constexpr double exactly = 0.1;
    CHECK(mm_of(panels.left - picture.left) == Approx(around).margin(exactly));
    CHECK(mm_of(picture.right - panels.right) == Approx(around).margin(exactly));
    CHECK(mm_of(panels.top - picture.top) == Approx(around).margin(exactly));
    CHECK(mm_of(picture.bottom - panels.bottom) == Approx(below).margin(exactly));
}

/// The back of a tag lies behind its front, and hides a shift to any side.
void check_tag_back(const PrintedSheet& back, const Mask& piece, double around) {
    check_margins(picture_on_back(back), piece.box, around, around);
    const double aslant = shift / std::sqrt(2);
    for (const auto& [right, down] : {std::pair(0.0, 0.0), {shift, 0}, {-shift, 0}, {0, shift}, {0, -shift}, {aslant, aslant}, {-aslant, aslant}})
        CHECK(bare_pixels(back, piece, right, down) == 0);
    CHECK(bare_pixels(back, piece, around + 0.3, 0) > 0);
}

/// The inside of a pocket lies behind its panels above the strip; what the strip covers for good is white.
void check_pocket_back(const PrintedSheet& back, const FoldedPiece& flat, FoldedPiece folded, double around) {
    for (std::size_t i = 0; i < pockets.filled_after; ++i) folded.fold(pockets.folds[i]);
    const Extent outer = flat.place_of("outer"), inner = flat.place_of("inner");
    const int strip_top = folded.place_of("strip-middle").top;
    const Extent seen{outer.left, outer.top, inner.right, strip_top};
    Extent picture = picture_on_back(back);
    picture.bottom = foot_of_picture(back, (outer.left + inner.right) / 2);
    check_margins(picture, seen, around, around);
    const int edge = static_cast<int>(pixels_of(1));  // the picture beside the panels has round corners
    Mask panels(seen), covered({outer.left + edge, strip_top + static_cast<int>(pixels_of(around + 0.5)), inner.right - edge, outer.bottom});
    for (Mask* mask : {&panels, &covered})
        for (int y = mask->box.top; y < mask->box.bottom; ++y)
            for (int x = mask->box.left; x < mask->box.right; ++x) mask->at(x, y) = flat.labels().at(x, y) != 0;
    for (const double right : {0.0, shift, -shift}) CHECK(bare_pixels(back, panels, right, 0) == 0);
    CHECK(bare_pixels(back, panels, 0, -shift) == 0);  // the other way the glued tabs, which stay white, come into sight
    const long long all = std::count(covered.set.begin(), covered.set.end(), 1);
    CHECK(all > 0);
    CHECK(bare_pixels(back, covered, 0, 0) == all);
}

void check_edition(const std::string& paper, const std::string& print) {
    TestFolder folder;
    const Path kit = pale_kit(folder.path(), paper, print, pocket_set + other_sets);
    const Path edition = released_edition(kit, paper, print);
    const auto measured = quirewright_json("measure " + quoted(kit.string()) + " --json --paper " + paper + " --print " + print, folder.path());
    for (const PartFolding* part : {&pockets, &tags, &envelopes}) {
        INFO(part->set << ", " << paper << ", " << print);
        const auto said = measured_part(measured, part->set);
        const double scale = said["scale"];
        const Path pdf = edition / (part->set + ".pdf");
        const PrintedSheet front = printed_sheet(pdf, 1, folder.path() / "scratch");
        const CutPiece cut = cut_out(front);
        check_sizes(cut_and_folded(*part, front, cut, said));
        check_surroundings(front, cut, bleed * scale);
        if (part == &envelopes) continue;
        const PrintedSheet back = printed_sheet(pdf, 2, folder.path() / "scratch");
        REQUIRE(back.width == front.width);
        if (part == &tags) check_tag_back(back, cut.piece, bleed * scale);
        else {
            const FoldedPiece flat(cut.piece, broken_lines(front, cut.piece), part->names);
            check_pocket_back(back, flat, flat, bleed * scale);
        }
    }
}

}  // namespace

TEST_CASE("parts cut out of a borderless letter sheet and folded are as large as measure says", "[cut-and-folded]") { check_edition("letter", "borderless"); }

TEST_CASE("parts cut out of a bordered A4 sheet and folded are as large as measure says", "[cut-and-folded]") { check_edition("a4", "bordered"); }

TEST_CASE("a strip that is 1 mm higher than measure says is seen, and nothing else is", "[cut-and-folded]") {
    TestFolder folder;
    const Path kit = pale_kit(folder.path(), "a4", "bordered", pocket_set), pipeline = folder.path() / "pipeline";
    std::filesystem::copy(source_folder / "pipeline", pipeline, std::filesystem::copy_options::recursive);
    replace_in(pipeline / "parts/trifold-pocket.yaml", "strip: { metric: 64 mm", "strip: { metric: 65 mm");
    const Path edition = released_edition(kit, "a4", "bordered", "--pipeline " + quoted(pipeline.string()));
    const auto said = measured_part(quirewright_json("measure " + quoted(kit.string()) + " --json --paper a4 --print bordered", folder.path()), "pockets");
    const PrintedSheet sheet = printed_sheet(edition / "pockets.pdf", 1, folder.path() / "scratch");
    std::size_t higher = 0;
    for (const Compared& one : cut_and_folded(pockets, sheet, cut_out(sheet), said)) {
        INFO(one.what << ": " << one.seen << " mm seen, " << one.said << " mm said");
        const bool with_strip = one.what.ends_with("height") && (one.what.starts_with("flat") || one.what.starts_with("strip") ||
                                                                 one.what.starts_with("tab") || one.what.starts_with("pocket"));
        CHECK(std::abs(one.off() - (with_strip ? said["scale"].get<double>() : 0)) <= tolerance);
        higher += std::abs(one.off()) > tolerance;
    }
    CHECK(higher == 9);  // the piece, three strips, two tabs, three pockets
}

}  // namespace qw::test::cutting
