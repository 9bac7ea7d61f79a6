// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/parts_words.h"

#include "base/fault.h"
#include "base/words.h"
#include "compose/fractions.h"
#include "compose/guide_needs.h"
#include "compose/guide_text.h"
#include "materials/amounts.h"
#include "texts/render.h"

#include <algorithm>
#include <cstdio>
#include <set>

namespace qw::compose {

namespace {

UnitSystem other_ruler(UnitSystem own) { return own == UnitSystem::metric ? UnitSystem::us : UnitSystem::metric; }
Length ruler_step(UnitSystem system) { return system == UnitSystem::metric ? Length::mm(0.5) : Length::inches(1.0 / 16); }

std::string size_text(Size size, UnitSystem system, Rounding way) {
    const Length step = ruler_step(system);
    return real_fractions(show(round_to_step(size.width, step, way), round_to_step(size.height, step, way), system));
}

bool is_folded(const PartOfKit::InPrint& in) { return in.folded->states.size() == in.net->folds.size() + 1; }

}  // namespace

std::string PartsWriter::title(const PartOfKit& part) const {
    return words_.line("set-title", texts::Model().text("set", part.title).text("part", part.prints.front().net->part->title));
}

GuideContent PartsWriter::content(const PartOfKit& part) {
    const kit::PartTemplate& written = *part.prints.front().net->part;
    GuideContent content;
    content.facts = facts(part);
    content.introduction = words_.paragraphs("introduction", texts::Model().text("count", std::to_string(part.count)).truth("several", part.count > 1));
    content.introduction.insert(content.introduction.end(), part.limits.begin(), part.limits.end());
    content.cautions = first_cautions(part);
    const texts::Model names = step_names(part);
    std::vector<FaultNote> faults;
    for (std::size_t i = 0; i < written.steps.size(); ++i) {
        try {
            content.steps.push_back(step(part, i, names));
        } catch (const Fault& fault) {
            for (FaultNote note : fault.notes()) {
                note.where = {written.file, written.steps[i].mark.line, written.steps[i].mark.column};
                faults.push_back(std::move(note));
            }
        }
    }
    if (!faults.empty()) throw Fault(FaultKind::not_understood, faults);
    return content;
}

/// Said once where all prints say the same.
GuideThing PartsWriter::measured(const std::string& name, const std::string& title, const PartOfKit& part, Rounding way,
                                 const std::function<Size(const PartOfKit::InPrint&)>& size) const {
    GuideThing thing{"", words_.line(name, texts::Model().text("title", title)), {}, {}};
    const UnitSystem own = context_.paper.ruler;
    for (const PartOfKit::InPrint& in : part.prints)
        thing.sizes.push_back({words_.line(name_of(in.print)), size_text(size(in), own, way), size_text(size(in), other_ruler(own), way)});
    const bool alike = std::all_of(thing.sizes.begin(), thing.sizes.end(), [&](const GuideSize& s) { return s.own == thing.sizes.front().own; });
    if (alike) {
        thing.sizes.resize(1);
        thing.sizes.front().print.clear();
    }
    return thing;
}

std::vector<GuideThing> PartsWriter::facts(const PartOfKit& part) const {
    const parts::Net& net = *part.prints.front().net;
    std::vector<GuideThing> all;
    all.push_back(measured("size-flat", "", part, Rounding::nearest, [](const auto& in) { return parts::bounds(in.net->whole).size(); }));
    if (!std::all_of(part.prints.begin(), part.prints.end(), is_folded)) return all;
    if (!net.folds.empty()) all.push_back(measured("size-folded", "", part, Rounding::nearest, [](const auto& in) { return in.folded->size; }));
    for (std::size_t i = 0; i < net.pockets.size(); ++i)
        all.push_back(measured("room-in", materials::inside_sentence(net.pockets[i].title), part, Rounding::down, [&](const auto& in) {
            const parts::PocketRoom room = parts::room_of(*in.net, *in.folded, in.net->pockets[i]);
            return Size{room.width, room.depth};
        }));
    return all;
}

std::string PartsWriter::length(const kit::NamedLength& length, const PartOfKit& part) const {
    const UnitSystem own = context_.paper.ruler;
    std::vector<std::string> told;
    const auto one = [&](const PartOfKit::InPrint& in, bool of_print) {
        const auto shown = [&](UnitSystem system) {
            Length value = length.value.in(system);
            if (length.printed && in.net->conditions.scale != 1) value = round_to_step(value * in.net->conditions.scale, ruler_step(system), Rounding::nearest);
            return real_fractions(show(value, system));
        };
        return words_.line("length", texts::Model().text("own", shown(own)).text("other", shown(other_ruler(own))).text("print", words_.line(name_of(in.print)))
                                         .truth("of-print", of_print));
    };
    for (const PartOfKit::InPrint& in : part.prints) told.push_back(one(in, false));
    if (std::adjacent_find(told.begin(), told.end(), std::not_equal_to<>()) == told.end()) return told.front();
    for (std::size_t i = 0; i < told.size(); ++i) told[i] = one(part.prints[i], true);
    return listed(told, words_.line("and"));
}

texts::Model PartsWriter::step_names(const PartOfKit& part) const {
    const kit::PartTemplate& written = *part.prints.front().net->part;
    texts::Model model;
    for (const kit::NamedLength& one : written.lengths) model.text(one.name, length(one, part));
    for (const kit::NamedNumber& number : written.numbers) {
        char shown[32];
        std::snprintf(shown, sizeof shown, "%g", number.value);
        model.text(number.name, shown);
    }
    return model;
}

GuideStep PartsWriter::step(const PartOfKit& part, std::size_t number, const texts::Model& names) {
    const kit::PartTemplate& written = *part.prints.front().net->part;
    const kit::StepTemplate& from = written.steps[number];
    const SourceMark mark{written.file, from.mark.line, from.mark.column};
    GuideStep step{from.title, step_paragraphs(texts::render(from.text, written.file, names)), {}, {}, {}, {}, from.drawing};
    std::vector<std::string> titles, cautions;
    for (const std::string& name : from.tools) {
        const kit::Tool& tool = guide_tool(context_, name, mark);
        titles.push_back(materials::inside_sentence(tool.title));
        cautions.insert(cautions.end(), tool.cautions.begin(), tool.cautions.end());
    }
    if (!titles.empty()) step.tools = listed(titles, words_.line("and"));
    std::set<std::string> before;
    for (const std::string& name : cautions)
        if (const auto told = places_.find(name); told != places_.end() && !told->second.empty()) before.insert(told->second);
    const std::string here = words_.line("place", texts::Model().text("set", part.title).text("step", std::to_string(number + 1)));
    step.cautions = told_first(cautions, here);
    before.erase(here);
    if (!before.empty()) step.as_before = words_.line("as-before", texts::Model().text("places", listed({before.begin(), before.end()}, words_.line("and"))));
    return step;
}

/// Those that always hold stand with the first set, those of what a set is glued and tied with at its beginning.
std::vector<std::string> PartsWriter::first_cautions(const PartOfKit& part) {
    const parts::Net& net = *part.prints.front().net;
    std::vector<std::string> names;
    const auto add = [&](const std::string& material) {
        const auto& all = context_.pipeline.materials;
        const auto found = std::find_if(all.begin(), all.end(), [&](const kit::Material& m) { return m.name == material; });
        if (found != all.end()) names.insert(names.end(), found->cautions.begin(), found->cautions.end());
    };
    for (const kit::Caution& caution : context_.pipeline.cautions)
        if (caution.always) names.push_back(caution.name);
    for (const parts::NeededItem& item : net.items) add(item.of->name);
    for (const parts::NeededLength& length : net.lengths) add(length.of->material);
    return told_first(names, "");
}

std::vector<std::string> PartsWriter::told_first(const std::vector<std::string>& names, const std::string& place) {
    std::vector<std::string> told;
    for (const kit::Caution& caution : context_.pipeline.cautions)
        if (std::find(names.begin(), names.end(), caution.name) != names.end() && places_.emplace(caution.name, place).second) told.push_back(caution.text);
    for (const std::string& name : names)
        if (!places_.contains(name))
            throw Fault(FaultKind::not_understood, FaultNote{"unknown-caution", {"pipeline/materials.yaml", 0, 0}, "there is no caution '" + name + "'", "",
                                                             "write it under 'cautions'"});
    return told;
}

}  // namespace qw::compose
