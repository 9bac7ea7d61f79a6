// SPDX-License-Identifier: GPL-3.0-or-later
// usage: agreement AT-LEAST FOLDER|FILE…
// Holds what we say of every PDF below (each once, by its digest) against what pdfinfo, pdffonts, pdfimages, qpdf and mutool
// say of it. Prints each disagreement with both answers and ends with 1 when there is one, or when there were fewer PDFs than
// AT-LEAST.
#include "agreement/tools.h"
#include "base/digest.h"
#include "engine/jobs.h"
#include "proof/file_facts.h"
#include "support/fault_disk.h"
#include "support/shell.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <iostream>
#include <map>
#include <sstream>

using namespace qw;
using namespace qw::agreement;

namespace {

/// What was said of one file by two; what one of them cannot judge is not asked.
class Comparison {
public:
    template <typename Value>
    void same(const std::string& what, const std::string& judge, const Value& theirs, const Value& ours) {
        ++facts_;
        if (theirs == ours) return;
        std::ostringstream line;
        line << "  " << what << ": " << judge << " says " << text(theirs) << ", we say " << text(ours) << "\n";
        told_ += line.str();
    }
    void box(const std::string& what, const std::vector<double>& theirs, const Rect& ours) {
        const std::vector<double> sides{ours.left.in_points(), ours.bottom.in_points(), ours.right.in_points(), ours.top.in_points()};
        // pdfinfo prints hundredths of a point.
        const bool alike = theirs.size() == 4 && std::equal(sides.begin(), sides.end(), theirs.begin(), [](double a, double b) { return std::abs(a - b) <= 0.011; });
        same(what, "pdfinfo", alike ? text(sides) : text(theirs), text(sides));
    }
    std::size_t facts() const { return facts_; }
    const std::string& told() const { return told_; }

private:
    static std::string text(bool value) { return value ? "yes" : "no"; }
    static std::string text(const std::string& value) { return "'" + value + "'"; }
    template <typename Number>
    static std::enable_if_t<std::is_arithmetic_v<Number>, std::string> text(Number value) { return std::to_string(value); }
    template <typename List>
    static std::enable_if_t<!std::is_arithmetic_v<List> && !std::is_same_v<List, std::string>, std::string> text(const List& list) {
        std::string all;
        for (const auto& one : list) all += (all.empty() ? "" : " | ") + text(one);
        return "[" + all + "]";
    }

