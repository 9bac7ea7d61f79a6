// SPDX-License-Identifier: GPL-3.0-or-later
#include "texts/render.h"

#include "base/words.h"
#include "texts/tags.h"

#include <kainjow/mustache.hpp>

#include <algorithm>
#include <set>

namespace qw::texts {

namespace {

using kainjow::mustache::data;

data as_data(const Model& model) {
    data object;
    for (const auto& [name, value] : model.values()) {
        if (const auto* words = std::get_if<std::string>(&value)) object.set(name, data(*words));
        else if (const auto* holds = std::get_if<bool>(&value)) object.set(name, data(*holds));
        else {
            data list(data::type::list);
            for (const Model& item : std::get<std::vector<Model>>(value)) list.push_back(as_data(item));
            object.set(name, list);
        }
    }
    return object;
}

/// Answers the library's questions for tag numbers, innermost model first, and writes down what it could not answer.
class Answers final : public kainjow::mustache::basic_context<std::string> {
public:
    /// `vocabulary`: all names of the model, because the library cannot list those of an object.
    Answers(const std::vector<MarkedText::Tag>& tags, const std::set<std::string>& vocabulary, const data& root)
        : tags_(tags), vocabulary_(vocabulary) {
        push(&root);
    }

    void push(const data* value) override { stack_.push_back(value); }
    void pop() override { stack_.pop_back(); }
    const data* get_partial(const std::string&) const override { return nullptr; }

    const data* get(const std::string& number) const override {
        const MarkedText::Tag& tag = tags_.at(std::stoul(number));
        for (auto level = stack_.rbegin(); level != stack_.rend(); ++level)
            if (const data* found = (*level)->get(tag.name)) {
                if (tag.kind == MarkedText::Tag::Kind::variable && !found->is_string()) note_no_text(tag);
                return found;
            }
        note_missing(tag);
        return nullptr;
    }

    std::vector<FaultNote> faults() const {
        std::vector<FaultNote> all;
        for (const auto& [place, note] : faults_) all.push_back(note);
        return all;
    }

private:
    void note_missing(const MarkedText::Tag& tag) const {
        const auto meant = nearest_word(tag.name, names_here());
        add({"unknown-name", tag.mark, "nothing is known under the name '" + tag.name + "'",
             "one of " + listed(names_here()), meant ? "write '" + *meant + "'" : "use a name that this text is given"});
    }
    void note_no_text(const MarkedText::Tag& tag) const {
        add({"not-a-text", tag.mark, "'" + tag.name + "' is no text", "a section '{{#" + tag.name + "}}'", "use it as a section"});
    }
    void add(FaultNote note) const {
        faults_.emplace(std::pair(note.where.line, note.where.column), std::move(note));
    }
    std::vector<std::string> names_here() const {
        std::vector<std::string> names;
        for (const std::string& name : vocabulary_)
            if (std::any_of(stack_.begin(), stack_.end(), [&](const data* level) { return level->get(name) != nullptr; }))
                names.push_back(name);
        return names;
    }

    const std::vector<MarkedText::Tag>& tags_;
    const std::set<std::string>& vocabulary_;
    std::vector<const data*> stack_;
    mutable std::map<std::pair<int, int>, FaultNote> faults_;  // one a place, in the order of the file
};

void gather_names(const Model& model, std::set<std::string>& names) {
    for (const auto& [name, value] : model.values()) {
        names.insert(name);
        if (const auto* list = std::get_if<std::vector<Model>>(&value))
            for (const Model& item : *list) gather_names(item, names);
    }
}

}  // namespace

std::string render(const std::string& template_text, const std::string& shown_file, const Model& model, int first_line) {
    const MarkedText marked = mark_tags(template_text, shown_file, first_line);
    if (!marked.faults.empty()) throw Fault(FaultKind::not_understood, marked.faults);
    kainjow::mustache::mustache text(marked.text);
    if (!text.is_valid())
        throw Fault(FaultKind::not_understood, {"bad-text", {shown_file, first_line, 0}, text.error_message(), "", ""});
    text.set_custom_escape([](const std::string& words) { return words; });
    const data root = as_data(model);
    std::set<std::string> names;
    gather_names(model, names);
    Answers answers(marked.tags, names, root);
    std::ostringstream out;
    text.render(answers, out);
    if (const auto faults = answers.faults(); !faults.empty()) throw Fault(FaultKind::not_understood, faults);
    return out.str();
}

}  // namespace qw::texts
