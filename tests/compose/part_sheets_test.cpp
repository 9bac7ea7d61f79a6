// SPDX-License-Identifier: GPL-3.0-or-later
// Every shipped part on every edition: what is drawn, and that a sheet's two sides belong together.
#include "compose/part_sheets.h"

#include "base/fault.h"
#include "compose/collisions.h"
#include "compose/document_json.h"
#include "compose/guide_drawing.h"
#include "compose/part_lines.h"
#include "compose/part_samples.h"
#include "parts/printing.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <numbers>

using namespace qw;
using namespace qw::compose;
using namespace qw::literals;

namespace {

constexpr std::size_t count = 6;

struct MadeSheets {
    std::string part;
    const Edition* edition = nullptr;
    const test::SamplePart* sample = nullptr;
    PartDocument made;
};

const std::vector<MadeSheets>& all_parts() {
    static const std::vector<MadeSheets> all = [] {
        std::vector<MadeSheets> list;
        for (const std::string& part : test::part_names())
            for (const std::string paper : {"letter", "a4"})
                for (const Print print : {Print::borderless, Print::bordered}) {
                    const Edition& edition = test::sample_edition(paper, print);
                    list.push_back({part, &edition, &test::sample_part(part, edition.paper.ruler, test::scale_of(edition)),
                                    test::sample_sheets(part, edition, count)});
                }
        return list;
    }();
    return all;
}

void for_every_part(const std::function<void(const MadeSheets&)>& look) {
    for (const MadeSheets& one : all_parts()) {
        INFO(one.part << " on " << one.edition->folder());
        look(one);
    }
}

bool both_sides(const PartDocument& made) { return made.document.duplex != Duplex::simplex; }
bool is_front(const PartDocument& made, std::size_t page) { return !both_sides(made) || page % 2 == 0; }

/// Lines with the cut's weight and no dash that are closed: the cut lines, as straight runs and curves.
std::vector<const Outline*> cut_lines(const Page& page) {
    std::vector<const Outline*> found;
    for (const Item& item : page.items) {
        const auto* outline = std::get_if<Outline>(&item);
        if (outline && outline->stroke == test::pipeline().part_rules.cut.weight && outline->dash.empty() &&
            std::holds_alternative<Outline::Close>(outline->steps.back()))
            found.push_back(outline);
    }
    return found;
}

/// By chords of curves, in mm.
double length_of_outline(const Outline& outline) {
    double sum = 0;
    Point start, here;
    const auto run = [&](Point to) {
        sum += length_of({here, to}).in_mm();
        here = to;
    };
    for (const auto& step : outline.steps) {
        if (const auto* move = std::get_if<Outline::Move>(&step)) start = here = move->to;
        else if (const auto* line = std::get_if<Outline::Line>(&step)) run(line->to);
        else if (const auto* curve = std::get_if<Outline::Curve>(&step)) {
            const Point a = here;
            for (int i = 1; i <= 64; ++i) {
                const double t = i / 64.0, s = 1 - t;
                const auto mix = [&](Length p, Length q, Length r, Length w) {
                    return p * (s * s * s) + q * (3 * s * s * t) + r * (3 * s * t * t) + w * (t * t * t);
                };
                run({mix(a.x, curve->control1.x, curve->control2.x, curve->to.x), mix(a.y, curve->control1.y, curve->control2.y, curve->to.y)});
            }
        } else run(start);
    }
    return sum;
}

double length_of_net(const parts::Net& net) {
    double sum = 0;
    for (const parts::Outline& outline : net.cut) {
        Point here = outline.start;
        for (const auto& edge : outline.edges) {
            if (edge.centre) {
                const double radius = length_of({here, *edge.centre}).in_mm();
                double from = std::atan2((here.y - edge.centre->y).in_mm(), (here.x - edge.centre->x).in_mm());
                double to = std::atan2((edge.to.y - edge.centre->y).in_mm(), (edge.to.x - edge.centre->x).in_mm());
                if (edge.clockwise) std::swap(from, to);
                while (to <= from) to += 2 * std::numbers::pi;
                sum += radius * (to - from);
            } else {
                sum += length_of({here, edge.to}).in_mm();
            }
            here = edge.to;
        }
    }
    return sum;
}

}  // namespace

