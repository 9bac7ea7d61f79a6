// SPDX-License-Identifier: GPL-3.0-or-later
#include "formulas/reckoning.h"
#include "parts/assemble.h"
#include "parts/net.h"
#include "parts/outline.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <numbers>

namespace qw::parts {

namespace {

using formulas::Asked;
using formulas::Want;

/// What the conditions give: lengths in mm, or plain numbers.
struct GivenWord {
    const char* word;
    bool length;
    double (*value)(const NetConditions&);
};
constexpr std::array<GivenWord, 6> given_words = {{
    {"stock_caliper", true, [](const NetConditions& c) { return c.caliper.in_mm(); }},
    {"contents_width", true, [](const NetConditions& c) { return c.contents.width.in_mm(); }},
    {"contents_height", true, [](const NetConditions& c) { return c.contents.height.in_mm(); }},
    {"contents_thickness", true, [](const NetConditions& c) { return c.contents_thickness.in_mm(); }},
    {"print_scale", false, [](const NetConditions& c) { return c.scale; }},
    {"pi", false, [](const NetConditions&) { return std::numbers::pi; }},
}};

formulas::Names names_of(const kit::PartTemplate& part, std::vector<FaultNote>& notes) {
    formulas::Names names;
    for (const GivenWord& one : given_words) names.give(one.word);
    for (const kit::NamedLength& length : part.lengths) names.add(length.name, length.mark, notes);
    for (const kit::NamedNumber& number : part.numbers) names.add(number.name, number.mark, notes);
    names.begin_evaluated();
    for (const kit::Formula& value : part.values) names.add(value.name, value.mark, notes);
    return names;
}

void ask_outline(std::vector<Asked>& all, const std::vector<kit::OutlineStep>& outline, const std::string& place) {
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const std::string at = place + ".outline[" + std::to_string(i + 1) + "]";
        all.push_back({&outline[i].x, at + ".x", Want::coordinate});
        all.push_back({&outline[i].y, at + ".y", Want::coordinate});
        if (outline[i].kind == kit::OutlineStep::Kind::rounded) all.push_back({&outline[i].radius, at + ".rounded", Want::length});
        if (outline[i].kind != kit::OutlineStep::Kind::arc) continue;
        all.push_back({&outline[i].through_x, at + ".through.x", Want::coordinate});
        all.push_back({&outline[i].through_y, at + ".through.y", Want::coordinate});
    }
}

std::vector<Asked> asked_of(const kit::PartTemplate& part) {
    std::vector<Asked> all;
    for (const kit::PanelTemplate& panel : part.panels) ask_outline(all, panel.outline, panel.name);
    for (const kit::NoInkTemplate& area : part.no_ink) ask_outline(all, area.outline, area.name);
    for (const kit::HoleTemplate& hole : part.holes) {
        all.push_back({&hole.x, hole.name + ".at.x", Want::coordinate});
        all.push_back({&hole.y, hole.name + ".at.y", Want::coordinate});
    }
    for (const kit::LengthTemplate& length : part.cut_lengths) {
        all.push_back({&length.count, length.name + ".count", Want::count});
        all.push_back({&length.length, length.name + ".length", Want::length});
    }
    for (const kit::ItemTemplate& item : part.items) all.push_back({&item.count, item.name + ".count", Want::count});
    for (std::size_t i = 0; i < part.steps.size(); ++i)
        if (!part.steps[i].when.text.empty()) all.push_back({&part.steps[i].when, "steps[" + std::to_string(i + 1) + "].when", Want::number});
    return all;
}

std::vector<Asked> named_of(const kit::PartTemplate& part) {
    std::vector<Asked> named;
    for (const kit::Formula& value : part.values) named.push_back({&value, value.name, Want::any});
    return named;
}

/// All formulas of a template for one ruler. The paper's own gives the net, the other one what stands beside it.
class Evaluation {
public:
    Evaluation(const kit::PartTemplate& part, const NetConditions& conditions) : part_(part), conditions_(conditions) {
        std::vector<FaultNote> notes;
        formulas::Names names = names_of(part, notes);
        reckoning_.emplace(std::move(names), named_of(part), asked_of(part), notes);
        if (!notes.empty()) throw Fault(FaultKind::not_understood, std::move(notes));
    }

    formulas::Figures in(UnitSystem system) {
        char where[64];
        std::snprintf(where, sizeof where, " (print scale %.3f)", conditions_.scale);
        return reckoning_->in([&](std::vector<double>& slots, double unit) { fill(slots, system, unit); }, where);
    }

private:
    void fill(std::vector<double>& slots, UnitSystem system, double unit) const {
        std::size_t slot = 0;
        for (const GivenWord& one : given_words) slots[slot++] = one.value(conditions_) * (one.length ? unit : 1);
        for (const kit::NamedLength& length : part_.lengths)
            slots[slot++] = length.value.in(system).in_mm() * (length.printed ? conditions_.scale : 1) * unit;
        for (const kit::NamedNumber& number : part_.numbers) slots[slot++] = number.value;
    }

    const kit::PartTemplate& part_;
    const NetConditions& conditions_;
    std::optional<formulas::Reckoning> reckoning_;
};

class NetBuilder {
public:
    NetBuilder(const kit::PartTemplate& part, const NetConditions& conditions) : part_(part) {
        net_.part = &part;
        net_.conditions = conditions;
    }

