// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/small_pipeline.h"

#include "base/fault.h"
#include "base/words.h"
#include "kit/example.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace qw::test {

SmallPipeline::SmallPipeline() {
    put("papers.yaml", "format: 1\npapers:\n  a4: { name: iso_a4_210x297mm, title: A4, ruler: metric, source: ISO 216 }\n");
    put("printers.yaml",
        "format: 1\nusual: plain\nborderless-enlargement: { width: 5 mm, height: 4 mm, why: test }\nprinters:\n  plain:\n    title: Plain\n    "
        "single: { left: 300, bottom: 300, right: 300, top: 300 }\n"
        "    duplex: { left: 300, bottom: 300, right: 300, top: 300 }\n    why: test\n");
    put("stocks.yaml",
        "format: 1\nusual: { journal-page: p, full-sheet: p, part: p, extra: p, board-stock: b }\nstocks:\n"
        "  p: { title: P, kind: paper, grammage: 100 g/m2, bulk: 1.25 cm3/g, grade: bond, why: test }\n"
        "  b: { title: B, kind: board, grammage: 615 g/m², caliper: 1 mm, why: test }\n"
        "on-the-shelf:\n"
        "  bond: { pounds: [20, 24], source: s }\n  text: { pounds: [50], source: s }\n"
        "  cover: { pounds: [65, 80], why: w }\n  index: { pounds: [90], source: s }\n");
    put("boards.yaml",
        "format: 1\nusual: { metric: [sheet], us: [square, sheet] }\nboards:\n"
        "  sheet: { title: S, size: 210 x 297 mm, grain: height, why: w }\n  square: { title: Q, size: 12 x 12 in, grain: unknown, source: s }\n");
    put("fonts.yaml", "format: 1\nfonts:\n  f: { title: F, cuts: [F-Regular], made-by: somebody, allowed-by: a licence, why: test }\n");
    put("shops.yaml", "format: 1\nshops:\n  s: { title: S, most-files: 5, most-bytes-a-file: 20 MB, longest-text: 13000, why: test }\n");
    put("studio.yaml", "format: 1\nname: N\nline: L\nterms-file: terms.txt\n");
    put("terms.txt", "terms\n");
    put("checks.yaml", "format: 1\nchecks:\n  r: { level: error, limit: 3, unit: mm, checks: c, why: w, source: s }\n");
    put("materials.yaml",
        "format: 1\ncautions:\n  c: { text: t, why: w }\n"
        "tools:\n  ruler: { title: R, use: u, cautions: [c] }\n  punch: { title: Punch, use: u, reach: 30 mm, instead: awl, why: w }\n  awl: { "
        "title: A, use: u }\n  setter: { title: S, use: u }\n"
        "materials:\n  cord: { title: C, use: u, group: sewing, allowance: 10 %, why: w }\n  cloth: { title: Cloth, use: u, group: glueing }\n"
        "  eyelet: { title: Eyelets, use: u, group: other }\n  paste: { title: Paste, use: u, group: glueing }\n");
    put("things.yaml",
        "format: 1\nthings:\n  card: { title: Card, size: 85 x 55 mm, thickness: 0.3 mm, why: \"from  memory\" }\n"
        "  print: { title: Print, size: 54 x 86 mm, thickness: 0.2 mm, source: s }\n");
    put("part-sheets.yaml",
        "format: 1\nlines:\n  cut: { weight: 0.6 pt, why: w }\n  valley: { weight: 0.5 pt, dash: [3 pt, 3 pt], why: w }\n"
        "  mountain: { weight: 0.4 pt, dash: [6 pt, 2 pt, 1 pt, 2 pt], source: s }\n  hatch: { weight: 0.3 pt, gap: 2 mm, why: w }\n"
        "room:\n  scissors: { length: 6 mm, why: w }\n  edge: { length: 3 mm, why: w }\n  over-fold: { length: 1 mm, why: w }\n"
        "  back-shift: { length: 2 mm, why: w }\n  clearance: { length: 1/8 in, why: w }\n  least-clearance: { length: 1 mm, source: s }\n");
    put("parts/t.yaml",
        "format: 1\npart: t\ntitle: T\n"
        "lengths:\n  width: { metric: 80 mm, us: 3 1/8 in, why: \"w  w\", published: p }\n  hole-edge: { metric: 6 mm, us: 1/4 in, is: fixed, why: w }\n"
        "numbers:\n  n: { value: 2, why: w }\n"
        "values:\n  depth: width / n\n"
        "panels:\n"
        "  back: { title: Back, outline: [[0, 0], [width, 0], { at: [width, depth], rounded: hole_edge }, [0, depth]] }\n"
        "  front: { title: Front, outline: [[0, 0], [0, -depth], { through: [width / 2, 0], to: [width, -depth] }, [width, 0]] }\n"
        "  tab: { title: Tab, outline: [[0, 0], { through: [-width, -depth], to: [0, -depth] }] }\n"
        "folds:\n  - { moves: [tab], fold: valley }\n  - { moves: [front, tab], fold: mountain }\n"
        "glue:\n  - { tab: tab, on: back, with: paste }\n"
        "faces:\n"
        "  outside: { title: Outside, side: front, panels: [front], head: down, seen: { after: 1, from: behind } }\n"
        "  inside: { title: Inside, side: back, panels: [back, front], needed: false }\n"
        "pockets:\n  card: { title: Card, between: [front, back], opens: right, closes: true, after: 1 }\n"
        "holes:\n  cord: { title: Hole, at: [width / 2, depth - hole_edge], diameter: { metric: 5 mm, us: 3/16 in }, tool: punch }\n"
        "no-ink:\n  stamp: { side: back, outline: [[0, 0], [n, 0], [0, n]], why: people write here }\n"
        "layers: [back, front]\n"
        "cut-lengths:\n  twine: { title: Twine, count: 1, length: width, material: cord, use: u, rounding: { metric: 5 mm, us: 1/4 in, way: down } }\n"
        "items:\n  paste: { title: Paste, count: n, size: { metric: 3 mm, us: 1/8 in }, use: u, tools: [awl] }\n"
        "tools: [ruler, punch]\n"
        "steps:\n  - { title: Cut, text: \"Cut  it.\", tools: [ruler], drawing: flat }\n  - { title: Fold, text: Fold it., drawing: fold-2 }\n");
    put("journals/j.yaml",
        "format: 1\njournal: j\ntitle: J\npicture: opened-cover\n"
        "lengths:\n  edge: { metric: 3 mm, us: 1/8 in, is: fixed, why: w, published: \"1/8  in (somebody)\" }\n"
        "numbers:\n  n: { value: 2, why: w, published: four }\n"
        "values:\n  board-width: page_width + edge\n"
        "pieces:\n"
        "  board: { title: B, count: n, width: board_width, height: page_height, stock: board, glue: paste }\n"
        "  tape: { title: T, count: 1, width: edge, height: edge, stock: bought, material: cloth, or: { strip: { material: cord, use: strong } } }\n"
        "stations: { page: [edge, edge * 2, edge * 3], spine: [edge, edge * 2, page_height - edge] }\n"
        "sewing: { signatures: n, rows: 1, path: [2, 1, 3, 2], thread: cord }\n"
        "cut-lengths:\n"
        "  cord: { title: C, count: 1, length: edge, material: cord }\n"
        "  band: { title: Band, count: 1, length: edge, material: cord, optional: true }\n"
        "items:\n"
        "  eyelet: { title: E, count: 3, size: { metric: 3 mm, us: 1/8 in }, tools: [setter], or: { bare: { title: Bare, tools: [awl] } } }\n"
        "  paste: { title: P, count: 1 }\n"
        "figures:\n  left: { title: Left, value: edge, rounding: { metric: 1 mm, us: 1/8 in, way: down }, use: u }\n"
        "bulk: page_caliper\ncreep: { least: edge, most: edge }\n"
        "checks:\n  fits: { holds: edge < board_width, measured: edge, limit: board_width, level: error, message: m, mend: d }\n"
        "tools: [ruler]\n"
        "steps:\n  - { title: Cut, text: \"Cut  it.\", uses: [board, page, left], tools: [ruler], drawing: cover }\n"
        "  - { title: Sew, text: Sew it., uses: [cord, eyelet, page-stations, spine-stations], tools: [setter, ruler], drawing: stitch }\n");
}

