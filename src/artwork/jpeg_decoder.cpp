// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/jpeg_decoder.h"

#include "artwork/damage.h"
#include "artwork/jpeg_quality.h"
#include "artwork/rows.h"

#include <algorithm>
#include <array>
#include <csetjmp>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <exception>
#include <limits>

#include <jpeglib.h>

namespace qw::artwork {

namespace {

constexpr int most_scans = 100;  // a progressive file has about ten; hostile ones have thousands, each a whole decode
constexpr std::uint64_t longest_head = std::uint64_t{64} << 20;
constexpr std::uint32_t batch_rows = 16;
constexpr double cm_per_inch = 2.54;

}  // namespace

struct JpegDecoder::Link {
    jpeg_decompress_struct info{};
    jpeg_error_mgr errors{};
    jpeg_source_mgr source{};
    jpeg_progress_mgr progress{};
    std::jmp_buf back{};

    Reader* reader = nullptr;
    std::exception_ptr failure;          ///< what the Reader threw
    const char* said = nullptr;          ///< our own reason, else the library's
    char message[JMSG_LENGTH_MAX] = {};
    bool in_head = true;

    JOCTET* icc = nullptr;
    unsigned icc_bytes = 0;
    std::uint8_t* rows[batch_rows] = {};
    std::uint32_t rows_read = 0;
};

namespace {

using Link = JpegDecoder::Link;

// The library reports an error by leaving its own frames with a long jump to `guarded`. None of the frames in between
// (the library's, the step's, the call-backs') holds anything that would have to be destroyed, and no exception passes
// through them.

Link& link_of(j_common_ptr info) { return *static_cast<Link*>(info->client_data); }

[[noreturn]] void leave(Link& link) { std::longjmp(link.back, 1); }

[[noreturn]] void on_error(j_common_ptr info) {
    info->err->format_message(info, link_of(info).message);
    leave(link_of(info));
}

void on_message(j_common_ptr info, int level) {
    if (level < 0) on_error(info);
}

void on_output(j_common_ptr) {}

void on_progress(j_common_ptr info) {
    if (reinterpret_cast<j_decompress_ptr>(info)->input_scan_number <= most_scans) return;
    link_of(info).said = "it has more scans than any picture needs";
    leave(link_of(info));
}

void on_source(j_decompress_ptr) {}

boolean on_empty(j_decompress_ptr info) {
    Link& link = *static_cast<Link*>(info->client_data);
    std::span<const std::byte> piece;
    try {
        piece = link.reader->some(std::numeric_limits<std::size_t>::max());
    } catch (...) {
        link.failure = std::current_exception();
    }
    if (link.failure) leave(link);
    if (piece.empty()) link.said = "it is cut off: its end mark (EOI) is missing";
    if (link.in_head && link.reader->at() > longest_head) link.said = "no picture begins in its first 64 MiB";
    if (link.said) leave(link);
    link.source.next_input_byte = reinterpret_cast<const JOCTET*>(piece.data());
    link.source.bytes_in_buffer = piece.size();
    return TRUE;
}

void on_skip(j_decompress_ptr info, long bytes) {
    jpeg_source_mgr& source = *info->src;
    auto left = bytes > 0 ? static_cast<std::size_t>(bytes) : 0;
    while (left > source.bytes_in_buffer) {
        left -= source.bytes_in_buffer;
        on_empty(info);
    }
    source.next_input_byte += left;
    source.bytes_in_buffer -= left;
}

bool guarded(Link& link, void (*step)(Link&)) {
    if (setjmp(link.back) != 0) return false;
    step(link);
    return true;
}

void run(Link& link, void (*step)(Link&)) {
    if (guarded(link, step)) return;
    if (link.failure) std::rethrow_exception(std::exchange(link.failure, nullptr));
    damaged(link.said ? link.said : "its JPEG data are broken (" + std::string(link.message) + ")");
}

void create(Link& link) {
    jpeg_create_decompress(&link.info);
    link.info.client_data = &link;
    link.info.src = &link.source;
    link.info.progress = &link.progress;
    jpeg_save_markers(&link.info, JPEG_APP0 + 1, 0xFFFF);
    jpeg_save_markers(&link.info, JPEG_APP0 + 2, 0xFFFF);
}

void head(Link& link) { jpeg_read_header(&link.info, TRUE); }
void profile(Link& link) { jpeg_read_icc_profile(&link.info, &link.icc, &link.icc_bytes); }
void begin(Link& link) { jpeg_start_decompress(&link.info); }
void end(Link& link) { jpeg_finish_decompress(&link.info); }

void read_rows(Link& link) {
    link.rows_read = 0;
    while (link.rows_read < batch_rows && link.info.output_scanline < link.info.output_height)
        link.rows_read += jpeg_read_scanlines(&link.info, link.rows + link.rows_read, batch_rows - link.rows_read);
}

JpegHead::Coded coded_as(J_COLOR_SPACE space) {
    switch (space) {
        case JCS_GRAYSCALE: return JpegHead::Coded::grey;
        case JCS_YCbCr: return JpegHead::Coded::ycc;
        case JCS_RGB: return JpegHead::Coded::rgb;
        case JCS_CMYK:
        case JCS_YCCK: return JpegHead::Coded::cmyk;
        default: return JpegHead::Coded::other;
    }
}

}  // namespace

JpegDecoder::JpegDecoder(Reader& reader) : link_(std::make_unique<Link>()) {
    Link& link = *link_;
    link.reader = &reader;
    link.info.err = jpeg_std_error(&link.errors);
    link.info.client_data = &link;
    link.errors.error_exit = on_error;
    link.errors.emit_message = on_message;
    link.errors.output_message = on_output;
    link.progress.progress_monitor = on_progress;
    link.source.init_source = on_source;
    link.source.fill_input_buffer = on_empty;
    link.source.skip_input_data = on_skip;
    link.source.resync_to_restart = jpeg_resync_to_restart;
    link.source.term_source = on_source;
    run(link, create);
}

JpegDecoder::~JpegDecoder() {
    jpeg_destroy_decompress(&link_->info);
    std::free(link_->icc);
}

JpegHead JpegDecoder::read_head() {
    run(*link_, artwork::head);
    link_->in_head = false;
    const jpeg_decompress_struct& info = link_->info;
    JpegHead head;
    head.width = info.image_width;
    head.height = info.image_height;
    head.components = info.num_components;
    head.coded = coded_as(info.jpeg_color_space);
    if (info.saw_Adobe_marker) head.adobe_transform = info.Adobe_transform;
    head.arithmetic = info.arith_code;
    if (info.num_components > 0)
        if (const JQUANT_TBL* table = info.quant_tbl_ptrs[info.comp_info[0].quant_tbl_no & (NUM_QUANT_TBLS - 1)]) {
            std::array<std::uint16_t, DCTSIZE2> steps;
            std::copy_n(table->quantval, DCTSIZE2, steps.begin());
            head.quality = jpeg_quality(steps);
        }
    const double factor = info.density_unit == 1 ? 1 : info.density_unit == 2 ? cm_per_inch : 0;
    if (info.saw_JFIF_marker) {
        head.ppi_x = info.X_density * factor;
        head.ppi_y = info.Y_density * factor;
    }
    return head;
}

std::span<const std::byte> JpegDecoder::exif() const {
    static constexpr char mark[6] = {'E', 'x', 'i', 'f', 0, 0};
    for (auto marker = link_->info.marker_list; marker; marker = marker->next)
        if (marker->marker == JPEG_APP0 + 1 && marker->data_length > sizeof mark && std::memcmp(marker->data, mark, sizeof mark) == 0)
            return std::as_bytes(std::span(marker->data, marker->data_length)).subspan(sizeof mark);
    return {};
}

std::vector<std::byte> JpegDecoder::icc() {
    run(*link_, profile);
    const auto bytes = std::as_bytes(std::span(link_->icc, link_->icc_bytes));
    return {bytes.begin(), bytes.end()};
}

void JpegDecoder::start(Output output) {
    jpeg_decompress_struct& info = link_->info;
    info.out_color_space = output == Output::luma ? JCS_GRAYSCALE : output == Output::rgb ? JCS_RGB : JCS_CMYK;
    run(*link_, begin);
    const std::size_t row_bytes = std::size_t{info.output_width} * static_cast<unsigned>(info.output_components);
    batch_.emplace(row_bytes * batch_rows + row_slack);
    for (std::size_t i = 0; i < batch_rows; ++i) link_->rows[i] = batch_->data() + i * row_bytes;
}

JpegDecoder::Batch JpegDecoder::next() {
    run(*link_, read_rows);
    return {batch_->data(), link_->rows_read};
}

void JpegDecoder::finish() { run(*link_, end); }

}  // namespace qw::artwork
