// SPDX-License-Identifier: GPL-3.0-or-later
// What is wrong with a bundle, its list of contents and the record beside it.
#include "corpus/cases.h"

namespace qw::corpus {

namespace {

Packed text(const std::string& name) { return {name, "A text beside the sheets.\n"}; }

Change with_entry(const Packed& entry) {
    return [=](Work& work) { work.bundle().push_back(entry); };
}

}  // namespace

void add_bundle_cases(std::vector<Case>& cases) {
    const auto add = [&](const char* rule, Subject subject, Change defect, Change near, const char* no_near = "") { cases.push_back({rule, subject, std::move(defect), std::move(near), no_near}); };
    add("bundle-damaged", Subject::zip, [](Work& work) { work.spoil_zip = [](std::string& zip) { zip.resize(zip.size() - 10); }; }, [](Work& work) { work.bundle(); });
    add("bundle-damaged", Subject::zip, [](Work& work) { work.spoil_zip = [](std::string& zip) { zip[zip.size() / 2] ^= 1; }; }, [](Work& work) { work.bundle(); });
    add("bundle-names", Subject::zip, with_entry(text("CON.pdf.txt")), with_entry(text("con-fig.txt")));
    add("bundle-names", Subject::zip, [](Work& work) { work.bundle().push_back(text("Notes.txt")); work.bundle().push_back(text("notes.txt")); }, [](Work& work) { work.bundle().push_back(text("notes-1.txt")); work.bundle().push_back(text("notes-2.txt")); });
    add("bundle-complete", Subject::zip, [](Work& work) { work.contents_follow = false; work.bundle().push_back(text("extra.txt")); }, with_entry(text("extra.txt")));
    add("bundle-digests", Subject::zip, [](Work& work) { work.contents_follow = false; work.edit_bytes("contents.txt", [](std::string& bytes) { bytes[0] = bytes[0] == 'a' ? 'b' : 'a'; }); }, [](Work& work) { work.bundle(); });
    add("record-agrees", Subject::release, [](Work& work) { work.spoil_record = [](nlohmann::ordered_json& record) { record["files"][0]["sha256"] = std::string(64, 'a'); }; }, [](Work& work) { work.bundle(); });
    add("record-agrees", Subject::release, [](Work& work) { work.spoil_record = [](nlohmann::ordered_json& record) { record["bundles"][0]["path"] = "another.zip"; }; }, [](Work& work) { work.bundle(); });
    add("shop-limits", Subject::kit, [](Work& work) {
            work.manifest("journal: wrapped-booklet", "journal: wrapped-booklet\nshop: tiny");
            work.replace(work.pipeline() / "shops.yaml", "shops:", "shops:\n  tiny: { title: Tiny, most-bytes-a-file: 100 kB, why: a limit that nothing keeps }");
        }, [](Work& work) {
            work.manifest("journal: wrapped-booklet", "journal: wrapped-booklet\nshop: roomy");
            work.replace(work.pipeline() / "shops.yaml", "shops:", "shops:\n  roomy: { title: Roomy, most-bytes-a-file: 100 MB, why: a limit that all keep }");
        });
}

}  // namespace qw::corpus
