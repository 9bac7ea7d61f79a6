// SPDX-License-Identifier: GPL-3.0-or-later
#include "bundle/structure.h"

#include <zlib.h>

#include <algorithm>
#include <memory>
#include <numeric>
#include <span>
#include <string_view>

namespace qw::bundle {

namespace {

constexpr std::uint64_t end_size = 22, directory_header_size = 46, local_header_size = 30;
constexpr std::uint64_t largest_directory = std::uint64_t{64} << 20, most_entries_read = 1'000'000;
constexpr std::uint32_t all_ones = 0xffffffffu;
constexpr std::uint16_t zip64_field = 0x0001, unicode_path_field = 0x7075;

/// What makes a zip one that has no directory to be read.
struct Unreadable {
    std::string why;
};

/// Bytes of a file, numbers in them little-endian (APPNOTE 4.4.1.1). What lies beyond the end is Unreadable.
class Bytes {
public:
    explicit Bytes(std::string bytes) : bytes_(std::move(bytes)) {}
    std::uint64_t number(std::uint64_t at, int size) const {
        need(at, static_cast<std::uint64_t>(size));
        std::uint64_t value = 0;
        for (int i = size - 1; i >= 0; --i) value = value << 8 | static_cast<unsigned char>(bytes_[static_cast<std::size_t>(at) + static_cast<std::size_t>(i)]);
        return value;
    }
    std::uint16_t two(std::uint64_t at) const { return static_cast<std::uint16_t>(number(at, 2)); }
    std::uint32_t four(std::uint64_t at) const { return static_cast<std::uint32_t>(number(at, 4)); }
    std::uint64_t eight(std::uint64_t at) const { return number(at, 8); }
    bool starts(std::uint64_t at, std::string_view mark) const {
        return at <= bytes_.size() && std::string_view(bytes_).substr(static_cast<std::size_t>(at)).starts_with(mark);
    }
    std::string text(std::uint64_t at, std::uint64_t size) const {
        need(at, size);
        return bytes_.substr(static_cast<std::size_t>(at), static_cast<std::size_t>(size));
    }
    std::uint64_t size() const { return bytes_.size(); }

private:
    void need(std::uint64_t at, std::uint64_t size) const {
        if (at > bytes_.size() || size > bytes_.size() - at) throw Unreadable{"one of its headers is cut off"};
    }
    std::string bytes_;
};

class File {
public:
    File(Disk& disk, const Path& path) : source_(disk.open(path)) {}
    std::uint64_t size() const { return source_->size(); }
    /// As many as there are of them.
    Bytes read(std::uint64_t at, std::uint64_t most) {
        std::string bytes(static_cast<std::size_t>(at >= size() ? 0 : std::min(most, size() - at)), '\0');
        std::size_t have = 0;
        while (have < bytes.size()) {
            const std::size_t n = source_->read(at + have, std::as_writable_bytes(std::span(bytes.data() + have, bytes.size() - have)));
            if (n == 0) break;
            have += n;
        }
        bytes.resize(have);
        return Bytes(std::move(bytes));
    }

private:
    std::unique_ptr<Source> source_;
};

/// Where the directory is, as end record and ZIP64's end record tell.
struct End {
    std::uint64_t at = 0;               ///< of the first of the end records
    std::uint64_t after = 0;            ///< behind the last, comment included
    std::uint64_t entries = 0, directory_bytes = 0, directory_at = 0;
    bool zip64 = false;
    std::string comment;
};

/// The last end record whose comment ends with the file; where there is none, the last one whose comment does not leave it.
End find_end(File& file) {
    const std::uint64_t window = std::min<std::uint64_t>(file.size(), end_size + 0xffff), from = file.size() - window;
    const Bytes tail = file.read(from, window);
    std::optional<std::uint64_t> found;
    for (std::uint64_t back = end_size; back <= tail.size(); ++back) {
        const std::uint64_t at = tail.size() - back;
        if (!tail.starts(at, "PK\5\6")) continue;
        const std::uint64_t comment = tail.two(at + 20);
        if (comment + end_size == back) {
            found = at;
            break;
        }
        if (!found && comment + end_size < back) found = at;
    }
    if (!found) throw Unreadable{"it is no zip, or its end is missing"};
    // Disk numbers: of this disk, and of that where the directory begins (4.4.19, 4.4.20).
    const std::uint64_t at = *found, disk = tail.two(at + 4), first_disk = tail.two(at + 6);
    if ((disk != 0 && disk != 0xffff) || (first_disk != 0 && first_disk != 0xffff) || tail.two(at + 8) != tail.two(at + 10))
        throw Unreadable{"it is one part of a zip in several parts"};
    End end{from + at, from + at + end_size + tail.two(at + 20),   tail.two(at + 10), tail.four(at + 12), tail.four(at + 16),
            false,     tail.text(at + end_size, tail.two(at + 20))};
    return end;
}

/// ZIP64's end record stands before its locator, that before the end record (4.3.6). It may be larger than we know of.
void read_zip64_end(File& file, End& end) {
    constexpr std::uint64_t locator_size = 20, record_size = 56;
    if (end.at < locator_size) return;
    const Bytes locator = file.read(end.at - locator_size, locator_size);
    if (!locator.starts(0, "PK\6\7")) return;
    std::uint64_t at = locator.eight(8);
    Bytes record = file.read(at, record_size);
    if (!record.starts(0, "PK\6\6") && end.at >= locator_size + record_size) record = file.read(at = end.at - locator_size - record_size, record_size);
    if (!record.starts(0, "PK\6\6") || at > end.at - locator_size) throw Unreadable{"the end record of ZIP64 is not where it is said to be"};
    end.at = at;
    end.zip64 = true;
    end.entries = record.eight(32);
    end.directory_bytes = record.eight(40);
    end.directory_at = record.eight(48);
}

std::uint32_t crc_of(const std::string& bytes) {
    return static_cast<std::uint32_t>(crc32(0, reinterpret_cast<const unsigned char*>(bytes.data()), static_cast<unsigned>(bytes.size())));
}

bool is_ascii(const std::string& text) {
    return std::all_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

/// Extra fields: id, size, bytes (4.5.1). Sizes and offset that are all ones stand in that of ZIP64, in this order (4.5.3).
void read_extra(const Bytes& header, std::uint64_t at, std::uint64_t size, EntryHeader& entry, std::uint64_t* packed, std::uint64_t* unpacked,
                std::uint64_t* offset) {
    const std::uint64_t end = at + size;
    while (at + 4 <= end) {
        const std::uint16_t id = header.two(at);
        const std::uint64_t length = header.two(at + 2), next = at + 4 + length;
        if (next > end) return;  // some programs pad with zeros, or with less than a field
        if (id == unicode_path_field && length > 5 && header.number(at + 4, 1) == 1 && header.four(at + 5) == crc_of(entry.name))
            entry.unicode_name = header.text(at + 9, length - 5);
        if (id == zip64_field) {
            entry.zip64 = true;
            std::uint64_t place = at + 4;
            for (std::uint64_t* value : {unpacked, packed, offset})
                if (value && *value == all_ones && place + 8 <= next) {
                    *value = header.eight(place);
                    place += 8;
                }
        }
        at = next;
    }
}

std::vector<EntryHeader> read_directory(const Bytes& directory, std::uint64_t entries) {
    std::vector<EntryHeader> all;
    std::uint64_t at = 0;
    for (std::uint64_t i = 0; i < entries; ++i) {
        if (!directory.starts(at, "PK\1\2")) throw Unreadable{"its directory has fewer entries than it says, or is damaged"};
        EntryHeader entry;
        entry.made_on = directory.two(at + 4) >> 8;
        entry.flags = directory.two(at + 8);
        entry.method = directory.two(at + 10);
        entry.time = directory.two(at + 12);
        entry.date = directory.two(at + 14);
        entry.crc = directory.four(at + 16);
        entry.packed = directory.four(at + 20);
        entry.size = directory.four(at + 24);
        entry.attributes = directory.four(at + 38);
        entry.offset = directory.four(at + 42);
        const std::uint64_t name = directory.two(at + 28), extra = directory.two(at + 30), comment = directory.two(at + 32);
        entry.name = directory.text(at + directory_header_size, name);
        entry.comment = directory.text(at + directory_header_size + name + extra, comment);
        read_extra(directory, at + directory_header_size + name, extra, entry, &entry.packed, &entry.size, &entry.offset);
        at += directory_header_size + name + extra + comment;
        all.push_back(std::move(entry));
    }
    if (at != directory.size()) throw Unreadable{"its directory has more bytes than its entries"};
    return all;
}

/// Behind the data: with or without its mark, sizes of four bytes or, in ZIP64, of eight (4.3.9). Length, or 0: none that
/// agrees.
std::uint64_t length_of_descriptor(File& file, const EntryHeader& entry, std::uint64_t at) {
    const Bytes bytes = file.read(at, 24);
    for (const std::uint64_t mark : {4u, 0u})
        for (const int width : {4, 8}) {
            const std::uint64_t length = mark + 4 + 2 * static_cast<std::uint64_t>(width);
            if ((mark != 0 && !bytes.starts(0, "PK\7\10")) || bytes.size() < length) continue;
            if (bytes.four(mark) == entry.crc && bytes.number(mark + 4, width) == entry.packed &&
                bytes.number(mark + 4 + static_cast<std::uint64_t>(width), width) == entry.size)
                return length;
        }
    return 0;
}

/// Where an entry says that a descriptor follows, its local header may have zeros for what was not known yet (4.4.4, bit 3).
bool agrees(const EntryHeader& entry, std::uint64_t in_directory, std::uint64_t in_local) {
    return in_directory == in_local || (entry.has_descriptor() && in_local == 0);
}

void compare_local(File& file, std::uint64_t begin, EntryHeader& entry) {
    const std::uint64_t at = entry.offset = begin + entry.offset;
    const Bytes fixed = file.read(at, local_header_size);
    if (!fixed.starts(0, "PK\3\4") || fixed.size() < local_header_size) {
        entry.disagrees = "place: there is no header where the directory says";
        entry.end = at;
        return;
    }
    const std::uint64_t name_size = fixed.two(26), extra_size = fixed.two(28);
    const Bytes rest = file.read(at + local_header_size, name_size + extra_size);
    if (rest.size() < name_size + extra_size) {
        entry.disagrees = "name: its local header is cut off";
        entry.end = file.size();
        return;
    }
    std::uint64_t packed = fixed.four(18), size = fixed.four(22);
    EntryHeader local;
    local.name = entry.name;
    read_extra(rest, name_size, extra_size, local, &packed, &size, nullptr);
    entry.zip64 = entry.zip64 || local.zip64;
    const std::uint64_t data = at + local_header_size + name_size + extra_size;
    entry.end = data + std::min(entry.packed, ~data);
    constexpr std::uint16_t flags_that_matter = 0x0849 | 0x2000;
    const bool told_otherwise = !local.unicode_name.empty() && local.unicode_name != entry.called();
    if (rest.text(0, name_size) != entry.name || told_otherwise || (is_ascii(entry.name) && entry.called() != entry.name)) entry.disagrees = "name";
    else if (fixed.two(8) != entry.method) entry.disagrees = "method";
    else if (((fixed.two(6) ^ entry.flags) & flags_that_matter) != 0) entry.disagrees = "flags";
    else if (!agrees(entry, entry.crc, fixed.four(14))) entry.disagrees = "CRC";
    else if (!agrees(entry, entry.packed, packed) || !agrees(entry, entry.size, size)) entry.disagrees = "size";
    else if (fixed.two(10) != entry.time || fixed.two(12) != entry.date) entry.disagrees = "date";
    if (!entry.has_descriptor() || entry.end > file.size()) return;
    const std::uint64_t descriptor = length_of_descriptor(file, entry, entry.end);
    entry.end += descriptor;
    if (descriptor == 0 && entry.disagrees.empty()) entry.disagrees = "data descriptor";
}

/// Entries in the file's order: what overlaps, and what lies between them.
void tell_overlaps_and_gaps(Structure& zip, std::uint64_t directory_at) {
    std::vector<std::size_t> order(zip.entries.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return zip.entries[a].offset < zip.entries[b].offset; });
    std::uint64_t at = zip.begin;
    std::size_t reaches = 0;  // the entry that reaches farthest so far
    const auto gap = [&](std::uint64_t to) {
        if (to > at) zip.stray.push_back({at == zip.begin ? StrayBytes::Where::before : StrayBytes::Where::between, at, to - at});
    };
    for (std::size_t i = 0; i < order.size(); ++i) {
        const EntryHeader& entry = zip.entries[order[i]];
        gap(std::min(entry.offset, directory_at));
        if (i > 0 && entry.offset < at) zip.overlaps.emplace_back(reaches, order[i]);
        else if (entry.end > directory_at) zip.overlaps.emplace_back(order[i], order[i]);
        if (i == 0 || entry.end > at) reaches = order[i];
        at = std::max(at, entry.end);
    }
    gap(directory_at);
}

}  // namespace

Structure read_structure(Disk& disk, const Path& path) {
    Structure zip;
    File file(disk, path);
    if (file.size() == 0) zip.damage = "it is empty";
    if (!zip.damage.empty()) return zip;
    try {
        End end = find_end(file);
        read_zip64_end(file, end);
        if (end.directory_bytes > end.at) throw Unreadable{"its directory is larger than the file"};
        if (end.directory_bytes > largest_directory || end.entries > most_entries_read) throw Unreadable{"its directory is larger than any shop's bundle needs"};
        const std::uint64_t directory_at = end.at - end.directory_bytes;
        // A program before the zip: offsets may count from the zip's own first byte.
        if (end.directory_at > directory_at) throw Unreadable{"its directory is not where it is said to be"};
        zip.begin = directory_at - end.directory_at;
        zip.end = end.after;
        zip.zip64 = end.zip64;
        zip.comment = end.comment;
        if (zip.begin > 0) zip.stray.push_back({StrayBytes::Where::before, 0, zip.begin});
        zip.entries = read_directory(file.read(directory_at, end.directory_bytes), end.entries);
        for (EntryHeader& entry : zip.entries) compare_local(file, zip.begin, entry);
        tell_overlaps_and_gaps(zip, directory_at);
        if (file.size() > zip.end) zip.stray.push_back({StrayBytes::Where::after, zip.end, file.size() - zip.end});
    } catch (const Unreadable& unreadable) {
        zip.damage = unreadable.why;
    }
    return zip;
}

}  // namespace qw::bundle
