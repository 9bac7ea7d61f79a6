// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/node_kind.h"

namespace qw::kit {

namespace {

std::string name_of(Node::Kind kind) {
    switch (kind) {
        case Node::Kind::list: return "a list";
        case Node::Kind::map: return "a map of keys and values";
        case Node::Kind::text: return "a single value";
        case Node::Kind::nothing: return "nothing";
        case Node::Kind::refused: break;
    }
    return "a refused value";
}

bool is_kind(Node::Kind wanted, const Node& node, Faults& faults, const std::string& expected) {
    if (node.kind == wanted) return true;
    if (node.kind == Node::Kind::nothing) faults.add("missing-value", node.mark, "a value is missing here", expected);
    else if (node.kind != Node::Kind::refused) faults.add("wrong-type", node.mark, name_of(node.kind) + " cannot stand here", expected);
    return false;
}

}  // namespace

bool is_map(const Node& node, Faults& faults, const std::string& example) {
    return is_kind(Node::Kind::map, node, faults, "keys and values, such as " + example);
}

bool is_list(const Node& node, Faults& faults, const std::string& example) {
    return is_kind(Node::Kind::list, node, faults, "a list, such as " + example);
}

const std::string* scalar_text(const Node& node, Faults& faults, const std::string& expected) {
    return is_kind(Node::Kind::text, node, faults, expected) ? &node.text : nullptr;
}

}  // namespace qw::kit
