// SPDX-License-Identifier: GPL-3.0-or-later
// The project's own shared data: that it can be read, and that it says what its sources say.
#include "base/digest.h"
#include "base/fault.h"
#include "kit/example.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace qw;

namespace {

const kit::Pipeline& data() {
    static const kit::Pipeline pipeline = [] {
        const auto disk = real_disk();
        return kit::read_pipeline(*disk, Path(QW_SOURCE_DIR) / "pipeline");
    }();
    return pipeline;
}

Margins hundredths(int left, int bottom, int right, int top) {
    return {Length::hundredths_mm(left), Length::hundredths_mm(bottom), Length::hundredths_mm(right), Length::hundredths_mm(top)};
}

}  // namespace

TEST_CASE("papers: letter for the inch ruler, A4 for the metric one") {
    REQUIRE(data().papers.size() == 2);
    const Paper &letter = data().papers[0], &a4 = data().papers[1];
    CHECK(letter.short_name == "letter");
    CHECK(letter.size == Size{Length::inches(8.5), Length::inches(11)});  // PWG 5101.1-2023: na_letter_8.5x11in
    CHECK(letter.ruler == UnitSystem::us);
    CHECK(a4.short_name == "a4");
    CHECK(a4.size == Size{Length::mm(210), Length::mm(297)});  // ISO 216
    CHECK(a4.ruler == UnitSystem::metric);
}

TEST_CASE("what borderless drivers print beyond the paper") {
    // Driver data of 50 inkjets: a canvas of 627.552 by 806.112 pt on letter, and of 47: 610.992 by 855.792 pt on A4,
    // which is 595.44 by 841.68 pt in those drivers.
    const Size beyond = data().borderless_enlargement;
    CHECK(Length::points(612) + beyond.width == Length::points(627.552));
    CHECK(Length::points(792) + beyond.height == Length::points(806.112));
    CHECK(Length::points(595.44) + beyond.width == Length::points(610.992));
    CHECK(Length::points(841.68) + beyond.height == Length::points(855.792));
}

TEST_CASE("printers: margins as published") {
    const auto printer = [](const char* name) {
        INFO(name);
        const kit::Printer* found = data().printer(name);
        REQUIRE(found != nullptr);
        return *found;
    };
    // CUPS, generic PostScript PPD: ImageableArea "18 36 594 756" on letter.
    CHECK(printer("most-home-printers").single == hundredths(635, 1270, 635, 1270));
    CHECK(printer("most-home-printers").duplex == hundredths(635, 1270, 635, 1270));
    // IPP media-*-margin of inkjets, 1/100 mm.
    CHECK(printer("narrow-3mm").single == hundredths(300, 300, 300, 300));
    // HP driver data: letter 18/48/18/9 pt; duplex 18/27/18/36 pt. Points to 1/100 mm as CUPS, cups/pwg.h.
    const auto points = [](int l, int b, int r, int t) { return Margins{pwg_from_points(l), pwg_from_points(b), pwg_from_points(r), pwg_from_points(t)}; };
    CHECK(printer("deep-foot-inkjet").single == points(18, 48, 18, 9));
    CHECK(printer("deep-foot-inkjet").duplex == points(18, 27, 18, 36));
    CHECK(printer("half-inch-foot-inkjet").single == points(18, 36, 18, 9));
    CHECK(printer("all-around-eighth-inch").single == points(9, 9, 9, 9));
    CHECK(printer("all-around-eighth-inch").duplex == points(9, 27, 9, 36));
    CHECK(printer("even-5mm-ends-inkjet").single == points(18, 14, 18, 14));
    // CUPS sample drivers, ppdc/sample.drv: HWMargins.
    CHECK(printer("all-around-sixth-inch").single == points(12, 12, 12, 12));
    CHECK(printer("all-around-quarter-inch").single == points(18, 18, 18, 18));
    CHECK(printer("quarter-sides-laser").single == points(18, 12, 18, 12));
    CHECK(data().printer("no-such-printer") == nullptr);
}

TEST_CASE("stocks: calipers near what the charts say") {
    const auto caliper = [](const char* name) {
        const kit::Stock* stock = data().stock(name);
        REQUIRE(stock != nullptr);
        return stock->caliper.in_mm();
    };
    // Published charts of dealers, "guide only"; sheets of one make differ by 5 %.
    CHECK(caliper("copy-80") == Approx(0.102).epsilon(0.001));   // 80 g/m², 4 points of 0.001 in
    CHECK(caliper("copy-100") == Approx(0.125).epsilon(0.05));   // between 24 and 28 lb bond
    CHECK(caliper("text-120") == Approx(0.1549).epsilon(0.05));  // 81 lb text, 6.1 points
    CHECK(caliper("card-160") == Approx(0.188).epsilon(0.05));   // 60 lb cover, 7.4 points
    CHECK(caliper("card-200") == Approx(0.2286).epsilon(0.05));  // 74 lb cover, 9 points
    CHECK(caliper("greyboard-1mm") == Approx(1));
    CHECK(caliper("greyboard-2mm") == Approx(2));
    CHECK(caliper("cereal-box") == Approx(0.5));  // from memory
    CHECK(data().stock("cereal-box")->printed);
    CHECK_FALSE(data().stock("greyboard-1mm")->printed);
    for (const kit::Stock& stock : data().stocks) {
        INFO(stock.name);
        CHECK((stock.kind == kit::Stock::Kind::board) == stock.grade.empty());
        // Roberts and Etherington, 1982, "board": paper is thinner than 0.012 in, boards are not.
        CHECK((stock.caliper < Length::inches(0.012)) == (stock.kind == kit::Stock::Kind::paper));
        if (stock.kind == kit::Stock::Kind::paper) {
            const double bulk = stock.caliper.in_mm() * 1000 / stock.grammage;
            CHECK(bulk > 1.0);
            CHECK(bulk < 1.45);
        }
    }
}

