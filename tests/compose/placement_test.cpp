// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/document_json.h"
#include "compose/placement.h"

#include "base/fault.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <array>

using namespace qw;
using namespace qw::compose;
using namespace qw::literals;

namespace {

const Paper letter{"na_letter_8.5x11in", "letter", "Letter", {8.5_in, 11_in}, UnitSystem::us};
const Paper a4{"iso_a4_210x297mm", "a4", "A4", {210_mm, 297_mm}, UnitSystem::metric};
// The generic PPD's 18/36 pt, in IPP's 1/100 mm (CUPS test.ppd, cups/pwg.h).
const Margins generic{Length::hundredths_mm(635), Length::hundredths_mm(1270), Length::hundredths_mm(635), Length::hundredths_mm(1270)};

Face picture(std::uint32_t width, std::uint32_t height, std::optional<double> ppi = 300, const std::string& file = "a.png") {
    artwork::Facts facts;
    facts.width = width;
    facts.height = height;
    if (ppi) facts.density = artwork::Density{*ppi, *ppi};
    return {file, PlacedArtwork{file, facts}};
}

/// The studio's master: 303 × 221.9 mm at 300 ppi.
Face master(const std::string& file = "a.png") { return picture(3579, 2621, 300, file); }

kit::Set set_of(kit::Place place, kit::Sides sides = kit::Sides::single) {
    kit::Set set;
    set.name = "journal-pages";
    set.place = place;
    set.sides = sides;
    set.drawn_at = Size{303_mm, 221.9_mm};
    return set;
}

ArtworkDocument composed(const kit::Set& set, const Edition& edition, const std::vector<Face>& faces) {
    kit::Manifest manifest;
    manifest.title = "Sample";
    manifest.version = "1.0.0";
    return artwork_document(manifest, set, edition, faces, Date{2026, 9, 1});
}

Placement one(const kit::Set& set, const Edition& edition, const Face& face) { return composed(set, edition, {face}).pages.at(0); }

bool near(Length a, Length b, Length by = Length::mm(0.001)) { return abs(a - b) <= by; }

/// Where a matrix takes a point, in points.
std::array<double, 2> mapped(const Matrix& m, double x, double y) { return {m.a * x + m.c * y + m.e, m.b * x + m.d * y + m.f}; }

std::vector<FaultNote> faults_of(const std::function<void()>& work) {
    try {
        work();
    } catch (const Fault& fault) {
        return fault.notes();
    }
    return {};
}

}  // namespace

TEST_CASE("artwork as drawn is centred unscaled, and what exceeds the paper is told") {
    const Placement l = one(set_of(kit::Place::as_drawn), {letter, Print::borderless, {}}, master());
    CHECK(l.sheet == Size{11_in, 8.5_in});
    CHECK(l.scale == 1);
    CHECK(near(l.lost.left, 11.8_mm));    // (303 − 279.4) / 2
    CHECK(near(l.lost.right, 11.8_mm));
    CHECK(near(l.lost.top, 3_mm));        // (221.9 − 215.9) / 2
    CHECK(l.white == Sides{});
    CHECK(l.visible == Rect::of(l.sheet));
    const Placement a = one(set_of(kit::Place::as_drawn), {a4, Print::borderless, {}}, master());
    CHECK(near(a.lost.left, 3_mm));       // (303 − 297) / 2
    CHECK(near(a.lost.top, 5.95_mm));     // (221.9 − 210) / 2
    CHECK(a.ppi_x == Approx(300).margin(0.05));
    CHECK(a.ppi_y == Approx(300).margin(0.05));
}

TEST_CASE("artwork that is too small leaves white and loses nothing") {
    kit::Set set = set_of(kit::Place::as_drawn);
    set.drawn_at = Size{200_mm, 100_mm};
    const Placement p = one(set, {a4, Print::borderless, {}}, master());
    CHECK(p.lost == Sides{});
    CHECK(near(p.white.left, 48.5_mm));
    CHECK(near(p.white.bottom, 55_mm));
    CHECK(p.visible == p.artwork);
}