    std::size_t facts_ = 0;
    std::string told_;
};

std::string family_of(const std::string& space) {
    static const std::map<std::string, std::string> families{
        {"DeviceGray", "grey"}, {"CalGray", "grey"}, {"DeviceRGB", "rgb"}, {"CalRGB", "rgb"}, {"DeviceCMYK", "cmyk"}, {"ICCBased", "icc"},
        {"Indexed", "indexed"}, {"Lab", "lab"}, {"Separation", "separation"}, {"DeviceN", "devicen"}};
    const auto found = families.find(space);
    return found == families.end() ? space : found->second;
}

/// pdfimages tells of a stencil, and of a picture whose own format says its colours, no colour that could be compared.
std::string told_of(std::size_t page, const proof::PlacedPicture& picture) {
    const std::string size = std::to_string(page) + " " + std::to_string(picture.width) + " x " + std::to_string(picture.height);
    const bool stencil = picture.colour_space.empty(), own = picture.filter.ends_with("JPXDecode");
    return stencil || own ? size : size + ", " + family_of(picture.colour_space) + ", " + std::to_string(picture.bits);
}

void compare_info(const Path& pdf, const proof::FileFacts& facts, const Shown& shown, Comparison& to) {
    const Info info = info_of(pdf);
    if (!info.opened) return to.same("can be read", "pdfinfo", false, facts.damage.empty());
    to.same("pages", "pdfinfo", info.pages, static_cast<int>(facts.pages.size()));
    to.same("version", "pdfinfo", info.version, facts.version);
    to.same("encryption", "pdfinfo", info.encrypted, facts.encrypted);
    to.same("scripts", "pdfinfo, or mutool of OpenAction,", info.scripts || shown.opens_with_script, facts.scripts);
    for (std::size_t i = 0; i < std::min(info.of_pages.size(), facts.pages.size()); ++i) {
        const std::string page = "page " + std::to_string(i + 1) + " ";
        to.same(page + "turn", "pdfinfo", info.of_pages[i].rotate, facts.pages[i].rotate);
        to.box(page + "MediaBox", info.of_pages[i].media, facts.pages[i].media);
        to.box(page + "CropBox", info.of_pages[i].crop, facts.pages[i].crop);
        to.box(page + "BleedBox", info.of_pages[i].bleed, facts.pages[i].bleed);
        to.box(page + "TrimBox", info.of_pages[i].trim, facts.pages[i].trim);
    }
}

void compare_fonts(const Path& pdf, const proof::FileFacts& facts, Comparison& to) {
    std::set<std::string> ours;
    for (const proof::PageFacts& page : facts.pages)
        for (const proof::FontFact& font : page.fonts) ours.insert(font.name + (font.embedded ? " yes" : " no") + (font.subset ? " yes" : " no"));
    to.same("fonts (name, embedded, subset)", "pdffonts", fonts_of(pdf), ours);
}

void compare_pictures(const Path& pdf, const proof::FileFacts& facts, Comparison& to) {
    Pictures ours;
    for (std::size_t i = 0; i < facts.pages.size(); ++i)
        for (const proof::PlacedPicture& picture : facts.pages[i].pictures) {
            ours.painted.insert(told_of(i + 1, picture));
            if (picture.soft_mask) ours.soft_masks.insert(static_cast<int>(i) + 1);
        }
    const Pictures theirs = pictures_of(pdf);
    to.same("pictures", "pdfimages", theirs.painted, ours.painted);
    to.same("pages of soft masks", "pdfimages", theirs.soft_masks, ours.soft_masks);
}

void compare_structure(const Path& pdf, const proof::FileFacts& facts, Comparison& to) {
    const int status = checked(pdf);
    if (status == 0) to.same("nothing wrong", "qpdf --check", std::string(), facts.damage);
    if (status == 2) to.same("damaged", "qpdf --check", true, !facts.damage.empty());
    const auto structure = structure_of(pdf);
    if (!structure) return to.same("can be read", "qpdf --json", false, facts.damage.empty());
    to.same("pages", "qpdf --json", structure->pages, facts.pages.size());
    to.same("encryption", "qpdf --json", structure->encrypted, facts.encrypted);
    // It lists those of the name tree; ours may also hang on a page.
    if (structure->attachments) to.same("attachments", "qpdf --json", true, facts.attachments);
}

void compare_shown(const proof::FileFacts& facts, const Shown& shown, Comparison& to) {
    const auto slashed = [](const std::string& name) { return name.empty() ? "" : "/" + name; };
    to.same("can be read", "mutool show", shown.opened, true);
    to.same("pages", "mutool show", shown.pages, static_cast<int>(facts.pages.size()));
    to.same("PrintScaling", "mutool show", shown.print_scaling, slashed(facts.print_scaling));
    to.same("Duplex", "mutool show", shown.duplex, slashed(facts.duplex));
    to.same("PickTrayByPDFSize", "mutool show", shown.tray, std::string(!facts.pick_tray_by_pdf_size ? "" : *facts.pick_tray_by_pdf_size ? "true" : "false"));
}

Comparison compared(const Path& pdf) {
    const auto disk = real_disk();
    const proof::FileFacts facts = proof::inspect(*disk, pdf);
    Comparison comparison;
    compare_structure(pdf, facts, comparison);
    // Of a damaged file each program makes what it can.
    if (!facts.damage.empty()) return comparison;
    const Shown shown = shown_of(pdf);
    compare_info(pdf, facts, shown, comparison);
    compare_fonts(pdf, facts, comparison);
    compare_pictures(pdf, facts, comparison);
    compare_shown(facts, shown, comparison);
    return comparison;
}

/// Documents of packages may be packed; they are unpacked into `folder`.
std::map<std::string, Path> pdfs_below(int count, char** names, const Path& folder) {
    const auto disk = real_disk();
    std::map<std::string, Path> by_digest;
    const auto take = [&](const Path& path) {
        Path pdf = path;
        if (path.extension() == ".gz") {
            pdf = folder / (std::to_string(by_digest.size()) + "-" + path.stem().string());
            if (test::run("gzip -dc " + test::quoted(path.string()) + " >" + test::quoted(pdf.string()), "/").status != 0) return;
        }
        by_digest.try_emplace(digest_of(*disk, pdf).sha256, pdf);
    };
    for (int i = 0; i < count; ++i) {
        const Path named = names[i], packed = named.string() + ".gz";
        if (std::filesystem::is_directory(named)) {
            for (const auto& entry : std::filesystem::recursive_directory_iterator(named))
                if (entry.is_regular_file() && (entry.path().extension() == ".pdf" || entry.path().string().ends_with(".pdf.gz"))) take(entry.path());
        } else if (std::filesystem::exists(named)) {
            take(named);
        } else if (std::filesystem::exists(packed)) {
            take(packed);
        } else {
            std::cout << named.string() << " is missing; pipeline/set-up.sh tests brings documents of packages\n";
        }
    }
    return by_digest;
}

}  // namespace

int main(int argc, char** argv) {
    if (argc < 3) return std::cerr << "usage: agreement AT-LEAST FOLDER|FILE…\n", 2;
    const test::TestFolder unpacked;
    std::vector<Path> pdfs;
    for (const auto& [digest, path] : pdfs_below(argc - 2, argv + 2, unpacked.path())) pdfs.push_back(path);
    std::sort(pdfs.begin(), pdfs.end());
    std::vector<Comparison> all(pdfs.size());
    engine::Jobs(2).for_each(pdfs.size(), [&](std::size_t i) { all[i] = compared(pdfs[i]); });
    std::size_t facts = 0, apart = 0;
    for (std::size_t i = 0; i < all.size(); ++i) {
        facts += all[i].facts();
        if (all[i].told().empty()) continue;
        ++apart;
        std::cout << pdfs[i].string() << "\n" << all[i].told();
    }
    std::cout << "PDFs " << pdfs.size() << ", facts compared " << facts << ", PDFs with a disagreement " << apart << "\n";
    if (pdfs.size() < static_cast<std::size_t>(std::stoi(argv[1]))) return std::cout << "fewer PDFs than the " << argv[1] << " that are wanted\n", 1;
    return apart == 0 ? 0 : 1;
}
