// SPDX-License-Identifier: GPL-3.0-or-later
#include "pdf/object_copy.h"

#include "pdf/numbers.h"

#include <algorithm>
#include <array>

namespace qw::pdf {

using namespace PoDoFo;

namespace {

constexpr int deepest_nesting = 64;

/// Length is written anew; the rest is not for showing.
bool left_out(const PdfName& key) {
    static const std::array<std::string, 7> keys{"Length", "Metadata", "PieceInfo", "StructParent", "StructParents", "LastModified", "OPI"};
    return std::find(keys.begin(), keys.end(), key.GetName()) != keys.end();
}

std::string type_of(const PdfObject& object) {
    if (!object.IsDictionary()) return "";
    const PdfObject* type = object.GetDictionary().GetKey(PdfName::KeyType);
    return type && type->IsName() ? type->GetName().GetName() : "";
}

bool is_part_of_page_tree(const PdfObject& object) {
    const std::string type = type_of(object);
    return type == "Page" || type == "Pages" || type == "Catalog";
}

}  // namespace

PdfObject ObjectCopy::translated(const PdfObject& value) { return translated(value, 0); }

PdfObject ObjectCopy::translated(const PdfObject& value, int depth) {
    if (depth > deepest_nesting) source_.refuse("its objects are nested too deeply");
    if (value.IsReference()) return translated_reference(value.GetReference());
    if (value.IsDictionary()) return translated(value.GetDictionary(), depth);
    if (value.IsArray()) return translated(value.GetArray(), depth);
    // PoDoFo writes six decimals, too few for the small entries of some font and pattern matrices.
    if (value.IsReal()) return written(exact_number(value.GetReal()));
    return static_cast<const PdfVariant&>(value);
}

PdfDictionary ObjectCopy::translated(const PdfDictionary& dictionary, int depth) {
    PdfDictionary copy;
    for (const auto& [key, value] : dictionary.GetKeys())
        if (!left_out(key)) copy.AddKey(key, translated(*value, depth + 1));
    return copy;
}

PdfArray ObjectCopy::translated(const PdfArray& array, int depth) {
    PdfArray copy;
    for (const PdfObject& value : array) copy.push_back(translated(value, depth + 1));
    return copy;
}

PdfObject ObjectCopy::translated_reference(const PdfReference& reference) {
    const PdfObject* target = source_.object(reference);
    if (!target || is_part_of_page_tree(*target)) return PdfVariant::NullValue;
    return placed(*target);
}

PdfReference ObjectCopy::placed(const PdfObject& source) {
    const auto known = places_.find(source.Reference());
    if (known != places_.end()) return known->second;
    PdfObject* to = paper_.objects().CreateObject(PdfVariant(PdfDictionary()));
    places_[source.Reference()] = to->Reference();
    if (type_of(source) == "OCG") layers_[source.Reference()] = to->Reference();
    waiting_.emplace_back(&source, to);
    return to->Reference();
}

void ObjectCopy::finish() {
    while (!waiting_.empty()) {
        const auto [from, to] = waiting_.front();
        waiting_.pop_front();
        write(*from, *to);
    }
}

void ObjectCopy::write(const PdfObject& from, PdfObject& to) {
    static_cast<PdfVariant&>(to) = translated(from);
    if (from.HasStream()) {
        StreamData data(to, file_, StreamData::Packing::raw);
        data.add_raw(*from.GetStream());
    }
    SourcePdf::release(from);
}

}  // namespace qw::pdf
