// SPDX-License-Identifier: GPL-3.0-or-later
#include "pdf/draw.h"

#include "base/digest.h"
#include "pdf/fixtures.h"
#include "pdf/judges.h"
#include "support/fault_disk.h"
#include "support/sanitized.h"

#include <catch2/catch.hpp>

#include <cctype>
#include <chrono>
#include <clocale>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <locale>
#include <sstream>
#include <thread>
#include <unistd.h>

using namespace qw;
using namespace qw::literals;
using namespace qw::test;

namespace {

using Step = compose::Outline;

compose::Outline frame(const Rect& rect, Length width) {
    compose::Outline outline;
    outline.stroke = width;
    outline.steps = {Step::Move{{rect.left, rect.bottom}}, Step::Line{{rect.right, rect.bottom}}, Step::Line{{rect.right, rect.top}},
                     Step::Line{{rect.left, rect.top}}, Step::Close{}};
    return outline;
}

/// A picture, a page of a PDF, text in every cut, lines: all that a document can hold.
compose::Document everything(Disk& disk, const TestFolder& folder, const PngPlan& picture = colourful(200, 100)) {
    write_text(folder / "picture.png", png(picture));
    make_jpeg(folder / "picture.jpg", "jpeg", 150, 150);
    write_text(folder / "face.pdf", pdf_of({{1, "<< /Type /Catalog /Pages 2 0 R >>"},
                                            {2, "<< /Type /Pages /Kids [3 0 R] /Count 1 >>"},
                                            {3, "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 200 200] /Contents 4 0 R >>"},
                                            {4, stream_object("0.1 0.5 0.3 rg 20 20 150 100 re f")}}));
    compose::Document document = one_a4_page();
    document.pages.push_back(document.pages[0]);
    place_picture(disk, document, 0, folder / "picture.png", Rect::at({20_mm, 150_mm}, {120_mm, 60_mm}));
    place_picture(disk, document, 1, folder / "picture.jpg", Rect::at({20_mm, 150_mm}, {60_mm, 60_mm}));
    document.pages[1].items.push_back(face(folder / "face.pdf", 1, {1, 0, 0, 1, 200, 100}, Rect::of({210_mm, 297_mm})));
    for (const type::Cut cut : type::all_cuts)
        document.pages[1].items.emplace_back(line("Sheet 5 ⅝ in", {20_mm, 100_mm + 12_mm * static_cast<int>(cut)}, 14_pt, cut));
    document.pages[1].items.emplace_back(frame(Rect::at({20_mm, 20_mm}, {60_mm, 40_mm}), 1_pt));
    return document;
}

/// The value of an entry as mutool prints it.
std::string shown(const Path& pdf, const std::string& entry) {
    std::string text = must_run("mutool show " + quoted(pdf) + " " + entry);
    while (!text.empty() && std::isspace(static_cast<unsigned char>(text.back()))) text.pop_back();
    return text;
}

void check_box(const Path& pdf, const std::string& name, const std::vector<double>& expected) {
    std::string text = shown(pdf, "pages/1/" + name);
    for (char& c : text)
        if (c == '[' || c == ']') c = ' ';
    std::istringstream numbers(text);
    for (const double side : expected) {
        double number = -1;
        numbers >> number;
        INFO(name << " " << text);
        CHECK(number == Approx(side).margin(0.001));
    }
}

/// What the process has held at most since the last reset, in bytes.
std::size_t peak_memory(bool reset) {
    std::ifstream status("/proc/self/status");
    for (std::string row; std::getline(status, row);)
        if (row.starts_with("VmHWM:")) {
            const std::size_t kilobytes = std::stoul(row.substr(6));
            if (reset) std::ofstream("/proc/self/clear_refs") << 5;
            return kilobytes * 1024;
        }
    return 0;
}

/// Counts what is written and keeps nothing, so that only the drawing itself costs memory.
class Nowhere : public Disk {
public:
    explicit Nowhere(Disk& inner) : inner_(inner) {}
    std::unique_ptr<Sink> create(const Path&) override { return std::make_unique<Hole>(); }
    std::unique_ptr<Sink> extend(const Path&, std::uint64_t) override { return std::make_unique<Hole>(); }
    std::unique_ptr<Source> open(const Path& path) override { return inner_.open(path); }
    std::optional<FileStat> stat(const Path& path) override { return inner_.stat(path); }
    std::vector<std::string> list(const Path& folder) override { return inner_.list(folder); }
    void make_folders(const Path&) override {}
    void link(const Path&, const Path&) override {}
    bool clone(const Path&, const Path&) override { return false; }
    void seal(const Path&) override {}
    void rename(const Path&, const Path&) override {}
    void exchange(const Path&, const Path&) override {}
    void remove(const Path&) override {}
    void sync_folder(const Path&) override {}
    std::unique_ptr<Lock> lock(const Path& path) override { return inner_.lock(path); }

private:
    struct Hole : Sink {
        void write(std::span<const std::byte>) override {}
        void write_at(std::uint64_t, std::span<const std::byte>) override {}
        void close() override {}
    };
    Disk& inner_;
};

}  // namespace

