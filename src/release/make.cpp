// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/make.h"

#include "checks/rules.h"
#include "release/pack.h"
#include "release/plan.h"

#include <algorithm>
#include <set>
#include <tuple>

namespace qw::release {

namespace {

/// A job that draws holds one recoded picture (samples, packed samples) or a few buffers, and one rendered page.
engine::Jobs jobs_within(const Order& order, const std::vector<LookedSet>& looked) {
    std::uint64_t largest = 0;
    for (const LookedSet& set : looked)
        for (const LookedFile& file : set.files)
            if (!file.is_pdf && file.picture.passage == artwork::Passage::recoded) largest = std::max(largest, std::uint64_t{file.picture.width} * file.picture.height);
    const std::uint64_t one = (std::uint64_t{48} << 20) + largest * 8;
    return engine::Jobs(static_cast<unsigned>(std::clamp<std::uint64_t>(order.memory / one, 1, order.jobs)));
}

std::vector<record::Input> inputs_of(Disk& disk, const ReadKit& kit, const std::vector<LookedSet>& looked, const type::Fonts& fonts) {
    std::set<std::tuple<std::string, std::string, std::string>> all;
    for (const kit::InputFile& input : kit.inputs) all.emplace(input.shown, input.sha256, "");
    for (const LookedSet& set : looked)
        for (const LookedFile& file : set.files) all.emplace("kit/" + file.file.shown, file.sha256, file.done);
    for (const type::Cut cut : type::all_cuts)
        all.emplace("system/fonts/" + fonts.file(cut).filename().string(), digest_of(disk, fonts.file(cut)).sha256, "");
    std::vector<record::Input> inputs;
    for (const auto& [path, sha256, done] : all) inputs.push_back({path, sha256, done});
    return inputs;
}

void order_findings(Findings& findings) {
    std::stable_sort(findings.begin(), findings.end(), [](const Finding& a, const Finding& b) { return a.level > b.level; });
}

}  // namespace

Made make(Disk& disk, const Order& order, const ReadKit& kit, const Path& folder, Rendering rendering, Progress& progress) {
    const checks::Rules rules(kit.pipeline->checks, kit.manifest.overrides);
    const type::Fonts fonts = type::Fonts::find();
    const std::vector<LookedSet> looked = look(disk, kit.manifest, engine::Jobs(order.jobs), progress);
    const Plan planned = plan(kit, looked, rules, fonts);

    Made made;
    made.report.subject = kit.manifest.kit + " " + kit.manifest.version;
    made.report.title = kit.manifest.title;
    made.report.strict = order.strict;
    made.report.findings = planned.findings;
    made.record.kit = kit.manifest.kit;
    made.record.version = kit.manifest.version;
    made.record.tool = order.tool;
    made.record.inputs = inputs_of(disk, kit, looked, fonts);

    for (DrawnFile& drawn : draw_and_prove(disk, folder, planned, rules, fonts, rendering, jobs_within(order, looked), progress)) {
        made.record.files.push_back(std::move(drawn.record));
        std::move(drawn.rows.begin(), drawn.rows.end(), std::back_inserter(made.report.sheets));
        made.report.findings.insert(made.report.findings.end(), drawn.findings.begin(), drawn.findings.end());
    }
    if (made.report.fit_for_sale()) {
        progress.begin("packing and proving the bundle", 1);
        pack(disk, folder, kit, rules, made.record, made.report.findings);
    }
    made.report.tried = rules.what_was_tried();
    order_findings(made.report.findings);
    return made;
}

}  // namespace qw::release
