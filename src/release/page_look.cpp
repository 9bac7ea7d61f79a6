// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/page_look.h"

#include "artwork/thumbnail.h"
#include "base/digest.h"
#include "base/kept_values.h"
#include "base/fault.h"
#include "checks/palette_rules.h"
#include "proof/page_digest.h"

#include <utility>

namespace qw::release {

namespace {

/// Raised whenever a look tells something else of the same page.
constexpr int look_format = 4;

std::string key_of_look(const std::string& page) {
    return sha256_of("page look " + std::to_string(look_format) + "\n" + proof::renderer_name() + "\n" + page + "\n");
}

std::string key_of_misprint(const std::string& page, const MisprintAsked& asked) {
    std::string key = "misprint " + std::to_string(look_format) + "\n" + proof::renderer_name() + "\n" + page + "\n";
    for (const Length length : {asked.sheet.width, asked.sheet.height, asked.safe_area, asked.misprint.enlarged, asked.misprint.shifted})
        key += std::to_string(length.in_units()) + "\n";
    return sha256_of(key);
}

nlohmann::json packed(const proof::Misprinted& m) {
    return {m.aside.right.in_units(), m.aside.up.in_units(), m.lost, m.lost_safe, m.deepest.in_units(), m.move.in_units(), m.bare.in_units()};
}

proof::Misprinted misprinted_from(const nlohmann::json& json) {
    const auto length = [&](std::size_t i) { return Length::units(json.at(i).get<std::int64_t>()); };
    return {{length(0), length(1)}, json.at(2), json.at(3), length(4), length(5), length(6)};
}

nlohmann::json packed(const std::vector<artwork::Swatch>& palette) {
    nlohmann::json json = nlohmann::json::array();
    for (const artwork::Swatch& swatch : palette) json.push_back({swatch.red, swatch.green, swatch.blue, swatch.share});
    return json;
}

std::vector<artwork::Swatch> palette_from(const nlohmann::json& json) {
    std::vector<artwork::Swatch> palette;
    for (const nlohmann::json& one : json) palette.push_back({one.at(0), one.at(1), one.at(2), one.at(3)});
    return palette;
}

std::string packed(const PageLook& look) {
    return kept::bytes_of({{"size", kept::packed(look.seen.size)},
                           {"width", look.seen.width},
                           {"height", look.seen.height},
                           {"ink", kept::packed(look.seen.ink)},
                           {"text", kept::packed(look.seen.text)},
                           {"complaint", kept::packed(look.seen.complaint)},
                           {"picture", kept::packed(look.picture)},
                           {"palette", packed(look.palette)}});
}

PageLook look_from(const nlohmann::json& json, int page) {
    PageLook look;
    look.seen = {page,
                 kept::size_from(json.at("size")),
                 json.at("width"),
                 json.at("height"),
                 kept::ink_from(json.at("ink")),
                 kept::text_from(json.at("text")),
                 kept::text_from(json.at("complaint"))};
    look.picture = kept::bytes_from(json.at("picture"));
    look.palette = palette_from(json.at("palette"));
    return look;
}

std::string packed(const MisprintLook& look) { return kept::bytes_of({{"lost", packed(look.misprinted)}, {"picture", kept::packed(look.picture)}}); }

MisprintLook misprint_from(const nlohmann::json& json) { return {misprinted_from(json.at("lost")), kept::bytes_from(json.at("picture"))}; }

MisprintLook misprint_of(const proof::Pixels& pixels, const MisprintAsked& asked) {
    MisprintLook look{proof::misprint(pixels, asked.sheet, asked.safe_area, asked.misprint), {}};
    if (look.misprinted.lost_safe <= 0) return look;
    const proof::Pixels aside = proof::printed_aside(pixels, asked.sheet, asked.misprint.enlarged, look.misprinted.aside);
    look.picture = artwork::thumbnail(aside.rgb, aside.width, aside.height, thumbnail_pixels);
    return look;
}

}  // namespace

PageLooks::PageLooks(Disk& disk, const Path& file, std::string sha256, engine::Kept& kept)
    : disk_(disk), file_(file), sha256_(std::move(sha256)), kept_(kept) {}

/// A page of which no digest can be made goes by its file and its place there.
std::string PageLooks::digest_of_page(int page) {
    if (!digests_) {
        try {
            digests_ = proof::page_digests(disk_, file_);
        } catch (const Fault& fault) {
            if (fault.kind() != FaultKind::not_understood) throw;
            digests_.emplace();
        }
    }
    const auto index = static_cast<std::size_t>(page) - 1;
    if (index < digests_->size() && !(*digests_)[index].empty()) return (*digests_)[index];
    return sha256_ + " " + std::to_string(page);
}

proof::Renderer& PageLooks::renderer() {
    if (!renderer_) renderer_ = std::make_unique<proof::Renderer>(file_);
    return *renderer_;
}

int PageLooks::pages() { return renderer().pages(); }

std::string PageLooks::damage() { return renderer().damage(); }

PageLook PageLooks::page(int page, const std::optional<MisprintAsked>& asked) {
    const std::string digest = kept_.knows() || kept_.adds() ? digest_of_page(page) : "";
    const std::string look_key = key_of_look(digest), misprint_key = asked ? key_of_misprint(digest, *asked) : "";
    std::optional<PageLook> look = kept::find<PageLook>(kept_.find(look_key), [&](const nlohmann::json& json) { return look_from(json, page); });
    std::optional<MisprintLook> misprint;
    if (asked) misprint = kept::find<MisprintLook>(kept_.find(misprint_key), misprint_from);
    if (!look || (asked && !misprint)) {
        const proof::Pixels pixels = renderer().page(page, proof_dpi);
        look = PageLook{{page, renderer().shown_size(page), pixels.width, pixels.height, proof::ink_of(pixels), renderer().text(page), pixels.complaint},
                        artwork::thumbnail(pixels.rgb, pixels.width, pixels.height, thumbnail_pixels), artwork::palette_of(pixels.rgb, checks::most_swatches), {}};
        kept_.add(look_key, packed(*look));
        if (asked) {
            misprint = misprint_of(pixels, *asked);
            kept_.add(misprint_key, packed(*misprint));
        }
    }
    look->misprint = std::move(misprint);
    return std::move(*look);
}

}  // namespace qw::release
