// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/artwork_finder.h"
#include "kit/calipers.h"
#include "kit/map_reader.h"
#include "kit/override_reader.h"
#include "kit/part_set_reader.h"
#include "kit/read.h"
#include "kit/rights.h"
#include "kit/set_reader.h"
#include "kit/source_text.h"
#include "kit/values.h"
#include "kit/yaml.h"

#include "base/digest.h"

#include <algorithm>

namespace qw::kit {

namespace {

const std::string manifest_name = "kit.yaml";

template <typename T>
std::vector<std::string> names_in(const std::vector<T>& things) {
    std::vector<std::string> names;
    for (const T& thing : things) names.push_back(thing.name);
    return names;
}

Lookup board_stocks(const Pipeline& pipeline) {
    Lookup lookup{"a board", "pipeline/stocks.yaml", {}};
    for (const Stock& stock : pipeline.stocks)
        if (stock.kind == Stock::Kind::board) lookup.known.push_back(stock.name);
    return lookup;
}

Lookup journals(const Pipeline& pipeline) {
    Lookup lookup{"a journal", "pipeline/journals/", {}};
    for (const auto& [name, journal] : pipeline.journals) lookup.known.push_back(name);
    return lookup;
}

/// By short name or by PWG name; the result is the short one, so that both names of a paper are one.
Reader<std::string> paper_name(const Pipeline& pipeline) {
    return [&pipeline](const Node& node, Faults& faults) -> std::optional<std::string> {
        Lookup lookup{"a paper", "pipeline/papers.yaml", {}};
        for (const Paper& paper : pipeline.papers) lookup.known.push_back(paper.short_name);
        for (const Paper& paper : pipeline.papers) lookup.known.push_back(paper.name);
        const auto name = name_value(lookup)(node, faults);
        if (!name) return std::nullopt;
        for (const Paper& paper : pipeline.papers)
            if (paper.name == *name) return paper.short_name;
        return name;
    };
}

void read_identity(MapReader& map, Manifest& manifest, const Pipeline& pipeline) {
    map.required("kit", manifest.kit, plain_name_value);
    map.required("title", manifest.title, text_value);
    map.required("version", manifest.version, version_value);
    map.required("journal", manifest.journal, sourced(name_value(journals(pipeline))));
    map.optional("date", manifest.date, date_value);
}

void read_editions(MapReader& map, Manifest& manifest, const Pipeline& pipeline) {
    std::vector<std::string> papers;
    map.required("papers", papers, list_value<std::string>(paper_name(pipeline), "[letter, a4]"));
    for (const std::string& name : papers)
        manifest.papers.push_back(
            *std::find_if(pipeline.papers.begin(), pipeline.papers.end(), [&](const Paper& paper) { return paper.short_name == name; }));
    manifest.prints = {Print::borderless, Print::bordered};
    map.optional(
        "prints", manifest.prints,
        list_value<Print>(word_value<Print>({{"borderless", Print::borderless}, {"bordered", Print::bordered}}), "[borderless, bordered]"));
    map.optional("borders", manifest.borders, word_value<Borders>({{"trimmed", Borders::trimmed}, {"kept", Borders::kept}}));
}

void read_names(MapReader& map, Manifest& manifest, const Pipeline& pipeline) {
    const auto usual = [&](const std::string& key, Sourced<std::string>& into) {
        const auto found = pipeline.usual.find(key);
        if (found != pipeline.usual.end()) into = found->second;
    };
    usual("printer", manifest.printer);
    usual("board-stock", manifest.board_stock);
    map.optional("printer", manifest.printer, sourced(name_value({"a printer", "pipeline/printers.yaml", names_in(pipeline.printers)})));
    map.optional("board-stock", manifest.board_stock, sourced(name_value(board_stocks(pipeline))));
    manifest.spine_stock = manifest.board_stock;
    map.optional("spine-stock", manifest.spine_stock, sourced(name_value(board_stocks(pipeline))));
    map.optional("boards", manifest.boards,
                 list_value<std::string>(name_value({"a board", "pipeline/boards.yaml", names_in(pipeline.boards)}), "[a4-greyboard]"));
    map.optional("shop", manifest.shop, sourced(name_value({"a shop", "pipeline/shops.yaml", names_in(pipeline.shops)})));
}

/// Null when the kit's journal could not be read, which has been told.
const JournalTemplate* journal_of(const Manifest& manifest, const Pipeline& pipeline) {
    const auto found = pipeline.journals.find(*manifest.journal);
    return found == pipeline.journals.end() ? nullptr : &found->second;
}

Choices read_choices(const Node& node, const JournalTemplate* journal, Faults& faults) {
    Choices choices;
    if (!is_map(node, faults, "closing-band: none")) return choices;
    for (const Entry& entry : node.entries) {
        if (!check_plain_name(entry.key, entry.mark, faults)) continue;
        if (const auto choice = sourced<std::string>(plain_name_value)(entry.value, faults)) choices[entry.key] = *choice;
    }
    try {
        if (journal) chosen(*journal, choices);
    } catch (const Fault& fault) {
        faults.add(fault);
    }
    return choices;
}

void read_sets(const Node& node, Manifest& manifest, SetContext context, ArtworkFinder& finder, Faults& faults) {
    if (!is_map(node, faults, "journal-pages: { role: journal-page, files: art/pages/*.png }")) return;
    if (node.entries.empty()) faults.add("empty-list", node.mark, "the kit has no sets", "at least one set");
    for (const Entry& entry : node.entries) context.set_names.push_back(entry.key);
    for (const Entry& entry : node.entries) {
        check_plain_name(entry.key, entry.mark, faults);
        manifest.sets.push_back(read_set(entry, context, finder, faults));
    }
    check_goes_in(manifest.sets, context.pipeline, faults);
}

Path resolved_folder(Disk& disk, const Path& folder) {
    const auto real = disk.resolve(folder);
    const auto there = real ? disk.stat(*real) : std::nullopt;
    if (there && there->type == FileType::folder) return *real;
    throw Fault(FaultKind::not_understood, {"no-kit",
                                            {folder.string(), 0, 0},
                                            "there is no such folder",
                                            "a folder with kit.yaml",
                                            "`quirewright begin FOLDER` makes a kit to start from"});
}

}  // namespace

Manifest read_manifest(Disk& disk, const Path& folder, const Pipeline& pipeline, std::vector<InputFile>& inputs) {
    Manifest manifest;
    manifest.folder = resolved_folder(disk, folder);
    const std::string bytes =
        read_bytes(disk, manifest.folder / manifest_name, manifest_name, "`quirewright begin FOLDER` makes a kit to start from");
    inputs.push_back({"kit/" + manifest_name, sha256_of(bytes)});

    Faults faults;
    const Node root = read_yaml(bytes, manifest_name, faults);
    ArtworkFinder finder(disk, manifest.folder);
    MapReader map(root, faults, "the manifest");
    read_identity(map, manifest, pipeline);
    read_editions(map, manifest, pipeline);
    read_names(map, manifest, pipeline);
    if (const Node* sets = map.required("sets")) read_sets(*sets, manifest, {pipeline, {}}, finder, faults);
    const JournalTemplate* journal = journal_of(manifest, pipeline);
    if (const Node* calipers = map.optional("calipers")) manifest.calipers = read_calipers(*calipers, pipeline, faults);
    if (const Node* choices = map.optional("choices")) manifest.choices = read_choices(*choices, journal, faults);
    if (journal) check_goes_on(manifest.sets, *journal, manifest.choices, faults);
    map.optional("rights", manifest.rights, rights_value);
    if (const Node* fonts = map.optional("fonts")) manifest.fonts = read_font_rights(*fonts, faults);
    if (const Node* rules = map.optional("rules")) manifest.overrides = read_overrides(*rules, {pipeline, journal}, faults);
    map.done(set_keys(), "a set");
    faults.throw_if_any();
    return manifest;
}

}  // namespace qw::kit
