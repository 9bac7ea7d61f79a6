// SPDX-License-Identifier: GPL-3.0-or-later
// Sheets that were printed and signed: changed since, found bad, or printed at another size or beside their fronts.
#include "corpus/cases.h"

#include "support/signed_form.h"

#include <mutex>
#include <stdexcept>

namespace qw::corpus {

namespace {

/// The form that the program gives for the clean kit; asked for once.
std::string clean_form(const Work& work) {
    static std::mutex mutex;
    static std::string form;
    const std::lock_guard lock(mutex);
    if (!form.empty()) return form;
    const Path file = work.folder() / "form.yaml";
    const test::Said said = test::run(test::quoted(QW_PROGRAM) + " audit kit --out out --sign form.yaml 2>&1", work.folder());
    if (said.status != 0) throw std::runtime_error("no form: " + said.text);
    return form = work.read(file);
}

/// All sheets of the clean kit, signed alike.
void sign(Work& work, const test::Signature& as) {
    work.write(work.kit() / "proofs.yaml", test::signed_form(clean_form(work), as));
}

}  // namespace

void add_proof_cases(std::vector<Case>& cases) {
    const auto add = [&](const char* rule, Change defect, Change near) { cases.push_back({rule, Subject::kit, std::move(defect), std::move(near), "", ""}); };
    const auto signed_as = [](const test::Signature& as) { return [as](Work& work) { sign(work, as); }; };
    // Signed are pages 3 and 4 of the faces; when another changes, the file is another and these pages are the same.
    const auto signed_then_painted = [](std::vector<int> faces) {
        return [=](Work& work) {
            sign(work, {});
            for (const int face : faces) work.repaint(face, [](Painting& painting) { painting.fill(400, 400, 420, 420, 90, 100, 110); });
        };
    };
    add("proof-holds", signed_then_painted({4}), signed_then_painted({1}));
    add("proof-verdict", signed_as({"200 mm", "8 in", "{ x: 0 mm, y: 0 mm }", "bad"}), signed_as({}));
    add("proof-gauge", signed_as({"197.9 mm", "7.919 in", "{ x: 0 mm, y: 0 mm }", "good"}), signed_as({"198.1 mm", "7.921 in", "{ x: 0 mm, y: 0 mm }", "good"}));
    // 2 mm is the limit, and 1.2 by 1.6 mm is 2 mm.
    add("proof-offset", signed_as({"200 mm", "8 in", "{ x: -1.2 mm, y: 1.7 mm }", "good"}), signed_as({"200 mm", "8 in", "{ x: -1.2 mm, y: 1.6 mm }", "good"}));
}

}  // namespace qw::corpus
