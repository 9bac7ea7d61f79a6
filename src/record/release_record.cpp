// SPDX-License-Identifier: GPL-3.0-or-later
#include "record/release_record.h"

#include "base/fault.h"
#include "record/record_faults.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <limits>
#include <tuple>

namespace qw::record {

namespace {

using Json = nlohmann::ordered_json;  // keys in the order of the format's page

[[noreturn]] void refuse(const std::string& shown_name, const std::string& what) {
    throw Fault(FaultKind::not_carried_out,
                {"damaged-record", {shown_name, 0, 0}, what,
                 "a release record of format " + std::to_string(ReleaseRecord::format),
                 "release the kit again, or take the file from a copy"});
}

ReleaseRecord sorted(ReleaseRecord record) {
    std::sort(record.inputs.begin(), record.inputs.end(), [](const Input& a, const Input& b) { return a.path < b.path; });
    std::sort(record.files.begin(), record.files.end(),
              [](const File& a, const File& b) { return std::tie(a.path, a.bundle) < std::tie(b.path, b.bundle); });
    std::sort(record.bundles.begin(), record.bundles.end(), [](const Bundle& a, const Bundle& b) { return a.path < b.path; });
    return record;
}

Json optional(const std::optional<std::string>& text) { return text ? Json(*text) : Json(nullptr); }

Json json_of(const Input& input) {
    Json json = {{"path", input.path}, {"sha256", input.sha256}};
    if (!input.done.empty()) json["done"] = input.done;
    if (!input.rights.empty()) json["rights"] = input.rights;
    return json;
}

Json json_of(const File& file) {
    return {{"path", file.path},     {"bundle", file.bundle}, {"bytes", file.bytes},           {"sha256", file.sha256},
            {"role", file.role},     {"paper", optional(file.paper)}, {"print", optional(file.print)}, {"pages", file.pages}};
}

Json json_of(const Bundle& bundle) {
    return {{"path", bundle.path}, {"bytes", bundle.bytes}, {"sha256", bundle.sha256}, {"entries", bundle.entries}};
}

template <typename T>
Json list_of(const std::vector<T>& values) {
    Json list = Json::array();
    for (const T& value : values) list.push_back(json_of(value));
    return list;
}

/// An object that must have so many members, read one after the other. What does not fit is told with the
/// place in the document, "files[3].bytes".
class Members {
public:
    Members(const Json& value, std::string place, std::size_t count, const std::string& shown_name)
        : value_(value), place_(std::move(place)), shown_name_(shown_name) {
        if (!value.is_object() || value.size() != count) refuse(shown_name_, (place_.empty() ? "it" : place_) + " has not the members that it must have");
    }

    std::string text(const char* key) const {
        const Json& member = at(key);
        if (!member.is_string()) wrong(key, "is no text");
        return member.get<std::string>();
    }
    std::optional<std::string> optional_text(const char* key) const {
        if (at(key).is_null()) return std::nullopt;
        return text(key);
    }
    std::uint64_t whole(const char* key) const {
        const Json& member = at(key);
        if (!member.is_number_unsigned()) wrong(key, "is no whole number from 0");
        return member.get<std::uint64_t>();
    }
    int count(const char* key) const {
        const std::uint64_t value = whole(key);
        if (value > static_cast<std::uint64_t>(std::numeric_limits<int>::max())) wrong(key, "is too large");
        return static_cast<int>(value);
    }
    const Json& list(const char* key) const {
        const Json& member = at(key);
        if (!member.is_array()) wrong(key, "is no list");
        return member;
    }

private:
    const Json& at(const char* key) const {
        const auto member = value_.find(key);
        if (member == value_.end()) wrong(key, "is missing");
        return *member;
    }
    [[noreturn]] void wrong(const std::string& key, const std::string& how) const {
        refuse(shown_name_, (place_.empty() ? "" : place_ + ".") + key + " " + how);
    }

    const Json& value_;
    std::string place_;
    const std::string& shown_name_;
};

Input read_input(const Json& value, const std::string& place, const std::string& name) {
    const auto has = [&](const char* key) { return value.is_object() && value.contains(key); };
    const bool done = has("done"), rights = has("rights");
    const Members m(value, place, std::size_t{2} + done + rights, name);
    return {m.text("path"), m.text("sha256"), done ? m.text("done") : "", rights ? m.text("rights") : ""};
}

File read_file(const Json& value, const std::string& place, const std::string& name) {
    const Members m(value, place, 8, name);
    return {m.text("path"), m.text("bundle"),         m.whole("bytes"),         m.text("sha256"),
            m.text("role"), m.optional_text("paper"), m.optional_text("print"), m.count("pages")};
}

Bundle read_bundle(const Json& value, const std::string& place, const std::string& name) {
    const Members m(value, place, 4, name);
    return {m.text("path"), m.whole("bytes"), m.text("sha256"), m.count("entries")};
}

template <typename T>
std::vector<T> read_list(const Json& list, const std::string& key, const std::string& name,
                         T (*read)(const Json&, const std::string&, const std::string&)) {
    std::vector<T> values;
    for (std::size_t i = 0; i < list.size(); ++i) values.push_back(read(list[i], key + "[" + std::to_string(i) + "]", name));
    return values;
}

Json parsed(const std::string& text, const std::string& shown_name) {
    try {
        return Json::parse(text);
    } catch (const Json::exception&) {
        refuse(shown_name, "it is no JSON document");
    }
}

std::string json_text(const ReleaseRecord& record) {
    const Json json = {{"format", ReleaseRecord::format},            {"kit", record.kit},
                       {"version", record.version},           {"tool", record.tool},
                       {"inputs", list_of(record.inputs)},    {"files", list_of(record.files)},
                       {"bundles", list_of(record.bundles)}};
    return json.dump(2) + "\n";
}

}  // namespace

std::string to_json(const ReleaseRecord& unsorted) {
    const ReleaseRecord record = sorted(unsorted);
    const std::string fault = fault_in_record(record);
    if (!fault.empty()) throw Fault(FaultKind::not_carried_out, {"damaged-record", {"release.json", 0, 0}, fault, "", ""});
    return json_text(record);
}

ReleaseRecord read_release_record(const std::string& text, const std::string& shown_name) {
    const Json json = parsed(text, shown_name);
    const auto format = json.is_object() ? json.find("format") : json.end();
    if (format == json.end() || !format->is_number_unsigned()) refuse(shown_name, "it does not say which format it has");
    if (format->get<std::uint64_t>() != ReleaseRecord::format) refuse(shown_name, "it has format " + format->dump());
    const Members m(json, "", 7, shown_name);
    ReleaseRecord record{m.text("kit"), m.text("version"), m.text("tool"),
                         read_list(m.list("inputs"), "inputs", shown_name, read_input),
                         read_list(m.list("files"), "files", shown_name, read_file),
                         read_list(m.list("bundles"), "bundles", shown_name, read_bundle)};
    const std::string fault = fault_in_record(record);
    if (!fault.empty()) refuse(shown_name, fault);
    // Duplicate keys, another order, other spaces: no program of ours wrote that.
    if (json_text(sorted(record)) != text) refuse(shown_name, "it was changed after it was written");
    return record;
}

}  // namespace qw::record
