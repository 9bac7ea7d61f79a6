// SPDX-License-Identifier: GPL-3.0-or-later
// What holds for every journal of the pipeline, on every paper and at every size.
#include "journal/example.h"

#include "base/disk.h"
#include "base/edition.h"
#include "kit/read.h"
#include "support/sanitized.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <random>

using namespace qw;
using namespace qw::example;

namespace {

const kit::Pipeline& pipeline() {
    static const kit::Pipeline read = kit::read_pipeline(*real_disk(), Path(QW_SOURCE_DIR) / "pipeline");
    return read;
}

/// PWG 5101.1-2023 media names; no template knows any of them.
std::vector<Paper> papers() {
    return {a4(), letter(), {"iso_a5_148x210mm", "a5", "A5", {Length::mm(148), Length::mm(210)}, UnitSystem::metric},
            {"na_5x7_5x7in", "5x7", "5 x 7 in", {Length::inches(5), Length::inches(7)}, UnitSystem::us}};
}

/// One print of one paper as the buyer gets it, covers at full size or with the pages.
journal::Conditions printed(const Paper& paper, Print print, double percent, bool covers_full) {
    Edition edition{paper, print, {}};
    if (print == Print::bordered) edition.margins = {Length::mm(6.35), Length::mm(12.7), Length::mm(6.35), Length::mm(12.7)};
    const double fit = fit_of(edition, true).scale, scale = fit * percent / 100, paper_scale = std::min(1.0, scale);
    journal::Conditions c = conditions(paper, 1);
    c.print = print;
    c.scale = scale;
    c.page = {paper.size.height / 2 * paper_scale, paper.size.width * paper_scale};
    c.cover_sheet = paper.size * (covers_full ? fit : paper_scale);
    return c;
}

void for_every_size(const std::function<void(const journal::Conditions&)>& at) {
    for (const Paper& paper : papers())
        for (const Print print : {Print::borderless, Print::bordered})
            for (double percent = 30; percent <= 103; percent += 1) at(printed(paper, print, percent, false));
}

bool whole_steps(Length value, Length step) {
    const double steps = value.in_mm() / step.in_mm();
    return std::abs(steps - std::round(steps)) < 1e-6;
}

/// A shown value lies on a step, within a step of the exact one and on the side that the rule says.
void check_rounding(const journal::Shown& shown, const kit::RoundingRule& rule, UnitSystem ruler) {
    CHECK(whole_steps(shown.metric, rule.step.metric));
    CHECK(whole_steps(shown.us, rule.step.us));
    const Length over = shown.rounded - shown.exact, step = rule.step.in(ruler);
    CHECK(abs(over) < step + Length::mm(0.001));
    if (rule.way == Rounding::up) CHECK(over > Length::mm(-0.051));
    if (rule.way == Rounding::down) CHECK(over < Length::mm(0.051));
}

/// Everything that a reader sees of one size.
std::string everything(const journal::Measures& m) {
    std::string all;
    const auto add = [&](const std::string& text) { all += text + "\n"; };
    for (const UnitSystem system : {UnitSystem::metric, UnitSystem::us}) {
        const auto in = [&](const journal::Shown& s) { return show(system == UnitSystem::metric ? s.metric : s.us, system); };
        for (const journal::Piece& piece : m.pieces) add(std::to_string(piece.count) + piece.of->name + piece.text(system));
        for (const auto* stations : {&m.page_stations, &m.spine_stations})
            for (const journal::Shown& station : *stations) add(in(station));
        for (const journal::CutLength& length : m.lengths) add(std::to_string(length.count) + length.of->name + in(length.length));
        for (const journal::ToldFigure& figure : m.figures) add(figure.of->name + figure.text(system));
        if (m.sewing) add(in(m.sewing->row_gap) + std::to_string(m.sewing->rows) + "/" + std::to_string(m.sewing->signatures));
    }
    for (const journal::Item& item : m.items) add(std::to_string(item.count) + item.of->name);
    add(show_metric(m.bulk) + " " + show_metric(m.creep_least) + " " + show_metric(m.creep_most));
    for (const Finding& f : m.findings) add(f.rule + f.message + f.measured + f.limit + f.mend);
    return all;
}

/// Kits and stocks from thin to thick, sizes from small to enlarged: what a template may meet.
std::vector<journal::Conditions> all_kinds_of_kits() {
    std::vector<journal::Conditions> all;
    for (const auto& [page, cover, board, printed_board] :
         {std::tuple(0.125, 0.102, 1.0, false), std::tuple(0.08, 0.08, 0.5, true), std::tuple(0.25, 0.3, 2.0, false), std::tuple(0.125, 0.2, 3.0, true)})
        for (const int sheets : {12, 4, 1, 20, 40})
            for (const double glued : {0.0, 2.0, 12.0})
                for (const Paper& paper : {letter(), a4(), papers()[2]})
                    for (const double percent : {100.0, 90.0, 50.0, 30.0}) {
                        journal::Conditions c = printed(paper, percent == 90 ? Print::bordered : Print::borderless, percent, sheets % 8 == 4);
                        c.sheets = sheets;
                        c.full_sheets = sheets == 1 ? 0 : 5;
                        if (c.full_sheets == 0) c.cover_sheet = {};
                        c.page_stock.caliper = Length::mm(page);
                        c.page_stock.grammage = page * 800;
                        c.cover_stock.caliper = Length::mm(cover);
                        c.cover_stock.grammage = cover * 800;
                        c.board_stock.caliper = Length::mm(board);
                        c.board_stock.printed = printed_board;
                        c.spine_stock.caliper = Length::mm(board == 3 ? 0.5 : board);
                        c.glued_in = Length::mm(glued);
                        all.push_back(c);
                    }
    return all;
}

bool said_in_a_step(const kit::JournalTemplate& journal, const std::string& name) {
    return std::any_of(journal.steps.begin(), journal.steps.end(),
                       [&](const kit::StepTemplate& step) { return step.text.find("{{" + name + "}}") != std::string::npos; });
}

/// What a template shows in all kinds of kits, computed once.
class Told {
public:
    explicit Told(const kit::JournalTemplate& journal) {
        journal::Calculation calculation(journal);
        for (const journal::Conditions& c : conditions()) told_.push_back(everything(calculation.at(c)));
    }

