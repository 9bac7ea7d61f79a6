// SPDX-License-Identifier: GPL-3.0-or-later
// What is told of shared data that is wrong: with the file's own name, line and column, all files in one run.
#include "base/fault.h"
#include "kit/example.h"
#include "kit/small_pipeline.h"

#include <catch2/catch.hpp>

#include <filesystem>

using namespace qw;
using namespace qw::test;

TEST_CASE("the small pipeline is read") {
    const SmallPipeline pipeline;
    const kit::Pipeline read = pipeline.read();
    CHECK(read.stock("p")->caliper == Length::mm(0.125));  // ISO 534: 1.25 cm³/g × 100 g/m² = 0.125 mm
    CHECK(read.stock("b")->grammage == 615);
    CHECK(read.shop("s")->most_bytes_a_file == 20'000'000u);
    CHECK(read.shop("s")->most_files == 5);
    CHECK(read.usual.at("printer").value == "plain");
    CHECK(read.usual.at("board-stock").value == "b");
    CHECK(read.texts.at("terms.txt") == "terms\n");
    CHECK(read.sold_weights == std::map<std::string, std::vector<int>>{{"bond", {20, 24}}, {"text", {50}}, {"cover", {65, 80}}, {"index", {90}}});
    REQUIRE(read.board("sheet") != nullptr);
    CHECK(read.board("sheet")->size == Size{Length::mm(210), Length::mm(297)});
    CHECK(read.board("sheet")->grain == "height");
    CHECK(read.board("square")->size == Size{Length::inches(12), Length::inches(12)});
    CHECK(read.board("square")->grain == "unknown");
    CHECK(read.board("square")->title == "Q");
    CHECK(read.board("squares") == nullptr);
    CHECK(read.usual_boards.at(UnitSystem::metric) == std::vector<std::string>{"sheet"});
    CHECK(read.usual_boards.at(UnitSystem::us) == std::vector<std::string>{"square", "sheet"});
    REQUIRE(read.materials.size() == 4);
    CHECK(read.materials[0].group == kit::Material::Group::sewing);
    CHECK(read.materials[0].allowance == Approx(0.1));
    CHECK(read.materials[1].group == kit::Material::Group::glueing);
    CHECK(read.materials[1].allowance == 0);
    CHECK_FALSE(read.stock("b")->printed);
}

TEST_CASE("a board may be printed, materials stand in five groups") {
    SmallPipeline pipeline;
    pipeline.put("stocks.yaml", with(pipeline.text("stocks.yaml"), "caliper: 1 mm", "printed: true, caliper: 0.5 mm"));
    CHECK(pipeline.read().stock("b")->printed);
    using Group = kit::Material::Group;
    const std::pair<const char*, Group> groups[] = {
        {"paper", Group::paper}, {"board", Group::board}, {"sewing", Group::sewing}, {"glueing", Group::glueing}, {"other", Group::other}};
    for (const auto& [word, group] : groups) {
        SmallPipeline other;
        other.put("materials.yaml", with(other.text("materials.yaml"), "group: sewing", std::string("group: ") + word));
        CHECK(other.read().materials.at(0).group == group);
    }
}

