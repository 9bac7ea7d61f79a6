// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/shared_data.h"
#include "kit/map_reader.h"
#include "kit/values.h"

#include <cmath>

namespace qw::kit {

namespace {

/// "20 MB": decimal units as shops write them, binary ones with an i (ISO/IEC 80000-13).
std::optional<std::uint64_t> bytes_value(const Node& node, Faults& faults) {
    const QuantityForm form{{{"MB", 1e6}, {"kB", 1e3}, {"GB", 1e9}, {"MiB", 1048576}, {"KiB", 1024}, {"GiB", 1073741824}, {"B", 1}},
                            1,
                            1e12,
                            "20 MB",
                            "1 B to 1000 GB"};
    const auto value = quantity_value(form)(node, faults);
    return value ? std::optional(static_cast<std::uint64_t>(std::llround(*value))) : std::nullopt;
}

/// "13000 characters", "13000 bytes"; a bare number is one of characters.
std::optional<TextLimit> text_limit_value(const Node& node, Faults& faults) {
    const QuantityForm form{{{"characters", 1}, {"bytes", 1}}, 1, 1e7, "13000 characters", "1 to 10000000 characters or bytes", true};
    const auto value = quantity_value(form)(node, faults);
    if (!value) return std::nullopt;
    return TextLimit{static_cast<int>(std::lround(*value)), node.text.ends_with("bytes")};
}

std::vector<Statement> read_statements(MapReader& reader, Faults& faults) {
    std::vector<Statement> statements;
    read_optional_entries(reader, "statements", "the statement", faults, [&](const Entry& entry, MapReader& map) {
        Statement statement;
        statement.name = entry.key;
        map.required("any-of", statement.any_of, list_value<std::string>(text_value, "[\"nothing is shipped\", \"no parcel is sent\"]"));
        map.required("why", statement.why, prose_value);
        statements.push_back(std::move(statement));
    });
    return statements;
}

}  // namespace

void read_shops(DataFolder& folder, Pipeline& into) {
    const auto root = folder.tree("shops.yaml");
    if (!root) return;
    Faults& faults = folder.faults();
    MapReader map(*root, faults, "the file");
    check_format(map);
    read_entries(map, "shops", "the shop", faults, [&](const Entry& entry, MapReader& reader) {
        Shop shop;
        shop.name = entry.key;
        reader.required("title", shop.title, text_value);
        reader.optional("most-files", shop.most_files, whole_number_value(1, 10'000));
        reader.optional("most-bytes-a-file", shop.most_bytes_a_file, bytes_value);
        reader.optional("longest-text", shop.longest_text, text_limit_value);
        reader.optional("longest-title", shop.longest_title, text_limit_value);
        shop.statements = read_statements(reader, faults);
        std::optional<Date> looked_up;
        reader.optional("looked-up", looked_up, date_value);
        need_origin(reader, entry, faults);
        into.shops.push_back(shop);
    });
    map.done();
}

}  // namespace qw::kit
