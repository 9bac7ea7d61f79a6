// SPDX-License-Identifier: GPL-3.0-or-later
#include "pdf/draw.h"

#include "base/fault.h"
#include "pdf/catalog.h"
#include "pdf/content.h"
#include "pdf/faces.h"
#include "pdf/letters.h"
#include "pdf/library.h"
#include "pdf/pictures.h"
#include "pdf/sealed_file.h"

#include <cmath>
#include <numbers>
#include <ostream>

namespace qw::pdf {

using namespace PoDoFo;

namespace {

/// Draws item after item of one page into its content stream; what the items need is written before the page is.
class PageDrawing {
public:
    PageDrawing(PdfPage& page, const type::Fonts& fonts, Letters& letters, Pictures& pictures, Faces& faces)
        : page_(page), fonts_(fonts), letters_(letters), pictures_(pictures), faces_(faces) {}

    void operator()(const compose::Text& text) {
        if (text.words.empty()) return;
        const std::string codes = letters_.codes(text.cut, text.words);
        const std::string name = "F" + std::to_string(static_cast<int>(text.cut));
        page_.AddResource(PdfName(name), letters_.font(text.cut), PdfName("Font"));
        content_.line(name, codes, start_of(text), text.size, text.grey);
    }
    void operator()(const compose::Outline& outline) { content_.outline(outline); }
    void operator()(const compose::Picture& picture) {
        object("P" + std::to_string(picture.artwork), pictures_.shown(picture.artwork), picture.place, picture.clip, picture.shape);
    }
    void operator()(const compose::PdfFace& face) {
        const PdfReference form = faces_.shown(face);
        object("X" + std::to_string(form.ObjectNumber()), form, face.place, face.clip, face.shape);
    }
    const Content& content() const { return content_; }

private:
    void object(const std::string& name, const PdfReference& reference, const Matrix& place, const Rect& clip, const compose::Shape& shape) {
        page_.AddResource(PdfName(name), reference, PdfName("XObject"));
        content_.object(name, place, clip, shape);
    }

    /// The text matrix: the baseline turned about `at` and moved back along itself by what stands before the anchor.
    Matrix start_of(const compose::Text& text) const {
        const double share = text.anchor == compose::Text::Anchor::start ? 0 : text.anchor == compose::Text::Anchor::middle ? 0.5 : 1;
        const Length back = fonts_.width(text.cut, text.size, text.words) * share;
        const double angle = text.turn * std::numbers::pi / 180;
        // Quarter turns are exact, so that a line up the edge of a sheet has no crooked digits.
        const bool quarter = std::fmod(text.turn, 90) == 0;
        const double c = quarter ? std::round(std::cos(angle)) : std::cos(angle);
        const double s = quarter ? std::round(std::sin(angle)) : std::sin(angle);
        return {c, s, -s, c, text.at.x.in_points() - c * back.in_points(), text.at.y.in_points() - s * back.in_points()};
    }

    PdfPage& page_;
    const type::Fonts& fonts_;
    Letters& letters_;
    Pictures& pictures_;
    Faces& faces_;
    Content content_;
};

PdfRect whole(Size paper) { return PdfRect(0, 0, paper.width.in_points(), paper.height.in_points()); }

void describe_page(PdfDictionary& page, const compose::Page& plan) {
    page.AddKey("MediaBox", box(Rect::of(plan.size)));
    page.AddKey("TrimBox", box(plan.trim));
    page.AddKey("BleedBox", box(plan.bleed));
}

void draw_pages(Disk& disk, Paper& paper, SealedFile& file, const compose::Document& document, const type::Fonts& fonts) {
    Letters letters(paper, fonts);
    Pictures pictures(disk, paper, file, document);
    Faces faces(disk, paper, file, document);
    describe_document(paper, file, document);
    for (const compose::Page& plan : document.pages) {
        PdfPage& page = *paper.CreatePage(whole(plan.size));
        describe_page(page.GetObject()->GetDictionary(), plan);
        PageDrawing drawing(page, fonts, letters, pictures, faces);
        for (const compose::Item& item : plan.items) std::visit(drawing, item);
        write_stream(*page.GetContents(), file, drawing.content().text());
    }
    letters.embed();
    faces.describe_layers();
    paper.Close();
    file.check();
}

[[noreturn]] void refuse(const Path& path, const PdfError& error) {
    const char* name = PdfError::ErrorName(error.GetError());
    throw Fault(FaultKind::not_carried_out,
                {"pdf-writer", {path.string(), 0, 0}, std::string("the PDF cannot be written: ") + (name ? name : "unknown reason"), "", ""});
}

}  // namespace

Drawn draw(Disk& disk, const Path& path, const compose::Document& document, const type::Fonts& fonts) {
    silence_library();
    SealedFile file(disk, path);
    std::ostream stream(&file);
    PdfOutputDevice device(&stream);
    try {
        const std::unique_ptr<Paper> paper = begin_paper(device);
        try {
            draw_pages(disk, *paper, file, document, fonts);
        } catch (...) {
            file.discard();  // nothing that the document's destructor still writes may count
            throw;
        }
    } catch (const PdfError& error) {
        file.check();  // a disk that failed may have confused the library first
        refuse(path, error);
    }
    return file.seal();
}

}  // namespace qw::pdf