void SmallPipeline::put(const std::string& name, const std::string& text) {
    std::filesystem::create_directories((folder_ / name).parent_path());
    std::ofstream(folder_ / name, std::ios::binary) << text;
}

std::string SmallPipeline::text(const std::string& name) const {
    std::ostringstream out;
    out << std::ifstream(folder_ / name).rdbuf();
    return out.str();
}

kit::Pipeline SmallPipeline::read() const {
    const auto disk = real_disk();
    return kit::read_pipeline(*disk, folder_.path());
}

std::vector<FaultNote> SmallPipeline::faults() const {
    try {
        read();
        return {};
    } catch (const Fault& fault) {
        CHECK(fault.kind() == FaultKind::not_understood);
        return fault.notes();
    }
}

std::string SmallPipeline::told() const {
    std::string text;
    for (const FaultNote& note : faults())
        text += note.code + " " + note.where.file + " " + std::to_string(note.where.line) + ":" + std::to_string(note.where.column) + "\n";
    return text;
}

void check_broken(const std::vector<BrokenData>& table) {
    const std::string mark = "▸";
    for (const BrokenData& row : table) {
        SmallPipeline pipeline;
        INFO(row.file << ": " << row.from << "  ->  " << row.to);
        std::string text = with(pipeline.text(row.file), row.from, row.to), wanted;
        for (std::size_t at = text.find(mark); at != std::string::npos; at = text.find(mark)) {
            text.erase(at, mark.size());
            const std::size_t line_start = at == 0 ? 0 : text.rfind('\n', at - 1) + 1;
            const auto line = 1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n');
            const std::size_t column = 1 + characters_in(std::string_view(text).substr(line_start), at - line_start);
            wanted += std::string(row.code) + " pipeline/" + row.file + " " + std::to_string(line) + ":" + std::to_string(column) + "\n";
        }
        CHECK_FALSE(wanted.empty());
        pipeline.put(row.file, text);
        CHECK(pipeline.told() == wanted);
        const auto notes = pipeline.faults();
        if (*row.mend && !notes.empty()) CHECK_THAT(notes.front().mend, Catch::Contains(row.mend));
    }
}

kit::JournalTemplate changed_journal(const std::string& from, const std::string& to) {
    SmallPipeline pipeline;
    pipeline.put(j_yaml, with(pipeline.text(j_yaml), from, to));
    return pipeline.read().journals.at("j");
}

}  // namespace qw::test
