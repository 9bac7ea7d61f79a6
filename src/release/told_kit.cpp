// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/told_kit.h"

#include "base/words.h"
#include "kit/stock_of.h"
#include "materials/list.h"
#include "parts/told.h"
#include "release/part_plans.h"
#include "release/plan_parts.h"
#include "release/told_names.h"
#include "texts/plain_line.h"

#include <algorithm>
#include <cctype>
#include <deque>
#include <regex>

namespace qw::release {

namespace {

using checks::SizeTold;
using checks::StockTold;
using checks::ThingTold;

/// A closed book is told by its pages, by its boards, or by what it measures over the spine: that much is between them.
const Length over_the_spine = Length::mm(10);

template <typename T>
void add_new(std::vector<T>& list, const T& value) {
    if (std::find(list.begin(), list.end(), value) == list.end()) list.push_back(value);
}

class KitTeller {
public:
    explicit KitTeller(const Prepared& prepared)
        : prepared_(prepared), kit_(prepared.kit), manifest_(kit_.manifest), pipeline_(*kit_.pipeline), counts_(counts_of(prepared.looked)) {
        counts_.filled = filled_parts(kit_, counts_);
        journal::Calculation calculation(*kit_.journal);
        for (const Paper& paper : manifest_.papers) {
            for (const Print print : manifest_.prints) {
                measures_.push_back(calculation.at(conditions_of(manifest_, pipeline_, *kit_.printer, counts_, paper, print, 100)));
                sized_.emplace_back(kit_, counts_, paper, print, 100);
            }
        }
    }

    checks::KitTold tell() {
        told_.version = manifest_.version;
        for (const Paper& paper : manifest_.papers) told_.papers.push_back(paper.short_name);
        for (const Print print : manifest_.prints) told_.prints.push_back(name_of(print));
        sheets();
        pages();
        for (const kit::Set& set : manifest_.sets) set_of(set);
        pieces();
        journal();
        papers();
        absent();
        bought();
        stocks();
        return std::move(told_);
    }

private:
    StockTold told(const std::string& name) const {
        const kit::Stock stock = kit::stock_of(manifest_, pipeline_, name);
        return {stock.title, stock.grammage, 0,
                stock.kind == kit::Stock::Kind::paper ? materials::weight_text(stock, pipeline_)
                                                      : phrase_of(stock.title) + " of " + weight(stock.grammage)};
    }
    static std::string weight(double grammage) { return std::to_string(static_cast<int>(grammage + 0.5)) + " g/m²"; }

    /// Pages of all files of a set, by paper and print: a sheet has one or two.
    std::vector<int> sheets_of(const std::string& set) const {
        std::vector<int> sheets;
        for (const PlannedFile& file : prepared_.plan.files) {
            if (file.set != set) continue;
            const int pages = static_cast<int>(file.document.pages.size());
            add_new(sheets, file.document.duplex == compose::Duplex::simplex ? pages : (pages + 1) / 2);
        }
        return sheets;
    }

    /// "Sheets" by themselves may be those of a set, of a stock, or all that is printed of one edition.
    void sheets() {
        ThingTold all{"sheets", {"sheet", "printable sheet", "sheet of paper"}};
        for (const Paper& paper : manifest_.papers) {
            for (const Print print : manifest_.prints) {
                std::map<std::string, int> of_stock;
                int sum = 0, generated = 0;
                for (const PlannedFile& file : prepared_.plan.files) {
                    if (file.paper.name != paper.name || (file.print && *file.print != print)) continue;
                    const int pages = static_cast<int>(file.document.pages.size()),
                              count = file.document.duplex == compose::Duplex::simplex ? pages : (pages + 1) / 2;
                    const auto set = std::find_if(manifest_.sets.begin(), manifest_.sets.end(), [&](const kit::Set& one) { return one.name == file.set; });
                    if (set == manifest_.sets.end()) {
                        generated += count;
                        continue;
                    }
                    sum += count;
                    add_new(all.counts, count);
                    of_stock[*set->stock] += count;
                }
                for (const auto& [stock, count] : of_stock) add_new(all.counts, count);
                for (const int count : {sum, generated, sum + generated}) add_new(all.counts, count);
            }
        }
        for (const journal::Measures& measures : measures_)
            for (const journal::ToldFigure& figure : measures.figures)
                if (!figure.is_length) add_new(all.counts, figure.number);
        told_.things.push_back(std::move(all));
    }

    int faces() const {
        int faces = 0;
        for (const LookedSet& set : prepared_.looked)
            if (set.set->role == kit::Role::journal_page) faces += static_cast<int>(set.faces.size());
        return faces;
    }

