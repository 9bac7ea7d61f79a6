// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/data_file.h"
#include "kit/pipeline.h"

namespace qw::kit {

/// Readers of the files directly under pipeline/, one for each; src/kit/pipeline-data.md is their page. Each tells
/// what is wrong in the folder's faults and fills what can be read.
void read_papers(DataFolder& folder, Pipeline& into);
void read_printers(DataFolder& folder, Pipeline& into);
void read_stocks(DataFolder& folder, Pipeline& into);
void read_boards(DataFolder& folder, Pipeline& into);
void read_shops(DataFolder& folder, Pipeline& into);
void read_studio(DataFolder& folder, Pipeline& into);
void read_checks(DataFolder& folder, Pipeline& into);
void read_materials(DataFolder& folder, Pipeline& into);
void read_things(DataFolder& folder, Pipeline& into);
void read_fonts(DataFolder& folder, Pipeline& into);
void read_part_rules(DataFolder& folder, Pipeline& into);

}  // namespace qw::kit
