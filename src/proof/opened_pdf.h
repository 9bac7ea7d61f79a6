// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"
#include "proof/disk_input.h"
#include "proof/page_tree.h"

#include <memory>
#include <vector>

namespace qw::proof {

/// A finished PDF held open with its pages in order, for who takes objects from it. What libqpdf had to mend is passed
/// over: whether a file is whole is told by `inspect`.
class OpenedPdf {
public:
    /// Throws Fault: not_understood, naming the file, when it cannot be opened or has no page tree.
    OpenedPdf(Disk& disk, const Path& path);

    QPDF& pdf() { return pdf_; }
    const std::vector<TreePage>& pages() const { return pages_; }
    /// Throws the disk's first Fault again; libqpdf makes warnings of some.
    void check() const { input_->check(); }

private:
    std::shared_ptr<DiskInput> input_;
    QPDF pdf_;
    std::vector<TreePage> pages_;
};

}  // namespace qw::proof
