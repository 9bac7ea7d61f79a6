// SPDX-License-Identifier: GPL-3.0-or-later
// What is wrong between the files of a release: sizes and papers, order of pages, editions that differ.
#include "corpus/cases.h"

#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFPageObjectHelper.hh>

#include <regex>

namespace qw::corpus {

namespace {

using Object = QPDFObjectHandle;

const std::string pages = "letter/borderless/pages.pdf";

Object page(QPDF& pdf, int number) { return pdf.getAllPages().at(static_cast<std::size_t>(number) - 1); }

/// All boxes of a page moved out on the right by so many points.
void widen(Object page, double points) {
    for (const char* key : {"/MediaBox", "/CropBox", "/BleedBox", "/TrimBox"}) {
        if (!page.hasKey(key)) continue;
        Object box = page.getKey(key);
        box.setArrayItem(2, Object::newReal(box.getArrayItem(2).getNumericValue() + points, 4));
    }
}

Change widened(double points) {
    return [=](Work& work) { work.edit_pdf("letter/materials.pdf", [&](QPDF& pdf) { for (auto& one : pdf.getAllPages()) widen(one, points); }); };
}

void remove_page(QPDF& pdf, int number) { pdf.removePage(page(pdf, number)); }

/// Pages of a file in another order, in all editions or in one.
Change swapped(bool everywhere) {
    return [=](Work& work) {
        for (const char* edition : {"letter/borderless", "letter/bordered"}) {
            work.edit_pdf(std::string(edition) + "/pages.pdf", [](QPDF& pdf) {
                Object third = page(pdf, 3);
                pdf.removePage(third);
                pdf.addPageAt(third, true, page(pdf, 1));
            });
            if (!everywhere) return;
        }
    };
}

Change taken_out(const std::string& name) {
    return [=](Work& work) { std::erase_if(work.bundle(), [&](const Packed& one) { return one.name == name; }); };
}

Change untouched(const std::string& name) {
    return [=](Work& work) { work.edit_pdf(name, [](QPDF&) {}); };
}

}  // namespace

void add_edition_cases(std::vector<Case>& cases) {
    const auto add = [&](const char* rule, Subject subject, Change defect, Change near, const char* no_near = "") {
        cases.push_back({rule, subject, std::move(defect), std::move(near), no_near});
    };
    constexpr double mm = 72 / 25.4;
    add("page-size", Subject::release, widened(1 * mm), widened(0.01));
    // A file for A4 in the folder for letter.
    add("page-size", Subject::zip, [](Work& work) {
            work.edit_pdf(pages, [](QPDF& pdf) {
                for (Object one : pdf.getAllPages())
                    for (const char* key : {"/MediaBox", "/CropBox", "/BleedBox", "/TrimBox"})
                        if (one.hasKey(key)) one.replaceKey(key, Object::parse("[0 0 841.8898 595.2756]"));
            });
        }, untouched(pages));
    add("page-sizes-mixed", Subject::zip, [](Work& work) {
            // A file of no known paper: what one file says of itself is all that can be known.
            Packed mixed = work.packed("letter/materials.pdf");
            mixed.name = "extra.pdf";
            work.bundle().push_back(mixed);
            work.edit_pdf("extra.pdf", [](QPDF& pdf) { widen(page(pdf, 1), 20); });
        }, [](Work& work) {
            Packed mixed = work.packed("letter/materials.pdf");
            mixed.name = "extra.pdf";
            work.bundle().push_back(mixed);
        });
    add("backs-same-size", Subject::zip, [](Work& work) {
            work.edit_pdf(pages, [](QPDF& pdf) {
                for (const char* key : {"/MediaBox", "/CropBox", "/BleedBox", "/TrimBox"})
                    if (page(pdf, 2).hasKey(key)) page(pdf, 2).replaceKey(key, Object::parse("[0 0 612 792]"));
            });
        }, untouched(pages));
    add("backs-upright", Subject::release, [](Work& work) {
            for (const char* edition : {"letter/borderless", "letter/bordered"})
                work.edit_pdf(std::string(edition) + "/pages.pdf", [](QPDF& pdf) {
                    pdf.getRoot().getKey("/ViewerPreferences").replaceKey("/Duplex", Object::newName("/DuplexFlipLongEdge"));
                });
        }, untouched(pages));
    add("editions-same-turn", Subject::release, [](Work& work) {
            work.edit_pdf(pages, [](QPDF& pdf) { pdf.getRoot().getKey("/ViewerPreferences").replaceKey("/Duplex", Object::newName("/Simplex")); });
        }, untouched(pages));
    add("editions-same-pictures", Subject::zip, swapped(false), swapped(true));
    add(
        "editions-same-pictures", Subject::release,
        [](Work& work) {
            work.edit_pdf(pages, [](QPDF& pdf) {
                remove_page(pdf, 4);
                remove_page(pdf, 3);
            });
        },
        untouched(pages));
    add("page-repeated", Subject::release, [](Work& work) {
            for (const char* edition : {"letter/borderless", "letter/bordered"})
                work.edit_pdf(std::string(edition) + "/pages.pdf", [](QPDF& pdf) {
                    pdf.addPage(pdf.makeIndirectObject(page(pdf, 1).shallowCopy()), false);
                    pdf.addPage(pdf.makeIndirectObject(page(pdf, 2).shallowCopy()), false);
                });
        }, untouched(pages));
    add("editions-complete", Subject::zip, taken_out("letter/bordered/covers.pdf"), untouched("letter/bordered/covers.pdf"));
    add("sheets-there", Subject::zip, [](Work& work) {
            taken_out("letter/print-check.pdf")(work);
        }, untouched("letter/print-check.pdf"));
    add("file-of-another-kit", Subject::release, [](Work& work) {
            // The sheet of an earlier release, which lay about.
            const Path earlier = work.folder() / "earlier";
            std::filesystem::create_directories(earlier);
            std::filesystem::copy(work.kit(), earlier / "kit", std::filesystem::copy_options::recursive);
            work.write(earlier / "kit/kit.yaml", std::regex_replace(work.read(earlier / "kit/kit.yaml"), std::regex("version: 1.0.0"), "version: 0.9.0"));
            if (test::run(test::quoted(QW_PROGRAM) + " release kit --out out", earlier).status != 0)
                throw std::runtime_error("the earlier version cannot be released");
            work.packed("letter/materials.pdf").bytes = work.read(earlier / "out/corpus/0.9.0/letter/materials.pdf");
        }, untouched("letter/materials.pdf"));
    // Against the plan of the kit: the release is published, its inputs are the kit's.
    add(
        "page-count", Subject::published,
        [](Work& work) {
            work.edit_pdf("letter/borderless/covers.pdf", [](QPDF& pdf) { pdf.addPage(pdf.makeIndirectObject(page(pdf, 1).shallowCopy()), false); });
        },
        {}, "one page more is the least; the clean release has as many as were planned");
    add("picture-placed", Subject::published, [](Work& work) {
            work.edit_pdf(pages, [](QPDF& pdf) { page(pdf, 1).addPageContents(Object::newStream(&pdf, "1 0 0 1 0.2 0 cm\n"), true); });
        }, {}, "a file that is not the one that was made is told in any case (release-current)");
    add("picture-identical", Subject::published, [](Work& work) {
            work.edit_pdf(pages, [](QPDF& pdf) {
                Object objects = page(pdf, 1).getKey("/Resources").getKey("/XObject"), image = objects.getKey(*objects.getKeys().begin());
                const auto data = image.getRawStreamData();
                image.replaceStreamData(std::string(reinterpret_cast<const char*>(data->getBuffer()), data->getSize()) + "\n",
                                        image.getDict().getKey("/Filter"), image.getDict().getKey("/DecodeParms"));
            });
        }, {}, "one byte more is the least");
    add(
        "picture-alike", Subject::published,
        [](Work& work) {
            work.edit_pdf("letter/borderless/covers.pdf",
                          [](QPDF& pdf) { page(pdf, 1).addPageContents(Object::newStream(&pdf, "q 0 g 0 0 300 300 re f Q\n"), false); });
        },
        {}, "a file that is not the one that was made is told in any case (release-current)");
    add(
        "ink-to-edge", Subject::published,
        [](Work& work) {
            work.edit_pdf("letter/borderless/covers.pdf",
                          [](QPDF& pdf) { page(pdf, 1).addPageContents(Object::newStream(&pdf, "q 1 g 0 0 8 612 re f Q\n"), false); });
        },
        {}, "a file that is not the one that was made is told in any case (release-current)");
    add("release-current", Subject::published, [](Work& work) { work.edit_pdf(pages, [](QPDF&) {}); }, [](Work&) {});
}

}  // namespace qw::corpus
