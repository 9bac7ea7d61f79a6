// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/paper.h"

#include "kit/shared_data.h"
#include "kit/values.h"

#include <algorithm>

namespace qw::kit {

namespace {

/// A PWG 5101.1 name, and the size that it says.
std::optional<Paper> pwg_paper(const Node& node, Faults& faults) {
    const std::string* name = scalar_text(node, faults, "a PWG 5101.1 name such as iso_a4_210x297mm");
    if (!name) return std::nullopt;
    const auto size = size_of_pwg_name(*name);
    if (!size || size->landscape()) {
        faults.add("bad-paper", node.mark, in_quotes(*name) + " is no PWG 5101.1 name of a sheet",
                   "class_size_WIDTHxLENGTH and in or mm, the shorter side first");
        return std::nullopt;
    }
    Paper paper;
    paper.name = *name;
    paper.size = *size;
    return paper;
}

}  // namespace

void read_papers(DataFolder& folder, Pipeline& into) {
    const auto root = folder.tree("papers.yaml");
    if (!root) return;
    Faults& faults = folder.faults();
    MapReader map(*root, faults, "the file");
    check_format(map);
    read_entries(map, "papers", "the paper", faults, [&](const Entry& entry, MapReader& reader) {
        Paper paper;
        const bool named = reader.required("name", paper, pwg_paper);
        reader.required("title", paper.title, text_value);
        reader.required("ruler", paper.ruler, word_value<UnitSystem>({{"metric", UnitSystem::metric}, {"us", UnitSystem::us}}));
        need_origin(reader, entry, faults);
        paper.short_name = entry.key;
        const bool twice =
            std::any_of(into.papers.begin(), into.papers.end(), [&](const Paper& other) { return other.name == paper.name; });
        if (named && twice)
            faults.add("duplicate-name", reader.mark_of("name"), in_quotes(paper.name) + " stands in the file a second time",
                       "each paper once");
        else if (named) into.papers.push_back(paper);
    });
    map.done();
}

}  // namespace qw::kit
