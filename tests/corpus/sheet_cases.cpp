// SPDX-License-Identifier: GPL-3.0-or-later
// What is wrong with the words on generated sheets.
#include "corpus/cases.h"

namespace qw::corpus {

void add_sheet_cases(std::vector<Case>& cases) {
    cases.push_back({"sheet-text-agrees", Subject::published, [](Work& work) {
            work.edit_pdf("letter/measurements.pdf", [](QPDF& pdf) {
                auto pages = pdf.getAllPages();
                const QPDFObjectHandle second = pages.at(1).getKey("/Contents");
                pages.at(1).replaceKey("/Contents", pages.at(2).getKey("/Contents"));
                pages.at(2).replaceKey("/Contents", second);
            });
        }, {}, "a file that is not the one that was made is told in any case (release-current)", ""});
    const auto foot = [](const std::string& words) {
        return [=](Work& work) { work.replace(work.pipeline() / "texts/sheets.mustache", "{{kit}} {{version}}", words); };
    };
    cases.push_back({"sheet-foot", Subject::kit, foot("{{kit}}"), foot("Version {{version}} of {{kit}}"), ""});
    // The release was made with the shared data as they were; then a caution was sharpened.
    const auto caution = [](const std::string& from, const std::string& to) {
        return [=](Work& work) { work.replace(work.pipeline() / "materials.yaml", from, to); };
    };
    cases.push_back({"sheet-cautions", Subject::release, caution("stays beside the child for all of it.", "does not leave the child alone with it."),
                     caution("stays beside the child for all of it.", "stays beside the child, for all of it!"), ""});
}

}  // namespace qw::corpus
