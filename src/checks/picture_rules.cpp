// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/picture_rules.h"

#include "base/words.h"
#include "checks/motif_edges.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace qw::checks {

namespace {

/// Levels of 255 between neighbouring cells that make an edge: a line of a millimetre in a mid grey on white.
constexpr double edge_levels = 24;
/// Fewer edges are no motif but a speck.
constexpr std::size_t least_edges = 40;

std::string in_digits(double value, const char* form = "%.0f") {
    char text[48];
    std::snprintf(text, sizeof text, form, value);
    return text;
}

Finding of_picture(const char* rule, const std::string& file, int page, std::string measured, std::string limit, std::string message, std::string mend) {
    return {rule, Level::error, file, page, 0, std::move(measured), std::move(limit), std::move(message), std::move(mend)};
}

void check_extension(const Rules& rules, const ArtworkSeen& seen, Findings& findings) {
    rules.tried("artwork-extension");
    const std::string extension = in_lower_case(seen.shown.substr(std::min(seen.shown.rfind('.'), seen.shown.size())));
    const std::string is = seen.pdf ? "PDF" : seen.picture->kind == artwork::Kind::png ? "PNG" : "JPEG";
    const bool right = seen.pdf ? extension == ".pdf" : seen.picture->kind == artwork::Kind::png ? extension == ".png" : extension == ".jpg" || extension == ".jpeg";
    if (!right) rules.say(findings, of_picture("artwork-extension", seen.shown, 0, is, extension.empty() ? "an extension" : extension, "The file is of another kind than its name says", "Export it again, or give it the right extension"));
}

void check_density_square(const Rules& rules, const ArtworkSeen& seen, Findings& findings) {
    const auto& density = seen.picture->density;
    rules.tried("artwork-square-pixels");
    if (!density || density->x <= 0 || density->y <= 0) return;
    const double apart = std::abs(density->x / density->y - 1) * 100;
    if (apart > rules.limit("artwork-square-pixels"))
        rules.say(findings, of_picture("artwork-square-pixels", seen.shown, 0, in_digits(density->x, "%.1f") + " x " + in_digits(density->y, "%.1f") + " ppi", in_digits(rules.limit("artwork-square-pixels"), "%g") + " % apart",
                                    "Its pixels are not square, so it prints stretched", "Save it with one density for both axes"));
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
    const std::array<double, 4> white{ink.box.left * across, (facts.upright_width() - ink.box.right) * across, ink.box.top * down, (facts.upright_height() - ink.box.bottom) * down};
    static constexpr std::array<const char*, 4> names{"left", "right", "upper", "lower"};
    const double limit = rules.limit("artwork-white-edge"), widest = std::max(set.bleed.in_mm(), 1.0);
    for (std::size_t edge = 0; edge < 4; ++edge) {
        if (white[edge] <= limit || white[edge] > widest) continue;
        const bool column = edge < 2;
        const double pitch = (column ? across : down) * ink.map.cell;
        const auto inside = static_cast<std::uint32_t>(white[edge] / pitch) + 2;
        const std::uint32_t n = column ? ink.map.columns : ink.map.rows;
        if (inside >= n || inked(ink.map, column, edge % 2 ? n - 1 - inside : inside) < 0.5) continue;
        rules.say(findings, of_picture("artwork-white-edge", seen.shown, 0, in_digits(white[edge], "%.1f") + " mm at the " + names[edge] + " edge", in_digits(limit, "%g") + " mm",
                                    "A strip along an edge is white while the picture beside it is not: its ground was not drawn to the edge", "Draw the ground to the edge of the canvas"));
    }
}

void check_loss(const Rules& rules, const compose::Placement& p, const Ink& ink, std::uint32_t width, std::uint32_t height, const std::string& shown, const std::string& where, Findings& findings) {
    rules.tried("artwork-motif-lost");
    const MotifEdges edges = motif_edges(ink, width, height, p.artwork, edge_levels, [&](Point at) { return !p.visible.holds({at.x, at.y, at.x, at.y}); });
    if (edges.all < least_edges) return;
    const double share = 100.0 * static_cast<double>(edges.inside) / static_cast<double>(edges.all);
    if (share <= rules.limit("artwork-motif-lost")) return;
    const Length widest = max(max(p.lost.left, p.lost.right), max(p.lost.top, p.lost.bottom));
    rules.say(findings, of_picture("artwork-motif-lost", shown, 0, in_digits(share, "%.1f") + " % of its edges, in a band of up to " + in_digits(widest.in_mm(), "%.1f") + " mm", in_digits(rules.limit("artwork-motif-lost"), "%g") + " %",
                                "Part of the motif is cut away" + where, "Move what matters inward, or draw it nearer to the paper's shape"));
}

void check_fold(const Rules& rules, const compose::Placement& p, const Ink& ink, std::uint32_t width, std::uint32_t height, const std::string& shown, const std::string& where, Findings& findings) {
    if (!p.sheet.landscape()) return;
    rules.tried("artwork-motif-in-fold");
    const Length half = Length::mm(2), fold = p.sheet.width / 2;
    const MotifEdges edges = motif_edges(ink, width, height, p.artwork, edge_levels, [&](Point at) { return p.visible.holds({at.x, at.y, at.x, at.y}) && at.x > fold - half && at.x < fold + half; });
    if (edges.asked == 0) return;
    const double share = 100.0 * static_cast<double>(edges.inside) / static_cast<double>(edges.asked);
    if (share <= rules.limit("artwork-motif-in-fold")) return;
    rules.say(findings, of_picture("artwork-motif-in-fold", shown, 0, in_digits(share) + " % of the fold", in_digits(rules.limit("artwork-motif-in-fold"), "%g") + " %",
                                "A motif stands in the fold, where it is pierced and disappears in the binding" + where, "Move it to one side of the fold"));
}

}  // namespace

