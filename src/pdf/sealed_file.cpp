// SPDX-License-Identifier: GPL-3.0-or-later
#include "pdf/sealed_file.h"

#include "base/fault.h"

#include <algorithm>
#include <string_view>

namespace qw::pdf {

namespace {

/// Enough for a trailer and its startxref, and for every step back that PoDoFo makes.
constexpr std::size_t kept_back = 16 * 1024;
/// Small writes are gathered up to this.
constexpr std::size_t room = 256 * 1024;

constexpr std::size_t id_digits = 32;

/// Where the two strings of the trailer's ID (ISO 32000-1 14.4) have their digits.
std::pair<std::size_t, std::size_t> places_of_id(std::string_view tail) {
    const std::size_t trailer = tail.rfind("trailer");
    const std::size_t id = trailer == tail.npos ? tail.npos : tail.find("/ID", trailer);
    const std::size_t first = id == tail.npos ? tail.npos : tail.find('<', id);
    const std::size_t second = first == tail.npos ? tail.npos : tail.find('<', first + 1);
    const auto whole = [&](std::size_t at) { return at != tail.npos && tail.substr(at + 1).find('>') == id_digits; };
    if (!whole(first) || !whole(second))
        throw Fault(FaultKind::not_carried_out, {"pdf-writer", {}, "the trailer of the PDF has no ID where one was expected", "", ""});
    return {first + 1, second + 1};
}

}  // namespace

SealedFile::SealedFile(Disk& disk, const Path& path) : disk_(disk), path_(path), sink_(disk.create(path)) { held_.reserve(room); }

SealedFile::~SealedFile() {
    if (sealed_) return;
    sink_.reset();
    try {
        disk_.remove(path_);
    } catch (...) {  // what made the file unwanted is being told already
    }
}

void SealedFile::check() const {
    if (failure_) std::rethrow_exception(failure_);
}

Drawn SealedFile::seal() {
    check();
    const auto [first, second] = places_of_id(std::string_view(held_.data(), held_.size()));
    const auto fill = [&, one = first, two = second](const std::string& digits) {
        std::copy_n(digits.begin(), id_digits, held_.begin() + static_cast<std::ptrdiff_t>(one));
        std::copy_n(digits.begin(), id_digits, held_.begin() + static_cast<std::ptrdiff_t>(two));
    };
    const std::string_view tail(held_.data(), held_.size());
    fill(std::string(id_digits, '0'));
    Sha256 without_id(digest_);
    without_id.add(tail);
    fill(without_id.hex());
    pass(held_.data(), held_.size());
    check();
    sink_->close();
    sealed_ = true;
    return {passed_, digest_.hex()};
}

std::streamsize SealedFile::xsputn(const char* bytes, std::streamsize count) {
    if (failure_ || discarded_) return count;
    const std::size_t all = static_cast<std::size_t>(count);
    const std::size_t over = std::min(all, held_.size() - cursor_);
    std::copy_n(bytes, over, held_.begin() + static_cast<std::ptrdiff_t>(cursor_));
    cursor_ += over;
    if (over < all) append(bytes + over, all - over);
    return count;
}

std::streambuf::int_type SealedFile::overflow(int_type byte) {
    if (traits_type::eq_int_type(byte, traits_type::eof())) return traits_type::not_eof(byte);
    const char one = traits_type::to_char_type(byte);
    xsputn(&one, 1);
    return byte;
}

/// Goes on behind the last byte; all but the newest pass to the disk when there is no room.
void SealedFile::append(const char* bytes, std::size_t count) {
    if (held_.size() + count > room) {
        const std::size_t surplus = held_.size() + count - kept_back;
        const std::size_t old = std::min(surplus, held_.size());
        pass(held_.data(), old);
        held_.erase(held_.begin(), held_.begin() + static_cast<std::ptrdiff_t>(old));
        pass(bytes, surplus - old);  // straight through: pictures are not copied once more
        bytes += surplus - old;
        count -= surplus - old;
    }
    held_.insert(held_.end(), bytes, bytes + count);
    cursor_ = held_.size();
}

void SealedFile::pass(const char* bytes, std::size_t count) {
    if (count == 0 || failure_) return;
    try {
        const auto span = std::as_bytes(std::span(bytes, count));
        sink_->write(span);
        digest_.add(span);
        passed_ += count;
    } catch (...) {
        failure_ = std::current_exception();
    }
}

std::streambuf::pos_type SealedFile::seekoff(off_type by, std::ios_base::seekdir from, std::ios_base::openmode which) {
    if (from == std::ios_base::beg) return seekpos(pos_type(by), which);
    const std::size_t base = from == std::ios_base::cur ? cursor_ : held_.size();
    return seekpos(pos_type(static_cast<off_type>(passed_ + base) + by), which);
}

std::streambuf::pos_type SealedFile::seekpos(pos_type to, std::ios_base::openmode) {
    const off_type at = off_type(to);
    const off_type least = static_cast<off_type>(passed_), most = least + static_cast<off_type>(held_.size());
    if (at >= least && at <= most) {
        cursor_ = static_cast<std::size_t>(at - least);
        return to;
    }
    if (failure_ || discarded_) return to;
    return pos_type(off_type(-1));
}

}  // namespace qw::pdf
