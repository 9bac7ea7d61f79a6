// SPDX-License-Identifier: GPL-3.0-or-later
// Two sheets of pieces to cut out.
#pragma once

#include "pen.h"

namespace art {

void label_sheet(Pen& pen);  // labels, seals, tags, tickets; nothing is painted between them
void card_sheet(Pen& pen);   // chart cards, light cards, strips

}  // namespace art