TEST_CASE("a document says what it is and how it is printed") {
    const auto disk = real_disk();
    const TestFolder folder;
    compose::Document document = everything(*disk, folder);
    document.title = "Tidewater Almanac – Größe";
    document.duplex = compose::Duplex::flip_short_edge;
    pdf::draw(*disk, folder / "a.pdf", document, drawing_fonts());
    check_sound(folder / "a.pdf");
    const std::string info = must_run("pdfinfo -enc UTF-8 " + quoted(folder / "a.pdf"));
    INFO(info);
    for (const char* part : {"Tidewater Almanac – Größe", "tidewater-almanac 1.0.0", "Quirewright", "Sep  1 00:00:00 2026"}) CHECK(contains(info, part));
    CHECK(contains(info, "PDF version:     1.7"));
    // ISO 32000-1 table 150.
    CHECK(shown(folder / "a.pdf", "trailer/Root/ViewerPreferences/PrintScaling") == "/None");
    CHECK(shown(folder / "a.pdf", "trailer/Root/ViewerPreferences/Duplex") == "/DuplexFlipShortEdge");
    CHECK(shown(folder / "a.pdf", "trailer/Root/ViewerPreferences/PickTrayByPDFSize") == "true");
    CHECK(shown(folder / "a.pdf", "trailer/Root/ViewerPreferences/DisplayDocTitle") == "true");
    CHECK(shown(folder / "a.pdf", "trailer/Root/Lang") == "(en)");
    // ISO 32000-1 14.11.5.
    CHECK(shown(folder / "a.pdf", "trailer/Root/OutputIntents/1/S") == "/GTS_PDFA1");
    CHECK(contains(shown(folder / "a.pdf", "trailer/Root/OutputIntents/1/OutputConditionIdentifier"), "sRGB"));
    CHECK(contains(shown(folder / "a.pdf", "trailer/Root/OutputIntents/1/DestOutputProfile"), "/N 3"));
    CHECK(shown(folder / "a.pdf", "trailer/Info/CreationDate") == shown(folder / "a.pdf", "trailer/Info/ModDate"));
}

TEST_CASE("each way of turning the sheet has its word") {
    const auto disk = real_disk();
    for (const auto& [duplex, word] : {std::pair{compose::Duplex::simplex, "/Simplex"}, std::pair{compose::Duplex::flip_long_edge, "/DuplexFlipLongEdge"}}) {
        const TestFolder folder;
        compose::Document document = one_a4_page();
        document.duplex = duplex;
        pdf::draw(*disk, folder / "a.pdf", document, drawing_fonts());
        CHECK(shown(folder / "a.pdf", "trailer/Root/ViewerPreferences/Duplex") == word);
    }
}

TEST_CASE("the output intent holds the sRGB profile") {
    const auto disk = real_disk();
    const TestFolder folder;
    pdf::draw(*disk, folder / "a.pdf", one_a4_page(), drawing_fonts());
    const std::string object = must_run("qpdf --show-object=trailer " + quoted(folder / "a.pdf"));
    const std::string catalog = shown(folder / "a.pdf", "trailer/Root/OutputIntents");
    const std::size_t at = catalog.find("/DestOutputProfile ");
    REQUIRE(at != catalog.npos);
    const std::string number = std::to_string(std::stoi(catalog.substr(at + 19)));
    must_run("qpdf --filtered-stream-data --show-object=" + number + " " + quoted(folder / "a.pdf") + " >" + quoted(folder / "profile.icc"));
    const std::string profile = file_text(folder / "profile.icc");
    CHECK(profile.size() > 500);
    CHECK(profile.substr(36, 4) == "acsp");  // ICC.1:2010 7.2: signature, and the data colour space before it
    CHECK(profile.substr(16, 4) == "RGB ");
}

