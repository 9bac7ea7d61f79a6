// SPDX-License-Identifier: GPL-3.0-or-later
#include "type/face.h"

#include "base/fault.h"

#include <ft2build.h>
#include FT_FREETYPE_H
#include FT_ADVANCES_H
#include FT_OUTLINE_H
#include FT_TRUETYPE_TABLES_H
#include FT_TRUETYPE_TAGS_H

#include <algorithm>
#include <memory>

namespace qw::type {

namespace {

[[noreturn]] void refuse(const Path& file, const std::string& what) {
    throw Fault(FaultKind::not_carried_out,
                {"font-unusable", {file.string(), 0, 0}, what, "a font file with TrueType outlines",
                 "install the Debian package of the font again"});
}

struct Library {
    FT_Library handle = nullptr;
    Library() {
        if (FT_Init_FreeType(&handle) != 0) handle = nullptr;
    }
    ~Library() {
        if (handle) FT_Done_FreeType(handle);
    }
    Library(const Library&) = delete;
    Library& operator=(const Library&) = delete;
};

using OpenFace = std::unique_ptr<FT_FaceRec, decltype(&FT_Done_Face)>;

bool has_table(FT_Face face, FT_ULong tag) {
    FT_ULong length = 0;
    return FT_Load_Sfnt_Table(face, tag, 0, nullptr, &length) == 0 && length > 0;
}

int advance_of(FT_Face face, FT_UInt glyph, const Path& file) {
    if (FT_Load_Glyph(face, glyph, FT_LOAD_NO_SCALE | FT_LOAD_NO_HINTING) != 0) refuse(file, "a glyph of the font is damaged");
    return static_cast<int>(face->glyph->metrics.horiAdvance);
}

int depth_of(FT_Face face, const std::string& letters, const Path& file) {
    FT_Pos lowest = 0;
    for (const char letter : letters) {
        advance_of(face, FT_Get_Char_Index(face, static_cast<FT_ULong>(letter)), file);
        FT_BBox box;
        FT_Outline_Get_CBox(&face->glyph->outline, &box);
        lowest = std::min(lowest, box.yMin);
    }
    return static_cast<int>(-lowest);
}

/// From the table of advances alone: no outline is taken apart for them.
std::vector<std::pair<std::uint32_t, int>> advances_of(FT_Face face, const Path& file) {
    std::vector<std::pair<std::uint32_t, int>> advances;
    FT_UInt glyph = 0;
    for (FT_ULong c = FT_Get_First_Char(face, &glyph); glyph != 0; c = FT_Get_Next_Char(face, c, &glyph)) {
        FT_Fixed advance = 0;
        if (FT_Get_Advance(face, glyph, FT_LOAD_NO_SCALE | FT_LOAD_NO_HINTING, &advance) != 0) refuse(file, "a glyph of the font is damaged");
        advances.emplace_back(static_cast<std::uint32_t>(c), static_cast<int>(advance));
    }
    std::sort(advances.begin(), advances.end());
    return advances;
}

}  // namespace

const int* Face::advance(std::uint32_t character) const {
    if (character < usual_advances.size()) return usual_advances[character] >= 0 ? &usual_advances[character] : nullptr;
    const auto at = std::lower_bound(advances.begin(), advances.end(), character,
                                     [](const auto& entry, std::uint32_t c) { return entry.first < c; });
    return at != advances.end() && at->first == character ? &at->second : nullptr;
}

Face read_face(const Path& file) {
    const Library library;
    if (!library.handle) refuse(file, "the font library does not start");
    FT_Face raw = nullptr;
    if (FT_New_Face(library.handle, file.c_str(), 0, &raw) != 0) refuse(file, "the font cannot be opened");
    const OpenFace face(raw, &FT_Done_Face);
    // An OpenType file may hold CFF outlines under a .ttf name; only 'glyf' can be cut down to the glyphs used.
    if (!FT_IS_SFNT(raw) || !has_table(raw, TTAG_glyf) || has_table(raw, TTAG_CFF)) refuse(file, "the font has no TrueType outlines");
    if (FT_Select_Charmap(raw, FT_ENCODING_UNICODE) != 0) refuse(file, "the font has no Unicode character map");
    const auto* os2 = static_cast<const TT_OS2*>(FT_Get_Sfnt_Table(raw, FT_SFNT_OS2));
    const char* name = FT_Get_Postscript_Name(raw);
    if (!os2 || os2->version < 2 || os2->sCapHeight <= 0 || raw->units_per_EM == 0 || !name)
        refuse(file, "the font does not tell its name or the height of its capitals");
    Face read{file, name, raw->units_per_EM, os2->sCapHeight, depth_of(raw, "gjpqy", file), FT_Get_FSType_Flags(raw), advances_of(raw, file)};
    read.usual_advances.assign(0x2200, -1);
    for (const auto& [character, advance] : read.advances)
        if (character < read.usual_advances.size()) read.usual_advances[character] = advance;
    return read;
}

}  // namespace qw::type
