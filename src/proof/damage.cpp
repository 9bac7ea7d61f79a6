// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/damage.h"

#include "proof/pdf_values.h"

namespace qw::proof {

namespace {
constexpr std::size_t longest_text = 160;
}

void Damage::note(const std::string& text) {
    if (!text_.empty()) return;
    text_ = text.empty() ? "it cannot be read" : text;
    if (!place_.empty()) text_ = place_ + ": " + text_;
    if (text_.size() > longest_text) text_ = text_.substr(0, longest_text) + " ...";
    for (char& c : text_)
        if (static_cast<unsigned char>(c) < 0x20) c = ' ';
    text_ = valid_utf8(text_);
}

void Damage::note(const QPDFExc& error) {
    std::string text = error.getMessageDetail();
    if (!error.getObject().empty()) text = error.getObject() + ": " + text;
    if (error.getFilePosition() > 0) text += " (byte " + std::to_string(error.getFilePosition()) + ")";
    note(text);
}

void Damage::take_warnings(QPDF& pdf) {
    if (!pdf.anyWarnings()) return;
    const auto warnings = pdf.getWarnings();
    note(warnings.front());
}

}  // namespace qw::proof
