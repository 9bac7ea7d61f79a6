// SPDX-License-Identifier: GPL-3.0-or-later
// The canvas of every sheet and the two book pages that it folds into. The canvas covers landscape
// letter (279.4 x 215.9 mm) and landscape A4 (297 x 210 mm), both centred, with 3 mm of bleed.
#pragma once

#include "geometry.h"

namespace art {

inline constexpr double kCanvasWidth = 303.0;
inline constexpr double kCanvasHeight = 221.9;
inline constexpr double kFold = kCanvasWidth / 2;
inline constexpr int kPixelsPerMetre = 11811;
inline constexpr double kPixelsPerMillimetre = 300.0 / 25.4;

inline constexpr Box kCanvas{0, 0, kCanvasWidth, kCanvasHeight};

// Type areas: 10.5 mm from the fold, 12 mm from the nearest fore-edge and head that either paper
// gives, so that a page looks centred on both.
inline constexpr Box kLeft{24, 18, 117, 186};
inline constexpr Box kRight{162, 18, 117, 186};

}  // namespace art
