// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/cutting_plan_sheet.h"

#include "compose/cut_board_drawing.h"
#include "compose/cut_list.h"
#include "compose/cutting_plan_words.h"

#include <algorithm>

namespace qw::compose {

namespace {

constexpr auto any_number = static_cast<std::size_t>(-1);
constexpr double cutting_scales[] = {1, 1.5, 2, 2.5, 3, 3.5, 4, 5, 6, 8, 10, 12, 15, 20, 25, 50, 100};
const Length most_board_height = Length::mm(105);
const Length cell_gap = Length::mm(4), caption_height = Length::mm(5), after_cell = Length::mm(5);
const Length after_words = Length::mm(1.2), above_plan = Length::mm(2.5), after_section = Length::mm(4), heading_height = Length::mm(9);

/// Boards that are cut alike and are drawn once.
struct BoardGroup {
    const journal::CutBoard* board = nullptr;
    std::size_t first = 0, last = 0;
};

bool cut_alike(const journal::CutBoard& a, const journal::CutBoard& b) {
    return a.board == b.board && a.grain == b.grain &&
           std::equal(a.pieces.begin(), a.pieces.end(), b.pieces.begin(), b.pieces.end(),
                      [](const auto& x, const auto& y) { return x.piece == y.piece && x.at == y.at && x.turned == y.turned; });
}

bool grain_matters(const std::vector<PlannedCutting>& cuttings) {
    for (const PlannedCutting& cutting : cuttings)
        for (const journal::BoardPlan& plan : cutting.plans)
            for (const journal::CutBoard& board : plan.plan.boards)
                if (board.grain != "any") return true;
    return false;
}

std::vector<BoardGroup> groups_of(const journal::CuttingPlan& plan) {
    std::vector<BoardGroup> groups;
    for (std::size_t i = 0; i < plan.boards.size(); ++i) {
        if (!groups.empty() && cut_alike(*groups.back().board, plan.boards[i])) groups.back().last = i + 1;
        else groups.push_back({&plan.boards[i], i + 1, i + 1});
    }
    return groups;
}

/// What is drawn of one kind of board.
struct DrawnPlan {
    const journal::BoardPlan& plan;
    const std::vector<PieceLabel>& labels;
    std::vector<std::string> sentences;
    std::vector<BoardGroup> groups;
};

/// How the boards of a plan stand on the page.
struct PlanArrangement {
    double smaller = 1;
    std::size_t columns = 1;
    bool list_beside = false;     ///< the list of cuts at the right of the drawing, else below it
};

class CuttingPlanSheet {
public:
    CuttingPlanSheet(const SheetContext& context)
        : words_(context),
          sheet_(context, line("title"), line("subtitle", texts::Model().text("kit", context.manifest.title).text("paper", context.paper.title)),
                 PrintAt::full_size) {}

    Document compose(const std::vector<PlannedCutting>& cuttings) {
        for (const std::string& words : words_.how_to(grain_matters(cuttings))) paragraph(words);
        for (const PlannedCutting& cutting : cuttings) section(cutting);
        return std::move(sheet_).finish();
    }

private:
    std::string line(const std::string& name, const texts::Model& model = {}) const { return words_.passages().line(name, model); }
    Rect area() const { return sheet_.content(); }
    Canvas& canvas() { return sheet_.canvas(); }
    /// What a page of its own holds below its title.
    Length whole_page() const { return area().height() - Length::mm(13); }

    /// A new page where there is less room, unless nothing stands on this one yet.
    void need(Length height) {
        if (sheet_.left_over() >= height || fresh_) return;
        sheet_.new_page(line("title"));
        fresh_ = true;
    }
    Length height_of(const std::string& words, const Setting& set = setting::small) const {
        if (words.empty()) return {};
        return set.leading * static_cast<double>(wrapped(sheet_.context().fonts, set, area().width(), words).size()) + after_words;
    }
    void paragraph(const std::string& words, const Setting& set = setting::small) {
        if (words.empty()) return;
        need(height_of(words, set) - after_words);
        sheet_.down(canvas().paragraph({area().left, sheet_.top()}, area().width(), words, set) + after_words);
        fresh_ = false;
    }

