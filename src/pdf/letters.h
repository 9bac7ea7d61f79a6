// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "pdf/library.h"

#include "type/fonts.h"

#include <map>
#include <string>

namespace qw::pdf {

/// The fonts of a document as Type 0 fonts with the glyphs that are used (ISO 32000-1 9.7); character codes are glyph
/// numbers. Each is embedded when the document ends, for only then is known what is used.
class Letters {
public:
    Letters(Paper& paper, const type::Fonts& fonts) : paper_(paper), fonts_(fonts) {}

    /// The character codes of a line, in hexadecimal. Throws Fault (not_carried_out) when a character has no glyph:
    /// a sheet with an empty box in it must not be sold.
    std::string codes(type::Cut cut, const std::string& utf8);
    /// Of a cut that `codes` was asked for.
    PoDoFo::PdfReference font(type::Cut cut) const;
    /// Writes the fonts. Call once, after the last page.
    void embed();

private:
    struct Used {
        PoDoFo::PdfFont* font = nullptr;      ///< the document's
        std::map<long, double> widths;        ///< glyph number, advance in 1/1000 of the size
    };
    Used& used(type::Cut cut);
    void describe(type::Cut cut, const Used& used);

    Paper& paper_;
    const type::Fonts& fonts_;
    std::map<type::Cut, Used> used_;
};

}  // namespace qw::pdf
