// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/told.h"

#include "report/page_picture.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::literals;

namespace {

Finding found(const std::string& rule, Level level, const std::string& file, int page = 0, const std::string& measured = "1 mm",
              const std::string& message = "It is short") {
    return {rule, level, file, page, 0, measured, "2 mm", message, "Make it longer"};
}

report::SheetRow row(const std::string& print, int page, const std::string& artwork) {
    report::SheetRow row;
    row.file = "a4/" + print + "/journal-pages.pdf";
    row.page = page;
    row.set = "journal-pages";
    row.paper = "A4";
    row.print = print;
    row.artwork = {{artwork, 0}};
    row.geometry.sheet = Size{297_mm, 210_mm};
    return row;
}

report::AuditReport four_sheets() {
    report::AuditReport report;
    report.sheets = {row("bordered", 1, "art/01.png"), row("bordered", 2, "art/02.png"), row("borderless", 1, "art/01.png"), row("borderless", 2, "art/02.png")};
    return report;
}

std::vector<std::byte> bytes(char c) { return {std::byte{0xff}, static_cast<std::byte>(c)}; }

std::size_t shown_times(const std::string& text, const std::string& part) {
    std::size_t n = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++n;
    return n;
}

}  // namespace

TEST_CASE("a finding on artwork is told with every sheet that shows it, one on a page with that page") {
    report::AuditReport report = four_sheets();
    report.findings = {found("artwork-x", Level::note, "art/02.png"), found("ink-x", Level::error, "a4/bordered/journal-pages.pdf", 2)};
    const auto sections = report::told_by_sheet(report);
    REQUIRE(sections.size() == 1);
    CHECK(sections[0].title == "Journal pages");
    REQUIRE(sections[0].told.size() == 2);
    CHECK(sections[0].told[0].finding.rule == "ink-x");
    CHECK(sections[0].told[0].places[0].sheets == std::vector<std::size_t>{1});
    CHECK(sections[0].told[1].places[0].sheets == std::vector<std::size_t>{1, 3});
    const auto of_sheets = report::told_of_sheets(report, sections);
    CHECK(of_sheets == std::vector<std::vector<std::size_t>>{{}, {1, 2}, {}, {2}});
}

TEST_CASE("a finding on artwork that names an edition is told with the sheet of that edition alone") {
    report::AuditReport report = four_sheets();
    report.findings = {found("artwork-x", Level::error, "art/01.png", 0, "1 mm", "It is short on A4, borderless")};
    CHECK(report::told_by_sheet(report)[0].told[0].places[0].sheets == std::vector<std::size_t>{2});
}

TEST_CASE("a page of a PDF that serves as artwork is told with the sheet that shows that page") {
    report::AuditReport report = four_sheets();
    report.sheets[0].artwork = {{"art/all.pdf", 1}};
    report.sheets[1].artwork = {{"art/all.pdf", 2}};
    report.findings = {found("artwork-x", Level::error, "art/all.pdf", 2), found("artwork-y", Level::error, "art/all.pdf")};
    const auto told = report::told_by_sheet(report)[0].told;
    CHECK(told[0].places[0].sheets == std::vector<std::size_t>{1});
    CHECK(told[1].places[0].sheets == std::vector<std::size_t>{0, 1});
}

TEST_CASE("one fault on many pages is told once, with what was measured beside each place") {
    report::AuditReport report = four_sheets();
    report.findings = {found("artwork-x", Level::error, "art/01.png", 0, "1 mm"), found("artwork-x", Level::error, "art/02.png", 0, "1.5 mm")};
    const auto sections = report::told_by_sheet(report);
    REQUIRE(sections[0].told.size() == 1);
    CHECK_FALSE(sections[0].told[0].one_measure);
    CHECK(sections[0].told[0].places[1].measured == "1.5 mm");
}