TEST_CASE("what shops sell: only weights that published tables name") {
    using Weights = std::vector<int>;
    const auto& sold = data().sold_weights;
    CHECK(sold.size() == 4);
    CHECK(sold.at("bond") == Weights{20, 24, 28, 32});  // tables of two paper dealers and a printer
    CHECK(sold.at("text") == Weights{50, 60, 70, 100});  // conversion tables; weight and caliper chart of a paper dealer
    CHECK(sold.at("cover") == Weights{65, 80, 100});     // the same chart
    CHECK(sold.at("index") == Weights{90, 110, 140});    // the same chart
    for (const kit::Stock& stock : data().stocks)
        if (stock.kind == kit::Stock::Kind::paper) CHECK_FALSE(sold.at(stock.grade).empty());
}

TEST_CASE("boards: sheets as people have them, and the usual ones for either ruler") {
    const auto board = [](const char* name) {
        INFO(name);
        const kit::Board* found = data().board(name);
        REQUIRE(found != nullptr);
        return *found;
    };
    CHECK(board("a4-greyboard").size == Size{Length::mm(210), Length::mm(297)});  // ISO 216
    CHECK(board("a3-greyboard").size == Size{Length::mm(297), Length::mm(420)});  // ISO 216
    CHECK(board("chipboard-12in").size == Size{Length::inches(12), Length::inches(12)});
    CHECK(board("chipboard-12in").grain == "unknown");
    CHECK(board("cereal-box-panel").size == Size{Length::mm(190), Length::mm(280)});  // from memory
    CHECK(board("cereal-box-panel").grain == "unknown");
    CHECK(data().usual_boards.at(UnitSystem::metric) == std::vector<std::string>{"a4-greyboard"});
    CHECK(data().usual_boards.at(UnitSystem::us) == std::vector<std::string>{"chipboard-12in"});
}

TEST_CASE("rules: every one says what, why and from where, and limits stand where they are used") {
    std::set<std::string> names;
    for (const kit::CheckSetting& rule : data().checks) {
        INFO(rule.rule);
        names.insert(rule.rule);
        CHECK_FALSE(rule.checks.empty());
        CHECK_FALSE(rule.why.empty());
        CHECK_FALSE(rule.source.empty());
        CHECK(rule.limit.has_value() == !rule.unit.empty());
        CHECK(rule.mark.line > 0);
    }
    for (const char* rule : {"artwork-damaged",   "artwork-ppi",         "artwork-ppi-low",   "artwork-covers-paper", "artwork-bleed",
                             "artwork-safe-area", "artwork-density-tag", "artwork-recoded",   "artwork-blank",        "odd-faces",
                             "mixed-orientation", "page-size",           "page-boxes",        "viewer-preferences",   "output-intent",
                             "fonts-embedded",    "picture-identical",   "picture-placed",    "ink-inside-printable", "ink-to-edge",
                             "page-count",        "file-damaged",        "sheet-text-agrees", "journal-check",        "bundle-names",
                             "bundle-complete",   "bundle-digests",      "bundle-damaged",    "shop-limits",          "record-agrees"}) {
        INFO(rule);
        CHECK(names.count(rule) == 1);
    }
    CHECK(data().check("artwork-ppi")->limit == 1.5 * 150);  // quality factor 1.5 at 150 lpi, trade practice
    CHECK(data().check("artwork-ppi")->level == Level::warning);
    CHECK(data().check("artwork-ppi-low")->limit == 150.0);
    CHECK(data().check("artwork-ppi-low")->level == Level::error);
    // Borderless letter of HP drivers, 627.552 pt for 612 pt: 2.74 mm a side.
    CHECK(Length::points((627.552 - 612) / 2) < Length::mm(*data().check("artwork-safe-area")->limit));
}

