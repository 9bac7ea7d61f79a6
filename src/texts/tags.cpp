// SPDX-License-Identifier: GPL-3.0-or-later
#include "texts/tags.h"

#include "base/words.h"

#include <algorithm>

namespace qw::texts {

namespace {

class Marker {
public:
    Marker(const std::string& text, const std::string& file, int first_line) : text_(text), file_(file), line_(first_line) {}

    MarkedText run() {
        std::size_t at = 0;
        while (at < text_.size()) {
            const std::size_t open = text_.find("{{", at);
            if (open == std::string::npos) break;
            copy(at, open);
            const std::size_t close = text_.find("}}", open + 2);
            if (close == std::string::npos) {
                fault("unclosed-tag", mark_at(open), "a tag is opened but not closed", "'}}' after the name", "close the tag");
                return out_;
            }
            tag(open, close);
            at = close + 2;
        }
        copy(at, text_.size());
        for (const std::size_t index : open_)
            fault("unclosed-section", out_.tags[index].mark, "section '" + out_.tags[index].name + "' is not closed",
                  "'{{/" + out_.tags[index].name + "}}'", "close the section");
        return out_;
    }

private:
    void copy(std::size_t from, std::size_t to) {
        out_.text.append(text_, from, to - from);
        pass(from, to);
    }
    void pass(std::size_t from, std::size_t to) {
        for (std::size_t i = from; i < to; ++i)
            if (text_[i] == '\n') ++line_, line_start_ = i + 1;
    }
    SourceMark mark_at(std::size_t at) const {
        const std::string before = text_.substr(line_start_, at - line_start_);
        return {file_, line_, static_cast<int>(characters_in(before, before.size())) + 1};
    }
    void fault(const std::string& code, const SourceMark& mark, const std::string& what, const std::string& expected,
               const std::string& mend) {
        out_.faults.push_back({code, mark, what, expected, mend});
    }

    void tag(std::size_t open, std::size_t close) {
        const SourceMark mark = mark_at(open);
        std::string inside = text_.substr(open + 2, close - open - 2);
        const char sigil = inside.empty() ? ' ' : inside[0];
        if (std::string("#^/!").find(sigil) != std::string::npos) inside.erase(0, 1);
        inside.erase(0, inside.find_first_not_of(" \t"));
        inside.erase(inside.find_last_not_of(" \t") + 1);
        if (sigil == '!') out_.text += "{{!}}";
        else if (!is_plain_name(inside))
            fault("bad-tag", mark, "'{{" + text_.substr(open + 2, close - open - 2) + "}}' is no tag that texts may use",
                  "a name of a-z, 0-9 and hyphens, with '#', '^' or '/' before it for sections", "write a plain name");
        else if (sigil == '/') end(inside, mark);
        else begin(sigil, inside, mark);
        pass(open, close + 2);
    }

    void begin(char sigil, const std::string& name, const SourceMark& mark) {
        using Kind = MarkedText::Tag::Kind;
        const Kind kind = sigil == '#' ? Kind::section : sigil == '^' ? Kind::inverted : Kind::variable;
        const std::size_t index = out_.tags.size();
        out_.tags.push_back({kind, name, mark});
        out_.text += "{{" + (kind == Kind::variable ? std::string() : std::string(1, sigil)) + std::to_string(index) + "}}";
        if (kind != Kind::variable) open_.push_back(index);
    }

    void end(const std::string& name, const SourceMark& mark) {
        if (open_.empty() || out_.tags[open_.back()].name != name) {
            fault("unopened-section", mark, "'{{/" + name + "}}' closes no open section",
                  open_.empty() ? "" : "'{{/" + out_.tags[open_.back()].name + "}}'", "close sections in the order they were opened");
            return;
        }
        out_.text += "{{/" + std::to_string(open_.back()) + "}}";
        open_.pop_back();
    }

    const std::string& text_;
    const std::string& file_;
    int line_;
    std::size_t line_start_ = 0;
    std::vector<std::size_t> open_;
    MarkedText out_;
};

}  // namespace

MarkedText mark_tags(const std::string& text, const std::string& shown_file, int first_line) {
    return Marker(text, shown_file, first_line).run();
}

}  // namespace qw::texts
