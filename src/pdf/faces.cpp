// SPDX-License-Identifier: GPL-3.0-or-later
#include "pdf/faces.h"

#include "pdf/numbers.h"

namespace qw::pdf {

using namespace PoDoFo;

/// One source file while it is in use.
struct Faces::Origin {
    int uses_left = 0;  ///< items of the document that still show it
    std::unique_ptr<SourcePdf> source;
    std::unique_ptr<ObjectCopy> copy;
    std::map<int, PdfReference> written;
};

namespace {

PdfArray bounding_box(const SourceBox& box) {
    PdfArray array;
    for (const double side : {box.left, box.bottom, box.right, box.top}) array.push_back(written(exact_number(side)));
    return array;
}

/// A page's content streams in order.
std::vector<const PdfObject*> contents_of(const SourcePdf& source, const PdfDictionary& page) {
    const PdfObject* contents = source.value(page, "Contents");
    std::vector<const PdfObject*> streams;
    if (!contents) return streams;
    if (contents->IsArray()) {
        for (const PdfObject& entry : contents->GetArray())
            if (const PdfObject* stream = source.resolved(&entry); stream && stream->HasStream()) streams.push_back(stream);
    } else if (contents->HasStream()) {
        streams.push_back(contents);
    }
    return streams;
}

/// Several streams are one program, parted only at the ends of tokens (ISO 32000-1 table 30): they are unpacked and
/// joined by line breaks. One stream stays packed as it is.
void write_contents(const std::vector<const PdfObject*>& streams, PdfObject& form, SealedFile& file) {
    const bool alone = streams.size() == 1;
    StreamData data(form, file, alone ? StreamData::Packing::raw : StreamData::Packing::flate);
    for (const PdfObject* stream : streams) {
        if (alone) {
            data.add_raw(*stream->GetStream());
        } else {
            data.add_unpacked(*stream->GetStream());
            data.add("\n", 1);
        }
        SourcePdf::release(*stream);
    }
}

/// What decides how a page's program is read: its box, its resources, its transparency group.
void describe_form(PdfDictionary& form, const SourcePdf& source, const SourcePage& page, ObjectCopy& copy) {
    form.AddKey("Subtype", PdfName("Form"));
    form.AddKey("FormType", static_cast<pdf_int64>(1));
    form.AddKey("BBox", bounding_box(page.shown));
    if (!page.resources)
        form.AddKey("Resources", PdfDictionary());
    else if (page.resources->Reference().IsIndirect())
        form.AddKey("Resources", copy.placed(*page.resources));
    else
        form.AddKey("Resources", copy.translated(*page.resources));
    if (const PdfObject* group = source.value(page.page->GetDictionary(), "Group"); group && group->IsDictionary()) {
        PdfObject kept = copy.translated(*group);
        // A page is an isolated group by itself (ISO 32000-1 11.4.7); a form must say so to look the same.
        kept.GetDictionary().AddKey("I", true);
        form.AddKey("Group", kept);
    }
}

/// Adds how one stream is packed.
void keep_packing(PdfDictionary& form, const PdfDictionary& stream, ObjectCopy& copy) {
    for (const char* key : {"Filter", "DecodeParms"})
        if (const PdfObject* value = stream.GetKey(key)) form.AddKey(key, copy.translated(*value));
}

bool lists(const PdfObject* array, const PdfReference& reference) {
    if (!array || !array->IsArray()) return false;
    for (const PdfObject& entry : array->GetArray())
        if (entry.IsReference() && entry.GetReference() == reference) return true;
    return false;
}

}  // namespace

Faces::Faces(Disk& disk, Paper& paper, SealedFile& file, const compose::Document& document) : disk_(disk), paper_(paper), file_(file) {
    for (const compose::Page& page : document.pages)
        for (const compose::Item& item : page.items)
            if (const auto* face = std::get_if<compose::PdfFace>(&item)) {
                auto& origin = origins_[face->file];
                if (!origin) origin = std::make_unique<Origin>();
                ++origin->uses_left;
            }
}

Faces::~Faces() = default;

Faces::Origin& Faces::origin(const Path& file) {
    Origin& origin = *origins_.at(file);
    if (!origin.source) {
        origin.source = std::make_unique<SourcePdf>(disk_, file);
        origin.copy = std::make_unique<ObjectCopy>(*origin.source, paper_, file_);
    }
    return origin;
}

PdfReference Faces::shown(const compose::PdfFace& face) {
    Origin& from = origin(face.file);
    const auto known = from.written.find(face.page);
    const PdfReference reference = known != from.written.end() ? known->second : (from.written[face.page] = write(from, face.page));
    if (--from.uses_left == 0) let_go(from);
    return reference;
}

PdfReference Faces::write(Origin& origin, int number) {
    PdfReference reference;
    const SourcePdf& source = *origin.source;
    source.reading([&] {
        const SourcePage& page = source.page(number);
        const auto streams = contents_of(source, page.page->GetDictionary());
        PdfObject& form = *paper_.objects().CreateObject("XObject");
        reference = form.Reference();
        describe_form(form.GetDictionary(), source, page, *origin.copy);
        if (streams.size() == 1) keep_packing(form.GetDictionary(), streams[0]->GetDictionary(), *origin.copy);
        write_contents(streams, form, file_);
        origin.copy->finish();
    });
    return reference;
}

/// Nothing of the file will be shown any more: notes its layers (ISO 32000-1 8.11.4) and closes it.
void Faces::let_go(Origin& origin) {
    const SourcePdf& source = *origin.source;
    source.reading([&] {
        const PdfObject* properties = source.value(source.catalog()->GetDictionary(), "OCProperties");
        const PdfObject* settings = properties && properties->IsDictionary() ? source.value(properties->GetDictionary(), "D") : nullptr;
        if (settings && settings->IsDictionary()) note_layers(source, settings->GetDictionary(), origin.copy->layers());
    });
    origin.copy.reset();
    origin.source.reset();
}

void Faces::note_layers(const SourcePdf& source, const PdfDictionary& settings, const Layers& layers) {
    const PdfObject* base = source.value(settings, "BaseState");
    const bool off_at_first = base && base->IsName() && base->GetName().GetName() == "OFF";
    for (const auto& [from, to] : layers) {
        layers_.push_back(to);
        const bool hidden = off_at_first ? !lists(source.value(settings, "ON"), from) : lists(source.value(settings, "OFF"), from);
        if (hidden) hidden_.push_back(to);
    }
    const PdfObject* events = source.value(settings, "AS");
    if (!events || !events->IsArray()) return;
    for (const PdfObject& entry : events->GetArray())
        if (const PdfObject* event = source.resolved(&entry); event && event->IsDictionary()) note_event(source, event->GetDictionary(), layers);
}

/// A layer may be set to show on the screen and not in print, or the other way round.
void Faces::note_event(const SourcePdf& source, const PdfDictionary& event, const Layers& layers) {
    PdfArray concerned;
    for (const auto& [from, to] : layers)
        if (lists(source.value(event, "OCGs"), from)) concerned.push_back(to);
    const PdfObject* kind = source.value(event, "Event");
    const PdfObject* category = source.value(event, "Category");
    if (concerned.empty() || !kind || !kind->IsName() || !category || !category->IsArray()) return;
    PdfDictionary kept;
    kept.AddKey("Event", kind->GetName());
    kept.AddKey("Category", category->GetArray());
    kept.AddKey("OCGs", concerned);
    automatic_.push_back(kept);
}

void Faces::describe_layers() {
    if (layers_.empty()) return;
    PdfDictionary settings;
    settings.AddKey("OFF", hidden_);
    if (!automatic_.empty()) settings.AddKey("AS", automatic_);
    PdfDictionary properties;
    properties.AddKey("OCGs", layers_);
    properties.AddKey("D", settings);
    paper_.catalog().AddKey("OCProperties", properties);
}

}  // namespace qw::pdf