void check_picture(const Rules& rules, const kit::Set& set, const ArtworkSeen& seen, Findings& findings) {
    if (!seen.damage.empty()) return;
    check_extension(rules, seen, findings);
    if (!seen.picture) return;
    const artwork::Facts& facts = *seen.picture;
    rules.tried("artwork-depth");
    if (facts.bits == 16) rules.say(findings, of_picture("artwork-depth", seen.shown, 0, "16 bits a channel", "8 bits", "It has twice the bits that print", "Export it with 8 bits a channel"));
    rules.tried("artwork-cmyk");
    if (facts.colour == artwork::Colour::cmyk) rules.say(findings, of_picture("artwork-cmyk", seen.shown, 0, "CMYK", "RGB", "Its colours are those of a press; they are converted to sRGB, and bright ones are duller than in the rest of the kit", "Export it as sRGB, and look at it"));
    rules.tried("artwork-gamut");
    if (facts.farthest_move > rules.limit("artwork-gamut"))
        rules.say(findings, of_picture("artwork-gamut", seen.shown, 0, "up to " + in_digits(facts.farthest_move, "%.1f") + " (CIEDE2000)", in_digits(rules.limit("artwork-gamut"), "%g"), "Its profile, " + facts.converted_from + ", has colours that sRGB has not; they are brought to its edge", "Convert it to sRGB yourself, and look at it"));
    check_density_square(rules, seen, findings);
    check_white_edge(rules, set, seen, findings);
}

void check_motif(const Rules& rules, const kit::Set& set, const Edition& edition, const compose::Placement& p, const Ink& ink, std::uint32_t width, std::uint32_t height,
                 const std::string& shown, Findings& findings) {
    if (!p.face || p.artwork.empty()) return;
    const std::string where = " on " + edition.paper.title;
    if (p.ppi_x > 0) {
        rules.tried("artwork-stretched");
        const double apart = std::abs(p.ppi_x / p.ppi_y - 1) * 100;
        if (apart > rules.limit("artwork-stretched"))
            rules.say(findings, of_picture("artwork-stretched", shown, 0, in_digits(p.ppi_x) + " x " + in_digits(p.ppi_y) + " ppi", in_digits(rules.limit("artwork-stretched"), "%g") + " % apart", "It is stretched: its pixels have not the shape of drawn-at", "Mend drawn-at of set " + set.name + ", or export the file at its shape"));
        rules.tried("artwork-ppi-high");
        if (std::min(p.ppi_x, p.ppi_y) > rules.limit("artwork-ppi-high"))
            rules.say(findings, of_picture("artwork-ppi-high", shown, 0, in_digits(std::min(p.ppi_x, p.ppi_y)) + " ppi", in_digits(rules.limit("artwork-ppi-high")) + " ppi", "It has more pixels than a printer shows, and makes the bundle heavy", "Export it at 300 ppi of its drawn size"));
    }
    // The bordered edition shows the same of the picture, smaller.
    if (edition.print == Print::bordered) return;
    if (set.place != kit::Place::contain) check_loss(rules, p, ink, width, height, shown, where, findings);
    if (set.role == kit::Role::journal_page) check_fold(rules, p, ink, width, height, shown, where, findings);
}

