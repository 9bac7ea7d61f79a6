// SPDX-License-Identifier: GPL-3.0-or-later
#include "parts/telling.h"

#include "base/words.h"

#include <cmath>

namespace qw::parts {

std::string told(Length length, UnitSystem system) {
    return system == UnitSystem::metric ? show_metric(length) : show_us(length) + " (" + show_metric(length) + ")";
}

std::string told_missing(Length length, UnitSystem system) {
    return told(Length::hundredths_mm(static_cast<std::int64_t>(std::ceil(length.in_mm() * 100 - 1e-6))), system);
}

UnitSystem apart_in(UnitSystem system, Length measured, Length limit) {
    const bool alike = show(measured, system) == show(limit, system) || show(abs(measured - limit), system) == show(Length(), system);
    return alike ? UnitSystem::metric : system;
}

std::string title_of(const Net& net, std::size_t panel) { return "'" + net.panels[panel].title + "'"; }

std::string titles_of(const Net& net, const std::vector<std::size_t>& panels) {
    std::vector<std::string> titles;
    for (const std::size_t panel : panels) titles.push_back(title_of(net, panel));
    return listed(titles, "and");
}

Finding told_at(const Net& net, const SourceMark* at, std::string rule, std::string message, std::string mend) {
    Finding finding;
    finding.rule = std::move(rule);
    if (net.part) finding.file = net.part->file;
    if (at) finding.line = at->line;
    finding.message = std::move(message);
    finding.mend = std::move(mend);
    return finding;
}

const SourceMark* fold_mark(const Net& net, std::size_t fold) { return net.part && fold < net.part->folds.size() ? &net.part->folds[fold].mark : nullptr; }
const SourceMark* glue_mark(const Net& net, std::size_t glue) { return net.part && glue < net.part->glue.size() ? &net.part->glue[glue].mark : nullptr; }
const SourceMark* face_mark(const Net& net, std::size_t face) { return net.part && face < net.part->faces.size() ? &net.part->faces[face].mark : nullptr; }
const SourceMark* part_mark(const Net& net) { return net.part ? &net.part->mark : nullptr; }

const SourceMark* pocket_mark(const Net& net, const Pocket& pocket) {
    if (net.part)
        for (const kit::PocketTemplate& one : net.part->pockets)
            if (one.name == pocket.name) return &one.mark;
    return nullptr;
}

}  // namespace qw::parts
