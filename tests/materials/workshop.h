// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "journal/example.h"
#include "materials/list.h"

#include <algorithm>

namespace qw::workshop {

using materials::Line;
using materials::List;

/// An invented book that has one of everything a list can hold, with sizes that can be added up by head.
class Book : public example::Template {
public:
    /// In millimetres and in inches, each native.
    struct Side {
        double mm, inches;
        kit::BothLengths both() const { return {Length::mm(mm), Length::inches(inches)}; }
    };

    Book() {
        made.title = "Book";
        made.tools = {"ruler", "knife"};
        add("board", "2", {150, 6}, {200, 8}, "board", "height", "one for each cover");
        made.pieces.back().glue = "pva";
        add("spine", "1", {15, 0.5}, {200, 8}, "spine", "height", "between the boards");
        add("liner", "2", {140, 5.5}, {190, 7.5}, "page", "height", "inside the boards");
        made.pieces.back().glue = "pva";
        add("cover-paper", "2", {180, 7}, {230, 9}, "cover", "height", "on the boards");
        add("tape", "1", {40, 1.5}, {450, 18}, "bought", "any", "joins the boards");
        made.pieces.back().material = "tape";
        made.pieces.back().instead = {{"paper-strip", "", "strip-paper", {"brush"}, "pasted on"}};
        add("corner", "4", {30, 1.25}, {30, 1.25}, "cover", "any", "on the outer corners");
        made.pieces.back().optional = true;
        made.pieces.back().tools = {"scissors"};

        lengths("sewing", "2", {378, 15}, "elastic", "sews a signature");
        made.cut_lengths.back().instead = {{"twine", "Waxed twine", "twine", {"needle"}, "knotted inside"}};
        lengths("band", "1", {323, 12.5}, "elastic", "goes round the book");
        made.cut_lengths.back().optional = true;

        item("eyelet", "3", "one for each hole");
        made.items.back().size = kit::BothLengths{Length::mm(3), Length::inches(0.125)};
        made.items.back().tools = {"setter", "hammer"};
        made.items.back().instead = {{"bare-holes", "Bare holes", "", {"awl"}, "pierced and left as they are"}};
        item("pva", "1", "for boards and liners");
        made.items.back().tools = {"brush"};
        made.items.back().instead = {{"wheat-paste", "Wheat paste", "paste", {"brush"}, ""}};
        item("bead", "1", "on the band");
        made.items.back().optional = true;
        sewn({"page_height / 4", "page_height / 2"}, {1, 2});
        made.sewing->signatures = formula("2");
    }

