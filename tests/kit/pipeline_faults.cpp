// SPDX-License-Identifier: GPL-3.0-or-later
// What is told of shared data that is wrong: with the file's own name, line and column, all files in one run.
#include "base/fault.h"
#include "base/words.h"
#include "kit/example.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

using namespace qw;
using namespace qw::test;

namespace {

/// A pipeline of one entry a file, in a folder of its own.
class SmallPipeline {
public:
    SmallPipeline() {
        put("papers.yaml", "format: 1\npapers:\n  a4: { name: iso_a4_210x297mm, title: A4, ruler: metric, source: ISO 216 }\n");
        put("printers.yaml",
            "format: 1\nusual: plain\nprinters:\n  plain:\n    title: Plain\n    single: { left: 300, bottom: 300, right: 300, top: 300 }\n"
            "    duplex: { left: 300, bottom: 300, right: 300, top: 300 }\n    why: test\n");
        put("stocks.yaml",
            "format: 1\nusual: { journal-page: p, full-sheet: p, part: p, extra: p, board-stock: b }\nstocks:\n"
            "  p: { title: P, kind: paper, grammage: 100 g/m2, bulk: 1.25 cm3/g, grade: bond, why: test }\n"
            "  b: { title: B, kind: board, grammage: 615 g/m², caliper: 1 mm, why: test }\n");
        put("shops.yaml", "format: 1\nshops:\n  s: { title: S, most-files: 5, most-bytes-a-file: 20 MB, longest-text: 13000, why: test }\n");
        put("studio.yaml", "format: 1\nname: N\nline: L\nterms-file: terms.txt\n");
        put("terms.txt", "terms\n");
        put("checks.yaml", "format: 1\nchecks:\n  r: { level: error, limit: 3, unit: mm, checks: c, why: w, source: s }\n");
        put("materials.yaml", "format: 1\ncautions:\n  c: { text: t, why: w }\ntools:\n  ruler: { title: R, use: u, cautions: [c] }\nmaterials:\n  cord: { title: C, use: u }\n");
        put("journals/j.yaml",
            "format: 1\njournal: j\ntitle: J\npicture: opened-cover\n"
            "lengths:\n  edge: { metric: 3 mm, us: 1/8 in, is: fixed, why: w }\n"
            "numbers:\n  n: { value: 2, why: w }\n"
            "values:\n  board-width: page_width + edge\n"
            "pieces:\n  board: { title: B, count: n, width: board_width, height: page_height, stock: board }\n"
            "stations: { page: [edge], spine: [edge, page_height - edge] }\n"
            "cut-lengths:\n  cord: { title: C, count: 1, length: edge, material: cord }\n"
            "bulk: page_caliper\ncreep: { least: edge, most: edge }\n"
            "checks:\n  fits: { holds: edge < board_width, measured: edge, limit: board_width, level: error, message: m, mend: d }\n"
            "tools: [ruler]\n");
    }
    void put(const std::string& name, const std::string& text) {
        std::filesystem::create_directories((folder_ / name).parent_path());
        std::ofstream(folder_ / name, std::ios::binary) << text;
    }
    std::string text(const std::string& name) const {
        std::ostringstream out;
        out << std::ifstream(folder_ / name).rdbuf();
        return out.str();
    }
    Path path(const std::string& name) const { return folder_ / name; }
    kit::Pipeline read() const {
        const auto disk = real_disk();
        return kit::read_pipeline(*disk, folder_.path());
    }
    /// "code file line:column", one a line.
    std::string told() const {
        std::string text;
        try {
            read();
        } catch (const Fault& fault) {
            CHECK(fault.kind() == FaultKind::not_understood);
            for (const FaultNote& note : fault.notes())
                text += note.code + " " + note.where.file + " " + std::to_string(note.where.line) + ":" + std::to_string(note.where.column) + "\n";
        }
        return text;
    }

private:
    TestFolder folder_;
};

/// A file in which `from` was made `to`. The place where the fault is told is marked by ▸, which is taken out before.
struct Broken {
    const char* file;
    const char* from;
    const char* to;
    const char* code;
};

}  // namespace

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
    const kit::JournalTemplate& journal = read.journals.at("j");
    CHECK(journal.file == "pipeline/journals/j.yaml");
    REQUIRE(journal.lengths.size() == 1);
    CHECK(journal.lengths[0].value.metric == Length::mm(3));
    CHECK(journal.lengths[0].value.us == Length::inches(0.125));
    CHECK_FALSE(journal.lengths[0].printed);
    REQUIRE(journal.values.size() == 1);
    CHECK(journal.values[0].name == "board-width");
    CHECK(journal.values[0].text == "page_width + edge");
    CHECK(journal.values[0].mark.file == "pipeline/journals/j.yaml");
    CHECK(journal.values[0].mark.line == 10);
    CHECK(journal.values[0].mark.column == 16);
    REQUIRE(journal.pieces.size() == 1);
    CHECK(journal.pieces[0].rounding.step.metric == Length::mm(0.5));
    CHECK(journal.pieces[0].rounding.step.us == Length::inches(1.0 / 16));
    CHECK(journal.pieces[0].grain == "any");
    CHECK(journal.stations.spine.size() == 2);
    CHECK(journal.cut_lengths.at(0).material == "cord");
    CHECK(journal.checks.at(0).name == "fits");
    CHECK(journal.tools == std::vector<std::string>{"ruler"});
}

