// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/edition.h"
#include "base/finding.h"
#include "kit/journal_template.h"
#include "kit/pipeline.h"

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace qw::journal {

/// What the buyer printed and has; all that a template's formulas can see beside its own names.
struct Conditions {
    Paper paper;
    Print print = Print::borderless;
    double scale = 1;            ///< print scale of the pages (design: edition's scale × the buyer's percentage)
    Size page;                   ///< one book page as printed and trimmed (half a sheet): formula names page_width, page_height
    Size cover_sheet;            ///< a full sheet as printed and trimmed, portrait: cover_sheet_width, cover_sheet_height; zero: the kit has none
    int sheets = 0;              ///< duplex sheets of journal pages: sheets
    int full_sheets = 0;         ///< full_sheets
    kit::Stock page_stock;       ///< page_caliper, and page_grammage in g/m² as a plain number
    kit::Stock cover_stock;      ///< cover_caliper, cover_grammage
    kit::Stock board_stock;      ///< board_caliper, and board_printed: 1 when a side of it is printed, else 0
    kit::Stock spine_stock;      ///< spine_caliper
    Length glued_in;             ///< glued_in: thickness of all that is glued into the journal, filled
};

/// A length as computed and as people read it.
struct Shown {
    Length exact;                ///< in the paper's own unit system
    Length rounded;              ///< exact, rounded once by the template's rule for that system
    Length metric, us;           ///< the values shown in either system, each computed from the template's own lengths
};

struct Piece {
    const kit::PieceTemplate* of = nullptr;
    int count = 0;
    Shown width, height;
    std::string text(UnitSystem system) const;  ///< "153 x 216 mm", "6 x 8 9/16 in"
};

struct CutLength {
    const kit::LengthTemplate* of = nullptr;
    int count = 0;
    Shown length;
};

struct Item {
    const kit::ItemTemplate* of = nullptr;
    int count = 0;
};

/// A result that is neither cut nor bought: a length, or a whole number.
struct ToldFigure {
    const kit::FigureTemplate* of = nullptr;
    bool is_length = false;
    Shown length;                ///< when it is a length
    int number = 0;              ///< when it is none
    std::string text(UnitSystem system) const;  ///< "5.5 mm", "7/32 in", "4"
};

/// How the journal is sewn on this print.
struct Sewing {
    const kit::SewingTemplate* of = nullptr;
    int signatures = 0, rows = 0;
    Shown row_gap;               ///< to the nearest 0.5 mm or 1/16 in; zero with one row
    Length path;                 ///< the way of one signature's thread from station to station and round edges, without tails: stitch_path
};

/// Everything the measurements sheet says about one size. Points into the template that made it.
struct Measures {
    const kit::JournalTemplate* journal = nullptr;
    Conditions conditions;
    UnitSystem ruler = UnitSystem::metric;      ///< the paper's own
    std::vector<Piece> pieces;
    std::vector<Shown> page_stations, spine_stations;  ///< from the head
    std::vector<CutLength> lengths;
    std::vector<Item> items;
    std::vector<ToldFigure> figures;
    std::optional<Sewing> sewing;               ///< nothing: the journal is not sewn
    /// Named lengths, and values that are lengths, by the template's names: as they are after rounding, in the paper's
    /// own ruler. For drawings.
    std::map<std::string, Length> named;
    Length bulk;
    Length creep_least, creep_most;
    std::vector<const kit::StepTemplate*> steps;  ///< of the guide that stand at this size, in the template's order
    Findings findings;                          ///< checks that do not hold, before or after rounding; and what is wrong with any journal

    const Piece* piece(const std::string& name) const;
    const CutLength* length(const std::string& name) const;
    const ToldFigure* figure(const std::string& name) const;
    /// Zero when the template has no length of that name.
    Length named_length(const std::string& name) const;
};

class Formulas;

/// A template made ready to be computed for many sizes: its formulas are read once, which is most of the work. The
/// template must outlive it and the measures. Not for two threads at once.
class Calculation {
public:
    /// Throws Fault (not_understood) with every fault of the formulas as they are written: a cycle, an unknown name.
    explicit Calculation(const kit::JournalTemplate& journal);
    Calculation(Calculation&&) noexcept;
    ~Calculation();

    /// A result that is no length or no number where one is wanted (found by evaluating in several unit sizes), several
    /// results, infinity or a negative piece is a Fault (not_understood) with file, line and the formula.
    Measures at(const Conditions& conditions);

private:
    const kit::JournalTemplate& journal_;
    std::unique_ptr<Formulas> formulas_;
};

/// One size of a template: Calculation(journal).at(conditions).
Measures compute(const kit::JournalTemplate& journal, const Conditions& conditions);

}  // namespace qw::journal
