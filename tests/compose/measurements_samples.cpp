// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/measurements_samples.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace qw::measurements_test {

using namespace qw::compose;
using namespace qw::literals;

const std::vector<double>& planned() {
    static const std::vector<double> percents = [] {
        std::vector<double> all;
        for (int percent = 103; percent >= 90; --percent) all.push_back(percent);
        for (int percent = 85; percent >= 30; percent -= 5) all.push_back(percent);
        return all;
    }();
    return percents;
}

Sheets made(const std::string& journal, const Paper& paper, const std::vector<double>& percents, const std::function<void(std::vector<SizeColumn>&)>& change) {
    Sheets s{test::sample_manifest(journal), paper, {}, {}};
    s.columns = test::sample_columns(s.manifest, paper, percents);
    if (change) change(s.columns);
    s.document = measurements_sheet({s.manifest, test::pipeline(), s.paper, test::fonts(), {}}, s.columns);
    return s;
}

void for_every_journal(const std::function<void(const Sheets&)>& look) {
    for (const auto& [journal, templ] : test::pipeline().journals)
        for (const Paper& paper : test::sheet_papers()) {
            CAPTURE(journal, paper.title);
            look(made(journal, paper, planned()));
        }
}

bool contains(const std::vector<std::string>& texts, const std::string& wanted) { return std::find(texts.begin(), texts.end(), wanted) != texts.end(); }

std::vector<std::string> texts_of(const Page& page) {
    Document alone;
    alone.pages = {page};
    return test::texts_of(alone);
}

std::string words_of(const std::vector<std::string>& texts) {
    std::string all;
    for (const std::string& text : texts) all += text + " ";
    for (std::size_t at; (at = all.find("\u00a0")) != std::string::npos;) all.replace(at, 2, " ");
    return all;
}
std::string all_words(const Document& document) { return words_of(test::texts_of(document)); }

std::vector<std::string> size_pages(const Document& document, const std::string& print) {
    std::vector<std::string> texts;
    for (const Page& page : document.pages) {
        const auto own = texts_of(page);
        if (!own.empty() && own.front().starts_with(print + ", ")) texts.insert(texts.end(), own.begin(), own.end());
    }
    return texts;
}

UnitSystem other_than(UnitSystem own) { return own == UnitSystem::metric ? UnitSystem::us : UnitSystem::metric; }
std::string name_in_title(Print print) { return print == Print::borderless ? "Borderless" : "Bordered"; }

}  // namespace qw::measurements_test
