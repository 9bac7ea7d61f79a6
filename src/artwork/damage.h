// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <utility>

namespace qw::artwork {

/// Why a file cannot be used: a sentence about "it" without a full stop. Thrown inside the room only; `look` turns
/// it into Facts::damage, because a bad file is a finding about the kit and must not stop the work.
struct Damage {
    std::string why;
};

[[noreturn]] inline void damaged(std::string why) { throw Damage{std::move(why)}; }

}  // namespace qw::artwork
