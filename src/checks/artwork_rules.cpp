// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/artwork_rules.h"

#include "checks/in_digits.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace qw::checks {

namespace {

/// Less than a cut or a printer can show.
constexpr Length slack = Length::mm(0.05);

Finding finding(const std::string& rule, const std::string& file, int page, std::string measured, std::string limit, std::string message, std::string mend) {
    return {rule, Level::error, file, page, 0, std::move(measured), std::move(limit), std::move(message), std::move(mend)};
}

void check_density(const Rules& rules, const kit::Set& set, const ArtworkSeen& seen, Findings& findings) {
    const artwork::Facts& facts = *seen.picture;
    if (!set.drawn_at || !facts.density || facts.density->x <= 0) return;
    rules.tried("artwork-density-tag");
    const bool wide = facts.upright_width() >= facts.upright_height();
    const Size drawn = wide ? set.drawn_at->as_landscape() : set.drawn_at->as_portrait();
    const double by_size = facts.upright_width() / drawn.width.in_inches();
    const double off = std::abs(facts.density->x / by_size - 1) * 100;
    if (off <= rules.limit("artwork-density-tag")) return;
    rules.say(findings, finding("artwork-density-tag", seen.shown, 0, in_digits(facts.density->x) + " ppi in the file, " + in_digits(by_size) + " ppi by its drawn size",
                                in_digits(rules.limit("artwork-density-tag"), "%g") + " % apart", "The file says another pixel density than its drawn size gives",
                                "Save it with the right density, or mend drawn-at of set " + set.name));
}

void check_ink(const Rules& rules, const ArtworkSeen& seen, const Ink& ink, int page, Findings& findings) {
    rules.tried("artwork-blank");
    rules.tried("artwork-nearly-blank");
    if (!ink.box.empty()) {
        const double percent = ink.coverage * 100, least = rules.limit("artwork-nearly-blank");
        if (percent >= least) return;
        rules.say(findings, finding("artwork-nearly-blank", seen.shown, page, in_digits(percent, "%.3f %%"), in_digits(least, "%g %%"), "There is hardly anything on it",
                                    "Look whether its drawing was left out at export"));
        return;
    }
    rules.say(findings, finding("artwork-blank", seen.shown, page, "no ink", "some ink", "There is nothing on it", "Replace the file, or take it out of the set"));
}

}  // namespace

void check_artwork(const Rules& rules, const kit::Set& set, const ArtworkSeen& seen, Findings& findings) {
    rules.tried("artwork-damaged");
    if (!seen.damage.empty()) {
        rules.say(findings, finding("artwork-damaged", seen.shown, 0, seen.damage, "a whole PNG, JPEG or PDF", "The artwork cannot be used",
                                    "Export it again and replace the file"));
        return;
    }
    if (seen.picture) {
        check_ink(rules, seen, seen.picture->ink, 0, findings);
        check_density(rules, set, seen, findings);
        rules.tried("artwork-recoded");
        if (seen.picture->passage == artwork::Passage::recoded) {
            rules.say(findings, finding("artwork-recoded", seen.shown, 0, "", "",
                                        "Its pixels are packed anew, without loss but not byte for byte: " + seen.picture->why_recoded,
                                        "Nothing has to be done; export it flattened, 8 bits, sRGB, to pass it through untouched"));
        }
        return;
    }
    for (std::size_t i = 0; i < seen.ink.size(); ++i) check_ink(rules, seen, *seen.ink[i], static_cast<int>(i) + 1, findings);
    for (std::size_t i = 0; i < seen.pdf->pages.size(); ++i) {
        rules.tried("fonts-embedded");
        for (const proof::FontFact& font : seen.pdf->pages[i].fonts) {
            if (font.embedded) continue;
            rules.say(findings, finding("fonts-embedded", seen.shown, static_cast<int>(i) + 1, font.name, "embedded",
                                        "The font " + font.name + " is not in the file, so every buyer's program would set another",
                                        "Export it with fonts embedded or as outlines"));
        }
    }
}

