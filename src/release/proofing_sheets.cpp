// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/proofing_sheets.h"

#include "base/words.h"
#include "compose/fractions.h"
#include "compose/print_readings.h"
#include "kit/stock_of.h"
#include "release/sheet_rows.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <set>

namespace qw::release {

namespace {

/// What is told of one sheet, page by page.
struct Known {
    const PlannedFile* file = nullptr;
    std::vector<std::size_t> pages;           ///< of the file, counted from 0
    std::vector<const report::SheetRow*> rows;
};

using Among = std::function<bool(const Known&)>;
/// How much of something a sheet has, in whole steps, so that the same artwork in two editions is the same; 0: none.
using Amount = std::function<long(const Known&)>;

class Collector {
public:
    Collector(const Prepared& prepared, const report::AuditReport& report) : prepared_(prepared), manifest_(prepared.kit.manifest), report_(report) {
        std::size_t row = 0;
        for (const PlannedFile& file : prepared.plan.files) {
            const std::size_t pages = file.document.pages.size(), step = duplex(file) ? 2 : 1;
            for (std::size_t page = 0; page < pages; page += step) {
                Known known{&file, {}, {}};
                for (std::size_t i = page; i < std::min(pages, page + step); ++i) {
                    known.pages.push_back(i);
                    if (row + i < report.sheets.size()) known.rows.push_back(&report.sheets[row + i]);
                }
                all_.push_back(std::move(known));
            }
            row += pages;
        }
    }

    PaperRisks collect() {
        for (const Known& sheet : all_) {
            found_.sheets.push_back({sheet.file, {}, {}});
            for (const std::size_t page : sheet.pages) found_.sheets.back().pages.push_back(static_cast<int>(page) + 1);
        }
        for (const Paper& paper : manifest_.papers) of_paper(paper);
        for (const kit::Set& set : manifest_.sets) of_set(set);
        of_stocks();
        of_artwork();
        of_findings();
        return std::move(found_);
    }

private:
    static bool duplex(const PlannedFile& file) { return file.document.duplex != compose::Duplex::simplex; }
    static bool both_drawn(const Known& sheet) {
        return sheet.pages.size() == 2 && std::all_of(sheet.pages.begin(), sheet.pages.end(), [&](std::size_t page) { return drawn(*sheet.file, page); });
    }
    static bool drawn(const PlannedFile& file, std::size_t page) {
        return !file.document.pages[page].items.empty() && (file.placements.empty() || !file.looked || file.placements[page].face);
    }
    static bool any_drawn(const Known& sheet) {
        return std::any_of(sheet.pages.begin(), sheet.pages.end(), [&](std::size_t page) { return drawn(*sheet.file, page); });
    }
    static bool of_set_named(const Known& sheet, const std::string& set) { return sheet.file->shows && sheet.file->shows->set->name == set && any_drawn(sheet); }

    /// Nothing where no sheet shows it: then the kit has no such thing.
    void add(const std::string& name, const std::string& about, texts::Model model, const Among& shows) {
        const std::size_t index = found_.risks.size();
        bool any = false;
        for (std::size_t i = 0; i < all_.size(); ++i) {
            if (!shows(all_[i])) continue;
            found_.sheets[i].shows.push_back(index);
            any = true;
        }
        if (any) found_.risks.push_back({name + (about.empty() ? "" : " " + about), {name, std::move(model)}});
    }

    /// The sheets that have most of something.
    void add_most(const std::string& name, texts::Model model, const Amount& amount) {
        long most = 0;
        for (const Known& sheet : all_) most = std::max(most, amount(sheet));
        if (most > 0) add(name, "", std::move(model), [&](const Known& sheet) { return amount(sheet) == most; });
    }

