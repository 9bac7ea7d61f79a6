// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/signed_proofs.h"

#include "kit/data_file.h"
#include "kit/map_reader.h"
#include "kit/values.h"
#include "kit/yaml.h"

#include <algorithm>

namespace qw::kit {

namespace {

std::optional<std::string> digest_value(const Node& node, Faults& faults) {
    const auto text = text_value(node, faults);
    if (!text) return std::nullopt;
    if (text->size() == 64 && text->find_first_not_of("0123456789abcdef") == std::string::npos) return text;
    faults.add("bad-digest", node.mark, in_quotes(*text) + " is no SHA-256 digest", "64 hexadecimal digits", "leave it as the form had it");
    return std::nullopt;
}

std::optional<BackOffset> offset_value(const Node& node, Faults& faults) {
    if (!is_map(node, faults, "{ x: 0.5 mm, y: -1 mm }")) return std::nullopt;
    const auto length = length_value({-Length::mm(50), Length::mm(50), "-50 mm to 50 mm"});
    BackOffset offset;
    MapReader map(node, faults, "the offset");
    const bool x = map.required("x", offset.x, length), y = map.required("y", offset.y, length);
    map.done();
    return x && y ? std::optional(offset) : std::nullopt;
}

/// Who signs says all of it: a verdict without the reading is of no use a year later.
void check_whole(MapReader& map, const SignedProof& proof, Faults& faults) {
    if (!proof.good) return;
    std::vector<std::string> missing;
    for (const auto& [key, text] : {std::pair("printed-by", &proof.printed_by), std::pair("printer", &proof.printer),
                                    std::pair("stock", &proof.stock), std::pair("setting", &proof.setting)})
        if (text->empty()) missing.push_back(key);
    if (!proof.date) missing.push_back("date");
    if (proof.asks_gauge && !proof.gauge) missing.push_back("gauge");
    if (proof.asks_offset && !proof.offset) missing.push_back("offset");
    for (const std::string& key : missing)
        if (!map.has(key) || map.blank(key))
            faults.add("not-filled-in", map.has(key) ? map.mark_of(key) : proof.mark, "the sheet has a verdict, and '" + key + "' is empty",
                       "all that the form asks for", "fill it in, or take the verdict out until it is known");
}

SignedProof read_proof(const Node& node, Faults& faults) {
    SignedProof proof;
    proof.mark = node.mark;
    MapReader map(node, faults, "the proof");
    map.required("version", proof.version, version_value);
    map.required("file", proof.file, text_value);
    map.required("pages", proof.pages, list_value<int>(whole_number_value(1, 50'000), "[1, 2]"));
    map.required("sha256", proof.sha256, digest_value);
    map.required("page-digests", proof.digests, Reader<std::vector<std::string>>([](const Node& list, Faults& told) -> std::optional<std::vector<std::string>> {
        if (!is_list(list, told, "one digest for each page")) return std::nullopt;
        std::vector<std::string> digests;  // two pages may be alike
        for (const Node& item : list.items)
            if (auto digest = digest_value(item, told)) digests.push_back(*digest);
        return digests;
    }));
    if (faults.none() && proof.digests.size() != proof.pages.size())
        faults.add("bad-digest", map.mark_of("page-digests"),
                   std::to_string(proof.digests.size()) + " digests for " + std::to_string(proof.pages.size()) + " pages", "one for each page",
                   "leave them as the form had them");
    proof.asks_gauge = map.has("gauge");
    proof.asks_offset = map.has("offset");
    // What the form leaves empty may stay so.
    const auto fill = [&](const char* key, auto& into, auto read) {
        if (!map.blank(key)) map.optional(key, into, read);
    };
    fill("printed-by", proof.printed_by, text_value);
    fill("printer", proof.printer, text_value);
    fill("stock", proof.stock, text_value);
    fill("setting", proof.setting, text_value);
    fill("gauge", proof.gauge, length_value({Length::mm(10), Length::mm(1000), "10 mm to 1000 mm"}));
    fill("offset", proof.offset, offset_value);
    fill("date", proof.date, date_value);
    fill("verdict", proof.good, word_value<bool>({{"good", true}, {"bad", false}}));
    check_whole(map, proof, faults);
    map.done();
    return proof;
}

std::string blank_of(const SignedProof& proof, const std::string& indent) {
    std::string pages, digests;
    for (std::size_t i = 0; i < proof.pages.size(); ++i) {
        pages += (i ? ", " : "") + std::to_string(proof.pages[i]);
        digests += (i ? ", '" : "'") + proof.digests[i] + "'";
    }
    std::string text = indent + "- version: " + proof.version + "\n";
    const auto line = [&](const std::string& words) { text += indent + "  " + words + "\n"; };
    line("file: " + proof.file);
    line("pages: [" + pages + "]");
    line("sha256: '" + proof.sha256 + "'");
    line("page-digests: [" + digests + "]");
    for (const char* key : {"printed-by:", "printer:", "stock:", "setting:"}) line(key);
    if (proof.asks_gauge) line("gauge:");
    if (proof.asks_offset) line("offset:");
    for (const char* key : {"date:", "verdict:"}) line(key);
    return text;
}

const Node* list_in(const Node& root) {
    const auto found = std::find_if(root.entries.begin(), root.entries.end(), [](const Entry& entry) { return entry.key == "proofs"; });
    return found == root.entries.end() ? nullptr : &found->value;
}

}  // namespace

SignedProofs read_signed_proofs(const std::string& bytes, const std::string& shown) {
    Faults faults;
    const Node root = read_yaml(bytes, shown, faults);
    SignedProofs read;
    MapReader map(root, faults, "the file");
    check_format(map);
    map.required("kit", read.kit, plain_name_value);
    const Node* list = map.required("proofs");
    if (list && is_list(*list, faults, "a list of proofs"))
        for (const Node& item : list->items) {
            Faults own;
            read.proofs.push_back(read_proof(item, own));
            faults.add(own);
        }
    map.done();
    faults.throw_if_any();
    return read;
}

std::string form_of(const std::string& kit, const std::vector<SignedProof>& blanks) {
    std::string text = "# Proofs on paper that somebody has signed. Fill in what is empty; what the form has filled in stays as it is.\n"
                       "# setting: what the printer was told, such as 100 %, two-sided, short edge\n"
                       "# gauge: what the long line of the sheet measures, such as 200 mm or 8 in\n"
                       "# offset: the back against the front, to the right and upward, such as { x: 0.5 mm, y: -1 mm }\n"
                       "# date: such as 2026-09-01; verdict: good or bad. A sheet with a verdict is signed.\n"
                       "format: 1\nkit: " + kit + "\nproofs:\n";
    for (const SignedProof& blank : blanks) text += blank_of(blank, "  ");
    return text;
}

std::string with_blanks(const std::string& bytes, const std::string& shown, const std::vector<SignedProof>& blanks) {
    if (blanks.empty()) return bytes;
    const SignedProofs before = read_signed_proofs(bytes, shown);
    Faults faults;
    const Node root = read_yaml(bytes, shown, faults);
    const Node* list = list_in(root);
    const int column = list && !list->items.empty() ? list->items.front().mark.column : 5;
    std::string added;
    for (const SignedProof& blank : blanks) added += blank_of(blank, std::string(static_cast<std::size_t>(std::max(0, column - 3)), ' '));
    const bool windows = bytes.find("\r\n") != std::string::npos;
    std::string text = bytes + (bytes.empty() || bytes.back() == '\n' ? "" : windows ? "\r\n" : "\n");
    for (const char c : added) text += c == '\n' && windows ? "\r\n" : std::string(1, c);
    bool whole = false;
    try {
        whole = read_signed_proofs(text, shown).proofs.size() == before.proofs.size() + blanks.size();
    } catch (const Fault&) {  // what was added does not stand where it was meant to
    }
    if (!whole)
        throw Fault(FaultKind::not_understood,
                    {"cannot-be-added-to", list ? list->mark : SourceMark{shown, 0, 0}, "nothing can be added at the end of the list of proofs",
                     "the list as the last key of the file, each proof below a hyphen", "write it as the form had it, or sign a new file"});
    return text;
}

}  // namespace qw::kit
