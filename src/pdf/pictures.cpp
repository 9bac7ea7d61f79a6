// SPDX-License-Identifier: GPL-3.0-or-later
#include "pdf/pictures.h"

#include "artwork/picture.h"
#include "base/fault.h"

namespace qw::pdf {

using namespace PoDoFo;

namespace {

PdfObject colour_space(const artwork::Picture& picture) {
    if (picture.palette.empty())
        return PdfName(picture.components == 1 ? "DeviceGray" : picture.components == 3 ? "DeviceRGB" : "DeviceCMYK");
    PdfArray indexed;  // ISO 32000-1 8.6.6.3
    indexed.push_back(PdfName("Indexed"));
    indexed.push_back(PdfName("DeviceRGB"));
    indexed.push_back(static_cast<pdf_int64>(picture.palette.size() / 3) - 1);
    indexed.push_back(PdfString(reinterpret_cast<const char*>(picture.palette.data()), static_cast<pdf_long>(picture.palette.size()), true));
    return indexed;
}

/// What turns the samples back into rows (ISO 32000-1 table 8); 15 leaves the choice of PNG filter to each row.
PdfDictionary row_filter(const artwork::Picture& picture) {
    PdfDictionary parameters;
    parameters.AddKey("Predictor", static_cast<pdf_int64>(15));
    parameters.AddKey("Colors", static_cast<pdf_int64>(picture.components));
    parameters.AddKey("BitsPerComponent", static_cast<pdf_int64>(picture.bits));
    parameters.AddKey("Columns", static_cast<pdf_int64>(picture.width));
    return parameters;
}

PdfArray inverted(int components) {
    PdfArray decode;
    for (int i = 0; i < components; ++i) {
        decode.push_back(static_cast<pdf_int64>(1));
        decode.push_back(static_cast<pdf_int64>(0));
    }
    return decode;
}

void describe(PdfDictionary& image, const artwork::Picture& picture) {
    image.AddKey("Subtype", PdfName("Image"));
    image.AddKey("Width", static_cast<pdf_int64>(picture.width));
    image.AddKey("Height", static_cast<pdf_int64>(picture.height));
    image.AddKey("BitsPerComponent", static_cast<pdf_int64>(picture.bits));
    image.AddKey("ColorSpace", colour_space(picture));
    if (picture.inverted_cmyk) image.AddKey("Decode", inverted(picture.components));
    if (picture.filter == artwork::Picture::Filter::dct) {
        image.AddKey("Filter", PdfName("DCTDecode"));
    } else {
        image.AddKey("Filter", PdfName("FlateDecode"));
        image.AddKey("DecodeParms", row_filter(picture));
    }
}

void must_be_whole(const compose::PlacedArtwork& artwork, std::uint64_t expected, std::uint64_t there) {
    if (expected == there) return;
    throw Fault(FaultKind::not_carried_out,
                {"artwork-changed", {artwork.file.string(), 0, 0},
                 "the picture gave " + std::to_string(there) + " bytes where " + std::to_string(expected) + " were counted", "",
                 "leave the artwork alone while it is being used, and run it again"});
}

}  // namespace

PdfReference Pictures::shown(std::size_t artwork) {
    const auto known = written_.find(artwork);
    if (known != written_.end()) return known->second;
    return written_[artwork] = write(document_.artwork.at(artwork));
}

PdfReference Pictures::write(const compose::PlacedArtwork& artwork) {
    const artwork::Picture picture = artwork::open_picture(disk_, artwork.file, artwork.facts);
    PdfObject& image = *paper_.objects().CreateObject("XObject");
    const PdfReference reference = image.Reference();
    describe(image.GetDictionary(), picture);
    std::vector<std::byte> chunk(256 * 1024);  // a chunk is read, hashed and written while it is in the cache
    std::uint64_t bytes = 0;
    StreamData data(image, file_, StreamData::Packing::raw);
    while (const std::size_t count = picture.samples->read(chunk)) {
        data.add(reinterpret_cast<const char*>(chunk.data()), count);
        bytes += count;
    }
    must_be_whole(artwork, picture.stream_bytes, bytes);
    return reference;
}

}  // namespace qw::pdf
