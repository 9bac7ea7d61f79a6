// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "proof/file_facts.h"
#include "proof/picture_facts.h"

#include <cstdint>
#include <memory>

namespace qw::proof {

/// What reading one file's content may cost, so that a few kilobytes that unfold to terabytes, or forms that paint
/// forms that paint forms, cannot take the machine down. Passing a limit throws Unreadable.
struct Budget {
    std::uint64_t tokens = 50'000'000;               ///< in all content streams, each time they are painted
    std::uint64_t decoded = std::uint64_t{1} << 30;  ///< bytes of them
    std::uint64_t at_once = std::uint64_t{1} << 27;  ///< bytes of one page's or one form's content
    std::uint64_t pictures = 200'000;                ///< paintings of pictures
    int form_depth = 12;
    int state_depth = 4096;                          ///< q inside q
};

/// Walks what a page paints and tells its pictures, text and paths. Forms are entered with their Matrix, BBox and
/// resources (ISO 32000-1 8.10); of annotations the appearances that are not hidden (12.5.5).
/// The bounds of text that clips (Tr 4 to 7), patterns and drawn glyphs are not entered: a page with them has
/// `has_text` or `has_paths`.
class ContentWalk {
public:
    ContentWalk(PictureBook& pictures, Budget& budget, PageFacts& facts);
    ~ContentWalk();

    void page(Object page, Object resources);

private:
    class Reader;
    std::unique_ptr<Reader> reader_;
};

}  // namespace qw::proof
