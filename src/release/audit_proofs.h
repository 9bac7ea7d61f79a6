// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "release/make.h"

namespace qw::release {

/// What is printed before sale: writes the proofing set that the order asks for, from the files below `made_folder`; reads
/// and writes signed proofs, and tells which still hold. `scratch` is made when it is needed. Throws Fault.
void audit_proofs(Disk& disk, const Order& order, const Prepared& prepared, const Path& made_folder, const Path& scratch, Made& made);

}  // namespace qw::release