    /// Whether a changed template shows anything else in some condition.
    bool changes_in(const kit::JournalTemplate& changed) const {
        journal::Calculation calculation(changed);
        for (std::size_t i = 0; i < told_.size(); ++i) {
            try {
                if (everything(calculation.at(conditions()[i])) != told_[i]) return true;
            } catch (const Fault&) {
                return true;  // a changed value that makes the template impossible is not dead
            }
        }
        return false;
    }

private:
    /// In no order, so that what shows in few of them is not always met last.
    static const std::vector<journal::Conditions>& conditions() {
        static const std::vector<journal::Conditions> all = [] {
            auto made = all_kinds_of_kits();
            std::shuffle(made.begin(), made.end(), std::mt19937(3));
            return made;
        }();
        return all;
    }
    std::vector<std::string> told_;
};

}  // namespace

TEST_CASE("what checks say stands on buyers' sheets: it has no words of the manifest") {
    for (const auto& [name, journal] : pipeline().journals)
        for (const kit::CheckTemplate& check : journal.checks)
            for (const std::string& said : {check.message, check.mend})
                for (const char* word : {"print-at", "board-stock", "spine-stock", "kit.yaml", "drawn-at", "glued-in", "choices",
                                         "prints:", "stock:", ".yaml", "template"}) {
                    CAPTURE(name, check.name, said, word);
                    CHECK(said.find(word) == std::string::npos);
                }
}

TEST_CASE("there are five journals, and none names a paper") {
    std::vector<std::string> names;
    for (const auto& [name, journal] : pipeline().journals) names.push_back(name);
    CHECK(names == std::vector<std::string>{"case-binding", "concertina", "long-stitch", "soft-spine", "wrapped-booklet"});
    for (const auto& [name, journal] : pipeline().journals) {
        std::string text = read_text(*real_disk(), Path(QW_SOURCE_DIR) / journal.file, 1 << 20);
        std::transform(text.begin(), text.end(), text.begin(), [](unsigned char c) { return std::tolower(c); });
        for (const char* paper : {"letter", " a4", " a5", "legal", "5x7", "210", "297", "215.9", "279.4", "8.5", "11 in"}) {
            INFO(name << " holds " << paper);
            CHECK(text.find(paper) == std::string::npos);
        }
    }
}

TEST_CASE("every journal is computed for every paper, print and size, and is rounded once, the right way", "[many]") {
    for (const auto& [name, journal] : pipeline().journals) {
        journal::Calculation calculation(journal);
        for_every_size([&, &journal_name = name](const journal::Conditions& c) {
            INFO(journal_name << " " << c.paper.name << " " << c.scale);
            const journal::Measures m = calculation.at(c);
            REQUIRE_FALSE(m.pieces.empty());
            for (const journal::Piece& piece : m.pieces) {
                check_rounding(piece.width, piece.of->rounding, m.ruler);
                check_rounding(piece.height, piece.of->rounding, m.ruler);
                CHECK(piece.width.rounded > Length());
                CHECK(piece.height.rounded > Length());
            }
            for (const journal::CutLength& length : m.lengths) check_rounding(length.length, length.of->rounding, m.ruler);
            for (std::size_t i = 1; i < m.page_stations.size(); ++i) CHECK(m.page_stations[i].exact > m.page_stations[i - 1].exact);
            if (!m.page_stations.empty()) CHECK(m.page_stations.back().exact < c.page.height);
            CHECK(m.creep_least <= m.creep_most);
        });
    }
}

