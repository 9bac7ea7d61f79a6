// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/log_text.h"

#include "base/digest.h"

#include <array>
#include <charconv>

namespace qw::engine::log_text {

namespace {

constexpr std::string_view entry_word = "entry ";
constexpr std::size_t hex_digits = 64;
constexpr std::size_t most_fields = 8;

void add_field(std::string& text, std::string_view field) {
    text += '\t';
    text += field_of(field);
}

template <typename Number>
    requires std::is_integral_v<Number>
void add_field(std::string& text, Number number) {
    text += '\t';
    text += std::to_string(number);
}

std::string plain(std::string_view field) {
    std::string text(field);
    if (field.find('\\') == std::string_view::npos) return text;
    std::size_t to = 0;
    for (std::size_t at = 0; at < field.size(); ++at) {
        char c = field[at];
        if (c == '\\' && at + 1 < field.size()) {
            c = field[++at];
            if (c == 't') c = '\t';
            else if (c == 'n') c = '\n';
        }
        text[to++] = c;
    }
    text.resize(to);
    return text;
}

template <typename Number>
bool number_from(std::string_view text, Number& number) {
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    return error == std::errc() && end == text.data() + text.size();
}

/// A line's fields as they stand; `count` is 0 when there are too many.
struct Fields {
    std::array<std::string_view, most_fields> at;
    std::size_t count = 0;
    bool are(std::string_view word, std::size_t wanted) const { return count == wanted && at[0] == word; }
};

/// The line that begins at `at`, which is moved behind it. A body ends with a newline.
Fields next_line(std::string_view body, std::size_t& at) {
    const std::size_t end = std::min(body.find('\n', at), body.size());
    Fields fields;
    for (std::size_t begin = at; begin <= end;) {
        const std::size_t stop = std::min(body.substr(0, end).find('\t', begin), end);
        if (fields.count == most_fields) {
            fields.count = 0;
            break;
        }
        fields.at[fields.count++] = body.substr(begin, stop - begin);
        begin = stop + 1;
    }
    at = std::min(end + 1, body.size());
    return fields;
}

std::string_view word_of(ReadKind kind) {
    switch (kind) {
        case ReadKind::file: return "file";
        case ReadKind::folder: return "folder";
        case ReadKind::missing: return "missing";
        case ReadKind::made: return "made";
        case ReadKind::value: break;
    }
    return "value";
}

std::optional<ReadKind> kind_of(std::string_view word) {
    for (const ReadKind kind : {ReadKind::file, ReadKind::folder, ReadKind::made})
        if (word == word_of(kind)) return kind;
    return std::nullopt;
}

void add_reads(std::string& text, const std::vector<Read>& reads) {
    const Read* last = nullptr;  // the values of one file stand below one line with its name
    for (const Read& read : reads) {
        if (read.kind != ReadKind::value) {
            text += word_of(read.kind);
            add_field(text, read.name);
            if (read.kind != ReadKind::missing) add_field(text, read.digest);
        } else {
            if (!last || last->kind != ReadKind::value || last->name != read.name || last->source != read.source) {
                text += "values";
                add_field(text, read.name);
                add_field(text, read.source);
                text += '\n';
            }
            text += "value";
            add_field(text, read.path);
            add_field(text, read.digest);
            add_field(text, read.line);
            add_field(text, read.text);
        }
        text += '\n';
        last = &read;
    }
}

void add_stat(std::string& text, const StatLine& stat) {
    text += "stat";
    add_field(text, stat.name);
    for (const std::uint64_t number : {stat.stamp.size, stat.stamp.inode}) add_field(text, number);
    for (const std::int64_t number : {stat.stamp.mtime, stat.stamp.ctime}) add_field(text, number);
    add_field(text, stat.sha256);
    text += '\n';
}

/// Whether the line is one of a step's, and then put into `entry`.
bool take_line(const Fields& line, LogEntry& entry, Read& values) {
    if (line.are("value", 5)) {
        Read read{ReadKind::value, values.name, std::string(line.at[2]), plain(line.at[1]), plain(line.at[4]), values.source, 0};
        if (!number_from(line.at[3], read.line)) return false;
        entry.reads.push_back(std::move(read));
    } else if (line.are("values", 3)) {
        values.name = plain(line.at[1]);
        values.source = line.at[2];
    } else if (line.are("missing", 2)) {
        entry.reads.push_back({ReadKind::missing, plain(line.at[1]), {}, {}, {}, {}, 0});
    } else if (line.are("output", 4)) {
        Output output{plain(line.at[1]), {0, std::string(line.at[3])}};
        if (!number_from(line.at[2], output.digest.bytes)) return false;
        entry.outputs.push_back(std::move(output));
    } else {
        const auto kind = line.count == 3 ? kind_of(line.at[0]) : std::nullopt;
        if (!kind) return false;
        entry.reads.push_back({*kind, plain(line.at[1]), std::string(line.at[2]), {}, {}, {}, 0});
    }
    return true;
}

}  // namespace

std::string file_head() { return std::string(title) + std::to_string(version) + "\n"; }

std::string body_of(const LogEntry& entry) {
    std::string text;
    if (!entry.step.empty()) {
        text += "step";
        add_field(text, entry.step);
        add_field(text, entry.key);
        text += '\n';
        add_reads(text, entry.reads);
        for (const Output& output : entry.outputs) {
            text += "output";
            add_field(text, output.name);
            add_field(text, output.digest.bytes);
            add_field(text, output.digest.sha256);
            text += '\n';
        }
    }
    for (const StatLine& stat : entry.stats) add_stat(text, stat);
    return text;
}

std::string framed(std::string_view body) {
    std::string text(entry_word);
    text += std::to_string(body.size()) + " " + sha256_of(body) + "\n";
    text += body;
    return text;
}

std::optional<Frame> frame_at(std::string_view text, std::size_t at) {
    if (text.substr(at, entry_word.size()) != entry_word) return std::nullopt;
    const std::size_t number = at + entry_word.size(), space = text.find(' ', number);
    if (space == std::string_view::npos) return std::nullopt;
    const std::size_t digest = space + 1, body = digest + hex_digits + 1;
    std::size_t length = 0;
    if (!number_from(text.substr(number, space - number), length)) return std::nullopt;
    if (body > text.size() || length > text.size() - body || text[body - 1] != '\n') return std::nullopt;
    const Frame frame{text.substr(body, length), body + length};
    if (!frame.body.ends_with('\n') || sha256_of(frame.body) != text.substr(digest, hex_digits)) return std::nullopt;
    return frame;
}

// A field must hold neither the tab nor the newline that end fields and lines.
std::string field_of(std::string_view name) {
    if (name.find_first_of("\\\t\n") == std::string_view::npos) return std::string(name);
    std::string text;
    for (const char c : name) {
        if (c == '\\') text += "\\\\";
        else if (c == '\t') text += "\\t";
        else if (c == '\n') text += "\\n";
        else text += c;
    }
    return text;
}

std::optional<std::string_view> step_in(std::string_view body) {
    std::size_t at = 0;
    const Fields line = next_line(body, at);
    if (!line.are("step", 3)) return std::nullopt;
    return line.at[1];
}

std::size_t stats_begin(std::string_view body) {
    if (body.starts_with("stat\t")) return 0;
    const std::size_t found = body.find("\nstat\t");
    return found == std::string_view::npos ? body.size() : found + 1;
}

StatText first_stat(std::string_view lines) {
    constexpr std::string_view word = "stat\t";
    StatText stat;
    stat.line = lines.substr(0, std::min(lines.find('\n'), lines.size() - 1) + 1);
    if (stat.line.starts_with(word)) stat.name = stat.line.substr(word.size(), stat.line.find('\t', word.size()) - word.size());
    stat.takes_back = stat.line.ends_with("\t\n");
    return stat;
}

std::optional<StatLine> stat_from(std::string_view text) {
    std::size_t at = 0;
    const Fields line = next_line(text, at);
    if (!line.are("stat", 7)) return std::nullopt;
    StatLine stat{plain(line.at[1]), {}, std::string(line.at[6])};
    if (!number_from(line.at[2], stat.stamp.size) || !number_from(line.at[3], stat.stamp.inode) || !number_from(line.at[4], stat.stamp.mtime) ||
        !number_from(line.at[5], stat.stamp.ctime))
        return std::nullopt;
    return stat;
}

std::optional<LogEntry> entry_from(std::string_view body) {
    body = body.substr(0, stats_begin(body));
    std::size_t at = 0;
    const Fields first = next_line(body, at);
    if (!first.are("step", 3)) return std::nullopt;
    LogEntry entry{plain(first.at[1]), std::string(first.at[2]), {}, {}, {}};
    Read values;
    while (at < body.size())
        if (!take_line(next_line(body, at), entry, values)) return std::nullopt;
    return entry;
}

}  // namespace qw::engine::log_text
