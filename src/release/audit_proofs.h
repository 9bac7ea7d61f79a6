// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "kit/signed_proofs.h"
#include "release/make.h"

namespace qw::release {

/// The file of signed proofs that the order names, else the kit's own.
struct ProofsFile {
    Path path;
    std::string shown;
    bool there = false;
    std::string bytes;
    kit::SignedProofs read;                  ///< of a file that is not there: none
};
/// Throws Fault for a file that cannot be understood, or that is another kit's.
ProofsFile read_proofs(Disk& disk, const Order& order, const kit::Manifest& manifest);

/// What is printed before sale: writes the proofing set that the order asks for, from the files below `made_folder`; tells
/// which signed proofs still hold, and writes the form for more. `scratch` is made when it is needed. Throws Fault.
void audit_proofs(Disk& disk, const Order& order, const Prepared& prepared, const ProofsFile& proofs, const Path& made_folder, const Path& scratch, Made& made);

}  // namespace qw::release
