// SPDX-License-Identifier: GPL-3.0-or-later
#include "texts/model.h"

#include <utility>

namespace qw::texts {

Model& Model::text(const std::string& name, std::string words) {
    values_.insert_or_assign(name, Value(std::move(words)));
    return *this;
}

Model& Model::truth(const std::string& name, bool holds) {
    values_.insert_or_assign(name, Value(holds));
    return *this;
}

Model& Model::list(const std::string& name, std::vector<Model> items) {
    values_.insert_or_assign(name, Value(std::move(items)));
    return *this;
}

}  // namespace qw::texts
