// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/kept_looks.h"

#include "base/digest.h"
#include "base/kept_values.h"
#include "proof/render.h"

namespace qw::release {

namespace {

/// Raised whenever the same bytes are found to be something else.
constexpr int facts_format = 1;

std::string key_of_facts(const std::string& sha256) { return sha256_of("artwork " + std::to_string(facts_format) + "\n" + sha256 + "\n"); }

std::string key_of_ink(const std::string& sha256, double dpi) {
    return sha256_of("artwork pages " + std::to_string(facts_format) + "\n" + proof::renderer_name() + "\n" + sha256 + "\n" + std::to_string(dpi) + "\n");
}

nlohmann::json packed(const artwork::Extents& extents) {
    nlohmann::json json = nlohmann::json::array();
    for (const artwork::Extent& extent : extents) {
        json.push_back(extent.offset);
        json.push_back(extent.length);
    }
    return json;
}

artwork::Extents extents_from(const nlohmann::json& json) {
    artwork::Extents extents;
    for (std::size_t i = 0; i < json.size(); i += 2) extents.push_back({json.at(i), json.at(i + 1)});
    return extents;
}

nlohmann::json packed(const artwork::Facts& facts) {
    nlohmann::json json{{"kind", static_cast<int>(facts.kind)},
                        {"bytes", facts.bytes},
                        {"sha256", facts.sha256},
                        {"damage", kept::packed(facts.damage)},
                        {"width", facts.width},
                        {"height", facts.height},
                        {"turn", facts.turn},
                        {"colour", static_cast<int>(facts.colour)},
                        {"bits", facts.bits},
                        {"alpha", facts.alpha},
                        {"interlaced", facts.interlaced},
                        {"profile", facts.profile},
                        {"srgb", facts.profile_is_srgb},
                        {"converted", kept::packed(facts.converted_from)},
                        {"farthest", facts.farthest_move},
                        {"passage", static_cast<int>(facts.passage)},
                        {"recoded", kept::packed(facts.why_recoded)},
                        {"payload", packed(facts.payload)},
                        {"payload-sha256", facts.payload_sha256},
                        {"palette", kept::packed(facts.palette)},
                        {"pixels", facts.pixels},
                        {"quality", facts.jpeg_quality},
                        {"ink", kept::packed(facts.ink)}};
    if (facts.density) json["density"] = {facts.density->x, facts.density->y};
    return json;
}

/// A number beyond the last name is no value of ours.
template <class Enum>
Enum enum_from(const nlohmann::json& json, Enum last) {
    const int value = json;
    if (value < 0 || value > static_cast<int>(last)) throw nlohmann::json::other_error::create(501, "no such value", nullptr);
    return static_cast<Enum>(value);
}

artwork::Facts facts_from(const nlohmann::json& json) {
    artwork::Facts facts;
    facts.kind = enum_from(json.at("kind"), artwork::Kind::jpeg);
    facts.bytes = json.at("bytes");
    facts.sha256 = json.at("sha256");
    facts.damage = kept::text_from(json.at("damage"));
    facts.width = json.at("width");
    facts.height = json.at("height");
    facts.turn = json.at("turn");
    facts.colour = enum_from(json.at("colour"), artwork::Colour::cmyk);
    facts.bits = json.at("bits");
    facts.alpha = json.at("alpha");
    facts.interlaced = json.at("interlaced");
    if (json.contains("density")) facts.density = artwork::Density{json["density"].at(0), json["density"].at(1)};
    facts.profile = json.at("profile");
    facts.profile_is_srgb = json.at("srgb");
    facts.converted_from = kept::text_from(json.at("converted"));
    facts.farthest_move = json.at("farthest");
    facts.passage = enum_from(json.at("passage"), artwork::Passage::recoded);
    facts.why_recoded = kept::text_from(json.at("recoded"));
    facts.payload = extents_from(json.at("payload"));
    facts.payload_sha256 = json.at("payload-sha256");
    facts.palette = kept::bytes_from(json.at("palette"));
    facts.pixels = json.at("pixels");
    facts.jpeg_quality = json.at("quality");
    facts.ink = kept::ink_from(json.at("ink"));
    return facts;
}

}  // namespace

std::optional<artwork::Facts> kept_facts(engine::Kept& kept, const std::string& sha256) {
    return kept::find<artwork::Facts>(kept.find(key_of_facts(sha256)), facts_from);
}

void keep_facts(engine::Kept& kept, const artwork::Facts& facts) {
    if (kept.adds()) kept.add(key_of_facts(facts.sha256), kept::bytes_of(packed(facts)));
}

std::optional<std::vector<Ink>> kept_ink(engine::Kept& kept, const std::string& sha256, double dpi) {
    return kept::find<std::vector<Ink>>(kept.find(key_of_ink(sha256, dpi)), [](const nlohmann::json& json) {
        std::vector<Ink> pages;
        for (const nlohmann::json& one : json) pages.push_back(kept::ink_from(one));
        return pages;
    });
}

void keep_ink(engine::Kept& kept, const std::string& sha256, double dpi, const std::vector<Ink>& pages) {
    if (!kept.adds()) return;
    nlohmann::json json = nlohmann::json::array();
    for (const Ink& ink : pages) json.push_back(kept::packed(ink));
    kept.add(key_of_ink(sha256, dpi), kept::bytes_of(json));
}

}  // namespace qw::release
