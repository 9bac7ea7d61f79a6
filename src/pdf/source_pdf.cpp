// SPDX-License-Identifier: GPL-3.0-or-later
#include "pdf/source_pdf.h"

#include "base/fault.h"

#include <algorithm>
#include <istream>
#include <string_view>

namespace qw::pdf {

using namespace PoDoFo;

/// A file of the disk as the stream that PoDoFo reads. A Fault of the disk is kept until PoDoFo has come back.
class SourcePdf::Reading final : public std::streambuf {
public:
    Reading(Disk& disk, const Path& file) : source_(disk.open(file)), size_(source_->size()) {}
    std::exception_ptr failure;

    /// Whether the word stands anywhere in the file.
    bool hold(std::string_view word) {
        std::string text;
        for (seekpos(0, std::ios_base::in); !failure && !traits_type::eq_int_type(sgetc(), traits_type::eof()); setg(eback(), egptr(), egptr())) {
            text.erase(0, text.size() - std::min(text.size(), word.size()));
            text.append(gptr(), egptr());
            if (text.find(word) != text.npos) return true;
        }
        return false;
    }

protected:
    int_type underflow() override {
        start_ += static_cast<std::uint64_t>(egptr() - eback());
        return fill() ? traits_type::to_int_type(*gptr()) : traits_type::eof();
    }
    pos_type seekoff(off_type by, std::ios_base::seekdir from, std::ios_base::openmode which) override {
        const off_type base = from == std::ios_base::beg ? 0
                              : from == std::ios_base::end ? static_cast<off_type>(size_)
                                                           : static_cast<off_type>(start_) + (gptr() - eback());
        return seekpos(pos_type(base + by), which);
    }
    pos_type seekpos(pos_type to, std::ios_base::openmode) override {
        const off_type at = off_type(to);
        if (at < 0 || static_cast<std::uint64_t>(at) > size_) return pos_type(off_type(-1));
        const std::uint64_t place = static_cast<std::uint64_t>(at);
        const std::uint64_t held = static_cast<std::uint64_t>(egptr() - eback());
        if (place >= start_ && place <= start_ + held) {
            setg(eback(), eback() + (place - start_), egptr());
        } else {
            start_ = place;
            setg(buffer_.data(), buffer_.data(), buffer_.data());
        }
        return to;
    }

private:
    bool fill() {
        std::size_t count = 0;
        try {
            count = source_->read(start_, std::as_writable_bytes(std::span(buffer_)));
        } catch (...) {
            failure = std::current_exception();
        }
        setg(buffer_.data(), buffer_.data(), buffer_.data() + count);
        return count > 0;
    }

