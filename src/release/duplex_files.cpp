// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/duplex_files.h"

#include "base/words.h"

#include <algorithm>
#include <cctype>

namespace qw::release {

namespace {

/// "Journal pages", as the sheet of parts has its titles.
std::string title_of(const PlannedFile& file) {
    std::string title = spaced_name(file.set);
    title[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(title[0])));
    return title;
}

bool printed_alike(const compose::Document& a, const compose::Document& b) { return a.pages.size() == b.pages.size() && a.duplex == b.duplex; }

compose::DuplexFile told(const PlannedFile& file, bool with_print) {
    return {title_of(file) + (with_print ? ", " + name_of(*file.print) : ""), static_cast<int>(file.document.pages.size()), file.document.duplex};
}

}  // namespace

std::vector<compose::DuplexFile> duplex_files(const std::vector<PlannedFile>& planned, const Paper& paper) {
    std::vector<std::vector<const PlannedFile*>> sets;
    for (const PlannedFile& file : planned) {
        // Generated sheets serve all prints, or have one side.
        if (file.paper.name != paper.name || !file.print || file.document.duplex == compose::Duplex::simplex) continue;
        const auto known = std::find_if(sets.begin(), sets.end(), [&](const auto& set) { return set.front()->set == file.set; });
        if (known == sets.end()) sets.push_back({&file});
        else known->push_back(&file);
    }
    std::vector<compose::DuplexFile> all;
    for (const auto& prints : sets) {
        const bool alike = std::all_of(prints.begin(), prints.end(),
                                       [&](const PlannedFile* file) { return printed_alike(file->document, prints.front()->document); });
        for (const PlannedFile* file : prints) {
            all.push_back(told(*file, !alike));
            if (alike) break;
        }
    }
    return all;
}

}  // namespace qw::release
