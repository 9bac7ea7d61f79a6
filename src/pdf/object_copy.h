// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "pdf/source_pdf.h"

#include <deque>
#include <map>
#include <vector>

namespace qw::pdf {

/// Copies objects of one source PDF, and what they refer to, into the document; each once, however often it is asked
/// for. Page-tree nodes are left out (a reference to one would pull in the whole source), and so is what no page shows:
/// metadata, private data of programs, and places in the structure tree.
class ObjectCopy {
public:
    ObjectCopy(const SourcePdf& source, Paper& paper, SealedFile& file) : source_(source), paper_(paper), file_(file) {}

    /// A value for the document; what it refers to has got its place there but is written by `finish`.
    PoDoFo::PdfObject translated(const PoDoFo::PdfObject& value);
    /// The place of a source object that is not direct.
    PoDoFo::PdfReference placed(const PoDoFo::PdfObject& source);
    /// Writes what was placed and what that refers to. No stream may be open.
    void finish();

    /// Optional content groups (layers) that were copied.
    const std::map<PoDoFo::PdfReference, PoDoFo::PdfReference>& layers() const { return layers_; }

private:
    PoDoFo::PdfObject translated(const PoDoFo::PdfObject& value, int depth);
    PoDoFo::PdfDictionary translated(const PoDoFo::PdfDictionary& dictionary, int depth);
    PoDoFo::PdfArray translated(const PoDoFo::PdfArray& array, int depth);
    PoDoFo::PdfObject translated_reference(const PoDoFo::PdfReference& reference);
    void write(const PoDoFo::PdfObject& from, PoDoFo::PdfObject& to);

    const SourcePdf& source_;
    Paper& paper_;
    SealedFile& file_;
    std::map<PoDoFo::PdfReference, PoDoFo::PdfReference> places_, layers_;
    std::deque<std::pair<const PoDoFo::PdfObject*, PoDoFo::PdfObject*>> waiting_;
};

}  // namespace qw::pdf
