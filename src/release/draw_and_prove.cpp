// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/draw_and_prove.h"

#include "pdf/draw.h"

#include <algorithm>

namespace qw::release {

namespace {

DrawnFile draw_one(Disk& disk, const Path& folder, const PlannedFile& file, const checks::Rules& rules, const type::Fonts& fonts, engine::Kept& kept,
                   Rendering rendering) {
    const Path path = folder / file.path;
    const pdf::Drawn made = pdf::draw(disk, path, file.document, fonts);
    DrawnFile drawn;
    drawn.record = {file.path, "", made.bytes, made.sha256, file.role, file.paper.name, std::nullopt, static_cast<int>(file.document.pages.size())};
    if (file.print) drawn.record.print = name_of(*file.print);
    drawn.judged = judge_planned(disk, path, file, rules, kept, rendering);
    if (drawn.judged.facts.sha256 != made.sha256) {
        drawn.judged.findings.push_back({"file-damaged", Level::error, file.path, 0, 0, drawn.judged.facts.sha256.substr(0, 16), made.sha256.substr(0, 16),
                                         "The file on disk is not the one that was written", "Check the disk, then run it again"});
    }
    return drawn;
}

}  // namespace

std::vector<DrawnFile> draw_and_prove(Disk& disk, const Path& folder, const Plan& plan, const checks::Rules& rules, const type::Fonts& fonts,
                                      engine::Kept& kept, Rendering rendering, const engine::Jobs& jobs, Progress& progress) {
    for (const PlannedFile& file : plan.files) disk.make_folders((folder / file.path).parent_path());
    std::vector<DrawnFile> drawn(plan.files.size());
    // Files with most pages first, so that the last job is not left alone with the longest one.
    std::vector<std::size_t> order(plan.files.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return plan.files[a].document.pages.size() > plan.files[b].document.pages.size(); });
    progress.begin("drawing and proving", plan.files.size());
    jobs.for_each(order.size(), [&](std::size_t i) {
        drawn[order[i]] = draw_one(disk, folder, plan.files[order[i]], rules, fonts, kept, rendering);
        progress.step();
    });
    return drawn;
}

}  // namespace qw::release
