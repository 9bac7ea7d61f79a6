// SPDX-License-Identifier: GPL-3.0-or-later
// What the faces of the folded pieces have in common.
#pragma once

#include <string>

#include "chart.h"
#include "lettering.h"
#include "parts.h"

namespace art {

inline constexpr Colour kHaze = mix(kInkPale, kWhite, 0.35);

// A tone over the whole face and its bleed.
void flood(Pen& pen, const Face& face, Colour colour);
// A title with a note below it, and a small wave under both. Returns where the wave lies.
double heading(Pen& pen, Point middle, const std::string& title, const std::string& note, double points = 24);
// A paper label with a double edge.
void paper_label(Pen& pen, const Box& box);
void caption(Pen& pen, Point middle, const std::string& text, double points = 9);
// Water from `top` to beyond the foot of the face.
void water(Pen& pen, const Face& face, double top, int rows, Colour far, Colour near, unsigned seed);
// An invented chart over the whole face; `from` is what lies at the face's corner, and soundings keep out of the boxes.
void sea_chart(Pen& pen, const Face& face, Point from, const ChartTone& tone, const std::vector<Box>& free,
               unsigned seed);
// Stars strewn over a box, none inside the boxes to be kept free.
void strewn_stars(Pen& pen, const Box& box, const std::vector<Box>& free, double gap, unsigned seed);
// A small picture for each kind, standing on the point and about 14 mm tall times scale.
void kind_motif(Pen& pen, Point foot, int kind, double scale, Colour paper);
// A postage stamp of our own: a boat or a shell, on a ground that shows at its edge.
void stamp(Pen& pen, const Box& box, int kind, const std::string& words, Colour ground);
// A round postmark.
void postmark(Pen& pen, Point centre, double radius, const std::string& above, const std::string& middle,
              const std::string& below);

}  // namespace art
