// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/geometry.h"
#include "compose/document.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::pdf {

/// The content stream of one page (ISO 32000-1 7.8.2), gathered in painting order. Remembers the graphics state, so
/// that a ruler of two hundred ticks names its line width once.
class Content {
public:
    /// An XObject under a matrix, cut off outside `clip`, and outside `shape` unless that is empty. Nothing is drawn when
    /// the clip is empty.
    void object(const std::string& name, const Matrix& place, const Rect& clip, const compose::Shape& shape = {});
    /// Lines have butt caps and mitred joins; fills follow the non-zero winding rule.
    void outline(const compose::Outline& outline);
    /// A line of text that begins at `start` of a font resource; `codes` are its character codes in hexadecimal.
    void line(const std::string& font, const std::string& codes, const Matrix& start, Length size, compose::Grey grey);

    const std::string& text() const { return text_; }

private:
    void clip_to(const compose::Shape& shape);
    void fill_grey(compose::Grey grey);
    void stroke_state(Length width, const std::vector<Length>& dash, compose::Grey grey);

    std::string text_;
    // What a page begins with: ISO 32000-1 table 52. The line width there is 1 pt.
    std::string fill_grey_ = "0", stroke_grey_ = "0", width_ = "1", dash_ = "[]";
};

}  // namespace qw::pdf
