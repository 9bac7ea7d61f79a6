// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/clock.h"
#include "base/disk.h"
#include "base/edition.h"
#include "base/source.h"
#include "kit/journal_template.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace qw::kit {

enum class Role { journal_page, full_sheet, part, extra };
enum class Sides { single, duplex };
/// as_drawn: unscaled, centred, what exceeds the paper is lost; cover, contain: as CSS object-fit (CSS Images 3, 5.5).
enum class Place { as_drawn, cover, contain };
/// Whether bordered pages are cut to the picture or keep their white border; changes every piece of the journal.
enum class Borders { trimmed, kept };

std::string name_of(Role role);      ///< "journal-page", as in manifests and release.json
bool is_role(const std::string& name);
std::string name_of(Place place);

/// A file of artwork: where it is, and how the designer knows it.
struct ArtworkFile {
    Path path;          ///< absolute, links resolved, inside the kit
    std::string shown;  ///< relative to the kit, forward slashes
    SourceMark mark;    ///< of the pattern that matched it
};

/// Where artwork or a font comes from, and what allows it to be sold. The studio's own words: nobody here judges them.
struct Rights {
    std::string made_by;                ///< "Wrack Line Paper Room", never empty
    std::string allowed_by;             ///< "own work", "contract of 12 May 2026", "SIL Open Font License 1.1"; never empty
    std::optional<Date> since;
    std::string text() const;           ///< "made by …; own work; since 2026-03-01"
};

/// What a back carries that has no artwork of its own: of an odd last sheet, or of parts with fewer backs than fronts.
struct LastBack {
    std::optional<ArtworkFile> file;    ///< nothing: it stays blank
    SourceMark mark;
};

/// Sheets of one role. Lengths are at drawn size.
struct Set {
    std::string name;                   ///< the key in the manifest
    SourceMark mark;
    Role role = Role::extra;
    std::vector<ArtworkFile> files;     ///< natural order within each pattern, patterns in the order written; never empty but for parts (see faces)
    Sides sides = Sides::single;
    std::optional<LastBack> last_back;  ///< duplex only
    std::optional<Size> drawn_at;       ///< default: pixels and the file's own density, or the PDF's page
    Length bleed = Length::mm(3);
    Length safe_area = Length::mm(6);
    Place place = Place::as_drawn;
    Sourced<std::string> stock;         ///< a name in stocks.yaml that is paper
    std::optional<double> print_at;     ///< fraction (1 = 100 %), 0.30 … 1.03; nothing: with the pages
    int glued_in = 0;                   ///< parts and extras: how many of the set's pieces are glued into the journal
    std::optional<Length> filled;       ///< how thick one of them is when it is filled; nothing: the stock's caliper
    // Parts only. Their place is `cover` unless it is written: a picture covers its panels and their bleed.
    Sourced<std::string> part;          ///< a template in pipeline/parts/
    /// By the template's faces. The one with most files says how many parts there are; a face with one file serves all;
    /// one with fewer needs `last-back` for the rest.
    std::map<std::string, std::vector<ArtworkFile>> faces;
    int copies = 1;                     ///< how often each part is printed
    Sourced<std::string> goes_in;       ///< another set, or empty
    std::string pocket;                 ///< which pocket of it: `goes-in: pockets/middle`; empty: every one
    std::vector<Sourced<std::string>> holds;  ///< bought things that go into it, names in things.yaml
    Sourced<std::string> goes_on;       ///< what it is glued to: "page", a piece of the journal, or empty
    std::optional<Rights> rights;       ///< nothing: those of the kit
};

/// A rule's limit or level that this kit sets otherwise, with the reason that every report shows.
struct Override {
    std::string rule;
    SourceMark mark;
    std::optional<double> limit;
    std::optional<std::string> level;   ///< "note", "warning", "error", "off"
    std::string reason;                 ///< never empty
};

/// kit.yaml as typed values. Every name that refers to the pipeline has been looked up there; lists are not empty.
struct Manifest {
    Path folder;                        ///< absolute
    std::string kit;                    ///< a plain name
    std::string title;
    std::string version;                ///< semantic version 2.0.0, no build part
    Sourced<std::string> journal;
    std::vector<Paper> papers;
    std::vector<Print> prints;
    Sourced<std::string> shop;          ///< empty: no limits
    std::optional<Date> date;
    Sourced<std::string> printer;
    Sourced<std::string> board_stock;
    Sourced<std::string> spine_stock;   ///< of the spine piece; the board stock unless it is written
    std::vector<std::string> boards;    ///< sheets of board that buyers have, names in boards.yaml; empty: the usual ones of each paper's ruler
    std::map<std::string, Length> calipers;  ///< stocks whose thickness this kit knows better: `calipers: { card-160: 0.2 mm }`
    Choices choices;                    ///< `choices: { closing-band: none, sewing-elastic: waxed-twine }`; the template has been asked
    Borders borders = Borders::trimmed;
    std::vector<Set> sets;              ///< in the order written
    std::optional<Rights> rights;       ///< of all artwork whose set says nothing else
    std::map<std::string, Rights> fonts;  ///< of PDF artwork, by PostScript name without the subset's tag: "Vollkorn-Bold"
    std::vector<Override> overrides;    ///< key `rules`: { rule-name: { limit: 250, level: note, reason: "…" } }

    /// What the set says, else what the kit says; null: neither says anything.
    const Rights* rights_of(const Set& set) const { return set.rights ? &*set.rights : rights ? &*rights : nullptr; }
};

}  // namespace qw::kit
