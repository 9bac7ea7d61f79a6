// SPDX-License-Identifier: GPL-3.0-or-later
// Faces of the pieces that are cut out and folded. Each is drawn upright, as people see it, from the corner where it is
// cut: 0,0 is the upper left corner of the cut piece, and 3 mm of bleed lie outside it.
#pragma once

#include <array>

#include "pen.h"

namespace art {

inline constexpr double kBleed = 3;
inline constexpr double kSafe = 6;  // from every cut and fold, as far as nothing that matters stands

struct Face {
    double width, height;  // cut
    Box canvas() const { return {-kBleed, -kBleed, width + 2 * kBleed, height + 2 * kBleed}; }
};

// The larger of what the templates make of millimetres and of inches, rounded up to half a millimetre.
inline constexpr Face kPocketFace{251, 121};
inline constexpr Face kStripFace{251, 64};
inline constexpr Face kTagFace{75, 105};
inline constexpr Face kEnvelopeFace{130.5, 92.5};
inline constexpr Face kFlapFace{130.5, 45};
inline constexpr Face kBackFace{130.5, 62};
inline constexpr Face kSideFace{22.5, 92.5};

using Panels = std::array<Box, 3>;

constexpr Panels across(double left, double middle, double right, double height) {
    return {Box{0, 0, left, height}, Box{left, 0, middle, height}, Box{left + middle, 0, right, height}};
}

// The panel that is folded in first is the narrower one: on the right when one looks at the outside, on the left when
// one looks at the inside and at the pockets.
inline constexpr Panels kOutside = across(84.2, 84.2, 82.6, kPocketFace.height);
inline constexpr Panels kPocketFronts = across(82.6, 84.2, 84.2, kStripFace.height);

using Draw = void (*)(Pen&);

// By kind of keepsake: lights, charts, moons, shells, knots, letters.
inline constexpr int kKinds = 6;
extern const std::array<Draw, kKinds> kPocketOutsides;
extern const std::array<Draw, kKinds> kPocketStrips;
extern const std::array<Draw, kKinds> kTagFronts;
void pocket_inside(Pen& pen);  // one calm pattern
void tag_back(Pen& pen, int kind);
void envelope_front(Pen& pen, int kind);  // 0, 1
void envelope_flap(Pen& pen, int kind);
void envelope_back(Pen& pen, int kind);
void envelope_side(Pen& pen, int kind);  // for both of them

}  // namespace art
