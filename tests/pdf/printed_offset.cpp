// SPDX-License-Identifier: GPL-3.0-or-later
// What a buyer reads who pushes a pin through a cross of the print check: both sides as finished PDFs, the back printed
// off by a known length, rendered at 600 dpi and read by their pixels alone.
#include "compose/print_check_sheet.h"
#include "compose/scales.h"
#include "kit/read.h"
#include "pdf/fixtures.h"
#include "proof/render.h"
#include "support/fault_disk.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <map>

using namespace qw;
using namespace qw::literals;
using namespace qw::test;

namespace {

constexpr double sharp = 600;

const compose::Document& offset_sheet(compose::Duplex turned) {
    static std::map<compose::Duplex, compose::Document> all;
    if (all.contains(turned)) return all[turned];
    static const kit::Pipeline shipped_data = kit::read_pipeline(*real_disk(), Path(QW_SOURCE_DIR) / "pipeline");
    static kit::Manifest manifest;
    manifest.title = "Sample";
    manifest.version = "1.0.0";
    manifest.prints = {Print::borderless};
    const Paper& paper = *std::find_if(shipped_data.papers.begin(), shipped_data.papers.end(), [](const Paper& p) { return p.short_name == "a4"; });
    return all[turned] = compose::print_check_sheet({manifest, shipped_data, paper, drawing_fonts(), {2026, 9, 1}}, {turned, {100}});
}

void shift(compose::Outline& outline, Length x, Length y) {
    const auto move = [&](Point& p) { p = {p.x + x, p.y + y}; };
    for (auto& step : outline.steps) {
        if (auto* m = std::get_if<compose::Outline::Move>(&step)) move(m->to);
        if (auto* l = std::get_if<compose::Outline::Line>(&step)) move(l->to);
        if (auto* c = std::get_if<compose::Outline::Curve>(&step)) move(c->control1), move(c->control2), move(c->to);
    }
}

/// Only lines: words beside the crosses are of no use here.
proof::Pixels page_of(const compose::Page& page, Length x, Length y) {
    const auto disk = real_disk();
    const TestFolder folder;
    compose::Document document;
    document.pages.push_back({page.size, Rect::of(page.size), Rect::of(page.size), {}});
    for (const compose::Item& item : page.items)
        if (auto outline = std::get_if<compose::Outline>(&item); outline && outline->stroke) {
            compose::Outline moved = *outline;
            shift(moved, x, y);
            document.pages[0].items.push_back(moved);
        }
    pdf::draw(*disk, folder / "a.pdf", document, drawing_fonts());
    return proof::Renderer(folder / "a.pdf").page(1, sharp);
}

double dark(const proof::Pixels& p, long x, long y) {
    if (x < 0 || y < 0 || x >= static_cast<long>(p.width) || y >= static_cast<long>(p.height)) return 0;
    return 1 - p.rgb[(static_cast<std::size_t>(y) * p.width + static_cast<std::size_t>(x)) * 3] / 255.0;
}
long pixels(Length length) { return std::lround(length.in_inches() * sharp); }

/// How far the arm that runs up (or across) lies from a place, in pixels.
double darkest(const proof::Pixels& p, long x, long y, bool up) {
    const long arm = pixels(compose::register_arm) - 4, near = pixels(4_mm);
    double best = 0, weighted = 0, sum = 0;
    std::vector<double> sums;
    for (long i = -near; i <= near; ++i) {
        double along = 0;
        // The arms reach farther out than the squares, on both sides.
        for (long k = pixels(compose::register_reach) + 6; k <= arm; ++k)
            along += up ? dark(p, x + i, y + k) + dark(p, x + i, y - k) : dark(p, x + k, y + i) + dark(p, x - k, y + i);
        sums.push_back(along);
        best = std::max(best, along);
    }
    for (std::size_t i = 0; i < sums.size(); ++i)
        if (sums[i] > best * 0.6) weighted += sums[i] * (static_cast<double>(i) - static_cast<double>(near)), sum += sums[i];
    return weighted / sum;
}

/// Grid lines that a ray from the back's centre to the pin crosses, as a buyer counts squares: whole ones, and half of the
/// one that the pin lies in by its place between the two lines around it.
double squares_to(const proof::Pixels& p, double centre_x, double centre_y, double pin, bool across) {
    // The darkness along a row (or column) a quarter of a square beside the arm, where only the grid's lines stand.
    const long beside = pixels(3.75_mm);
    std::vector<double> lines;
    const long reach = pixels(compose::register_reach) + 8;
    double weighted = 0, sum = 0;
    for (long i = -reach; i <= reach + 1; ++i) {
        const long x = across ? std::lround(centre_x) + i : std::lround(centre_x) + beside, y = across ? std::lround(centre_y) + beside : std::lround(centre_y) + i;
        const double d = dark(p, x, y);
        if (d > 0.1) weighted += d * static_cast<double>(i), sum += d;
        else if (sum > 0) lines.push_back(weighted / sum), weighted = sum = 0;
    }
    const auto zero = std::min_element(lines.begin(), lines.end(), [](double a, double b) { return std::abs(a) < std::abs(b); }) - lines.begin();
    for (std::size_t i = 0; i + 1 < lines.size(); ++i)
        if (lines[i] <= pin && pin < lines[i + 1]) return static_cast<double>(static_cast<long>(i) - zero) + (pin - lines[i]) / (lines[i + 1] - lines[i]);
    return 99;
}

}  // namespace

