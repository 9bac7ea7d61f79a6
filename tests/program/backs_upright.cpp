// SPDX-License-Identifier: GPL-3.0-or-later
// Twenty landscape sheets with a bar at the head of every page: the released file's pixels are put on paper, the paper is
// turned like a page, and the bars must be at the head again. The file's Duplex entry is read by qpdf.
#include "program/program.h"

#include "checks/duplex_rules.h"
#include "kit/read.h"

#include <catch2/catch.hpp>
#include <png.h>

#include <algorithm>
#include <cstdio>

using namespace qw;
using namespace qw::test;

namespace {

constexpr int sheet_count = 20, page_count = sheet_count * 2;
const std::string flip_short_edge = "/DuplexFlipShortEdge", flip_long_edge = "/DuplexFlipLongEdge";

/// Grey, 0 black, rows from the head.
struct Side {
    int width = 0, height = 0;
    std::vector<std::uint8_t> pixels;

    Side(int w, int h) : width(w), height(h), pixels(static_cast<std::size_t>(w) * static_cast<std::size_t>(h), 255) {}
    std::uint8_t& at(int x, int y) { return pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)]; }
    std::uint8_t at(int x, int y) const { return const_cast<Side*>(this)->at(x, y); }
};

/// Where the bar of a page ends, as a share of the page's width: no two pages alike.
double bar_end(int page) { return 0.15 + 0.02 * page; }

void write_face(const Path& path, int page) {
    Side face(279, 216);  // letter, 1 pixel a millimetre
    for (int y = 20; y < 44; ++y)
        for (int x = 14; x < bar_end(page) * face.width; ++x) face.at(x, y) = 30;
    std::filesystem::create_directories(path.parent_path());
    png_image image{};
    image.version = PNG_IMAGE_VERSION;
    image.width = static_cast<png_uint_32>(face.width);
    image.height = static_cast<png_uint_32>(face.height);
    image.format = PNG_FORMAT_GRAY;
    REQUIRE(png_image_write_to_file(&image, path.c_str(), 0, face.pixels.data(), 0, nullptr));
}

/// A kit of nothing but its pages. They are a drawing of one bar, so the rules about pixels are off.
Path bars_kit(const Path& folder) {
    for (int page = 1; page <= page_count; ++page) write_face(folder / "bars/art" / (std::to_string(page) + ".png"), page);
    write(folder / "bars/kit.yaml",
          "kit: bars\ntitle: Bars\nversion: 1.0.0\ndate: 2026-09-01\njournal: long-stitch\npapers: [letter]\nprints: [borderless]\n"
          "rules:\n  artwork-ppi: { level: off, reason: bars need no pixels }\n  artwork-ppi-low: { level: off, reason: bars need no pixels }\n"
          "sets:\n  pages:\n    role: journal-page\n    files: art/*.png\n    sides: duplex\n    drawn-at: 279.4 x 215.9 mm\n    bleed: 0 mm\n    "
          "place: cover\n    stock: copy-80\n");
    return folder / "bars";
}

/// Binary PGM, 8 bits.
Side read_side(const Path& path) {
    const std::string text = read(path);
    int width = 0, height = 0, depth = 0, used = 0;
    REQUIRE(std::sscanf(text.c_str(), "P5 %d %d %d%n", &width, &height, &depth, &used) == 3);
    REQUIRE(depth == 255);
    Side page(width, height);
    REQUIRE(text.size() == static_cast<std::size_t>(used) + 1 + page.pixels.size());
    std::copy(text.begin() + used + 1, text.end(), reinterpret_cast<char*>(page.pixels.data()));
    return page;
}

std::vector<Side> rendered_sides(const Path& pdf, const Path& folder) {
    std::filesystem::create_directories(folder);
    REQUIRE(run("pdftoppm -gray -r 40 " + quoted(pdf.string()) + " p", folder).status == 0);
    std::vector<Side> all;
    for (const Path& file : files_below(folder, ".pgm")) all.push_back(read_side(file));
    return all;
}

Side mirrored(const Side& from, bool about_upright_axis) {
    Side to(from.width, from.height);
    for (int y = 0; y < from.height; ++y)
        for (int x = 0; x < from.width; ++x)
            to.at(x, y) = about_upright_axis ? from.at(from.width - 1 - x, y) : from.at(x, from.height - 1 - y);
    return to;
}

/// The ink of a back as it lies on the paper, seen through the paper from the front. Whoever turns the sheet over the edge
/// that was asked for sees the page as it was drawn (ISO 32000-1 table 150), so turning it back mirrors it about that edge.
Side on_paper(const Side& back, bool over_short_edge) {
    const bool edge_is_upright = over_short_edge == (back.width > back.height);
    return mirrored(back, edge_is_upright);
}

/// Held by its head and turned like the page of a book, the paper shows its other side.
Side turned_like_a_page(const Side& ink_through_paper) { return mirrored(ink_through_paper, true); }

