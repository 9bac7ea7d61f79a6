// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/picture_rules.h"

#include "base/words.h"
#include "checks/said_of_picture.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace qw::checks {

namespace {

void check_extension(const Rules& rules, const ArtworkSeen& seen, Findings& findings) {
    rules.tried("artwork-extension");
    const std::string extension = in_lower_case(seen.shown.substr(std::min(seen.shown.rfind('.'), seen.shown.size())));
    const std::string is = seen.pdf ? "PDF" : seen.picture->kind == artwork::Kind::png ? "PNG" : "JPEG";
    const bool right = seen.pdf ? extension == ".pdf" : seen.picture->kind == artwork::Kind::png ? extension == ".png" : extension == ".jpg" || extension == ".jpeg";
    if (right) return;
    rules.say(findings, of_picture("artwork-extension", seen.shown, 0, is, extension.empty() ? "an extension" : extension,
                                   "The file is of another kind than its name says", "Export it again, or give it the right extension"));
}

void check_density_square(const Rules& rules, const ArtworkSeen& seen, Findings& findings) {
    const auto& density = seen.picture->density;
    rules.tried("artwork-square-pixels");
    if (!density || density->x <= 0 || density->y <= 0) return;
    const double apart = std::abs(density->x / density->y - 1) * 100;
    const double limit = rules.limit("artwork-square-pixels");
    if (apart <= limit) return;
    rules.say(findings,
              of_picture("artwork-square-pixels", seen.shown, 0, in_digits(density->x, "%.1f") + " x " + in_digits(density->y, "%.1f") + " ppi",
                         in_digits(limit, "%g") + " % apart", "Its pixels are not square, so it prints stretched",
                         "Save it with one density for both axes"));
}

/// What JPEG lost on the way, once and for all.
void check_packing(const Rules& rules, const ArtworkSeen& seen, Findings& findings) {
    if (seen.picture->kind != artwork::Kind::jpeg || seen.picture->jpeg_quality <= 0) return;
    rules.tried("artwork-jpeg-quality");
    const double limit = rules.limit("artwork-jpeg-quality");
    if (seen.picture->jpeg_quality >= limit) return;
    rules.say(findings, of_picture("artwork-jpeg-quality", seen.shown, 0, "quality " + std::to_string(seen.picture->jpeg_quality), in_digits(limit, "%g"),
                                   "It was packed so hard that blocks and halos show around lines", "Export it from the original with a higher quality, or as PNG"));
}

/// Share of the cells along a line of the ink map that have ink.
double inked(const InkMap& map, bool column, std::uint32_t at) {
    const std::uint32_t n = column ? map.rows : map.columns;
    std::uint32_t dark = 0;
    for (std::uint32_t i = 0; i < n; ++i) dark += map.mean[column ? map.at(at, i) : map.at(i, at)] >= ink_threshold;
    return n ? static_cast<double>(dark) / n : 0;
}

/// A strip along one edge, no wider than the bleed, that has no ink at all while the picture just inside it is full of it: the
/// ground was not drawn to the edge. What is wider is a margin that was meant.
void check_white_edge(const Rules& rules, const kit::Set& set, const ArtworkSeen& seen, Findings& findings) {
    rules.tried("artwork-white-edge");
    const artwork::Facts& facts = *seen.picture;
    const Ink& ink = facts.ink;
    if (!set.drawn_at || ink.box.empty() || ink.map.columns < 8 || ink.map.rows < 8) return;
    const Size drawn = facts.upright_width() >= facts.upright_height() ? set.drawn_at->as_landscape() : set.drawn_at->as_portrait();
    const double across = drawn.width.in_mm() / facts.upright_width(), down = drawn.height.in_mm() / facts.upright_height();
    const std::array<double, 4> white{ink.box.left * across, (facts.upright_width() - ink.box.right) * across, ink.box.top * down,
                                      (facts.upright_height() - ink.box.bottom) * down};
    static constexpr std::array<const char*, 4> names{"left", "right", "upper", "lower"};
    const double limit = rules.limit("artwork-white-edge"), full = rules.with("artwork-white-edge", "full") / 100;
    const double widest = std::max(set.bleed.in_mm(), rules.with("artwork-white-edge", "no-bleed"));
    for (std::size_t edge = 0; edge < 4; ++edge) {
        if (white[edge] <= limit || white[edge] > widest) continue;
        const bool column = edge < 2;
        const double pitch = (column ? across : down) * ink.map.cell;
        const auto inside = static_cast<std::uint32_t>(white[edge] / pitch) + 2;
        const std::uint32_t n = column ? ink.map.columns : ink.map.rows;
        if (inside >= n || inked(ink.map, column, edge % 2 ? n - 1 - inside : inside) < full) continue;
        rules.say(findings, of_picture("artwork-white-edge", seen.shown, 0, in_digits(white[edge], "%.1f") + " mm at the " + names[edge] + " edge",
                                       in_digits(limit, "%g") + " mm",
                                       "A strip along an edge is white while the picture beside it is not: its ground was not drawn to the edge",
                                       "Draw the ground to the edge of the canvas"));
    }
}

}  // namespace

