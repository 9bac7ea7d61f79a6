// SPDX-License-Identifier: GPL-3.0-or-later
// What a kit chose among a journal's optional things and alternatives.
#include "base/words.h"
#include "kit/faults.h"
#include "kit/journal_template.h"
#include "kit/values.h"

#include <algorithm>

namespace qw::kit {

namespace {

constexpr const char* left_out = "none";

using Words = std::vector<std::string>;

bool among(const Words& words, const std::string& word) { return std::find(words.begin(), words.end(), word) != words.end(); }

void add_new(Words& words, const Words& more) {
    for (const std::string& word : more)
        if (!among(words, word)) words.push_back(word);
}

template <typename Do>
void each_thing(const JournalTemplate& journal, Do act) {
    for (const PieceTemplate& piece : journal.pieces) act(piece.name, piece);
    for (const LengthTemplate& length : journal.cut_lengths) act(length.name, length);
    for (const ItemTemplate& item : journal.items) act(item.name, item);
}

const Choosable* thing_of(const JournalTemplate& journal, const std::string& name) {
    const Choosable* found = nullptr;
    each_thing(journal, [&](const std::string& other, const Choosable& thing) {
        if (other == name) found = &thing;
    });
    return found;
}

void check_choice(const JournalTemplate& journal, const std::string& name, const Sourced<std::string>& choice, Faults& faults) {
    Lookup offered{"something that can be chosen", journal.file, {}};
    each_thing(journal, [&](const std::string& other, const Choosable& thing) {
        if (thing.optional || !thing.instead.empty()) offered.known.push_back(other);
    });
    Lookup words{"what can stand for " + in_quotes(name), "", {}};
    const Choosable* thing = thing_of(journal, name);
    if (thing)
        for (const Alternative& other : thing->instead) words.known.push_back(other.name);
    if (!thing) {
        tell_unknown_name("unknown-name", choice.mark, name, offered, faults);
    } else if (!among(offered.known, name)) {
        faults.add("not-here", choice.mark, "the journal leaves no choice for " + in_quotes(name), listed(offered.known), "remove it");
    } else if (*choice == left_out && !thing->optional) {
        faults.add("not-here", choice.mark, in_quotes(name) + " cannot be left out", listed(words.known), "remove it, or choose another");
    } else if (*choice != left_out && !among(words.known, *choice)) {
        if (thing->optional) words.known.push_back(left_out);
        tell_unknown_name("unknown-word", choice.mark, *choice, words, faults);
    }
}

/// An alternative that is bought, in the place of the thing. Where it says no use the thing's own holds: the work is
/// the same, done with something else.
void put_in_place(Choosable& thing, std::string& title, std::string& use, const Alternative& other) {
    title = other.title;
    if (!other.use.empty()) use = other.use;
    if (other.thickness) thing.thickness = other.thickness;
    thing.optional = false;
    thing.tools = other.tools;
    thing.instead.clear();
}

void put_in_place(PieceTemplate& piece, const Alternative& other) {
    put_in_place(piece, piece.title, piece.use, other);
    piece.stock = "bought";
    piece.material = other.material;
}

void put_in_place(LengthTemplate& length, const Alternative& other) {
    put_in_place(length, length.title, length.use, other);
    length.material = other.material;
}

/// The size is that of the thing that was replaced.
void put_in_place(ItemTemplate& item, const Alternative& other) {
    put_in_place(item, item.title, item.use, other);
    item.size.reset();
}

/// What stands in: nothing when the thing is left out.
Alternative alternative(const Choosable& thing, const std::string& choice) {
    for (const Alternative& other : thing.instead)
        if (other.name == choice) return other;
    return {};
}

class Chooser {
public:
    explicit Chooser(JournalTemplate& journal) : journal_(journal) {}

    /// Both have been checked.
    void choose(const std::string& name, const std::string& choice) {
        choose_among(journal_.pieces, name, choice);
        choose_among(journal_.cut_lengths, name, choice);
        choose_among(journal_.items, name, choice);
        if (!among(journal_.replaced, name)) journal_.replaced.push_back(name);
    }

private:
    template <typename Thing>
    void choose_among(std::vector<Thing>& things, const std::string& name, const std::string& choice) {
        const auto thing = std::find_if(things.begin(), things.end(), [&](const Thing& one) { return one.name == name; });
        if (thing == things.end()) return;
        const Alternative other = alternative(*thing, choice);
        const Words tools_before = thing->tools;
        if (!other.material.empty()) {
            put_in_place(*thing, other);
        } else {  // nothing is bought: the thing is gone, and what its other way needs is needed now
            things.erase(thing);
            forget(name);
            add_new(journal_.tools, other.tools);
        }
        change_tools(name, tools_before, other.tools);
        if (other.material.empty())
            for (StepTemplate& step : journal_.steps) std::erase(step.uses, name);
    }

    /// An item that is gone glues no piece.
    void forget(const std::string& name) {
        for (PieceTemplate& piece : journal_.pieces)
            if (piece.glue == name) piece.glue.clear();
    }

    /// Steps that use the thing need other tools now.
    void change_tools(const std::string& name, const Words& before, const Words& now) {
        for (StepTemplate& step : journal_.steps) {
            if (!among(step.uses, name)) continue;
            std::erase_if(step.tools, [&](const std::string& tool) { return among(before, tool) && !needed(step, tool); });
            add_new(step.tools, now);
        }
    }

    /// Whether a tool is needed in a step for anything that is there.
    bool needed(const StepTemplate& step, const std::string& tool) const {
        const auto needs = [&](const std::string& name) {
            const Choosable* thing = thing_of(journal_, name);
            return thing && among(thing->tools, tool);
        };
        return among(journal_.tools, tool) || std::any_of(step.uses.begin(), step.uses.end(), needs);
    }

    JournalTemplate& journal_;
};

}  // namespace

JournalTemplate chosen(const JournalTemplate& journal, const Choices& choices) {
    Faults faults;
    for (const auto& [name, choice] : choices) check_choice(journal, name, choice, faults);
    faults.throw_if_any();
    JournalTemplate made = journal;
    Chooser chooser(made);
    for (const auto& [name, choice] : choices) chooser.choose(name, *choice);
    return made;
}

}  // namespace qw::kit
