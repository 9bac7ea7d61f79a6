// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/file_facts.h"

#include "base/digest.h"
#include "proof/annotations.h"
#include "proof/content_walk.h"
#include "proof/damage.h"
#include "proof/disk_input.h"
#include "proof/document_facts.h"
#include "proof/find_oddities.h"
#include "proof/font_facts.h"
#include "proof/page_tree.h"

#include <algorithm>

namespace qw::proof {

namespace {

void hash(Source& source, FileFacts& facts) {
    Sha256 digest;
    std::vector<std::byte> buffer(std::size_t{256} << 10);
    while (const std::size_t got = source.read(facts.bytes, buffer)) {
        digest.add(std::span(buffer).first(got));
        facts.bytes += got;
    }
    facts.sha256 = digest.hex();
}

/// ISO 32000-1 7.5.5: the last line is %%EOF. libqpdf does not miss it; a file that lacks it was cut off.
void check_end(Source& source, Damage& damage) {
    constexpr std::uint64_t tail = 1024;
    std::string end(static_cast<std::size_t>(std::min(tail, source.size())), ' ');
    end.resize(source.read(source.size() - end.size(), std::as_writable_bytes(std::span(end.data(), end.size()))));
    if (end.find("%%EOF") == std::string::npos) damage.note("its end is missing: there is no %%EOF");
}

/// Runs one stretch of reading; what goes wrong in it is noted, and the next stretch is read all the same.
template <typename Work>
void guarded(QPDF& pdf, Damage& damage, Work work) {
    try {
        work();
    } catch (const QPDFExc& error) {
        damage.take_warnings(pdf);
        damage.note(error);
    } catch (const std::exception& error) {
        damage.take_warnings(pdf);
        damage.note(error.what());
    }
    damage.take_warnings(pdf);
}

void read_page(const TreePage& page, PictureBook& pictures, Budget& budget, OddityFinder& odd, FileFacts& facts, Damage& damage) {
    PageFacts& told = facts.pages.emplace_back();
    tell_boxes(page, told, damage);
    tell_page_extras(page.page, facts);
    odd.page(page, static_cast<int>(facts.pages.size()));
    tell_fonts(page.resources, told.fonts);
    for (const auto& shown : shown_appearances(page.page)) tell_fonts(entry(shown.form, "/Resources"), told.fonts);
    ContentWalk(pictures, budget, told).page(page.page, page.resources);
}

void read_structure(QPDF& pdf, FileFacts& facts, Damage& damage) {
    std::vector<TreePage> pages;
    OddityFinder odd(facts.oddities);
    guarded(pdf, damage, [&] { tell_document(pdf, facts); });
    guarded(pdf, damage, [&] { odd.document(pdf); });
    guarded(pdf, damage, [&] { pages = pages_of(pdf.getRoot(), damage); });
    PictureBook pictures;
    Budget budget;
    for (std::size_t i = 0; i < pages.size(); ++i) {
        damage.at("page " + std::to_string(i + 1));
        guarded(pdf, damage, [&] { read_page(pages[i], pictures, budget, odd, facts, damage); });
    }
}

bool open(QPDF& pdf, const std::shared_ptr<DiskInput>& input, FileFacts& facts, Damage& damage) {
    bool opened = false;
    pdf.setSuppressWarnings(true);
    guarded(pdf, damage, [&] {
        try {
            pdf.processInputSource(input);
            opened = true;
        } catch (const QPDFExc& error) {
            facts.encrypted = error.getErrorCode() == qpdf_e_password;
            throw;
        }
    });
    return opened;
}

}  // namespace

FileFacts inspect(Disk& disk, const Path& path) {
    FileFacts facts;
    const std::shared_ptr<Source> source = disk.open(path);
    hash(*source, facts);
    const auto input = std::make_shared<DiskInput>(source, path.filename().string());
    Damage damage;
    QPDF pdf;
    const bool opened = open(pdf, input, facts, damage);
    input->check();
    check_end(*source, damage);
    OddityFinder(facts.oddities).bytes(*source);
    if (opened) read_structure(pdf, facts, damage);
    input->check();
    facts.damage = damage.text();
    return facts;
}

}  // namespace qw::proof
