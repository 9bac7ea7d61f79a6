// SPDX-License-Identifier: GPL-3.0-or-later
// Sheets that were printed and signed: changed since, found bad, or printed at another size or beside their fronts.
#include "corpus/cases.h"

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

struct Signature {
    std::string a4 = "200 mm", letter = "8 in", offset = "{ x: 0 mm, y: 0 mm }", verdict = "good";
};

/// All sheets of the clean kit, signed alike.
void sign(Work& work, const Signature& as) {
    const std::string form = clean_form(work);
    std::string text = form.substr(0, form.find("  - ")), line;
    bool a4 = false;
    for (const char c : form.substr(text.size())) {
        line += c;
        if (c != '\n') continue;
        if (line.starts_with("    file: ")) a4 = line.starts_with("    file: a4/");
        for (const auto& [key, value] : std::vector<std::pair<std::string, std::string>>{{"printed-by", "Wren"},
                                                                                         {"printer", "bench inkjet"},
                                                                                         {"stock", "copy"},
                                                                                         {"setting", "100 %"},
                                                                                         {"gauge", a4 ? as.a4 : as.letter},
                                                                                         {"offset", as.offset},
                                                                                         {"date", "2026-09-02"},
                                                                                         {"verdict", as.verdict}})
            if (line == "    " + key + ":\n") line = "    " + key + ": " + value + "\n";
        text += line;
        line.clear();
    }
    work.write(work.kit() / "proofs.yaml", text);
}

}  // namespace

void add_proof_cases(std::vector<Case>& cases) {
    const auto add = [&](const char* rule, Change defect, Change near) { cases.push_back({rule, Subject::kit, std::move(defect), std::move(near), "", ""}); };
    const auto signed_as = [](const Signature& as) { return [as](Work& work) { sign(work, as); }; };
    add("proof-holds", [](Work& work) {
            sign(work, {});
            for (int face = 1; face <= 4; ++face) work.repaint(face, [](Painting& painting) { painting.fill(400, 400, 420, 420, 90, 100, 110); });
        }, signed_as({}));
    add("proof-verdict", signed_as({"200 mm", "8 in", "{ x: 0 mm, y: 0 mm }", "bad"}), signed_as({}));
    add("proof-gauge", signed_as({"197.9 mm", "7.919 in", "{ x: 0 mm, y: 0 mm }", "good"}), signed_as({"198.1 mm", "7.921 in", "{ x: 0 mm, y: 0 mm }", "good"}));
    // 2 mm is the limit, and 1.2 by 1.6 mm is 2 mm.
    add("proof-offset", signed_as({"200 mm", "8 in", "{ x: -1.2 mm, y: 1.7 mm }", "good"}), signed_as({"200 mm", "8 in", "{ x: -1.2 mm, y: 1.6 mm }", "good"}));
}

}  // namespace qw::corpus
