// SPDX-License-Identifier: GPL-3.0-or-later
#include "corpus/cases.h"

#include "base/digest.h"
#include "bundle/sample.h"

#include <png.h>
#include <qpdf/QPDFWriter.hh>

#include <algorithm>
#include <cmath>
#include <cstring>
#include <fstream>
#include <optional>
#include <sstream>
#include <stdexcept>

namespace qw::corpus {

namespace fs = std::filesystem;

namespace {

constexpr const char* kit_name = "corpus";
constexpr const char* version = "1.0.0";

std::string bytes_at(const Path& path) {
    std::ifstream file(path, std::ios::binary);
    if (!file) throw std::runtime_error("cannot read " + path.string());
    std::ostringstream bytes;
    bytes << file.rdbuf();
    return bytes.str();
}

void put(const Path& path, const std::string& bytes) {
    fs::create_directories(path.parent_path());
    fs::remove(path);  // it may be a link to the clean one
    std::ofstream(path, std::ios::binary) << bytes;
}

/// A copy whose files are links to the clean ones: `put` replaces them, nothing writes into them.
void linked_copy(const Path& from, const Path& to) {
    fs::create_directories(to);
    for (const auto& entry : fs::recursive_directory_iterator(from)) {
        const Path there = to / fs::relative(entry.path(), from);
        if (entry.is_directory()) fs::create_directories(there);
        else fs::create_hard_link(entry.path(), there);
    }
}

/// The entries of a zip that our own program wrote: stored or deflated; unpacked by the tool that everybody has.
std::vector<Packed> unpacked(const Path& zip, const Path& folder) {
    fs::create_directories(folder);
    const std::string command = "unzip -qo " + test::quoted(zip.string()) + " -d .";
    if (test::run(command, folder).status != 0) throw std::runtime_error("unzip refuses " + zip.string());
    std::vector<Packed> entries;
    for (const auto& entry : fs::recursive_directory_iterator(folder))
        if (entry.is_regular_file()) entries.push_back({fs::relative(entry.path(), folder).string(), bytes_at(entry.path())});
    std::sort(entries.begin(), entries.end(), [](const Packed& a, const Packed& b) { return a.name < b.name; });
    return entries;
}

std::string zipped(const std::vector<Packed>& entries) {
    std::vector<bundle::sample::Odd> odd;
    for (const Packed& entry : entries) odd.push_back({entry.name, entry.bytes, entry.method, entry.flags, entry.claimed});
    return bundle::sample::odd_zip(odd);
}

std::string contents_of(const std::vector<Packed>& entries) {
    std::string text;
    for (const Packed& entry : entries)
        if (entry.name != "contents.txt") text += sha256_of(entry.bytes) + "  " + entry.name + "\n";
    return text;
}

/// Nothing of what is no PDF that can be read.
std::optional<std::size_t> pages_of(const Packed& entry) {
    if (!entry.name.ends_with(".pdf")) return std::nullopt;
    try {
        QPDF pdf;
        pdf.setSuppressWarnings(true);
        pdf.processMemoryFile(entry.name.c_str(), entry.bytes.data(), entry.bytes.size());
        return pdf.getAllPages().size();
    } catch (const std::exception&) {
        return std::nullopt;
    }
}

void bring_into_agreement(nlohmann::ordered_json& record, const std::vector<Packed>& entries, const std::string& zip) {
    auto& files = record["files"];
    for (auto file = files.begin(); file != files.end();) {
        const auto entry = std::find_if(entries.begin(), entries.end(), [&](const Packed& one) { return one.name == (*file)["path"]; });
        if (entry == entries.end()) {
            file = files.erase(file);
            continue;
        }
        (*file)["bytes"] = entry->bytes.size();
        (*file)["sha256"] = sha256_of(entry->bytes);
        if (const auto pages = pages_of(*entry)) (*file)["pages"] = *pages;
        ++file;
    }
    auto& bundle = record["bundles"][0];
    bundle["bytes"] = zip.size();
    bundle["sha256"] = sha256_of(zip);
    bundle["entries"] = entries.size();
}

}  // namespace

void Painting::fill(std::uint32_t left, std::uint32_t top, std::uint32_t right, std::uint32_t bottom, std::uint8_t r, std::uint8_t g, std::uint8_t b) {
    for (std::uint32_t y = top; y < std::min(bottom, height); ++y)
        for (std::uint32_t x = left; x < std::min(right, width); ++x) {
            std::uint8_t* pixel = at(x, y);
            pixel[0] = r;
            pixel[1] = g;
            pixel[2] = b;
        }
}

std::string plain_pdf(int pages, double width, double height, bool with_font) {
    QPDF pdf;
    pdf.emptyPDF();
    for (int number = 1; number <= pages; ++number) {
        QPDFObjectHandle page = pdf.makeIndirectObject(QPDFObjectHandle::parse("<< /Type /Page /MediaBox [0 0 " + std::to_string(width) + " " +
                                                                               std::to_string(height) + "] /Resources << >> >>"));
        std::string content = "0.8 0.85 0.87 rg -9 -9 2000 2000 re f 0.4 g 60 " + std::to_string(60 + 20 * number) + " 90 40 re f ";
        if (with_font) {
            page.getKey("/Resources").replaceKey("/Font", QPDFObjectHandle::parse("<< /F << /Type /Font /Subtype /Type1 /BaseFont /Helvetica >> >>"));
            content += "BT /F 20 Tf 60 30 Td (Lantern) Tj ET";
        }
        page.replaceKey("/Contents", pdf.makeIndirectObject(QPDFObjectHandle::newStream(&pdf, content)));
        pdf.addPage(page, false);
    }
    QPDFWriter writer(pdf);
    writer.setOutputMemory();
    writer.setStaticID(true);
    writer.write();
    const auto written = writer.getBufferSharedPointer();
    return {reinterpret_cast<const char*>(written->getBuffer()), written->getSize()};
}

Work::Work(const Path& clean, const Path& folder) : folder_(folder), clean_(clean) {
    linked_copy(clean / "kit", kit());
    linked_copy(clean / "out", out());
}

Path Work::release() const { return out() / kit_name / version; }
Path Work::zip() const { return release() / (std::string(kit_name) + "-" + version + ".zip"); }

Path Work::pipeline() {
    const Path own = folder_ / "pipeline";
    if (!own_pipeline_) fs::copy(Path(QW_SOURCE_DIR) / "pipeline", own, fs::copy_options::recursive);
    own_pipeline_ = true;
    return own;
}

std::string Work::read(const Path& path) const { return bytes_at(path); }
void Work::write(const Path& path, const std::string& bytes) const { put(path, bytes); }

void Work::replace(const Path& path, const std::string& from, const std::string& to) const {
    std::string text = bytes_at(path);
    const std::size_t at = text.find(from);
    if (at == std::string::npos) throw std::runtime_error(path.filename().string() + " has no '" + from + "'");
    put(path, text.replace(at, from.size(), to));
}

Path Work::face(int number) const { return kit() / "art/pages" / (std::to_string(number) + ".png"); }

Painting Work::painting(int number) const {
    png_image image{};
    image.version = PNG_IMAGE_VERSION;
    if (!png_image_begin_read_from_file(&image, face(number).c_str())) throw std::runtime_error("libpng refuses a face");
    image.format = PNG_FORMAT_RGB;
    Painting painting{image.width, image.height, std::vector<std::uint8_t>(PNG_IMAGE_SIZE(image))};
    png_image_finish_read(&image, nullptr, painting.rgb.data(), 0, nullptr);
    return painting;
}

void Work::paint(const Path& path, const Painting& painting, double ppi) const {
    fs::create_directories(path.parent_path());
    fs::remove(path);
    std::FILE* file = std::fopen(path.c_str(), "wb");
    png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, nullptr, nullptr, nullptr);
    png_infop info = png_create_info_struct(png);
    png_init_io(png, file);
    png_set_compression_level(png, 1);
    png_set_filter(png, 0, PNG_FILTER_UP);
    png_set_IHDR(png, info, painting.width, painting.height, 8, PNG_COLOR_TYPE_RGB, PNG_INTERLACE_NONE, PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
    const auto metre = static_cast<png_uint_32>(std::lround(ppi / 0.0254));
    if (ppi > 0) png_set_pHYs(png, info, metre, metre, PNG_RESOLUTION_METER);
    png_write_info(png, info);
    for (std::uint32_t y = 0; y < painting.height; ++y) png_write_row(png, painting.rgb.data() + std::size_t{y} * painting.width * 3);
    png_write_end(png, info);
    png_destroy_write_struct(&png, &info);
    std::fclose(file);
}

void Work::repaint(int number, const std::function<void(Painting&)>& change) const {
    Painting changed = painting(number);
    change(changed);
    paint(face(number), changed);
}

std::vector<Packed>& Work::bundle() {
    if (!opened_) bundle_ = unpacked(zip(), folder_ / "unpacked");
    opened_ = true;
    return bundle_;
}

Packed& Work::packed(const std::string& name) {
    const auto found = std::find_if(bundle().begin(), bundle().end(), [&](const Packed& one) { return one.name == name; });
    if (found == bundle().end()) throw std::runtime_error("the bundle has no " + name);
    return *found;
}

void Work::edit_bytes(const std::string& name, const std::function<void(std::string&)>& change) { change(packed(name).bytes); }

void Work::edit_pdf(const std::string& name, const std::function<void(QPDF&)>& change) {
    Packed& entry = packed(name);
    const std::string before = entry.bytes;
    QPDF pdf;
    pdf.processMemoryFile(name.c_str(), before.data(), before.size());
    change(pdf);
    QPDFWriter writer(pdf);
    writer.setOutputMemory();
    writer.setStreamDataMode(qpdf_s_preserve);
    writer.setStaticID(true);
    writer.write();
    const auto written = writer.getBufferSharedPointer();
    entry.bytes.assign(reinterpret_cast<const char*>(written->getBuffer()), written->getSize());
}

void Work::finish() {
    if (!opened_ && !spoil_zip && !spoil_record) return;
    const Path record_path = release() / "release.json";
    std::string bytes = opened_ ? "" : bytes_at(zip());
    if (opened_) {
        if (contents_follow) packed("contents.txt").bytes = contents_of(bundle_);
        bytes = zipped(bundle_);
    }
    if (spoil_zip) spoil_zip(bytes);
    put(zip(), bytes);
    // A release holds its files beside the bundle as well.
    for (const Packed& entry : bundle_)
        if (const Path loose = release() / entry.name; fs::exists(loose) && bytes_at(loose) != entry.bytes) put(loose, entry.bytes);
    nlohmann::ordered_json record = nlohmann::ordered_json::parse(bytes_at(record_path));
    if (record_follows && opened_) bring_into_agreement(record, bundle_, bytes);
    if (spoil_record) spoil_record(record);
    put(record_path, record.dump(2) + "\n");
}

}  // namespace qw::corpus
