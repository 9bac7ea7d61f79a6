// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/pipeline.h"

#include "kit/journal_reader.h"
#include "kit/part_reader.h"
#include "kit/read.h"
#include "kit/shared_data.h"
#include "kit/source_text.h"

#include <algorithm>

namespace qw::kit {

namespace {

template <typename T>
const T* by_name(const std::vector<T>& things, const std::string& name, std::string T::*member) {
    const auto found = std::find_if(things.begin(), things.end(), [&](const T& thing) { return thing.*member == name; });
    return found == things.end() ? nullptr : &*found;
}

void read_journals(DataFolder& folder, Pipeline& into) {
    for (const std::string& name : folder.files_in("journals", ".yaml")) {
        std::string text;
        const auto root = folder.tree("journals/" + name, &text);
        if (!root) continue;
        JournalTemplate journal = read_journal(*root, "pipeline/journals/" + name, {into.tools, into.materials, text}, folder.faults());
        into.journals[name.substr(0, name.size() - std::string(".yaml").size())] = std::move(journal);
    }
}

void read_parts(DataFolder& folder, Pipeline& into) {
    const PartContext context{into.tools, into.materials};
    for (const std::string& name : folder.files_in("parts", ".yaml")) {
        const auto root = folder.tree("parts/" + name);
        if (!root) continue;
        into.parts[name.substr(0, name.size() - std::string(".yaml").size())] =
            read_part(*root, "pipeline/parts/" + name, context, folder.faults());
    }
}

void read_texts(DataFolder& folder, Pipeline& into) {
    for (const std::string& name : folder.files_in("texts", "")) {
        const auto text = folder.bytes("texts/" + name);
        if (!text) continue;
        try {
            const SourceText checked(*text, "pipeline/texts/" + name);  // texts go into PDFs: UTF-8 and nothing else
        } catch (const Fault& fault) {
            folder.faults().add(fault);
        }
        into.texts[name] = *text;
    }
}

}  // namespace

const Printer* Pipeline::printer(const std::string& name) const { return by_name(printers, name, &Printer::name); }
const Stock* Pipeline::stock(const std::string& name) const { return by_name(stocks, name, &Stock::name); }
const Board* Pipeline::board(const std::string& name) const { return by_name(boards, name, &Board::name); }
const Shop* Pipeline::shop(const std::string& name) const { return by_name(shops, name, &Shop::name); }
const Thing* Pipeline::thing(const std::string& name) const { return by_name(things, name, &Thing::name); }
const FontData* Pipeline::font(const std::string& cut) const {
    const auto has = [&](const FontData& font) { return std::find(font.cuts.begin(), font.cuts.end(), cut) != font.cuts.end(); };
    const auto found = std::find_if(fonts.begin(), fonts.end(), has);
    return found == fonts.end() ? nullptr : &*found;
}
const CheckSetting* Pipeline::check(const std::string& rule) const { return by_name(checks, rule, &CheckSetting::rule); }

Pipeline read_pipeline(Disk& disk, const Path& folder) {
    Pipeline pipeline;
    const auto real = disk.resolve(folder);
    const auto there = real ? disk.stat(*real) : std::nullopt;
    if (!there || there->type != FileType::folder)
        throw Fault(FaultKind::not_understood, {"no-pipeline",
                                                {folder.string(), 0, 0},
                                                "there is no such folder",
                                                "the folder with papers.yaml and its like",
                                                "name it with --pipeline"});
    pipeline.folder = *real;
    Faults faults;
    DataFolder data(disk, *real, faults, pipeline.inputs);
    read_papers(data, pipeline);
    read_printers(data, pipeline);
    read_stocks(data, pipeline);
    read_boards(data, pipeline);
    read_shops(data, pipeline);
    read_checks(data, pipeline);
    read_materials(data, pipeline);
    read_things(data, pipeline);
    read_fonts(data, pipeline);
    read_part_rules(data, pipeline);
    read_texts(data, pipeline);
    read_studio(data, pipeline);
    read_journals(data, pipeline);
    read_parts(data, pipeline);
    faults.throw_if_any();
    std::sort(pipeline.inputs.begin(), pipeline.inputs.end(), [](const InputFile& a, const InputFile& b) { return a.shown < b.shown; });
    return pipeline;
}

}  // namespace qw::kit
