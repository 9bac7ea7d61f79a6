// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/font_facts.h"

#include <algorithm>
#include <set>

namespace qw::proof {

namespace {

constexpr int deepest = 12;

/// "ABCDEF+" in front of a name (ISO 32000-1 9.6.4).
bool has_subset_tag(const std::string& name) {
    return name.size() > 7 && name[6] == '+' &&
           std::all_of(name.begin(), name.begin() + 6, [](char c) { return c >= 'A' && c <= 'Z'; });
}

bool has_program(Object font) {
    const Object descriptor = entry(font, "/FontDescriptor");
    for (const char* key : {"/FontFile", "/FontFile2", "/FontFile3"})
        if (entry(descriptor, key).isStream()) return true;
    return false;
}

/// ISO 32000-1 9.10.2: how text is taken out again. A simple font without an encoding has its own program's, which for the
/// fourteen standard ones and for text fonts is a known one; symbolic subsets are the case that fails.
bool is_readable(Object font, bool drawn) {
    if (!is_null(entry(font, "/ToUnicode"))) return true;
    const Object encoding = entry(font, "/Encoding");
    if (is_name(entry(font, "/Subtype"), "Type0")) {
        const std::string map = name_of(encoding);
        return !map.empty() && !map.starts_with("Identity");
    }
    constexpr std::uint32_t symbolic = 4;  // table 123
    if (const_cast<Object&>(encoding).isName()) return true;
    if (filled(entry(encoding, "/Differences"))) return !drawn;
    return !(count_of(entry(entry(font, "/FontDescriptor"), "/Flags")) & symbolic);
}

FontFact fact_of(Object font) {
    FontFact fact;
    fact.name = name_of(entry(font, "/BaseFont"));
    fact.subset = has_subset_tag(fact.name);
    if (fact.subset) fact.name.erase(0, 7);
    const auto descendants = elements(entry(font, "/DescendantFonts"));
    // A Type 3 font is made of content streams in the file itself.
    fact.drawn = is_name(entry(font, "/Subtype"), "Type3");
    fact.readable = is_readable(font, fact.drawn);
    fact.embedded = fact.drawn || has_program(descendants.empty() ? font : descendants.front());
    return fact;
}

class FontWalk {
public:
    explicit FontWalk(std::vector<FontFact>& fonts) : fonts_(fonts) {}

    void resources(Object resources, int depth) {
        if (depth > deepest || !first_visit(resources)) return;
        each(entry(resources, "/Font"), [&](Object font) { this->font(font, depth); });
        for (const char* kind : {"/XObject", "/Pattern"})
            each(entry(resources, kind), [&](Object item) { content(item, depth); });
        each(entry(resources, "/ExtGState"), [&](Object state) { graphics_state(state, depth); });
    }

private:
    template <typename Visit>
    static void each(Object dictionary, Visit visit) {
        if (!dictionary.isDictionary()) return;
        for (const auto& key : dictionary.getKeys()) visit(dictionary.getKey(key));
    }

    /// Every indirect object is entered once, so that the walk is linear whatever refers to what.
    bool first_visit(Object object) {
        if (!object.isDictionary() && !object.isStream()) return false;
        return !object.isIndirect() || seen_.insert(object.getObjGen()).second;
    }

    void content(Object item, int depth) {
        if (first_visit(item)) resources(entry(item, "/Resources"), depth + 1);
    }

    void graphics_state(Object state, int depth) {
        if (auto set = entry(state, "/Font"); set.isArray() && filled(set)) font(set.getArrayItem(0), depth);
        content(entry(entry(state, "/SMask"), "/G"), depth);
    }

    void font(Object font, int depth) {
        if (!first_visit(font)) return;
        const FontFact fact = fact_of(font);
        const bool known = std::any_of(fonts_.begin(), fonts_.end(), [&](const FontFact& other) {
            return other.name == fact.name && other.embedded == fact.embedded && other.subset == fact.subset && other.drawn == fact.drawn &&
                   other.readable == fact.readable;
        });
        if (!known) fonts_.push_back(fact);
        resources(entry(font, "/Resources"), depth + 1);
    }

    std::vector<FontFact>& fonts_;
    std::set<QPDFObjGen> seen_;
};

}  // namespace

void tell_fonts(Object resources, std::vector<FontFact>& fonts) { FontWalk(fonts).resources(resources, 0); }

}  // namespace qw::proof
