// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/shared_data.h"
#include "kit/source_text.h"
#include "kit/values.h"

namespace qw::kit {

namespace {

/// A file that stands beside studio.yaml: a name, no path.
std::optional<std::string> file_name_value(const Node& node, Faults& faults) {
    const auto name = text_value(node, faults);
    if (!name) return std::nullopt;
    if (name->find_first_of("/\\") == std::string::npos && !name->starts_with('.')) return name;
    faults.add("bad-path", node.mark, in_quotes(*name) + " is no name of a file beside studio.yaml", "a name such as studio-terms.txt");
    return std::nullopt;
}

}  // namespace

void read_studio(DataFolder& folder, Pipeline& into) {
    const auto root = folder.tree("studio.yaml");
    if (!root) return;
    Faults& faults = folder.faults();
    MapReader map(*root, faults, "the file");
    check_format(map);
    map.required("name", into.studio.name, text_value);
    map.required("line", into.studio.line, prose_value);
    std::string why;
    map.optional("why", why, prose_value);
    if (map.required("terms-file", into.studio.terms_file, file_name_value)) {
        if (const auto terms = folder.bytes(into.studio.terms_file)) into.texts[into.studio.terms_file] = *terms;
    }
    map.done();
}

}  // namespace qw::kit
