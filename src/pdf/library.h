// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

// The one way into PoDoFo. Nothing of it leaves this room.
#include <podofo/podofo.h>

#include "pdf/sealed_file.h"

#include <memory>
#include <string>

namespace qw::pdf {

/// A streamed document whose catalog can be reached; PoDoFo keeps it for subclasses.
class Paper : public PoDoFo::PdfStreamedDocument {
public:
    explicit Paper(PoDoFo::PdfOutputDevice& device) : PdfStreamedDocument(&device, PoDoFo::ePdfVersion_1_7) {}
    PoDoFo::PdfDictionary& catalog() { return GetCatalog()->GetDictionary(); }
    PoDoFo::PdfVecObjects& objects() { return *GetObjects(); }
};

/// PoDoFo asks for the local time, which lies in a place that all threads share, whenever a document begins (the
/// dates made of it are replaced); so documents begin one at a time. `device` must live longer.
std::unique_ptr<Paper> begin_paper(PoDoFo::PdfOutputDevice& device);

inline PoDoFo::PdfString pdf_text(const std::string& utf8) {
    return PoDoFo::PdfString(reinterpret_cast<const PoDoFo::pdf_utf8*>(utf8.c_str()));
}

/// A number in its digits; PoDoFo itself writes six decimals at most. It sets no space before such data.
inline PoDoFo::PdfVariant written(const std::string& number) { return PoDoFo::PdfData((" " + number).c_str()); }

/// PoDoFo writes what goes wrong to standard error unless it is told not to, for the whole process.
void silence_library();

/// The data of one stream object, written to the file as it comes. The object must have its whole dictionary, for it
/// is written first, and is gone from memory when the next stream begins. Only one may be open at a time.
class StreamData {
public:
    enum class Packing {
        raw,   ///< the bytes are what the dictionary's Filter says
        flate  ///< plain bytes; Filter is set here
    };
    StreamData(PoDoFo::PdfObject& object, SealedFile& file, Packing packing);
    /// Ends the stream; after a failure too, for PoDoFo would leak what is open.
    ~StreamData();
    StreamData(const StreamData&) = delete;
    StreamData& operator=(const StreamData&) = delete;
    /// Throws the Fault of the disk.
    void add(const char* bytes, std::size_t count);
    /// The raw bytes of another PDF's stream, or what they unpack to.
    void add_raw(const PoDoFo::PdfStream& other);
    void add_unpacked(const PoDoFo::PdfStream& other);

private:
    PoDoFo::PdfStream& stream_;
    SealedFile& file_;
};

/// Writes `text` as the object's stream; packed when that is worth it.
void write_stream(PoDoFo::PdfObject& object, SealedFile& file, const std::string& text);

}  // namespace qw::pdf
