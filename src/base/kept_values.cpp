// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/kept_values.h"

#include <cstring>

namespace qw::kept {

namespace {

nlohmann::json binary(const void* data, std::size_t size) {
    std::vector<std::uint8_t> bytes(size);
    if (size > 0) std::memcpy(bytes.data(), data, size);
    return nlohmann::json::binary(std::move(bytes));
}

std::vector<std::uint8_t> cells_from(const nlohmann::json& json, const InkMap& map) {
    std::vector<std::uint8_t> cells = json.get_binary();
    // A map whose darkest cells nobody asks for has none of them.
    if (!cells.empty() && cells.size() != std::size_t{map.columns} * map.rows) throw nlohmann::json::other_error::create(501, "cells", &json);
    return cells;
}

}  // namespace

nlohmann::json packed(const std::vector<std::byte>& bytes) { return binary(bytes.data(), bytes.size()); }

nlohmann::json packed(const std::string& text) { return binary(text.data(), text.size()); }

nlohmann::json packed(Size size) { return {size.width.in_units(), size.height.in_units()}; }

nlohmann::json packed(const Ink& ink) {
    return {ink.box.left, ink.box.top, ink.box.right, ink.box.bottom, ink.coverage, ink.map.cell, ink.map.columns, ink.map.rows,
            nlohmann::json::binary(ink.map.darkest), nlohmann::json::binary(ink.map.mean)};
}

std::vector<std::byte> bytes_from(const nlohmann::json& json) {
    const auto& binary = json.get_binary();
    std::vector<std::byte> bytes(binary.size());
    if (!bytes.empty()) std::memcpy(bytes.data(), binary.data(), bytes.size());
    return bytes;
}

std::string text_from(const nlohmann::json& json) {
    const auto& binary = json.get_binary();
    return {binary.begin(), binary.end()};
}

Size size_from(const nlohmann::json& json) { return {Length::units(json.at(0).get<std::int64_t>()), Length::units(json.at(1).get<std::int64_t>())}; }

Ink ink_from(const nlohmann::json& json) {
    Ink ink;
    ink.box = {json.at(0), json.at(1), json.at(2), json.at(3)};
    ink.coverage = json.at(4);
    ink.map.cell = json.at(5);
    ink.map.columns = json.at(6);
    ink.map.rows = json.at(7);
    ink.map.darkest = cells_from(json.at(8), ink.map);
    ink.map.mean = cells_from(json.at(9), ink.map);
    return ink;
}

std::string bytes_of(const nlohmann::json& json) {
    std::string bytes;
    nlohmann::json::to_msgpack(json, nlohmann::detail::output_adapter<char>(bytes));
    return bytes;
}

}  // namespace qw::kept
