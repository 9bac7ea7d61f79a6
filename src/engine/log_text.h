// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "engine/log.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

/// The text of the log of steps: src/engine/log.md.
namespace qw::engine::log_text {

inline constexpr std::string_view title = "quirewright steps ";
inline constexpr unsigned version = 1;

std::string file_head();

/// Body of an entry, without its head; an entry without a step has stat lines alone.
std::string body_of(const LogEntry& entry);
/// Body with its head.
std::string framed(std::string_view body);
/// The whole entry that begins at `at`; nothing when there is none.
struct Frame {
    std::string_view body;
    std::size_t end = 0;
};
std::optional<Frame> frame_at(std::string_view text, std::size_t at);

/// A name as it is written in a field.
std::string field_of(std::string_view name);
/// The step's name as it is written, or nothing when the body brings stat lines only.
std::optional<std::string_view> step_in(std::string_view body);
/// Where the stat lines begin, which are the last of a body.
std::size_t stats_begin(std::string_view body);
/// The stat line that begins a text of such lines, with its newline and its name as it is written.
struct StatText {
    std::string_view line, name;
    bool takes_back = false;
};
StatText first_stat(std::string_view lines);
/// Nothing when it is no stat line.
std::optional<StatLine> stat_from(std::string_view line);
/// All but the stat lines; nothing when it is no such body.
std::optional<LogEntry> entry_from(std::string_view body);

}  // namespace qw::engine::log_text
