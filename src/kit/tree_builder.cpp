// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/tree_builder.h"

#include <algorithm>

namespace qw::kit {

TreeBuilder::TreeBuilder(const SourceText& source, const YamlLimits& limits, Faults& faults)
    : source_(source), limits_(limits), faults_(faults) {}

std::optional<SourceMark> TreeBuilder::open_bracket() const {
    const auto found = std::find_if(open_.rbegin(), open_.rend(), [](const Open& open) { return open.bracket; });
    if (found == open_.rend()) return std::nullopt;
    return found->node.mark;
}

Node TreeBuilder::take() { return root_ ? std::move(*root_) : Node{}; }

void TreeBuilder::OnDocumentStart(const YAML::Mark& mark) {
    if (begun_) {
        faults_.add("second-document", place(mark), "a second document begins here", "one document in a file",
                    "remove this line '---' and what follows it");
        throw SecondDocument{};
    }
    begun_ = true;
}

void TreeBuilder::OnNull(const YAML::Mark& mark, YAML::anchor_t) {
    Node node;
    node.mark = place_of_nothing(mark);
    leaf(std::move(node));
}

void TreeBuilder::OnAlias(const YAML::Mark& mark, YAML::anchor_t) {
    Node node;
    node.kind = Node::Kind::refused;
    node.mark = place(mark);
    faults_.add("alias", node.mark, "an alias stands here (a word that begins with '*')", "the value itself",
                "write the value out; a text that begins with '*' is quoted");
    leaf(std::move(node));
}

void TreeBuilder::OnAnchor(const YAML::Mark& mark, const std::string& name) {
    faults_.add("anchor", place(mark), "an anchor stands here: " + in_quotes("&" + name), "the value alone",
                "remove the anchor; a text that begins with '&' is quoted");
}

void TreeBuilder::OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t, const std::string& value) {
    Node node;
    node.kind = Node::Kind::text;
    node.text = value;
    node.quoted = tag == "!";
    node.mark = place(mark);
    if (node.quoted) check_quote(source_.byte_of(mark.line, mark.column), node.mark);
    refuse_tag(mark, tag);
    leaf(std::move(node));
}

void TreeBuilder::OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t, YAML::EmitterStyle::value style) {
    open(Node::Kind::list, mark, tag, style);
}

void TreeBuilder::OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t, YAML::EmitterStyle::value style) {
    open(Node::Kind::map, mark, tag, style);
}

void TreeBuilder::open(Node::Kind kind, const YAML::Mark& mark, const std::string& tag, YAML::EmitterStyle::value style) {
    Open next;
    next.node.kind = kind;
    next.node.mark = place(mark);
    next.bracket = style == YAML::EmitterStyle::Flow;
    refuse_tag(mark, tag);
    count(next.node.mark);
    if (open_.size() == limits_.depth)
        throw Fault(FaultKind::not_understood, {"too-deep", next.node.mark, "values are nested too deeply",
                                                "at most " + std::to_string(limits_.depth) + " levels", ""});
    open_.push_back(std::move(next));
}

void TreeBuilder::close() {
    Node node = std::move(open_.back().node);
    open_.pop_back();
    add(std::move(node));
}

void TreeBuilder::leaf(Node node) {
    count(node.mark);
    add(std::move(node));
}

void TreeBuilder::add(Node node) {
    if (open_.empty()) {
        root_ = std::move(node);
        return;
    }
    Open& parent = open_.back();
    if (parent.node.kind == Node::Kind::list) parent.node.items.push_back(std::move(node));
    else if (parent.key_read) add_value(parent, std::move(node));
    else add_key(parent, node);
}

void TreeBuilder::add_key(Open& map, const Node& node) {
    map.key_read = true;
    map.key_usable = false;
    map.key_mark = node.mark;
    map.key = node.text;
    if (node.kind == Node::Kind::refused) return;
    const std::vector<Entry>& entries = map.node.entries;
    const auto first = std::find_if(entries.begin(), entries.end(), [&](const Entry& entry) { return entry.key == node.text; });
    if (node.kind != Node::Kind::text) {
        faults_.add("key-not-text", node.mark, "this key is no text", "a word followed by a colon");
    } else if (node.text == "<<" && !node.quoted) {
        faults_.add("merge-key", node.mark, "a merge key stands here: '<<'", "the keys themselves", "write the keys out");
    } else if (first != entries.end()) {
        faults_.add("duplicate-key", node.mark,
                    in_quotes(node.text) + " stands here a second time; the first is in line " + std::to_string(first->mark.line),
                    "each key once", "remove one of them or give it another name");
    } else {
        map.key_usable = true;
    }
}

void TreeBuilder::add_value(Open& map, Node node) {
    map.key_read = false;
    if (!map.key_usable) return;
    // The library gives the place of the next token, lines below, as that of a value that was not written.
    if (node.kind == Node::Kind::nothing) node.mark = map.key_mark;
    map.node.entries.push_back({map.key, map.key_mark, std::move(node)});
}

void TreeBuilder::refuse_tag(const YAML::Mark& mark, const std::string& tag) {
    // "?" and "!" are what the library says of plain and of quoted texts; a lone '!' is a tag all the same.
    const bool written = source_.text().compare(source_.byte_of(mark.line, mark.column), 1, "!") == 0;
    if ((tag.empty() || tag == "?" || tag == "!") && !written) return;
    faults_.add("tag", place(mark), "a tag stands here (a word that begins with '!')", "the value alone",
                "remove the tag; a text that begins with '!' is quoted");
}

void TreeBuilder::count(const SourceMark& where) {
    if (++values_ > limits_.values)
        throw Fault(FaultKind::not_understood,
                    {"too-many-values", where, "the file holds too many values", "at most " + std::to_string(limits_.values), ""});
}

/// The library takes a quote that is never closed to be closed by the end of the file, and so swallows the keys after it.
void TreeBuilder::check_quote(std::size_t byte, const SourceMark& where) const {
    const std::string& text = source_.text();
    const char quote = byte < text.size() ? text[byte] : '\0';
    if (quote != '"' && quote != '\'') return;  // a block of text
    for (std::size_t i = byte + 1; i < text.size(); ++i) {
        if (quote == '"' && text[i] == '\\') ++i;
        else if (text[i] == quote && quote == '\'' && i + 1 < text.size() && text[i + 1] == quote) ++i;
        else if (text[i] == quote) return;
    }
    throw Fault(FaultKind::not_understood, {"syntax", where, "a quote is opened here and never closed", "", "close the quote"});
}

/// Where an item that was not written would stand: the library names the next token, so its dash is looked for above.
SourceMark TreeBuilder::place_of_nothing(const YAML::Mark& mark) const {
    constexpr int farthest = 100;
    const bool in_dashed_list = !open_.empty() && open_.back().node.kind == Node::Kind::list && !open_.back().bracket;
    const std::string_view at = std::string_view(source_.text()).substr(source_.byte_of(mark.line, mark.column));
    if (!in_dashed_list || at.starts_with('~') || at.starts_with('n') || at.starts_with('N')) return place(mark);
    for (int line = mark.line; line >= std::max(0, mark.line - farthest); --line) {
        const std::string_view text = source_.line(line);
        const std::size_t dash = text.find_first_not_of(" \t");
        if (dash == std::string_view::npos || text[dash] != '-') continue;
        const std::size_t next = text.find_first_not_of(" \t", dash + 1);
        const bool before = line < mark.line || static_cast<int>(dash) < mark.column;
        if (before && (next == std::string_view::npos || text[next] == '#')) return source_.at(line, static_cast<int>(dash));
    }
    return place(mark);
}

}  // namespace qw::kit