    std::unique_ptr<Source> source_;
    std::uint64_t size_;
    std::uint64_t start_ = 0;  ///< where in the file the buffer begins
    std::vector<char> buffer_ = std::vector<char>(64 * 1024);

public:
    std::istream stream{this};
};

/// What a node of the page tree hands down.
struct SourcePdf::Inherited {
    const PdfObject* resources = nullptr;
    std::optional<SourceBox> media, crop;
};

namespace {

constexpr std::size_t most_pages = 100'000;
constexpr int deepest_tree = 64;

bool is_dictionary(const PdfObject* object) { return object && object->IsDictionary(); }

SourceBox shared(const SourceBox& a, const SourceBox& b) {
    return {std::max(a.left, b.left), std::max(a.bottom, b.bottom), std::min(a.right, b.right), std::min(a.top, b.top)};
}

bool empty(const SourceBox& box) { return !(box.left < box.right && box.bottom < box.top); }

}  // namespace

SourcePdf::SourcePdf(Disk& disk, const Path& file) : file_(file) {
    silence_library();
    bytes_ = std::make_unique<Reading>(disk, file);
    reading([&] {
        open();
        gather_pages();
    });
}

SourcePdf::~SourcePdf() = default;

void SourcePdf::open() {
    objects_ = std::make_unique<PdfVecObjects>();
    objects_->SetAutoDelete(true);
    parser_ = std::make_unique<PdfParser>(objects_.get());
    try {
        parser_->ParseFile(PdfRefCountedInputDevice(new PdfInputDevice(&bytes_->stream)), true);
    } catch (const PdfError&) {
        // Some kinds of encryption fail in PoDoFo as if the file were damaged, and leave no trailer to ask.
        if (bytes_->hold("/Encrypt")) refuse("it is encrypted");
        throw;
    }
    if (parser_->GetEncrypted()) refuse("it is encrypted");
}

void SourcePdf::reading(const std::function<void()>& work) const {
    try {
        work();
    } catch (const PdfError& error) {
        if (bytes_->failure) std::rethrow_exception(bytes_->failure);
        refuse(std::string("it is damaged or uses what is not supported (") + PdfError::ErrorName(error.GetError()) + ")");
    }
    if (bytes_->failure) std::rethrow_exception(bytes_->failure);
}

void SourcePdf::refuse(const std::string& what) const {
    throw Fault(FaultKind::not_understood,
                {"pdf-artwork-unusable", {file_.string(), 0, 0}, "the PDF cannot be drawn: " + what, "an undamaged PDF without encryption",
                 "export it again from the program it was made with"});
}

const PdfObject* SourcePdf::catalog() const { return value(parser_->GetTrailer()->GetDictionary(), "Root"); }

const PdfObject* SourcePdf::object(const PdfReference& reference) const {
    constexpr int longest_chain = 16;
    const PdfObject* value = objects_->GetObject(reference);
    for (int i = 0; value && value->IsReference(); ++i) value = i < longest_chain ? objects_->GetObject(value->GetReference()) : nullptr;
    return value;
}

const PdfObject* SourcePdf::resolved(const PdfObject* value) const {
    return value && value->IsReference() ? object(value->GetReference()) : value;
}

const PdfObject* SourcePdf::value(const PdfDictionary& dictionary, const char* key) const { return resolved(dictionary.GetKey(key)); }

void SourcePdf::release(const PdfObject& object) {
    // Only what was read from the file can be read again; const because to its readers nothing changes.
    if (const auto* parsed = dynamic_cast<const PdfParserObject*>(&object)) const_cast<PdfParserObject*>(parsed)->FreeObjectMemory();
}

const SourcePage& SourcePdf::page(int number) const {
    if (number < 1 || static_cast<std::size_t>(number) > pages_.size())
        refuse("it has " + std::to_string(pages_.size()) + " pages and page " + std::to_string(number) + " was asked for");
    const SourcePage& page = pages_[static_cast<std::size_t>(number - 1)];
    if (empty(page.shown)) refuse("page " + std::to_string(number) + " has no size");
    return page;
}

void SourcePdf::gather_pages() {
    const PdfObject* root = catalog();
    const PdfObject* tree = is_dictionary(root) ? value(root->GetDictionary(), "Pages") : nullptr;
    if (!is_dictionary(tree)) refuse("it has no pages");
    std::set<PdfReference> seen;
    gather(*tree, {}, seen, 0);
}

std::optional<SourceBox> SourcePdf::box(const PdfDictionary& node, const char* key) const {
    const PdfObject* array = value(node, key);
    if (!array || !array->IsArray() || array->GetArray().size() != 4) return std::nullopt;
    double side[4];
    for (std::size_t i = 0; i < 4; ++i) {
        const PdfObject* number = resolved(&array->GetArray()[i]);
        if (!number || !(number->IsNumber() || number->IsReal())) return std::nullopt;
        side[i] = number->GetReal();
    }
    // Any two opposite corners will do (ISO 32000-1 7.9.5).
    return SourceBox{std::min(side[0], side[2]), std::min(side[1], side[3]), std::max(side[0], side[2]), std::max(side[1], side[3])};
}

SourcePage SourcePdf::page_of(const PdfObject& node, const Inherited& inherited) const {
    SourcePage page{&node, inherited.resources, inherited.media.value_or(SourceBox())};
    if (inherited.media && inherited.crop && !empty(shared(*inherited.media, *inherited.crop)))
        page.shown = shared(*inherited.media, *inherited.crop);
    return page;
}

void SourcePdf::gather(const PdfObject& node, Inherited inherited, std::set<PdfReference>& seen, int depth) {
    if (depth > deepest_tree || pages_.size() >= most_pages || !seen.insert(node.Reference()).second)
        refuse("its page tree runs in a circle or is too large");
    const PdfDictionary& dictionary = node.GetDictionary();
    if (const PdfObject* resources = value(dictionary, "Resources"); is_dictionary(resources)) inherited.resources = resources;
    if (const auto media = box(dictionary, "MediaBox")) inherited.media = media;
    if (const auto crop = box(dictionary, "CropBox")) inherited.crop = crop;
    const PdfObject* kids = value(dictionary, "Kids");
    if (!kids || !kids->IsArray()) {
        pages_.push_back(page_of(node, inherited));
        return;
    }
    for (const PdfObject& entry : kids->GetArray())
        if (const PdfObject* kid = resolved(&entry); is_dictionary(kid)) gather(*kid, inherited, seen, depth + 1);
}

}  // namespace qw::pdf
