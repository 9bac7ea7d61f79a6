// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/manifest.h"
#include "kit/pipeline.h"

#include <vector>

namespace qw::compose {

/// What a gauge that the buyer printed may read, and what her printer may have done to make it so. A gauge is a line of
/// known length on a sheet that is printed in the same way as the pages; its length on paper tells the printed size.

/// The gauge, along the sheet's long side: 200 mm on metric papers and 8 in on US ones, half of it where that is too long.
Length gauge_length(const Paper& paper);
/// What a gauge printed at `percent` measures, to the nearest mark that a ruler is read to.
Length gauge_reading(const Paper& paper, double percent);

/// To what a ruler is read: 0.5 mm, half of its marks, and 1/16 in, its smallest.
Length ruler_mark(UnitSystem ruler);
/// Whether a ruler cannot tell two lengths apart: no more than one `ruler_mark` lies between them.
bool read_alike(Length a, Length b, UnitSystem ruler);

/// The scale at which a sheet made for `made` is printed when it is fitted into what a printer leaves of another or the
/// same paper: `onto` with margins of zero is its whole sheet. As base/edition.h centres it.
double fitted_scale(const Paper& made, const Edition& onto);

/// One thing that a printer may have done.
struct PrintCause {
    enum class Kind {
        as_made,   ///< nothing: printed at 100 %
        fitted,    ///< fitted into what `printer` prints of the paper
        whole,     ///< fitted to a whole sheet of another paper
        enlarged   ///< made larger, up to `scale`, so that nothing stays white at the edges
    } kind = Kind::as_made;
    Paper in_printer;                       ///< the paper that lies in the printer
    const kit::Printer* printer = nullptr;  ///< only when it was fitted
    kit::Sides sides = kit::Sides::single;  ///< whose margins it was fitted into
    bool centred = false;                   ///< kept in the middle of the sheet where opposite margins differ, which costs the larger one twice
    double scale = 1;                       ///< printed ÷ made
};

/// Everything that the printers and papers of the data can do to a sheet made for `paper`, largest first: as it is;
/// fitted to what every printer prints of this and every other paper, single-sided and duplex, in the middle of that or
/// of the sheet; fitted to the whole of every other paper; enlarged for borderless printing. Points into `pipeline`.
std::vector<PrintCause> possible_causes(const kit::Pipeline& pipeline, const Paper& paper);

/// Causes that a ruler cannot tell apart. All are possible.
struct PrintReading {
    Length least, most;                     ///< of the gauge, exact
    std::vector<PrintCause> causes;         ///< largest scale first; never empty

    bool asks_for_paper() const;            ///< the causes differ in what lies in the printer
};

/// The causes by what `paper`'s gauge reads, largest first: neighbours join, the nearest first, as long as all of a
/// reading read alike. Enlargement is a reading by itself, from the gauge's length up.
std::vector<PrintReading> possible_readings(const kit::Pipeline& pipeline, const Paper& paper);

}  // namespace qw::compose
