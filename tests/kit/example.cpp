// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/example.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>

namespace qw::test {

const std::string sound_manifest =
    "kit: sea\n"
    "title: Sea\n"
    "version: 1.0.0\n"
    "journal: soft-spine\n"
    "papers: [letter, a4]\n"
    "sets:\n"
    "  pages:\n"
    "    role: journal-page\n"
    "    files: art/*.png\n"
    "    sides: duplex\n"
    "    stock: copy-100\n";

namespace {

/// A pocket with a face of each kind, a tag with one, and a thing of fixed size.
void add_parts(kit::Pipeline& pipeline) {
    const auto face = [](const char* name, bool front, bool needed) {
        kit::PartFaceTemplate made;
        made.name = name;
        made.front = front;
        made.needed = needed;
        return made;
    };
    const auto part = [&](const char* name) -> kit::PartTemplate& {
        kit::PartTemplate& made = pipeline.parts[name];
        made.name = name;
        made.file = "pipeline/parts/" + made.name + ".yaml";
        return made;
    };
    kit::PartTemplate& pocket = part("trifold-pocket");
    pocket.faces = {face("outside", true, true), face("strip", true, false), face("inside", false, false)};
    for (const char* name : {"middle", "inner"}) pocket.pockets.emplace_back().name = name;
    part("plain-tag").faces = {face("outside", true, true), face("back", false, false)};
    for (const char* name : {"card-85x55", "index-card-3x5"}) {
        kit::Thing thing;
        thing.name = name;
        pipeline.things.push_back(thing);
    }
}

}  // namespace

kit::Pipeline example_pipeline(const Path& folder) {
    kit::Pipeline pipeline;
    pipeline.folder = folder;
    pipeline.papers = {{"na_letter_8.5x11in", "letter", "Letter", {Length::inches(8.5), Length::inches(11)}, UnitSystem::us},
                       {"iso_a4_210x297mm", "a4", "A4", {Length::mm(210), Length::mm(297)}, UnitSystem::metric}};
    for (const char* name : {"most-home-printers", "narrow-3mm"}) {
        kit::Printer printer;
        printer.name = name;
        pipeline.printers.push_back(printer);
    }
    const auto stock = [&](const char* name, kit::Stock::Kind kind, double grammage, Length caliper) {
        kit::Stock made;
        made.name = name;
        made.kind = kind;
        made.grammage = grammage;
        made.caliper = caliper;
        pipeline.stocks.push_back(made);
    };
    stock("copy-80", kit::Stock::Kind::paper, 80, Length::mm(0.102));
    stock("copy-100", kit::Stock::Kind::paper, 100, Length::mm(0.125));
    stock("card-160", kit::Stock::Kind::paper, 160, Length::mm(0.186));
    stock("greyboard-1mm", kit::Stock::Kind::board, 615, Length::mm(1));
    stock("greyboard-2mm", kit::Stock::Kind::board, 1290, Length::mm(2));
    for (const char* name : {"a4-greyboard", "chipboard-12in"}) {
        kit::Board board;
        board.name = name;
        pipeline.boards.push_back(board);
    }
    kit::Shop shop;
    shop.name = "small-files";
    pipeline.shops.push_back(shop);
    const auto check = [&](const char* name, std::optional<double> limit, const char* unit) {
        kit::CheckSetting made;
        made.rule = name;
        made.limit = limit;
        made.unit = unit;
        pipeline.checks.push_back(made);
    };
    check("artwork-ppi", 225, "ppi");
    check("artwork-safe-area", 3, "mm");
    check("odd-faces", std::nullopt, "");
    kit::JournalTemplate& soft = pipeline.journals["soft-spine"];
    soft.name = "soft-spine";
    soft.file = "pipeline/journals/soft-spine.yaml";
    soft.checks.emplace_back().name = "spine-fill";
    soft.pieces.emplace_back().name = "board";
    kit::PieceTemplate& liner = soft.pieces.emplace_back();
    liner.name = "liner";
    liner.optional = true;
    kit::LengthTemplate& band = soft.cut_lengths.emplace_back();
    band.name = "closing-band";
    band.optional = true;
    kit::LengthTemplate& elastic = soft.cut_lengths.emplace_back();
    elastic.name = "sewing-elastic";
    elastic.instead = {{"waxed-twine", "Waxed twine", "waxed-twine", {}, ""}};
    pipeline.journals["wrapped-booklet"].name = "wrapped-booklet";
    add_parts(pipeline);
    const auto usual = [&](const char* key, const char* value) { pipeline.usual[key] = {value, {"pipeline/stocks.yaml", 1, 1}}; };
    usual("printer", "most-home-printers");
    usual("board-stock", "greyboard-1mm");
    usual("journal-page", "copy-100");
    usual("full-sheet", "copy-80");
    usual("part", "card-160");
    usual("extra", "copy-100");
    return pipeline;
}

ExampleKit::ExampleKit() : pipeline_(example_pipeline(folder_.path() / "pipeline")) {
    put("art/1.png");
    put("art/2.png");
    put("art/.hidden.png");
    put("art/sub.png/inner.png");
    std::filesystem::create_directories(pipeline_.folder);
}

void ExampleKit::put(const std::string& name, const std::string& text) {
    const Path path = *this / name;
    std::filesystem::create_directories(path.parent_path());
    std::ofstream(path, std::ios::binary) << text;
}

kit::Manifest ExampleKit::read(const std::string& manifest) {
    put("kit.yaml", manifest);
    std::vector<kit::InputFile> inputs;
    return kit::read_manifest(*disk_, *this / "", pipeline_, inputs);
}

std::vector<FaultNote> ExampleKit::faults(const std::string& manifest) {
    try {
        read(manifest);
        return {};
    } catch (const Fault& fault) {
        CHECK(fault.kind() == FaultKind::not_understood);
        return fault.notes();
    }
}

std::string with(const std::string& text, const std::string& from, const std::string& to) {
    const std::size_t at = text.find(from);
    INFO("looking for " << from);
    REQUIRE(at != std::string::npos);
    return std::string(text).replace(at, from.size(), to);
}

std::string told(const std::vector<FaultNote>& notes) {
    std::string text;
    for (const FaultNote& note : notes) {
        CHECK(note.where.file == "kit.yaml");
        CHECK_FALSE(note.what.empty());
        if (!text.empty()) text += "\n";
        text += note.code + " " + std::to_string(note.where.line) + ":" + std::to_string(note.where.column);
    }
    return text;
}

}  // namespace qw::test
