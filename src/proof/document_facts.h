// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "proof/file_facts.h"
#include "proof/pdf_values.h"
#include "proof/libqpdf.h"


namespace qw::proof {

/// What the trailer and the catalog tell: version, title, viewer preferences, output intent, encryption, scripts,
/// layers, attachments.
void tell_document(QPDF& pdf, FileFacts& facts);

/// Scripts and attachments that a page brings in by its own actions and annotations.
void tell_page_extras(Object page, FileFacts& facts);

}  // namespace qw::proof
