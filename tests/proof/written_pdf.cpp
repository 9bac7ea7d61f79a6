// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/written_pdf.h"

#include "base/fault.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cstring>
#include <fstream>

namespace qw::proof::sample {

std::string ref(int number) { return std::to_string(number) + " 0 R"; }

std::string stream_body(const std::string& entries, const std::string& data) {
    return "<< " + entries + " /Length " + std::to_string(data.size()) + " >>\nstream\n" + data + "\nendstream";
}

int WrittenPdf::add(const std::string& body) {
    bodies_.push_back(body);
    return static_cast<int>(bodies_.size());
}

int WrittenPdf::stream(const std::string& entries, const std::string& data) { return add(stream_body(entries, data)); }

std::string WrittenPdf::bytes(int catalog, const std::string& trailer) const {
    std::string out = "%PDF-1.7\n%\xe2\xe3\xcf\xd3\n";
    std::string table = "0000000000 65535 f \n";
    for (std::size_t i = 0; i < bodies_.size(); ++i) {
        const std::string offset = std::to_string(out.size());
        table += std::string(10 - offset.size(), '0') + offset + " 00000 n \n";
        out += std::to_string(i + 1) + " 0 obj\n" + bodies_[i] + "\nendobj\n";
    }
    const std::string size = std::to_string(bodies_.size() + 1);
    const std::string start = std::to_string(out.size());
    return out + "xref\n0 " + size + "\n" + table + "trailer << /Size " + size + " /Root " + ref(catalog) + " " + trailer +
           " >>\nstartxref\n" + start + "\n%%EOF\n";
}

std::string one_page(WrittenPdf& pdf, const std::string& content, const std::string& resources,
                     const std::string& page_entries) {
    const int pages = pdf.add(), contents = pdf.stream("", content);
    const int page = pdf.add("<< /Type /Page /Parent " + ref(pages) + " /Contents " + ref(contents) + " /Resources << " +
                             resources + " >> " + page_entries + " >>");
    pdf.set(pages, "<< /Type /Pages /Count 1 /Kids [" + ref(page) + "] >>");
    return pdf.bytes(pdf.add("<< /Type /Catalog /Pages " + ref(pages) + " >>"));
}

std::string one_page(const std::string& content, const std::string& resources, const std::string& page_entries) {
    WrittenPdf pdf;
    return one_page(pdf, content, resources, page_entries);
}

std::string with_catalog(WrittenPdf& pdf, const std::string& entries, const std::string& trailer) {
    const int pages = pdf.add();
    const int page = pdf.add("<< /Type /Page /MediaBox [0 0 200 100] /Parent " + ref(pages) + " >>");
    pdf.set(pages, "<< /Type /Pages /Count 1 /Kids [" + ref(page) + "] >>");
    return pdf.bytes(pdf.add("<< /Type /Catalog /Pages " + ref(pages) + " " + entries + " >>"), trailer);
}

int small_picture(WrittenPdf& pdf) {
    return pdf.stream("/Type /XObject /Subtype /Image /Width 2 /Height 2 /BitsPerComponent 8 /ColorSpace /DeviceRGB",
                      small_picture_data);
}

class TextDisk::TextSource : public Source {
public:
    explicit TextSource(TextDisk& disk) : disk_(disk) {}
    std::uint64_t size() const override { return disk_.text_.size(); }
    std::size_t read(std::uint64_t offset, std::span<std::byte> bytes) override {
        if (++disk_.reads == disk_.fail_at_read)
            throw Fault(FaultKind::not_carried_out, {"disk", {"text.pdf", 0, 0}, "cannot read the file", "", ""});
        disk_.longest_read = std::max(disk_.longest_read, bytes.size());
        if (offset >= disk_.text_.size()) return 0;
        const std::size_t got = std::min(bytes.size(), disk_.text_.size() - static_cast<std::size_t>(offset));
        std::memcpy(bytes.data(), disk_.text_.data() + offset, got);
        disk_.bytes_read += got;
        return got;
    }

private:
    TextDisk& disk_;
};

std::unique_ptr<Source> TextDisk::open(const Path&) { return std::make_unique<TextSource>(*this); }

Disk* TextDisk::real() {
    static const auto disk = real_disk();
    return disk.get();
}

FileFacts inspected(const std::string& bytes) {
    TextDisk disk(bytes);
    return inspect(disk, "text.pdf");
}

PageFacts only_page(const std::string& bytes) {
    const FileFacts facts = inspected(bytes);
    CHECK(facts.damage == "");
    REQUIRE(facts.pages.size() == 1);
    return facts.pages.front();
}

void put(const Path& path, const std::string& bytes) {
    std::ofstream out(path, std::ios::binary);
    out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    REQUIRE(out.flush());
}

}  // namespace qw::proof::sample
