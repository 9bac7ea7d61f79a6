// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/make.h"

#include "checks/rules.h"
#include "release/kit_folder.h"
#include "release/kit_rights.h"
#include "release/pack.h"
#include "release/plan.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace qw::release {

namespace {

/// A job that draws holds one recoded picture (samples, packed samples) or a few buffers, and one rendered page.
engine::Jobs jobs_within(const Order& order, const std::vector<LookedSet>& looked) {
    std::uint64_t largest = 0;
    for (const LookedSet& set : looked)
        for (const LookedFile& file : set.files)
            if (!file.is_pdf && file.picture.passage == artwork::Passage::recoded)
                largest = std::max(largest, std::uint64_t{file.picture.width} * file.picture.height);
    const std::uint64_t one = (std::uint64_t{48} << 20) + largest * 8;
    return engine::Jobs(static_cast<unsigned>(std::clamp<std::uint64_t>(order.memory / one, 1, order.jobs)));
}

std::vector<record::Input> inputs_of(Disk& disk, const ReadKit& kit, const std::vector<LookedSet>& looked, const type::Fonts& fonts) {
    // A file that two sets share stands there once, with the rights of the first.
    std::map<std::tuple<std::string, std::string, std::string>, std::string> all;
    for (const kit::InputFile& input : kit.inputs) all[{input.shown, input.sha256, ""}];
    for (const LookedSet& set : looked) {
        const kit::Rights* rights = kit.manifest.rights_of(*set.set);
        for (const LookedFile& file : set.files) all.try_emplace({"kit/" + file.file.shown, file.sha256, file.done}, rights ? rights->text() : "");
    }
    for (const type::Cut cut : type::all_cuts) {
        const kit::FontData* font = kit.pipeline->font(fonts.name(cut));
        all.try_emplace({"system/fonts/" + fonts.file(cut).filename().string(), digest_of(disk, fonts.file(cut)).sha256, ""},
                        font ? kit::Rights{font->made_by, font->allowed_by, std::nullopt}.text() : "");
    }
    std::vector<record::Input> inputs;
    for (const auto& [key, rights] : all) inputs.push_back({std::get<0>(key), std::get<1>(key), std::get<2>(key), rights});
    return inputs;
}

/// Whether the pictures of the kit belong together, seen on its first paper without a border, where most of them is seen.
void check_cohesion(const Prepared& prepared, const std::vector<DrawnFile>& drawn, Findings& findings) {
    const kit::Manifest& manifest = prepared.kit.manifest;
    std::vector<checks::PaletteSeen> all;
    for (std::size_t i = 0; i < drawn.size(); ++i) {
        const PlannedFile& file = prepared.plan.files[i];
        if (file.paper.name != manifest.papers.front().name || file.print != manifest.prints.front()) continue;
        for (const checks::PaletteSeen& one : drawn[i].judged.palettes)
            if (std::none_of(all.begin(), all.end(), [&](const checks::PaletteSeen& other) { return other.shown == one.shown; })) all.push_back(one);
    }
    checks::check_palettes(prepared.rules, all, findings);
}

}  // namespace

Prepared::Prepared(Disk& disk, const Order& order, const ReadKit& read, engine::Kept& kept, Progress& progress)
    : kit(read),
      rules(read.pipeline->checks, read.manifest.overrides),
      fonts(type::Fonts::find()),
      looked(look(disk, read.manifest, kept, engine::Jobs(order.jobs), progress)),
      plan(release::plan(read, looked, rules, fonts)),
      jobs(jobs_within(order, looked)) {}

void order_findings(Findings& findings) {
    std::stable_sort(findings.begin(), findings.end(), [](const Finding& a, const Finding& b) { return a.level > b.level; });
}

engine::Kept kept_of(Disk& disk, const Order& order, const std::string& kit, engine::Kept::Use use) {
    const Path folder = order.out / kit;
    const auto stat = disk.stat(folder);
    if (!stat || stat->type != FileType::folder) return {};
    return {disk, folder / ".kept", use};
}

Made make(Disk& disk, const Order& order, const Prepared& prepared, engine::Kept& kept, const Path& folder, Rendering rendering, Progress& progress) {
    const kit::Manifest& manifest = prepared.kit.manifest;
    Made made;
    made.report.subject = manifest.kit + " " + manifest.version;
    made.report.title = manifest.title;
    made.report.strict = order.strict;
    made.report.findings = prepared.plan.findings;
    check_kit_folder(disk, manifest, prepared.rules, made.report.findings);
    check_kit_rights(prepared.kit, prepared.looked, prepared.fonts, prepared.rules, made.report.findings);
    made.record.kit = manifest.kit;
    made.record.version = manifest.version;
    made.record.tool = order.tool;
    made.record.inputs = inputs_of(disk, prepared.kit, prepared.looked, prepared.fonts);

    std::vector<DrawnFile> drawn = draw_and_prove(disk, folder, prepared.plan, prepared.rules, prepared.fonts, kept, rendering, prepared.jobs, progress);
    std::vector<const JudgedFile*> judged;
    for (DrawnFile& file : drawn) {
        made.record.files.push_back(file.record);
        std::move(file.judged.rows.begin(), file.judged.rows.end(), std::back_inserter(made.report.sheets));
        made.report.findings.insert(made.report.findings.end(), file.judged.findings.begin(), file.judged.findings.end());
        judged.push_back(&file.judged);
    }
    // Where the kit has no journal there are no sheets to look for; that is told already.
    if (std::any_of(prepared.plan.files.begin(), prepared.plan.files.end(), [](const PlannedFile& file) { return !file.shows; }))
        judge_together(judged, prepared.rules, made.report.findings);
    check_cohesion(prepared, drawn, made.report.findings);
    if (made.report.fit_for_sale()) {
        progress.begin("packing and proving the bundle", 1);
        pack(disk, folder, prepared.kit, prepared.rules, made.record, made.report.findings);
    }
    made.report.tried = prepared.rules.what_was_tried();
    made.report.untried = prepared.rules.what_was_not_tried();
    order_findings(made.report.findings);
    return made;
}

}  // namespace qw::release
