// SPDX-License-Identifier: GPL-3.0-or-later
#include "pdf/catalog.h"

#include "artwork/picture.h"
#include "pdf/numbers.h"

namespace qw::pdf {

using namespace PoDoFo;

namespace {

const char* duplex_name(compose::Duplex duplex) {
    switch (duplex) {
        case compose::Duplex::flip_short_edge: return "DuplexFlipShortEdge";
        case compose::Duplex::flip_long_edge: return "DuplexFlipLongEdge";
        case compose::Duplex::simplex: break;
    }
    return "Simplex";
}

PdfDictionary viewer_preferences(compose::Duplex duplex) {
    PdfDictionary preferences;
    preferences.AddKey("PrintScaling", PdfName("None"));
    preferences.AddKey("Duplex", PdfName(duplex_name(duplex)));
    preferences.AddKey("PickTrayByPDFSize", true);
    preferences.AddKey("DisplayDocTitle", true);
    return preferences;
}

PdfReference write_profile(Paper& paper, SealedFile& file) {
    const std::vector<std::byte>& profile = artwork::srgb_profile();
    PdfObject& object = *paper.objects().CreateObject();
    const PdfReference reference = object.Reference();
    object.GetDictionary().AddKey("N", static_cast<pdf_int64>(3));
    write_stream(object, file, std::string(reinterpret_cast<const char*>(profile.data()), profile.size()));
    return reference;
}

/// GTS_PDFA1 is the kind of intent that names an RGB; GTS_PDFX means a printing press.
PdfArray output_intents(const PdfReference& profile) {
    PdfDictionary intent;
    intent.AddKey("Type", PdfName("OutputIntent"));
    intent.AddKey("S", PdfName("GTS_PDFA1"));
    intent.AddKey("OutputConditionIdentifier", PdfString("sRGB IEC61966-2.1"));
    intent.AddKey("Info", PdfString("sRGB IEC61966-2.1"));
    intent.AddKey("DestOutputProfile", profile);
    PdfArray intents;
    intents.push_back(intent);
    return intents;
}

void describe_information(PdfDictionary& information, const compose::Document& document) {
    const PdfString date(document.date.pdf());
    information.AddKey("Title", pdf_text(document.title));
    information.AddKey("Subject", pdf_text(document.subject));
    information.AddKey("Producer", PdfString("Quirewright"));
    information.AddKey("CreationDate", date);
    information.AddKey("ModDate", date);
}

}  // namespace

PdfArray box(const Rect& rect) {
    PdfArray array;
    for (const Length side : {rect.left, rect.bottom, rect.right, rect.top}) array.push_back(written(number(side)));
    return array;
}

void describe_document(Paper& paper, SealedFile& file, const compose::Document& document) {
    describe_information(paper.GetInfo()->GetObject()->GetDictionary(), document);
    paper.catalog().AddKey("Lang", PdfString("en"));
    paper.catalog().AddKey("ViewerPreferences", viewer_preferences(document.duplex));
    paper.catalog().AddKey("OutputIntents", output_intents(write_profile(paper, file)));
}

}  // namespace qw::pdf
