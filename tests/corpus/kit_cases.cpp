// SPDX-License-Identifier: GPL-3.0-or-later
// What is wrong with a kit by its plan: its pages, its journal, its parts, its sheets. Faults of parts that no kit can have by
// itself are put into a copy of the shared templates.
#include "corpus/cases.h"

#include <cmath>

namespace qw::corpus {

namespace {

std::uint32_t px(double mm) { return static_cast<std::uint32_t>(std::lround(mm / 25.4 * Work::face_ppi)); }

Painting plain(std::uint32_t width, std::uint32_t height, int number) {
    Painting painting{width, height, {}};
    painting.rgb.resize(std::size_t{width} * height * 3);
    painting.fill(0, 0, width, height, static_cast<std::uint8_t>(186 + 9 * number), 205, 214);
    painting.fill(width / 3, height / 3, width / 2, height / 2, 80, static_cast<std::uint8_t>(90 + 24 * number), 120);
    return painting;
}

constexpr const char* rules_line = "rules:\n";

/// Pockets and tags beside the pages; tags of another template go into nothing.
void with_parts(Work& work, const std::string& template_of_tags = "plain-tag", const std::string& of_tags = ", goes-in: pockets/middle",
                const std::string& of_pockets = "", const std::string& backs = "") {
    work.paint(work.kit() / "art/pockets/1.png", plain(1518, 750, 0));
    for (int number = 1; number <= 3; ++number) work.paint(work.kit() / "art/tags" / (std::to_string(number) + ".png"), plain(479, 656, number));
    work.manifest(rules_line, "  pockets: { role: part, part: trifold-pocket, faces: { outside: art/pockets/*.png }, stock: card-160" + of_pockets +
                                  " }\n  tags: { role: part, part: " + template_of_tags + ", faces: { outside: art/tags/*.png" + backs +
                                  " }, stock: card-160" + of_tags + " }\n" + rules_line);
}

/// A fault in the template of pocket tags, against the template as it is.
struct TemplateFault {
    std::string from, to;
    std::string backs = {};
};
Change pocket_tags(const TemplateFault& fault) {
    return [=](Work& work) {
        with_parts(work, "pocket-tag", "", "", fault.backs);
        if (!fault.from.empty()) work.replace(work.pipeline() / "parts/pocket-tag.yaml", fault.from, fault.to);
    };
}
Change parts(const std::string& file, const std::string& from, const std::string& to, const std::string& of_tags = ", goes-in: pockets/middle",
             const std::string& of_pockets = "") {
    return [=](Work& work) {
        with_parts(work, "plain-tag", of_tags, of_pockets);
        if (!from.empty()) work.replace(work.pipeline() / "parts" / file, from, to);
    };
}

/// So many faces, no two alike.
void with_faces(Work& work, int count) {
    for (int number = 5; number <= count; ++number) {
        Painting face = work.painting(1 + number % 4);
        for (int i = 0; i < 3; ++i)
            face.fill(px(40 + 13 * ((number * 5 + i * 7) % 17)), px(40 + 11 * ((number * 3 + i * 5) % 13)), px(62 + 13 * ((number * 5 + i * 7) % 17)),
                      px(66 + 11 * ((number * 3 + i * 5) % 13)), 70, 90, 110);
        work.paint(work.face(number), face);
    }
}

Change journal(int faces, const std::string& from, const std::string& to) {
    return [=](Work& work) {
        with_faces(work, faces);
        if (!from.empty()) work.manifest(from, to);
    };
}

}  // namespace

void add_kit_cases(std::vector<Case>& cases) {
    const auto add = [&](const char* rule, Change defect, Change near, const char* found_as = "") {
        cases.push_back({rule, Subject::kit, std::move(defect), std::move(near), "", found_as});
    };
    add("no-journal-pages", [](Work& work) {
            const std::string kit = work.read(work.kit() / "kit.yaml");
            const std::size_t from = kit.find("  pages:"), to = kit.find("  covers:");
            work.write(work.kit() / "kit.yaml", kit.substr(0, from) + kit.substr(to));
            for (int face = 1; face <= 4; ++face) std::filesystem::remove(work.face(face));
        }, [](Work&) {});
    add("full-sheets-enough", [](Work& work) {
            work.manifest("journal: wrapped-booklet", "journal: soft-spine");
        }, [](Work&) {});

    add("part-tears",
        pocket_tags({"  - { moves: [pocket, tab-left, tab-right], fold: mountain }", "  - { moves: [pocket, tab-left], fold: mountain }"}),
        pocket_tags({}));
    add("part-layers", pocket_tags({"layers: [tag, pocket]", "layers: [pocket, tag]"}), pocket_tags({}));
    add("part-face-turned", pocket_tags({"side: front, panels: [tag] }", "side: front, panels: [tag], head: down }"}),
        pocket_tags({"side: front, panels: [tag] }", "side: front, panels: [tag], head: up }"}));
    add("part-face-hidden",
        pocket_tags({"side: back, panels: [tag], needed: false", "side: back, panels: [pocket], needed: false", ", back: art/tags/1.png"}),
        pocket_tags({"", "", ", back: art/tags/1.png"}));
    add("part-passes-through", pocket_tags({"tab: { metric: 8 mm, us: 5/16 in, why: \"holds", "tab: { metric: 80 mm, us: 3 1/4 in, why: \"holds"}),
        pocket_tags({"tab: { metric: 8 mm, us: 5/16 in, why: \"holds", "tab: { metric: 20 mm, us: 3/4 in, why: \"holds"}));
    add("part-tab-uncovered", pocket_tags({"- { tab: tab-left, on: tag,", "- { tab: tab-left, on: tab-right,"}), pocket_tags({}));
    add("part-inner-panel",
        parts("trifold-pocket.yaml", "inner-width: width - max(inner_less, folded_round * stock_caliper)",
              "inner-width: width - 0 * max(inner_less, folded_round * stock_caliper)"),
        parts("trifold-pocket.yaml", "    { value: 7, why: \"calipers by which the inner", "    { value: 5, why: \"calipers by which the inner"));
    add("part-goes-in", parts("plain-tag.yaml", "width: { metric: 74 mm, us: 2 15/16 in", "width: { metric: 84 mm, us: 3 5/16 in"), parts("", "", ""));
    const auto tall_tags = [](const std::string& height) {
        return [=](Work& work) {
            with_parts(work, "plain-tag", ", goes-on: page");
            for (int number = 1; number <= 3; ++number) work.paint(work.kit() / "art/tags" / (std::to_string(number) + ".png"), plain(1100, 1507, number));
            work.replace(work.pipeline() / "parts/plain-tag.yaml", "height: { metric: 105 mm, us: 4 1/8 in", height);
        };
    };
    add("part-goes-on", tall_tags("height: { metric: 230 mm, us: 9 in"), parts("", "", "", ", goes-on: page"));
    add("part-fits-paper", parts("plain-tag.yaml", "height: { metric: 105 mm, us: 4 1/8 in", "height: { metric: 300 mm, us: 12 in", ""), parts("", "", ""));
    // How many pictures a PDF has is known when it is looked at; of pictures the manifest's reader counts the files.
    const auto backs = [](int pages) {
        return [=](Work& work) {
            with_parts(work, "plain-tag", "", "", ", back: art/tags/back.pdf");
            work.write(work.kit() / "art/tags/back.pdf", plain_pdf(pages, 230, 315, false));
        };
    };
    add("part-face-count", backs(2), backs(3));
    add("part-hole-reach", parts("plain-tag.yaml", "hole-down: { metric: 8 mm, us: 5/16 in", "hole-down: { metric: 50 mm, us: 2 in"), parts("", "", ""));
    add("part-art-covers", [](Work& work) {
            with_parts(work, "plain-tag", ", place: as-drawn");
            for (int number = 1; number <= 3; ++number) work.paint(work.kit() / "art/tags" / (std::to_string(number) + ".png"), plain(440, 620, number));
        }, [](Work& work) { with_parts(work, "plain-tag", ", place: as-drawn"); });
    add("part-art-shape", [](Work& work) {
            with_parts(work);
            for (int number = 1; number <= 3; ++number) work.paint(work.kit() / "art/tags" / (std::to_string(number) + ".png"), plain(500, 656, number));
        }, [](Work& work) {
            with_parts(work);
            for (int number = 1; number <= 3; ++number) work.paint(work.kit() / "art/tags" / (std::to_string(number) + ".png"), plain(484, 656, number));
        });
    add("part-safe-area", parts("", "", "", ", goes-in: pockets/middle, safe-area: 3.2 mm"), parts("", "", "", ", goes-in: pockets/middle, safe-area: 3.4 mm"));

    const std::string booklet = "journals/wrapped-booklet.yaml", stations = "page: [ station_inset, page_height / 2, page_height - station_inset ]",
                      inset = "{ metric: 19 mm, us: 3/4 in, is: printed, why: \"end stations";
    const auto in_booklet = [=](const std::string& from, const std::string& to) {
        return [=](Work& work) { work.replace(work.pipeline() / booklet, from, to); };
    };
    add("journal-stations-on-page", in_booklet(stations, "page: [ station_inset, page_height / 2, page_height + station_inset ]"),
        in_booklet(stations, "page: [ station_inset, page_height / 2, page_height - 1.01 * station_inset ]"));
    add("journal-check", journal(14, "stock: copy-100", "stock: copy-80"), journal(12, "stock: copy-100", "stock: copy-80"), "journal-sheets-a-signature");
    const auto in_journal = [](const std::string& name, int faces, const std::string& stock) {
        return [=](Work& work) {
            work.manifest("journal: wrapped-booklet", "journal: " + name);
            with_faces(work, faces);
            work.manifest("stock: copy-100", "stock: " + stock);
        };
    };
    // Nine sheets of 200 g/m² in one signature.
    add("journal-check", in_journal("long-stitch", 18, "card-200"), in_journal("long-stitch", 12, "copy-100"), "journal-signature-thickness");
    const auto narrow_square = [=](const std::string& stock, int faces) {
        return [=](Work& work) {
            in_journal("soft-spine", faces, stock)(work);
            work.replace(work.pipeline() / "journals/soft-spine.yaml", "fore-edge-square:\n    { metric: 4.5 mm, us: 1/8 in",
                         "fore-edge-square:\n    { metric: 0.5 mm, us: 1/64 in");
        };
    };
    add("journal-check", narrow_square("card-200", 14), narrow_square("copy-80", 4), "journal-creep-inside-square");
    const auto end_stations = [=](const std::string& length) { return in_booklet(inset, "{ " + length + ", is: printed, why: \"end stations"); };
    add("journal-check", end_stations("metric: 4 mm, us: 5/32 in"), end_stations("metric: 17 mm, us: 11/16 in"), "journal-station-near-end");
    // 8 mm at full size are 4 mm at 50 %; 11.5 mm, within margins and then halved, are 5.2 mm.
    add("journal-sizes", end_stations("metric: 8 mm, us: 5/16 in"), end_stations("metric: 11.5 mm, us: 15/32 in"));
    add("journal-check", [](Work& work) {
            work.manifest("journal: wrapped-booklet", "journal: soft-spine");
            work.manifest("print-at: 100 %", "print-at: 60 %");
        }, [](Work& work) { work.manifest("journal: wrapped-booklet", "journal: soft-spine"); }, "journal-cover-paper-fits-sheet");
    const auto glued = [](int pockets) {
        return [=](Work& work) {
            work.manifest("journal: wrapped-booklet", "journal: soft-spine");
            with_parts(work, "plain-tag", ", goes-in: pockets/middle", ", glued-in: " + std::to_string(pockets));
        };
    };
    add("journal-check", glued(40), glued(1), "journal-spine-fill");
}

}  // namespace qw::corpus
