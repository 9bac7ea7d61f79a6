// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/finding.h"

#include <nlohmann/json.hpp>

namespace qw::report {

/// One finding in the form that every command prints.
inline nlohmann::ordered_json finding_json(const Finding& f) {
    nlohmann::ordered_json where;
    where["file"] = f.file;
    where["page"] = f.page;
    where["line"] = f.line;
    nlohmann::ordered_json json;
    json["rule"] = f.rule;
    json["level"] = name_of(f.level);
    json["where"] = where;
    json["measured"] = f.measured;
    json["limit"] = f.limit;
    json["message"] = f.message;
    json["mend"] = f.mend;
    return json;
}

}  // namespace qw::report
