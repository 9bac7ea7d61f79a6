// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/document_facts.h"

#include <charconv>
#include <utility>

namespace qw::proof {

namespace {

/// A catalog may raise the version that the header says (ISO 32000-1 7.5.2).
std::string later_version(const std::string& header, const std::string& catalog) {
    const auto parts = [](const std::string& text) {
        std::pair<int, int> version{0, 0};
        const char* end = text.data() + text.size();
        const auto major = std::from_chars(text.data(), end, version.first);
        if (major.ptr != end) std::from_chars(major.ptr + 1, end, version.second);
        return version;
    };
    return parts(catalog) > parts(header) ? catalog : header;
}

/// 12.6: an action, or one of those that follow it; the first 32 of a chain, which may bite its own tail.
bool runs_script(Object action) {
    std::vector<Object> chain{action};
    for (std::size_t i = 0; i < chain.size() && i < 32; ++i) {
        if (is_name(entry(chain[i], "/S"), "JavaScript") || !entry(chain[i], "/JS").isNull()) return true;
        const auto next = elements(entry(chain[i], "/Next"));
        chain.insert(chain.end(), next.begin(), next.end());
    }
    return false;
}

/// Table 194 to 197: a dictionary of actions by trigger.
bool has_script_triggers(Object holder) {
    Object triggers = entry(holder, "/AA");
    if (!triggers.isDictionary()) return false;
    for (const auto& key : triggers.getKeys())
        if (runs_script(triggers.getKey(key))) return true;
    return false;
}

bool has_names(Object tree) { return filled(entry(tree, "/Names")) || filled(entry(tree, "/Kids")); }

void tell_viewer_preferences(Object preferences, FileFacts& facts) {
    facts.print_scaling = name_of(entry(preferences, "/PrintScaling"));
    facts.duplex = name_of(entry(preferences, "/Duplex"));
    if (auto tray = entry(preferences, "/PickTrayByPDFSize"); tray.isBool())
        facts.pick_tray_by_pdf_size = tray.getBoolValue();
}

void tell_output_intent(Object intents, FileFacts& facts) {
    const auto all = elements(intents);
    if (all.empty()) return;
    facts.output_intent = text_of(entry(all.front(), "/OutputConditionIdentifier"));
    facts.output_profile = entry(all.front(), "/DestOutputProfile").isStream();
}

}  // namespace

void tell_document(QPDF& pdf, FileFacts& facts) {
    const Object catalog = pdf.getRoot();
    const Object names = entry(catalog, "/Names");
    facts.encrypted = pdf.isEncrypted();
    facts.version = later_version(pdf.getPDFVersion(), name_of(entry(catalog, "/Version")));
    facts.title = text_of(entry(entry(pdf.getTrailer(), "/Info"), "/Title"));
    facts.subject = text_of(entry(entry(pdf.getTrailer(), "/Info"), "/Subject"));
    tell_viewer_preferences(entry(catalog, "/ViewerPreferences"), facts);
    tell_output_intent(entry(catalog, "/OutputIntents"), facts);
    facts.scripts = has_names(entry(names, "/JavaScript")) || runs_script(entry(catalog, "/OpenAction")) ||
                    has_script_triggers(catalog);
    facts.layers = filled(entry(entry(catalog, "/OCProperties"), "/OCGs"));
    facts.attachments = has_names(entry(names, "/EmbeddedFiles")) || filled(entry(catalog, "/AF")) ||
                        entry(catalog, "/Collection").isDictionary();
}

void tell_page_extras(Object page, FileFacts& facts) {
    facts.scripts = facts.scripts || has_script_triggers(page);
    for (const auto& annotation : elements(entry(page, "/Annots"))) {
        facts.scripts = facts.scripts || runs_script(entry(annotation, "/A")) || has_script_triggers(annotation);
        facts.attachments = facts.attachments || is_name(entry(annotation, "/Subtype"), "FileAttachment");
    }
}

}  // namespace qw::proof
