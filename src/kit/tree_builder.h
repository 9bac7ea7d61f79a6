// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/faults.h"
#include "kit/node.h"
#include "kit/source_text.h"
#include "kit/yaml.h"

#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/mark.h>

#include <optional>
#include <string>
#include <vector>

namespace qw::kit {

/// Builds the tree from the YAML library's events. It is built from events, and not from the library's own nodes,
/// because those resolve aliases silently, keep double keys and have forgotten anchors.
class TreeBuilder : public YAML::EventHandler {
public:
    TreeBuilder(const SourceText& source, const YamlLimits& limits, Faults& faults);

    /// Thrown where a second document begins, after that has been told: what follows is not read.
    struct SecondDocument {};

    /// Where the innermost bracket that is still open stands; what a syntax error at the end of a file is about.
    std::optional<SourceMark> open_bracket() const;
    /// The root; `nothing` when there was no document.
    Node take();

    void OnDocumentStart(const YAML::Mark& mark) override;
    void OnDocumentEnd() override {}
    void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override;
    void OnAlias(const YAML::Mark& mark, YAML::anchor_t anchor) override;
    void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor, const std::string& value) override;
    void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor, YAML::EmitterStyle::value style) override;
    void OnSequenceEnd() override { close(); }
    void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor, YAML::EmitterStyle::value style) override;
    void OnMapEnd() override { close(); }
    void OnAnchor(const YAML::Mark& mark, const std::string& name) override;

private:
    /// A list or map that is being read; in a map, keys and values take turns.
    struct Open {
        Node node;
        bool bracket = false;
        bool key_read = false;
        bool key_usable = false;
        std::string key;
        SourceMark key_mark;
    };

    SourceMark place(const YAML::Mark& mark) const { return source_.at(mark.line, mark.column); }
    void open(Node::Kind kind, const YAML::Mark& mark, const std::string& tag, YAML::EmitterStyle::value style);
    void close();
    void leaf(Node node);
    void add(Node node);
    void add_key(Open& map, const Node& node);
    void add_value(Open& map, Node node);
    void refuse_tag(const YAML::Mark& mark, const std::string& tag);
    void count(const SourceMark& where);
    void check_quote(std::size_t byte, const SourceMark& where) const;
    SourceMark place_of_nothing(const YAML::Mark& mark) const;

    const SourceText& source_;
    YamlLimits limits_;
    Faults& faults_;
    std::vector<Open> open_;
    std::optional<Node> root_;
    bool begun_ = false;
    std::size_t values_ = 0;
};

}  // namespace qw::kit
