// SPDX-License-Identifier: GPL-3.0-or-later
// What can be wrong with a finished PDF by itself. Edited with libqpdf, or in its bytes.
#include "corpus/cases.h"

#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFWriter.hh>

namespace qw::corpus {

namespace {

using Object = QPDFObjectHandle;
using Edit = std::function<void(QPDF&)>;

const std::string pages = "letter/borderless/pages.pdf", cover = "letter/bordered/covers.pdf", sheet = "letter/materials.pdf";

Object parsed(const std::string& text) { return Object::parse(text); }
Object page(QPDF& pdf, int number) { return pdf.getAllPages().at(static_cast<std::size_t>(number) - 1); }

Object picture(QPDF& pdf, int number = 1) {
    Object objects = page(pdf, number).getKey("/Resources").getKey("/XObject");
    for (const auto& key : objects.getKeys())
        if (Object one = objects.getKey(key); one.getDict().getKey("/Subtype").isNameAndEquals("/Image")) return one;
    throw std::runtime_error("the page shows no picture");
}

Change edited(const std::string& file, const Edit& edit) {
    return [file, edit](Work& work) { work.edit_pdf(file, edit); };
}
/// The same set in every edition, so that no edition differs from the others.
Change everywhere(const std::string& set, const Edit& edit) {
    return [set, edit](Work& work) {
        for (const char* edition : {"letter/borderless/", "letter/bordered/"}) work.edit_pdf(edition + set, edit);
    };
}
Change in_catalog(const std::string& key, const std::string& value, const std::string& file = pages) {
    return edited(file, [=](QPDF& pdf) { pdf.getRoot().replaceKey(key, parsed(value)); });
}
Change in_preferences(const std::string& key, const std::string& value) {
    return edited(pages, [=](QPDF& pdf) {
        Object preferences = pdf.getRoot().getKey("/ViewerPreferences");
        if (value.empty()) preferences.removeKey(key);
        else preferences.replaceKey(key, parsed(value));
    });
}
Change in_page(const std::string& key, const std::string& value, int number = 2, const std::string& file = pages) {
    return edited(file, [=](QPDF& pdf) { page(pdf, number).replaceKey(key, parsed(value)); });
}
Change in_picture(const std::string& key, const std::string& value) {
    return edited(pages, [=](QPDF& pdf) { picture(pdf).getDict().replaceKey(key, parsed(value)); });
}
/// A graphics state that the page sets before all else, in every edition alike.
Change with_state(const std::string& entries) {
    return edited(pages, [=](QPDF& pdf) {
        page(pdf, 1).getKey("/Resources").replaceKey("/ExtGState", parsed("<< /Odd << " + entries + " >> >>"));
        page(pdf, 1).addPageContents(Object::newStream(&pdf, "/Odd gs\n"), true);
    });
}
Change with_form(const std::string& entries) {
    return edited(pages, [=](QPDF& pdf) {
        Object form = Object::newStream(&pdf, "");
        form.replaceDict(parsed("<< /Type /XObject /BBox [0 0 9 9] " + entries + " >>"));
        page(pdf, 1).getKey("/Resources").getKey("/XObject").replaceKey("/Odd", pdf.makeIndirectObject(form));
    });
}
Change with_font(const std::string& font) {
    return edited(sheet, [=](QPDF& pdf) { page(pdf, 1).getKey("/Resources").getKey("/Font").replaceKey("/Odd", pdf.makeIndirectObject(parsed(font))); });
}
Change layered(const std::string& setting) {
    return edited(pages, [=](QPDF& pdf) {
        Object layer = pdf.makeIndirectObject(parsed("<< /Type /OCG /Name (Night) >>"));
        Object properties = parsed("<< /D << >> >>");
        properties.replaceKey("/OCGs", Object::newArray(std::vector<Object>{layer}));
        if (!setting.empty()) properties.getKey("/D").replaceKey(setting, Object::newArray(std::vector<Object>{layer}));
        pdf.getRoot().replaceKey("/OCProperties", properties);
    });
}
Change in_information(const std::string& key, const std::string& value) {
    return edited(pages, [=](QPDF& pdf) { pdf.getTrailer().getKey("/Info").replaceKey(key, Object::newUnicodeString(value)); });
}
Change with_xmp(const std::string& title) {
    return edited(sheet, [=](QPDF& pdf) {
        Object metadata = Object::newStream(
            &pdf, "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\"><rdf:RDF><rdf:Description><dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">" + title +
                      "</rdf:li></rdf:Alt></dc:title></rdf:Description></rdf:RDF></x:xmpmeta>");
        metadata.getDict().replaceKey("/Type", Object::newName("/Metadata"));
        pdf.getRoot().replaceKey("/Metadata", pdf.makeIndirectObject(metadata));
    });
}

Change encrypted(bool locked) {
    return [=](Work& work) {
        if (!locked) return work.edit_pdf(pages, [](QPDF&) {});
        work.edit_bytes(pages, [](std::string& bytes) {
            const std::string before = bytes;
            QPDF pdf;
            pdf.processMemoryFile("pages", before.data(), before.size());
            QPDFWriter writer(pdf);
            writer.setOutputMemory();
            writer.setR6EncryptionParameters("", "owner", true, true, true, true, true, true, qpdf_r3p_none, true);
            writer.write();
            const auto written = writer.getBufferSharedPointer();
            bytes.assign(reinterpret_cast<const char*>(written->getBuffer()), written->getSize());
        });
    };
}

/// The picture's data after `bytes` of it are gone.
Change shortened_picture() {
    return everywhere("covers.pdf", [](QPDF& pdf) {
        Object image = picture(pdf);
        const auto data = image.getRawStreamData();
        const std::string all(reinterpret_cast<const char*>(data->getBuffer()), data->getSize());
        image.replaceStreamData(all.substr(0, all.size() / 2), image.getDict().getKey("/Filter"), image.getDict().getKey("/DecodeParms"));
    });
}

/// Eight pixels that no page paints, packed in some way.
Change packed_picture(const std::string& data, const std::string& filter, const std::string& parameters) {
    return edited(sheet, [=](QPDF& pdf) {
        Object image = Object::newStream(&pdf, "");
        image.replaceDict(parsed("<< /Type /XObject /Subtype /Image /Width 8 /Height 1 /BitsPerComponent 1 /ColorSpace /DeviceGray >>"));
        image.replaceStreamData(data, parsed(filter), parsed(parameters));
        page(pdf, 1).getKey("/Resources").replaceKey("/XObject", parsed("<< >>"));
        page(pdf, 1).getKey("/Resources").getKey("/XObject").replaceKey("/Odd", pdf.makeIndirectObject(image));
    });
}

/// A grey picture of so many pixels a side, painted nowhere but on the page's foot, small.
Change heavy(int side) {
    return edited("letter/materials.pdf", [=](QPDF& pdf) {
        Object image = Object::newStream(&pdf, "");
        image.replaceDict(parsed("<< /Type /XObject /Subtype /Image /Width " + std::to_string(side) + " /Height " + std::to_string(side) +
                                 " /BitsPerComponent 1 /ColorSpace /DeviceGray >>"));
        image.replaceStreamData(std::string(static_cast<std::size_t>((side + 7) / 8) * static_cast<std::size_t>(side), '\xff'), Object::newNull(),
                                Object::newNull());
        Object resources = page(pdf, 1).getKey("/Resources");
        if (!resources.hasKey("/XObject")) resources.replaceKey("/XObject", parsed("<< >>"));
        resources.getKey("/XObject").replaceKey("/Odd", pdf.makeIndirectObject(image));
        page(pdf, 1).addPageContents(Object::newStream(&pdf, "q 9 0 0 9 300 300 cm /Odd Do Q\n"), false);
    });
}

void add_structure(std::vector<Case>& cases) {
    const auto add = [&](const char* rule, Change defect, Change near, const char* no_near = "") {
        cases.push_back({rule, Subject::release, std::move(defect), std::move(near), no_near});
    };
    add("pdf-encrypted", encrypted(true), encrypted(false));
    add("pdf-scripts", in_catalog("/OpenAction", "<< /S /JavaScript /JS (app.alert\\(1\\)) >>"), in_catalog("/OpenAction", "<< /S /GoTo /D [0 /Fit] >>"));
    add("pdf-actions", in_catalog("/OpenAction", "<< /S /Launch /F (viewer.exe) >>"), in_catalog("/OpenAction", "<< /S /GoTo /D [0 /Fit] >>"));
    add("pdf-attachments", in_catalog("/Names", "<< /EmbeddedFiles << /Names [(a) << /Type /Filespec /F (a) >>] >> >>"),
        in_catalog("/Names", "<< /EmbeddedFiles << /Names [] >> >>"));
    add("pdf-layers", layered("/ON"), in_catalog("/OCProperties", "<< /OCGs [] /D << >> >>"));
    add("pdf-layer-hidden", layered("/OFF"), in_catalog("/OCProperties", "<< /OCGs [] /D << /OFF [] >> >>"));
    add(
        "pdf-header", [](Work& work) { work.edit_bytes(pages, [](std::string& bytes) { bytes = "\n" + bytes; }); }, {},
        "a byte before the header is the least that there is");
    add("pdf-version", in_catalog("/Version", "/2.0"), in_catalog("/Version", "/1.7"));
    add("pdf-after-end", [](Work& work) { work.edit_bytes(pages, [](std::string& bytes) { bytes += "--boundary"; }); }, [](Work& work) {
        work.edit_bytes(pages, [](std::string& bytes) {
            while (bytes.back() == '\n' || bytes.back() == '\r') bytes.pop_back();
            bytes += "\r\n";
        });
    });
    add("pdf-id", [](Work& work) { work.edit_bytes(pages, [](std::string& bytes) { bytes.replace(bytes.rfind("/ID"), 3, "/Id"); }); }, edited(pages, [](QPDF&) {}));
    add("pdf-links", in_page("/Annots", "[<< /Type /Annot /Subtype /Link /Rect [9 9 20 20] /Border [0 0 0] /A << /S /URI /URI (https://example.org/) >> >>]"),
        in_page("/Annots", "[<< /Type /Annot /Subtype /Link /Rect [9 9 20 20] /Border [0 0 0] /A << /S /GoTo /D [0 /Fit] >> >>]"));
    add("pdf-forms", edited(pages, [](QPDF& pdf) {
            Object fields = Object::newArray(std::vector<Object>{pdf.makeIndirectObject(parsed("<< /FT /Tx /T (name) >>"))}), form = parsed("<< >>");
            form.replaceKey("/Fields", fields);
            pdf.getRoot().replaceKey("/AcroForm", form);
        }), in_catalog("/AcroForm", "<< /Fields [] >>"));
    add("pdf-annotations", in_page("/Annots", "[<< /Type /Annot /Subtype /Stamp /Rect [9 9 20 20] /F 4 >>]"), in_page("/Annots", "[]"));
    add("pdf-annotation-hidden", in_page("/Annots", "[<< /Type /Annot /Subtype /Stamp /Rect [9 9 20 20] /F 2 >>]"), in_page("/Annots", "[]"));
    add("pdf-transparency", with_state("/ca 0.9"), with_state("/ca 1.0 /BM /Normal"));
    add("pdf-transfer", with_state("/TR /Identity"), with_state("/TR2 /Default"));
    add("pdf-overprint", with_state("/OP true"), with_state("/OP false"));
    add("pdf-rendering-intent", with_state("/RI /Vivid"), with_state("/RI /Perceptual"));
    add("pdf-foreign-content", with_form("/Subtype /Form /Ref << /F (other.pdf) /Page 0 >>"), with_form("/Subtype /Form"));
    add("pdf-opening", in_catalog("/PageMode", "/FullScreen"), in_catalog("/PageMode", "/UseNone"));
    add("pdf-print-range", in_preferences("/NumCopies", "2"), in_preferences("/NumCopies", "1"));
    add("metadata-private", in_information("/Creator", "C:\\Users\\keeper\\pages.indd"), in_information("/Creator", "A drawing program"));
    add("metadata-agree", with_xmp("Another title"), with_xmp("Corpus: Materials and tools"));
    add("output-profile",
        edited(pages,
               [](QPDF& pdf) {
                   pdf.getRoot().getKey("/OutputIntents").getArrayItem(0).getKey("/DestOutputProfile").getDict().replaceKey("/N", parsed("4"));
               }),
        edited(pages, [](QPDF&) {}));
    add("output-intent", in_catalog("/OutputIntents", "[]"), edited(pages, [](QPDF&) {}));
    add("viewer-preferences", in_preferences("/PrintScaling", "/AppDefault"), in_preferences("/DisplayDocTitle", "true"));
    add("duplex-entry", everywhere("pages.pdf", [](QPDF& pdf) { pdf.getRoot().getKey("/ViewerPreferences").removeKey("/Duplex"); }),
        in_preferences("/Duplex", "/DuplexFlipShortEdge"));
    add("file-title", in_information("/Title", ""), in_information("/Title", "Pages"));
}

void add_pages(std::vector<Case>& cases) {
    const auto add = [&](const char* rule, Change defect, Change near, const char* no_near = "") {
        cases.push_back({rule, Subject::release, std::move(defect), std::move(near), no_near});
    };
    add("picture-interpolated", in_picture("/Interpolate", "true"), in_picture("/Interpolate", "false"));
    add("picture-alternates", in_picture("/Alternates", "[<< /Image null >>]"), in_picture("/Alternates", "[]"));
    // LZW: clear table, a byte of ones, end of data, in codes of nine bits.
    add("pdf-filters", packed_picture("\x80\x3f\xe0\x20", "/LZWDecode", "null"), packed_picture("\xff", "null", "null"));
    add("pdf-rare-filters", packed_picture("\x26\xa0", "/CCITTFaxDecode", "<< /K -1 /Columns 8 /Rows 1 >>"), packed_picture("\xff", "null", "null"));
    add("pdf-colour-space", edited(sheet, [](QPDF& pdf) { page(pdf, 1).addPageContents(Object::newStream(&pdf, "0 0 0 1 k\n"), true); }),
        edited(sheet, [](QPDF& pdf) { page(pdf, 1).addPageContents(Object::newStream(&pdf, "0 0 0 rg 0 g\n"), true); }));
    add("picture-depth", edited(sheet, [](QPDF& pdf) {
            Object image = Object::newStream(&pdf, std::string(32, 'x'));
            image.replaceDict(parsed("<< /Type /XObject /Subtype /Image /Width 4 /Height 4 /BitsPerComponent 16 /ColorSpace /DeviceGray >>"));
            page(pdf, 1).getKey("/Resources").replaceKey("/XObject", parsed("<< >>"));
            page(pdf, 1).getKey("/Resources").getKey("/XObject").replaceKey("/Odd", pdf.makeIndirectObject(image));
        }), heavy(8));
    add("page-weight", heavy(8200), heavy(8100));
    add("page-crop", in_page("/CropBox", "[0 0 612 780]", 1, sheet), in_page("/CropBox", "[0 0 612 792]", 1, sheet));
    add("page-boxes", edited(sheet, [](QPDF& pdf) { page(pdf, 1).removeKey("/TrimBox"); }), in_page("/TrimBox", "[18 36 594 756]", 1, sheet));
    add("page-box-limits", in_page("/ArtBox", "[0 0 2 100]"), in_page("/ArtBox", "[0 0 3 100]"));
    add("page-turned", in_page("/Rotate", "180"), in_page("/Rotate", "0"));
    add("page-blank", everywhere("pages.pdf", [](QPDF& pdf) { page(pdf, 3).replaceKey("/Contents", pdf.makeIndirectObject(Object::newStream(&pdf, ""))); }),
        everywhere("pages.pdf", [](QPDF& pdf) { page(pdf, 4).replaceKey("/Contents", pdf.makeIndirectObject(Object::newStream(&pdf, ""))); }));
    add("fonts-embedded", with_font("<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>"), edited(sheet, [](QPDF&) {}));
    add("fonts-drawn",
        with_font("<< /Type /Font /Subtype /Type3 /FontBBox [0 0 9 9] /FontMatrix [0.1 0 0 0.1 0 0] /CharProcs << >> /Encoding << /Differences [65 "
                  "/A] >> /ToUnicode null >>"),
        edited(sheet, [](QPDF&) {}));
    add("fonts-readable", edited(sheet, [](QPDF& pdf) {
            Object fonts = page(pdf, 1).getKey("/Resources").getKey("/Font");
            fonts.getKey(*fonts.getKeys().begin()).removeKey("/ToUnicode");
        }), edited(sheet, [](QPDF&) {}));
    add("page-drawn", shortened_picture(), edited(cover, [](QPDF&) {}));
    add("file-damaged", [](Work& work) { work.edit_bytes(pages, [](std::string& bytes) { bytes.resize(bytes.size() / 2); }); }, edited(pages, [](QPDF&) {}));
    add(
        "file-damaged", [](Work& work) { work.edit_bytes(sheet, [](std::string& bytes) { bytes[bytes.rfind("startxref") + 12] ^= 4; }); },
        edited(sheet, [](QPDF&) {}));
    add("ink-inside-printable", edited(cover, [](QPDF& pdf) { page(pdf, 1).addPageContents(Object::newStream(&pdf, "q 0 g 2 300 6 6 re f Q\n"), false); }),
        edited(cover, [](QPDF& pdf) { page(pdf, 1).addPageContents(Object::newStream(&pdf, "q 0 g 100 300 6 6 re f Q\n"), false); }));
}

}  // namespace

void add_pdf_cases(std::vector<Case>& cases) {
    add_structure(cases);
    add_pages(cases);
}

}  // namespace qw::corpus