TEST_CASE("faults in shared data") {
    REQUIRE(SmallPipeline().told().empty());
    check_broken({
        {"papers.yaml", "format: 1\npapers", "▸papers", "missing-key"},
        {"papers.yaml", "format: 1", "format: ▸2", "out-of-range"},
        {"papers.yaml", "iso_a4_210x297mm", "▸iso_a4_210x297in", "bad-paper"},
        {"papers.yaml", "iso_a4_210x297mm", "▸iso_a4_297x210mm", "bad-paper"},
        {"papers.yaml", "ruler: metric", "ruler: ▸inch", "unknown-word"},
        {"papers.yaml", "{ name: iso_a4_210x297mm, title: A4, ruler: metric, source: ISO 216 }",
         "▸{ name: iso_a4_210x297mm, title: A4, ruler: metric }", "missing-key"},
        {"papers.yaml", "  a4: { name", "  b4: { name: iso_a4_210x297mm, title: A4, ruler: metric, why: w }\n  a4: { ▸name", "duplicate-name"},
        {"printers.yaml", "left: 300", "left: ▸3 mm", "wrong-type"},
        {"printers.yaml", "left: 300", "left: ▸300.5", "wrong-type"},
        {"printers.yaml", "left: 300", "left: ▸-1", "out-of-range"},
        {"printers.yaml", "left: 300", "left: ▸5001", "out-of-range"},
        {"printers.yaml", "left: 300", "left: ▸'300'", "wrong-type"},
        {"printers.yaml", "{ left: 300, ", "▸{ ", "missing-key"},
        {"printers.yaml", "usual: plain", "usual: ▸plane", "unknown-name"},
        {"printers.yaml", "{ width: 5 mm, height: 4 mm, why: test }", "▸{ width: 5 mm, why: test }", "missing-key"},
        {"printers.yaml", "{ width: 5 mm, height: 4 mm, why: test }", "▸{ width: 5 mm, height: 4 mm }", "missing-key"},
        {"printers.yaml", "height: 4 mm", "height: ▸4", "bare-number"},
        {"printers.yaml", "height: 4 mm", "height: ▸61 mm", "out-of-range"},
        {"stocks.yaml", "100 g/m2", "▸100", "bare-number"},
        {"stocks.yaml", "100 g/m2", "▸27 lb", "unknown-unit"},
        {"stocks.yaml", "100 g/m2", "▸10 g/m2", "out-of-range"},
        {"stocks.yaml", "{ title: P, kind: paper, grammage: 100 g/m2, bulk: 1.25 cm3/g,", "▸{ title: P, kind: paper, grammage: 100 g/m2,",
         "missing-key"},
        {"stocks.yaml", "bulk: 1.25 cm3/g", "▸bulk: 1.25 cm3/g, caliper: 0.1 mm", "not-here"},
        {"stocks.yaml", "{ title: P, kind: paper, grammage: 100 g/m2, bulk: 1.25 cm3/g, grade: bond",
         "▸{ title: P, kind: paper, grammage: 100 g/m2, bulk: 1.25 cm3/g", "missing-key"},
        {"stocks.yaml", "caliper: 1 mm", "caliper: 1 mm, ▸grade: bond", "not-here"},
        {"stocks.yaml", "board-stock: b", "board-stock: ▸p", "unknown-name"},
        {"stocks.yaml", "{ journal-page: p, full-sheet: p, part: p, extra: p,", "▸{ journal-page: p, full-sheet: p, part: p,", "missing-key"},
        {"shops.yaml", "20 MB", "▸20", "bare-number"},
        {"shops.yaml", "most-files: 5", "most-files: ▸none", "wrong-type"},
        {"studio.yaml", "terms.txt", "▸../terms.txt", "bad-path"},
        {"checks.yaml", "level: error", "level: ▸fatal", "unknown-word"},
        {"checks.yaml", "limit: 3, unit", "▸unit", "not-here"},
        {"checks.yaml", "{ level: error, limit: 3, unit: mm, checks: c, why: w, source: s }",
         "▸{ level: error, limit: 3, unit: mm, checks: c, why: w }", "missing-key"},
        {"materials.yaml", "cautions: [c]", "cautions: [▸d]", "unknown-name"},
        {"materials.yaml", "why: w", "always: ▸yes, why: w", "unknown-word"},
        {"stocks.yaml", "caliper: 1 mm", "caliper: 1 mm, printed: ▸yes", "unknown-word"},
        {"stocks.yaml", "grade: bond", "grade: bond, ▸printed: true", "not-here"},
        {"stocks.yaml", "kind: paper", "kind: ▸papr", "unknown-word", "write 'paper'"},
        {"stocks.yaml", "on-the-shelf:", "▸on-the-shelves:", "unknown-key", "write 'on-the-shelf'"},
        {"stocks.yaml", "  bond: { pounds: [20, 24], source: s }\n  text", "  ▸text", "missing-key"},
        {"stocks.yaml", "  bond: { pounds", "  ▸bonds: { pounds", "unknown-key", "write 'bond'"},
        {"stocks.yaml", "[20, 24]", "▸[24, 20]", "not-ascending"},
        {"stocks.yaml", "[20, 24]", "[20, ▸20]", "duplicate-value"},
        {"stocks.yaml", "[20, 24]", "[20, ▸24.5]", "wrong-type"},
        {"stocks.yaml", "[20, 24]", "[20, ▸24 lb]", "wrong-type"},
        {"stocks.yaml", "[20, 24]", "[▸9, 24]", "out-of-range"},
        {"stocks.yaml", "[20, 24]", "▸[]", "empty-list"},
        {"stocks.yaml", "{ pounds: [20, 24], source: s }", "▸[20, 24]", "wrong-type"},
        {"stocks.yaml", "{ pounds: [20, 24], source: s }", "▸{ pounds: [20, 24] }", "missing-key"},
        {"stocks.yaml", "{ pounds: [20, 24], source: s }", "▸{ source: s }", "missing-key"},
        {"boards.yaml", "size: 210 x 297 mm", "size: ▸210 mm", "bad-size"},
        {"boards.yaml", "size: 210 x 297 mm", "size: ▸210 x 297", "bare-number"},
        {"boards.yaml", "grain: height", "grain: ▸hight", "unknown-word", "write 'height'"},
        {"boards.yaml", "{ title: S, size: 210 x 297 mm, grain: height, why: w }", "▸{ title: S, size: 210 x 297 mm, why: w }", "missing-key"},
        {"boards.yaml", "{ title: S, size: 210 x 297 mm, grain: height, why: w }", "▸{ title: S, size: 210 x 297 mm, grain: height }", "missing-key"},
        {"boards.yaml", "metric: [sheet]", "metric: [▸sheets]", "unknown-name", "write 'sheet'"},
        {"boards.yaml", "metric: [sheet]", "metric: ▸[]", "empty-list"},
        {"boards.yaml", "{ metric: [sheet], us: [square, sheet] }", "▸{ metric: [sheet] }", "missing-key"},
        {"boards.yaml", "format: 1\nusual: { metric: [sheet], us: [square, sheet] }", "▸format: 1", "missing-key"},
        {"materials.yaml", "group: sewing", "group: ▸sew", "unknown-word"},
        {"materials.yaml", "{ title: Cloth, use: u, group: glueing }", "▸{ title: Cloth, use: u }", "missing-key"},
        {"materials.yaml", "10 %", "▸10", "bare-number", "write '10 %'"},
        {"materials.yaml", "10 %", "▸101 %", "out-of-range"},
        {"materials.yaml", "{ title: C, use: u, group: sewing, allowance: 10 %, why: w }", "▸{ title: C, use: u, group: sewing, allowance: 10 % }",
         "missing-key"},
    });
}