// Thickness of a block of folded sheets: leaves times caliper (Rebsamen, in Welbound: pages over four times caliper for
// folded sheets, which is leaves). A folded sheet is two leaves.
TEST_CASE("pages are as thick as their leaves") {
    std::mt19937 random(11);
    std::uniform_real_distribution<double> caliper(0.05, 0.3);
    std::uniform_int_distribution<int> sheets(1, 40);
    for (const auto& [name, journal] : pipeline().journals) {
        journal::Calculation calculation(journal);
        for (int i = 0; i < 50; ++i) {
            journal::Conditions c = conditions(i % 2 ? letter() : a4(), 0.3 + 0.014 * i);
            c.sheets = sheets(random);
            c.page_stock.caliper = Length::mm(caliper(random));
            const Length leaves = c.page_stock.caliper * (2 * c.sheets), bulk = calculation.at(c).bulk;
            INFO(name);
            if (name == "concertina") CHECK(bulk >= leaves - Length::mm(0.001));  // its hinges add to it
            else CHECK(abs(bulk - leaves) < Length::mm(0.001));
        }
    }
}

// One caliper for each nested sheet with a sharp fold, pi/2 of it with a round one: half a turn around the sheets outside.
TEST_CASE("creep lies between one and pi/2 calipers for each nested sheet") {
    for (const auto& [name, journal] : pipeline().journals) {
        if (!journal.sewing) continue;
        journal::Calculation calculation(journal);
        for (int sheets = 1; sheets <= 40; ++sheets) {
            journal::Conditions c = conditions(a4());
            c.sheets = sheets;
            const journal::Measures m = calculation.at(c);
            const int nested = (sheets + m.sewing->signatures - 1) / m.sewing->signatures - 1;
            INFO(name << " " << sheets);
            CHECK(abs(m.creep_least - c.page_stock.caliper * nested) < Length::mm(0.001));
            CHECK(abs(m.creep_most - c.page_stock.caliper * (nested * std::acos(-1.0) / 2)) < Length::mm(0.001));
        }
    }
}

TEST_CASE("no value of a template is dead: a tenth more or less of it changes what is shown or found") {
    if (test::sanitized()) return;  // the same code as above, many times
    for (const auto& [name, journal] : pipeline().journals) {
        const Told told(journal);
        const auto alive = [&, &original = journal](const std::string& value, const std::function<void(kit::JournalTemplate&, double)>& change) {
            for (const double factor : {1.1, 0.9}) {
                kit::JournalTemplate changed = original;
                change(changed, factor);
                if (told.changes_in(changed)) return true;
            }
            return said_in_a_step(original, value);
        };
        for (std::size_t i = 0; i < journal.lengths.size(); ++i) {
            INFO(name << ": length " << journal.lengths[i].name);
            CHECK(alive(journal.lengths[i].name, [i](kit::JournalTemplate& t, double f) { t.lengths[i].value.metric = t.lengths[i].value.metric * f; }));
            CHECK(alive(journal.lengths[i].name, [i](kit::JournalTemplate& t, double f) { t.lengths[i].value.us = t.lengths[i].value.us * f; }));
        }
        for (std::size_t i = 0; i < journal.numbers.size(); ++i) {
            INFO(name << ": number " << journal.numbers[i].name);
            CHECK(alive(journal.numbers[i].name, [i](kit::JournalTemplate& t, double f) { t.numbers[i].value *= f; }));
        }
    }
}

TEST_CASE("no thickness of a template is dead, neither of a thing nor of what may stand in for it") {
    if (test::sanitized()) return;
    int tried = 0;
    const auto more = [](std::optional<kit::BothLengths>& thickness, bool metric) {
        Length& one = metric ? thickness->metric : thickness->us;
        one = one * 1.5;
    };
    for (const auto& [name, journal] : pipeline().journals) {
        const auto try_all = [&, &original = journal](auto things) {
            const Told told(original);
            for (std::size_t i = 0; i < (original.*things).size(); ++i) {
                const auto& thing = (original.*things)[i];
                if (!thing.thickness) continue;
                INFO(original.name << ": " << thing.name);
                for (const bool metric : {true, false}) {
                    kit::JournalTemplate changed = original;
                    more((changed.*things)[i].thickness, metric);
                    CHECK(told.changes_in(changed));
                    ++tried;
                    for (std::size_t k = 0; k < thing.instead.size(); ++k) {
                        if (!thing.instead[k].thickness) continue;
                        const kit::Choices choice{{thing.name, {thing.instead[k].name, {}}}};
                        const kit::JournalTemplate before = kit::chosen(original, choice);
                        changed = original;
                        more((changed.*things)[i].instead[k].thickness, metric);
                        CHECK(Told(before).changes_in(kit::chosen(changed, choice)));
                    }
                }
            }
        };
        try_all(&kit::JournalTemplate::pieces);
        try_all(&kit::JournalTemplate::cut_lengths);
        try_all(&kit::JournalTemplate::items);
    }
    CHECK(tried >= 6);  // the long stitch's cover and thread, the case binding's thread
}

TEST_CASE("a value that nothing uses would be found dead") {
    if (test::sanitized()) return;
    kit::JournalTemplate journal = pipeline().journals.at("soft-spine");
    journal.lengths.push_back(journal.lengths.front());
    journal.lengths.back().name = "used-by-nothing";
    const Told told(journal);
    journal.lengths.back().value.metric = journal.lengths.back().value.metric * 1.1;
    CHECK_FALSE(told.changes_in(journal));
}
