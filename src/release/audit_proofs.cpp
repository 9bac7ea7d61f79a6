// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/audit_proofs.h"

#include "base/fault.h"
#include "compose/print_readings.h"
#include "kit/source_text.h"
#include "proof/page_digest.h"
#include "release/proofing_set.h"

#include <algorithm>
#include <map>

namespace qw::release {

namespace {

/// The kit's files as they were made now; a file's pages are read when they are asked for.
class FilesNow {
public:
    FilesNow(Disk& disk, const Path& folder, const record::ReleaseRecord& record) : disk_(disk), folder_(folder), record_(record) {}

    const record::File* file(const std::string& path) const {
        const auto found = std::find_if(record_.files.begin(), record_.files.end(), [&](const record::File& one) { return one.path == path; });
        return found == record_.files.end() ? nullptr : &*found;
    }
    /// Empty where there is no such page, or it cannot be read.
    std::string page(const std::string& path, int page) {
        const auto [known, fresh] = digests_.try_emplace(path);
        if (fresh) known->second = proof::page_digests(disk_, folder_ / path);
        return page >= 1 && page <= static_cast<int>(known->second.size()) ? known->second[static_cast<std::size_t>(page) - 1] : "";
    }
    std::vector<std::string> pages(const std::string& path, const std::vector<int>& numbers) {
        std::vector<std::string> digests;
        for (const int number : numbers) digests.push_back(page(path, number));
        return digests;
    }

private:
    Disk& disk_;
    const Path& folder_;
    const record::ReleaseRecord& record_;
    std::map<std::string, std::vector<std::string>> digests_;
};

using State = checks::SignedSheet::State;

State state_of(const kit::SignedProof& proof, FilesNow& now) {
    const record::File* file = now.file(proof.file);
    if (!file || std::any_of(proof.pages.begin(), proof.pages.end(), [&](int page) { return page > file->pages; })) return State::gone;
    if (file->sha256 == proof.sha256) return State::same_file;
    const std::vector<std::string> digests = now.pages(proof.file, proof.pages);
    return digests == proof.digests ? State::same_pages : State::changed;
}

/// Only sheets with a long line are measured: the print check, the gauges and the hole jig.
bool has_gauge(const std::string& role) { return role == "print-check" || role == "gauges" || role == "hole-jig"; }

checks::SignedSheet held_against(const kit::SignedProof& proof, FilesNow& now, const std::vector<Paper>& papers) {
    checks::SignedSheet sheet;
    sheet.state = state_of(proof, now);
    sheet.file = proof.file;
    sheet.pages = proof.pages;
    sheet.version = proof.version;
    sheet.printed_by = proof.printed_by;
    sheet.printer = proof.printer;
    sheet.stock = proof.stock;
    sheet.setting = proof.setting;
    sheet.date = proof.date->iso();
    sheet.good = *proof.good;
    sheet.gauge = proof.gauge;
    if (proof.offset) sheet.right = proof.offset->x, sheet.up = proof.offset->y;
    if (const record::File* file = now.file(proof.file))
        for (const Paper& paper : papers)
            if (paper.name == file->paper) {
                sheet.drawn = compose::gauge_length(paper);
                sheet.ruler = paper.ruler;
            }
    return sheet;
}

/// The signatures that count: of the same pages of the same file the last.
std::vector<const kit::SignedProof*> counting(const kit::SignedProofs& read) {
    std::vector<const kit::SignedProof*> last;
    for (const kit::SignedProof& proof : read.proofs) {
        if (!proof.good) continue;
        std::erase_if(last, [&](const kit::SignedProof* other) { return other->file == proof.file && other->pages == proof.pages; });
        last.push_back(&proof);
    }
    return last;
}

/// The chosen sheets of which the file has neither a signature that holds nor a blank for the page as it is.
std::vector<kit::SignedProof> blanks_for(const ChosenProofs& chosen, const std::string& version, const kit::SignedProofs& read, FilesNow& now) {
    std::vector<kit::SignedProof> blanks;
    for (const std::size_t index : chosen.sheets) {
        const ProvableSheet& sheet = chosen.found.sheets[index];
        kit::SignedProof blank;
        blank.version = version;
        blank.file = sheet.file->path;
        blank.pages = sheet.pages;
        blank.sha256 = now.file(blank.file)->sha256;
        blank.digests = now.pages(blank.file, blank.pages);
        blank.asks_gauge = has_gauge(sheet.file->role);
        blank.asks_offset = sheet.pages.size() > 1;
        const bool known = std::any_of(read.proofs.begin(), read.proofs.end(), [&](const kit::SignedProof& proof) {
            return proof.file == blank.file && proof.pages == blank.pages && proof.digests == blank.digests;
        });
        if (!known) blanks.push_back(std::move(blank));
    }
    return blanks;
}

}  // namespace

ProofsFile read_proofs(Disk& disk, const Order& order, const kit::Manifest& manifest) {
    ProofsFile file;
    file.path = order.sign ? *order.sign : manifest.folder / kit::signed_proofs_name;
    file.shown = order.sign ? file.path.string() : kit::signed_proofs_name;
    file.read.kit = manifest.kit;
    file.there = disk.stat(file.path).has_value();
    if (!file.there) return file;
    file.bytes = kit::read_bytes(disk, file.path, file.shown);
    file.read = kit::read_signed_proofs(file.bytes, file.shown);
    if (file.read.kit != manifest.kit)
        throw Fault(FaultKind::not_understood, {"another-kit",
                                                {file.shown, 0, 0},
                                                "the proofs are those of the kit '" + file.read.kit + "'",
                                                "kit: " + manifest.kit,
                                                "name the file of this kit"});
    return file;
}

void audit_proofs(Disk& disk, const Order& order, const Prepared& prepared, const ProofsFile& proofs, const Path& made_folder, const Path& scratch, Made& made) {
    const kit::Manifest& manifest = prepared.kit.manifest;
    // What is chosen does not follow from what was signed: a bad verdict is no reason to choose its sheet again.
    std::optional<ChosenProofs> chosen;
    if (order.proofing || order.sign) chosen = choose_proofs(prepared, made.report);

    FilesNow now(disk, made_folder, made.record);
    for (const kit::SignedProof* proof : counting(proofs.read)) made.report.proofs.push_back(held_against(*proof, now, manifest.papers));
    checks::check_proofs(prepared.rules, made.report.proofs, made.report.findings);
    if (!chosen) return;
    made.report.proofing = as_told(*chosen);
    if (order.proofing) {
        disk.make_folders(scratch);
        write_proofing_set(disk, prepared, *chosen, made_folder, scratch, *order.proofing);
    }
    if (!order.sign) return;
    const std::vector<kit::SignedProof> blanks = blanks_for(*chosen, manifest.version, proofs.read, now);
    if (!proofs.there) write_file(disk, proofs.path, kit::form_of(manifest.kit, blanks));
    else if (!blanks.empty()) write_file(disk, proofs.path, kit::with_blanks(proofs.bytes, proofs.shown, blanks));
}

}  // namespace qw::release
