// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/hole_jig_sheet.h"

#include "compose/cautions_of.h"
#include "compose/fractions.h"
#include "compose/gauge_line.h"
#include "compose/jig_strip.h"
#include "compose/named_figure.h"
#include "compose/print_check_sheet.h"

#include <algorithm>

namespace qw::compose {

namespace {

using journal::Measures;

/// The piece along whose middle the spine's holes are read.
const journal::Piece* piece_of_spine(const Measures& m) {
    const std::string& picture = m.journal->picture;
    const std::vector<const char*> names = picture == "wrapped-cover" ? std::vector{"cover-paper", "board"}
                                                                      : std::vector{"spine", "soft-cover", "board", "cover-paper"};
    for (const char* name : names)
        if (const journal::Piece* piece = m.piece(name)) return piece;
    return nullptr;
}

std::vector<Length> from_middle(const std::vector<journal::Shown>& stations, Length middle) {
    std::vector<Length> all;
    for (const journal::Shown& station : stations) all.push_back(station.exact - middle);
    return all;
}

std::vector<Length> pages_from_middle(const Measures& m) { return from_middle(m.page_stations, m.conditions.page.height / 2); }
std::vector<Length> spine_from_middle(const Measures& m) {
    const journal::Piece* piece = piece_of_spine(m);
    return piece ? from_middle(m.spine_stations, piece->height.exact / 2) : std::vector<Length>();
}

bool same_when_scaled(const std::vector<Length>& full, const std::vector<Length>& size, double scale) {
    const Length tolerance = Length::mm(0.5);
    return std::equal(full.begin(), full.end(), size.begin(), size.end(), [&](Length a, Length b) { return abs(a * scale - b) <= tolerance; });
}

/// "103 % to 60 %, 50 %": sizes for which the jig holds, neighbours together.
std::string sizes_that_hold(const SizeColumn& full, const std::vector<SizeColumn>& sizes, const texts::Passages& words, bool& all) {
    std::vector<std::vector<std::string>> runs;
    bool running = false;
    all = true;
    for (const SizeColumn& size : sizes) {
        if (has_errors(size.measures.findings)) continue;  // the journal cannot be made at that size at all
        const bool holds = jig_holds(full.measures, size.measures);
        if (holds && !running) runs.emplace_back();
        if (holds) runs.back().push_back(size.label);
        running = holds;
        all = all && holds;
    }
    std::string text;
    for (const auto& run : runs) {
        const auto range = texts::Model().text("from", run.front()).text("to", run.back());
        text += (text.empty() ? "" : ", ") + (run.size() > 1 ? words.line("range", range) : run.front());
    }
    return text;
}

class HoleJigSheet {
public:
    HoleJigSheet(const SheetContext& context, const SizeColumn& full, const std::vector<SizeColumn>& sizes)
        : full_(full), m_(full.measures), sizes_(sizes), manifest_(context.manifest), words_(passages_of(context.pipeline, "hole-jig")),
          sheet_(of_this_print(context), words_.line("title"), words_.line("subtitle", subtitle(context)), PrintAt::with_the_pages) {}

    Document compose() {
        room_ = strip_room();
        strip_ = strip();
        std::vector<Length> avoid = strip_.page;
        avoid.insert(avoid.end(), strip_.spine.begin(), strip_.spine.end());
        avoid.push_back(strip_.middle());
        parts_ = strip_parts(strip_.length, room_.height(), avoid, Length::mm(8));
        const Length beside = room_.right - gauge_room - strips_right(room_.left) - Length::mm(8);
        const auto sentences = this->sentences();
        const bool fits = beside >= Length::mm(50) && height_of(sentences, beside) <= sheet_.left_over();
        for (const Sentence& sentence : sentences) say(sentence, fits ? room_.right - gauge_room - beside : room_.left, fits ? beside : room_.width());
        if (!fits) {
            sheet_.new_page(words_.line("title"));
            room_ = strip_room();
        }
        strips();
        return std::move(sheet_).finish();
    }

private:
    /// The foot of a sheet for one print names that print only.
    SheetContext of_this_print(const SheetContext& context) {
        manifest_.prints = {full_.print};
        return {manifest_, context.pipeline, context.paper, context.fonts, context.date};
    }
    texts::Model subtitle(const SheetContext& context) const {
        return texts::Model().text("kit", context.manifest.title).text("paper", context.paper.title).text("print", words_.line(name_of(full_.print)));
    }

    /// Between the rules of title and foot.
    Rect strip_room() {
        const Rect area = sheet_.content();
        const Length gap = Length::mm(1.2);
        return {area.left, SheetMargins::foot + SheetMargins::foot_height(sheet_.canvas().size()) + gap, area.right, sheet_.rule() - gap};
    }