void check_set(const Rules& rules, const kit::Set& set, const std::vector<FaceSeen>& faces, std::size_t damaged, Findings& findings) {
    if (set.sides == kit::Sides::duplex && damaged == 0) {
        rules.tried("odd-faces");
        if (faces.size() % 2 != 0 && !set.last_back) {
            rules.say(findings, {"odd-faces", Level::error, "kit.yaml", 0, set.mark.line, std::to_string(faces.size()) + " faces", "an even number",
                                 "The last sheet of set " + set.name + " has no back", "Add a face, or write last-back: blank"});
        }
    }
    std::size_t landscape = 0, known = 0;
    for (const FaceSeen& face : faces) {
        if (set.place == kit::Place::as_drawn) rules.tried("artwork-size-known");
        if (!face.drawn) {
            // What covers or fits its paper needs no size of its own.
            if (set.place == kit::Place::as_drawn)
                rules.say(findings,
                          finding("artwork-size-known", face.shown, face.page, "no density", "a size", "It cannot be known how large it was drawn",
                                  "Write drawn-at for set " + set.name + ", or save the file with its density"));
            continue;
        }
        ++known;
        landscape += face.drawn->landscape() ? 1 : 0;
    }
    if (known < 2) return;
    rules.tried("mixed-orientation");
    if (landscape == 0 || landscape == known) return;
    const bool most_landscape = landscape * 2 >= known;
    for (const FaceSeen& face : faces) {
        if (!face.drawn || face.drawn->landscape() == most_landscape) continue;
        rules.say(findings, finding("mixed-orientation", face.shown, face.page, most_landscape ? "portrait" : "landscape", most_landscape ? "landscape" : "portrait",
                                    "It is held otherwise than the rest of set " + set.name, "Turn it, or move it to a set of its own"));
    }
}

void check_placement(const Rules& rules, const kit::Set& set, const Edition& edition, const compose::Placement& p, const std::string& shown, Findings& findings) {
    if (!p.face || p.artwork.empty()) return;
    const std::string where = " on " + edition.paper.title + ", " + name_of(edition.print);
    const std::array<Length, 4> lost{p.lost.left, p.lost.right, p.lost.bottom, p.lost.top};
    const Length white = max(max(p.white.left, p.white.right), max(p.white.bottom, p.white.top));
    if (p.ppi_x > 0) {
        const double ppi = std::min(p.ppi_x, p.ppi_y);
        for (const char* rule : {"artwork-ppi-low", "artwork-ppi"}) {
            rules.tried(rule);
            // The tag of 300 ppi is 11811 pixels a metre, 299.9994: a tenth of a pixel is no fault.
            if (ppi + 0.1 >= rules.limit(rule)) continue;
            rules.say(findings, finding(rule, shown, 0, in_digits(ppi) + " ppi", in_digits(rules.limit(rule)) + " ppi",
                                        "It has too few pixels for its printed size" + where, "Export it at 300 ppi of its drawn size"));
            break;
        }
    }
    if (set.place == kit::Place::contain || edition.print == Print::bordered) return;
    rules.tried("artwork-covers-paper");
    if (white > slack) {
        rules.say(findings, finding("artwork-covers-paper", shown, 0, show_metric(white) + " of paper stays white at an edge", "0 mm",
                                    "The artwork does not cover the paper" + where, "Draw it larger, or let the set say place: cover"));
        return;
    }
    if (set.place == kit::Place::as_drawn) {
        rules.tried("artwork-bleed");
        const Length least = *std::min_element(lost.begin(), lost.end());
        if (least + slack < set.bleed * p.scale) {
            rules.say(findings, finding("artwork-bleed", shown, 0, show_metric(least), show_metric(set.bleed * p.scale),
                                        "The artwork reaches less far beyond the paper than its bleed" + where,
                                        "Draw it with " + show_metric(set.bleed) + " of bleed on the larger paper"));
        }
    }
    rules.tried("artwork-safe-area");
    const Length promised = set.safe_area * p.scale, taken = Length::mm(rules.limit("artwork-safe-area"));
    if (promised + slack < taken) {
        rules.say(findings, finding("artwork-safe-area", shown, 0, show_metric(promised), show_metric(taken),
                                    "A borderless driver may take more off an edge than the safe area leaves" + where,
                                    "Keep what matters further from the edge and write the larger safe-area"));
    }
    if (set.place != kit::Place::cover) return;
    const Length cut = *std::max_element(lost.begin(), lost.end()) - set.bleed * p.scale;
    if (cut > promised + slack) {
        rules.say(findings, finding("artwork-safe-area", shown, 0, show_metric(cut) + " cut beyond the bleed", show_metric(promised),
                                    "Covering the paper cuts into what the safe area promises" + where,
                                    "Draw it nearer to the paper's shape, or let the set say place: contain"));
    }
}

}  // namespace qw::checks
