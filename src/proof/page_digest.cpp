// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/page_digest.h"

#include "proof/annotations.h"
#include "proof/content_bytes.h"
#include "proof/hash_pipe.h"
#include "proof/opened_pdf.h"

#include <algorithm>
#include <charconv>
#include <map>
#include <set>

namespace qw::proof {

namespace {

constexpr int deepest_value = 100;

/// What leads out of the page, or is told of a value and not seen on paper (ISO 32000-1 tables 5, 30, 95, 295).
bool left_out(const std::string& key) {
    static const std::set<std::string> keys{"/Parent", "/StructParent", "/StructParents", "/Metadata", "/PieceInfo", "/LastModified", "/Length"};
    return keys.contains(key);
}

bool ends_name(char c) { return std::string_view(" \t\r\n\f\0()<>[]{}/%", 16).find(c) != std::string_view::npos; }

/// Whether content names a resource. "#" writes any letter of a name as digits; where there is one, all count as named.
bool names(const std::string& content, const std::string& name) {
    for (std::size_t at = content.find(name); at != std::string::npos; at = content.find(name, at + 1))
        if (at + name.size() == content.size() || ends_name(content[at + name.size()])) return true;
    return content.find('#') != std::string::npos;
}

/// Text with its length before it, so that no two lists of texts are the same bytes.
void put(Sha256& hash, std::string_view text) {
    hash.add(std::to_string(text.size()) + ":");
    hash.add(text);
}

/// Digests of values, those of indirect objects kept. A value within itself counts by how far above it stands; what holds
/// such a value is not kept, because its digest depends on where one came in.
class Values {
public:
    explicit Values(QPDF& pdf) {
        for (const auto& layer : elements(entry(entry(entry(pdf.getRoot(), "/OCProperties"), "/D"), "/OFF"))) hidden_.insert(Object(layer).getObjGen());
        layers_ = of(entry(pdf.getRoot(), "/OCProperties"));
    }

    /// Of what the file says of its layers: which are seen follows from all of it (8.11.4).
    const std::string& layers() const { return layers_; }

    /// After a page that could not be read, what was open is open no more.
    void begin_page() {
        open_.clear();
        lowest_ = never;
        depth_ = 0;
    }

    std::string of(Object value) {
        if (!value.isIndirect()) return fresh(value);
        const QPDFObjGen place = value.getObjGen();
        if (const auto known = known_.find(place); known != known_.end()) return known->second;
        if (const auto above = std::find(open_.begin(), open_.end(), place); above != open_.end()) {
            lowest_ = std::min(lowest_, static_cast<std::size_t>(above - open_.begin()));
            return "above " + std::to_string(open_.end() - above);
        }
        const std::size_t outer = std::exchange(lowest_, never);
        open_.push_back(place);
        const std::string digest = fresh(value);
        open_.pop_back();
        // A circle that closes here holds nothing of what stands above.
        if (lowest_ >= open_.size()) {
            known_[place] = digest;
            lowest_ = never;
        }
        lowest_ = std::min(lowest_, outer);
        return digest;
    }

    /// A dictionary with those of its entries that `wanted` takes.
    template <typename Wanted>
    std::string dictionary(Object value, Wanted wanted) {
        Sha256 hash;
        hash.add("dictionary ");
        for (const std::string& key : value.getKeys()) {
            if (left_out(key) || !wanted(key)) continue;
            put(hash, key);
            put(hash, of(value.getKey(key)));
        }
        return hash.hex();
    }

private:
    std::string fresh(Object value) {
        if (++depth_ > deepest_value) throw Unreadable("its resources are deeper than 100 levels");
        const std::string digest = unkept(value);
        --depth_;
        return digest;
    }

    std::string unkept(Object value) {
        if (value.isStream()) return stream(value);
        if (value.isArray()) {
            Sha256 hash;
            hash.add("array ");
            for (const auto& item : elements(value)) put(hash, of(item));
            return hash.hex();
        }
        if (value.isDictionary()) {
            const std::string type = name_of(entry(value, "/Type"));
            if (type == "Page" || type == "Pages" || type == "Catalog") return "a page";
            const bool hidden = type == "OCG" && hidden_.contains(value.getObjGen());
            return dictionary(value, [](const std::string&) { return true; }) + (hidden ? " hidden" : "");
        }
        if (value.isString()) return "string " + value.getStringValue();
        return value.unparseResolved();
    }