TEST_CASE("terms that are named and not there") {
    SmallPipeline pipeline;
    pipeline.put("studio.yaml", with(pipeline.text("studio.yaml"), "terms.txt", "term.txt"));
    CHECK(pipeline.told() == "missing-file pipeline/term.txt 0:0\n");
}

TEST_CASE("all files' faults are told in one run, a syntax error beside the others") {
    SmallPipeline pipeline;
    pipeline.put("papers.yaml", "format: 1\npapers: { a: [\n");
    pipeline.put("shops.yaml", with(pipeline.text("shops.yaml"), "20 MB", "20"));
    pipeline.put("texts/bad.mustache", "fine\nnot \xff fine\n");
    std::filesystem::remove(pipeline.path("checks.yaml"));
    CHECK(pipeline.told() ==
          "missing-file pipeline/checks.yaml 0:0\nsyntax pipeline/papers.yaml 2:14\nbare-number pipeline/shops.yaml 3:52\nbad-utf8 "
          "pipeline/texts/bad.mustache 2:5\n");
}

TEST_CASE("texts are taken as they are; hidden files and folders are passed over") {
    SmallPipeline pipeline;
    pipeline.put("texts/a.mustache", "line one\r\n\tline two");
    pipeline.put("texts/.swap", "x");
    pipeline.put("texts/folder/inner", "x");
    pipeline.put("journals/notes.txt", "not: [a journal");
    const kit::Pipeline read = pipeline.read();
    CHECK(read.texts.at("a.mustache") == "line one\r\n\tline two");
    CHECK(read.texts.size() == 2);
    CHECK(read.journals.size() == 1);
}

TEST_CASE("a folder that is no pipeline") {
    const auto disk = real_disk();
    const TestFolder folder;
    const auto code = [&](const Path& path) {
        try {
            kit::read_pipeline(*disk, path);
        } catch (const Fault& fault) {
            CHECK(fault.kind() == FaultKind::not_understood);
            return fault.notes().front().code + " " + std::to_string(fault.notes().size());
        }
        return std::string();
    };
    CHECK(code(folder / "nowhere") == "no-pipeline 1");
    CHECK(code(folder.path()) == "missing-file 11");
}
