// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"

namespace qw {

namespace {

std::string joined(const std::vector<FaultNote>& notes) {
    std::string text;
    for (const FaultNote& note : notes) {
        if (!text.empty()) text += "\n";
        text += to_text(note);
    }
    return text;
}

}  // namespace

Fault::Fault(FaultKind kind, std::vector<FaultNote> notes) : kind_(kind), notes_(std::move(notes)), text_(joined(notes_)) {}
Fault::Fault(FaultKind kind, FaultNote note) : Fault(kind, std::vector<FaultNote>{std::move(note)}) {}

std::string to_text(const FaultNote& note) {
    std::string text;
    if (!note.where.file.empty()) {
        text += note.where.file + ":";
        if (note.where.line > 0) text += std::to_string(note.where.line) + ":";
        if (note.where.line > 0 && note.where.column > 0) text += std::to_string(note.where.column) + ":";
        text += " ";
    }
    text += note.what;
    if (!note.expected.empty()) text += "; expected " + note.expected;
    if (!note.mend.empty()) text += "; " + note.mend;
    return text;
}

}  // namespace qw