TEST_CASE("every shipped part fits every edition, and its sheets are as many as they take", "[parts][many]") {
    for_every_part([](const MadeSheets& one) {
        REQUIRE_FALSE(one.made.lack);
        CHECK(one.made.a_sheet >= 1);
        CHECK(one.made.sheets == (count + one.made.a_sheet - 1) / one.made.a_sheet);
        CHECK(one.made.document.pages.size() == one.made.sheets * (both_sides(one.made) ? 2 : 1));
        const bool has_back = std::any_of(one.sample->net.faces.begin(), one.sample->net.faces.end(), [](const auto& f) { return f.side == parts::Side::back; });
        CHECK(both_sides(one.made) == has_back);
        if (both_sides(one.made))
            CHECK(one.made.document.duplex == (one.made.document.pages[0].size.landscape() ? Duplex::flip_short_edge : Duplex::flip_long_edge));
    });
}

TEST_CASE("all that is drawn on a sheet of parts lies in the printable area, which is the trim box", "[many][parts]") {
    for_every_part([](const MadeSheets& one) {
        for (const Page& page : one.made.document.pages) {
            const Rect area = one.edition->print == Print::bordered ? fit_of(*one.edition, page.size.landscape()).printable
                                                                    : Rect::of(page.size).inset(test::pipeline().part_rules.edge_room);
            CHECK(page.trim == area);
            CHECK(page.bleed == area);
            const auto ink = ink_box(page, test::fonts());
            if (ink) CHECK(area.holds(*ink));
            for (const Outline* line : cut_lines(page)) {
                Page alone{page.size, {}, {}, {*line}};
                CHECK(area.inset(*line->stroke / 2).holds(*ink_box(alone, test::fonts()), 0.001_mm));
            }
            for (const Item& item : page.items)
                if (const auto* picture = std::get_if<Picture>(&item)) {
                    CHECK(area.holds(picture->clip));
                    REQUIRE_FALSE(picture->shape.empty());
                    CHECK(area.holds(parts::bounds(picture->shape), 0.001_mm));  // the shape alone keeps it inside, too
                }
        }
    });
}

TEST_CASE("the cut lines of a sheet are as long as those of its parts, and lie on fronts only", "[parts]") {
    for_every_part([](const MadeSheets& one) {
        const double wanted = length_of_net(one.sample->net);
        double drawn = 0;
        for (std::size_t page = 0; page < one.made.document.pages.size(); ++page) {
            const Page& sheet = one.made.document.pages[page];
            for (const Outline* line : cut_lines(sheet)) drawn += length_of_outline(*line);
            if (is_front(one.made, page)) continue;
            for (const Item& item : sheet.items) CHECK(std::holds_alternative<Picture>(item));
        }
        CHECK(drawn == Approx(wanted * count).epsilon(5e-5));  // curves are 0.014 % longer than their arcs
    });
}

TEST_CASE("score lines of a sheet are dashed by their way of folding, and complete", "[parts]") {
    const kit::PartRules& rules = test::pipeline().part_rules;
    REQUIRE(rules.valley.dash != rules.mountain.dash);
    for_every_part([&](const MadeSheets& one) {
        double wanted[2] = {0, 0}, drawn[2] = {0, 0}, samples[2] = {0, 0};
        for (const parts::ScoreLine& score : one.sample->folded.scores) wanted[score.valley] += length_of({score.from, score.to}).in_mm() * count;
        for (const Page& page : one.made.document.pages)
            for (const Item& item : page.items)
                if (const auto* line = std::get_if<Outline>(&item); line && line->steps.size() == 2 && !line->dash.empty()) {
                    const bool valley = line->dash == rules.valley.dash;
                    const double length = length_of_outline(*line);
                    // Samples in the legend are 9 mm long.
                    (std::abs(length - 9) < 1e-6 ? samples : drawn)[valley] += length;
                }
        for (const bool valley : {false, true}) CHECK(drawn[valley] == Approx(wanted[valley]).margin(0.01));
        for (const bool valley : {false, true}) CHECK((samples[valley] > 0) <= (wanted[valley] > 0));
    });
}

