// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/geometry.h"
#include "base/ink_map.h"

#include <nlohmann/json.hpp>

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// Values in the form in which they are kept between runs (src/engine/kept.md): JSON's data model in MessagePack, so that
/// bytes stay bytes. What `…_from` is given may be of any shape: it throws nlohmann::json::exception, which `find` takes for
/// "not known".
namespace qw::kept {

nlohmann::json packed(const std::vector<std::byte>& bytes);
/// Text of any encoding.
nlohmann::json packed(const std::string& text);
nlohmann::json packed(Size size);
nlohmann::json packed(const Ink& ink);

std::vector<std::byte> bytes_from(const nlohmann::json& json);
std::string text_from(const nlohmann::json& json);
Size size_from(const nlohmann::json& json);
/// A map whose cells are not as many as its rows and columns say is refused.
Ink ink_from(const nlohmann::json& json);

std::string bytes_of(const nlohmann::json& json);

/// The value in `bytes`, made by `from`; nothing when there are none or they are no such value.
template <class Value, class From>
std::optional<Value> find(const std::optional<std::string>& bytes, const From& from) {
    if (!bytes) return std::nullopt;
    try {
        return from(nlohmann::json::from_msgpack(*bytes));
    } catch (const nlohmann::json::exception&) {
        return std::nullopt;
    }
}

}  // namespace qw::kept
