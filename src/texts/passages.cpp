// SPDX-License-Identifier: GPL-3.0-or-later
#include "texts/passages.h"

#include "base/fault.h"
#include "base/words.h"
#include "texts/render.h"

#include <optional>
#include <sstream>

namespace qw::texts {

namespace {

const std::string first_line_of_format = "passages 1";

/// The name in "[name]", or nothing.
std::optional<std::string> heading(const std::string& line) {
    if (line.size() < 2 || line.front() != '[' || line.back() != ']') return std::nullopt;
    return line.substr(1, line.size() - 2);
}

std::vector<std::string> joined_paragraphs(const std::string& text) {
    std::vector<std::string> paragraphs;
    std::string current;
    const auto end = [&] {
        if (!current.empty()) paragraphs.push_back(current);
        current.clear();
    };
    std::istringstream in(text);
    for (std::string word_line; std::getline(in, word_line);) {
        std::istringstream words(word_line);
        bool any = false;
        for (std::string word; words >> word; any = true) current += (current.empty() ? "" : " ") + word;
        if (!any) end();
    }
    end();
    return paragraphs;
}

}  // namespace

Passages Passages::read(const std::string& text, const std::string& shown_file) {
    Passages all;
    all.shown_file_ = shown_file;
    std::vector<FaultNote> faults;
    const auto fault = [&](const std::string& code, int line, const std::string& what, const std::string& mend) {
        faults.push_back({code, {shown_file, line, 1}, what, "", mend});
    };
    Passage* open = nullptr;
    std::istringstream in(text);
    int number = 0;
    for (std::string line; std::getline(in, line);) {
        ++number;
        if (!line.empty() && line.back() == '\r') line.pop_back();
        if (number == 1) {
            if (line != first_line_of_format)
                fault("unknown-format", 1, "'" + line + "' is no format that is known", "begin the file with '" + first_line_of_format + "'");
        } else if (const auto name = heading(line)) {
            if (!is_plain_name(*name)) fault("bad-name", number, "'" + *name + "' is no plain name", "use a-z, 0-9 and hyphens");
            if (all.passages_.contains(*name)) fault("double-name", number, "the passage '" + *name + "' is there twice", "rename one");
            open = &all.passages_[*name];
            *open = {"", number + 1};
        } else if (open) {
            open->text += line + "\n";
        } else if (line.find_first_not_of(" \t") != std::string::npos) {
            fault("words-outside", number, "there are words before the first passage", "begin a passage with '[name]'");
        }
    }
    if (number == 0) fault("unknown-format", 1, "the file is empty", "begin the file with '" + first_line_of_format + "'");
    if (!faults.empty()) throw Fault(FaultKind::not_understood, faults);
    return all;
}

std::vector<std::string> Passages::paragraphs(const std::string& name, const Model& model) const {
    const auto found = passages_.find(name);
    if (found == passages_.end())
        throw Fault(FaultKind::not_understood, {"missing-passage", {shown_file_, 0, 0}, "there is no passage '" + name + "'",
                                                "a passage '[" + name + "]'", "add the passage to the file"});
    return joined_paragraphs(render(found->second.text, shown_file_, model, found->second.first_line));
}

std::string Passages::line(const std::string& name, const Model& model) const {
    std::string joined;
    for (const std::string& paragraph : paragraphs(name, model)) joined += (joined.empty() ? "" : " ") + paragraph;
    return joined;
}

}  // namespace qw::texts