TEST_CASE("cover fills the paper and contain shows all, as CSS Images 3, 5.5 says of object-fit") {
    const Placement cover = one(set_of(kit::Place::cover), {letter, Print::borderless, {}}, master());
    CHECK(near(cover.artwork.height(), 215.9_mm, Length::mm(0.001)));  // the scale is max(279.4/303, 215.9/221.9) = 0.97296
    CHECK(near(cover.artwork.width(), 303_mm * (215.9 / 221.9)));
    CHECK(cover.white == Sides{});
    const Placement contain = one(set_of(kit::Place::contain), {letter, Print::borderless, {}}, master());
    CHECK(near(contain.artwork.width(), 279.4_mm));
    CHECK(contain.lost == Sides{});
    CHECK(near(contain.white.top, (215.9_mm - 221.9_mm * (279.4 / 303)) / 2));
}

TEST_CASE("a bordered page is the borderless page, scaled about its centre and cut to the picture") {
    // 0.9091 and 0.9145: what 18/36 pt leave of letter and A4, derived from the CUPS sample PPD's margins.
    for (const auto& [paper, scale] : {std::pair(letter, 0.9091), std::pair(a4, 0.9145)}) {
        const Edition bordered{paper, Print::bordered, generic};
        const Placement full = one(set_of(kit::Place::as_drawn), {paper, Print::borderless, {}}, master());
        const Placement p = one(set_of(kit::Place::as_drawn), bordered, master());
        CHECK(p.print_scale == Approx(scale).margin(0.00005));
        CHECK(p.scale == Approx(p.print_scale));
        CHECK(near(p.picture.centre().x, Rect::of(p.sheet).centre().x, Length::units(1)));
        CHECK(near(p.picture.centre().y, Rect::of(p.sheet).centre().y, Length::units(1)));
        CHECK(p.visible == p.picture);
        CHECK(fit_of(bordered, true).printable.holds(p.visible, Length::units(1)));
        CHECK(near(p.artwork.width(), full.artwork.width() * p.print_scale));
        CHECK(p.ppi_x == Approx(300 / p.print_scale).epsilon(0.001));
        CHECK(near(p.lost.left, full.lost.left * p.print_scale));
    }
}

TEST_CASE("boxes are nested and the picture is clipped to them") {
    for (const Print print : {Print::borderless, Print::bordered}) {
        const auto made = composed(set_of(kit::Place::as_drawn), {a4, print, generic}, {master()});
        const Page& page = made.document.pages.at(0);
        CHECK(page.size == Size{297_mm, 210_mm});
        CHECK(Rect::of(page.size).holds(page.bleed));
        CHECK(page.bleed.holds(page.trim));
        CHECK(std::get<Picture>(page.items.at(0)).clip == page.trim);
        CHECK((page.trim == Rect::of(page.size)) == (print == Print::borderless));
    }
}

TEST_CASE("margins are only left when the edition is bordered") {
    CHECK(one(set_of(kit::Place::as_drawn), {a4, Print::borderless, generic}, master()).print_scale == 1);
}

TEST_CASE("single sheets are held as their artwork is, duplex sheets as their first") {
    const Face tall = picture(2621, 3579, 300, "b.png");
    const auto single = composed(set_of(kit::Place::as_drawn), {a4, Print::borderless, {}}, {master(), tall});
    CHECK(single.document.pages[0].size == Size{297_mm, 210_mm});
    CHECK(single.document.pages[1].size == Size{210_mm, 297_mm});
    CHECK(near(single.pages[1].lost.top, 3_mm));  // drawn-at is held as the artwork is
    CHECK(single.document.duplex == Duplex::simplex);
    const auto both = composed(set_of(kit::Place::as_drawn, kit::Sides::duplex), {a4, Print::borderless, {}}, {master(), tall});
    CHECK(both.document.pages[1].size == Size{297_mm, 210_mm});
    CHECK(both.document.duplex == Duplex::flip_short_edge);
    const auto upright = composed(set_of(kit::Place::as_drawn, kit::Sides::duplex), {a4, Print::borderless, {}}, {tall, tall});
    CHECK(upright.document.duplex == Duplex::flip_long_edge);
}

