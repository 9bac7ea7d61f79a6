// SPDX-License-Identifier: GPL-3.0-or-later
// Things found on the strand line, drawn as a naturalist would.
#pragma once

#include "pen.h"

namespace art {

// Each about two units of size tall, centred on the point.
void scallop(Pen& pen, Point at, double size, Colour fill, Colour ink);
void whelk(Pen& pen, Point at, double size, Colour fill, Colour ink);
void limpet(Pen& pen, Point at, double size, Colour fill, Colour ink);
void auger_shell(Pen& pen, Point at, double size, Colour fill, Colour ink);
void mussel(Pen& pen, Point at, double size, Colour fill, Colour ink);
void starfish(Pen& pen, Point at, double size, Colour fill, Colour ink);
void urchin(Pen& pen, Point at, double size, Colour fill, Colour ink);
void razor(Pen& pen, Point at, double size, Colour fill, Colour ink);
void weed(Pen& pen, Point at, double size, Colour fill, Colour ink);

}  // namespace art