TEST_CASE("faults in shared data") {
    const SmallPipeline sound;
    REQUIRE(sound.told().empty());
    const std::vector<Broken> table{
        {"papers.yaml", "format: 1\npapers", "▸papers", "missing-key"},
        {"papers.yaml", "format: 1", "format: ▸2", "out-of-range"},
        {"papers.yaml", "iso_a4_210x297mm", "▸iso_a4_210x297in", "bad-paper"},
        {"papers.yaml", "iso_a4_210x297mm", "▸iso_a4_297x210mm", "bad-paper"},
        {"papers.yaml", "ruler: metric", "ruler: ▸inch", "unknown-word"},
        {"papers.yaml", "{ name: iso_a4_210x297mm, title: A4, ruler: metric, source: ISO 216 }", "▸{ name: iso_a4_210x297mm, title: A4, ruler: metric }", "missing-key"},
        {"papers.yaml", "  a4: { name", "  b4: { name: iso_a4_210x297mm, title: A4, ruler: metric, why: w }\n  a4: { ▸name", "duplicate-name"},
        {"printers.yaml", "left: 300", "left: ▸3 mm", "wrong-type"},
        {"printers.yaml", "left: 300", "left: ▸300.5", "wrong-type"},
        {"printers.yaml", "left: 300", "left: ▸-1", "out-of-range"},
        {"printers.yaml", "left: 300", "left: ▸5001", "out-of-range"},
        {"printers.yaml", "left: 300", "left: ▸'300'", "wrong-type"},
        {"printers.yaml", "{ left: 300, ", "▸{ ", "missing-key"},
        {"printers.yaml", "usual: plain", "usual: ▸plane", "unknown-name"},
        {"stocks.yaml", "100 g/m2", "▸100", "bare-number"},
        {"stocks.yaml", "100 g/m2", "▸27 lb", "unknown-unit"},
        {"stocks.yaml", "100 g/m2", "▸10 g/m2", "out-of-range"},
        {"stocks.yaml", "{ title: P, kind: paper, grammage: 100 g/m2, bulk: 1.25 cm3/g,", "▸{ title: P, kind: paper, grammage: 100 g/m2,", "missing-key"},
        {"stocks.yaml", "bulk: 1.25 cm3/g", "▸bulk: 1.25 cm3/g, caliper: 0.1 mm", "not-here"},
        {"stocks.yaml", "{ title: P, kind: paper, grammage: 100 g/m2, bulk: 1.25 cm3/g, grade: bond", "▸{ title: P, kind: paper, grammage: 100 g/m2, bulk: 1.25 cm3/g", "missing-key"},
        {"stocks.yaml", "caliper: 1 mm", "caliper: 1 mm, ▸grade: bond", "not-here"},
        {"stocks.yaml", "board-stock: b", "board-stock: ▸p", "unknown-name"},
        {"stocks.yaml", "{ journal-page: p, full-sheet: p, part: p, extra: p,", "▸{ journal-page: p, full-sheet: p, part: p,", "missing-key"},
        {"shops.yaml", "20 MB", "▸20", "bare-number"},
        {"shops.yaml", "most-files: 5", "most-files: ▸none", "wrong-type"},
        {"studio.yaml", "terms.txt", "▸../terms.txt", "bad-path"},
        {"checks.yaml", "level: error", "level: ▸fatal", "unknown-word"},
        {"checks.yaml", "limit: 3, unit", "▸unit", "not-here"},
        {"checks.yaml", "{ level: error, limit: 3, unit: mm, checks: c, why: w, source: s }", "▸{ level: error, limit: 3, unit: mm, checks: c, why: w }", "missing-key"},
        {"materials.yaml", "cautions: [c]", "cautions: [▸d]", "unknown-name"},
        {"materials.yaml", "why: w", "always: ▸yes, why: w", "unknown-word"},
        {"journals/j.yaml", "journal: j", "journal: ▸k", "bad-name"},
        {"journals/j.yaml", "is: fixed", "is: ▸fix", "unknown-word"},
        {"journals/j.yaml", "metric: 3 mm", "metric: ▸3", "bare-number"},
        {"journals/j.yaml", "{ metric: 3 mm, us: 1/8 in,", "▸{ metric: 3 mm,", "missing-key"},
        {"journals/j.yaml", "{ metric: 3 mm, us: 1/8 in, is: fixed, why: w }", "▸{ metric: 3 mm, us: 1/8 in, is: fixed }", "missing-key"},
        {"journals/j.yaml", "  n: {", "  ▸edge: {", "duplicate-name"},
        {"journals/j.yaml", "  board-width: page", "  ▸page-width: page", "reserved-name"},
        {"journals/j.yaml", "  board-width: page", "  ▸board_width: page", "bad-name"},
        {"journals/j.yaml", "page_width + edge", "▸[page_width]", "wrong-type"},
        {"journals/j.yaml", "page_width + edge", "▸\"\"", "bad-formula"},
        {"journals/j.yaml", "page_width + edge", "▸page_width × 2", "bad-formula"},
        {"journals/j.yaml", "stock: board", "stock: ▸bord", "unknown-word"},
        {"journals/j.yaml", "{ title: B, count: n, width: board_width,", "▸{ title: B, count: n,", "missing-key"},
        {"journals/j.yaml", "stock: board", "stock: board, rounding: { metric: ▸0 mm, us: 1/16 in, way: up }", "out-of-range"},
        {"journals/j.yaml", "material: cord", "material: ▸cort", "unknown-name"},
        {"journals/j.yaml", "tools: [ruler]", "tools: [▸rular]", "unknown-name"},
        {"journals/j.yaml", "level: error", "level: ▸bad", "unknown-word"},
        {"journals/j.yaml", "numbers:\n  n: { value: 2, why: w }", "▸numbers:", "missing-value"},
        {"journals/j.yaml", "numbers:\n", "▸number:\n", "unknown-key"},
        {"journals/j.yaml", "bulk: page_caliper", "▸bulks: page_caliper", "unknown-key"},
        {"journals/j.yaml", "picture: opened-cover", "picture: ▸open-cover", "unknown-word"},
    };
    for (const Broken& row : table) {
        SmallPipeline pipeline;
        INFO(row.file << ": " << row.from << "  ->  " << row.to);
        const std::string marked = with(pipeline.text(row.file), row.from, row.to), mark = "▸";
        const std::size_t at = marked.find(mark), line_start = at == 0 ? 0 : marked.rfind('\n', at - 1) + 1;
        pipeline.put(row.file, with(marked, mark, ""));
        const auto line = 1 + std::count(marked.begin(), marked.begin() + static_cast<std::ptrdiff_t>(at), '\n');
        const std::size_t column = 1 + characters_in(std::string_view(marked).substr(line_start), at - line_start);
        CHECK(pipeline.told() == std::string(row.code) + " pipeline/" + row.file + " " + std::to_string(line) + ":" + std::to_string(column) + "\n");
    }
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
          "missing-file pipeline/checks.yaml 0:0\nsyntax pipeline/papers.yaml 2:14\nbare-number pipeline/shops.yaml 3:52\nbad-utf8 pipeline/texts/bad.mustache 2:5\n");
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
    CHECK(code(folder.path()) == "missing-file 7");
}
