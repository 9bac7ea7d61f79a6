// SPDX-License-Identifier: GPL-3.0-or-later
// Every journal is released on papers that no template names, added to the pipeline as data: nothing collides, runs out
// of the paper or is refused.
#include "program/program.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

namespace {

/// PWG 5101.1-2023 media names.
const char* const more_papers =
    "  a5:\n"
    "    name: iso_a5_148x210mm\n"
    "    title: A5\n"
    "    ruler: metric\n"
    "    source: \"PWG 5101.1-2023; ISO 216\"\n"
    "  photo-5x7:\n"
    "    name: na_5x7_5x7in\n"
    "    title: 5 x 7 in\n"
    "    ruler: us\n"
    "    source: \"PWG 5101.1-2023\"\n";

Path folder() { return Path(QW_RELEASED).parent_path() / "journals"; }

/// The smaller demo kit, of 4 sheets, as another journal on the added papers.
Path kit_of(const std::string& journal) {
    const Path kit = copy_of_kit("lamplight-mini", folder() / journal);
    replace_in(kit / "kit.yaml", "journal: wrapped-booklet", "journal: " + journal);
    replace_in(kit / "kit.yaml", "papers: [letter, a4]", "papers: [a5, photo-5x7]");
    replace_in(kit / "kit.yaml", "stock: card-160", "stock: copy-100");
    return kit;
}

}  // namespace

TEST_CASE("every journal is released for papers that were added as data", "[journals]") {
    std::filesystem::remove_all(folder());
    std::filesystem::create_directories(folder());
    std::filesystem::copy(source_folder / "pipeline", folder() / "pipeline", std::filesystem::copy_options::recursive);
    write(folder() / "pipeline/papers.yaml", read(folder() / "pipeline/papers.yaml") + more_papers);
    for (const char* journal : {"soft-spine", "wrapped-booklet", "concertina", "case-binding", "long-stitch"}) {
        const Path kit = kit_of(journal);
        const Said said = quirewright("release " + quoted(kit.string()) + " --pipeline " + quoted((folder() / "pipeline").string()) + " --out out --json", kit);
        INFO(journal << "\n" << said.text);
        REQUIRE(said.status <= 1);
        // A kit drawn for other papers and another journal may be found unfit, but never by the sheets that are made for it.
        const nlohmann::json report = nlohmann::json::parse(said.text);
        for (const auto& finding : report["findings"]) CHECK_FALSE(finding["rule"] == "ink-inside-printable");
        const nlohmann::json measures =
            quirewright_json("measure " + quoted(kit.string()) + " --paper na_5x7_5x7in --scale 30 --json --pipeline " + quoted((folder() / "pipeline").string()));
        CHECK(measures["paper"] == "na_5x7_5x7in");
        CHECK(measures["pieces"].size() >= 3);
    }
}
