// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/yaml.h"

#include "kit/source_text.h"
#include "kit/tree_builder.h"
#include "kit/yaml_error.h"

#include <yaml-cpp/yaml.h>

#include <sstream>

namespace qw::kit {

Node read_yaml(std::string bytes, const std::string& file, Faults& faults, const YamlLimits& limits) {
    const SourceText source(std::move(bytes), file);
    Faults own;  // those of the structure; a syntax error is told without them
    TreeBuilder builder(source, limits, own);
    try {
        // With a line end at the end, an unclosed quote is always left to the builder, which knows where it was opened.
        std::istringstream in(source.text() + "\n");
        YAML::Parser parser(in);
        while (parser.HandleNextDocument(builder)) {
        }
    } catch (const TreeBuilder::SecondDocument&) {  // it has been told; the first document stands
    } catch (const YAML::Exception& error) {
        throw Fault(FaultKind::not_understood, explain(error, source, builder.open_bracket()));
    }
    Node root = builder.take();
    if (root.kind == Node::Kind::nothing)
        throw Fault(FaultKind::not_understood, {"empty-file", {file, 1, 1}, "the file holds nothing", "keys and values", ""});
    faults.add(own);
    if (root.kind != Node::Kind::map && root.kind != Node::Kind::refused) {
        faults.add("wrong-type", root.mark, "the file is no list of keys and values", "lines such as 'title: A title'", "");
        root.kind = Node::Kind::refused;
    }
    return root;
}

}  // namespace qw::kit