    /// A journal page is one printed face; a duplex sheet has two, and each folds into two book pages.
    void pages() {
        const int sheets = counts_.journal_sheets;
        if (sheets == 0) return;
        ThingTold printed{"journal pages", {"journal page", "printed page", "printable page", "printed face", "face", "artwork page"}, {}, {faces()}};
        ThingTold plain{"pages", {"page", "inside page", "inner page"}, {}, {faces(), 4 * sheets}};
        ThingTold book{"book pages", {"book page", "writing page", "page to write on"}, {}, {4 * sheets}};
        ThingTold leaves{"leaves", {"leaf", "leaves"}, {}, {2 * sheets}};
        ThingTold both{"journal sheets",
                       {"journal sheet", "page sheet", "duplex sheet", "double sided sheet", "sheet of journal page", "sheet of page",
                        "double sided journal sheet"},
                       {},
                       {sheets}};
        ThingTold double_sided{"double-sided pages", {"double sided page", "double sided journal page"}, {}, {sheets, faces()}};
        std::vector<StockTold> stocks;
        for (const kit::Set& set : manifest_.sets)
            if (set.role == kit::Role::journal_page) stocks.push_back(told(*set.stock));
        for (ThingTold* thing : {&printed, &plain, &book, &both, &double_sided}) thing->stocks = stocks;
        for (const journal::Measures& measures : measures_) {
            const Size page = measures.conditions.page, sheet = measures.conditions.paper.size;
            for (ThingTold* thing : {&printed, &plain, &book}) thing->sizes.push_back({page, page});
            for (ThingTold* thing : {&printed, &plain}) thing->sizes.push_back({sheet, sheet});
        }
        for (ThingTold* thing : {&printed, &plain, &book, &leaves, &both, &double_sided}) told_.things.push_back(std::move(*thing));
    }

    void set_of(const kit::Set& set) {
        const std::string name = phrase_of(set.name);
        ThingTold thing{spaced_name(set.name), {name}};
        thing.stocks = {told(*set.stock)};
        ThingTold printed{"sheets of " + spaced_name(set.name), {name + " sheet", "sheet of " + name}, {}, sheets_of(set.name)};
        switch (set.role) {
            case kit::Role::journal_page: return;
            case kit::Role::full_sheet:
                for (const char* other : {"full sheet", "full page sheet", "cover sheet", "cover paper sheet", "sheet of cover paper"})
                    add_new<std::string>(thing.phrases, other);
                thing.counts = {counts_.full_sheets};
                told_.things.push_back({"cover paper", {"cover paper", "cover"}, {}, {}, {}, thing.stocks});
                break;
            case kit::Role::extra:
                // How many pieces are on a sheet of extras nobody has told.
                for (const char* other : {"extra sheet", "sheet of extra", "sheet of extra piece"}) add_new<std::string>(printed.phrases, other);
                break;
            case kit::Role::part: part(set, thing); break;
        }
        told_.things.push_back(std::move(thing));
        if (!printed.counts.empty()) told_.things.push_back(std::move(printed));
    }

    /// By the set's name, its template's title, and that title's last word; pockets of parts may be counted too.
    void part(const kit::Set& set, ThingTold& thing) {
        const kit::PartTemplate& made = pipeline_.parts.at(*set.part);
        const std::string title = phrase_of(made.title);
        add_new(thing.phrases, title);
        add_new(thing.phrases, title.substr(title.find_last_of(' ') + 1));
        const int count = counts_.parts.at(set.name);
        thing.counts = {count};
        if (!made.pockets.empty() && title.ends_with("pocket"))
            for (const int more : {static_cast<int>(made.pockets.size()), count * static_cast<int>(made.pockets.size())}) add_new(thing.counts, more);
        if (set.copies > 1) add_new(thing.counts, count / set.copies);
        if (set.glued_in > 0) add_new(thing.counts, set.glued_in);
        for (const SizedParts& sized : sized_) {
            const SizedPart* part = sized.of(set.name);
            if (!part) continue;
            const parts::ToldPart told_part = parts::told(part->net, part->folded, set.name, count);
            for (const Size size : {told_part.flat, told_part.folded}) thing.sizes.push_back({size, size});
        }
    }

    static std::vector<Size> sizes_of(const journal::Piece& piece) {
        return {{piece.width.exact, piece.height.exact}, {piece.width.metric, piece.height.metric}, {piece.width.us, piece.height.us}};
    }
    void pieces() {
        std::map<std::string, ThingTold> pieces;
        for (const journal::Measures& measures : measures_) {
            for (const journal::Piece& piece : measures.pieces) {
                ThingTold& thing = pieces[piece.of->name];
                thing.title = texts::plain_line(piece.of->title);
                thing.phrases = {phrase_of(piece.of->title)};
                if (piece.of->name == "board") thing.phrases.insert(thing.phrases.end(), {"cover board", "book board"});
                add_new(thing.counts, piece.count);
                for (const Size size : sizes_of(piece)) thing.sizes.push_back({size, size});
                if (piece.of->stock == "board") thing.stocks = {told(*manifest_.board_stock)};
                if (piece.of->stock == "spine") thing.stocks = {told(*manifest_.spine_stock)};
            }
        }
        for (auto& [name, thing] : pieces) told_.things.push_back(std::move(thing));
    }

