// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/clock.h"
#include "base/length.h"
#include "base/source.h"

#include <optional>
#include <string>
#include <vector>

namespace qw::kit {

/// How far the back of a sheet lies off its front, seen from the front: x to the right, y upward.
struct BackOffset {
    Length x, y;
};

/// One sheet of a kit to be printed and signed, or signed (src/kit/signed-proofs.md, format 1).
struct SignedProof {
    SourceMark mark;
    std::string version;               ///< of the kit
    std::string file;                  ///< path inside the bundle
    std::vector<int> pages;            ///< of that file, counted from 1
    std::string sha256;                ///< of the file
    std::vector<std::string> digests;  ///< of the pages (proof/page_digest.h), one each
    bool asks_gauge = false, asks_offset = false;  ///< whether its form has the key

    std::string printed_by, printer, stock, setting;
    std::optional<Length> gauge;
    std::optional<BackOffset> offset;
    std::optional<Date> date;
    std::optional<bool> good;          ///< the verdict; nothing: not signed yet
};

struct SignedProofs {
    std::string kit;
    std::vector<SignedProof> proofs;
};

/// The name under which every audit of a kit looks for them in the kit's folder.
inline constexpr const char* signed_proofs_name = "proofs.yaml";

/// Throws Fault (not_understood) with every fault of a file that parses; `shown` stands in the marks.
SignedProofs read_signed_proofs(const std::string& bytes, const std::string& shown);

/// A new file with blanks to fill in.
std::string form_of(const std::string& kit, const std::vector<SignedProof>& blanks);

/// `bytes` with further blanks at its end; what stands there stays byte for byte. Throws Fault (not_understood) where its
/// writing lets nothing be added at the end (a list in brackets, further keys below the list).
std::string with_blanks(const std::string& bytes, const std::string& shown, const std::vector<SignedProof>& blanks);

}  // namespace qw::kit
