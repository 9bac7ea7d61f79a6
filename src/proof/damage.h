// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "proof/libqpdf.h"

#include <exception>
#include <string>

namespace qw::proof {

/// Thrown inside the room when reading on makes no sense: a limit is passed, or what follows has no meaning.
struct Unreadable : std::exception {
    explicit Unreadable(std::string why) : text(std::move(why)) {}
    const char* what() const noexcept override { return text.c_str(); }
    std::string text;
};

/// Keeps the first thing that is wrong with a file, as one short line; what follows is mostly its consequence.
class Damage {
public:
    /// Where the reading is ("page 3"), told in front of the texts noted from now on; may be empty.
    void at(std::string place) { place_ = std::move(place); }
    void note(const std::string& text);
    void note(const QPDFExc& error);
    /// The warnings that libqpdf has gathered since it was last asked.
    void take_warnings(QPDF& pdf);
    const std::string& text() const { return text_; }

private:
    std::string text_, place_;
};

}  // namespace qw::proof
