// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"
#include "base/geometry.h"
#include "base/ink_map.h"

#include <memory>
#include <string>
#include <vector>

namespace qw::proof {

/// Pixels of a page on white paper, RGB, 8 bits, rows from the top, no padding.
struct Pixels {
    std::uint32_t width = 0, height = 0;
    std::vector<std::uint8_t> rgb;
    std::string complaint = {};  ///< the first thing that the renderer complained of while it drew the page; empty: of nothing
};

/// A PDF opened with poppler for looking at its pages. Not safe for use by two threads; open one a thread.
class Renderer {
public:
    /// A file that poppler cannot open leaves `damage()` not empty and `pages()` 0.
    explicit Renderer(const Path& path);
    ~Renderer();
    Renderer(const Renderer&) = delete;
    Renderer& operator=(const Renderer&) = delete;

    const std::string& damage() const;
    int pages() const;
    /// The page's crop box as it is shown, turned by Rotate. `page` counts from 1. Throws Fault (not_understood) for
    /// a page that is not there or cannot be rendered. Limit: 400 million pixels. poppler passes over UserUnit.
    Pixels page(int page, double dpi);
    Size shown_size(int page);
    /// The page's text in reading order, UTF-8: line by line as it stands on the page, columns apart by spaces.
    std::string text(int page);

private:
    struct State;
    std::unique_ptr<State> state_;
};

/// Name and version of the library that renders: what is kept of a rendering holds for it alone.
std::string renderer_name();

/// Ink of rendered pixels. `cell` as in InkMap.
Ink ink_of(const Pixels& pixels, std::uint32_t cell = 4);

}  // namespace qw::proof
