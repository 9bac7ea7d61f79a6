// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"
#include "base/edition.h"
#include "base/finding.h"
#include "base/geometry.h"
#include "base/source.h"
#include "kit/journal_template.h"
#include "kit/part_template.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace qw::kit {

/// printers.yaml: margins in 1/100 mm (IPP media-*-margin), sheet in portrait, single-sided and duplex apart.
struct Printer {
    std::string name, title;
    Margins single, duplex;
};

/// stocks.yaml. Caliper is given, or follows from grammage and bulk: mm = cm³/g · g/m² / 1000 (ISO 534).
struct Stock {
    std::string name, title;
    enum class Kind { paper, board } kind = Kind::paper;
    double grammage = 0;          ///< g/m²
    Length caliper;               ///< > 0
    std::string grade;            ///< US grade whose basic size gives the pounds: bond, text, cover, index; empty for board
    bool printed = false;         ///< board only: one side is printed (a cereal box), which shows through thin paper
};

/// boards.yaml: a sheet of board as people have it.
struct Board {
    std::string name, title;
    Size size;                    ///< width × height
    std::string grain;            ///< "height", "width", or "unknown": the buyer has to find it, both ways are allowed
};

/// How long a text may be, in characters or in bytes of UTF-8.
struct TextLimit {
    int most = 0;
    bool in_bytes = false;
    std::string text() const { return std::to_string(most) + (in_bytes ? " bytes" : " characters"); }
};
/// A sentence that a listing text has to have in some wording.
struct Statement {
    std::string name;
    std::vector<std::string> any_of;  ///< wordings, one of which is enough; capitals do not count
    std::string why;
};
/// shops.yaml: what a shop's delivery and its texts accept. Nothing: no limit.
struct Shop {
    std::string name, title;
    std::optional<int> most_files;
    std::optional<std::uint64_t> most_bytes_a_file;
    std::optional<TextLimit> longest_text, longest_title;
    std::vector<Statement> statements;
};

/// fonts.yaml: a family that the generated sheets are set in, and what allows it to be sold with them.
struct FontData {
    std::string name, title;
    std::vector<std::string> cuts;    ///< PostScript names
    std::string made_by, allowed_by;
};

/// studio.yaml: who sells.
struct Studio {
    std::string name, line, terms_file;
};

/// A number that a rule measures with, beside its limit: what counts as an edge, how wide a band is.
struct CheckNumber {
    double is = 0;
    std::string unit;
};
/// checks.yaml: one rule's level and limit, why it is there and where the limit comes from.
struct CheckSetting {
    std::string rule;
    Level level = Level::error;
    std::optional<double> limit;  ///< in `unit`
    std::string unit;             ///< "ppi", "mm", "%" …, empty
    std::map<std::string, CheckNumber> with;  ///< by a plain name: "edge" is 24 "levels of 255"; a kit does not set them otherwise
    std::string checks, why, source;  ///< sentences for `quirewright rule`
    SourceMark mark;
};

/// materials.yaml: what the journals' templates name by a key, and what has to be said about it.
struct Tool {
    std::string name, title, use;         ///< "craft-knife", "Craft knife", "for the board"
    std::vector<std::string> cautions;    ///< keys of cautions
    std::optional<Length> reach = {};     ///< of a punch: how far from an edge it makes a hole
    std::string instead = {};             ///< the tool for what it does not reach; empty where it has no reach
};
struct Material {
    std::string name, title, use;         ///< "elastic-1mm", "Round elastic, about 1 mm", "for sewing"
    enum class Group { paper, board, sewing, glueing, other } group = Group::other;  ///< where it stands on the list
    double allowance = 0;                 ///< what is bought beyond what is cut: 0.1 is a tenth more; stated on the list
    std::vector<std::string> cautions;
};
struct Caution {
    std::string name, text;               ///< whole sentences for the buyer
    bool always = false;                  ///< shown whatever the list holds: makers' instructions come first
};

/// A file that was read, for release.json.
struct InputFile {
    std::string shown;  ///< "pipeline/printers.yaml", "kit/kit.yaml"
    std::string sha256;
};

/// All shared data under pipeline/, read once. Names are unique.
struct Pipeline {
    Path folder;
    std::vector<Paper> papers;
    std::vector<Printer> printers;
    Size borderless_enlargement;          ///< printers.yaml: how much wider and higher than the paper, in portrait, borderless drivers print
    std::vector<Stock> stocks;
    std::vector<Board> boards;
    std::map<UnitSystem, std::vector<std::string>> usual_boards;  ///< for a kit that lists none, by the paper's ruler; never empty
    std::map<std::string, std::vector<int>> sold_weights;         ///< stocks.yaml, `on-the-shelf`: pounds of each grade that shops sell, ascending
    std::vector<Shop> shops;
    std::vector<FontData> fonts;
    std::vector<CheckSetting> checks;
    std::vector<Tool> tools;
    std::vector<Material> materials;
    std::vector<Caution> cautions;        ///< in the order in which they are shown
    Studio studio;
    std::map<std::string, JournalTemplate> journals;  ///< pipeline/journals/*.yaml by name
    std::map<std::string, PartTemplate> parts;        ///< pipeline/parts/*.yaml by name
    std::vector<Thing> things;            ///< things.yaml
    PartRules part_rules;                 ///< part-sheets.yaml
    std::map<std::string, std::string> texts;         ///< pipeline/texts/* by file name, raw; and studio.terms_file
    /// What a manifest that says nothing gets: "printer", "board-stock" and, for its stock, each role's name.
    std::map<std::string, Sourced<std::string>> usual;
    std::vector<InputFile> inputs;

    const Printer* printer(const std::string& name) const;
    const Stock* stock(const std::string& name) const;
    const Board* board(const std::string& name) const;
    const Shop* shop(const std::string& name) const;
    const Thing* thing(const std::string& name) const;
    const FontData* font(const std::string& cut) const;  ///< by PostScript name
    const CheckSetting* check(const std::string& rule) const;
};

}  // namespace qw::kit
