// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/fault.h"
#include "kit/source_text.h"

#include <optional>

namespace YAML {
class Exception;
}

namespace qw::kit {

/// The YAML library's complaint in the words of someone who wrote a manifest: what is wrong, where, and what usually
/// mends it. `open_bracket` is the innermost `[` or `{` that had not been closed.
FaultNote explain(const YAML::Exception& error, const SourceText& source, const std::optional<SourceMark>& open_bracket);

}  // namespace qw::kit