void check_picture(const Rules& rules, const kit::Set& set, const ArtworkSeen& seen, Findings& findings) {
    if (!seen.damage.empty()) return;
    check_extension(rules, seen, findings);
    if (!seen.picture) return;
    const artwork::Facts& facts = *seen.picture;
    rules.tried("artwork-depth");
    if (facts.bits == 16)
        rules.say(findings, of_picture("artwork-depth", seen.shown, 0, "16 bits a channel", "8 bits", "It has twice the bits that print",
                                       "Export it with 8 bits a channel"));
    rules.tried("artwork-cmyk");
    if (facts.colour == artwork::Colour::cmyk)
        rules.say(findings, of_picture("artwork-cmyk", seen.shown, 0, "CMYK", "RGB",
                                       "Its colours are those of a press; they are converted to sRGB, and bright ones are duller than in the rest of the kit",
                                       "Export it as sRGB, and look at it"));
    rules.tried("artwork-gamut");
    if (facts.farthest_move > rules.limit("artwork-gamut"))
        rules.say(findings, of_picture("artwork-gamut", seen.shown, 0, "up to " + in_digits(facts.farthest_move, "%.1f") + " (CIEDE2000)",
                                       in_digits(rules.limit("artwork-gamut"), "%g"),
                                       "Its profile, " + facts.converted_from + ", has colours that sRGB has not; they are brought to its edge",
                                       "Convert it to sRGB yourself, and look at it"));
    check_packing(rules, seen, findings);
    check_density_square(rules, seen, findings);
    check_white_edge(rules, set, seen, findings);
}

void check_sheet_ink(const Rules& rules, const kit::Set& set, double grammage, const std::vector<double>& coverage, const std::string& path, Findings& findings) {
    for (std::size_t i = 0; i < coverage.size(); ++i) {
        rules.tried("ink-heavy");
        const double percent = coverage[i] * 100;
        if (percent > rules.limit("ink-heavy"))
            rules.say(findings, of_picture("ink-heavy", path, static_cast<int>(i) + 1, in_digits(percent) + " %", in_digits(rules.limit("ink-heavy"), "%g") + " %",
                                           "The page takes so much ink that it comes out wet, and costs the buyer a cartridge for a few copies",
                                           "Lighten its ground"));
    }
    const double thick = rules.with("ink-both-sides", "thick");
    if (set.sides != kit::Sides::duplex || grammage >= thick) return;
    for (std::size_t i = 1; i < coverage.size(); i += 2) {
        rules.tried("ink-both-sides");
        const double percent = (coverage[i - 1] + coverage[i]) * 100;
        if (percent > rules.limit("ink-both-sides"))
            rules.say(findings, of_picture("ink-both-sides", path, static_cast<int>(i) + 1,
                                           in_digits(percent) + " % of both sides together, on " + in_digits(grammage) + " g/m²",
                                           in_digits(rules.limit("ink-both-sides"), "%g") + " %",
                                           "Both sides of thin paper are heavy with ink: it waves, and one shows through the other",
                                           "Lighten one side, or take stock of " + in_digits(thick) + " g/m² or more"));
    }
}

}  // namespace qw::checks
