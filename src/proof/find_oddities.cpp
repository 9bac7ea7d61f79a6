// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/find_oddities.h"

#include <algorithm>
#include <array>
#include <cstring>
#include <string_view>

namespace qw::proof {

namespace {

/// Dictionaries in dictionaries; deeper than any page needs, and no deeper than the stack bears.
constexpr int deepest_resources = 12;
constexpr std::size_t longest_detail = 80;

bool one_of(const std::string& name, std::initializer_list<std::string_view> names) { return std::find(names.begin(), names.end(), name) != names.end(); }

template <typename Visit>
void each(Object dictionary, Visit visit) {
    if (!dictionary.isDictionary()) return;
    for (const auto& key : dictionary.getKeys()) visit(dictionary.getKey(key));
}

std::string tail_of(Source& source, std::uint64_t length) {
    std::string end(static_cast<std::size_t>(std::min(length, source.size())), ' ');
    end.resize(source.read(source.size() - end.size(), std::as_writable_bytes(std::span(end.data(), end.size()))));
    return end;
}

/// Text between two tags of XMP, wherever it stands; XMP is XML, of which only this much is wanted.
std::string between(const std::string& text, const std::string& from, const std::string& to) {
    const std::size_t begin = text.find(from);
    if (begin == std::string::npos) return "";
    const std::size_t end = text.find(to, begin);
    return end == std::string::npos ? "" : text.substr(begin + from.size(), end - begin - from.size());
}

std::string title_in_xmp(Object metadata) {
    if (!metadata.isStream() || count_of(entry(metadata, "/Length")) > (1u << 20)) return "";
    const auto data = metadata.getStreamData(qpdf_dl_generalized);
    const std::string title = between({reinterpret_cast<const char*>(data->getBuffer()), data->getSize()}, "<dc:title>", "</dc:title>");
    const std::size_t open = title.find("<rdf:li");
    return open == std::string::npos ? "" : between(title.substr(open), ">", "</rdf:li>");
}

/// A path of a machine: what a program left that knew no better.
bool looks_like_path(const std::string& text) {
    return text.find("/home/") != std::string::npos || text.find("/Users/") != std::string::npos || text.find(":\\") != std::string::npos ||
           text.starts_with("file:");
}

}  // namespace

void OddityFinder::note(OddityKind kind, std::string detail) {
    detail = valid_utf8(std::move(detail));
    if (detail.size() > longest_detail) detail = valid_utf8(detail.substr(0, longest_detail)) + " …";
    const bool known = std::any_of(found_.begin(), found_.end(), [&](const Oddity& other) { return other.kind == kind && other.detail == detail; });
    if (!known) found_.push_back({kind, page_, std::move(detail)});
}

bool OddityFinder::first_visit(Object object) {
    if (!object.isDictionary() && !object.isStream() && !object.isArray()) return false;
    return !object.isIndirect() || seen_.insert(object.getObjGen()).second;
}

void OddityFinder::bytes(Source& source) {
    std::array<std::byte, 5> head{};
    if (source.read(0, head) != head.size() || std::memcmp(head.data(), "%PDF-", head.size()) != 0)
        note(OddityKind::header_late, "the first byte is not the header's");
    const std::string end = tail_of(source, 4096);
    const std::size_t last = end.rfind("%%EOF");
    if (last == std::string::npos) return;  // told as damage
    std::size_t after = end.size() - last - 5;
    for (const std::string_view line_end : {"\r\n", "\n", "\r"})
        if (after >= line_end.size() && end.substr(last + 5, line_end.size()) == line_end) {
            after -= line_end.size();
            break;
        }
    if (after > 0) note(OddityKind::after_end, std::to_string(after) + " bytes");
}

void OddityFinder::document(QPDF& pdf) {
    page_ = 0;
    const Object trailer = pdf.getTrailer(), root = pdf.getRoot();
    if (elements(entry(trailer, "/ID")).size() != 2) note(OddityKind::no_id, "no ID");
    catalog(root);
    information(entry(trailer, "/Info"), entry(root, "/Metadata"));
}

void OddityFinder::catalog(Object catalog) {
    layers(entry(catalog, "/OCProperties"));
    intents(entry(catalog, "/OutputIntents"));
    action(entry(catalog, "/OpenAction"));
    triggers(catalog);
    const Object form = entry(catalog, "/AcroForm");
    if (filled(entry(form, "/Fields")) || !is_null(entry(form, "/XFA"))) note(OddityKind::form_fields, "form fields");
    if (const std::string mode = name_of(entry(catalog, "/PageMode")); one_of(mode, {"FullScreen", "UseAttachments"})) note(OddityKind::opening, "PageMode " + mode);
    const Object preferences = entry(catalog, "/ViewerPreferences");
    for (const char* key : {"/HideToolbar", "/HideMenubar", "/HideWindowUI", "/FitWindow"})
        if (is_true(entry(preferences, key))) note(OddityKind::opening, key + 1);
    if (!is_null(entry(preferences, "/PrintPageRange"))) note(OddityKind::print_range, "PrintPageRange");
    if (const std::uint32_t copies = count_of(entry(preferences, "/NumCopies")); copies > 1) note(OddityKind::print_range, "NumCopies " + std::to_string(copies));
}

void OddityFinder::layers(Object properties) {
    const Object setting = entry(properties, "/D");
    const bool all_off = is_name(entry(setting, "/BaseState"), "OFF");
    const auto turned_on = elements(entry(setting, "/ON"));
    const auto listed = [](const std::vector<Object>& list, Object layer) {
        return std::any_of(list.begin(), list.end(),
                           [&](Object other) { return other.isIndirect() && layer.isIndirect() && other.getObjGen() == layer.getObjGen(); });
    };
    const auto turned_off = elements(entry(setting, "/OFF"));
    for (Object layer : elements(entry(properties, "/OCGs")))
        if (listed(turned_off, layer) || (all_off && !listed(turned_on, layer))) note(OddityKind::layer_off, text_of(entry(layer, "/Name")));
}

void OddityFinder::intents(Object intents) {
    for (const Object& intent : elements(intents)) {
        const Object profile = entry(intent, "/DestOutputProfile");
        if (const_cast<Object&>(profile).isStream() && count_of(entry(profile, "/N")) != 3)
            note(OddityKind::profile, "a profile of " + std::to_string(count_of(entry(profile, "/N"))) + " components");
    }
}

void OddityFinder::information(Object information, Object metadata) {
    const std::string title = text_of(entry(information, "/Title")), in_xmp = title_in_xmp(metadata);
    if (!in_xmp.empty() && in_xmp != title) note(OddityKind::metadata_apart, in_xmp);
    for (const char* key : {"/Title", "/Subject", "/Author", "/Creator", "/Producer", "/Keywords"}) {
        const std::string text = text_of(entry(information, key));
        if (looks_like_path(text) || (std::string_view(key) == "/Author" && !text.empty())) note(OddityKind::metadata_private, std::string(key + 1) + " " + text);
    }
}

void OddityFinder::action(Object action) {
    std::vector<Object> chain{action};
    for (std::size_t i = 0; i < chain.size() && i < 32; ++i) {
        const std::string kind = name_of(entry(chain[i], "/S"));
        if (kind == "URI") note(OddityKind::link_out, text_of(entry(chain[i], "/URI")));
        // Actions within the file are no fault; one that leads to other files is of no use in a bundle.
        else if (!kind.empty() && !one_of(kind, {"GoTo", "Thread", "Named", "JavaScript"})) note(OddityKind::action, kind);
        const auto next = elements(entry(chain[i], "/Next"));
        chain.insert(chain.end(), next.begin(), next.end());
    }
}

void OddityFinder::triggers(Object holder) { each(entry(holder, "/AA"), [&](Object one) { action(one); }); }

void OddityFinder::annotations(Object page) {
    for (const Object& annotation : elements(entry(page, "/Annots"))) {
        const std::string kind = name_of(entry(annotation, "/Subtype"));
        const std::uint32_t flags = count_of(entry(annotation, "/F"));
        constexpr std::uint32_t invisible = 1, hidden = 2, print = 4, no_view = 32;  // table 165
        action(entry(annotation, "/A"));
        triggers(annotation);
        if (kind == "Link" || kind == "Popup") continue;
        const bool shown = (flags & print) && !(flags & (invisible | hidden | no_view));
        note(shown ? OddityKind::annotation : OddityKind::annotation_hidden, kind);
    }
}

void OddityFinder::boxes(const TreePage& page) {
    constexpr double least = 3, most = 14'400;
    for (const auto& [name, object] : {std::pair<const char*, Object>{"MediaBox", page.media}, {"CropBox", page.crop}, {"BleedBox", entry(page.page, "/BleedBox")},
                                       {"TrimBox", entry(page.page, "/TrimBox")}, {"ArtBox", entry(page.page, "/ArtBox")}}) {
        const auto box = box_of(object);
        if (!box) continue;
        for (const double side : {box->right - box->left, box->top - box->bottom})
            if (side < least || side > most)
                note(OddityKind::tiny_or_huge_box, std::string(name) + " with a side of " + std::to_string(static_cast<long long>(side)) + " units");
    }
}

void OddityFinder::page(const TreePage& page, int number) {
    page_ = number;
    boxes(page);
    triggers(page.page);
    annotations(page.page);
    resources(page.resources, 0);
    for (const Object& content : elements(entry(page.page, "/Contents"))) filters(content);
}

void OddityFinder::resources(Object resources, int depth) {
    if (depth > deepest_resources || !first_visit(resources)) return;
    each(entry(resources, "/XObject"), [&](Object object) {
        if (!object.isStream() || !first_visit(object)) return;
        const Object kind = entry(object, "/Subtype");
        if (is_name(kind, "Image")) picture(object);
        else if (is_name(kind, "Form")) form(object, depth);
        else note(OddityKind::foreign_content, "an XObject of kind " + name_of(kind));
    });
    each(entry(resources, "/Pattern"), [&](Object pattern) {
        if (pattern.isStream() && first_visit(pattern)) form(pattern, depth);
    });
    each(entry(resources, "/ExtGState"), [&](Object state) { graphics_state(state, depth); });
    each(entry(resources, "/ColorSpace"), [&](Object space) { colour_space(space, 0); });
}

void OddityFinder::picture(Object stream) {
    filters(stream);
    if (is_true(entry(stream, "/Interpolate"))) note(OddityKind::interpolated, "Interpolate true");
    if (filled(entry(stream, "/Alternates"))) note(OddityKind::alternates, "Alternates");
    if (!is_null(entry(stream, "/OPI"))) note(OddityKind::alternates, "OPI");
    if (const Object mask = entry(stream, "/SMask"); const_cast<Object&>(mask).isStream()) {
        note(OddityKind::transparency, "a picture with a soft mask");
        if (first_visit(mask)) picture(mask);
    }
    if (const std::string intent = name_of(entry(stream, "/Intent"));
        !intent.empty() && !one_of(intent, {"RelativeColorimetric", "AbsoluteColorimetric", "Perceptual", "Saturation"}))
        note(OddityKind::intent, intent);
    if (is_true(entry(stream, "/ImageMask"))) return;
    const Object bits = entry(stream, "/BitsPerComponent");
    const std::uint32_t depth = count_of(bits);
    if (!is_null(bits) && depth != 1 && depth != 2 && depth != 4 && depth != 8) note(OddityKind::depth, std::to_string(depth) + " bits");
    colour_space(entry(stream, "/ColorSpace"), 0);
}

void OddityFinder::form(Object stream, int depth) {
    filters(stream);
    if (!is_null(entry(stream, "/Ref"))) note(OddityKind::foreign_content, "a reference XObject");
    if (is_name(entry(stream, "/Subtype2"), "PS")) note(OddityKind::foreign_content, "a PostScript XObject");
    if (!is_null(entry(stream, "/OPI"))) note(OddityKind::alternates, "OPI");
    resources(entry(stream, "/Resources"), depth + 1);
}

void OddityFinder::graphics_state(Object state, int depth) {
    if (!first_visit(state)) return;
    if (const std::string mode = name_of(elements(entry(state, "/BM")).empty() ? Object::newNull() : elements(entry(state, "/BM")).front());
        !mode.empty() && !one_of(mode, {"Normal", "Compatible"}))
        note(OddityKind::transparency, "blend mode " + mode);
    for (const char* key : {"/ca", "/CA"})
        if (const auto alpha = number_of(entry(state, key)); alpha && *alpha < 1) note(OddityKind::transparency, "constant alpha");
    if (Object mask = entry(state, "/SMask"); mask.isDictionary()) {
        note(OddityKind::transparency, "a soft mask");
        if (Object group = entry(mask, "/G"); group.isStream() && first_visit(group)) form(group, depth);
    }
    if (!is_null(entry(state, "/TR"))) note(OddityKind::transfer, "TR");
    if (const Object second = entry(state, "/TR2"); !is_null(second) && !is_name(second, "Default")) note(OddityKind::transfer, "TR2");
    if (!is_null(entry(state, "/HTP"))) note(OddityKind::transfer, "HTP");
    for (const char* key : {"/OP", "/op"})
        if (is_true(entry(state, key))) note(OddityKind::overprint, key + 1);
    if (const std::string intent = name_of(entry(state, "/RI"));
        !intent.empty() && !one_of(intent, {"RelativeColorimetric", "AbsoluteColorimetric", "Perceptual", "Saturation"}))
        note(OddityKind::intent, intent);
}

void OddityFinder::colour_space(Object space, int depth) {
    const auto parts = elements(space);
    if (parts.empty() || depth > deepest_resources) return;
    const std::string family = name_of(parts.front());
    if (one_of(family, {"DeviceCMYK", "CMYK", "Lab", "Separation", "DeviceN"})) note(OddityKind::foreign_colour, family);
    if (family == "ICCBased" && parts.size() > 1 && count_of(entry(parts[1], "/N")) == 4) note(OddityKind::foreign_colour, "a profile of four components");
    if (one_of(family, {"Indexed", "I", "Pattern"}) && parts.size() > 1) colour_space(parts[1], depth + 1);
}

void OddityFinder::filters(Object stream) {
    for (const Object& filter : elements(entry(stream, "/Filter"))) {
        const std::string name = name_of(filter);
        if (one_of(name, {"LZWDecode", "Crypt"})) note(OddityKind::filter, name);
        if (one_of(name, {"JPXDecode", "JBIG2Decode", "CCITTFaxDecode"})) note(OddityKind::rare_filter, name);
    }
}

}  // namespace qw::proof