    std::string stream(Object value) {
        HashPipe pipe;
        pipe.hash.add("stream " + dictionary(value.getDict(), [](const std::string&) { return true; }) + " ");
        if (!value.pipeStreamData(&pipe, nullptr, 0, qpdf_dl_none)) throw Unreadable("a stream of its resources cannot be read");
        return pipe.hash.hex();
    }

    static constexpr std::size_t never = static_cast<std::size_t>(-1);
    std::string layers_;
    std::set<QPDFObjGen> hidden_;
    std::map<QPDFObjGen, std::string> known_;
    std::vector<QPDFObjGen> open_;
    std::size_t lowest_ = never;  ///< the highest value above that what is being read leads back to
    int depth_ = 0;
};

/// A form without resources of its own paints with the page's (7.8.3); where the content names one, what it names is not all.
bool paints_bare_form(Object resources, const std::string& content) {
    Object pictures = entry(resources, "/XObject");
    if (!pictures.isDictionary()) return false;
    const std::set<std::string> keys = pictures.getKeys();
    return std::any_of(keys.begin(), keys.end(), [&](const std::string& key) {
        const Object one = entry(pictures, key);
        return names(content, key) && is_name(entry(one, "/Subtype"), "Form") && is_null(entry(one, "/Resources"));
    });
}

std::string resources_digest(Values& values, Object resources, const std::string& content) {
    if (!resources.isDictionary()) return "none";
    const bool all = paints_bare_form(resources, content);
    Sha256 hash;
    for (const std::string& kind : resources.getKeys()) {
        Object named = entry(resources, kind);
        if (!named.isDictionary()) continue;  // ProcSet has no meaning any more (14.2)
        const auto wanted = [&](const std::string& name) { return all || names(content, name); };
        const std::set<std::string> keys = named.getKeys();
        // A category of which nothing is used is as if it were not there.
        if (std::none_of(keys.begin(), keys.end(), wanted)) continue;
        put(hash, kind);
        put(hash, values.dictionary(named, wanted));
    }
    return hash.hex();
}

void put(Sha256& hash, const Rect& box) {
    for (const Length side : {box.left, box.bottom, box.right, box.top}) put(hash, std::to_string(side.in_units()));
}

/// In no locale.
void put(Sha256& hash, double number) {
    char digits[32];
    put(hash, std::string_view(digits, static_cast<std::size_t>(std::to_chars(digits, digits + sizeof digits, number).ptr - digits)));
}

std::string digest_of(Values& values, const TreePage& page) {
    values.begin_page();
    Budget budget;
    Damage damage;
    PageFacts facts;
    tell_boxes(page, facts, damage);
    const std::string content = is_null(entry(page.page, "/Contents")) ? "" : content_bytes(entry(page.page, "/Contents"), budget);
    Sha256 hash;
    hash.add("page 1 ");
    for (const Rect& box : {facts.media, facts.crop, facts.bleed, facts.trim}) put(hash, box);
    put(hash, std::to_string(facts.rotate));
    put(hash, values.of(entry(page.page, "/UserUnit")));
    put(hash, values.of(entry(page.page, "/Group")));
    put(hash, content);
    put(hash, resources_digest(values, page.resources, content));
    put(hash, values.layers());
    for (const Appearance& shown : shown_appearances(page.page)) {
        put(hash, values.of(shown.form));
        for (const double number : {shown.place.a, shown.place.b, shown.place.c, shown.place.d, shown.place.e, shown.place.f}) put(hash, number);
    }
    return hash.hex();
}

}  // namespace

std::vector<std::string> page_digests(Disk& disk, const Path& path) {
    OpenedPdf opened(disk, path);
    Values values(opened.pdf());
    std::vector<std::string> digests;
    for (const TreePage& page : opened.pages()) {
        std::string digest;
        try {
            digest = digest_of(values, page);
        } catch (const std::exception&) {  // libqpdf's, or Unreadable: that page alone has no digest
        }
        opened.check();
        digests.push_back(std::move(digest));
    }
    return digests;
}

}  // namespace qw::proof
