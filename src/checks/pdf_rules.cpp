// SPDX-License-Identifier: GPL-3.0-or-later
#include "checks/pdf_rules.h"

#include "checks/duplex_rules.h"
#include "checks/page_geometry.h"

#include <algorithm>
#include <charconv>
#include <cstdio>
#include <map>

namespace qw::checks {

namespace {

using proof::OddityKind;

const std::string made_anew = "Release the kit again, and report it if it stays";

/// What is said of an oddity; the level stands in checks.yaml.
struct Saying {
    const char* rule;
    const char* limit;
    const char* message;
    const char* mend;
};

const std::map<OddityKind, Saying>& sayings() {
    static const std::map<OddityKind, Saying> all{
        {OddityKind::header_late,
         {"pdf-header", "%PDF at the first byte", "Something stands before the file's header",
          "Write the file anew; what copied it has added to it"}},
        {OddityKind::after_end,
         {"pdf-after-end", "no bytes after %%EOF", "Something stands after the file's end", "Write the file anew; what copied it has added to it"}},
        {OddityKind::no_id, {"pdf-id", "an ID", "The file has no ID, by which programs tell versions of it apart", "Write the file anew"}},
        {OddityKind::action, {"pdf-actions", "no actions", "The file does something by itself: it opens, plays or sends", "Take the action out"}},
        {OddityKind::link_out,
         {"pdf-links", "no addresses", "The file leads to an address outside of it, which may be gone when the buyer follows it",
          "Make sure that the address stays, or take it out"}},
        {OddityKind::layer_off,
         {"pdf-layer-hidden", "every layer shown", "A layer is not shown; what is on it is missing in print, or appears in some programs only",
          "Flatten the layers, with what is to be printed"}},
        {OddityKind::form_fields,
         {"pdf-forms", "no form fields", "The file has fields to fill in, which printers show in colours of their own or leave out",
          "Flatten the form"}},
        {OddityKind::annotation,
         {"pdf-annotations", "no annotations", "A note or mark lies over the page; some programs print it, others do not",
          "Flatten it into the page, or take it out"}},
        {OddityKind::annotation_hidden,
         {"pdf-annotation-hidden", "no hidden annotations", "A note or mark on the page is not printed", "Flatten it into the page, or take it out"}},
        {OddityKind::filter,
         {"pdf-filters", "no LZW, no Crypt", "A stream is packed in a way that readers need not know", "Write the file anew with Flate"}},
        {OddityKind::rare_filter,
         {"pdf-rare-filters", "Flate or DCT", "A picture is packed in a way that programs of printers and phones often do not know",
          "Export its pictures as JPEG, or without loss as Flate"}},
        {OddityKind::foreign_colour,
         {"pdf-colour-space", "grey, RGB or indexed colours",
          "Colours are given in another way than the file promises, so every program turns them into its own", "Convert the file to sRGB"}},
        {OddityKind::interpolated,
         {"picture-interpolated", "Interpolate false", "A picture asks to be smoothed, which some programs do and others do not",
          "Export it without interpolation"}},
        {OddityKind::alternates,
         {"picture-alternates", "one picture", "A picture has another one that may be shown in its place", "Export it without alternates"}},
        {OddityKind::depth,
         {"picture-depth", "1, 2, 4 or 8 bits", "A picture has a depth that not every program reads", "Export it with 8 bits a channel"}},
        {OddityKind::transparency,
         {"pdf-transparency", "opaque pages", "The page is put together with transparency, which printers' programs compose in different ways",
          "Flatten the page"}},
        {OddityKind::transfer,
         {"pdf-transfer", "no transfer functions, no own halftones", "The file bends the printer's tones",
          "Take the transfer function out of the export settings"}},
        {OddityKind::overprint,
         {"pdf-overprint", "no overprint", "Colours are to be printed over each other; on home printers the lower one disappears, or the upper",
          "Export it without overprint"}},
        {OddityKind::foreign_content,
         {"pdf-foreign-content", "content of its own", "A part of the page is not in the file, or is a program for old printers",
          "Export the page with all its parts"}},
        {OddityKind::intent,
         {"pdf-rendering-intent", "one of the four standard intents", "A rendering intent is named that does not exist", "Export it anew"}},
        {OddityKind::opening,
         {"pdf-opening", "opens as a page", "The file opens without the window's controls, so that the buyer does not find how to print it",
          "Take the opening setting out"}},
        {OddityKind::print_range,
         {"pdf-print-range", "all pages, once", "The file asks to print other pages than all, or more than one copy", "Take the setting out"}},
        {OddityKind::metadata_apart, {"metadata-agree", "one title", "The file names two titles", "Write the title once"}},
        {OddityKind::metadata_private,
         {"metadata-private", "no paths, no author", "The file tells of the machine or the person that made it",
          "Take it out of the document's properties"}},
        {OddityKind::profile,
         {"output-profile", "a profile of three components", "The profile that the file carries is none for RGB", "Carry the sRGB profile"}},
        {OddityKind::tiny_or_huge_box,
         {"page-box-limits", "3 to 14 400 units", "A box of a page is smaller or larger than readers have to bear",
          "Export the page at the paper's size"}},
    };
    return all;
}

Finding finding(const char* rule, const std::string& path, int page, std::string measured, std::string limit, std::string message, std::string mend = made_anew) {
    return {rule, Level::error, path, page, 0, std::move(measured), std::move(limit), std::move(message), std::move(mend)};
}

std::string size_text(Size size) { return show(size.width, size.height, UnitSystem::metric); }

bool same_sheet(Size a, Size b) { return near(a.as_portrait().width, b.as_portrait().width) && near(a.as_portrait().height, b.as_portrait().height); }

void check_oddities(const Rules& rules, const SeenPdf& seen, Findings& findings) {
    for (const auto& [kind, saying] : sayings()) rules.tried(saying.rule);
    for (const proof::Oddity& odd : seen.facts->oddities) {
        const Saying& saying = sayings().at(odd.kind);
        rules.say(findings, finding(saying.rule, seen.path, odd.page, odd.detail, saying.limit, saying.message, saying.mend));
    }
}

void check_plain(const Rules& rules, const SeenPdf& seen, Findings& findings) {
    const proof::FileFacts& facts = *seen.facts;
    for (const char* rule : {"pdf-scripts", "pdf-layers", "pdf-attachments", "pdf-version"}) rules.tried(rule);
    if (facts.scripts)
        rules.say(findings, finding("pdf-scripts", seen.path, 0, "a script", "none", "The file runs a script, which shops and phones refuse",
                                    "Take the script out"));
    const bool hidden = std::any_of(facts.oddities.begin(), facts.oddities.end(), [](const proof::Oddity& odd) { return odd.kind == OddityKind::layer_off; });
    if (facts.layers && !hidden)
        rules.say(findings, finding("pdf-layers", seen.path, 0, "layers", "none",
                                    "The file has layers, which the buyer can switch off without noticing", "Flatten the layers"));
    if (facts.attachments)
        rules.say(findings, finding("pdf-attachments", seen.path, 0, "attachments", "none", "Other files are hidden in the file",
                                    "Put them beside it in the bundle, or leave them out"));
    int major = 0, minor = 0;
    std::sscanf(facts.version.c_str(), "%d.%d", &major, &minor);
    if (major * 10 + minor > 17)
        rules.say(findings, finding("pdf-version", seen.path, 0, "PDF " + facts.version, "PDF 1.7",
                                    "The file is of a version that older programs do not open", "Write it as PDF 1.7"));
}

/// Bytes that a page's pictures take once they are unpacked, three a pixel, each picture once.
double unpacked_megabytes(const proof::PageFacts& page) {
    std::map<std::string, double> each;
    for (const proof::PlacedPicture& picture : page.pictures) each[picture.stream_sha256] = double{3} * picture.width * picture.height;
    double sum = 0;
    for (const auto& [digest, bytes] : each) sum += bytes;
    return sum / 1e6;
}

void check_page(const Rules& rules, const SeenPdf& seen, const proof::PageFacts& page, int number, Findings& findings) {
    rules.tried("fonts-embedded");
    rules.tried("fonts-drawn");
    rules.tried("fonts-readable");
    for (const proof::FontFact& font : page.fonts) {
        if (!font.embedded)
            rules.say(findings, finding("fonts-embedded", seen.path, number, font.name, "embedded", "A font is not in the file",
                                        "Export it with its fonts, or as outlines"));
        if (font.drawn)
            rules.say(findings, finding("fonts-drawn", seen.path, number, font.name.empty() ? "a font" : font.name, "outlines of a font file",
                                        "A font is made of drawings, which print coarsely in some programs", "Export it with its own font"));
        else if (!font.readable)
            rules.say(findings, finding("fonts-readable", seen.path, number, font.name, "characters that can be told",
                                        "Text in this font cannot be searched, copied or read aloud",
                                        "Export it with Unicode text, or as outlines with the text beside it"));
    }
    rules.tried("page-crop");
    if (!page.media.holds(page.crop, box_slack) || !page.crop.holds(page.media, box_slack))
        rules.say(findings, finding("page-crop", seen.path, number, box_text(page.crop), box_text(page.media),
                                    "The page is cropped: what is printed is not the sheet", "Export the page at the paper's size"));
    rules.tried("pdf-colour-space");
    if (page.paints_cmyk)
        rules.say(findings, finding("pdf-colour-space", seen.path, number, "DeviceCMYK", sayings().at(OddityKind::foreign_colour).limit,
                                    sayings().at(OddityKind::foreign_colour).message, sayings().at(OddityKind::foreign_colour).mend));
    rules.tried("page-weight");
    if (const double megabytes = unpacked_megabytes(page); megabytes > rules.limit("page-weight")) {
        char measured[48], limit[48];
        std::snprintf(measured, sizeof measured, "%.0f MB", megabytes);
        std::snprintf(limit, sizeof limit, "%g MB", rules.limit("page-weight"));
        rules.say(findings,
                  finding("page-weight", seen.path, number, measured, limit, "Unpacked, the page's pictures are larger than a phone has room for",
                          "Export its pictures at 300 ppi of their drawn size"));
    }
    if (seen.planned) return;
    if (seen.ours()) {
        rules.tried("page-boxes");
        if (!page.has_trim || !page.has_bleed || !page.media.holds(page.bleed, box_slack) || !page.bleed.holds(page.trim, box_slack))
            rules.say(findings, finding("page-boxes", seen.path, number, "trim " + box_text(page.trim) + ", bleed " + box_text(page.bleed),
                                        "TrimBox inside BleedBox inside MediaBox", "TrimBox and BleedBox are missing, or not nested"));
        rules.tried("page-turned");
        if (page.rotate != 0)
            rules.say(findings, finding("page-turned", seen.path, number, "Rotate " + std::to_string(page.rotate), "Rotate 0",
                                        "The page is turned: its back no longer lies as its front does"));
    }
    if (seen.paper) {
        rules.tried("page-size");
        if (!same_sheet(page.media.size() * page.user_unit, seen.paper->size))
            rules.say(findings,
                      finding("page-size", seen.path, number, size_text(page.media.size() * page.user_unit),
                              size_text(seen.paper->size) + " (" + seen.paper->title + ")", "The page is not exactly the paper that it is for"));
    }
}

void check_sizes_alike(const Rules& rules, const SeenPdf& seen, Findings& findings) {
    const auto& pages = seen.facts->pages;
    rules.tried("page-sizes-mixed");
    for (std::size_t i = 1; i < pages.size(); ++i) {
        if (same_sheet(shown_size(pages[i]), shown_size(pages[0]))) continue;
        rules.say(findings, finding("page-sizes-mixed", seen.path, static_cast<int>(i) + 1, size_text(shown_size(pages[i])),
                                    size_text(shown_size(pages[0])), "Pages of one file are for different papers", "Sort the pages by paper"));
        return;
    }
}

/// A page without ink that is no back of a last sheet, and no back of parts, which may be left white.
void check_blank(const Rules& rules, const SeenPdf& seen, Findings& findings) {
    const int pages = static_cast<int>(seen.facts->pages.size());
    for (const RenderedPage& page : seen.rendered) {
        const bool back = page.page % 2 == 0;
        if (back && (page.page == pages || seen.role == "part" || seen.role.empty())) continue;
        rules.tried("page-blank");
        if (page.ink.box.empty())
            rules.say(findings, finding("page-blank", seen.path, page.page, "no ink", "some ink", "There is nothing on the page",
                                        "Look at the artwork of this page, and release the kit again"));
    }
}

bool shows_the_same(const proof::PageFacts& a, const proof::PageFacts& b) {
    return a.content_sha256 == b.content_sha256 && !a.pictures.empty() && a.media == b.media &&
           std::equal(a.pictures.begin(), a.pictures.end(), b.pictures.begin(), b.pictures.end(),
                      [](const proof::PlacedPicture& x, const proof::PlacedPicture& y) { return x.stream_sha256 == y.stream_sha256; });
}

void check_repeated(const Rules& rules, const SeenPdf& seen, Findings& findings) {
    if (seen.role == "part") return;  // copies of a part fill sheet after sheet
    const auto& pages = seen.facts->pages;
    for (std::size_t i = 0; i < pages.size(); ++i) {
        rules.tried("page-repeated");
        for (std::size_t k = 0; k < i; ++k) {
            if (!shows_the_same(pages[i], pages[k])) continue;
            rules.say(findings, finding("page-repeated", seen.path, static_cast<int>(i) + 1, "as page " + std::to_string(k + 1), "each page once",
                                        "A page shows what another page shows", "Look whether a page was put in twice and another one left out"));
            break;
        }
    }
}

void check_promises(const Rules& rules, const SeenPdf& seen, Findings& findings) {
    const proof::FileFacts& facts = *seen.facts;
    rules.tried("viewer-preferences");
    if (facts.print_scaling != "None" || facts.pick_tray_by_pdf_size != true)
        rules.say(findings,
                  finding("viewer-preferences", seen.path, 0, facts.print_scaling.empty() ? "no PrintScaling" : "PrintScaling " + facts.print_scaling,
                          "PrintScaling None, PickTrayByPDFSize true", "The file does not ask viewers to print it unscaled, on its own paper"));
    rules.tried("output-intent");
    if (!facts.output_profile || facts.output_intent.find("sRGB") == std::string::npos)
        rules.say(findings, finding("output-intent", seen.path, 0, facts.output_intent.empty() ? "none" : facts.output_intent,
                                    "sRGB with its profile", "The file does not say that its colours are sRGB"));
    if (!seen.planned) rules.tried("file-title");
    if (!seen.planned && facts.title.empty()) rules.say(findings, finding("file-title", seen.path, 0, "none", "a title", "The file has no title"));
    // Of a file whose plan is not known, one that says nothing of turning is asked why; a single-sided one says Simplex.
    const bool both_sides = seen.both_sides.value_or(facts.duplex.empty() && facts.pages.size() > 1);
    // The print check turns over the edge that the kit's sheets turn over, head over foot if need be, and says so.
    if (seen.role != "print-check" && !seen.path.ends_with("/print-check.pdf")) check_backs(rules, both_sides, facts, seen.path, findings);
}

void check_rendered(const Rules& rules, const SeenPdf& seen, Findings& findings) {
    for (const RenderedPage& page : seen.rendered) {
        rules.tried("page-drawn");
        if (!page.complaint.empty())
            rules.say(findings, finding("page-drawn", seen.path, page.page, page.complaint, "no complaint",
                                        "A program that draws the page complains of it", "Export its artwork again, and release the kit again"));
        const proof::PageFacts& facts = seen.facts->pages[static_cast<std::size_t>(page.page) - 1];
        if (!seen.planned && seen.print == Print::bordered && facts.rotate == 0) check_ink_inside(rules, page, facts.trim, seen.path, findings);
    }
    if (!seen.planned) check_blank(rules, seen, findings);
}

}  // namespace

void check_pdf(const Rules& rules, const SeenPdf& seen, Findings& findings) {
    const proof::FileFacts& facts = *seen.facts;
    rules.tried("pdf-encrypted");
    if (facts.encrypted) {
        rules.say(findings, finding("pdf-encrypted", seen.path, 0, "encrypted", "open", "The file is encrypted: buyers cannot open or print it",
                                    "Save it without a password and without restrictions"));
        return;
    }
    rules.tried("file-damaged");
    if (!facts.damage.empty()) {
        rules.say(findings, finding("file-damaged", seen.path, 0, facts.damage, "a whole PDF", "The finished file cannot be read without repair"));
        return;
    }
    check_oddities(rules, seen, findings);
    check_plain(rules, seen, findings);
    for (std::size_t i = 0; i < facts.pages.size(); ++i) check_page(rules, seen, facts.pages[i], static_cast<int>(i) + 1, findings);
    check_sizes_alike(rules, seen, findings);
    if (seen.ours()) check_promises(rules, seen, findings);
    if (!seen.planned) check_repeated(rules, seen, findings);
    check_rendered(rules, seen, findings);
}

}  // namespace qw::checks