TEST_CASE("page boxes are the paper, the trim and the bleed") {
    const auto disk = real_disk();
    struct Case {
        Size paper;
        double width, height;
    };
    // ISO 216 A4 at 72 points to 25.4 mm; letter is 8 1/2 x 11 in (ANSI/ASME Y14.1).
    for (const Case& c : {Case{{210_mm, 297_mm}, 595.2756, 841.8898}, Case{{8.5_in, 11_in}, 612, 792}, Case{{297_mm, 210_mm}, 841.8898, 595.2756}}) {
        const TestFolder folder;
        compose::Document document = one_page(c.paper);
        document.pages[0].trim = Rect::of(c.paper).inset(10_mm);
        document.pages[0].bleed = Rect::of(c.paper).inset(7_mm);
        pdf::draw(*disk, folder / "a.pdf", document, drawing_fonts());
        check_sound(folder / "a.pdf");
        check_box(folder / "a.pdf", "MediaBox", {0, 0, c.width, c.height});
        check_box(folder / "a.pdf", "TrimBox", {28.3465, 28.3465, c.width - 28.3465, c.height - 28.3465});
        check_box(folder / "a.pdf", "BleedBox", {19.8425, 19.8425, c.width - 19.8425, c.height - 19.8425});
        CHECK(shown(folder / "a.pdf", "pages/1/CropBox") == "null");
        CHECK(contains(must_run("pdfinfo -box " + quoted(folder / "a.pdf")), "TrimBox:            28.35    28.35"));
    }
}

TEST_CASE("lines, curves and fills are drawn as planned") {
    const auto disk = real_disk();
    const TestFolder folder;
    compose::Document document = one_page({8.5_in, 11_in});
    auto& items = document.pages[0].items;
    items.emplace_back(frame(Rect::at({1_in, 1_in}, {2_in, 1_in}), 4_pt));
    compose::Outline filled = frame(Rect::at({4_in, 1_in}, {2_in, 1_in}), 4_pt);
    filled.fill = 0.5;
    items.emplace_back(filled);
    filled.stroke.reset();
    filled.fill = 0.8;
    items.emplace_back(filled);
    compose::Outline dashed = frame(Rect::at({1_in, 4_in}, {5_in, 3_in}), 1_pt);
    dashed.dash = {6_pt, 3_pt};
    items.emplace_back(dashed);
    compose::Outline curve;
    curve.stroke = 2_pt;
    curve.stroke_grey = 0.3;
    curve.steps = {Step::Move{{1_in, 8_in}}, Step::Curve{{2_in, 10_in}, {5_in, 6_in}, {6_in, 8_in}}};
    items.emplace_back(curve);
    items.emplace_back(compose::Outline{});  // nothing to do, nothing written
    pdf::draw(*disk, folder / "a.pdf", document, drawing_fonts());
    check_sound(folder / "a.pdf");
    const Pixels page = check_alike(folder / "a.pdf", 1, folder.path());
    const PixelBox box = dark_box(page);
    CHECK(box.left == Approx(98).margin(1.5));       // the frame's line is 4 pt wide about x = 1 in
    CHECK(box.bottom == Approx(1100 - 98).margin(1.5));
    CHECK(page.at(500, 1100 - 150)[0] == Approx(204).margin(2));  // the last fill, 0.8 grey
    const std::string text = must_run("qpdf --qdf --object-streams=disable " + quoted(folder / "a.pdf") + " -");
    CHECK(contains(text, "[6 3] 0 d\n"));
    CHECK(contains(text, "72 576 m\n144 720 360 432 432 576 c\nS\n"));
    CHECK(contains(text, "[] 0 d\n"));
}

