// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"

#include <cstdint>
#include <optional>
#include <string>

namespace qw::release {

/// What a person asked for, already understood; everything that comes from outside the kit and the pipeline.
struct Order {
    Path kit;                                      ///< folder with kit.yaml
    Path pipeline;                                 ///< folder with the shared data
    Path out = "dist";
    unsigned jobs = 1;
    std::uint64_t memory = std::uint64_t{1} << 30; ///< bytes; fewer jobs run at once where pictures are large
    std::optional<std::string> printer;            ///< instead of the kit's
    bool strict = false;                           ///< warnings count as errors
    std::optional<std::int64_t> source_date_epoch; ///< goes before the kit's own date
    std::optional<Path> text;                      ///< a listing text to hold against the kit
    std::optional<Path> proofing;                  ///< where the sheets to print before sale go, as one PDF
    std::optional<Path> sign;                      ///< a file of signed proofs to write or to add to
    std::string tool;                              ///< name and version, for the record
};

/// Told what is being done, for a terminal. Called from the thread that calls release(), and `step` from any thread.
class Progress {
public:
    virtual ~Progress() = default;
    virtual void begin(const std::string& /*what*/, std::size_t /*steps*/) {}
    virtual void step() {}
};

}  // namespace qw::release
