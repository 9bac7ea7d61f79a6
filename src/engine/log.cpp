// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/log.h"

#include "base/fault.h"
#include "engine/log_text.h"

#include <algorithm>
#include <charconv>

namespace qw::engine {

namespace {

bool is_newer(std::string_view text) {
    if (!text.starts_with(log_text::title)) return false;
    text.remove_prefix(log_text::title.size());
    unsigned version = 0;
    const auto error = std::from_chars(text.data(), text.data() + text.size(), version).ec;
    return error == std::errc::result_out_of_range || (error == std::errc() && version > log_text::version);
}

/// A whole entry behind a place where none begins: what lies there is no torn tail.
bool entry_follows(std::string_view text, std::size_t at) {
    for (; (at = text.find("entry ", at)) != std::string_view::npos; ++at)
        if (log_text::frame_at(text, at)) return true;
    return false;
}

}  // namespace

std::string shortened(std::string_view text) {
    constexpr std::size_t most = 200;
    const auto begins_character = [](char c) { return (static_cast<unsigned char>(c) & 0xc0) != 0x80; };
    if (static_cast<std::size_t>(std::count_if(text.begin(), text.end(), begins_character)) <= most) return std::string(text);
    std::size_t at = 0;
    for (std::size_t characters = 0; at < text.size(); ++at)
        if (begins_character(text[at]) && ++characters == most) break;
    return std::string(text.substr(0, at)) + "…";
}

Log::Log(Disk& disk, const Path& file) : disk_(disk), file_(file) {
    if (disk.stat(file)) read(read_text(disk, file, largest));
}

void Log::read(std::string whole) {
    steps_.clear();
    stats_.clear();
    texts_.clear();
    superseded_ = end_ = 0;
    const std::string_view text = texts_.emplace_back(std::move(whole));
    if (is_newer(text))
        throw Fault(FaultKind::not_carried_out, {"newer-log", {file_.string(), 0, 0}, "what is remembered here was written by a newer version of this program",
                                                 "format " + std::to_string(log_text::version),
                                                 "use the newer version, or move this file away: everything is then made again"});
    const std::string head = log_text::file_head();
    if (text.starts_with(head)) {
        std::size_t at = head.size();
        while (const auto frame = log_text::frame_at(text, at)) {
            take_in(frame->body, frame->end - at);
            at = frame->end;
        }
        end_ = at;
        if (at < text.size() && entry_follows(text, at)) damage_ = Damage{end_, text.size() - end_};
    } else if (!head.starts_with(text)) {
        damage_ = Damage{0, text.size()};
    }
}

void Log::take_in(std::string_view body, std::uint64_t bytes) {
    const std::size_t stats = log_text::stats_begin(body);
    const Step now{body.substr(0, stats), bytes - (body.size() - stats)};
    if (const auto name = log_text::step_in(body)) {
        Step& step = steps_[*name];
        superseded_ += step.bytes;
        step = now;
    } else {
        superseded_ += now.bytes;
    }
    take_in_stats(body.substr(stats));
}

void Log::take_in_stats(std::string_view lines) {
    while (!lines.empty()) {
        const log_text::StatText stat = log_text::first_stat(lines);
        lines.remove_prefix(stat.line.size());
        std::string_view& line = stats_[stat.name];
        superseded_ += line.size();
        line = stat.line;
        if (!stat.takes_back) continue;
        superseded_ += line.size();
        stats_.erase(stat.name);
    }
}

std::optional<LogEntry> Log::find(const std::string& step) const {
    const std::lock_guard lock(mutex_);
    const auto found = steps_.find(log_text::field_of(step));
    if (found == steps_.end()) return std::nullopt;
    return log_text::entry_from(found->second.body);
}

std::vector<StatLine> Log::stats() const {
    const std::lock_guard lock(mutex_);
    std::vector<StatLine> lines;
    lines.reserve(stats_.size());
    for (const auto& [name, line] : stats_)
        if (auto stat = log_text::stat_from(line)) lines.push_back(*std::move(stat));
    return lines;
}

void Log::append(const LogEntry& entry) {
    const std::string body = log_text::body_of(entry);
    if (body.empty()) return;
    const std::string bytes = log_text::framed(body);
    const std::lock_guard lock(mutex_);
    write(bytes);
    take_in(texts_.emplace_back(body), bytes.size());
    if (end_ < smallest || superseded_ * 2 <= end_) return;
    try {
        write_anew();
    } catch (const Fault&) {  // the entry is written; a file that stays longer than it needs to be harms nothing
    }
}

void Log::close() {
    const std::lock_guard lock(mutex_);
    if (!sink_) return;
    const auto sink = std::move(sink_);
    sink->close();
}

void Log::write(const std::string& bytes) {
    const std::string head = end_ == 0 ? log_text::file_head() : "";
    if (!sink_) {
        if (file_.has_parent_path()) disk_.make_folders(file_.parent_path());
        sink_ = disk_.extend(file_, end_);  // cuts off what is not believed
    }
    try {
        sink_->write(head + bytes);
    } catch (...) {
        sink_.reset();  // part of it may be written: the next one begins at `end_` again
        throw;
    }
    end_ += head.size() + bytes.size();
}

void Log::write_anew() {
    std::vector<std::pair<std::string_view, std::string_view>> stats(stats_.begin(), stats_.end()), steps;
    for (const auto& [name, step] : steps_) steps.emplace_back(name, step.body);
    std::sort(stats.begin(), stats.end());
    std::sort(steps.begin(), steps.end());

    std::string text = log_text::file_head(), lines;
    for (const auto& [name, line] : stats) lines += line;
    if (!lines.empty()) text += log_text::framed(lines);
    for (const auto& [name, body] : steps) text += log_text::framed(body);
    write_file(disk_, file_, text);
    sink_.reset();  // it writes to the file that was replaced
    read(std::move(text));
}

}  // namespace qw::engine
