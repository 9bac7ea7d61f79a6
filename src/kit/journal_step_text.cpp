// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/journal_step_text.h"

#include "base/words.h"

#include <algorithm>

namespace qw::kit {

namespace {

/// The places of the tags of one text. Lines of a text that was folded when it was read are not those of the file, but
/// its tags stand there in the same order.
class TagPlaces {
public:
    TagPlaces(const Node& node, const SourceText* source) : beginning_(node.mark), source_(source) {
        if (source) next_ = byte_of(*source, node.mark);
    }

    SourceMark next() {
        const std::size_t found = source_ ? source_->text().find("{{", next_) : std::string::npos;
        if (found == std::string::npos) return beginning_;
        const std::size_t close = source_->text().find("}}", found);
        next_ = close == std::string::npos ? source_->text().size() : close + 2;
        SourceMark mark = source_->at_byte(found);
        mark.file = beginning_.file;
        return mark;
    }

private:
    /// Marks count characters, from 1.
    static std::size_t byte_of(const SourceText& source, const SourceMark& mark) {
        std::size_t byte = source.byte_of(std::max(mark.line - 1, 0), 0);
        for (int column = 1; column < mark.column && byte < source.text().size(); ++column)
            do ++byte;
            while (byte < source.text().size() && (static_cast<unsigned char>(source.text()[byte]) & 0xc0) == 0x80);
        return byte;
    }

    SourceMark beginning_;
    const SourceText* source_;
    std::size_t next_ = 0;
};

class StepTextChecker {
public:
    StepTextChecker(const Node& node, const JournalTemplate& journal, const SourceText* source, Faults& faults)
        : text_(node.text), places_(node, source), faults_(faults) {
        for (const NamedLength& length : journal.lengths) values_.push_back(length.name);
        for (const NamedNumber& number : journal.numbers) values_.push_back(number.name);
        const auto add = [&](const auto& things) {
            for (const auto& thing : things) sections_.push_back("has-" + thing.name);
        };
        add(journal.pieces);
        add(journal.cut_lengths);
        add(journal.items);
    }

    void check() {
        for (std::size_t at = text_.find("{{"); at != std::string::npos;) {
            const SourceMark mark = places_.next();
            const std::size_t close = text_.find("}}", at);
            if (close == std::string::npos) return faults_.add("unclosed-tag", mark, "'{{' is not closed", "'}}' after the name", "close it");
            check_tag(text_.substr(at + 2, close - at - 2), mark);
            at = text_.find("{{", close + 2);
        }
        for (const auto& [name, mark] : open_)
            faults_.add("unclosed-section", mark, "the section '" + name + "' is not closed", "'{{/" + name + "}}'", "close it where it ends");
    }

private:
    static std::string trimmed(const std::string& text) {
        const std::size_t from = text.find_first_not_of(" \t\n"), to = text.find_last_not_of(" \t\n");
        return from == std::string::npos ? "" : text.substr(from, to - from + 1);
    }

    void check_tag(const std::string& inside, const SourceMark& mark) {
        const char sign = inside.empty() ? ' ' : inside[0];
        if (sign == '!') return;
        const bool section = sign == '#' || sign == '^' || sign == '/';
        const std::string name = trimmed(section ? inside.substr(1) : inside);
        if (!is_plain_name(name))
            faults_.add("bad-tag", mark, in_quotes("{{" + inside + "}}") + " is no tag that a step's text may hold",
                        "a name of a-z, 0-9 and hyphens, with '#', '^' or '/' before it for sections");
        else if (sign == '/') close(name, mark);
        else if (!section) check_value(name, mark);
        else open(name, mark);
    }

    void check_value(const std::string& name, const SourceMark& mark) {
        if (std::find(values_.begin(), values_.end(), name) != values_.end()) return;
        const bool thing = std::find(sections_.begin(), sections_.end(), name) != sections_.end();
        const auto near = nearest_word(name, values_);
        std::string mend = "name it under 'lengths' or 'numbers'; what is computed stands beside the step, under 'uses'";
        if (thing) mend = "write '{{#" + name + "}}…{{/" + name + "}}'";
        else if (near) mend = "write '{{" + *near + "}}'";
        faults_.add("unknown-name", mark, "'{{" + name + "}}' is no length or number of this template",
                    values_.empty() ? "" : "one of its lengths and numbers", mend);
    }

    void open(const std::string& name, const SourceMark& mark) {
        open_.emplace_back(name, mark);
        if (std::find(sections_.begin(), sections_.end(), name) != sections_.end()) return;
        const auto near = nearest_word(name, sections_);
        faults_.add("unknown-name", mark, "'" + name + "' is about no piece, cut length or item of this template", "'has-' and the name of one of them",
                    near ? "write '" + *near + "'" : "");
    }

    void close(const std::string& name, const SourceMark& mark) {
        const auto found = std::find_if(open_.rbegin(), open_.rend(), [&](const auto& one) { return one.first == name; });
        if (found == open_.rend()) {
            faults_.add("unopened-section", mark, "'{{/" + name + "}}' closes a section that is not open", open_.empty() ? "" : "'{{/" + open_.back().first + "}}'",
                        "open it with '{{#" + name + "}}' or '{{^" + name + "}}', or remove it");
        } else {
            if (found != open_.rbegin())
                faults_.add("crossed-sections", mark, "'{{/" + name + "}}' closes its section before '" + open_.back().first + "', which began inside it",
                            "'{{/" + open_.back().first + "}}' first", "close sections in the reverse order of their beginning");
            open_.erase(std::next(found).base());
        }
    }

    const std::string& text_;
    TagPlaces places_;
    Faults& faults_;
    std::vector<std::string> values_, sections_;
    std::vector<std::pair<std::string, SourceMark>> open_;
};

}  // namespace

void check_step_text(const Node& node, const JournalTemplate& journal, const SourceText* source, Faults& faults) {
    StepTextChecker(node, journal, source, faults).check();
}

}  // namespace qw::kit