TEST_CASE("the same document gives the same bytes on another day, in another place") {
    const auto disk = real_disk();
    const TestFolder folder;
    const compose::Document document = everything(*disk, folder);
    const pdf::Drawn first = pdf::draw(*disk, folder / "a.pdf", document, drawing_fonts());
    std::this_thread::sleep_for(std::chrono::milliseconds(1100));  // dates in PDF have seconds
    const Path here = std::filesystem::current_path();
    std::filesystem::current_path(folder.path());
    ::setenv("TZ", "Pacific/Chatham", 1);
    ::tzset();
    REQUIRE(std::setlocale(LC_ALL, "tr_TR.UTF-8"));
    std::locale::global(std::locale("de_DE.UTF-8"));
    const pdf::Drawn second = pdf::draw(*disk, "b.pdf", document, drawing_fonts());
    std::locale::global(std::locale::classic());
    std::setlocale(LC_ALL, "C");
    ::unsetenv("TZ");
    ::tzset();
    std::filesystem::current_path(here);
    CHECK(first.sha256 == second.sha256);
    CHECK((file_text(folder / "a.pdf") == file_text(folder / "b.pdf")));
}

TEST_CASE("digest and size are told of the finished file, whose ID is made of them") {
    const auto disk = real_disk();
    const TestFolder folder;
    const pdf::Drawn drawn = pdf::draw(*disk, folder / "a.pdf", everything(*disk, folder), drawing_fonts());
    std::string text = file_text(folder / "a.pdf");
    CHECK(drawn.bytes == text.size());
    CHECK(drawn.sha256 == sha256_of(text));
    const std::size_t at = text.rfind("/ID[<");
    REQUIRE(at != text.npos);
    const std::string id = text.substr(at + 5, 32);
    CHECK(text.substr(at + 37, 2) == "><");
    CHECK(text.substr(at + 39, 32) == id);
    text.replace(at + 5, 32, std::string(32, '0')).replace(at + 39, 32, std::string(32, '0'));
    CHECK(sha256_of(text).substr(0, 32) == id);
}

TEST_CASE("documents that differ have different IDs") {
    const auto disk = real_disk();
    const TestFolder folder;
    compose::Document document = one_a4_page();
    pdf::draw(*disk, folder / "a.pdf", document, drawing_fonts());
    document.title += "!";
    pdf::draw(*disk, folder / "b.pdf", document, drawing_fonts());
    const auto id = [](const std::string& text) { return text.substr(text.rfind("/ID[<"), 38); };
    CHECK(id(file_text(folder / "a.pdf")) != id(file_text(folder / "b.pdf")));
}

TEST_CASE("a disk that fails at any write leaves no file and its own fault") {
    const auto real = real_disk();
    const TestFolder folder;
    // Large enough that bytes pass to the disk while a picture, a page and the fonts are being written.
    const compose::Document document = everything(*real, folder, noisy(600, 600));
    FaultDisk counting(*real);
    pdf::draw(counting, folder / "whole.pdf", document, drawing_fonts());
    REQUIRE(counting.writes() >= 4);
    for (std::size_t n = 1; n <= counting.writes(); ++n) {
        FaultDisk disk(*real);
        disk.fail_write_at(n);
        const FaultNote note = refusal([&] { pdf::draw(disk, folder / "a.pdf", document, drawing_fonts()); }, FaultKind::not_carried_out);
        CHECK(note.code == "disk");
        CHECK(note.where.file == (folder / "a.pdf").string());
        CHECK_FALSE(real->stat(folder / "a.pdf"));
    }
}

TEST_CASE("a run that is stopped in the middle is stopped, not mended") {
    const auto real = real_disk();
    const TestFolder folder;
    const compose::Document document = everything(*real, folder, noisy(600, 600));
    FaultDisk disk(*real);
    disk.stop_at(3);
    CHECK_THROWS_AS(pdf::draw(disk, folder / "a.pdf", document, drawing_fonts()), Stopped);
}

TEST_CASE("a file that is there is neither overwritten nor removed") {
    const auto disk = real_disk();
    const TestFolder folder;
    write_text(folder / "a.pdf", "mine");
    CHECK(refusal([&] { pdf::draw(*disk, folder / "a.pdf", one_a4_page(), drawing_fonts()); }, FaultKind::not_carried_out).code == "disk");
    CHECK(file_text(folder / "a.pdf") == "mine");
}

