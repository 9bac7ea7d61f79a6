// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/disk_input.h"

#include "base/fault.h"

#include <algorithm>
#include <cstdio>
#include <cstring>
#include <stdexcept>

namespace qw::proof {

namespace {
constexpr std::size_t window_bytes = 16384;
constexpr std::size_t large_read = 4096;
}  // namespace

DiskInput::DiskInput(std::shared_ptr<Source> source, std::string name)
    : source_(std::move(source)), name_(std::move(name)), size_(static_cast<qpdf_offset_t>(source_->size())),
      window_(window_bytes) {}

void DiskInput::check() const {
    if (fault_) std::rethrow_exception(fault_);
}

std::size_t DiskInput::fetch(qpdf_offset_t offset, char* bytes, std::size_t length) {
    check();
    try {
        return source_->read(static_cast<std::uint64_t>(offset), std::as_writable_bytes(std::span(bytes, length)));
    } catch (const Fault&) {
        fault_ = std::current_exception();
        throw;
    }
}

bool DiskInput::load_window(qpdf_offset_t offset) {
    const bool inside = offset >= window_start_ && offset < window_start_ + static_cast<qpdf_offset_t>(window_size_);
    if (inside) return true;
    window_size_ = 0;
    window_size_ = fetch(offset, window_.data(), window_.size());
    window_start_ = offset;
    return window_size_ > 0;
}

std::size_t DiskInput::read(char* bytes, std::size_t length) {
    last_offset = std::min(place_, size_);
    if (place_ >= size_ || length == 0) return 0;
    std::size_t got = 0;
    if (length >= large_read) {
        got = fetch(place_, bytes, length);
    } else if (load_window(place_)) {
        const auto skip = static_cast<std::size_t>(place_ - window_start_);
        got = std::min(length, window_size_ - skip);
        std::memcpy(bytes, window_.data() + skip, got);
    }
    place_ += static_cast<qpdf_offset_t>(got);
    // The window may end before the file does; libqpdf takes a short read for the end.
    if (got > 0 && got < length && place_ < size_) {
        const qpdf_offset_t start = last_offset;
        got += read(bytes + got, length - got);
        last_offset = start;
    }
    return got;
}

void DiskInput::seek(qpdf_offset_t offset, int whence) {
    const qpdf_offset_t base = whence == SEEK_SET ? 0 : whence == SEEK_CUR ? place_ : size_;
    if (base + offset < 0) throw std::runtime_error("seek before the beginning of the file");
    place_ = base + offset;
}

qpdf_offset_t DiskInput::findAndSkipNextEOL() {
    const auto is_end = [](char c) { return c == '\r' || c == '\n'; };
    while (place_ < size_ && load_window(place_)) {
        const auto* first = window_.data() + (place_ - window_start_);
        const auto* last = window_.data() + window_size_;
        const auto* hit = std::find_if(first, last, is_end);
        place_ += hit - first;
        if (hit == last) continue;
        const qpdf_offset_t found = place_;
        while (place_ < size_ && load_window(place_) && is_end(window_[static_cast<std::size_t>(place_ - window_start_)]))
            ++place_;
        return found;
    }
    place_ = size_;
    return size_;
}

}  // namespace qw::proof
