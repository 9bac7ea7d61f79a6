// SPDX-License-Identifier: GPL-3.0-or-later
// What a listing text says that the kit does not give, and what a shop does not take. The clean kit has 2 sheets of journal pages,
// one full sheet, letter only, in both prints, pages on 100 g/m².
#include "corpus/cases.h"

namespace qw::corpus {

namespace {

Change says(const std::string& text) {
    return [=](Work& work) { work.text(text); };
}

/// A shop of the case's own, which the kit names.
Change in_shop(const std::string& limits, const std::string& text) {
    return [=](Work& work) {
        work.manifest("journal: wrapped-booklet", "journal: wrapped-booklet\nshop: strict");
        work.replace(work.pipeline() / "shops.yaml", "shops:", "shops:\n  strict:\n    title: Strict\n" + limits + "    why: a shop of the test's own");
        work.text(text);
    };
}

}  // namespace

void add_text_cases(std::vector<Case>& cases) {
    const auto add = [&](const char* rule, Change defect, Change near) { cases.push_back({rule, Subject::kit, std::move(defect), std::move(near), "", ""}); };
    add("text-characters", says("Four journal pages\xff and a cover."), says("Four journal pages \u2013 and a cover."));
    add("text-empty", says(" \n\n"), says("A kit.\n"));
    add("text-placeholders", says("Welcome, {{name}}!"), says("Welcome to the tide {of} things!"));
    add("text-private", says("Files were made in C:\\Users\\keeper\\kits."), says("Files are made with care."));
    add("text-counts", says("The kit includes 5 journal pages."), says("The kit includes 4 journal pages."));
    // The stock was changed, the text was not.
    add("text-grammage", says("Print the journal pages on 120 g/m\u00b2 paper."), says("Print the journal pages on 100 g/m\u00b2 paper."));
    add("text-grammage", [](Work& work) {
            work.manifest("stock: copy-100", "stock: card-160");
            work.text("Print the journal pages on 120 g/m\u00b2 paper, which folds well. Yes, 120 gsm.");
        }, [](Work& work) {
            work.manifest("stock: copy-100", "stock: card-160");
            work.text("Print the journal pages on 160 g/m\u00b2 paper, which folds well. Yes, 160 gsm.");
        });
    add("text-sizes", says("Page size: 5 x 8 1/2 in."), says("Page size: 5 1/2 x 8 1/2 in."));
    add("text-papers", says("Files for A4 and US Letter."), says("Files for US Letter."));
    add("text-prints", [](Work& work) {
            work.manifest("prints: [borderless, bordered]", "prints: [borderless]");
            work.text("Borderless files and files with a white border.");
        }, says("Borderless files and files with a white border."));
    add("text-included", says("What's included:\n- journal pages\n- envelopes"), says("What's included:\n- journal pages\n- full sheets"));
    add("text-version", says("Version: 0.9.0"), says("Version: 1.0.0"));
    add("text-materials", says("You will need: an awl, a needle, a bone folder, a steel ruler, a craft knife and a hammer."), says("You will need an awl."));
    add("text-list-short", says("You will need: an awl, a needle, a bone folder, a steel ruler and scissors."), says("You will need patience."));
    add("text-cautions", says("You will need: an awl, a needle, a bone folder, a steel ruler and a craft knife."), says("You will need patience."));
    add("shop-text-length", in_shop("    longest-text: 40 bytes\n", std::string(41, 'a')), in_shop("    longest-text: 40 bytes\n", std::string(40, 'a')));
    add("shop-title-length", in_shop("    longest-title: 6 characters\n", "Title: Tidess!\nmore"),
        in_shop("    longest-title: 6 characters\n", "Title: Tidess\nmore"));
    const std::string statements = "    statements:\n      digital-files: { any-of: [\"digital download\"], why: people expect a parcel }\n";
    add("shop-statements", in_shop(statements, "A journal kit."), in_shop(statements, "A journal kit, as a digital download."));
}

}  // namespace qw::corpus