TEST_CASE("a plan with a number that is none is a fault and leaves no file") {
    const auto disk = real_disk();
    const TestFolder folder;
    compose::Document document = everything(*disk, folder);
    std::get<compose::Picture>(document.pages[0].items[0]).place.a = std::nan("");
    CHECK(refusal([&] { pdf::draw(*disk, folder / "a.pdf", document, drawing_fonts()); }, FaultKind::not_carried_out).code == "number-not-finite");
    CHECK_FALSE(disk->stat(folder / "a.pdf"));
}

TEST_CASE("memory does not grow with the number of pages or the size of pictures", "[many]") {
    const auto disk = real_disk();
    const TestFolder folder;
    write_text(folder / "a.png", png(noisy(1000, 1000)));
    REQUIRE(std::filesystem::file_size(folder / "a.png") > 2'900'000);
    compose::Document document = one_a4_page();
    document.pages.clear();
    const artwork::Facts facts = artwork::look(*disk, folder / "a.png");
    for (std::size_t i = 0; i < 300; ++i) {
        document.artwork.push_back({folder / "a.png", facts});
        document.pages.push_back({{210_mm, 297_mm}, Rect::of({210_mm, 297_mm}), Rect::of({210_mm, 297_mm}), {}});
        document.pages.back().items.push_back(compose::Picture{i, {595, 0, 0, 841, 0, 0}, Rect::of({210_mm, 297_mm})});
    }
    compose::Document short_one = document;
    short_one.pages.resize(10);
    Nowhere nowhere(*disk);
    pdf::draw(nowhere, "warm", short_one, drawing_fonts());
    peak_memory(true);
    const std::size_t before = peak_memory(false);
    REQUIRE(before > 0);
    CHECK(pdf::draw(nowhere, "long", document, drawing_fonts()).bytes > 290 * std::uintmax_t{2'900'000});
    const std::size_t after = peak_memory(false);
    INFO("grown by " << (after - before) / 1024 << " KiB");
    // AddressSanitizer keeps up to 256 MiB of what was given back; the 870 MB that were drawn would still show.
    const std::size_t allowed = std::size_t{sanitized() ? 400u : 6u} << 20;
    CHECK(after - before < allowed);
}

TEST_CASE("a long document is sound") {
    const auto disk = real_disk();
    const TestFolder folder;
    write_text(folder / "a.png", png(colourful(60, 40)));
    compose::Document document = one_a4_page();
    place_picture(*disk, document, 0, folder / "a.png", Rect::at({20_mm, 150_mm}, {120_mm, 80_mm}));
    for (int i = 2; i <= 300; ++i) {
        document.pages.push_back(document.pages[0]);
        document.pages.back().items.emplace_back(line("Page " + std::to_string(i), {20_mm, 20_mm}, 12_pt));
    }
    pdf::draw(*disk, folder / "a.pdf", document, drawing_fonts());
    check_sound(folder / "a.pdf");
    CHECK(contains(must_run("pdfinfo " + quoted(folder / "a.pdf")), "Pages:           300"));
    CHECK(contains(must_run("pdftotext -f 300 -l 300 " + quoted(folder / "a.pdf") + " -"), "Page 300"));
}

TEST_CASE("several documents can be drawn at the same time") {
    const auto disk = real_disk();
    const TestFolder folder;
    const compose::Document document = everything(*disk, folder);
    const pdf::Drawn alone = pdf::draw(*disk, folder / "alone.pdf", document, drawing_fonts());
    std::vector<std::string> digests(4);
    std::vector<std::thread> threads;
    for (std::size_t i = 0; i < digests.size(); ++i)
        threads.emplace_back([&, i] {
            for (int k = 0; k < 5; ++k)
                digests[i] = pdf::draw(*disk, folder / (std::to_string(i) + "-" + std::to_string(k) + ".pdf"), document, drawing_fonts()).sha256;
        });
    for (std::thread& thread : threads) thread.join();
    for (const std::string& digest : digests) CHECK(digest == alone.sha256);
}
