// SPDX-License-Identifier: GPL-3.0-or-later
// usage: corpus [--only RULE,RULE…] [--keep FOLDER] [--pdfs FOLDER] [--judge zips]
// Audits every case with the built program, prints what was found and what was missed, and ends with 1 unless all is found,
// all near misses and clean subjects are silent, and no rule is without a case. --pdfs leaves every PDF of a kit or a release,
// each once, for those who judge PDFs. With `--judge zips` nothing is audited: other programs read the zips of all cases, and
// what they say is held against what we say.
#include "corpus/cases.h"

#include "base/digest.h"
#include "engine/jobs.h"
#include "support/shell.h"

#include <algorithm>
#include <cstdio>
#include <iostream>
#include <mutex>
#include <set>
#include <sstream>

using namespace qw;
using namespace qw::corpus;

namespace {

struct Found {
    std::string rule, level, text;
};

struct Audit {
    int status = -1;
    std::vector<Found> findings;
    std::string raw;
};

const char* name_of(Subject subject) {
    switch (subject) {
        case Subject::kit: return "kit";
        case Subject::release: return "release";
        case Subject::zip: return "zip";
        case Subject::published: return "published";
    }
    return "";
}

Audit audited(const Work& work, Subject subject, const Path& folder) {
    const Path what = subject == Subject::release ? work.release() : subject == Subject::zip ? work.zip() : work.kit();
    std::string command = work.environment + " " + test::quoted(QW_PROGRAM) + " audit " + test::quoted(what.string()) + " --json --jobs 1 --out " +
                          test::quoted(work.out().string());
    if (work.has_text) command += " --text listing.txt";
    if (work.own_pipeline()) command += " --pipeline " + test::quoted((folder / "pipeline").string());
    Audit audit;
    const test::Said said = test::run(command + " 2>audit.err", folder);
    audit.status = said.status;
    audit.raw = said.text;
    const auto json = nlohmann::json::parse(said.text, nullptr, false);
    if (json.is_discarded() || !json.contains("findings")) return audit;
    for (const auto& finding : json["findings"])
        audit.findings.push_back({finding["rule"], finding["level"],
                                  finding["where"]["file"].get<std::string>() + ": " + finding["message"].get<std::string>() + " (" +
                                      finding["measured"].get<std::string>() + ")"});
    return audit;
}

/// What is wrong with the answer; empty: nothing.
std::string judged_defect(const Audit& audit, const std::string& rule) {
    if (audit.status != 0 && audit.status != 1) return "the audit ended with " + std::to_string(audit.status) + ": " + audit.raw.substr(0, 400);
    if (std::none_of(audit.findings.begin(), audit.findings.end(), [&](const Found& found) { return found.rule == rule; })) {
        std::string others;
        for (const Found& found : audit.findings) others += " " + found.rule;
        return "not found" + (others.empty() ? "" : "; instead" + others);
    }
    for (const Found& found : audit.findings)
        if (found.rule != rule && found.level == "error") return "another error: " + found.rule + " " + found.text;
    return "";
}

std::string judged_silent(const Audit& audit) {
    if (audit.status != 0) {
        for (const Found& found : audit.findings)
            if (found.level == "error") return "an error: " + found.rule + " " + found.text;
        return "the audit ended with " + std::to_string(audit.status) + ": " + audit.raw.substr(0, 400);
    }
    for (const Found& found : audit.findings)
        if (found.level != "note") return "a " + found.level + ": " + found.rule + " " + found.text;
    return "";
}

struct Trial {
    const Case* one = nullptr;
    bool near = false;
    std::string fault;
};

/// The PDFs of the cases, each once, named after the first case that has it.
class PdfsLeft {
public:
    explicit PdfsLeft(const std::string& folder) : folder_(folder) {
        if (folder.empty()) return;
        std::filesystem::remove_all(folder_);
        std::filesystem::create_directories(folder_);
    }
    void take(const Path& below, const std::string& case_name) {
        if (folder_.empty()) return;
        for (const auto& entry : std::filesystem::recursive_directory_iterator(below)) {
            if (!entry.is_regular_file() || entry.path().extension() != ".pdf") continue;
            const std::string sha256 = digest_of(*disk_, entry.path()).sha256;
            const std::lock_guard lock(mutex_);
            if (known_.insert(sha256).second)
                std::filesystem::copy_file(entry.path(), folder_ / (case_name + "-" + sha256.substr(0, 8) + "-" + entry.path().filename().string()));
        }
    }

private:
    Path folder_;
    std::unique_ptr<Disk> disk_ = real_disk();
    std::set<std::string> known_;
    std::mutex mutex_;
};

void try_out(Trial& trial, const Path& clean, const Path& folder, PdfsLeft& pdfs) {
    std::filesystem::create_directories(folder);
    try {
        Work work(clean, folder);
        // An audit of a kit would tell that its release is of other inputs; only `published` asks for that.
        if (trial.one->subject == Subject::kit) std::filesystem::remove_all(work.release());
        (trial.near ? trial.one->near : trial.one->defect)(work);
        work.finish();
        for (const Path& below : {work.kit(), work.out()}) pdfs.take(below, trial.one->rule + (trial.near ? "-near" : ""));
        const Audit audit = audited(work, trial.one->subject, folder);
        trial.fault = trial.near ? judged_silent(audit) : judged_defect(audit, trial.one->found_as.empty() ? trial.one->rule : trial.one->found_as);
    } catch (const std::exception& error) {
        trial.fault = std::string("the case itself: ") + error.what();
    }
}

std::set<std::string> all_rules(const Path& folder) {
    const auto json = nlohmann::json::parse(test::run(test::quoted(QW_PROGRAM) + " rule --all --json", folder).text);
    std::set<std::string> rules;
    for (const auto& rule : json)
        if (!rule.contains("journals")) rules.insert(rule["rule"]);  // conditions of journals are `journal-check`'s
    return rules;
}

std::string option(int argc, char** argv, const std::string& name) {
    for (int i = 1; i + 1 < argc; ++i)
        if (argv[i] == name) return argv[i + 1];
    return "";
}

/// The zips of all cases about bundles, spoilt and near misses, and of other packers, beside what others say of them.
int judge_zips(const std::vector<Case>& cases, const Path& folder) {
    std::vector<NamedZip> zips;
    const auto begin = [&](const std::string& name) {
        const Path own = folder / ("zip " + std::to_string(zips.size()));
        std::filesystem::create_directories(own);
        Work work(folder / "clean", own);
        zips.push_back({name, work.zip()});
        return work;
    };
    begin("ours");
    for (const ForeignPacker& packer : foreign_packers()) pack_foreign(begin("by " + packer.name), packer);
    for (const Case& one : cases) {
        if (one.subject != Subject::zip || !one.rule.starts_with("bundle-")) continue;
        for (const Change* change : {&one.defect, &one.near}) {
            if (!*change) continue;
            Work work = begin(one.rule + (change == &one.near ? ", near miss" : ""));
            (*change)(work);
            work.finish();
        }
    }
    const std::vector<std::string> faults = judged_zips(zips, folder);
    for (const std::string& fault : faults) std::cout << fault << "\n";
    std::cout << "zips " << zips.size() << ", answers of others that differ " << faults.size() << "\n";
    return faults.empty() ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv) {
    const std::string only = option(argc, argv, "--only"), keep = option(argc, argv, "--keep");
    PdfsLeft pdfs(option(argc, argv, "--pdfs"));
    const test::TestFolder temporary;
    const Path folder = keep.empty() ? temporary.path() : Path(keep);
    std::vector<Case> cases;
    add_pdf_cases(cases);
    add_edition_cases(cases);
    add_bundle_cases(cases);
    add_zip_cases(cases);
    add_artwork_cases(cases);
    add_kit_cases(cases);
    add_rights_cases(cases);
    add_text_cases(cases);
    add_sheet_cases(cases);
    add_proof_cases(cases);
    std::erase_if(cases, [&](const Case& one) { return !only.empty() && ("," + only + ",").find("," + one.rule + ",") == std::string::npos; });

    make_clean(folder / "clean");
    if (option(argc, argv, "--judge") == "zips") return judge_zips(cases, folder);
    pdfs.take(folder / "clean/out", "clean");
    std::vector<std::string> alarms;
    for (const Subject subject : {Subject::kit, Subject::release, Subject::zip, Subject::published}) {
        const Path own = folder / (std::string("clean-") + name_of(subject));
        std::filesystem::create_directories(own);
        const Work work(folder / "clean", own);
        const std::string fault = judged_silent(audited(work, subject, own));
        if (!fault.empty()) alarms.push_back(std::string("clean ") + name_of(subject) + ": " + fault);
    }

    const std::vector<ForeignPacker> packers = foreign_packers();
    for (const ForeignPacker& packer : packers) {
        const Path own = folder / ("foreign by " + packer.name);
        std::filesystem::create_directories(own);
        const Work work(folder / "clean", own);
        pack_foreign(work, packer);
        const std::string fault = judged_silent(audited(work, Subject::zip, own));
        if (!fault.empty()) alarms.push_back("clean bundle by " + packer.name + ": " + fault);
    }

    std::vector<Trial> trials;
    for (const Case& one : cases) {
        trials.push_back({&one, false, ""});
        if (one.near) trials.push_back({&one, true, ""});
    }
    engine::Jobs(2).for_each(trials.size(), [&](std::size_t i) {
        const Path own = folder / std::to_string(i);
        try_out(trials[i], folder / "clean", own, pdfs);
        if (keep.empty()) std::filesystem::remove_all(own);
    });

    std::size_t found = 0, defects = 0, silent = 0, near = 0;
    std::set<std::string> covered;
    for (const Trial& trial : trials) {
        covered.insert(trial.one->rule);
        (trial.near ? near : defects)++;
        if (trial.fault.empty()) (trial.near ? silent : found)++;
        else std::cout << trial.one->rule << " (" << name_of(trial.one->subject) << (trial.near ? ", near miss): " : ", defect): ") << trial.fault << "\n";
    }
    for (const Case& one : cases)
        if (!one.near && one.no_near.empty()) alarms.push_back(one.rule + " has no near miss and no reason why");
    const std::set<std::string> rules = all_rules(folder);
    std::vector<std::string> without;
    std::set_difference(rules.begin(), rules.end(), covered.begin(), covered.end(), std::back_inserter(without));
    std::cout << "rules " << rules.size() << ", with a case " << rules.size() - without.size() << "\n"
              << "defects found " << found << " of " << defects << "\n"
              << "near misses silent " << silent << " of " << near << "\n"
              << "clean subjects: " << 4 + packers.size() << ", false alarms " << alarms.size() << "\n";
    for (const std::string& alarm : alarms) std::cout << "  " << alarm << "\n";
    if (only.empty())
        for (const std::string& rule : without) std::cout << "  no case: " << rule << "\n";
    return found == defects && silent == near && alarms.empty() && (without.empty() || !only.empty()) ? 0 : 1;
}
