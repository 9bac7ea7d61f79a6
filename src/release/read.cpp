// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/read.h"

#include "kit/read.h"
#include "release/kit_sizes.h"

namespace qw::release {

ReadKit read(Disk& disk, const Order& order) {
    ReadKit read;
    auto pipeline = std::make_shared<kit::Pipeline>(kit::read_pipeline(disk, order.pipeline));
    read.manifest = kit::read_manifest(disk, order.kit, *pipeline, read.inputs);
    read.inputs.insert(read.inputs.end(), pipeline->inputs.begin(), pipeline->inputs.end());
    read.journal = std::make_shared<kit::JournalTemplate>(kit::chosen(pipeline->journals.at(*read.manifest.journal), read.manifest.choices));
    read.printer = &printer_of(read.manifest, *pipeline, order.printer);
    read.pipeline = std::move(pipeline);
    if (order.source_date_epoch) read.date = Date::from_epoch(*order.source_date_epoch);
    else if (read.manifest.date) read.date = *read.manifest.date;
    return read;
}

}  // namespace qw::release