    Net build() {
        Evaluation evaluation(part_, net_.conditions);
        own_ = evaluation.in(net_.conditions.system);
        const UnitSystem other = net_.conditions.system == UnitSystem::metric ? UnitSystem::us : UnitSystem::metric;
        beside_ = evaluation.in(other);
        add_panels();
        add_folds();
        for (const kit::GlueTemplate& glue : part_.glue) net_.glue.push_back({panel(glue.tab, glue.mark), panel(glue.on, glue.mark), glue.with});
        for (const std::string& name : part_.layers) net_.layers.push_back(panel(name, part_.mark));
        add_pockets();
        add_holes();
        add_no_ink();
        throw_if_any();  // what follows needs sound panels
        judge_panels();
        Assembled sheet = assembled(net_.panels);
        net_.whole = std::move(sheet.whole);
        net_.cut = std::move(sheet.cut);
        add_faces();
        throw_if_any();
        add_needs();
        return std::move(net_);
    }

private:
    void throw_if_any() {
        if (!notes_.empty()) throw Fault(FaultKind::not_understood, std::move(notes_));
    }

    std::size_t panel(const std::string& name, const SourceMark& mark) {
        for (std::size_t i = 0; i < part_.panels.size(); ++i)
            if (part_.panels[i].name == name) return i;
        notes_.push_back({"unknown-name", mark, "there is no panel '" + name + "' in part '" + part_.name + "'", {}, {}});
        return 0;
    }
    std::vector<std::size_t> panels(const std::vector<std::string>& names, const SourceMark& mark) {
        std::vector<std::size_t> all;
        for (const std::string& name : names) all.push_back(panel(name, mark));
        return all;
    }

    Point point(const kit::Formula& x, const kit::Formula& y) const { return {own_.length(x), own_.length(y)}; }

    std::optional<Outline> outline(const std::vector<kit::OutlineStep>& written, const std::string& of) {
        std::vector<Step> steps;
        for (const kit::OutlineStep& one : written)
            steps.push_back({one.kind, point(one.x, one.y), own_.length(one.radius), point(one.through_x, one.through_y)});
        MadeOutline made = outline_of(steps);
        for (const OutlineFault& fault : made.faults) {
            const SourceMark& mark = written.empty() ? part_.mark : written[std::min(fault.step, written.size() - 1)].mark;
            notes_.push_back({fault.code, mark, "the outline of '" + of + "' " + fault.wrong, fault.expected, fault.mend});
        }
        return made.faults.empty() ? std::move(made.outline) : std::nullopt;
    }

    void add_panels() {
        for (const kit::PanelTemplate& one : part_.panels) {
            Panel panel{one.name, one.title, {}, {}};
            if (auto made = outline(one.outline, one.name)) {
                panel.outline = std::move(*made);
                panel.region = panel.outline.region();
            }
            net_.panels.push_back(std::move(panel));
        }
    }

    void judge_panels() {
        for (const PanelsFault& fault : faults_of(net_.panels)) {
            const SourceMark& mark = fault.panels.empty() ? part_.mark : part_.panels[fault.panels.front()].mark;
            notes_.push_back({fault.code, mark, fault.wrong, fault.expected, fault.mend});
        }
        throw_if_any();
    }

    void add_folds() {
        for (const kit::FoldTemplate& fold : part_.folds) net_.folds.push_back({panels(fold.moves, fold.mark), fold.valley});
    }

    std::size_t folds(const std::optional<int>& after) const {
        return after ? std::min(static_cast<std::size_t>(*after), part_.folds.size()) : part_.folds.size();
    }

    void add_faces() {
        for (const kit::PartFaceTemplate& face : part_.faces) {
            const auto across = panels(face.panels, face.mark);
            net_.faces.push_back({face.name, face.title, face.front ? Side::front : Side::back, across, frame_of(net_.panels, across), face.head, face.needed,
                                  folds(face.after), face.from_front});
        }
    }

    void add_pockets() {
        for (const kit::PocketTemplate& pocket : part_.pockets)
            net_.pockets.push_back({pocket.name, pocket.title, panel(pocket.front, pocket.mark), panel(pocket.back, pocket.mark), pocket.opens,
                                    pocket.closes, folds(pocket.after)});
    }

    void add_holes() {
        for (const kit::HoleTemplate& hole : part_.holes)
            net_.holes.push_back({hole.name, hole.title, point(hole.x, hole.y), hole.diameter.in(net_.conditions.system), hole.tool});
    }

    void add_no_ink() {
        for (const kit::NoInkTemplate& area : part_.no_ink)
            if (auto made = outline(area.outline, area.name)) net_.no_ink.push_back({area.name, area.front ? Side::front : Side::back, made->region()});
    }

    void add_needs() {
        const bool metric = net_.conditions.system == UnitSystem::metric;
        const auto cut = [](const kit::LengthTemplate& length, const formulas::Figures& figures, UnitSystem system) {
            return round_to_step(figures.length(length.length), length.rounding.step.in(system), length.rounding.way);
        };
        for (const kit::LengthTemplate& length : part_.cut_lengths)
            if (const int count = own_.count(length.count))
                net_.lengths.push_back(
                    {&length, count, cut(length, metric ? own_ : beside_, UnitSystem::metric), cut(length, metric ? beside_ : own_, UnitSystem::us)});
        for (const kit::ItemTemplate& item : part_.items)
            if (const int count = own_.count(item.count)) net_.items.push_back({&item, count});
        for (const kit::StepTemplate& step : part_.steps)
            if (step.when.text.empty() || own_.at(step.when).value != 0) net_.steps.push_back(&step);
    }

    const kit::PartTemplate& part_;
    Net net_;
    formulas::Figures own_, beside_;
    std::vector<FaultNote> notes_;
};

}  // namespace

Net net_of(const kit::PartTemplate& part, const NetConditions& conditions) { return NetBuilder(part, conditions).build(); }

}  // namespace qw::parts
