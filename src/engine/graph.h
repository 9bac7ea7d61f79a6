// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "engine/steps.h"

#include <cstddef>
#include <deque>
#include <map>
#include <string>
#include <unordered_map>
#include <vector>

namespace qw::engine {

/// A step in its graph. What lies before it is done and no longer changes when it is handed out.
struct Node {
    Step step;
    std::vector<const Node*> before;  ///< what it comes after
    std::vector<Node*> behind, told;  ///< what waits for it; what it told as a planning step
    std::size_t order = 0, waits_for = 0;
    bool is_done = false, succeeded = false;
    bool blocked = false;      ///< something before it did not succeed
    bool told_early = false;   ///< told by a planning step that is not current, from what it made last time
    Made outputs;
    Ran ran;
    Forecast forecast;
};

/// Steps that come after each other; it may grow while they are done. Not safe for several jobs at once: who shares it locks.
class Graph {
public:
    /// `teller`: the planning step that told them, or null. Throws Fault ("step-twice", "unknown-step").
    void add(std::vector<Step> steps, Node* teller);
    /// A step whose turn it is, in the order in which they were told; null when there is none now.
    Node* next();
    /// To be called once for each step that was handed out.
    void done(Node& node, bool succeeded);
    /// Throws Fault ("made-twice") when another step made something of the same name.
    void claim(const Node& node);
    /// When nothing is at work and nothing is ready: throws Fault ("circular-steps") when some steps were not done all the same.
    void check_all_done() const;
    /// In the order in which they were told, what a planning step told behind it.
    std::vector<Node*> in_order();

private:
    void connect(Node& node, const std::string& before);
    void gather(Node& node, std::vector<Node*>& into);

    std::deque<Node> nodes_;
    std::vector<Node*> first_;  ///< told by no other step
    std::unordered_map<std::string, Node*> by_name_;
    std::unordered_map<std::string, const Node*> makers_;
    std::map<std::size_t, Node*> ready_;
};

}  // namespace qw::engine