    void section(const PlannedCutting& cutting) {
        const auto model = texts::Model().text("print", line(name_of(cutting.print))).text("size", cutting.label);
        const std::string choice = words_.alternatives(cutting.plans);
        const auto labels = words_.labels(*cutting.measures);
        const auto pieces = journal::board_pieces(*cutting.measures);
        for (std::size_t i = 0; i < cutting.plans.size(); ++i) {
            const DrawnPlan plan{cutting.plans[i], labels, words_.sentences(cutting.plans[i], pieces), groups_of(cutting.plans[i].plan)};
            // Words stand with the first drawing below them, unless one page does not hold both.
            const Length above = i > 0 ? Length() : after_section + heading_height + height_of(choice);
            const PlanArrangement arrangement = arrange(plan, above);
            const Length words = above + height_of_words(plan), first = plan.groups.empty() ? Length() : row_height(plan, arrangement, 0);
            need(words + first <= whole_page() ? words + first : words);
            if (i == 0) heading(line("section", model), choice);
            draw(plan, arrangement);
        }
    }

    void heading(const std::string& words, const std::string& choice) {
        if (!fresh_) sheet_.down(after_section);
        sheet_.heading(words);
        sheet_.down(Length::mm(2));
        fresh_ = false;
        paragraph(choice);
    }

    Length height_of_words(const DrawnPlan& plan) const {
        Length height = above_plan + after_words * 2 + height_of(words_.title(plan.plan), setting::label);
        for (const std::string& sentence : plan.sentences) height += height_of(sentence);
        return height;
    }

    void draw(const DrawnPlan& plan, const PlanArrangement& a) {
        if (!fresh_) sheet_.down(above_plan);
        paragraph(words_.title(plan.plan), setting::label);
        for (const std::string& sentence : plan.sentences) paragraph(sentence);
        sheet_.down(after_words);
        for (std::size_t first = 0; first < plan.groups.size(); first += a.columns) row(plan, a, first);
    }

    Length cell_width(const PlanArrangement& a) const {
        return (area().width() - cell_gap * static_cast<double>(a.columns - 1)) / static_cast<double>(a.columns);
    }
    Length drawing_width(const DrawnPlan& plan, const PlanArrangement& a) const {
        return a.list_beside ? plan.plan.board.size.width / a.smaller + RoundBoard::left + RoundBoard::right : cell_width(a);
    }
    Canvas scratch() const { return {sheet_.context().paper.size.as_portrait(), sheet_.context().fonts}; }
    CutBoardPicture picture_of(const DrawnPlan& plan, const BoardGroup& group) const {
        return {*group.board, plan.plan.board.size, plan.labels, words_.passages()};
    }
    CutList list_of(const DrawnPlan& plan, const BoardGroup& group, const DrawnBoard& drawn) const {
        return {picture_of(plan, group), drawn.lettered, words_.ruler()};
    }
    DrawnBoard draw_board(Point top_left, const DrawnPlan& plan, const BoardGroup& group, const PlanArrangement& a) {
        return draw_cut_board(canvas(), top_left, top_left.x + drawing_width(plan, a), a.smaller, picture_of(plan, group), any_number).value_or(DrawnBoard{});
    }
    /// Found by drawing it; nothing when it does not go.
    std::optional<DrawnBoard> tried(const DrawnPlan& plan, const BoardGroup& group, const PlanArrangement& a, std::size_t most_left_out = any_number) const {
        Canvas on = scratch();
        return draw_cut_board(on, {area().left, area().top}, area().left + drawing_width(plan, a), a.smaller, picture_of(plan, group), most_left_out);
    }
    Length cell_height(const DrawnPlan& plan, const BoardGroup& group, const PlanArrangement& a, const DrawnBoard& drawn) const {
        const Length list = list_of(plan, group, drawn).height();
        return caption_height + (a.list_beside ? max(drawn.height, RoundBoard::above + list) : drawn.height + list);
    }
    Length row_height(const DrawnPlan& plan, const PlanArrangement& a, std::size_t first) const {
        Length height;
        for (std::size_t i = first; i < std::min(first + a.columns, plan.groups.size()); ++i)
            height = max(height, cell_height(plan, plan.groups[i], a, tried(plan, plan.groups[i], a).value_or(DrawnBoard{})));
        return height;
    }

    /// What an arrangement has to hold to: all on one page with the words above it (nothing: without them), or only the
    /// drawing on one page and the list of cuts going on.
    struct Want {
        std::optional<Length> words;
        bool whole_list = true;
        std::size_t most_left_out = 0;   ///< numbers and letters that are missing on a drawing
    };

    bool goes(const DrawnPlan& plan, const PlanArrangement& a, const Want& want) const {
        const Length most = min(most_board_height, want.whole_list ? whole_page() * 0.7 : whole_page());
        if (plan.plan.board.size.height / a.smaller > most) return false;
        const Length room = whole_page() - want.words.value_or(Length());
        return std::all_of(plan.groups.begin(), plan.groups.end(), [&](const BoardGroup& group) {
            if (a.list_beside && drawing_width(plan, a) + cell_gap > area().width()) return false;
            const auto drawn = tried(plan, group, a, want.most_left_out);
            if (!drawn) return false;
            const Length list = list_of(plan, group, *drawn).width(scratch());
            if (want.whole_list && (a.list_beside ? drawing_width(plan, a) + cell_gap + list > area().width() : list > cell_width(a))) return false;
            return (want.whole_list ? cell_height(plan, group, a, *drawn) : caption_height + drawn->height) <= room;
        });
    }

