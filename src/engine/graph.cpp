// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/graph.h"

namespace qw::engine {

namespace {

Fault wrong_steps(const std::string& code, const std::string& what) { return Fault(FaultKind::not_carried_out, {code, {}, what, "", ""}); }

}  // namespace

void Graph::add(std::vector<Step> steps, Node* teller) {
    std::vector<Node*> added;
    for (Step& step : steps) {
        Node& node = nodes_.emplace_back();
        node.order = nodes_.size();
        node.step = std::move(step);
        if (!by_name_.emplace(node.step.name, &node).second) throw wrong_steps("step-twice", "two steps are called '" + node.step.name + "'");
        added.push_back(&node);
        (teller ? teller->told : first_).push_back(&node);
    }
    // All are there by now: they may come after each other.
    for (Node* node : added) {
        if (teller) connect(*node, teller->step.name);
        for (const std::string& before : node->step.after) connect(*node, before);
        if (node->waits_for == 0) ready_.emplace(node->order, node);
    }
}

void Graph::connect(Node& node, const std::string& before) {
    const auto found = by_name_.find(before);
    if (found == by_name_.end()) throw wrong_steps("unknown-step", "step '" + node.step.name + "' comes after '" + before + "', which does not exist");
    Node& other = *found->second;
    node.before.push_back(&other);
    if (other.is_done) {
        node.blocked = node.blocked || !other.succeeded;
    } else {
        other.behind.push_back(&node);
        ++node.waits_for;
    }
}

Node* Graph::next() {
    if (ready_.empty()) return nullptr;
    Node* const node = ready_.begin()->second;
    ready_.erase(ready_.begin());
    return node;
}

void Graph::done(Node& node, bool succeeded) {
    node.is_done = true;
    node.succeeded = succeeded;
    for (Node* other : node.behind) {
        other->blocked = other->blocked || !succeeded;
        if (--other->waits_for == 0) ready_.emplace(other->order, other);
    }
}

void Graph::claim(const Node& node) {
    for (const auto& [name, digest] : node.outputs) {
        const auto [found, is_new] = makers_.emplace(name, &node);
        if (!is_new) throw wrong_steps("made-twice", "steps '" + found->second->step.name + "' and '" + node.step.name + "' both made '" + name + "'");
    }
}

void Graph::check_all_done() const {
    for (const Node& node : nodes_)
        if (!node.is_done) throw wrong_steps("circular-steps", "step '" + node.step.name + "' comes, by way of others, after itself or after one that does");
}

std::vector<Node*> Graph::in_order() {
    std::vector<Node*> all;
    for (Node* node : first_) gather(*node, all);
    return all;
}

void Graph::gather(Node& node, std::vector<Node*>& into) {
    into.push_back(&node);
    for (Node* told : node.told) gather(*told, into);
}

}  // namespace qw::engine
