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

namespace {

std::string little(std::uint64_t value, int bytes) {
    std::string text;
    for (int i = 0; i < bytes; ++i) text += static_cast<char>(value >> (8 * i));
    return text;
}

/// From "version needed" to the lengths of name and extra field, the same in both headers (APPNOTE 4.3.7, 4.3.12).
std::string common(const Odd& entry) {
    const auto packed = static_cast<std::uint32_t>(entry.data.size());
    return little(20, 2) + little(entry.flags, 2) + little(entry.method, 2) + little(0, 2) + little(0x21, 2) +
           little(crc32(entry.data), 4) + little(packed, 4) + little(entry.size ? entry.size : packed, 4) +
           little(static_cast<std::uint32_t>(entry.name.size()), 2) + little(0, 2);
}

}  // namespace

std::string odd_zip(const std::vector<Odd>& entries) {
    std::string zip, directory;
    for (const Odd& entry : entries) {
        const auto offset = static_cast<std::uint32_t>(zip.size());
        zip += "PK\3\4" + common(entry) + entry.name + entry.data;
        directory += "PK\1\2" + little(20, 2) + common(entry) + little(0, 8) + little(0, 2) + little(offset, 4) + entry.name;
    }
    const auto count = static_cast<std::uint32_t>(entries.size());
    return zip + directory + "PK\5\6" + little(0, 4) + little(count, 2) + little(count, 2) +
           little(static_cast<std::uint32_t>(directory.size()), 4) + little(static_cast<std::uint32_t>(zip.size()), 4) + little(0, 2);
}

}  // namespace qw::bundle::sample