    void of_paper(const Paper& paper) {
        const std::string unit = paper.ruler == UnitSystem::metric ? "mm" : "in", gauge = show(compose::gauge_length(paper), paper.ruler);
        for (const Print print : manifest_.prints)
            add("edition", paper.short_name + " " + name_of(print), texts::Model().truth("bordered", print == Print::bordered).text("unit", unit),
                [&](const Known& sheet) { return sheet.file->shows && sheet.file->paper.name == paper.name && sheet.file->print == print && any_drawn(sheet); });
        const auto first_of = [&](const std::string& role) {
            return [&paper, role](const Known& sheet) { return sheet.file->role == role && sheet.file->paper.name == paper.name && sheet.pages.front() == 0; };
        };
        const auto model = texts::Model().text("gauge", gauge).text("unit", unit);
        add("print-size", paper.short_name, model, first_of("print-check"));
        if (const double reach = prepared_.rules.limit("proof-offset"); reach > 0)
            add("register", paper.short_name, texts::Model().text("gauge", show_metric(Length::mm(reach))),
                [&](const Known& sheet) { return first_of("print-check")(sheet) && duplex(*sheet.file); });
        add("gauges", paper.short_name, model, first_of("gauges"));
        add("jig", paper.short_name, model, first_of("hole-jig"));
    }

    static std::string shown(const std::string& set) { return spaced_name(set); }

    void of_set(const kit::Set& set) {
        const auto what = texts::Model().text("what", shown(set.name));
        if (set.role != kit::Role::part) {
            add("set", set.name, what, [&](const Known& sheet) { return of_set_named(sheet, set.name); });
            add("both-faces", set.name, texts::Model().text("what", turned_words(set)),
                [&](const Known& sheet) { return of_set_named(sheet, set.name) && both_drawn(sheet); });
            return;
        }
        // What goes into each other must be printed alike; it fits least where it is printed smallest.
        const Print smallest = std::find(manifest_.prints.begin(), manifest_.prints.end(), Print::bordered) != manifest_.prints.end()
                                   ? Print::bordered
                                   : manifest_.prints.front();
        const auto here = [this, smallest](const std::string& name) {
            return [this, name, smallest](const Known& sheet) {
                return of_set_named(sheet, name) && sheet.file->paper.name == manifest_.papers.front().name && sheet.file->print == smallest;
            };
        };
        add("part", set.name, what, [&](const Known& sheet) { return of_set_named(sheet, set.name); });
        add("part-back", set.name, what, [&](const Known& sheet) { return of_set_named(sheet, set.name) && both_drawn(sheet); });
        if (set.goes_in->empty()) return;
        const std::string into = set.goes_in->substr(0, set.goes_in->find('/'));
        add("goes-in", set.name, texts::Model().text("what", shown(set.name)).text("other", shown(into)), here(set.name));
        add("receives", into, texts::Model().text("what", shown(into)).text("other", shown(set.name)), here(into));
    }

    std::string turned_words(const kit::Set& set) const {
        for (const PlannedFile& file : prepared_.plan.files)
            if (file.shows && file.shows->set == &set && duplex(file)) return file.document.duplex == compose::Duplex::flip_long_edge ? "long edge" : "short edge";
        return "";
    }

    void of_stocks() {
        std::set<std::string> told;
        for (const kit::Set& set : manifest_.sets) {
            if (!told.insert(*set.stock).second) continue;
            const std::string title = kit::stock_of(manifest_, *prepared_.kit.pipeline, *set.stock).title;
            add("stock", *set.stock, texts::Model().text("what", title),
                [&](const Known& sheet) { return sheet.file->shows && *sheet.file->shows->set->stock == *set.stock && any_drawn(sheet); });
        }
    }

    static long ink(const Known& sheet, std::size_t index) {
        const ShownArtwork shown = artwork_on(*sheet.file, sheet.pages[index]);
        return shown.ink ? std::lround(shown.ink->coverage * 1000) : 0;
    }