TEST_CASE("front and back of every part fall on each other when the sheet is turned over sideways", "[parts]") {
    for_every_part([](const MadeSheets& one) {
        if (!both_sides(one.made)) return;
        for (const PartPicture& back : one.made.pictures) {
            if (back.page % 2 == 0) continue;
            // Where the part lies on its front: the frame of its cut lines, which are drawn part after part.
            const auto cuts = cut_lines(one.made.document.pages[back.page - 1]);
            const std::size_t outlines = one.sample->net.cut.size();
            const std::size_t at = back.part % one.made.a_sheet;
            REQUIRE(cuts.size() >= (at + 1) * outlines);
            const parts::Net& net = one.sample->net;
            // The net's frame leads to the drawn cut line by a quarter turn and a move: the back's frame must go the same way.
            Page alone{{}, {}, {}, {*cuts[at * outlines]}};
            const Rect drawn = *ink_box(alone, test::fonts()), flat = parts::bounds(net.cut[0].region()), frame = net.faces[back.face].frame;
            const double width = one.made.document.pages[back.page].size.width.in_mm();
            const Rect seen{Length::mm(width) - back.trim.right, back.trim.bottom, Length::mm(width) - back.trim.left, back.trim.top};
            bool fits = false;
            for (int turns = 0; turns < 4; ++turns) {
                const auto turned = [&](const Rect& r) {
                    const Point a{r.left, r.bottom}, b{r.right, r.top};
                    const auto t = [&](Point p) {
                        for (int k = 0; k < turns; ++k) p = {-p.y, p.x};
                        return p;
                    };
                    const Point p = t(a), q = t(b);
                    return Rect{min(p.x, q.x), min(p.y, q.y), max(p.x, q.x), max(p.y, q.y)};
                };
                const Rect whole = turned(flat), wanted = turned(frame).moved(drawn.left - whole.left, drawn.bottom - whole.bottom);
                fits = fits || (wanted.holds(seen, 0.01_mm) && seen.holds(wanted, 0.01_mm) && abs(whole.width() - drawn.width()) < 0.01_mm);
            }
            CHECK(fits);
        }
    });
}

TEST_CASE("a back's picture is as upright as its front's, seen after the turn", "[parts]") {
    // Where the middle of the picture's upper edge lies from its middle: on a back that is turned over sideways, left and
    // right change places.
    for_every_part([](const MadeSheets& one) {
        std::size_t index = 0;
        std::vector<const Picture*> drawn;
        for (const Page& page : one.made.document.pages)
            for (const Item& item : page.items)
                if (const auto* picture = std::get_if<Picture>(&item)) drawn.push_back(picture);
        REQUIRE(drawn.size() == one.made.pictures.size());
        std::map<std::pair<std::size_t, int>, std::vector<std::pair<double, double>>> ups;  // by part: up on each side, turned back by the face's head
        for (const PartPicture& told : one.made.pictures) {
            const Matrix& m = drawn[index++]->place;
            CHECK(m.a * m.d - m.b * m.c > 0);  // never mirrored
            const parts::Face& face = one.sample->net.faces[told.face];
            const bool back = face.side == parts::Side::back;
            double x = m.c / std::hypot(m.c, m.d), y = m.d / std::hypot(m.c, m.d);
            for (int k = 0; k < (4 - face.head) % 4; ++k) std::tie(x, y) = std::pair(-y, x);
            ups[{told.part, 0}].emplace_back(back ? -x : x, y);
        }
        for (const auto& [part, all] : ups)
            for (const auto& up : all) {
                CHECK(up.first == Approx(all.front().first).margin(1e-9));
                CHECK(up.second == Approx(all.front().second).margin(1e-9));
            }
    });
}

TEST_CASE("a picture covers its panels and their bleed, and is clipped to what is seen of them", "[many][parts]") {
    for_every_part([](const MadeSheets& one) {
        const double scale = one.sample->net.conditions.scale;
        const kit::PartRules& rules = test::pipeline().part_rules;
        std::vector<const Picture*> drawn;
        for (const Page& page : one.made.document.pages)
            for (const Item& item : page.items)
                if (const auto* picture = std::get_if<Picture>(&item)) drawn.push_back(picture);
        for (std::size_t i = 0; i < drawn.size(); ++i) {
            const PartPicture& told = one.made.pictures[i];
            const parts::Face& face = one.sample->net.faces[told.face];
            CHECK(told.white == Sides{});
            parts::Bleeds bleeds{3_mm * scale, rules.over_fold * scale};
            if (face.side == parts::Side::back) bleeds.outward = max(bleeds.outward, rules.back_shift);
            for (const parts::FaceArea& area : parts::printed(one.sample->net, one.sample->folded, face.side, bleeds))
                if (area.face == told.face) CHECK(parts::area_mm2(drawn[i]->shape) == Approx(parts::area_mm2(area.ink)).epsilon(1e-4));
            CHECK(told.ppi_x == Approx(told.ppi_y));
        }
        CHECK(one.made.saved >= 0);
        CHECK(one.made.saved < 0.5);
    });
}

