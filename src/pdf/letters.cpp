// SPDX-License-Identifier: GPL-3.0-or-later
#include "pdf/letters.h"

#include "base/fault.h"
#include "pdf/numbers.h"
#include "type/characters.h"

namespace qw::pdf {

using namespace PoDoFo;

namespace {

std::string hexadecimal(long glyph) {
    static constexpr char digits[] = "0123456789ABCDEF";
    std::string text;
    for (int shift = 12; shift >= 0; shift -= 4) text += digits[(glyph >> shift) & 15];
    return text;
}

[[noreturn]] void no_glyph(const std::string& font, std::uint32_t character, const std::string& line) {
    throw Fault(FaultKind::not_carried_out,
                {"no-glyph", {}, font + " has no '" + type::utf8_of(character) + "', which stands in the line '" + line + "'", "",
                 "write it with characters that the typeface has"});
}

constexpr Length thousandths = Length::points(1000);  // at this size a point is 1/1000 em, the unit of PDF widths

/// ISO 32000-1 9.7.4.3: runs of neighbouring glyphs, each "first [width …]".
PdfArray width_array(const std::map<long, double>& widths) {
    PdfArray array, run;
    long next = -1;
    for (const auto& [glyph, width] : widths) {
        if (glyph != next && !run.empty()) {
            array.push_back(run);
            run.Clear();
        }
        if (run.empty()) array.push_back(static_cast<pdf_int64>(glyph));
        run.push_back(written(number(width)));
        next = glyph + 1;
    }
    if (!run.empty()) array.push_back(run);
    return array;
}

}  // namespace

Letters::Used& Letters::used(type::Cut cut) {
    Used& entry = used_[cut];
    if (!entry.font) {
        // The encoding belongs to the font from here on.
        entry.font = paper_.CreateFontSubset(fonts_.name(cut).c_str(), false, false, false, new PdfIdentityEncoding(0, 0xFFFF, true),
                                             fonts_.file(cut).c_str());
        if (!entry.font) PODOFO_RAISE_ERROR_INFO(ePdfError_InvalidFontFile, fonts_.file(cut).c_str());
    }
    return entry;
}

std::string Letters::codes(type::Cut cut, const std::string& utf8) {
    Used& entry = used(cut);
    std::string hex;
    for (const std::uint32_t character : type::characters_of(utf8)) {
        // PoDoFo notes used characters as single UTF-16 units.
        const long glyph = character > 0xFFFF ? 0 : entry.font->GetFontMetrics()->GetGlyphId(static_cast<long>(character));
        if (glyph <= 0) no_glyph(fonts_.name(cut), character, utf8);
        const std::string alone = type::utf8_of(character);
        if (entry.widths.emplace(glyph, fonts_.width(cut, thousandths, alone).in_points()).second)
            entry.font->AddUsedSubsettingGlyphs(pdf_text(alone), 1);
        hex += hexadecimal(glyph);
    }
    return hex;
}

PdfReference Letters::font(type::Cut cut) const { return used_.at(cut).font->GetObject()->Reference(); }

void Letters::embed() {
    paper_.EmbedSubsetFonts();
    for (const auto& [cut, entry] : used_) describe(cut, entry);
}

/// PoDoFo takes neighbouring glyphs whose widths differ by less than one for equally wide and invents the height of
/// capitals; what Fonts measured is put in place, so that a line ends where it was composed to end.
void Letters::describe(type::Cut cut, const Used& entry) {
    PdfObject* below = entry.font->GetObject()->MustGetIndirectKey("DescendantFonts");
    PdfObject* font = paper_.objects().MustGetObject(below->GetArray()[0].GetReference());
    PdfObject* descriptor = font->MustGetIndirectKey("FontDescriptor");
    font->GetDictionary().AddKey("W", width_array(entry.widths));
    descriptor->GetDictionary().AddKey("CapHeight", PdfObject(written(number(fonts_.cap_height(cut, thousandths).in_points()))));
}

}  // namespace qw::pdf
