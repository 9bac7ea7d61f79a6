// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"
#include "base/length.h"

#include <memory>
#include <string>
#include <vector>

namespace qw::type {

/// The cuts that the generated sheets are set in. Which family serves which cut is fixed in fonts.cpp: a sans with
/// tabular figures and real fractions for what is read and cut from, a serif for titles.
enum class Cut { text, strong, italic, title };
inline constexpr Cut all_cuts[] = {Cut::text, Cut::strong, Cut::italic, Cut::title};

/// The fonts of the system that the sheets use: their files, widths and coverage. Found by fontconfig at the start;
/// a missing or substituted family is a Fault (not_carried_out) that names the Debian package to install.
class Fonts {
public:
    static Fonts find();
    Fonts(Fonts&&) noexcept;
    Fonts& operator=(Fonts&&) noexcept;
    ~Fonts();

    /// A TrueType file (only such outlines embed).
    const Path& file(Cut cut) const;
    /// PostScript name.
    const std::string& name(Cut cut) const;
    /// OS/2 fsType of the file: what the maker allows of embedding.
    unsigned embedding(Cut cut) const;
    /// Advance of a line of text, kerning not applied (PDF shows text without it). Thread-safe.
    Length width(Cut cut, Length size, const std::string& utf8) const;
    /// Height of capitals and of figures above the baseline, and depth of descenders below it.
    Length cap_height(Cut cut, Length size) const;
    Length descent(Cut cut, Length size) const;
    /// Characters (UTF-8) of the text that the cut has no glyph for; empty when all are there.
    std::vector<std::string> missing(Cut cut, const std::string& utf8) const;

private:
    struct State;
    explicit Fonts(std::unique_ptr<State> state);
    std::unique_ptr<State> state_;
};

}  // namespace qw::type