TEST_CASE("materials: the usual cautions are said") {
    const auto text = [](const std::string& name) {
        const auto found = std::find_if(data().cautions.begin(), data().cautions.end(), [&](const kit::Caution& c) { return c.name == name; });
        INFO(name);
        REQUIRE(found != data().cautions.end());
        return found->text;
    };
    using Catch::Contains;
    CHECK_THAT(text("blades"), Contains("several light passes") && Contains("steel ruler") && Contains("away from the hand"));
    CHECK_THAT(text("points"), Contains("backing"));
    CHECK_THAT(text("small-parts"), Contains("young children") && Contains("needles"));
    CHECK_THAT(text("elastic-loops"), Contains("young children") && Contains("loop"));
    CHECK_THAT(text("fumes"), Contains("Open a window") && Contains("strong adhesives"));
    CHECK_THAT(text("adults-help"), Contains("adult"));
    CHECK_THAT(text("makers-first"), Contains("come before") && Contains("rules of the place"));
    const auto cautions_of = [](const std::string& name) -> std::vector<std::string> {
        for (const kit::Tool& tool : data().tools)
            if (tool.name == name) return tool.cautions;
        for (const kit::Material& material : data().materials)
            if (material.name == name) return material.cautions;
        FAIL(name);
        return {};
    };
    const auto has = [&](const std::string& thing, const std::string& caution) {
        const auto list = cautions_of(thing);
        return std::find(list.begin(), list.end(), caution) != list.end();
    };
    CHECK(has("craft-knife", "blades"));
    CHECK(has("awl", "points"));
    CHECK(has("needle", "small-parts"));
    CHECK(has("eyelet", "small-parts"));
    CHECK(has("elastic-1mm", "elastic-loops"));
    CHECK(has("pva-glue", "fumes"));
    const auto material = [](const char* name) {
        const auto found = std::find_if(data().materials.begin(), data().materials.end(), [&](const kit::Material& m) { return m.name == name; });
        REQUIRE(found != data().materials.end());
        return *found;
    };
    using Group = kit::Material::Group;
    CHECK(material("linen-thread").group == Group::sewing);
    CHECK(material("hinge-tape").group == Group::glueing);
    CHECK(material("pva-glue").group == Group::glueing);
    CHECK(material("eyelet").group == Group::other);
    CHECK(material("elastic-1mm").allowance == Approx(0.1));  // own allowance
    CHECK(material("pva-glue").allowance == 0);
    for (const kit::Caution& caution : data().cautions) CHECK(caution.always == (caution.name == "makers-first" || caution.name == "adults-help"));
}

TEST_CASE("the demo kits and the starter are read without a fault") {
    const auto disk = real_disk();
    const auto read = [&](const char* folder) {
        std::vector<kit::InputFile> inputs;
        return kit::read_manifest(*disk, Path(QW_SOURCE_DIR) / folder, data(), inputs);
    };
    const kit::Manifest tidewater = read("kits/tidewater-almanac");
    REQUIRE(tidewater.sets.size() == 6);
    CHECK(tidewater.sets[0].files.size() == 24);
    CHECK(tidewater.sets[1].files.size() == 5);
    CHECK(tidewater.sets[2].files.size() == 2);
    CHECK(tidewater.sets[3].faces.at("outside").size() == 6);
    CHECK(*tidewater.sets[4].goes_in == "pockets");
    CHECK(tidewater.sets[4].pocket == "middle");
    CHECK(*tidewater.journal == "soft-spine");
    const kit::Manifest lamplight = read("kits/lamplight-mini");
    CHECK(*lamplight.journal == "wrapped-booklet");
    CHECK(lamplight.sets.at(0).files.at(0).shown == "art/pages.pdf");
    CHECK_FALSE(lamplight.sets[0].drawn_at);
    CHECK(read("pipeline/starter").sets.at(0).files.size() == 4);
}

TEST_CASE("the inputs are every file that was read, sorted, with digests") {
    const auto& inputs = data().inputs;
    CHECK(std::is_sorted(inputs.begin(), inputs.end(), [](const kit::InputFile& a, const kit::InputFile& b) { return a.shown < b.shown; }));
    const auto disk = real_disk();
    std::set<std::string> names;
    for (const kit::InputFile& input : inputs) {
        INFO(input.shown);
        names.insert(input.shown);
        REQUIRE(input.shown.starts_with("pipeline/"));
        CHECK(input.sha256 == sha256_of(read_text(*disk, Path(QW_SOURCE_DIR) / input.shown, 1 << 20)));
    }
    CHECK(names.size() == inputs.size());
    for (const char* name : {"pipeline/papers.yaml", "pipeline/printers.yaml", "pipeline/stocks.yaml", "pipeline/boards.yaml", "pipeline/shops.yaml",
                             "pipeline/studio.yaml", "pipeline/fonts.yaml", "pipeline/checks.yaml", "pipeline/materials.yaml",
                             "pipeline/studio-terms.txt", "pipeline/journals/soft-spine.yaml"}) {
        INFO(name);
        CHECK(names.count(name) == 1);
    }
    CHECK(data().texts.count(data().studio.terms_file) == 1);
    CHECK_THAT(data().texts.at(data().studio.terms_file), Catch::Contains("licensed to practise law"));
}
