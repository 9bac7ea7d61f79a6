// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace qw::record {

struct Input {
    std::string path, sha256;  ///< path begins with kit/, pipeline/ or system/
    std::string done = {};     ///< artwork: what is done to it, in plain words; empty: no artwork, or not recorded
    std::string rights = {};   ///< artwork and fonts: by whom it was made and what allows it to be sold; empty: not stated
};

struct File {
    std::string path;          ///< inside the bundle
    std::string bundle;        ///< which bundle holds it
    std::uint64_t bytes = 0;
    std::string sha256;
    std::string role;          ///< role of its set, or the name of the generated sheet
    std::optional<std::string> paper;  ///< PWG name
    std::optional<std::string> print;
    int pages = 0;
};

struct Bundle {
    std::string path;          ///< relative to the release folder
    std::uint64_t bytes = 0;
    std::string sha256;
    int entries = 0;
};

/// release.json, format 1 (src/record/release.md): what was made, from what, with digests. No times, no absolute paths.
struct ReleaseRecord {
    static constexpr int format = 1;
    std::string kit, version, tool;
    std::vector<Input> inputs;
    std::vector<File> files;
    std::vector<Bundle> bundles;
};

/// Sorted by path, UTF-8, two-space indent, one newline at the end: equal records give equal bytes.
std::string to_json(const ReleaseRecord& record);
/// Throws Fault (not_carried_out, code "damaged-record") for text that is no such record or of another format.
ReleaseRecord read_release_record(const std::string& text, const std::string& shown_name);

/// contents.txt as `sha256sum -c` reads it: digest, two spaces, path; sorted by path. `contents.txt` itself is left out.
std::string contents_text(const std::vector<File>& files);

}  // namespace qw::record