    void of_artwork() {
        add_most("darkest", {}, [](const Known& sheet) {
            long most = 0;
            for (std::size_t i = 0; i < sheet.pages.size(); ++i) most = std::max(most, ink(sheet, i));
            return most;
        });
        add_most("both-heavy", {}, [](const Known& sheet) { return sheet.pages.size() == 2 ? std::min(ink(sheet, 0), ink(sheet, 1)) : 0; });
        add_most("most-lost", {}, [](const Known& sheet) {
            long most = 0;
            for (const std::size_t page : sheet.pages) most = std::max(most, lost(*sheet.file, page));
            return most;
        });
        softest();
        const auto kind = [&](const std::string& name, const std::function<bool(const LookedFile&)>& is) {
            add(name, "", {}, [&](const Known& sheet) {
                const auto files = files_on(sheet);
                return std::any_of(files.begin(), files.end(), [&](const LookedFile* file) { return is(*file); });
            });
        };
        kind("see-through", [](const LookedFile& file) { return !file.is_pdf && file.picture.alpha; });
        kind("other-colours", [](const LookedFile& file) { return !file.is_pdf && !file.picture.converted_from.empty(); });
        kind("pdf-artwork", [](const LookedFile& file) { return file.is_pdf; });
        kind("turned", [](const LookedFile& file) { return !file.is_pdf && file.picture.turn != 1; });
    }

    /// Share of the artwork that is not printed, in thousandths.
    static long lost(const PlannedFile& file, std::size_t page) {
        if (!file.looked || !file.placements[page].face) return 0;
        const compose::Placement& at = file.placements[page];
        if (at.artwork.empty()) return 0;
        return 1000 - std::lround(1000 * (at.visible.width() / at.artwork.width()) * (at.visible.height() / at.artwork.height()));
    }

    void softest() {
        double least = 0;
        for (const Known& sheet : all_)
            for (const std::size_t page : sheet.pages)
                if (const double ppi = ppi_of(*sheet.file, page); ppi > 0 && (least == 0 || ppi < least)) least = ppi;
        if (least == 0) return;
        const long told = std::lround(least);
        add("softest", "", texts::Model().text("what", std::to_string(told)), [&](const Known& sheet) {
            return std::any_of(sheet.pages.begin(), sheet.pages.end(), [&](std::size_t page) { return std::lround(ppi_of(*sheet.file, page)) == told; });
        });
    }
    static double ppi_of(const PlannedFile& file, std::size_t page) {
        return file.looked && file.placements[page].face ? std::min(file.placements[page].ppi_x, file.placements[page].ppi_y) : 0;
    }

    static std::vector<const LookedFile*> files_on(const Known& sheet) {
        std::vector<const LookedFile*> files;
        if (!sheet.file->shows) return files;
        for (const report::SheetRow* row : sheet.rows)
            for (const report::ShownFile& shown : row->artwork)
                for (const LookedFile& file : sheet.file->shows->files)
                    if (file.file.shown == shown.file) files.push_back(&file);
        return files;
    }

    /// For each rule that warns of a page or of a picture, one such sheet, of the first finding that has any.
    void of_findings() {
        std::set<std::string> told;
        for (const Finding& finding : report_.findings) {
            if (finding.level == Level::note || finding.file.empty() || told.contains(finding.rule)) continue;
            const std::size_t before = found_.risks.size();
            std::string sentence = finding.message;
            if (!sentence.empty() && sentence.back() != '.') sentence += '.';
            add("finding", finding.rule, texts::Model().text("what", sentence), [&](const Known& sheet) { return about(finding, sheet); });
            if (found_.risks.size() > before) told.insert(finding.rule);
        }
    }
    static bool about(const Finding& finding, const Known& sheet) {
        return std::any_of(sheet.rows.begin(), sheet.rows.end(), [&](const report::SheetRow* row) {
            if (row->file == finding.file) return finding.page == 0 || finding.page == row->page;
            return std::any_of(row->artwork.begin(), row->artwork.end(), [&](const report::ShownFile& shown) {
                return shown.file == finding.file && (finding.page == 0 || shown.page == 0 || finding.page == shown.page);
            });
        });
    }

    const Prepared& prepared_;
    const kit::Manifest& manifest_;
    const report::AuditReport& report_;
    std::vector<Known> all_;
    PaperRisks found_;
};

}  // namespace

PaperRisks paper_risks(const Prepared& prepared, const report::AuditReport& report) { return Collector(prepared, report).collect(); }

}  // namespace qw::release
