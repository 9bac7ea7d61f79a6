// SPDX-License-Identifier: GPL-3.0-or-later
// Artwork and fonts of which nobody says what allows them to be sold, and a font that forbids it.
#include "corpus/cases.h"

#include <stdexcept>

namespace qw::corpus {

namespace {

/// The system's fonts, with other embedding bits in one of them: fsType stands at byte 8 of the OS/2 table (OpenType
/// specification, OS/2), whose place the table directory tells, four bytes a number, most significant first.
void with_embedding(Work& work, unsigned bits) {
    for (const char* family : {"Lato", "Vollkorn"}) {
        std::string file = test::run(std::string("fc-match -f '%{file}' ") + family, work.folder()).text;
        const Path from = Path(file).parent_path(), to = work.folder() / "fonts" / family;
        std::filesystem::create_directories(to);
        for (const auto& entry : std::filesystem::directory_iterator(from))
            if (entry.path().filename().string().starts_with(family)) std::filesystem::copy_file(entry.path(), to / entry.path().filename());
    }
    const Path regular = work.folder() / "fonts/Lato/Lato-Regular.ttf";
    std::string font = work.read(regular);
    const auto number = [&](std::size_t at, int bytes) {
        std::size_t value = 0;
        for (int i = 0; i < bytes; ++i) value = value << 8 | static_cast<unsigned char>(font[at + static_cast<std::size_t>(i)]);
        return value;
    };
    for (std::size_t i = 0; i < number(4, 2); ++i) {
        const std::size_t record = 12 + 16 * i;
        if (font.compare(record, 4, "OS/2") != 0) continue;
        const std::size_t at = number(record + 8, 4) + 8;
        font[at] = static_cast<char>(bits >> 8);
        font[at + 1] = static_cast<char>(bits & 0xff);
        work.write(regular, font);
        work.write(work.folder() / "fonts.conf", "<?xml version=\"1.0\"?><!DOCTYPE fontconfig SYSTEM \"fonts.dtd\"><fontconfig><dir>" +
                                                     (work.folder() / "fonts").string() + "</dir><cachedir>" + (work.folder() / "cache").string() +
                                                     "</cachedir></fontconfig>");
        work.environment = "FONTCONFIG_FILE=" + test::quoted((work.folder() / "fonts.conf").string());
        return;
    }
    throw std::runtime_error("Lato has no OS/2 table");
}

}  // namespace

void add_rights_cases(std::vector<Case>& cases) {
    const auto add = [&](const char* rule, Change defect, Change near) { cases.push_back({rule, Subject::kit, std::move(defect), std::move(near), "", ""}); };
    const std::string line = "rights: { made-by: the corpus, allowed-by: own work }\n";
    add("rights-of-artwork", [=](Work& work) { work.manifest(line, ""); }, [=](Work& work) {
            work.manifest(line, "");
            for (const char* role : {"    role: journal-page\n", "    role: full-sheet\n"}) work.manifest(role, role + ("    " + line));
        });
    add("rights-of-fonts", [](Work& work) { work.replace(work.pipeline() / "fonts.yaml", "cuts: [Vollkorn-SemiBold]", "cuts: [Vollkorn-Bold]"); },
        [](Work& work) { work.replace(work.pipeline() / "fonts.yaml", "cuts: [Vollkorn-SemiBold]", "cuts: [Vollkorn-Bold, Vollkorn-SemiBold]"); });
    // Restricted licence; editable.
    add("font-embedding", [](Work& work) { with_embedding(work, 0x0002); }, [](Work& work) { with_embedding(work, 0x0008); });
}

}  // namespace qw::corpus
