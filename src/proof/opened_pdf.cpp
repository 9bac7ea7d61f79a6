// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/opened_pdf.h"

#include "base/fault.h"

namespace qw::proof {

OpenedPdf::OpenedPdf(Disk& disk, const Path& path) : input_(std::make_shared<DiskInput>(disk.open(path), path.filename().string())) {
    pdf_.setSuppressWarnings(true);
    std::string why;
    try {
        pdf_.processInputSource(input_);
        Damage damage;
        pages_ = pages_of(pdf_.getRoot(), damage);
    } catch (const std::exception& error) {  // libqpdf's, or Unreadable
        why = error.what();
    }
    check();
    if (!why.empty()) throw Fault(FaultKind::not_understood, {"damaged-pdf", {path.string(), 0, 0}, "it cannot be read as a PDF: " + why, "a whole PDF", ""});
}

}  // namespace qw::proof