    void add(const std::string& name, const std::string& count, Side width, Side height, const std::string& stock,
             const std::string& grain, const std::string& use) {
        length(name + "-width", width.both().metric, width.both().us);
        length(name + "-height", height.both().metric, height.both().us);
        piece(name, count, under(name) + "_width", under(name) + "_height");
        kit::PieceTemplate& piece = made.pieces.back();
        piece.title = titled(name);
        piece.stock = stock;
        piece.grain = grain;
        piece.use = use;
        piece.mark = {made.file, 90, 3};
    }
    void lengths(const std::string& name, const std::string& count, Side cut, const std::string& material, const std::string& use) {
        length(name + "-length", cut.both().metric, cut.both().us);
        kit::LengthTemplate one;
        one.name = name;
        one.title = titled(name);
        one.count = formula(count);
        one.length = formula(under(name) + "_length");
        one.material = material;
        one.use = use;
        one.mark = {made.file, 91, 3};
        made.cut_lengths.push_back(one);
    }
    void item(const std::string& name, const std::string& count, const std::string& use) {
        kit::ItemTemplate one;
        one.name = name;
        one.title = titled(name);
        one.count = formula(count);
        one.use = use;
        one.mark = {made.file, 92, 3};
        made.items.push_back(one);
    }
    kit::PieceTemplate& piece_named(const std::string& name) { return named(made.pieces, name); }
    kit::LengthTemplate& length_named(const std::string& name) { return named(made.cut_lengths, name); }
    kit::ItemTemplate& item_named(const std::string& name) { return named(made.items, name); }

private:
    template <typename Things>
    static typename Things::value_type& named(Things& things, const std::string& name) {
        return *std::find_if(things.begin(), things.end(), [&](const auto& one) { return one.name == name; });
    }
    static std::string under(std::string name) {
        std::replace(name.begin(), name.end(), '-', '_');
        return name;
    }
    static std::string titled(std::string name) {
        std::replace(name.begin(), name.end(), '-', ' ');
        name[0] = static_cast<char>(name[0] - 'a' + 'A');
        return name;
    }
};

/// What the book's template names: tools, materials, cautions, boards and what is sold.
inline kit::Pipeline shelves() {
    using Group = kit::Material::Group;
    kit::Pipeline p;
    for (const char* name : {"ruler", "knife", "brush", "scissors", "needle", "setter", "hammer", "awl"})
        p.tools.push_back({name, std::string("The ") + name, "to work with", {}});
    p.tools[1].cautions = {"blades"};
    p.tools[5].cautions = {"blows"};
    p.tools[7].cautions = {"points"};
    p.materials = {{"tape", "Cloth tape", "", Group::glueing, 0.1, {}},      {"strip-paper", "Strong paper", "", Group::paper, 0, {}},
                   {"elastic", "Round elastic", "", Group::sewing, 0.1, {"loops"}}, {"twine", "Twine", "", Group::sewing, 0.2, {"tangles"}},
                   {"eyelet", "Eyelets", "", Group::other, 0.2, {"small"}},  {"pva", "PVA glue", "", Group::glueing, 0, {"fumes"}},
                   {"paste", "Paste", "", Group::glueing, 0, {"mould"}}};
    for (const char* name : {"makers", "blades", "points", "blows", "loops", "tangles", "small", "fumes", "mould", "never"})
        p.cautions.push_back({name, "Take care.", false});
    p.cautions[0].always = true;
    p.boards = {{"a3", "A3 greyboard", {Length::mm(297), Length::mm(420)}, "height"}, {"box", "Side of a box", {Length::mm(190), Length::mm(280)}, "unknown"}};
    p.sold_weights = {{"bond", {20, 28}}};
    p.stocks = {{"copy-100", "Paper, 100 g/m²", kit::Stock::Kind::paper, 100, Length::mm(0.125), "bond", false},
                {"copy-80", "Paper, 80 g/m²", kit::Stock::Kind::paper, 80, Length::mm(0.102), "bond", false}};
    return p;
}

inline kit::Set set(const std::string& name, kit::Role role, std::size_t files, const std::string& stock, kit::Sides sides = kit::Sides::single) {
    kit::Set s;
    s.name = name;
    s.role = role;
    s.files.resize(files);
    s.sides = sides;
    s.stock.value = stock;
    return s;
}

/// 24 faces on 12 sheets, 5 full sheets, 2 sheets of extras.
inline kit::Manifest almanac() {
    kit::Manifest m;
    m.journal.value = "example";
    m.sets = {set("journal-pages", kit::Role::journal_page, 24, "copy-100", kit::Sides::duplex),
              set("full-sheets", kit::Role::full_sheet, 5, "copy-80"), set("extras", kit::Role::extra, 2, "copy-100")};
    return m;
}

/// A list and what it was counted from, which it points into.
class Counted {
public:
    explicit Counted(kit::JournalTemplate journal, journal::Conditions conditions = example::conditions(example::a4()), kit::Manifest kit = almanac(),
                     kit::Pipeline shelf = shelves(), const materials::SheetsOfSets& sheets = {}, const std::vector<materials::BoardsNeeded>& boards = {})
        : template_(std::move(journal)), measures(journal::compute(template_, conditions)), list(materials::count(kit, shelf, measures, sheets, boards)) {}
    Counted(const Counted&) = delete;

    const Line& line(const std::string& name) const {
        for (const Line& one : list.lines)
            if (one.name == name) return one;
        FAIL("no line " + name);
        return list.lines.front();
    }
    bool has(const std::string& name) const {
        return std::any_of(list.lines.begin(), list.lines.end(), [&](const Line& l) { return l.name == name; });
    }
    /// "ruler; setter only for eyelets"
    std::string tools() const {
        std::string all;
        for (const materials::ToolLine& tool : list.tools)
            all += (all.empty() ? "" : "; ") + tool.tool.name + (tool.only_for.empty() ? "" : " only for " + tool.only_for);
        return all;
    }
    std::string cautions() const {
        std::string all;
        for (const kit::Caution& caution : list.cautions) all += (all.empty() ? "" : " ") + caution.name;
        return all;
    }

private:
    kit::JournalTemplate template_;

public:
    const journal::Measures measures;
    const List list;
};

}  // namespace qw::workshop
