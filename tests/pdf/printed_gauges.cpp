// SPDX-License-Identifier: GPL-3.0-or-later
// What a ruler would find on the printed hole jig and gauges: the finished PDF, rendered at 600 dpi, measured in pixels.
#include "compose/gauges_sheet.h"
#include "compose/hole_jig_sheet.h"
#include "compose/jig_strip.h"
#include "compose/print_check_sheet.h"
#include "kit/read.h"
#include "pdf/fixtures.h"
#include "proof/render.h"
#include "support/fault_disk.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace qw;
using namespace qw::literals;
using namespace qw::test;

namespace {

constexpr double dpi = 600;

const kit::Pipeline& shipped() {
    static const kit::Pipeline read = [] {
        const auto disk = real_disk();
        return kit::read_pipeline(*disk, Path(QW_SOURCE_DIR) / "pipeline");
    }();
    return read;
}

journal::Conditions printed_on(const Paper& paper, Print print) {
    const Edition edition{paper, print, print == Print::bordered ? shipped().printer("most-home-printers")->duplex : Margins{}};
    const PrintFit fit = fit_of(edition, true);
    journal::Conditions c;
    c.paper = paper;
    c.print = print;
    c.scale = fit.scale;
    c.page = {fit.sheet.width * fit.scale / 2, fit.sheet.height * fit.scale};
    c.sheets = 12;
    c.page_stock = c.cover_stock = *shipped().stock("copy-100");
    c.board_stock = c.spine_stock = *shipped().stock("greyboard-1mm");
    return c;
}

struct Printed {
    compose::Document document;
    proof::Pixels pixels;        ///< of the first page

    int column(Length x) const { return static_cast<int>(x.in_inches() * dpi); }
    /// Middles of the dark runs down a column, from the paper's upper edge, weighted by how dark their pixels are.
    std::vector<Length> runs_down(Length x) const {
        return runs(pixels.height, [&](std::size_t i) { return darkness(static_cast<std::size_t>(column(x)), i); });
    }
    /// The same along a row, from the left edge.
    std::vector<Length> runs_across(Length down) const {
        return runs(pixels.width, [&](std::size_t i) { return darkness(i, static_cast<std::size_t>(column(down))); });
    }

private:
    double darkness(std::size_t x, std::size_t y) const { return 1 - pixels.rgb[(y * pixels.width + x) * 3] / 255.0; }
    template <class Dark>
    static std::vector<Length> runs(std::size_t count, Dark dark) {
        std::vector<Length> middles;
        double sum = 0, weighted = 0;
        for (std::size_t i = 0; i <= count; ++i) {
            const double d = i < count ? dark(i) : 0;
            if (d > 0.02) {
                sum += d;
                weighted += d * (static_cast<double>(i) + 0.5);
            } else if (sum > 0) {
                middles.push_back(Length::inches(weighted / sum / dpi));
                sum = weighted = 0;
            }
        }
        return middles;
    }
};

Printed printed(const compose::Document& document) {
    const auto disk = real_disk();
    TestFolder folder;
    pdf::draw(*disk, folder / "sheet.pdf", document, drawing_fonts());
    proof::Renderer renderer(folder / "sheet.pdf");
    REQUIRE(renderer.damage().empty());
    return {document, renderer.page(1, dpi)};
}

kit::Manifest manifest() {
    kit::Manifest m;
    m.title = "Sample";
    m.version = "1.0.0";
    m.prints = {Print::borderless, Print::bordered};
    return m;
}

/// The first outline of that weight that is as wide, or as high, as wanted.
std::optional<Rect> outline_of(const compose::Page& page, Length weight, const std::function<bool(const Rect&)>& wanted) {
    for (const compose::Item& item : page.items) {
        const auto* o = std::get_if<compose::Outline>(&item);
        if (!o || o->stroke != weight) continue;
        const Point from = std::get<compose::Outline::Move>(o->steps[0]).to;
        Rect box{from.x, from.y, from.x, from.y};
        for (const auto& step : o->steps)
            if (const auto* line = std::get_if<compose::Outline::Line>(&step))
                box = {min(box.left, line->to.x), min(box.bottom, line->to.y), max(box.right, line->to.x), max(box.top, line->to.y)};
        if (wanted(box)) return box;
    }
    return std::nullopt;
}

void check_gauge(const Printed& print, const Paper& paper) {
    const auto line = outline_of(print.document.pages[0], compose::weight::heavy, [&](const Rect& r) { return r.height() == compose::gauge_length(paper); });
    REQUIRE(line);
    // Beside the line only its two end marks are dark.
    const auto ends = print.runs_down(line->left - 2_mm);
    std::vector<Length> marks;
    for (const Length end : ends)
        if (abs(end - (paper.size.height - line->top)) < 1_mm || abs(end - (paper.size.height - line->bottom)) < 1_mm) marks.push_back(end);
    REQUIRE(marks.size() == 2);
    CHECK((marks[1] - marks[0]).in_mm() == Approx(paper.ruler == UnitSystem::metric ? 200 : 8 * 25.4).margin(0.1));
}

}  // namespace