    std::optional<PlanArrangement> largest(const DrawnPlan& plan, PlanArrangement a, const Want& want) const {
        for (const double smaller : cutting_scales) {
            a.smaller = smaller;
            if (goes(plan, a, want)) return a;
        }
        return std::nullopt;
    }

    /// The largest drawing; but two boards side by side are worth a third of the scale.
    std::optional<PlanArrangement> largest(const DrawnPlan& plan, const Want& want) const {
        const auto below = largest(plan, {1, 1, false}, want), beside = largest(plan, {1, 1, true}, want);
        const auto two = plan.groups.size() > 1 ? largest(plan, {1, 2, false}, want) : std::nullopt;
        std::optional<PlanArrangement> best = beside;
        if (below && (!best || below->smaller < best->smaller)) best = below;
        if (two && two->smaller <= best->smaller * 1.35) best = two;
        return best;
    }

    /// The largest that goes, a little smaller where its words can stand with it then.
    PlanArrangement arrange(const DrawnPlan& plan, Length above) const {
        const auto best = largest(plan, Want{std::nullopt}), with_words = largest(plan, Want{above + height_of_words(plan)});
        if (best && with_words && with_words->smaller <= best->smaller * 1.7) return *with_words;
        if (best) return *best;
        for (std::size_t missing = 0;; ++missing)
            if (const auto lengthy = largest(plan, {1, 1, false}, Want{std::nullopt, false, missing})) return *lengthy;
    }

    void row(const DrawnPlan& plan, const PlanArrangement& a, std::size_t first) {
        const Length height = row_height(plan, a, first);
        if (height > whole_page()) return lengthy_row(plan, a, first);
        need(height);
        for (std::size_t i = first; i < std::min(first + a.columns, plan.groups.size()); ++i) cell(plan, plan.groups[i], a, i - first);
        sheet_.down(height + after_cell);
        fresh_ = false;
    }

    void caption(const DrawnPlan& plan, const BoardGroup& group, const PlanArrangement& a, Length left) {
        const std::string words = words_.over_drawing(*group.board, a.smaller, group.first, group.last, plan.plan.plan.boards.size());
        canvas().words_within({left, sheet_.top() - Length::mm(3.4)}, cell_width(a), words, setting::small_strong);
    }

    void cell(const DrawnPlan& plan, const BoardGroup& group, const PlanArrangement& a, std::size_t column) {
        const Length left = area().left + (cell_width(a) + cell_gap) * static_cast<double>(column), top = sheet_.top() - caption_height;
        caption(plan, group, a, left);
        const DrawnBoard drawn = draw_board({left, top}, plan, group, a);
        const Point list_at = a.list_beside ? Point{left + drawing_width(plan, a) + cell_gap, top - RoundBoard::above} : Point{left, top - drawn.height};
        list_of(plan, group, drawn).draw(canvas(), list_at, area().right - list_at.x);
    }

    /// A list that goes over several pages.
    void lengthy_row(const DrawnPlan& plan, const PlanArrangement& a, std::size_t at) {
        const BoardGroup& group = plan.groups[at];
        need(caption_height + tried(plan, group, a).value_or(DrawnBoard{}).height);
        caption(plan, group, a, area().left);
        sheet_.down(caption_height);
        const DrawnBoard drawn = draw_board({area().left, sheet_.top()}, plan, group, a);
        sheet_.down(drawn.height);
        fresh_ = false;
        paragraph(words_.left_out(drawn.numbers_left_out));
        const CutList list = list_of(plan, group, drawn);
        for (std::size_t row = 0; row < list.rows(); ++row) {
            need(list.height_of_row(row));
            list.draw_row(canvas(), {area().left, sheet_.top()}, area().width(), row);
            sheet_.down(list.height_of_row(row));
            fresh_ = false;
        }
        sheet_.down(after_cell);
    }

    CuttingPlanWords words_;
    Sheet sheet_;
    bool fresh_ = false;   ///< nothing stands on the page yet
};

}  // namespace

Document cutting_plan_sheet(const SheetContext& context, const std::vector<PlannedCutting>& cuttings) {
    return CuttingPlanSheet(context).compose(cuttings);
}

}  // namespace qw::compose