namespace {

/// A picture's darkness on a grid of 24 × 24, so that pictures of any size can be compared.
std::array<double, 576> reduced(const InkMap& map) {
    std::array<double, 576> grid{};
    for (std::size_t y = 0; y < 24; ++y)
        for (std::size_t x = 0; x < 24; ++x) {
            const auto from = [](std::size_t at, std::uint32_t cells) { return static_cast<std::uint32_t>(at * cells / 24); };
            double sum = 0;
            std::size_t n = 0;
            for (std::uint32_t row = from(y, map.rows); row < std::max(from(y + 1, map.rows), from(y, map.rows) + 1); ++row)
                for (std::uint32_t column = from(x, map.columns); column < std::max(from(x + 1, map.columns), from(x, map.columns) + 1); ++column, ++n) sum += map.mean[map.at(column, row)];
            grid[y * 24 + x] = sum / static_cast<double>(n);
        }
    return grid;
}

double apart(const std::array<double, 576>& a, const std::array<double, 576>& b) {
    double sum = 0;
    for (std::size_t i = 0; i < a.size(); ++i) sum += std::abs(a[i] - b[i]);
    return sum / static_cast<double>(a.size());
}

void check_twice(const Rules& rules, const std::vector<PictureSeen>& all, Findings& findings) {
    std::vector<std::array<double, 576>> grids;
    for (const PictureSeen& picture : all) grids.push_back(picture.ink->map.columns ? reduced(picture.ink->map) : std::array<double, 576>{});
    for (std::size_t i = 0; i < all.size(); ++i) {
        rules.tried("artwork-twice");
        rules.tried("artwork-nearly-twice");
        for (std::size_t k = 0; k < i; ++k) {
            if (all[i].shown == all[k].shown || all[i].ink->box.empty() || all[k].ink->box.empty()) continue;
            const bool same_pixels = all[i].width == all[k].width && all[i].height == all[k].height && all[i].ink->map.mean == all[k].ink->map.mean && all[i].ink->coverage == all[k].ink->coverage;
            if (all[i].sha256 == all[k].sha256 || same_pixels) {
                rules.say(findings, of_picture("artwork-twice", all[i].shown, 0, "as " + all[k].shown, "each picture once", "Two files show the same picture", "Look whether one of them was meant to be another picture; where both are meant, name one file twice"));
                break;
            }
            const double difference = apart(grids[i], grids[k]);
            if (difference >= rules.limit("artwork-nearly-twice") || all[i].set != all[k].set) continue;
            rules.say(findings, of_picture("artwork-nearly-twice", all[i].shown, 0, in_digits(difference, "%.2f") + " of 255 levels from " + all[k].shown, in_digits(rules.limit("artwork-nearly-twice"), "%g"), "Two pictures are almost the same", "Look whether one of them is an earlier state of the other"));
            break;
        }
    }
}

}  // namespace

void check_pictures_together(const Rules& rules, const std::vector<PictureSeen>& all, Findings& findings) {
    check_twice(rules, all, findings);
    for (const PictureSeen& picture : all) {
        rules.tried("artwork-sizes-alike");
        const auto of_set = [&](const PictureSeen& other) { return other.set == picture.set; };
        const auto same = [&](const PictureSeen& other) { return of_set(other) && std::max(other.width, other.height) == std::max(picture.width, picture.height) && std::min(other.width, other.height) == std::min(picture.width, picture.height); };
        const auto in_set = std::count_if(all.begin(), all.end(), of_set), alike = std::count_if(all.begin(), all.end(), same);
        if (in_set < 3 || alike * 2 >= in_set) continue;
        rules.say(findings, of_picture("artwork-sizes-alike", picture.shown, 0, std::to_string(picture.width) + " x " + std::to_string(picture.height) + " pixels", "as most of set " + picture.set, "It has another number of pixels than the rest of its set", "Export it as the others were exported"));
    }
}

void check_sheet_ink(const Rules& rules, const kit::Set& set, double grammage, const std::vector<double>& coverage, const std::string& path, Findings& findings) {
    for (std::size_t i = 0; i < coverage.size(); ++i) {
        rules.tried("ink-heavy");
        const double percent = coverage[i] * 100;
        if (percent > rules.limit("ink-heavy"))
            rules.say(findings, of_picture("ink-heavy", path, static_cast<int>(i) + 1, in_digits(percent) + " %", in_digits(rules.limit("ink-heavy"), "%g") + " %", "The page takes so much ink that it comes out wet, and costs the buyer a cartridge for a few copies", "Lighten its ground"));
    }
    if (set.sides != kit::Sides::duplex || grammage >= 120) return;
    for (std::size_t i = 1; i < coverage.size(); i += 2) {
        rules.tried("ink-both-sides");
        const double percent = (coverage[i - 1] + coverage[i]) * 100;
        if (percent > rules.limit("ink-both-sides"))
            rules.say(findings, of_picture("ink-both-sides", path, static_cast<int>(i) + 1, in_digits(percent) + " % of both sides together, on " + in_digits(grammage) + " g/m²", in_digits(rules.limit("ink-both-sides"), "%g") + " %", "Both sides of thin paper are heavy with ink: it waves, and one shows through the other", "Lighten one side, or take stock of 120 g/m² or more"));
    }
}

}  // namespace qw::checks
