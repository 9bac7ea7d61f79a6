// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/audit_text.h"

#include "base/fault.h"
#include "checks/text_rules.h"
#include "release/told_kit.h"
#include "texts/pasted.h"

namespace qw::release {

namespace {

/// A thousand times what a shop takes: beyond it the wrong file was named.
constexpr std::uint64_t most_bytes = std::uint64_t{4} << 20;

std::string read_listing(Disk& disk, const Path& path) {
    const auto real = disk.resolve(path);
    const auto stat = real ? disk.stat(*real) : std::nullopt;
    if (!stat || stat->type != FileType::file || stat->size > most_bytes)
        throw Fault(FaultKind::not_understood, {"no-text",
                                                {path.string(), 0, 0},
                                                !stat || stat->type != FileType::file ? "there is no such file" : "the file is larger than 4 MiB",
                                                "a listing text",
                                                "save the text of the listing to a file and name that"});
    return read_text(disk, *real, most_bytes);
}

}  // namespace

void audit_text(Disk& disk, const Path& text, const Prepared& prepared, Findings& findings) {
    const std::string bytes = read_listing(disk, text), name = text.filename().string();
    if (!checks::check_text_bytes(prepared.rules, bytes, name, findings)) return;
    const kit::Manifest& manifest = prepared.kit.manifest;
    checks::check_text_left_over(prepared.rules, bytes, name, findings);
    checks::check_shop_text(prepared.rules, manifest.shop->empty() ? nullptr : prepared.kit.pipeline->shop(*manifest.shop), bytes, manifest.title, name, findings);
    checks::check_claims(prepared.rules, told_kit(prepared), texts::read_pasted(bytes), name, findings);
}

}  // namespace qw::release
