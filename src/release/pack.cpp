// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/pack.h"

#include "base/digest.h"
#include "base/words.h"
#include "bundle/zip.h"

#include <algorithm>

namespace qw::release {

namespace {

constexpr const char* contents_name = "contents.txt";

void write_contents(Disk& disk, const Path& folder, record::ReleaseRecord& record) {
    const std::string text = record::contents_text(record.files);
    write_file(disk, folder / contents_name, text);
    record.files.push_back({contents_name, "", text.size(), sha256_of(text), "contents", std::nullopt, std::nullopt, 0});
}

/// What macOS packs beside a file has its name and is none.
bool is_pdf_by_name(const std::string& name) { return in_lower_case(name).ends_with(".pdf") && !is_litter(name); }

}  // namespace

checks::PackedBundle read_back(Disk& disk, const Path& path, const std::string& shown, const FileDigest& whole) {
    return {shown, whole.sha256, whole.bytes, bundle::read_zip(disk, path, contents_name)};
}

OpenedBundle open_bundle(Disk& disk, const Path& path, const std::string& shown, const Path& folder) {
    OpenedBundle opened;
    bundle::Content content = bundle::unpack_zip(disk, path, contents_name, [&](const std::string& name, std::size_t index) -> std::optional<Path> {
        opened.taken_out.resize(index + 1);  // entries that were not read are passed over
        if (is_pdf_by_name(name)) opened.taken_out[index] = folder / (std::to_string(index) + ".pdf");
        return opened.taken_out[index];
    });
    const FileDigest whole = digest_of(disk, path);
    opened.packed = {shown, whole.sha256, whole.bytes, std::move(content)};
    opened.taken_out.resize(opened.packed.content.entries.size());
    return opened;
}

void pack(Disk& disk, const Path& folder, const ReadKit& kit, const checks::Rules& rules, record::ReleaseRecord& record, Findings& findings) {
    write_contents(disk, folder, record);
    std::sort(record.files.begin(), record.files.end(), [](const record::File& a, const record::File& b) { return a.path < b.path; });
    const std::string name = kit.manifest.kit + "-" + kit.manifest.version + ".zip";
    std::vector<bundle::Entry> entries;
    for (record::File& file : record.files) {
        file.bundle = name;
        // PDFs are compressed already: storing them costs a reading, deflating them half a minute for nothing.
        entries.push_back({file.path, folder / file.path, file.path.ends_with(".pdf")});
    }
    const bundle::Written written = bundle::write_zip(disk, folder / name, entries, kit.date);
    record.bundles.push_back({name, written.bytes, written.sha256, static_cast<int>(entries.size())});

    checks::PackedBundle packed = read_back(disk, folder / name, name, {written.bytes, written.sha256});
    packed.recorded = true;
    packed.date = kit.date;
    checks::check_bundle(rules, packed, findings);
    checks::check_record(rules, record, {packed}, findings);
    checks::check_record_itself(rules, record, kit.pipeline->papers, findings);
    checks::check_shop(rules, kit.manifest.shop->empty() ? nullptr : kit.pipeline->shop(*kit.manifest.shop), {packed}, findings);
}

}  // namespace qw::release
