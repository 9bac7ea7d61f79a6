// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/rights_rules.h"

namespace qw::checks {

namespace {

/// OpenType specification, OS/2 table, fsType: bit 1 restricted, 2 preview and print, 3 editable, 8 no subsetting,
/// 9 bitmaps only; none of bits 1 to 3: installable. Where an old font sets several, the least restrictive holds.
constexpr unsigned restricted = 0x0002, preview_and_print = 0x0004, editable = 0x0008, no_subsetting = 0x0100, bitmaps_only = 0x0200;

std::string hindrance(unsigned embedding) {
    if ((embedding & restricted) && !(embedding & (preview_and_print | editable))) return "its maker's leave is needed to embed it";
    if (embedding & bitmaps_only) return "only its bitmaps may be embedded";
    if (embedding & no_subsetting) return "it may be embedded only whole, and PDFs carry a part of it";
    return "";
}

std::string shown_bits(unsigned embedding) {
    std::string text = "fsType 0x0000";
    for (std::size_t i = text.size(); embedding && i-- > 10; embedding >>= 4) text[i] = "0123456789abcdef"[embedding & 15];
    return text;
}

}  // namespace

void check_rights(const Rules& rules, const kit::Manifest& manifest, const kit::Pipeline& pipeline, const std::vector<FontSeen>& fonts, Findings& findings) {
    for (const kit::Set& set : manifest.sets) {
        rules.tried("rights-of-artwork");
        if (manifest.rights_of(set)) continue;
        rules.say(findings, {"rights-of-artwork", Level::warning, "kit.yaml", 0, set.mark.line, "set " + set.name + ": no rights", "made-by and allowed-by",
                             "Nothing says where the artwork of set " + set.name + " comes from and what allows it to be sold",
                             "Write rights: { made-by: …, allowed-by: … } for the kit or for the set; whether it is enough, ask someone licensed to practise law"});
    }
    for (const FontSeen& font : fonts) {
        rules.tried("rights-of-fonts");
        if (pipeline.font(font.name) || manifest.fonts.count(font.name)) continue;
        const bool own = font.file.empty();
        rules.say(findings,
                  {"rights-of-fonts", Level::warning, own ? "pipeline/fonts.yaml" : font.file, 0, 0, font.name + ": no rights",
                   "made-by and allowed-by", "Nothing says where the font " + font.name + " comes from and what allows it to be sold within a PDF",
                   own ? "Add the font to pipeline/fonts.yaml, with its licence"
                       : "Write fonts: { " + font.name + ": { made-by: …, allowed-by: … } } in kit.yaml, or export the artwork with outlines"});
    }
}

void check_embedding(const Rules& rules, const std::vector<FontSeen>& fonts, Findings& findings) {
    for (const FontSeen& font : fonts) {
        if (!font.file.empty()) continue;
        rules.tried("font-embedding");
        const std::string why = hindrance(font.embedding);
        if (why.empty()) continue;
        rules.say(findings, {"font-embedding", Level::error, font.name, 0, 0, shown_bits(font.embedding), "installable, editable, or preview and print",
                             "The font " + font.name + " says of itself that it is not for this: " + why, "Install another cut of the font, or ask its maker"});
    }
}

}  // namespace qw::checks
