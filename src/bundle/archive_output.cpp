// SPDX-License-Identifier: GPL-3.0-or-later
#include "bundle/archive_output.h"

#include "base/fault.h"

#include <algorithm>
#include <array>
#include <cstring>

namespace qw::bundle {

namespace {

constexpr std::size_t buffer_size = std::size_t{1} << 18;

/// Fixed part of a header and where its time and date stand (APPNOTE 4.3.7, 4.3.12).
struct HeaderForm {
    std::array<unsigned char, 4> signature;
    std::size_t size, time_at;
};
constexpr HeaderForm header_forms[] = {{{'P', 'K', 3, 4}, 30, 10}, {{'P', 'K', 1, 2}, 46, 12}};
constexpr std::size_t largest_header = 46;

bool is(const HeaderForm& form, std::span<const std::byte> bytes) {
    return bytes.size() == form.size && std::memcmp(bytes.data(), form.signature.data(), form.signature.size()) == 0;
}

}  // namespace

ArchiveOutput::ArchiveOutput(std::unique_ptr<Sink> sink, const Date& date) : sink_(std::move(sink)), date_(date.dos()) {
    pending_.reserve(buffer_size);
}

// libzip keeps an entry's time as a time_t and turns it into local time when it writes a header. A midnight that the
// clocks of a zone leap over does not come back from that, so the headers get their date here, whatever the zone.
// libzip hands over the fixed part of a header in one write; names cannot be taken for one, as they are lower case.
void ArchiveOutput::write(std::span<const std::byte> bytes) {
    for (const HeaderForm& form : header_forms) {
        if (in_data_ || !is(form, bytes)) continue;
        std::array<std::byte, largest_header> header{};
        std::copy(bytes.begin(), bytes.end(), header.begin());
        header[form.time_at] = header[form.time_at + 1] = std::byte{0};
        header[form.time_at + 2] = static_cast<std::byte>(date_ & 0xff);
        header[form.time_at + 3] = static_cast<std::byte>(date_ >> 8);
        return put(std::span(header).first(form.size));
    }
    put(bytes);
}

void ArchiveOutput::put(std::span<const std::byte> bytes) {
    const std::size_t over = static_cast<std::size_t>(std::min<std::uint64_t>(bytes.size(), end() - at_));
    patch(bytes.first(over));
    append(bytes.subspan(over));
}

void ArchiveOutput::patch(std::span<const std::byte> bytes) {
    const std::size_t on_disk =
        at_ < flushed_ ? static_cast<std::size_t>(std::min<std::uint64_t>(bytes.size(), flushed_ - at_)) : 0;
    if (on_disk > 0) sink_->write_at(at_, bytes.first(on_disk));
    at_ += on_disk;
    const auto rest = bytes.subspan(on_disk);
    if (rest.empty()) return;
    std::copy(rest.begin(), rest.end(), pending_.begin() + static_cast<std::ptrdiff_t>(at_ - flushed_));
    at_ += rest.size();
}

void ArchiveOutput::append(std::span<const std::byte> bytes) {
    while (!bytes.empty()) {
        const std::size_t n = std::min(bytes.size(), buffer_size - pending_.size());
        pending_.insert(pending_.end(), bytes.begin(), bytes.begin() + static_cast<std::ptrdiff_t>(n));
        bytes = bytes.subspan(n);
        at_ += n;
        if (pending_.size() == buffer_size) flush();
    }
}

void ArchiveOutput::flush() {
    if (pending_.empty()) return;
    sink_->write(std::span<const std::byte>(pending_));
    flushed_ += pending_.size();
    pending_.clear();
}

void ArchiveOutput::seek(std::uint64_t offset) {
    if (offset > end())
        throw Fault(FaultKind::not_carried_out, {"bundle", {}, "the zip would have a hole in it", "", ""});
    at_ = offset;
}

void ArchiveOutput::close() {
    flush();
    sink_->close();
}

}  // namespace qw::bundle