TEST_CASE("hatching and words lie inside their tabs, where no picture is", "[parts]") {
    for_every_part([](const MadeSheets& one) {
        const PartLines lines = lines_of(one.sample->net, one.sample->folded);
        Canvas canvas({600_mm, 600_mm}, test::fonts());
        draw_part_lines(canvas, lines, {1, 0, 0, 1, 800, 800}, test::pipeline().part_rules, "glue");
        const Page page = std::move(canvas).finish();
        const Matrix moved{1, 0, 0, 1, 800, 800};
        std::vector<parts::Region> tabs;
        for (const parts::Region& tab : lines.tabs) tabs.push_back(parts::mapped(tab, moved));
        const parts::Region all = parts::grown(parts::united(tabs), 0.02_mm);
        for (const Item& item : page.items) {
            if (const auto* text = std::get_if<Text>(&item)) {
                const Rect box = box_of(*text, test::fonts());
                CHECK(parts::without(region_of(box), all).empty());
            }
            const auto* hatch = std::get_if<Outline>(&item);
            if (!hatch || hatch->stroke != test::pipeline().part_rules.hatch_weight || hatch->steps.size() < 4 ||
                !std::holds_alternative<Outline::Move>(hatch->steps[2]))
                continue;
            for (const auto& step : hatch->steps) {
                const Point at = std::holds_alternative<Outline::Move>(step) ? std::get<Outline::Move>(step).to : std::get<Outline::Line>(step).to;
                CHECK(parts::holds(all, at));
            }
        }
        // Pictures reach over the fold onto it, and no farther.
        const parts::Region inner = parts::grown(parts::united(lines.tabs), -1.05_mm);
        for (const parts::FaceArea& area : parts::printed(one.sample->net, one.sample->folded, parts::Side::front, {3_mm, 1_mm}))
            CHECK(parts::area_mm2(parts::shared(area.ink, inner)) < 0.1);
        CHECK(collisions(page, test::fonts(), Rect::of(page.size)).empty());
    });
}

TEST_CASE("no text of a sheet of parts meets a line, a text or the border", "[parts]") {
    for_every_part([](const MadeSheets& one) {
        for (const Page& page : one.made.document.pages)
            for (const Collision& c : collisions(page, test::fonts(), page.trim)) {
                CAPTURE(c.words, c.other);
                FAIL_CHECK("collision");
            }
    });
}

TEST_CASE("the same artwork stands once in a document, however often it is drawn", "[parts]") {
    for_every_part([](const MadeSheets& one) { CHECK(one.made.document.artwork.size() == one.sample->net.faces.size()); });
}

TEST_CASE("the same values give the same sheets of parts", "[parts]") {
    const Edition& edition = test::sample_edition("a4", Print::bordered);
    CHECK(to_json(test::sample_sheets("trifold-pocket", edition, 3).document) == to_json(test::sample_sheets("trifold-pocket", edition, 3).document));
}

TEST_CASE("a part that is larger than the paper is told with what is missing", "[parts]") {
    const Edition small{test::paper("5x7"), Print::borderless, {}};
    const PartDocument made = test::sample_sheets("trifold-pocket", small, 1);
    REQUIRE(made.lack);
    CHECK(made.document.pages.empty());
    CHECK(made.lack->largest_scale < 1);
    CHECK(max(made.lack->width, made.lack->height) > 0_mm);
}

TEST_CASE("artwork that is drawn at its own size must say how large it is", "[parts]") {
    const test::SamplePart& part = test::sample_part("plain-tag");
    kit::Set set;
    set.name = "tags";
    set.place = kit::Place::as_drawn;
    const auto made = [&] {
        return part_document(test::sample_manifest("soft-spine"), set, test::sample_edition("a4", Print::borderless), part.net, part.folded,
                             test::sample_art(part.net, 2), test::pipeline().part_rules, test::fonts(), test::part_labels(), {});
    };
    CHECK_THROWS_AS(made(), Fault);
    set.drawn_at = Size{80_mm, 111_mm};
    const PartDocument sized = made();
    REQUIRE_FALSE(sized.pictures.empty());
    CHECK(sized.pictures[0].scale == Approx(1));
}
