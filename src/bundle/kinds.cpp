// SPDX-License-Identifier: GPL-3.0-or-later
#include "bundle/kinds.h"

#include "base/words.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace qw::bundle {

namespace {

using namespace std::string_view_literals;

struct Mark {
    std::size_t at;
    std::string_view bytes;
    const char* is;
};

constexpr Mark program_marks[] = {
    {0, "\x7f" "ELF"sv, "a program of Linux"},
    {0, "\xfe\xed\xfa\xce"sv, "a program of macOS"}, {0, "\xfe\xed\xfa\xcf"sv, "a program of macOS"},
    {0, "\xce\xfa\xed\xfe"sv, "a program of macOS"}, {0, "\xcf\xfa\xed\xfe"sv, "a program of macOS"},
    {0, "\xca\xfe\xba\xbe"sv, "a program of macOS or Java"},
    {0, "#!/"sv, "a script"}, {0, "#! /"sv, "a script"},
};

constexpr Mark archive_marks[] = {
    {0, "PK\3\4"sv, "a zip"}, {0, "PK\5\6"sv, "a zip"}, {0, "Rar!\x1a\x07"sv, "a RAR archive"}, {0, "7z\xbc\xaf\x27\x1c"sv, "a 7z archive"},
    {0, "\x1f\x8b\x08"sv, "packed by gzip"}, {4, "1AY&SY"sv, "packed by bzip2"}, {0, "\xfd" "7zXZ\0"sv, "packed by xz"},
    {0, "\x28\xb5\x2f\xfd"sv, "packed by zstd"}, {0, "MSCF\0\0\0\0"sv, "a cabinet"}, {257, "ustar"sv, "a tar archive"},
    {0, "StuffIt (c)"sv, "a StuffIt archive"},
};

constexpr std::array program_names{"app"sv, "appimage"sv, "apk"sv, "bat"sv, "cmd"sv, "com"sv, "command"sv, "cpl"sv, "deb"sv, "dll"sv, "exe"sv,
                                   "hta"sv, "jar"sv,      "js"sv,  "jse"sv, "lnk"sv, "msi"sv, "msp"sv,     "pif"sv, "pl"sv,  "ps1"sv, "py"sv,
                                   "rb"sv,  "reg"sv,      "rpm"sv, "scr"sv, "sh"sv,  "vbe"sv, "vbs"sv,     "wsf"sv, "wsh"sv};
constexpr std::array archive_names{"7z"sv,  "arj"sv,  "bz2"sv, "cab"sv, "dmg"sv, "gz"sv, "iso"sv, "lzh"sv,  "rar"sv,
                                   "sit"sv, "sitx"sv, "tar"sv, "tbz"sv, "tgz"sv, "xz"sv, "zip"sv, "zipx"sv, "zst"sv};
constexpr std::array document_names{"cbz"sv, "docx"sv, "dotx"sv, "epub"sv, "idml"sv, "key"sv, "numbers"sv, "odg"sv, "odp"sv, "ods"sv, "odt"sv, "oxt"sv, "pages"sv,
                                    "pptx"sv, "procreate"sv, "svgz"sv, "xlsx"sv};

template <std::size_t N>
bool among(const std::array<std::string_view, N>& names, const std::string& ending) {
    return std::find(names.begin(), names.end(), ending) != names.end();
}

std::string ending_of(const std::string& name) {
    const std::string last = in_lower_case(name.substr(name.rfind('/') + 1));
    const std::size_t dot = last.rfind('.');
    return dot == std::string::npos ? "" : last.substr(dot + 1);
}

template <std::size_t N>
std::string marked(const Mark (&marks)[N], const std::string& begins) {
    for (const Mark& mark : marks)
        if (begins.size() >= mark.at + mark.bytes.size() && std::string_view(begins).substr(mark.at, mark.bytes.size()) == mark.bytes) return mark.is;
    return "";
}

/// A header of MS-DOS holds zeros and is 64 bytes long (PE format, "MS-DOS Stub"); a text that begins with MZ holds none.
bool is_dos_program(const std::string& begins) {
    return begins.size() >= 64 && begins.starts_with("MZ") && begins.substr(0, 64).find('\0') != std::string::npos;
}

}  // namespace

std::string program_in(const std::string& name, const std::string& begins) {
    if (is_dos_program(begins)) return "a program of Windows";
    const std::string by_bytes = marked(program_marks, begins);
    if (!by_bytes.empty()) return by_bytes;
    const std::string ending = ending_of(name);
    return among(program_names, ending) ? "by its name, ." + ending + ", a program or script" : "";
}

std::string archive_in(const std::string& name, const std::string& begins) {
    const std::string ending = ending_of(name);
    if (among(document_names, ending)) return "";
    const std::string by_bytes = marked(archive_marks, begins);
    if (!by_bytes.empty()) return by_bytes;
    return among(archive_names, ending) ? "by its name, ." + ending + ", an archive" : "";
}

}  // namespace qw::bundle