    JigStrip strip() const {
        JigStrip strip{m_.conditions.page.height, {}, {}};
        for (const Length off : pages_from_middle(m_)) strip.page.push_back(strip.middle() + off);
        for (const Length off : spine_from_middle(m_))
            if (abs(off) <= strip.middle()) strip.spine.push_back(strip.middle() + off);
        return strip;
    }

    Length strips_right(Length left) const { return left + (jig_width + part_gap) * static_cast<double>(parts_.size()) - part_gap; }

    void strips() {
        const Length longest = std::max_element(parts_.begin(), parts_.end(), [](auto& a, auto& b) { return a.length() < b.length(); })->length();
        const Length top = room_.bottom + (room_.height() + longest) / 2;
        Length x = room_.left;
        for (std::size_t i = 0; i < parts_.size(); ++i, x += jig_width + part_gap)
            draw_jig_part(sheet_.canvas(), {x, top}, strip_, parts_, i, words_);
        draw_gauge(sheet_.canvas(), room_, sheet_.context().paper);
    }

    texts::Model model() const {
        texts::Model model;
        bool all = true;
        const std::string sizes = sizes_that_hold(full_, sizes_, words_, all);
        const journal::Piece* piece = piece_of_spine(m_);
        model.text("gauge", real_fractions(show(gauge_length(sheet_.context().paper), m_.ruler)))
            .text("page-height", stepped_figure(m_.conditions.page.height, m_.ruler));
        model.truth("split", parts_.size() > 1).text("parts", std::to_string(parts_.size()));
        model.truth("spine", !m_.spine_stations.empty() && piece != nullptr).text("piece", piece ? in_sentence(piece->of->title) : "");
        model.truth("longer", piece && piece->height.exact > m_.conditions.page.height + Length::mm(0.05));
        model.truth("beyond", strip_.spine.size() < m_.spine_stations.size());
        const int rows = m_.sewing ? m_.sewing->rows : 1;
        model.truth("several-rows", rows > 1).text("rows", std::to_string(rows));
        return model.truth("limited", !all).text("sizes", sizes);
    }

    /// "Spine strip" → "spine strip".
    static std::string in_sentence(std::string title) {
        if (!title.empty() && title[0] >= 'A' && title[0] <= 'Z') title[0] = static_cast<char>(title[0] - 'A' + 'a');
        return title;
    }

    struct Sentence {
        std::string words;
        const Setting& set;
    };
    /// The directions, and what to mind.
    std::vector<Sentence> sentences() const {
        std::vector<Sentence> all;
        for (const std::string& paragraph : words_.paragraphs("how-to", model())) all.push_back({paragraph, setting::body});
        for (const std::string& caution : cautions_of(sheet_.context().pipeline, {"awl"})) all.push_back({caution, setting::remark});
        return all;
    }
    Length height_of(const Sentence& sentence, Length width) const {
        const auto lines = wrapped(sheet_.context().fonts, sentence.set, width, sentence.words).size();
        return sentence.set.leading * static_cast<double>(lines) + Length::mm(2.4);
    }
    Length height_of(const std::vector<Sentence>& sentences, Length width) const {
        Length height;
        for (const Sentence& sentence : sentences) height += height_of(sentence, width);
        return height;
    }
    void say(const Sentence& sentence, Length x, Length width) {
        const Length height = height_of(sentence, width);
        if (sheet_.left_over() < height) sheet_.new_page(words_.line("title"));
        sheet_.canvas().paragraph({x, sheet_.top()}, width, sentence.words, sentence.set);
        sheet_.down(height);
    }

    static constexpr Length part_gap = Length::mm(7);

    const SizeColumn& full_;
    const Measures& m_;
    const std::vector<SizeColumn>& sizes_;
    kit::Manifest manifest_;
    texts::Passages words_;
    Sheet sheet_;
    Rect room_;
    JigStrip strip_;
    std::vector<StripPart> parts_;
};

}  // namespace

bool jig_holds(const Measures& full, const Measures& size) {
    const double scale = size.conditions.scale / full.conditions.scale;
    return same_when_scaled(pages_from_middle(full), pages_from_middle(size), scale) &&
           same_when_scaled(spine_from_middle(full), spine_from_middle(size), scale);
}

std::optional<Document> hole_jig_sheet(const SheetContext& context, const SizeColumn& full, const std::vector<SizeColumn>& of_print) {
    if (full.measures.page_stations.empty()) return std::nullopt;
    return HoleJigSheet(context, full, of_print).compose();
}

}  // namespace qw::compose
