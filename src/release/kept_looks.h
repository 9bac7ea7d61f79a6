// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "artwork/facts.h"
#include "engine/kept.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::release {

/// What an earlier run found out about a file of artwork with these bytes, so that it need not be decoded again; nothing
/// when it is not known.
std::optional<artwork::Facts> kept_facts(engine::Kept& kept, const std::string& sha256);
void keep_facts(engine::Kept& kept, const artwork::Facts& facts);

/// The same for the pages of a PDF, as they were rendered at so many dots an inch.
std::optional<std::vector<Ink>> kept_ink(engine::Kept& kept, const std::string& sha256, double dpi);
void keep_ink(engine::Kept& kept, const std::string& sha256, double dpi, const std::vector<Ink>& pages);

}  // namespace qw::release