    void journal() {
        ThingTold closed{"closed journal", {"journal", "notebook", "book", "closed size", "finished size", "closed journal", "finished journal"}};
        ThingTold signatures{"signatures", {"signature"}}, stations{"stations", {"station", "sewing station"}};
        for (const journal::Measures& measures : measures_) {
            const Size page = measures.conditions.page;
            const journal::Piece* board = measures.piece("board");
            const Length around = Length::mm(4);  // own limit: what a soft cover stands over
            Size most{page.width + around, page.height + around};
            if (board) most = {max(board->width.metric, board->width.us) + over_the_spine + measures.bulk, max(board->height.metric, board->height.us)};
            closed.sizes.push_back({page, most});
            if (measures.sewing) add_new(signatures.counts, measures.sewing->signatures);
            for (const auto* all : {&measures.page_stations, &measures.spine_stations})
                if (!all->empty()) add_new(stations.counts, static_cast<int>(all->size()));
        }
        told_.things.push_back(std::move(closed));
        for (ThingTold* thing : {&signatures, &stations})
            if (!thing->counts.empty()) told_.things.push_back(std::move(*thing));
    }

    void papers() {
        for (const Paper& paper : manifest_.papers)
            told_.things.push_back({paper.title,
                                    {texts::plain_line(paper.short_name), "paper", "sheet", "us " + paper.short_name, paper.short_name + " paper",
                                     paper.short_name + " size"},
                                    {},
                                    {},
                                    {{paper.size, paper.size}}});
        told_.things.push_back({"papers", {"paper size", "paper format", "page size"}, {}, {static_cast<int>(manifest_.papers.size())}});
    }

    /// Parts that the pipeline knows and the kit does not have, under names that no part of the kit goes by.
    void absent() {
        std::vector<std::string> own;
        for (const ThingTold& thing : told_.things) own.insert(own.end(), thing.phrases.begin(), thing.phrases.end());
        for (const auto& [name, made] : pipeline_.parts) {
            const std::string title = phrase_of(made.title);
            ThingTold thing{texts::plain_line(made.title), {}, {}, {0}};
            for (const std::string& phrase : {title, title.substr(title.find_last_of(' ') + 1)})
                if (std::find(own.begin(), own.end(), phrase) == own.end()) add_new(thing.phrases, phrase);
            if (!thing.phrases.empty()) told_.things.push_back(std::move(thing));
        }
    }

    void bought() {
        std::vector<materials::PartsMade> parts;
        for (const SizedPart& part : sized_.front().all()) parts.push_back({part.set, part.count, &part.net, &part.folded});
        const materials::List list = materials::count(manifest_, pipeline_, measures_.front(), counts_.of_set, {}, parts);
        for (const kit::Tool& tool : pipeline_.tools) {
            const auto found = std::find_if(list.tools.begin(), list.tools.end(), [&](const materials::ToolLine& line) { return line.tool.name == tool.name; });
            const bool there = found != list.tools.end();
            to_buy(tool.title, tool.name, there, there && found->only_for.empty(), !tool.cautions.empty());
        }
        for (const kit::Material& material : pipeline_.materials) {
            bool there = false, must = false;
            for (const materials::Line& line : list.lines) {
                const bool own = line.name == material.name;
                there = there || own || std::any_of(line.instead.begin(), line.instead.end(), [&](const materials::OtherWay& way) {
                            return way.title == material.title || way.name == material.name;
                        });
                must = must || (own && !line.optional && line.instead.empty());
            }
            to_buy(material.title, material.name, there, must, !material.cautions.empty());
        }
    }
    void to_buy(const std::string& title, const std::string& key, bool needed, bool must, bool cautioned) {
        ThingTold thing{title, names_of_bought(title, key)};
        thing.loose = loose_names(thing.phrases);
        // "paper weight: 120 g/m²" asks for no heavy book.
        if (const auto weight = std::find(thing.phrases.begin(), thing.phrases.end(), "weight"); weight != thing.phrases.end()) {
            thing.loose.push_back(*weight);
            thing.phrases.erase(weight);
        }
        thing.to_buy = true;
        thing.needed = needed;
        thing.must = must;
        thing.cautioned = cautioned;
        static const std::regex range(R"((\w+ paper) of (\d+) to (\d+) g/m)");
        std::smatch said;
        if (std::regex_search(title, said, range)) {
            thing.stocks = {{title, std::stod(said[2]), std::stod(said[3]), title}};
            thing.phrases.push_back(texts::plain_line(said[1]));
        }
        told_.things.push_back(std::move(thing));
    }

    /// What a grammage may mean that names no thing: whatever the kit is printed on or cut from.
    void stocks() {
        for (const ThingTold& thing : told_.things) {
            if (thing.to_buy) continue;
            for (const StockTold& stock : thing.stocks)
                if (std::none_of(told_.stocks.begin(), told_.stocks.end(), [&](const StockTold& other) { return other.title == stock.title; }))
                    told_.stocks.push_back(stock);
        }
    }

    const Prepared& prepared_;
    const ReadKit& kit_;
    const kit::Manifest& manifest_;
    const kit::Pipeline& pipeline_;
    SheetCounts counts_;
    std::vector<journal::Measures> measures_;
    std::deque<SizedParts> sized_;
    checks::KitTold told_;
};

}  // namespace

checks::KitTold told_kit(const Prepared& prepared) { return KitTeller(prepared).tell(); }

}  // namespace qw::release