TEST_CASE("an odd last back is blank when the set says so, and a fault when it does not") {
    kit::Set set = set_of(kit::Place::as_drawn, kit::Sides::duplex);
    const Edition edition{a4, Print::bordered, generic};
    const auto faults = faults_of([&] { composed(set, edition, {master()}); });
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].code == "odd-faces");
    set.last_back = kit::LastBack{};
    const auto made = composed(set, edition, {master()});
    REQUIRE(made.document.pages.size() == 2);
    CHECK(made.document.pages[1].items.empty());
    CHECK(made.document.pages[1].trim == made.document.pages[0].trim);
    CHECK(!made.pages[1].face);
    CHECK(made.pages[1].visible.empty());
}

TEST_CASE("a named last back is drawn on the back of the odd last sheet, and is blank only when it is not there") {
    kit::Set set = set_of(kit::Place::as_drawn, kit::Sides::duplex);
    set.last_back = kit::LastBack{kit::ArtworkFile{"last.png", "last.png", {}}, {}};
    const Edition edition{letter, Print::borderless, {}};
    const auto made = composed(set, edition, {master("1.png"), master("2.png"), master("3.png"), master("last.png")});
    REQUIRE(made.document.pages.size() == 4);
    REQUIRE(made.document.pages[3].items.size() == 1);
    CHECK(made.document.artwork.at(std::get<Picture>(made.document.pages[3].items[0]).artwork).file == "last.png");
    CHECK(made.pages[3].face == 3);
    CHECK(made.pages[3].artwork == made.pages[2].artwork);
    const auto without = composed(set, edition, {master("1.png"), master("2.png"), master("3.png")});
    REQUIRE(without.document.pages.size() == 4);
    CHECK(without.document.pages[3].items.empty());
    CHECK_FALSE(without.pages[3].face);
}

TEST_CASE("artwork without a size of its own is refused as drawn, all of it in one run, and fits otherwise") {
    kit::Set set = set_of(kit::Place::as_drawn);
    set.drawn_at.reset();
    const std::vector<Face> faces{picture(300, 200, std::nullopt, "a.png"), picture(300, 200, 150, "b.png"), picture(300, 200, std::nullopt, "c.png")};
    const auto faults = faults_of([&] { composed(set, {a4, Print::borderless, {}}, faces); });
    REQUIRE(faults.size() == 2);
    CHECK(faults[1].what == "c.png does not say how large it is");
    CHECK(drawn_size(std::nullopt, faces[1]) == Size{2_in, Length::inches(200.0 / 150)});
    set.place = kit::Place::contain;
    CHECK(near(composed(set, {a4, Print::borderless, {}}, faces).pages[0].artwork.width(), 297_mm));
}

TEST_CASE("damaged artwork leaves its page blank") {
    Face broken = master();
    std::get<PlacedArtwork>(broken.art).facts.damage = "it ends early";
    const auto made = composed(set_of(kit::Place::as_drawn), {a4, Print::borderless, {}}, {broken, master()});
    CHECK(made.document.pages[0].items.empty());
    CHECK(made.pages[0].face == 0u);
    CHECK(made.pages[0].artwork.empty());
    CHECK(made.document.artwork.size() == 1);
}

TEST_CASE("one file is one picture, however often it is drawn") {
    const auto made = composed(set_of(kit::Place::as_drawn), {a4, Print::borderless, {}}, {master("a.png"), master("b.png"), master("a.png")});
    CHECK(made.document.artwork.size() == 2);
    CHECK(std::get<Picture>(made.document.pages[2].items.at(0)).artwork == 0);
}

TEST_CASE("the EXIF turn takes the stored corners to where they belong (CIPA DC-008, tag 0x0112)") {
    // For each value: which sides of the upright picture the stored row 0 and column 0 are.
    struct Turn {
        int value;
        double row_x, row_y;        // middle of row 0 (upper edge of the stored picture) in the upright unit square
        double column_x, column_y;  // middle of column 0
    };
    const Turn turns[] = {{1, .5, 1, 0, .5}, {2, .5, 1, 1, .5}, {3, .5, 0, 1, .5}, {4, .5, 0, 0, .5},
                          {5, 0, .5, .5, 1}, {6, 1, .5, .5, 1}, {7, 1, .5, .5, 0}, {8, 0, .5, .5, 0}};
    for (const Turn& t : turns) {
        CAPTURE(t.value);
        const Matrix m = turned_upright(t.value);
        CHECK(mapped(m, 0.5, 1) == std::array<double, 2>{t.row_x, t.row_y});
        CHECK(mapped(m, 0, 0.5) == std::array<double, 2>{t.column_x, t.column_y});
    }
}