/// The box around what is dark, as shares of the page from its upper left corner.
struct Bar {
    double left = 1, top = 1, right = 0, bottom = 0;
    bool at_head() const { return bottom > 0 && bottom < 0.3; }
    bool at_foot() const { return top > 0.7 && top < 1; }
};

Bar bar_of(const Side& page) {
    Bar bar;
    for (int y = 0; y < page.height; ++y)
        for (int x = 0; x < page.width; ++x)
            if (page.at(x, y) < 128)
                bar = {std::min(bar.left, double(x) / page.width), std::min(bar.top, double(y) / page.height),
                       std::max(bar.right, (x + 1.0) / page.width), std::max(bar.bottom, (y + 1.0) / page.height)};
    return bar;
}

/// Every value of this key in a JSON document.
void collect_values(const nlohmann::json& json, const std::string& key, std::vector<std::string>& values) {
    if (json.is_object() && json.contains(key)) values.push_back(json[key].get<std::string>());
    if (json.is_structured())
        for (const auto& inner : json) collect_values(inner, key, values);
}

/// As qpdf reads it.
std::string duplex_entry(const Path& pdf) {
    const Said said = run("qpdf --json " + quoted(pdf.string()), "/");
    REQUIRE(said.status == 0);
    std::vector<std::string> values;
    collect_values(nlohmann::json::parse(said.text), "/Duplex", values);
    REQUIRE(values.size() == 1);
    return values.front();
}

struct Backs {
    int at_head = 0, at_foot = 0;
};

/// What is seen on the other side of each sheet.
Backs backs_of(const std::vector<Side>& faces, const std::string& entry) {
    Backs backs;
    for (int page = 2; page <= page_count; page += 2) {
        const Side& back = faces[static_cast<std::size_t>(page) - 1];
        const Bar bar = bar_of(turned_like_a_page(on_paper(back, entry == flip_short_edge)));
        INFO("page " << page);
        // It is this page's bar, from the left as it was drawn, or from the right where it stands on its head.
        CHECK((bar.at_foot() ? 1 - bar.left : bar.right) == Approx(bar_end(page)).margin(0.008));
        backs.at_head += bar.at_head();
        backs.at_foot += bar.at_foot();
    }
    return backs;
}

Findings backs_judged(const Path& pdf) {
    static const kit::Pipeline pipeline = kit::read_pipeline(*real_disk(), source_folder / "pipeline");
    const checks::Rules rules(pipeline.checks, {});
    const proof::FileFacts seen = proof::inspect(*real_disk(), pdf);
    CHECK(seen.damage.empty());
    Findings findings;
    checks::check_backs(rules, true, seen, "letter/borderless/pages.pdf", findings);
    return findings;
}

}  // namespace

TEST_CASE("twenty landscape duplex sheets come out upright, and upside-down backs are found", "[backs]") {
    TestFolder folder;
    const nlohmann::json report = quirewright_json("release " + quoted(bars_kit(folder.path()).string()) + " --out out --json", folder.path());
    INFO(report["findings"].dump(2));
    REQUIRE(report["fit_for_sale"] == true);
    for (const auto& finding : report["findings"]) CHECK(finding["rule"].get<std::string>().substr(0, 5) != "backs");
    const Path pdf = folder / "out/bars/1.0.0/letter/borderless/pages.pdf";
    const std::vector<Side> faces = rendered_sides(pdf, folder / "faces");
    REQUIRE(faces.size() == page_count);
    for (int page = 1; page <= page_count; ++page) {
        const Bar bar = bar_of(faces[static_cast<std::size_t>(page) - 1]);
        INFO("page " << page);
        CHECK(bar.at_head());
        CHECK(bar.right == Approx(bar_end(page)).margin(0.008));
    }

    // As it is released.
    CHECK(duplex_entry(pdf) == flip_short_edge);
    const Backs released_backs = backs_of(faces, duplex_entry(pdf));
    CHECK(released_backs.at_head == sheet_count);
    CHECK(released_backs.at_foot == 0);
    CHECK(backs_judged(pdf).empty());

    // The same pages, turned over the other edge. A blank keeps the offsets of the file.
    const Path other = folder / "long-edge.pdf";
    std::filesystem::copy_file(pdf, other);
    replace_in(other, flip_short_edge, flip_long_edge + " ");
    CHECK(run("qpdf --check " + quoted(other.string()), "/").status == 0);
    CHECK(duplex_entry(other) == flip_long_edge);
    const Backs upside_down = backs_of(faces, duplex_entry(other));
    CHECK(upside_down.at_head == 0);
    CHECK(upside_down.at_foot == sheet_count);
    const Findings found = backs_judged(other);
    REQUIRE(found.size() == sheet_count);
    for (int i = 0; i < sheet_count; ++i) {
        CHECK(found[static_cast<std::size_t>(i)].rule == "backs-upright");
        CHECK(found[static_cast<std::size_t>(i)].page == (i + 1) * 2);
    }
}