TEST_CASE("what concerns no sheet has its own heading, and a whole PDF is not told on each of its pages") {
    report::AuditReport report = four_sheets();
    report.findings = {found("odd-faces", Level::error, "kit.yaml"), found("artwork-damaged", Level::error, "art/09.png"),
                       found("bundle-names", Level::error, "kit.zip"), found("file-title", Level::error, "a4/bordered/journal-pages.pdf")};
    const auto sections = report::told_by_sheet(report);
    REQUIRE(sections.size() == 4);
    CHECK(sections[0].title == "The kit");
    CHECK(sections[1].title == "Artwork");
    CHECK(sections[2].title == "Bundle");
    CHECK(sections[3].title == "Journal pages");
    CHECK(sections[3].told[0].places[0].whole_file);
    CHECK(report::told_of_sheets(report, sections)[0].empty());
}

TEST_CASE("a picture that is shown often is in the page once") {
    report::AuditReport report = four_sheets();
    for (std::size_t i = 0; i < 4; ++i) report.sheets[i].picture = bytes(i == 3 ? 'b' : 'a');
    report.findings = {found("artwork-x", Level::error, "art/01.png")};
    const std::string html = report::to_html(report);
    CHECK(shown_times(html, "data:image/jpeg") == 2);
    CHECK(shown_times(html, "<use href=\"#picture-0\"") == 5);  // three in the contact sheets, two beside the finding
}

TEST_CASE("what is cut away is drawn beyond the sheet's edge, to scale, and said in words") {
    report::SheetRow one = row("borderless", 1, "art/01.png");
    one.picture = bytes('a');
    const Rect sheet = Rect::of(*one.geometry.sheet);
    one.geometry.trim = sheet;
    one.geometry.artwork = Rect{-Length::mm(3), -Length::mm(5), 300_mm, 210_mm};
    one.geometry.visible = sheet;
    one.geometry.ink = sheet.inset(12_mm);
    report::Pictures pictures;
    const std::string svg = pictures.with_lines(one, "page <1>");
    // 3 mm beyond left and right, 5 mm below, and 1.5 mm of room; SVG counts from the upper left corner.
    CHECK(svg.find("viewBox=\"-4.5 -1.5 306 218\"") != std::string::npos);
    CHECK(svg.find("<path class=\"lost\" d=\"M-3 0h303v215h-303zM0 0h297v210h-297z\"/>") != std::string::npos);
    CHECK(svg.find("aria-label=\"page &lt;1&gt;\"") != std::string::npos);
    CHECK(report::lines_in_words(one.geometry) == "Of the artwork is cut away: 3 mm left, 3 mm right and 5 mm bottom. Ink keeps 12 mm from the trim.");
    one.geometry.artwork = one.geometry.visible = sheet.inset(1_mm);
    CHECK(pictures.with_lines(one, "").find("class=\"lost\"") == std::string::npos);
}

TEST_CASE("a page without its own picture is shown by the same artwork in another edition, or by the artwork, and says so") {
    report::AuditReport report = four_sheets();
    report.sheets[2].picture = bytes('a');
    report.sheets[3].picture = bytes('g');
    report.sheets[3].picture_is_artwork = true;
    report.sheets[3].geometry.artwork = report.sheets[3].geometry.visible = Rect::of(*report.sheets[3].geometry.sheet);
    const std::string html = report::to_html(report);
    CHECK(shown_times(html, "picture from A4, borderless") == 1);
    CHECK(shown_times(html, "artwork, in greys") == 1);
    CHECK(shown_times(html, "no picture") == 1);
}

TEST_CASE("overrides stand in the report with their reason, rules that were not asked with theirs") {
    report::AuditReport report;
    report.tried = {{"artwork-ppi", 3, "Artwork has so many pixels.", "watercolour & soft", false}};
    report.untried = {{"part-layers", "Layers lie flat.", false, ""}};
    const std::string html = report::to_html(report);
    CHECK(html.find("Reason: watercolour &amp; soft") != std::string::npos);
    report.tried.push_back({"artwork-recoded", 4, "Its own bytes.", "always with alpha", true});
    CHECK(report::to_html(report).find("2 rules asked 7 times; 1 of them found nothing to say") != std::string::npos);
    CHECK(html.find("no parts to cut and fold were there") != std::string::npos);
    CHECK(html.find("1 rule asked 3 times; 1 of them found nothing to say") != std::string::npos);
}
