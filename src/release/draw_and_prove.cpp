// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/draw_and_prove.h"

#include "artwork/thumbnail.h"
#include "checks/duplex_rules.h"
#include "checks/finished_rules.h"
#include "checks/misprint_rules.h"
#include "pdf/draw.h"
#include "proof/misprint.h"
#include "proof/render.h"
#include "release/sheet_rows.h"

#include <algorithm>
#include <set>

namespace qw::release {

namespace {

constexpr double proof_dpi = 72;
bool one_passed_picture(const PlannedFile& file, std::size_t page) {
    const compose::Page& planned = file.document.pages[page];
    if (planned.items.size() != 1) return planned.items.empty();
    const auto* picture = std::get_if<compose::Picture>(&planned.items.front());
    return picture && file.document.artwork[picture->artwork].facts.passage == artwork::Passage::through;
}

bool same_place(const compose::Picture& a, const compose::Picture& b) { return a.place == b.place && a.clip == b.clip && a.shape == b.shape; }

std::optional<Point> end_of(const std::variant<compose::Outline::Move, compose::Outline::Line, compose::Outline::Curve, compose::Outline::Close>& step) {
    return std::visit([](const auto& one) -> std::optional<Point> {
        if constexpr (requires { one.to; }) return one.to;
        else return std::nullopt;
    }, step);
}

bool same_line(const compose::Outline& a, const compose::Outline& b) {
    return a.steps.size() == b.steps.size() && a.stroke == b.stroke && a.dash == b.dash && a.stroke_grey == b.stroke_grey && a.fill == b.fill &&
           std::equal(a.steps.begin(), a.steps.end(), b.steps.begin(), [](const auto& left, const auto& right) { return left.index() == right.index() && end_of(left) == end_of(right); });
}

/// Whether two pages differ only in which pictures they show and in the words of their legends: then one of them tells
/// by its rendering what both look like, and the pictures of the other are proven by structure.
bool alike_but_for_pictures(const PlannedFile& file, std::size_t a, std::size_t b) {
    const auto& one = file.document.pages[a].items;
    const auto& other = file.document.pages[b].items;
    const auto passed = [&](const compose::Picture& picture) { return file.document.artwork[picture.artwork].facts.passage == artwork::Passage::through; };
    return file.document.pages[a].size == file.document.pages[b].size && one.size() == other.size() &&
           std::equal(one.begin(), one.end(), other.begin(), [&](const compose::Item& left, const compose::Item& right) {
               if (left.index() != right.index() || std::holds_alternative<compose::PdfFace>(left)) return false;
               if (const auto* picture = std::get_if<compose::Picture>(&left)) return passed(*picture) && passed(std::get<compose::Picture>(right)) && same_place(*picture, std::get<compose::Picture>(right));
               if (const auto* text = std::get_if<compose::Text>(&left)) return text->at == std::get<compose::Text>(right).at;
               return same_line(std::get<compose::Outline>(left), std::get<compose::Outline>(right));
           });
}

/// Pages to render, counted from 0.
std::set<std::size_t> pages_to_render(const PlannedFile& file, Rendering rendering) {
    const std::size_t n = file.document.pages.size();
    std::set<std::size_t> pages;
    std::optional<std::size_t> first, last, darkest;
    double most = -1;
    for (std::size_t i = 0; i < n; ++i) {
        if (rendering == Rendering::all || !one_passed_picture(file, i)) {
            // The last sheet, front and back, may be filled otherwise and is always rendered.
            const bool told = rendering != Rendering::all && i + 2 < n && std::any_of(pages.begin(), pages.end(), [&](std::size_t other) { return alike_but_for_pictures(file, i, other); });
            if (!told) pages.insert(i);
            continue;
        }
        if (!first) first = i;
        last = i;
        const ShownArtwork shown = artwork_on(file, i);
        if (shown.ink && shown.ink->coverage > most) {
            most = shown.ink->coverage;
            darkest = i;
        }
    }
    for (const auto& page : {first, last, darkest})
        if (page) pages.insert(*page);
    return pages;
}

/// A borderless page as a driver that enlarges and a sheet that lies aside print it; shown where it loses what matters.
void simulate_misprint(const PlannedFile& file, std::size_t page, const proof::Pixels& pixels, const checks::Rules& rules, DrawnFile& drawn) {
    const Size size = file.document.pages[page].size;
    const proof::Misprint misprint = checks::misprint_in_force(rules);
    const proof::Misprinted seen = proof::misprint(pixels, size, file.looked->set->safe_area * file.placements[page].scale, misprint);
    const std::size_t told = drawn.findings.size();
    checks::check_misprinted(rules, seen, file.path, static_cast<int>(page) + 1, drawn.findings);
    if (drawn.findings.size() == told) return;
    const proof::Pixels aside = proof::printed_aside(pixels, size, misprint.enlarged, seen.aside);
    drawn.rows[page].misprint = artwork::thumbnail(aside.rgb, aside.width, aside.height, thumbnail_pixels);
}

void judge_rendered(const PlannedFile& file, std::size_t page, const proof::Pixels& pixels, const checks::Rules& rules, DrawnFile& drawn) {
    const checks::RenderedPage seen{static_cast<int>(page) + 1, file.document.pages[page].size, pixels.width, pixels.height, proof::ink_of(pixels)};
    if (file.printable) checks::check_ink_inside(rules, seen, *file.printable, file.path, drawn.findings);
    const ShownArtwork shown = artwork_on(file, page);
    if (shown.ink)
        checks::check_rendered_artwork(rules, seen, file.placements[page], *shown.ink, shown.width, shown.height, file.print == Print::borderless, file.path, drawn.findings);
    if (shown.ink && file.print == Print::borderless) simulate_misprint(file, page, pixels, rules, drawn);
    tell_rendering(drawn.rows[page], file, pixels, seen.ink);
}

DrawnFile draw_one(Disk& disk, const Path& folder, const PlannedFile& file, const checks::Rules& rules, const type::Fonts& fonts, Rendering rendering) {
    const Path path = folder / file.path;
    const pdf::Drawn made = pdf::draw(disk, path, file.document, fonts);
    DrawnFile drawn;
    drawn.record = {file.path, "", made.bytes, made.sha256, file.role, file.paper.name, std::nullopt, static_cast<int>(file.document.pages.size())};
    if (file.print) drawn.record.print = name_of(*file.print);
    for (std::size_t i = 0; i < file.document.pages.size(); ++i) drawn.rows.push_back(row_of(file, i));

    const proof::FileFacts seen = proof::inspect(disk, path);
    checks::check_finished(rules, file.document, seen, file.path, drawn.findings);
    // The print check turns over the edge that the kit's sheets turn over, head over foot if need be, and says so.
    if (file.role != "print-check") checks::check_backs(rules, file.document.duplex != compose::Duplex::simplex, seen, file.path, drawn.findings);
    if (seen.sha256 != made.sha256) {
        drawn.findings.push_back({"file-damaged", Level::error, file.path, 0, 0, seen.sha256.substr(0, 16), made.sha256.substr(0, 16),
                                  "The file on disk is not the one that was written", "Check the disk, then run it again"});
    }
    if (!seen.damage.empty()) return drawn;
    proof::Renderer renderer(path);
    for (const std::size_t page : pages_to_render(file, rendering)) judge_rendered(file, page, renderer.page(static_cast<int>(page) + 1, proof_dpi), rules, drawn);
    return drawn;
}

}  // namespace

std::vector<DrawnFile> draw_and_prove(Disk& disk, const Path& folder, const Plan& plan, const checks::Rules& rules, const type::Fonts& fonts,
                                      Rendering rendering, const engine::Jobs& jobs, Progress& progress) {
    for (const PlannedFile& file : plan.files) disk.make_folders((folder / file.path).parent_path());
    std::vector<DrawnFile> drawn(plan.files.size());
    // Files with most pages first, so that the last job is not left alone with the longest one.
    std::vector<std::size_t> order(plan.files.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return plan.files[a].document.pages.size() > plan.files[b].document.pages.size(); });
    progress.begin("drawing and proving", plan.files.size());
    jobs.for_each(order.size(), [&](std::size_t i) {
        drawn[order[i]] = draw_one(disk, folder, plan.files[order[i]], rules, fonts, rendering);
        progress.step();
    });
    return drawn;
}

}  // namespace qw::release
