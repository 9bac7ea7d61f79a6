// SPDX-License-Identifier: GPL-3.0-or-later
#include "pdf/library.h"

#include <mutex>

namespace qw::pdf {

using namespace PoDoFo;

void silence_library() {
    // Static so that threads that draw at the same time do not write the switches while others read them.
    static const bool silent = [] {
        PdfError::EnableDebug(false);
        PdfError::EnableLogging(false);
        return true;
    }();
    static_cast<void>(silent);
}

std::unique_ptr<Paper> begin_paper(PdfOutputDevice& device) {
    static std::mutex one_at_a_time;
    const std::lock_guard lock(one_at_a_time);
    return std::make_unique<Paper>(device);
}

namespace {

/// Takes what PoDoFo reads from one file to the stream that it writes to another. Never throws through it.
class Onward final : public PdfOutputStream {
public:
    explicit Onward(PdfStream& stream) : stream_(stream) {}
    pdf_long Write(const char* bytes, pdf_long count) override {
        stream_.Append(bytes, static_cast<std::size_t>(count));
        return count;
    }
    void Close() override {}

private:
    PdfStream& stream_;
};

}  // namespace

StreamData::StreamData(PdfObject& object, SealedFile& file, Packing packing) : stream_(*object.GetStream()), file_(file) {
    TVecFilters filters;
    if (packing == Packing::flate) filters.push_back(ePdfFilter_FlateDecode);
    stream_.BeginAppend(filters, true, packing == Packing::flate);
}

StreamData::~StreamData() {
    try {
        stream_.EndAppend();
    } catch (const PdfError&) {
        file_.discard();
    }
}

void StreamData::add(const char* bytes, std::size_t count) {
    stream_.Append(bytes, count);
    file_.check();
}

void StreamData::add_raw(const PdfStream& other) {
    Onward onward(stream_);
    other.GetCopy(&onward);
    file_.check();
}

void StreamData::add_unpacked(const PdfStream& other) {
    Onward onward(stream_);
    other.GetFilteredCopy(&onward);
    file_.check();
}

void write_stream(PdfObject& object, SealedFile& file, const std::string& text) {
    constexpr std::size_t worth_packing = 256;
    StreamData data(object, file, text.size() < worth_packing ? StreamData::Packing::raw : StreamData::Packing::flate);
    data.add(text.data(), text.size());
}

}  // namespace qw::pdf