TEST_CASE("a pin through a cross reads the offset of the back to half a millimetre, on both axes", "[many]") {
    for (const auto turned : {compose::Duplex::flip_long_edge, compose::Duplex::flip_short_edge}) {
        const compose::Document& sheet = offset_sheet(turned);
        const Size paper = sheet.pages[0].size;
        const proof::Pixels front = page_of(sheet.pages[0], {}, {});
        // A cross of the front, found by its small circle.
        Point planned;
        for (const compose::Item& item : sheet.pages[0].items)
            if (const auto* o = std::get_if<compose::Outline>(&item); o && o->steps.size() == 6 && !o->fill)
                planned = {std::get<compose::Outline::Move>(o->steps[0]).to.x - 0.9_mm, std::get<compose::Outline::Move>(o->steps[0]).to.y};
        const long fx = pixels(planned.x), fy = pixels(paper.height - planned.y);
        const double pin_x = static_cast<double>(fx) + darkest(front, fx, fy, true), pin_y = static_cast<double>(fy) + darkest(front, fx, fy, false);
        // Through the sheet: where that is on its back, as the back is held.
        const double back_x = turned == compose::Duplex::flip_long_edge ? static_cast<double>(front.width) - 1 - pin_x : pin_x;
        const double back_y = turned == compose::Duplex::flip_long_edge ? pin_y : static_cast<double>(front.height) - 1 - pin_y;
        const std::vector<std::pair<Length, Length>> offsets = turned == compose::Duplex::flip_long_edge
                                                                   ? std::vector<std::pair<Length, Length>>{{0.5_mm, -1_mm}, {-1.5_mm, 2_mm}}
                                                                   : std::vector<std::pair<Length, Length>>{{0_mm, 0_mm}, {2.5_mm, -0.5_mm}};
        for (const auto& [off_x, off_y] : offsets) {
            INFO("off by " << off_x.in_mm() << ", " << off_y.in_mm() << " mm");
            const proof::Pixels back = page_of(sheet.pages[1], off_x, off_y);
            // Looked for twice: from the pin's hole the arms of a shifted cross are not seen to their ends.
            double centre_x = back_x, centre_y = back_y;
            for (int look = 0; look < 2; ++look) {
                const long x = std::lround(centre_x), y = std::lround(centre_y);
                centre_x = static_cast<double>(x) + darkest(back, x, y, true);
                centre_y = static_cast<double>(y) + darkest(back, x, y, false);
            }
            const double read_x = squares_to(back, centre_x, centre_y, back_x - std::round(centre_x), true);
            const double read_y = squares_to(back, centre_x, centre_y, back_y - std::round(centre_y), false);
            // The back moved one way, so the pin comes out the other way; rows of pixels run down.
            CHECK(std::round(read_x * 2) / 2 == Approx(-off_x.in_mm()).margin(0.001));
            CHECK(std::round(read_y * 2) / 2 == Approx(off_y.in_mm()).margin(0.001));
            CHECK(std::abs(read_x + off_x.in_mm()) < 0.2);
            CHECK(std::abs(read_y - off_y.in_mm()) < 0.2);
        }
    }
}
