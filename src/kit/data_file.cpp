// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/data_file.h"

#include "base/digest.h"
#include "kit/node_kind.h"
#include "kit/source_text.h"
#include "kit/values.h"
#include "kit/yaml.h"

namespace qw::kit {

std::optional<std::string> DataFolder::bytes(const std::string& name) {
    const std::string shown = "pipeline/" + name;
    try {
        std::string text = read_bytes(disk_, folder_ / name, shown);
        inputs_.push_back({shown, sha256_of(text)});
        return text;
    } catch (const Fault& fault) {
        faults_.add(fault);
        return std::nullopt;
    }
}

std::optional<Node> DataFolder::tree(const std::string& name, std::string* read) {
    const auto text = bytes(name);
    if (!text) return std::nullopt;
    if (read) *read = *text;
    try {
        return read_yaml(*text, "pipeline/" + name, faults_);
    } catch (const Fault& fault) {
        faults_.add(fault);
        return std::nullopt;
    }
}

std::vector<std::string> DataFolder::files_in(const std::string& folder, const std::string& ending) {
    std::vector<std::string> names;
    const auto real = disk_.resolve(folder_ / folder);
    if (!real) return names;
    for (const std::string& name : disk_.list(*real)) {
        const auto file = disk_.resolve(*real / name);
        const auto there = file ? disk_.stat(*file) : std::nullopt;
        if (there && there->type == FileType::file && name.ends_with(ending) && !name.starts_with('.')) names.push_back(name);
    }
    return names;
}

void check_format(MapReader& map) {
    int format = 1;
    map.required("format", format, whole_number_value(1, 1));
}

void read_entries(MapReader& root, const std::string& key, const std::string& subject, Faults& faults, const ReadEntry& read) {
    const Node* entries = root.required(key);
    if (!entries || !is_map(*entries, faults, "a name, and below it its keys")) return;
    for (const Entry& entry : entries->entries) {
        check_plain_name(entry.key, entry.mark, faults);
        MapReader map(entry.value, faults, subject + " '" + entry.key + "'");
        read(entry, map);
        map.done();
    }
}

void read_optional_entries(MapReader& root, const std::string& key, const std::string& subject, Faults& faults, const ReadEntry& read) {
    if (root.has(key)) read_entries(root, key, subject, faults, read);
    else root.optional(key);  // so that it is among the keys that are known
}

void need_origin(MapReader& map, const Entry& entry, Faults& faults) {
    std::string text;
    map.optional("source", text, prose_value);
    map.optional("why", text, prose_value);
    if (entry.value.kind == Node::Kind::map && !map.has("source") && !map.has("why"))
        faults.add("missing-key", entry.value.mark, in_quotes(entry.key) + " does not say where its values come from",
                   "'source: …' or 'why: …'", "add one");
}

}  // namespace qw::kit
