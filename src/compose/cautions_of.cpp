// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/cautions_of.h"

#include <algorithm>

namespace qw::compose {

std::vector<std::string> cautions_of(const kit::Pipeline& pipeline, const std::vector<std::string>& tools) {
    std::vector<std::string> texts;
    for (const kit::Caution& caution : pipeline.cautions) {
        const bool belongs = std::any_of(pipeline.tools.begin(), pipeline.tools.end(), [&](const kit::Tool& tool) {
            return std::find(tools.begin(), tools.end(), tool.name) != tools.end() &&
                   std::find(tool.cautions.begin(), tool.cautions.end(), caution.name) != tool.cautions.end();
        });
        if (belongs) texts.push_back(caution.text);
    }
    return texts;
}

}  // namespace qw::compose
