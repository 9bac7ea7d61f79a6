// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/guide_content.h"

#include "base/fault.h"
#include "base/words.h"
#include "compose/guide_needs.h"
#include "compose/guide_text.h"
#include "compose/guide_things.h"
#include "compose/piece_table.h"
#include "materials/amounts.h"

#include <algorithm>

namespace qw::compose {

namespace {

bool told_for_each_print(const std::vector<GuideThing>& things) {
    return std::any_of(things.begin(), things.end(), [](const GuideThing& thing) { return thing.sizes.size() > 1; });
}

/// One guide serves all prints: a step stands in it that stands for one of them.
void join_steps(std::vector<SizeColumn>& columns) {
    std::vector<const kit::StepTemplate*> joined;
    const auto stands = [](const SizeColumn& column, const kit::StepTemplate& step) {
        const auto& steps = column.measures.steps;
        return std::find(steps.begin(), steps.end(), &step) != steps.end();
    };
    for (const kit::StepTemplate& step : columns.front().measures.journal->steps)
        if (std::any_of(columns.begin(), columns.end(), [&](const SizeColumn& column) { return stands(column, step); })) joined.push_back(&step);
    columns.front().measures.steps = std::move(joined);
}

/// A print whose checks fail has no figures to tell. The first column has the guide's steps.
std::vector<SizeColumn> shown_columns(const std::vector<SizeColumn>& full) {
    std::vector<SizeColumn> shown;
    std::copy_if(full.begin(), full.end(), std::back_inserter(shown), [](const SizeColumn& c) { return !has_errors(c.measures.findings); });
    if (shown.empty()) shown = full;
    join_steps(shown);
    return shown;
}

class GuideWriter {
public:
    GuideWriter(const SheetContext& context, const std::vector<SizeColumn>& full, const texts::Passages& words)
        : context_(context), full_(full), words_(words), things_(context, full, words), shown_(shown_columns(full)), measures_(shown_.front().measures) {}

    GuideContent write() {
        content_.facts = things_.facts();
        steps();
        care();
        introduction(told_for_each_print(content_.facts) ||
                     std::any_of(content_.steps.begin(), content_.steps.end(), [](const GuideStep& s) { return told_for_each_print(s.things); }));
        return std::move(content_);
    }

private:
    /// Everything that is wrong with any step is told at once.
    void steps() {
        std::vector<FaultNote> faults;
        const auto gather = [&](const auto& work) {
            try {
                work();
            } catch (const Fault& fault) {
                faults.insert(faults.end(), fault.notes().begin(), fault.notes().end());
            }
        };
        std::vector<std::vector<std::string>> texts(measures_.steps.size());
        std::vector<StepNeeds> needs(texts.size());
        gather([&] { texts = step_texts(shown_, words_); });
        gather([&] { needs = needs_of_steps(context_, measures_); });
        for (std::size_t i = 0; i < texts.size(); ++i) {
            const kit::StepTemplate& step = *measures_.steps[i];
            GuideStep written{step.title, texts[i], {}, tools(needs[i]), {}, {}, step.drawing};
            for (const std::string& name : step.uses)
                gather([&] {
                    for (GuideThing& thing : things_.used(name, step)) written.things.push_back(std::move(thing));
                });
            content_.steps.push_back(std::move(written));
        }
        if (!faults.empty()) throw Fault(FaultKind::not_understood, faults);
    }

    std::string tools(const StepNeeds& needs) const {
        std::vector<std::string> titles;
        for (const kit::Tool* tool : needs.tools) titles.push_back(materials::inside_sentence(tool->title));
        return titles.empty() ? "" : listed(titles, words_.line("and"));
    }

    void care() {
        Care care = care_of(context_, measures_);
        content_.cautions = std::move(care.first);
        for (std::size_t i = 0; i < content_.steps.size(); ++i) {
            content_.steps[i].cautions = std::move(care.steps[i].cautions);
            std::vector<std::string> numbers;
            for (const int number : care.steps[i].as_in) numbers.push_back(std::to_string(number));
            if (numbers.empty()) continue;
            content_.steps[i].as_before =
                words_.line("as-before", texts::Model().text("steps", listed(numbers, words_.line("and"))).truth("several", numbers.size() > 1));
        }
    }

    void introduction(bool prints_differ) {
        const bool metric = measures_.ruler == UnitSystem::metric;
        std::vector<std::string> prints;
        for (const SizeColumn& column : full_) prints.push_back(words_.line(name_of(column.print)));
        texts::Model model;
        model.text("own-ruler", words_.line(metric ? "metric" : "us")).text("other-ruler", words_.line(metric ? "us" : "metric"));
        model.truth("prints-differ", prints_differ).text("prints", listed(prints, words_.line("and")));
        for (const char* name : {"full-size", "reading"})
            for (std::string& paragraph : words_.paragraphs(name, model)) content_.introduction.push_back(std::move(paragraph));
        for (const SizeColumn& column : full_)
            for (const std::string& reason : reasons(column.measures.findings, true))
                content_.introduction.push_back(
                    words_.line("note-on-print", texts::Model().text("print", words_.line(name_of(column.print))).text("reason", reason)));
    }

    const SheetContext& context_;
    const std::vector<SizeColumn>& full_;
    const texts::Passages& words_;
    GuideThings things_;
    std::vector<SizeColumn> shown_;
    const journal::Measures& measures_;
    GuideContent content_;
};

}  // namespace

GuideContent guide_content(const SheetContext& context, const std::vector<SizeColumn>& full, const texts::Passages& words) {
    return GuideWriter(context, full, words).write();
}

}  // namespace qw::compose