TEST_CASE("a turned picture that is passed through is turned on the page, a recoded one is upright already") {
    Face face = picture(2621, 3579);
    auto& facts = std::get<PlacedArtwork>(face.art).facts;
    facts.kind = artwork::Kind::jpeg;
    facts.turn = 6;
    const Edition edition{a4, Print::borderless, {}};
    const Placement through = one(set_of(kit::Place::as_drawn), edition, face);
    CHECK(through.sheet.landscape());
    const auto top_left = mapped(through.place, 0, 1);  // stored top left is seen at the top right
    CHECK(top_left[0] == Approx(through.artwork.right.in_points()));
    CHECK(top_left[1] == Approx(through.artwork.top.in_points()));
    CHECK(through.ppi_x == Approx(300).margin(0.05));
    facts.passage = artwork::Passage::recoded;
    const auto upright = mapped(one(set_of(kit::Place::as_drawn), edition, face).place, 0, 1);
    CHECK(upright[0] == Approx(through.artwork.left.in_points()));
}

TEST_CASE("pages of PDFs are placed by their crop box and turned as they are shown (ISO 32000-1 table 30)") {
    kit::Set set = set_of(kit::Place::as_drawn);
    set.drawn_at.reset();
    PdfArtwork pdf{"a.pdf", 3, {10_pt, 20_pt, 410_pt, 620_pt}, 0, 1};
    const Edition edition{a4, Print::borderless, {}};
    struct Shown {
        int rotate;
        bool right, top;  // where the crop box's lower left corner is seen
    };
    for (const Shown& s : {Shown{0, false, false}, Shown{90, false, true}, Shown{180, true, true}, Shown{270, true, false}}) {
        CAPTURE(s.rotate);
        pdf.rotate = s.rotate;
        const auto made = composed(set, edition, {Face{"a.pdf", pdf}});
        const Placement& p = made.pages[0];
        CHECK(p.artwork.size() == (s.rotate % 180 == 0 ? Size{400_pt, 600_pt} : Size{600_pt, 400_pt}));
        const auto corner = mapped(p.place, 10, 20);
        CHECK(corner[0] == Approx((s.right ? p.artwork.right : p.artwork.left).in_points()));
        CHECK(corner[1] == Approx((s.top ? p.artwork.top : p.artwork.bottom).in_points()));
        const auto other = mapped(p.place, 410, 620);
        CHECK(other[0] == Approx((s.right ? p.artwork.left : p.artwork.right).in_points()));
        const auto& face = std::get<PdfFace>(made.document.pages[0].items.at(0));
        CHECK(face.page == 3);
        CHECK(face.clip == p.visible);
        CHECK(p.ppi_x == 0);
    }
    pdf.rotate = 0;
    pdf.user_unit = 2;
    CHECK(drawn_size(std::nullopt, Face{"a.pdf", pdf}) == Size{800_pt, 1200_pt});
}

TEST_CASE("a document can be read as JSON") {
    const auto made = composed(set_of(kit::Place::as_drawn), {a4, Print::bordered, generic}, {master()});
    const auto json = nlohmann::json::parse(to_json(made));
    CHECK(json["pages"][0]["size"]["width"] == 297.0);
    CHECK(json["pages"][0]["items"][0]["picture"] == 0);
    CHECK(json["pages"][0]["plan"]["print-scale"].get<double>() == Approx(0.9145).margin(0.00005));
    CHECK(json["date"] == "2026-09-01");
    CHECK(to_json(made) == to_json(composed(set_of(kit::Place::as_drawn), {a4, Print::bordered, generic}, {master()})));
}
