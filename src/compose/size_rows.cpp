// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/size_rows.h"

#include <algorithm>

namespace qw::compose {

namespace {

/// What accompanies sizes, by rule.
struct NoteOnSizes {
    Reason reason;                     ///< as it is at the first size
    std::vector<std::size_t> sizes;
    bool in_other_figures = false;

    /// A rule may say two things of one size: the first belongs to the first of the others.
    bool takes(const Reason& other, std::size_t size) const { return reason.rule == other.rule && (sizes.empty() || sizes.back() != size); }
};

bool same_rules(const std::vector<Reason>& a, const std::vector<Reason>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const Reason& x, const Reason& y) { return x.rule == y.rule; });
}

std::vector<NoteOnSizes> gathered_notes(const std::vector<SizeColumn>& columns, const std::vector<SizeRow>& rows) {
    std::vector<NoteOnSizes> said;
    for (const SizeRow& row : rows) {
        if (!row.why_not.empty()) continue;
        const std::size_t size = row.sizes.front();
        for (const Reason& reason : reasons_by_rule(columns[size].measures.findings, false)) {
            auto known = std::find_if(said.begin(), said.end(), [&](const NoteOnSizes& n) { return n.takes(reason, size); });
            if (known == said.end()) known = said.insert(said.end(), {reason, {}});
            known->sizes.push_back(size);
            known->in_other_figures = known->in_other_figures || known->reason.sentence != reason.sentence;
        }
    }
    return said;
}

/// "100 %, 95 to 60 %, 50 %": three and more that follow each other are a range.
std::string listed_sizes(const std::vector<SizeColumn>& columns, const std::vector<std::size_t>& sizes, const texts::Passages& words) {
    std::string all;
    for (std::size_t i = 0; i < sizes.size();) {
        std::size_t last = i;
        while (last + 1 < sizes.size() && sizes[last + 1] == sizes[last] + 1) ++last;
        if (last - i < 2) last = i;
        const std::string& from = columns[sizes[i]].label;
        all += (all.empty() ? "" : ", ") + (last == i ? from : size_range(words, from, columns[sizes[last]].label));
        i = last + 1;
    }
    return all;
}

}  // namespace

std::vector<SizeRow> size_rows(const std::vector<SizeColumn>& columns) {
    std::vector<SizeRow> rows;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        const auto why_not = reasons_by_rule(columns[i].measures.findings, true);
        if (rows.empty() || why_not.empty() || !same_rules(rows.back().why_not, why_not)) {
            rows.push_back({{i}, why_not});
            continue;
        }
        SizeRow& row = rows.back();
        row.sizes.push_back(i);
        for (std::size_t n = 0; n < why_not.size(); ++n) row.in_other_figures = row.in_other_figures || row.why_not[n].sentence != why_not[n].sentence;
    }
    return rows;
}

std::vector<std::string> size_notes(const std::vector<SizeColumn>& columns, const std::vector<SizeRow>& rows, const texts::Passages& words) {
    std::vector<std::string> sentences;
    for (const NoteOnSizes& note : gathered_notes(columns, rows)) {
        auto model = texts::Model().text("print", words.line(name_of(columns.front().print))).text("size", listed_sizes(columns, note.sizes, words));
        model.text("reason", reason_at(words, note.reason, note.in_other_figures, columns[note.sizes.front()].label));
        sentences.push_back(words.line("note-on-size", model));
    }
    return sentences;
}

std::string reason_at(const texts::Passages& words, const Reason& reason, bool others_differ, const std::string& size) {
    if (!others_differ) return reason.sentence;
    return words.line("reason-at", texts::Model().text("reason", reason.sentence).text("size", size));
}

std::string size_range(const texts::Passages& words, const std::string& from, const std::string& to) {
    const std::size_t unit = to.rfind(' ');
    const bool shared = unit != std::string::npos && from.ends_with(to.substr(unit));
    const std::string shortened = shared ? from.substr(0, from.size() - (to.size() - unit)) : from;
    return words.line("range", texts::Model().text("from", shortened).text("to", to));
}

}  // namespace qw::compose