TEST_CASE("a printed hole jig measures right to a tenth of a millimetre", "[many]") {
    const auto m = manifest();
    for (const Paper& paper : shipped().papers)
        for (const Print print : {Print::borderless, Print::bordered})
            for (const std::string name : {"soft-spine", "case-binding"}) {
                if (paper.short_name != "a4" && paper.short_name != "letter") continue;
                CAPTURE(paper.short_name, name_of(print), name);
                const auto& journal = shipped().journals.at(name);
                const auto measures = journal::compute(journal, printed_on(paper, print));
                const compose::SizeColumn full{"100 %", 100, print, measures};
                const auto jig = compose::hole_jig_sheet({m, shipped(), paper, drawing_fonts(), {}}, full, {full});
                REQUIRE(jig);
                const Printed sheet = printed(*jig);
                check_gauge(sheet, paper);
                const auto strip = outline_of(jig->pages[0], compose::weight::heavy, [](const Rect& r) { return r.width() == compose::jig_width; });
                REQUIRE(strip);
                // Through the arms of the crosses: both ends of the strip, every hole, and the middle.
                std::vector<Length> found;
                for (const Length run : sheet.runs_down(strip->centre().x + 2.5_mm))
                    if (run > paper.size.height - strip->top - 1_mm && run < paper.size.height - strip->bottom + 1_mm) found.push_back(run);
                std::vector<Length> wanted{0_mm, measures.conditions.page.height};
                for (const journal::Shown& station : measures.page_stations) wanted.push_back(station.exact);
                const Length middle = measures.conditions.page.height / 2;
                if (std::none_of(wanted.begin(), wanted.end(), [&](Length w) { return abs(w - middle) < 0.5_mm; })) wanted.push_back(middle);
                std::sort(wanted.begin(), wanted.end());
                REQUIRE(found.size() == wanted.size());
                for (std::size_t i = 0; i < wanted.size(); ++i) CHECK((found[i] - found[0]).in_mm() == Approx(wanted[i].in_mm()).margin(0.1));
            }
}

TEST_CASE("the soft-spine journal's jig has its holes where its pages are pierced") {
    // Common practice, no source: A4 pages pierced at 37, 105 and 173 mm.
    const Paper a4 = *std::find_if(shipped().papers.begin(), shipped().papers.end(), [](const Paper& p) { return p.short_name == "a4"; });
    const auto m = manifest();
    const compose::SizeColumn full{"100 %", 100, Print::borderless, journal::compute(shipped().journals.at("soft-spine"), printed_on(a4, Print::borderless))};
    const Printed sheet = printed(*compose::hole_jig_sheet({m, shipped(), a4, drawing_fonts(), {}}, full, {full}));
    const auto strip = outline_of(sheet.document.pages[0], compose::weight::heavy, [](const Rect& r) { return r.width() == compose::jig_width; });
    std::vector<double> mm;
    for (const Length run : sheet.runs_down(strip->centre().x + 2.5_mm))
        if (run > a4.size.height - strip->top - 1_mm && run < a4.size.height - strip->bottom + 1_mm) mm.push_back((run - (a4.size.height - strip->top)).in_mm());
    REQUIRE(mm.size() == 5);
    const double expected[] = {0, 37, 105, 173, 210};
    for (std::size_t i = 0; i < 5; ++i) CHECK(mm[i] == Approx(expected[i]).margin(0.1));
}

TEST_CASE("a printed gauge for turn-ins measures right to a tenth of a millimetre") {
    const auto m = manifest();
    for (const Paper& paper : shipped().papers) {
        if (paper.short_name != "a4" && paper.short_name != "letter") continue;
        CAPTURE(paper.short_name);
        const auto measures = journal::compute(shipped().journals.at("case-binding"), printed_on(paper, Print::borderless));
        const Length turn_in = measures.named_length("turn-in");
        const Printed sheet = printed(compose::gauges_sheet({m, shipped(), paper, drawing_fonts(), {}}, measures));
        check_gauge(sheet, paper);
        const auto angle = outline_of(sheet.document.pages[0], compose::weight::heavy, [&](const Rect& r) { return r.width() == r.height() && r.width() > 30_mm; });
        REQUIRE(angle);
        // Across the upright leg, near its end: its two edges and nothing else.
        const auto edges = sheet.runs_across(paper.size.height - angle->bottom - 3_mm);
        REQUIRE(edges.size() >= 2);
        CHECK((edges[0]).in_mm() == Approx(angle->left.in_mm()).margin(0.1));
        CHECK((edges[1] - edges[0]).in_mm() == Approx(turn_in.in_mm()).margin(0.1));
        CHECK(turn_in == (paper.ruler == UnitSystem::metric ? 15_mm : 0.625_in));
    }
}
