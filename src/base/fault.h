// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/source.h"

#include <exception>
#include <string>
#include <vector>

namespace qw {

/// What exit status a fault leads to: 2, what was asked or written could not be understood; 3, it could not be
/// carried out (disk, permission, damaged store).
enum class FaultKind { not_understood, not_carried_out };

/// One reason why the work stops. The text for people is made where it is shown, from these fields.
struct FaultNote {
    std::string code;      ///< kebab-case, stable: "unknown-key"
    SourceMark where;      ///< empty file: no place
    std::string what;      ///< what is wrong, one sentence without a full stop
    std::string expected;  ///< what would have been right; may be empty
    std::string mend;      ///< what to do; may be empty
};

/// The one exception that the project throws. Carries every fault that was found, so that a manifest's faults are
/// told in one run. Never empty.
class Fault : public std::exception {
public:
    Fault(FaultKind kind, std::vector<FaultNote> notes);
    Fault(FaultKind kind, FaultNote note);

    FaultKind kind() const { return kind_; }
    const std::vector<FaultNote>& notes() const { return notes_; }
    const char* what() const noexcept override { return text_.c_str(); }

private:
    FaultKind kind_;
    std::vector<FaultNote> notes_;
    std::string text_;
};

/// "kit.yaml:12:5: unknown key 'sids'; expected one of …; write 'sides'"
std::string to_text(const FaultNote& note);

}  // namespace qw
