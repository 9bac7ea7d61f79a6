// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/guide_text.h"

#include "base/fault.h"
#include "base/words.h"
#include "compose/fractions.h"
#include "texts/render.h"

#include <algorithm>
#include <cstdio>
#include <sstream>

namespace qw::compose {

namespace {

/// A named length as it stands in a sentence, said once for all prints or for each.
class LengthWords {
public:
    LengthWords(const std::vector<SizeColumn>& columns, const texts::Passages& words) : columns_(columns), words_(words) {}

    std::string operator()(const kit::NamedLength& length) const {
        std::vector<std::string> told;
        for (const SizeColumn& column : columns_) told.push_back(one(length, column, false));
        if (std::adjacent_find(told.begin(), told.end(), std::not_equal_to<>()) == told.end()) return told.front();
        for (std::size_t i = 0; i < columns_.size(); ++i) told[i] = one(length, columns_[i], true);
        return listed(told, words_.line("and"));
    }

private:
    std::string one(const kit::NamedLength& length, const SizeColumn& column, bool of_print) const {
        const UnitSystem own = column.measures.ruler, other = own == UnitSystem::metric ? UnitSystem::us : UnitSystem::metric;
        std::string first = told_in(length, column, own), second = told_in(length, column, other);
        if (first.empty()) std::swap(first, second);
        return words_.line("length", texts::Model().text("own", first).text("other", second).truth("both", !second.empty())
                                         .text("print", words_.line(name_of(column.print))).truth("of-print", of_print));
    }

    /// Empty for what a ruler of that system cannot show.
    static std::string told_in(const kit::NamedLength& length, const SizeColumn& column, UnitSystem system) {
        Length value = length.value.in(system);
        if (length.printed && column.measures.conditions.scale != 1)
            value = round_to_step(value * column.measures.conditions.scale, system == UnitSystem::metric ? Length::mm(0.5) : Length::inches(1.0 / 16),
                                  Rounding::nearest);
        const std::string told = show(value, system);
        return value > Length() && told.starts_with("0 ") ? std::string() : real_fractions(told);
    }

    const std::vector<SizeColumn>& columns_;
    const texts::Passages& words_;
};

}  // namespace

std::vector<std::string> step_paragraphs(const std::string& text) {
    std::vector<std::string> paragraphs(1);
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) {
        std::istringstream words(line);
        bool any = false;
        for (std::string word; words >> word; any = true) paragraphs.back() += (paragraphs.back().empty() ? "" : " ") + word;
        if (!any && !paragraphs.back().empty()) paragraphs.emplace_back();
    }
    if (paragraphs.back().empty()) paragraphs.pop_back();
    return paragraphs;
}

texts::Model step_model(const std::vector<SizeColumn>& columns, const texts::Passages& words) {
    const kit::JournalTemplate& journal = *columns.front().measures.journal;
    const LengthWords length_words(columns, words);
    texts::Model model;
    for (const kit::NamedLength& length : journal.lengths) model.text(length.name, length_words(length));
    for (const kit::NamedNumber& number : journal.numbers) {
        char shown[32];
        std::snprintf(shown, sizeof shown, "%g", number.value);
        model.text(number.name, shown);
    }
    for (const kit::PieceTemplate& piece : journal.pieces) model.truth("has-" + piece.name, true);
    for (const kit::LengthTemplate& length : journal.cut_lengths) model.truth("has-" + length.name, true);
    for (const kit::ItemTemplate& item : journal.items) model.truth("has-" + item.name, true);
    for (const std::string& name : journal.replaced) model.truth("has-" + name, false);
    return model;
}

std::vector<std::vector<std::string>> step_texts(const std::vector<SizeColumn>& columns, const texts::Passages& words) {
    const journal::Measures& measures = columns.front().measures;
    const std::string& file = measures.journal->file;
    const texts::Model model = step_model(columns, words);
    std::vector<std::vector<std::string>> all;
    std::vector<FaultNote> faults;
    for (const kit::StepTemplate* step : measures.steps) {
        try {
            all.push_back(step_paragraphs(texts::render(step->text, file, model)));
        } catch (const Fault& fault) {
            // Lines of a text that was folded when it was read are not those of the file; the step's are.
            for (FaultNote note : fault.notes()) {
                note.where = {file, step->mark.line, step->mark.column};
                faults.push_back(std::move(note));
            }
        }
    }
    if (!faults.empty()) throw Fault(FaultKind::not_understood, faults);
    return all;
}

}  // namespace qw::compose
