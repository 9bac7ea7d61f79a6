// SPDX-License-Identifier: GPL-3.0-or-later
#include "bundle/sample.h"

#include <cstdint>
#include <fstream>
#include <sstream>

namespace qw::bundle::sample {

std::string noise(std::size_t size) {
    std::string bytes(size, '\0');
    std::uint64_t state = 88172645463325252u;
    for (char& byte : bytes) {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        byte = static_cast<char>(state >> 32);
    }
    return bytes;
}

void put(const Path& path, const std::string& bytes) {
    std::filesystem::create_directories(path.parent_path());
    std::ofstream(path, std::ios::binary) << bytes;
}

std::string get(const Path& path) {
    std::ostringstream bytes;
    bytes << std::ifstream(path, std::ios::binary).rdbuf();
    return bytes.str();
}

std::vector<Entry> small(const Path& folder) {
    std::string tides;
    for (int hour = 0; hour < 400; ++hour) tides += "high water " + std::to_string(hour) + "\n";
    put(folder / "pages", noise(5000));
    put(folder / "tides", tides);
    put(folder / "nothing", "");
    return {{"letter/borderless/journal-pages.pdf", folder / "pages", true},
            {"tides.txt", folder / "tides", false},
            {"a4/nothing.txt", folder / "nothing", false},
            {"a4/nothing.pdf", folder / "nothing", true}};
}

std::uint32_t crc32(const std::string& bytes) {
    std::uint32_t crc = 0xffffffffu;
    for (const char byte : bytes) {
        crc ^= static_cast<unsigned char>(byte);
        for (int bit = 0; bit < 8; ++bit) crc = (crc >> 1) ^ ((crc & 1) ? 0xedb88320u : 0u);
    }
    return ~crc;
}

std::string little(std::uint64_t value, int bytes) {
    std::string text;
    for (int i = 0; i < bytes; ++i) text += static_cast<char>(value >> (8 * i));
    return text;
}

namespace {

/// From "version needed" to the length of the name, the same in both headers (APPNOTE 4.3.7, 4.3.12).
std::string common(const Odd& entry, bool local) {
    const std::string& name = local && !entry.local_name.empty() ? entry.local_name : entry.name;
    const bool unknown = local && entry.unknown_before;
    const auto packed = entry.all_ones ? 0xffffffffu : static_cast<std::uint32_t>(entry.data.size());
    std::uint32_t size = entry.all_ones ? 0xffffffffu : entry.size ? entry.size : packed;
    if (local && entry.local_size) size = entry.local_size;
    return little(20, 2) + little(entry.flags, 2) + little(entry.method, 2) + little(entry.time, 2) + little(entry.date, 2) +
           little(unknown     ? 0
                  : entry.crc ? *entry.crc
                              : crc32(entry.data),
                  4) +
           little(unknown ? 0 : packed, 4) + little(unknown ? 0 : size, 4) + little(name.size(), 2);
}

std::string local_header(const Odd& entry) {
    return "PK\3\4" + common(entry, true) + little(entry.extra.size() + entry.local_extra.size(), 2) +
           (entry.local_name.empty() ? entry.name : entry.local_name) + entry.extra + entry.local_extra;
}

std::string directory_header(const Odd& entry, std::uint64_t offset) {
    return "PK\1\2" + little(20, 1) + little(entry.made_on, 1) + common(entry, false) + little(entry.extra.size(), 2) +
           little(entry.comment.size(), 2) + little(0, 4) + little(entry.attributes, 4) + little(offset, 4) + entry.name + entry.extra +
           entry.comment;
}

}  // namespace

std::string odd_zip(const std::vector<Odd>& entries, const Around& around) {
    std::string zip, directory;
    for (const Odd& entry : entries) {
        const std::string header = directory_header(entry, entry.at ? *entry.at : zip.size());
        directory.insert(around.backwards ? 0 : directory.size(), header);
        if (!entry.at) zip += local_header(entry) + entry.data + entry.behind;
    }
    return around.before + zip + directory + "PK\5\6" + little(0, 4) + little(entries.size(), 2) + little(entries.size(), 2) +
           little(directory.size(), 4) + little(zip.size(), 4) + little(around.comment.size(), 2) + around.comment + around.after;
}

Odd deflated(const std::string& name, const std::string& bytes, std::uint16_t flags) {
    Odd entry{name, "\1" + little(bytes.size(), 2) + little(~bytes.size() & 0xffff, 2) + bytes, 8, flags, static_cast<std::uint32_t>(bytes.size())};
    entry.crc = crc32(bytes);
    return entry;
}

Odd with_descriptor(Odd entry, bool marked) {
    entry.flags |= 8;
    entry.unknown_before = true;
    entry.behind = (marked ? "PK\7\10" : "") + little(entry.crc ? *entry.crc : crc32(entry.data), 4) + little(entry.data.size(), 4) +
                   little(entry.size ? entry.size : entry.data.size(), 4);
    return entry;
}

std::string unicode_path(const std::string& name, const std::string& utf8) {
    return little(0x7075, 2) + little(5 + utf8.size(), 2) + little(1, 1) + little(crc32(name), 4) + utf8;
}

}  // namespace qw::bundle::sample
