// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "pdf/library.h"

#include "base/disk.h"

#include <exception>
#include <functional>
#include <memory>
#include <optional>
#include <set>
#include <streambuf>
#include <vector>

namespace qw::pdf {

/// Lower left and upper right corner in a source page's own user space, whose numbers are not ours to round.
struct SourceBox {
    double left = 0, bottom = 0, right = 0, top = 0;
};

/// A page of a source PDF with what it inherits (ISO 32000-1 7.7.3.4). The objects belong to the SourcePdf.
struct SourcePage {
    const PoDoFo::PdfObject* page = nullptr;
    const PoDoFo::PdfObject* resources = nullptr;  ///< null: it has none
    SourceBox shown;                               ///< what of CropBox lies in MediaBox
};

/// A PDF file that pages are taken from, read through the disk as its parts are asked for.
class SourcePdf {
public:
    /// Throws Fault: not_understood, naming the file, when it is damaged or encrypted; the disk's own when that fails.
    SourcePdf(Disk& disk, const Path& file);
    ~SourcePdf();

    /// Counted from 1. Throws Fault when there is no such page or it has no size.
    const SourcePage& page(int number) const;
    const PoDoFo::PdfObject* catalog() const;
    /// What a reference leads to, or a reference to a reference; null when it leads nowhere.
    const PoDoFo::PdfObject* object(const PoDoFo::PdfReference& reference) const;
    /// The same for a value that may be a reference; others are their own.
    const PoDoFo::PdfObject* resolved(const PoDoFo::PdfObject* value) const;
    /// The value of a key with references followed, null when there is none.
    const PoDoFo::PdfObject* value(const PoDoFo::PdfDictionary& dictionary, const char* key) const;
    /// Lets go of an object's stream; it is read again when it is asked for again.
    static void release(const PoDoFo::PdfObject& object);

    /// Runs `work`, which reads this PDF, and turns what PoDoFo throws into a Fault as above.
    void reading(const std::function<void()>& work) const;
    /// Throws the Fault that says that this file cannot be used.
    [[noreturn]] void refuse(const std::string& what) const;

private:
    struct Inherited;
    void open();
    void gather_pages();
    void gather(const PoDoFo::PdfObject& node, Inherited from_above, std::set<PoDoFo::PdfReference>& seen, int depth);
    std::optional<SourceBox> box(const PoDoFo::PdfDictionary& node, const char* key) const;
    SourcePage page_of(const PoDoFo::PdfObject& node, const Inherited& inherited) const;

    Path file_;
    class Reading;
    std::unique_ptr<Reading> bytes_;
    std::unique_ptr<PoDoFo::PdfVecObjects> objects_;
    std::unique_ptr<PoDoFo::PdfParser> parser_;
    std::vector<SourcePage> pages_;
};

}  // namespace qw::pdf
