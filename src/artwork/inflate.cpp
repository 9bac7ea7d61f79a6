// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/inflate.h"

#include "artwork/damage.h"

#include <algorithm>
#include <isa-l/igzip_lib.h>
#include <limits>
#include <new>

namespace qw::artwork {

namespace {

[[noreturn]] void refuse(int status) {
    if (status == ISAL_INCORRECT_CHECKSUM) damaged("its compressed data do not match their check sum");
    if (status == ISAL_NEED_DICT) damaged("its compressed data need a dictionary, which PNG does not allow");
    if (status == ISAL_INVALID_WRAPPER || status == ISAL_UNSUPPORTED_METHOD) damaged("its compressed data do not begin as they must");
    damaged("its compressed data are broken");
}

}  // namespace

Inflate::Inflate() : memory_(sizeof(inflate_state)), state_(new (memory_.data()) inflate_state) {
    isal_inflate_init(state_);
    state_->crc_flag = ISAL_ZLIB;
}

void Inflate::give(std::span<const std::byte> packed) {
    // The library takes its input by a pointer to non-const and does not write through it.
    state_->next_in = const_cast<std::uint8_t*>(reinterpret_cast<const std::uint8_t*>(packed.data()));
    state_->avail_in = static_cast<std::uint32_t>(packed.size());
}

std::size_t Inflate::take(std::uint8_t* to, std::size_t most) {
    if (ended()) return 0;
    const auto room = static_cast<std::uint32_t>(std::min<std::size_t>(most, std::numeric_limits<std::int32_t>::max()));
    state_->next_out = to;
    state_->avail_out = room;
    const int status = isal_inflate(state_);
    if (status != ISAL_DECOMP_OK) refuse(status);
    return room - state_->avail_out;
}

bool Inflate::ended() const { return state_->block_state == ISAL_BLOCK_FINISH; }
std::size_t Inflate::left_over() const {
    // Whole bytes may still wait in the bit buffer.
    return state_->avail_in + static_cast<std::size_t>(std::max(state_->read_in_length, 0)) / 8;
}

}  // namespace qw::artwork
