// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/finished_rules.h"

#include "checks/page_geometry.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <iterator>

namespace qw::checks {

namespace {

constexpr double matrix_slack = 0.01;  // points

Finding finding(const std::string& rule, const std::string& file, int page, std::string measured, std::string limit, std::string message) {
    return {rule, Level::error, file, page, 0, std::move(measured), std::move(limit), std::move(message),
            "The finished file is not what was planned; run it again, and report it if it stays"};
}

std::string text_of(const Matrix& m) {
    char text[160];
    std::snprintf(text, sizeof text, "%.3f %.3f %.3f %.3f %.3f %.3f", m.a, m.b, m.c, m.d, m.e, m.f);
    return text;
}

bool same(const Rect& a, const Rect& b) { return a.holds(b, box_slack) && b.holds(a, box_slack); }

bool same(const Matrix& a, const Matrix& b) {
    const auto near = [](double x, double y) { return std::abs(x - y) <= matrix_slack; };
    return near(a.a, b.a) && near(a.b, b.b) && near(a.c, b.c) && near(a.d, b.d) && near(a.e, b.e) && near(a.f, b.f);
}

void check_boxes(const Rules& rules, const compose::Page& plan, const proof::PageFacts& seen, const std::string& path, int number, Findings& findings) {
    rules.tried("page-size");
    if (!same(seen.media, Rect::of(plan.size)) || seen.user_unit != 1 || seen.rotate != 0) {
        rules.say(findings, finding("page-size", path, number, box_text(seen.media), box_text(Rect::of(plan.size)), "The page is not exactly the paper"));
    }
    rules.tried("page-boxes");
    const bool nested = seen.has_trim && seen.has_bleed && seen.media.holds(seen.bleed, box_slack) && seen.bleed.holds(seen.trim, box_slack);
    if (!nested || !same(seen.trim, plan.trim) || !same(seen.bleed, plan.bleed)) {
        rules.say(findings, finding("page-boxes", path, number, "trim " + box_text(seen.trim) + ", bleed " + box_text(seen.bleed),
                                    "trim " + box_text(plan.trim) + ", bleed " + box_text(plan.bleed), "TrimBox and BleedBox are not as planned, or not nested"));
    }
}

/// What a reader of the file sees of a picture's clips: the rectangle that all of them leave (proof/file_facts.h).
Rect left_by_clips(const compose::Picture& picture) {
    std::optional<Rect> around;
    for (const auto& ring : picture.shape)
        for (const Point p : ring) {
            if (!around) around = Rect{p.x, p.y, p.x, p.y};
            around = Rect{min(around->left, p.x), min(around->bottom, p.y), max(around->right, p.x), max(around->top, p.y)};
        }
    return around ? picture.clip.shared_with(*around) : picture.clip;
}

void check_pictures(const Rules& rules, const compose::Document& document, const compose::Page& plan, const proof::PageFacts& seen,
                    const std::string& path, int number, Findings& findings) {
    std::size_t next = 0;
    for (const compose::Item& item : plan.items) {
        const auto* picture = std::get_if<compose::Picture>(&item);
        if (!picture) continue;
        const artwork::Facts& facts = document.artwork[picture->artwork].facts;
        rules.tried("picture-placed");
        if (next >= seen.pictures.size()) {
            rules.say(findings, finding("picture-placed", path, number, "no picture", "one", "The page does not show its picture"));
            return;
        }
        const proof::PlacedPicture& found = seen.pictures[next++];
        const Rect clip = left_by_clips(*picture);
        if (!same(found.place, picture->place) || !found.clip || !same(*found.clip, clip)) {
            rules.say(findings, finding("picture-placed", path, number, text_of(found.place) + (found.clip ? ", clip " + box_text(*found.clip) : ", no clip"),
                                        text_of(picture->place) + ", clip " + box_text(clip), "The picture does not lie where it was planned"));
        }
        if (facts.passage != artwork::Passage::through) continue;
        rules.tried("picture-identical");
        if (found.stream_sha256 != facts.payload_sha256 || found.width != facts.width || found.height != facts.height) {
            rules.say(findings, finding("picture-identical", path, number, found.stream_sha256.substr(0, 16), facts.payload_sha256.substr(0, 16),
                                        "The picture's bytes are not the artwork's"));
        }
    }
    const bool faces = std::any_of(plan.items.begin(), plan.items.end(), [](const compose::Item& i) { return std::holds_alternative<compose::PdfFace>(i); });
    if (!faces && next != seen.pictures.size()) {
        rules.say(findings, finding("picture-placed", path, number, std::to_string(seen.pictures.size()) + " pictures", std::to_string(next),
                                    "The page shows more pictures than planned"));
    }
}

void check_catalog(const Rules& rules, const compose::Document& plan, const proof::FileFacts& seen, const std::string& path, Findings& findings) {
    const char* duplex = plan.duplex == compose::Duplex::simplex           ? "Simplex"
                         : plan.duplex == compose::Duplex::flip_short_edge ? "DuplexFlipShortEdge"
                                                                           : "DuplexFlipLongEdge";
    rules.tried("viewer-preferences");
    if (seen.duplex != duplex)
        rules.say(findings, finding("viewer-preferences", path, 0, seen.duplex.empty() ? "no Duplex" : "Duplex " + seen.duplex,
                                    std::string("Duplex ") + duplex, "The file asks for another flip edge than was planned"));
    rules.tried("file-title");
    if (seen.title != plan.title) rules.say(findings, finding("file-title", path, 0, seen.title, plan.title, "The file's title is not the sheet's"));
}

/// Mean darkness, 0…255, of the artwork at a place of the sheet; negative outside it.
double darkness_at(const Ink& ink, std::uint32_t width, std::uint32_t height, const Rect& area, Point at) {
    const double x = (at.x - area.left) / area.width() * width, y = (area.top - at.y) / area.height() * height;
    if (x < 0 || y < 0 || x >= width || y >= height) return -1;
    const auto column = static_cast<std::uint32_t>(x) / ink.map.cell, row = static_cast<std::uint32_t>(y) / ink.map.cell;
    return ink.map.mean[ink.map.at(std::min(column, ink.map.columns - 1), std::min(row, ink.map.rows - 1))];
}

}  // namespace

void check_finished(const Rules& rules, const compose::Document& plan, const proof::FileFacts& seen, const std::string& path, Findings& findings) {
    if (!seen.damage.empty()) return;  // check_pdf tells of it
    rules.tried("page-count");
    if (seen.pages.size() != plan.pages.size()) {
        rules.say(findings, finding("page-count", path, 0, std::to_string(seen.pages.size()), std::to_string(plan.pages.size()),
                                    "The file has another number of pages than planned"));
        return;
    }
    check_catalog(rules, plan, seen, path, findings);
    for (std::size_t i = 0; i < plan.pages.size(); ++i) {
        const int number = static_cast<int>(i) + 1;
        check_boxes(rules, plan.pages[i], seen.pages[i], path, number, findings);
        check_pictures(rules, plan, plan.pages[i], seen.pages[i], path, number, findings);
    }
}

void check_ink_inside(const Rules& rules, const RenderedPage& seen, const Rect& printable, const std::string& path, Findings& findings) {
    rules.tried("ink-inside-printable");
    const PixelBox& box = seen.ink.box;
    if (box.empty()) return;
    const Length x = seen.size.width / seen.width, y = seen.size.height / seen.height;
    const Rect ink{x * box.left, seen.size.height - y * box.bottom, x * box.right, seen.size.height - y * box.top};
    // A renderer spreads an edge over the pixel that it falls into.
    if (printable.holds(ink, max(x, y) * 1.01)) return;
    rules.say(findings, finding("ink-inside-printable", path, seen.page, "ink " + box_text(ink), "printable " + box_text(printable),
                                "Ink lies where the printer cannot print"));
}

void check_rendered_artwork(const Rules& rules, const RenderedPage& seen, const compose::Placement& placement, const Ink& artwork,
                            std::uint32_t artwork_width, std::uint32_t artwork_height, bool borderless, const std::string& path, Findings& findings) {
    const Rect area = placement.artwork, sheet = Rect::of(placement.sheet), seen_area = placement.visible;
    if (artwork.map.columns == 0 || seen.ink.map.columns == 0 || seen_area.empty()) return;
    const auto planned = [&](Point at) { return darkness_at(artwork, artwork_width, artwork_height, area, at); };
    const auto rendered = [&](Point at) { return darkness_at(seen.ink, seen.width, seen.height, sheet, at); };

    rules.tried("picture-alike");
    constexpr int grid = 96;
    double apart = 0;
    for (int i = 0; i < grid * grid; ++i) {
        const Point at{seen_area.left + seen_area.width() * ((i % grid + 0.5) / grid), seen_area.bottom + seen_area.height() * ((i / grid + 0.5) / grid)};
        apart += (rendered(at) - planned(at)) / (grid * grid);
    }
    const double limit = rules.limit("picture-alike") * 2.55;
    if (std::abs(apart) > limit) {
        char measured[64], most[48];
        std::snprintf(measured, sizeof measured, "%.1f %% darker than the artwork", apart / 2.55);
        std::snprintf(most, sizeof most, "%g %% either way", limit / 2.55);
        rules.say(findings, finding("picture-alike", path, seen.page, measured, most, "The rendered page is not as dark as its artwork"));
    }
    if (!borderless) return;

    rules.tried("ink-to-edge");
    const Length in = Length::mm(0.8);
    const Point corners[4][2] = {{{in, in}, {in, sheet.top - in}}, {{sheet.right - in, in}, {sheet.right - in, sheet.top - in}},
                                 {{in, in}, {sheet.right - in, in}}, {{in, sheet.top - in}, {sheet.right - in, sheet.top - in}}};
    const char* names[4] = {"left", "right", "lower", "upper"};
    for (int edge = 0; edge < 4; ++edge) {
        constexpr int samples = 128;
        int inked = 0, lost = 0;
        for (int i = 0; i < samples; ++i) {
            const double t = (i + 0.5) / samples;
            const Point at{corners[edge][0].x + (corners[edge][1].x - corners[edge][0].x) * t, corners[edge][0].y + (corners[edge][1].y - corners[edge][0].y) * t};
            if (planned(at) < 2 * ink_threshold) continue;
            ++inked;
            if (rendered(at) < ink_threshold / 2) ++lost;
        }
        if (inked == 0 || lost * 100 <= inked * rules.limit("ink-to-edge")) continue;
        rules.say(findings, finding("ink-to-edge", path, seen.page, std::to_string(lost * 100 / inked) + " % of the " + names[edge] + " edge is white",
                                    "0 %", "The artwork has ink at the edge where the finished page has none"));
    }
}

}  // namespace qw::checks
