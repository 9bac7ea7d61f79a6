// SPDX-License-Identifier: GPL-3.0-or-later
#include "release/audit_proofs.h"

#include "release/proofing_set.h"

namespace qw::release {

void audit_proofs(Disk& disk, const Order& order, const Prepared& prepared, const Path& made_folder, const Path& scratch, Made& made) {
    if (!order.proofing) return;
    const ChosenProofs chosen = choose_proofs(prepared, made.report);
    disk.make_folders(scratch);
    write_proofing_set(disk, prepared, chosen, made_folder, scratch, *order.proofing);
    made.report.proofing = as_told(chosen);
}

}  // namespace qw::release
