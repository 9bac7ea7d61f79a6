// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>
#include <variant>
#include <vector>

namespace qw::texts {

/// What a text may say: names with a text, a truth or a list of further models. Every number that a sentence shows
/// comes from here, already rounded and with its unit. A name that was given before is given anew.
class Model {
public:
    Model& text(const std::string& name, std::string words);
    Model& truth(const std::string& name, bool holds);
    Model& list(const std::string& name, std::vector<Model> items);

    using Value = std::variant<std::string, bool, std::vector<Model>>;
    const std::map<std::string, Value>& values() const { return values_; }

private:
    std::map<std::string, Value> values_;
};

}  // namespace qw::texts
