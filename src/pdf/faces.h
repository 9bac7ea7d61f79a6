// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "pdf/object_copy.h"

#include "compose/document.h"

#include <map>
#include <memory>

namespace qw::pdf {

/// Pages of other PDFs as form XObjects (ISO 32000-1 8.10), never rendered. Each page is written when it is first
/// shown, and what pages of one file share is written once. A form keeps its page's own user space: its matrix is
/// the identity, its box what the page shows. Annotations are no artwork and stay behind.
class Faces {
public:
    Faces(Disk& disk, Paper& paper, SealedFile& file, const compose::Document& document);
    ~Faces();
    /// Throws Fault: not_understood, naming the file, when it cannot be used.
    PoDoFo::PdfReference shown(const compose::PdfFace& face);
    /// Says which layers of the artwork are hidden, and which do not print. Call once, after the last page.
    void describe_layers();

private:
    struct Origin;
    Origin& origin(const Path& file);
    PoDoFo::PdfReference write(Origin& origin, int page);
    void let_go(Origin& origin);
    using Layers = std::map<PoDoFo::PdfReference, PoDoFo::PdfReference>;
    void note_layers(const SourcePdf& source, const PoDoFo::PdfDictionary& settings, const Layers& layers);
    void note_event(const SourcePdf& source, const PoDoFo::PdfDictionary& event, const Layers& layers);

    Disk& disk_;
    Paper& paper_;
    SealedFile& file_;
    std::map<Path, std::unique_ptr<Origin>> origins_;
    PoDoFo::PdfArray layers_, hidden_, automatic_;
};

}  // namespace qw::pdf
